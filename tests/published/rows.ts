import { readFileSync } from "node:fs";

export type Row = Readonly<Record<string, string>>;

/** Set by `npm run audit`, which notes what row a test looks at. */
const watched = (row: Row, file: string, index: number): Row =>
  (globalThis as { auditRow?: (row: Row, file: string, index: number) => Row }).auditRow?.(row, file, index) ?? row;

/** Rows of a CSV beside this file: a header line, quoted fields, lines that start with # skipped. */
export function rows(file: string): Row[] {
  const text = readFileSync(new URL(file, import.meta.url), "utf8");
  const lines = records(text).filter((fields) => !(fields[0] ?? "").startsWith("#") && fields.some((f) => f !== ""));
  const head = lines[0] ?? [];
  return lines
    .slice(1)
    .map((fields, index) => watched(Object.fromEntries(head.map((name, i) => [name, fields[i] ?? ""])), file, index));
}

function records(text: string): string[][] {
  const out: string[][] = [[]];
  let field = "";
  let quoted = false;
  const endField = () => {
    out.at(-1)?.push(field);
    field = "";
  };
  for (let i = 0; i < text.length; i++) {
    const c = text[i] as string;
    if (quoted) {
      if (c === '"' && text[i + 1] === '"') {
        field += '"';
        i++;
      } else if (c === '"') quoted = false;
      else field += c;
    } else if (c === '"') quoted = true;
    else if (c === ",") endField();
    else if (c === "\n") {
      endField();
      out.push([]);
    } else if (c !== "\r") field += c;
  }
  endField();
  return out;
}

/**
 * A printed value that is known to be off: the answer is the one that was worked out beside the print, and it differs from the print.
 * Both sides are held, so that neither a wrong answer nor a mended row passes.
 */
export function offAsKnown(got: number, row: Row, within: number): boolean {
  const recomputed = Number(row.recomputed);
  if (row.recomputed === undefined || row.recomputed === "" || !Number.isFinite(recomputed)) return false;
  const near = Math.abs(got - recomputed) <= halfLastDigit(row.recomputed) * (1 + 1e-9) + 1e-9;
  return near && Math.abs(got - Number(row.printed)) > within;
}

/** Half of the last printed digit: 0.05 for "12.3", 0.5 for "12", 0.5e-13 for "5.72e-11"'s last place. */
export function halfLastDigit(printed: string): number {
  const match = /^-?\d*\.?(\d*)(?:e([-+]?\d+))?$/i.exec(printed.trim());
  if (match === null) throw new Error(`not a printed number: ${printed}`);
  const decimals = printed.includes(".") ? (match[1] ?? "").length : 0;
  return 0.5 * 10 ** (Number(match[2] ?? 0) - decimals);
}
