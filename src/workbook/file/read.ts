import type { CellValue, Cell as LibraryCell, Sheet } from "hucre/xlsx";
import { BadInput } from "../../core/kit/refusal.ts";
import type { Cell } from "../../core/kit/tape.ts";
import { asTyped } from "../formula.ts";
import { guardWorkbook } from "./guard.ts";
import { fromProperties } from "./kept.ts";
import {
  type FileCell,
  type FilePicture,
  type FileSheet,
  type Look,
  OUR_PICTURE,
  placeKey,
  type WorkbookFile,
} from "./model.ts";
import { withoutPrefixes } from "./new-functions.ts";
import { lookOf } from "./style.ts";
import type { LibraryImage } from "./write.ts";

/** A stray cell at the end of the grid must not make a sheet of a million rows. */
const READ = "A1:ZZ20000";
const FIRST_DAY = Date.UTC(1899, 11, 30);
const DAY_MS = 86_400_000;

/** A workbook out of a file, and what of it could not be taken along. */
export interface ReadWorkbook {
  readonly file: WorkbookFile;
  /** kinds of things in the file that are left out, in words, each with the worksheets that have them */
  readonly leftOut: readonly string[];
  /** what formulas had spilled beside their own cells when the file was saved, by worksheet and place */
  readonly spilled: ReadonlyMap<string, ReadonlyMap<string, Cell>>;
}

/**
 * Reads an .xlsx file: cells, formulas, stored values, looks, choices, widths and names.
 * @throws BadInput with a sentence where the file is no sound workbook or is too large
 */
export async function readWorkbook(bytes: Uint8Array, title: string): Promise<ReadWorkbook> {
  guardWorkbook(bytes);
  const { readXlsx } = await import("hucre/xlsx");
  const book = await readXlsx(bytes, { readStyles: true, range: READ }).catch((error: unknown) => {
    const why = error instanceof Error ? error.message.replace(/\.$/, "") : String(error);
    throw new BadInput("The file cannot be read", why, "Save it again as .xlsx in the program that made it");
  });
  const custom = book.properties?.custom;
  const version = custom?.Sillwork;
  const kept = fromProperties(custom);
  const spilled = new Map<string, ReadonlyMap<string, Cell>>();
  return {
    file: {
      title: book.properties?.title ?? title,
      sheets: book.sheets.map((sheet) => sheetOf(sheet, spilled)),
      names: (book.namedRanges ?? [])
        .filter(({ name, scope }) => !name.startsWith("_xlnm.") && scope === undefined)
        .map(({ name, range }) => [name, range] as const),
      ...(version === undefined ? {} : { version: String(version) }),
      ...(Object.keys(kept).length === 0 ? {} : { kept }),
    },
    leftOut: leftOut(book.sheets),
    spilled,
  };
}

function sheetOf(sheet: Sheet, allSpilled: Map<string, ReadonlyMap<string, Cell>>): FileSheet {
  const cells = new Map<string, FileCell>();
  const spilled = new Set<string>();
  const put = (row: number, column: number, cell: FileCell): void => {
    cells.set(placeKey(row, column), cell);
  };
  sheet.rows.forEach((line, row) => {
    line.forEach((value, column) => {
      const key = placeKey(row, column);
      const detail = sheet.cells?.get(key);
      const cell = cellOf(value, detail);
      const place = cell.spill === undefined ? undefined : { row, column, ...cell.spill };
      if (place !== undefined) for (const each of insideOf(place)) spilled.add(each);
      if (cell.value !== "" || cell.formula !== undefined || cell.look !== undefined) put(row, column, cell);
    });
  });
  allSpilled.set(sheet.name, new Map([...spilled].map((key) => [key, cells.get(key)?.value ?? ""])));
  // What a formula spills is calculated again; a value that stood there would be in its way.
  for (const key of spilled) {
    const look = cells.get(key)?.look;
    if (look === undefined) cells.delete(key);
    else cells.set(key, { value: "", look });
  }
  addValidations(sheet, cells);
  const frozenRows = sheet.freezePane?.rows;
  const pictures = (sheet.images ?? []).filter(isOurs).map(pictureOf);
  return {
    name: sheet.name,
    cells,
    widths: (sheet.columns ?? []).map(({ width }) => width),
    ...(frozenRows === undefined ? {} : { frozenRows }),
    ...(pictures.length === 0 ? {} : { pictures }),
  };
}

/** Whether a picture of a file was put there by the pane. */
export function isOurs({ type, title }: LibraryImage): boolean {
  return type === "png" && title?.startsWith(OUR_PICTURE) === true;
}

function pictureOf({ data, anchor, width = 0, height = 0, altText = "", title = "" }: LibraryImage): FilePicture {
  const png = btoa(Array.from(data, (byte) => String.fromCharCode(byte)).join(""));
  return { name: title, alt: altText, png, row: anchor.from.row, column: anchor.from.col, width, height };
}

