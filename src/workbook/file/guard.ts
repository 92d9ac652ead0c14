import { BadInput } from "../../core/kit/refusal.ts";

/** What a workbook of an office comes nowhere near; a file beyond it was made to do harm, or is none of ours. */
const LARGEST_FILE = 10_000_000;
const MOST_PARTS = 2_000;
const LARGEST_PART = 60_000_000;
const LARGEST_TOTAL = 120_000_000;
/** How much larger than packed a part may be, once it is larger than SMALL. */
const MOST_RATIO = 200;
const SMALL = 100_000;

const END = 0x06054b50;
const ENTRY = 0x02014b50;
const END_SIZE = 22;
const ENTRY_SIZE = 46;
const LONGEST_COMMENT = 65_535;
const OLD_OFFICE = 0xe011cfd0;
const NEEDED = ["[Content_Types].xml", "xl/workbook.xml"];

interface Part {
  readonly name: string;
  readonly packed: number;
  readonly size: number;
  readonly offset: number;
  readonly encrypted: boolean;
}

/**
 * Looks at the list of a file's parts, unpacking nothing, before a library opens it.
 * @throws BadInput where the file is no workbook, is locked, or says of itself what no sound workbook does
 */
export function guardWorkbook(bytes: Uint8Array): void {
  if (bytes.length > LARGEST_FILE)
    throw refused(`is ${megabytes(bytes.length)}`, `at most ${megabytes(LARGEST_FILE)} can be opened`);
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (bytes.length > 8 && view.getUint32(0, true) === OLD_OFFICE) {
    throw refused("is locked with a password or of the old kind .xls", "only .xlsx without a password can be read");
  }
  const parts = partsOf(view);
  if (parts === undefined) throw refused("is no workbook", "an .xlsx file is a zip file, and this one is not");
  check(parts);
}

function check(parts: readonly Part[]): void {
  const names = new Set(parts.map(({ name }) => name.toLowerCase()));
  if (NEEDED.some((name) => !names.has(name.toLowerCase()))) {
    throw refused("is no workbook", "it is a zip file without a workbook in it");
  }
  if (parts.length > MOST_PARTS) throw refused(`has ${parts.length} parts`, `at most ${MOST_PARTS} can be opened`);
  if (names.size < parts.length || new Set(parts.map(({ offset }) => offset)).size < parts.length) {
    throw refused("has a part twice", "no sound workbook does");
  }
  for (const part of parts) checkPart(part);
  const total = parts.reduce((sum, { size }) => sum + size, 0);
  if (total > LARGEST_TOTAL) throw tooLarge(total);
}

function checkPart({ name, packed, size, encrypted }: Part): void {
  if (encrypted) throw refused("is locked with a password", "its parts cannot be read");
  if (name.split(/[\\/]/).includes("..") || /^[\\/]/.test(name)) {
    throw refused("has a part outside its own folder", "no sound workbook does");
  }
  if (size === 0 && packed > 2) throw refused("says that a part is empty and it is not", "no sound workbook does");
  if (size > LARGEST_PART) throw tooLarge(size);
  if (size > SMALL && size > packed * MOST_RATIO) throw tooLarge(size);
}

/** The list of parts at the end of a zip file; undefined where there is none or it is damaged. */
function partsOf(view: DataView): Part[] | undefined {
  const end = endOf(view);
  if (end === undefined) return undefined;
  const count = view.getUint16(end + 10, true);
  let at = view.getUint32(end + 16, true);
  const parts: Part[] = [];
  for (let i = 0; i < count; i++) {
    if (at + ENTRY_SIZE > view.byteLength || view.getUint32(at, true) !== ENTRY) return undefined;
    const lengths = [28, 30, 32].map((place) => view.getUint16(at + place, true));
    const [nameLength = 0] = lengths;
    const packed = view.getUint32(at + 20, true);
    const size = view.getUint32(at + 24, true);
    const offset = view.getUint32(at + 42, true);
    // Sizes of 4 GB and more stand elsewhere.
    if ([packed, size, offset].includes(0xffffffff)) throw tooLarge(2 ** 32);
    const name = new TextDecoder().decode(new Uint8Array(view.buffer, view.byteOffset + at + ENTRY_SIZE, nameLength));
    parts.push({ name, packed, size, offset, encrypted: (view.getUint16(at + 8, true) & 1) === 1 });
    at += ENTRY_SIZE + lengths.reduce((sum, length) => sum + length, 0);
  }
  return parts;
}

function endOf(view: DataView): number | undefined {
  const first = Math.max(0, view.byteLength - END_SIZE - LONGEST_COMMENT);
  for (let at = view.byteLength - END_SIZE; at >= first; at--) {
    if (view.getUint32(at, true) === END) return at;
  }
  return undefined;
}

function refused(what: string, why: string): BadInput {
  return new BadInput(
    `The file ${what}`,
    why,
    "Choose another file, or save it again as .xlsx in the program that made it",
  );
}

function tooLarge(size: number): BadInput {
  return refused(
    `unpacks to ${megabytes(size)} or more`,
    "it is either far larger than a workbook of an office or made to stop the program that opens it",
  );
}

function megabytes(bytes: number): string {
  return `${(bytes / 1e6).toLocaleString("en-US", { maximumFractionDigits: 1 })} MB`;
}
