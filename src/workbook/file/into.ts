import type { Cell as LibraryCell, RoundtripWorkbook, Sheet } from "hucre/xlsx";
import { checkFile } from "./limits.ts";
import { type FileCell, type FileSheet, placeOf, type WorkbookFile } from "./model.ts";
import { isOurs, plainValue } from "./read.ts";
import { cellOf, imageOf, sheetOf } from "./write.ts";

/** A workbook that was opened from a file, as it stood then. */
export interface Opened {
  readonly bytes: Uint8Array;
  readonly file: WorkbookFile;
}

const BLANK: FileCell = { value: "" };

/** Whether a workbook can still be written into the file that it came from: its worksheets are there, new ones stand behind them. */
export function fitsInto({ file }: Opened, now: WorkbookFile): boolean {
  return file.sheets.every(({ name }, i) => now.sheets[i]?.name === name);
}

/**
 * Writes what has changed into the file that was opened: what we know nothing of, such as charts, notes and borders, stays as it is.
 * No row and no column may have moved since, and the worksheets must fit: see `fitsInto`.
 */
export async function writeInto(opened: Opened, now: WorkbookFile): Promise<Uint8Array> {
  checkFile(now);
  const [{ openXlsx, saveXlsx }, { finished }] = await Promise.all([import("hucre/xlsx"), import("./finish.ts")]);
  const book = await openXlsx(opened.bytes, { readStyles: true });
  now.sheets.forEach((sheet, i) => {
    const held = book.sheets[i];
    if (held === undefined) book.sheets.push(newSheet(sheet));
    else change(held, opened.file.sheets[i], sheet);
  });
  addNames(book, opened.file, now);
  return finished(await saveXlsx(book));
}

function change(held: Sheet, before: FileSheet | undefined, now: FileSheet): void {
  const cells = held.cells ?? new Map<string, LibraryCell>();
  held.cells = cells;
  if (JSON.stringify(before?.widths) !== JSON.stringify(now.widths)) {
    held.columns = Array.from(now.widths, (width, c) => ({
      ...held.columns?.[c],
      ...(width === undefined ? {} : { width }),
    }));
  }
  if (JSON.stringify(before?.pictures) !== JSON.stringify(now.pictures)) {
    held.images = [...(held.images ?? []).filter((image) => !isOurs(image)), ...(now.pictures ?? []).map(imageOf)];
  }
  // A formula without its value would be written without one.
  for (const cell of cells.values()) if (cell.formula !== undefined) cell.formulaResult ??= cell.value;
  for (const key of new Set([...now.cells.keys(), ...(before?.cells.keys() ?? [])])) {
    put(held, cells, key, before?.cells.get(key) ?? BLANK, now.cells.get(key) ?? BLANK);
  }
}

function put(held: Sheet, cells: Map<string, LibraryCell>, key: string, before: FileCell, now: FileCell): void {
  const { row, column } = placeOf(key);
  const own = cells.get(key);
  const stored = plainValue(own?.formulaResult ?? held.rows[row]?.[column] ?? null);
  const sameFormula = before.formula === now.formula;
  const sameLook = JSON.stringify(before.look ?? {}) === JSON.stringify(now.look ?? {});
  const sameSpill = JSON.stringify(before.spill) === JSON.stringify(now.spill);
  if (sameFormula && sameLook && sameSpill && stored === now.value) return;
  const written = cellOf(now, row, column, false);
  const style = sameLook ? own?.style : written.style;
  const { comment, hyperlink } = own ?? {};
  const cell = {
    ...written,
    ...(style === undefined ? {} : { style }),
    ...(comment === undefined ? {} : { comment }),
    ...(hyperlink === undefined ? {} : { hyperlink }),
  } as LibraryCell;
  const value = written.value ?? written.formulaResult ?? null;
  cells.set(key, { ...cell, value });
  while (held.rows.length <= row) held.rows.push([]);
  const line = held.rows[row] ?? [];
  while (line.length <= column) line.push(null);
  line[column] = value;
}

/** A worksheet that was not in the file. */
function newSheet(sheet: FileSheet): Sheet {
  const { cells = new Map(), ...rest } = sheetOf(sheet, false);
  const made = { ...rest, rows: [], cells: new Map() } as unknown as Sheet;
  for (const [key, cell] of cells) {
    const { row, column } = placeOf(key);
    const value = cell.value ?? cell.formulaResult ?? null;
    made.cells?.set(key, { ...cell, value } as LibraryCell);
    while (made.rows.length <= row) made.rows.push([]);
    const line = made.rows[row] ?? [];
    while (line.length <= column) line.push(null);
    line[column] = value;
  }
  return made;
}

function addNames(book: RoundtripWorkbook, before: WorkbookFile, now: WorkbookFile): void {
  const known = new Map(before.names);
  const changed = now.names.filter(([name, range]) => known.get(name) !== range);
  const gone = new Set(before.names.map(([name]) => name).filter((name) => !now.names.some(([n]) => n === name)));
  const left = (book.namedRanges ?? []).filter(
    ({ name, scope }) => scope !== undefined || !(gone.has(name) || changed.some(([n]) => n === name)),
  );
  book.namedRanges = [...left, ...changed.map(([name, range]) => ({ name, range }))];
}