function cellOf(raw: CellValue | undefined, detail: LibraryCell | undefined): FileCell {
  const look = lookOf(detail?.style);
  const formula = detail?.formula;
  const value = plainValue(detail?.formulaResult ?? raw);
  const styled: { look?: Look } = Object.keys(look).length === 0 ? {} : { look };
  if (formula === undefined || formula === "") return { value, ...styled };
  const spill = detail?.formulaType === "array" ? sizeOf(detail.formulaRef) : undefined;
  const typed = withoutPrefixes(asTyped(`=${formula}`));
  return { value, formula: typed, ...(spill === undefined ? {} : { spill }), ...styled };
}

/** What a cell of the library holds. A date comes as the spreadsheet's number of days, which is what its formulas calculate with. */
export function plainValue(raw: CellValue | undefined): Cell {
  if (raw instanceof Date) return (raw.getTime() - FIRST_DAY) / DAY_MS;
  return raw ?? "";
}

/** "B14:D20" as a size; undefined for a single cell. */
function sizeOf(reference: string | undefined): { rows: number; columns: number } | undefined {
  const [first, last] = (reference ?? "").split(":").map(cornerOf);
  if (first === undefined || last === undefined) return undefined;
  const [rows, columns] = [last.row - first.row + 1, last.column - first.column + 1];
  return rows === 1 && columns === 1 ? undefined : { rows, columns };
}

function cornerOf(text: string): { row: number; column: number } | undefined {
  const match = /^\$?([A-Z]{1,3})\$?(\d+)$/.exec(text);
  if (match === null) return undefined;
  const letters = [...(match[1] ?? "")];
  const column = letters.reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1;
  return { row: Number(match[2]) - 1, column };
}

/** The places of a spilled table but its first. */
function insideOf(table: { row: number; column: number; rows: number; columns: number }): string[] {
  const places: string[] = [];
  for (let r = 0; r < table.rows; r++) {
    for (let c = 0; c < table.columns; c++) {
      if (r > 0 || c > 0) places.push(placeKey(table.row + r, table.column + c));
    }
  }
  return places;
}

function addValidations(sheet: Sheet, cells: Map<string, FileCell>): void {
  for (const { type, values, inputMessage, range } of sheet.dataValidations ?? []) {
    const place = cornerOf(range.replaceAll("$", ""));
    if (place === undefined) continue;
    const key = placeKey(place.row, place.column);
    cells.set(key, {
      ...(cells.get(key) ?? { value: "" }),
      ...(type === "list" && values !== undefined ? { choices: values } : {}),
      ...(inputMessage === undefined ? {} : { hint: inputMessage }),
    });
  }
}

/** Kinds of things that a workbook here does not hold. */
const KINDS: readonly (readonly [string, (sheet: Sheet) => boolean])[] = [
  ["pictures", ({ images }) => images?.some((image) => !isOurs(image)) === true],
  ["charts", ({ charts }) => (charts?.length ?? 0) > 0],
  ["text boxes", ({ textBoxes }) => (textBoxes?.length ?? 0) > 0],
  ["small charts in cells", ({ sparklines }) => (sparklines?.length ?? 0) > 0],
  ["merged cells", ({ merges }) => (merges?.length ?? 0) > 0],
  ["conditional formats", ({ conditionalRules }) => (conditionalRules?.length ?? 0) > 0],
  ["tables", ({ tables }) => (tables?.length ?? 0) > 0],
  ["filters", ({ autoFilter }) => autoFilter !== undefined],
  ["pivot tables", ({ pivotTables }) => (pivotTables?.length ?? 0) > 0],
  ["sheet protection", ({ protection }) => protection !== undefined],
  ["hidden sheets", ({ hidden, veryHidden }) => hidden === true || veryHidden === true],
  ["borders", (sheet) => some(sheet, ({ style }) => hasBorder(style))],
  ["formatted parts of texts", (sheet) => some(sheet, ({ richText }) => richText !== undefined)],
  ["notes", (sheet) => some(sheet, ({ comment }) => comment !== undefined)],
  ["links", (sheet) => some(sheet, ({ hyperlink }) => hyperlink !== undefined)],
];

function some(sheet: Sheet, is: (cell: LibraryCell) => boolean): boolean {
  return [...(sheet.cells?.values() ?? [])].some(is);
}

function hasBorder(style: LibraryCell["style"]): boolean {
  const { top, right, bottom, left } = style?.border ?? {};
  return [top, right, bottom, left].some((side) => side !== undefined);
}

/** "charts (Bid), merged cells (Walls, Wind)" */
function leftOut(sheets: readonly Sheet[]): string[] {
  return KINDS.flatMap(([kind, has]) => {
    const on = sheets.filter(has).map(({ name }) => name);
    return on.length === 0 ? [] : [`${kind} (${on.join(", ")})`];
  });
}
