import {
  BooleanNumber,
  HorizontalAlign,
  type ICellData,
  type IStyleData,
  type IWorkbookData,
  type IWorksheetData,
  LocaleType,
  WrapStrategy,
} from "@univerjs/core";
import type { FormulaDataModel } from "@univerjs/engine-formula";
import type { FWorkbook, FWorksheet } from "@univerjs/sheets/facade";
import {
  type FileCell,
  type FileSheet,
  type Look,
  placeKey,
  placeOf,
  type WorkbookFile,
} from "../../../workbook/file/model.ts";
import { FONT as FILE_FONT } from "../../../workbook/file/style.ts";
import { cellValue } from "./cells.ts";
import {
  COLUMNS,
  charactersOf,
  columnWidth,
  DEFAULT_WIDTH,
  definedNames,
  FONT,
  ROW_HEIGHT,
  ROWS,
  valueSnapshot,
} from "./snapshot.ts";

/** What a cell carries along for files; it moves with the cell. */
interface Carried {
  readonly choices?: readonly string[];
  readonly hint?: string;
}

const ALIGN = { left: HorizontalAlign.LEFT, center: HorizontalAlign.CENTER, right: HorizontalAlign.RIGHT } as const;

/** The engine's data of a workbook that was read from a file. Formulas come without their values: the engine calculates them. */
export function fileSnapshot(file: WorkbookFile, id: string): Partial<IWorkbookData> {
  const sheets = file.sheets.map((sheet, i) => sheetData(sheet, `sheet${i + 1}`));
  return {
    id,
    name: file.title,
    locale: LocaleType.EN_US,
    defaultStyle: FONT,
    sheetOrder: sheets.map((sheet) => sheet.id),
    sheets: Object.fromEntries(sheets.map((sheet) => [sheet.id, sheet])),
    resources: [{ name: "SHEET_DEFINED_NAME_PLUGIN", data: JSON.stringify(definedNames(file.names)) }],
  };
}

function sheetData(sheet: FileSheet, id: string): Partial<IWorksheetData> & { id: string } {
  const cellData: Record<number, Record<number, ICellData>> = {};
  let [rows, columns] = [0, sheet.widths.length];
  for (const [key, cell] of sheet.cells) {
    const { row, column } = placeOf(key);
    rows = Math.max(rows, row + 1);
    columns = Math.max(columns, column + 1);
    const line = cellData[row] ?? {};
    cellData[row] = line;
    line[column] = engineCell(cell);
  }
  const widths = [...sheet.widths].flatMap((width, c) => (width === undefined ? [] : [[c, { w: columnWidth(width) }]]));
  return {
    id,
    name: sheet.name,
    rowCount: rows + ROWS,
    columnCount: Math.max(COLUMNS, columns + 4),
    defaultColumnWidth: DEFAULT_WIDTH,
    defaultRowHeight: ROW_HEIGHT,
    columnData: Object.fromEntries(widths),
    ...(sheet.frozenRows === undefined
      ? {}
      : { freeze: { xSplit: 0, ySplit: sheet.frozenRows, startRow: sheet.frozenRows, startColumn: -1 } }),
    cellData,
  };
}

function engineCell({ value, formula, look, choices, hint }: FileCell): ICellData {
  const style = look === undefined ? {} : { s: engineStyle(look) };
  const carried: Carried = { ...(choices === undefined ? {} : { choices }), ...(hint === undefined ? {} : { hint }) };
  const custom = Object.keys(carried).length === 0 ? {} : { custom: { ...carried } };
  const content = formula === undefined ? valueSnapshot(value) : { f: formula };
  return { ...content, ...style, ...custom };
}

function engineStyle(look: Look): IStyleData {
  return {
    ...(look.bold ? { bl: BooleanNumber.TRUE } : {}),
    ...(look.italic ? { it: BooleanNumber.TRUE } : {}),
    ...(look.size === undefined ? {} : { fs: look.size }),
    ...(look.color === undefined ? {} : { cl: { rgb: look.color } }),
    ...(look.fill === undefined ? {} : { bg: { rgb: look.fill } }),
    ...(look.format === undefined ? {} : { n: { pattern: look.format } }),
    ...(look.align === undefined ? {} : { ht: ALIGN[look.align] }),
    tb: look.wrap ? WrapStrategy.WRAP : WrapStrategy.OVERFLOW,
  };
}

