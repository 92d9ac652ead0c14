import {
  BooleanNumber,
  CellValueType,
  type ICellData,
  type IStyleData,
  type IWorkbookData,
  type IWorksheetData,
  LocaleType,
  VerticalAlign,
  WrapStrategy,
} from "@univerjs/core";
import type { Cell } from "../../../core/kit/tape.ts";
import type { Role, SheetTemplate, TemplateCell, WorkbookTemplate } from "../../../templates/kit/template.ts";

/** Room to work in below and beside what a template fills. */
export const ROWS = 200;
export const COLUMNS = 26;
/** Width of a character of normal text, and the space beside it, in pixels. */
const CHARACTER = 7.5;
const PADDING = 12;
export const DEFAULT_WIDTH = 96;
export const ROW_HEIGHT = 24;

export const FONT: IStyleData = { ff: "Arial", fs: 11, vt: VerticalAlign.MIDDLE };

export const LOOK: Readonly<Record<Role, IStyleData>> = {
  title: { bl: BooleanNumber.TRUE, fs: 15 },
  heading: { bl: BooleanNumber.TRUE, bg: { rgb: "#eef1f4" } },
  label: {},
  input: { bg: { rgb: "#fff8dc" }, cl: { rgb: "#1d4f91" } },
  result: { bl: BooleanNumber.TRUE },
  note: { it: BooleanNumber.TRUE, cl: { rgb: "#5c6670" } },
  // No color: the same cell says "ok" and what is wrong.
  check: { bl: BooleanNumber.TRUE },
};

/** The engine's data of a workbook. */
export function workbookSnapshot(template: WorkbookTemplate, id: string): Partial<IWorkbookData> {
  const sheets = template.sheets.map((sheet, i) => sheetSnapshot(sheet, `sheet${i + 1}`));
  return {
    id,
    name: template.name,
    locale: LocaleType.EN_US,
    defaultStyle: FONT,
    sheetOrder: sheets.map((sheet) => sheet.id),
    sheets: Object.fromEntries(sheets.map((sheet) => [sheet.id, sheet])),
    resources: [{ name: "SHEET_DEFINED_NAME_PLUGIN", data: JSON.stringify(definedNames(template.names)) }],
  };
}

function sheetSnapshot(sheet: SheetTemplate, id: string): Partial<IWorksheetData> & { id: string } {
  const cells = templateCells(sheet);
  return {
    id,
    name: sheet.name,
    rowCount: cells.length + ROWS,
    columnCount: Math.max(COLUMNS, ...cells.map((row) => row.length + 4)),
    defaultColumnWidth: DEFAULT_WIDTH,
    defaultRowHeight: ROW_HEIGHT,
    columnData: Object.fromEntries(sheet.widths.map((characters, c) => [c, { w: columnWidth(characters) }])),
    cellData: Object.fromEntries(cells.map((row, r) => [r, Object.fromEntries(row.entries())])),
  };
}

/** Width of a column in pixels. */
export function columnWidth(characters: number): number {
  return Math.round(characters * CHARACTER + PADDING);
}

/** Characters of normal text in a column of so many pixels. */
export function charactersOf(pixels: number): number {
  return Math.max(1, Math.round((pixels - PADDING) / CHARACTER));
}

/** The engine's data of a template's cells, row by row. */
export function templateCells(sheet: SheetTemplate): ICellData[][] {
  return sheet.rows.map((row) => row.map((cell) => (cell === undefined ? {} : cellSnapshot(cell))));
}

function cellSnapshot({ is, role, format, choices, hint }: TemplateCell): ICellData {
  // Text that is typed over an input must stay text: 6:12 would become a time of day.
  const pattern = format ?? (role === "input" && typeof is === "string" && is !== "" ? "@" : undefined);
  const style: IStyleData = {
    ...(role === undefined ? {} : LOOK[role]),
    ...(pattern === undefined ? {} : { n: { pattern } }),
    ...(typeof is === "string" && role !== "note" && role !== "title" ? { tb: WrapStrategy.OVERFLOW } : {}),
  };
  const carried = { ...(choices === undefined ? {} : { choices }), ...(hint === undefined ? {} : { hint }) };
  const rest = {
    ...(Object.keys(style).length === 0 ? {} : { s: style }),
    ...(Object.keys(carried).length === 0 ? {} : { custom: carried }),
  };
  return typeof is === "string" && is.startsWith("=") ? { f: is, ...rest } : { ...valueSnapshot(is), ...rest };
}

/** A value with its type, so that the engine does not guess: "6:12" stays text. An empty text leaves the cell free, so that a table can spill there. */
export function valueSnapshot(value: Cell): ICellData {
  if (value === "") return {};
  if (typeof value === "number") return { v: value, t: CellValueType.NUMBER };
  if (typeof value === "boolean") return { v: value ? 1 : 0, t: CellValueType.BOOLEAN };
  return { v: value, t: looksNumeric(value) ? CellValueType.FORCE_STRING : CellValueType.STRING };
}

function looksNumeric(text: string): boolean {
  return text.trim() !== "" && Number.isFinite(Number(text));
}

/** The engine's data of the names of a workbook. */
export function definedNames(names: WorkbookTemplate["names"]): Record<string, unknown> {
  const scope = { localSheetId: "AllDefaultWorkbook", comment: "" };
  return Object.fromEntries(
    names.map(([name, formulaOrRefString], i) => [`name${i}`, { id: `name${i}`, name, formulaOrRefString, ...scope }]),
  );
}