/** The workbook as it stands, with values, for a file. */
export function workbookFile(workbook: FWorkbook, model: FormulaDataModel, version: string): WorkbookFile {
  return {
    title: workbook.getName(),
    sheets: workbook.getSheets().map((sheet) => fileSheet(sheet, model)),
    names: workbook.getDefinedNames().map((name) => [name.getName(), name.getFormulaOrRefString()] as const),
    version,
  };
}

function fileSheet(sheet: FWorksheet, model: FormulaDataModel): FileSheet {
  const cells = new Map<string, FileCell>();
  const unit = sheet.getWorkbook().getUnitId();
  const id = sheet.getSheetId();
  const worksheet = sheet.getSheet();
  worksheet.getCellMatrix().forValue((row, column, cell) => {
    const value = cellValue(sheet, row, column, model) ?? "";
    const formula = cell?.f || cell?.si ? sheet.getRange(row, column).getFormula() : "";
    const range = model.getArrayFormulaRange()[unit]?.[id]?.[row]?.[column];
    const look = lookOf(worksheet.getComposedCellStyle(row, column));
    const { choices, hint }: Carried = cell?.custom ?? {};
    const found: FileCell = {
      value,
      ...(formula === "" ? {} : { formula }),
      ...(range ? { spill: { rows: range.endRow - row + 1, columns: range.endColumn - column + 1 } } : {}),
      ...(Object.keys(look).length === 0 ? {} : { look }),
      ...(choices === undefined ? {} : { choices }),
      ...(hint === undefined ? {} : { hint }),
    };
    if (Object.keys(found).length > 1 || value !== "") cells.set(placeKey(row, column), found);
  });
  addSpilled(cells, model.getArrayFormulaCellData()[unit]?.[id], sheet, model);
  const frozenRows = sheet.getFrozenRows();
  return {
    name: sheet.getSheetName(),
    cells,
    widths: Array.from({ length: widthCount(sheet) }, (_, c) => charactersOf(worksheet.getColumnWidth(c))),
    ...(frozenRows > 0 ? { frozenRows } : {}),
  };
}

/** Cells that hold nothing themselves but show a part of a table. */
function addSpilled(
  cells: Map<string, FileCell>,
  spilled: Record<number, Record<number, unknown> | undefined> | null | undefined,
  sheet: FWorksheet,
  model: FormulaDataModel,
): void {
  for (const [row, line] of Object.entries(spilled ?? {})) {
    for (const column of Object.keys(line ?? {})) {
      const value = cellValue(sheet, Number(row), Number(column), model) ?? "";
      const key = placeKey(Number(row), Number(column));
      if (value !== "") cells.set(key, { ...cells.get(key), value });
    }
  }
}

function widthCount(sheet: FWorksheet): number {
  return Math.min(sheet.getLastColumn() + 1, sheet.getMaxColumns());
}

function lookOf(style: IStyleData): Look {
  const align = (["left", "center", "right"] as const).find((way) => ALIGN[way] === style.ht);
  return {
    ...(style.bl === BooleanNumber.TRUE ? { bold: true } : {}),
    ...(style.it === BooleanNumber.TRUE ? { italic: true } : {}),
    ...(style.fs === undefined || style.fs === FILE_FONT.size ? {} : { size: style.fs }),
    ...(style.cl?.rgb ? { color: hexOf(style.cl.rgb) } : {}),
    ...(style.bg?.rgb ? { fill: hexOf(style.bg.rgb) } : {}),
    ...(style.n?.pattern ? { format: style.n.pattern } : {}),
    ...(style.tb === WrapStrategy.WRAP ? { wrap: true } : {}),
    ...(align === undefined ? {} : { align }),
  };
}

/** The engine takes "#eef1f4" and "rgb(238, 241, 244)". */
function hexOf(color: string): string {
  const numbers = /^rgba?\((\d+),\s*(\d+),\s*(\d+)/.exec(color);
  if (numbers === null) return color.toLowerCase();
  const pairs = numbers.slice(1, 4).map((part) => Number(part).toString(16).padStart(2, "0"));
  return `#${pairs.join("")}`;
}
