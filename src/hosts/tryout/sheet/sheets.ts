import type { ICellData } from "@univerjs/core";
import type { FWorkbook, FWorksheet } from "@univerjs/sheets/facade";
import type { Cell, Table } from "../../../core/kit/tape.ts";
import type { WorkbookTemplate } from "../../../templates/kit/template.ts";
import { COLUMNS, columnWidth, ROWS, templateCells, valueSnapshot } from "../engine/snapshot.ts";

/** Makes a worksheet, or empties the one of that name where it stands, so that formulas that point at it stay whole; then fills it from A1. */
export function putSheet(
  workbook: FWorkbook,
  name: string,
  widths: readonly number[],
  cells: readonly (readonly ICellData[])[],
): FWorksheet {
  const height = Math.max(1, cells.length);
  const width = Math.max(1, ...cells.map((row) => row.length));
  const sheet = workbook.getSheetByName(name) ?? workbook.create(name, ROWS + height, Math.max(COLUMNS, width));
  sheet.clear();
  if (sheet.getMaxRows() < height) sheet.setRowCount(height + ROWS);
  if (sheet.getMaxColumns() < width) sheet.setColumnCount(width);
  const filled = Array.from({ length: height }, (_, r) => Array.from({ length: width }, (_, c) => cells[r]?.[c] ?? {}));
  sheet.getRange(0, 0, height, width).setValues(filled);
  widths.forEach((characters, c) => {
    sheet.setColumnWidth(c, columnWidth(characters));
  });
  return sheet;
}

/** A name that no worksheet has: the one asked for, else with a number. */
export function freeSheetName(workbook: FWorkbook, asked: string): string {
  let name = asked;
  for (let number = 2; workbook.getSheetByName(name) !== null; number++) name = `${asked} (${number})`;
  return name;
}

/** A table of values as a worksheet: texts stay texts, even those that begin with "=". */
export function putTable(workbook: FWorkbook, name: string, rows: Table): FWorksheet {
  return putSheet(
    workbook,
    name,
    widthsOf(rows),
    rows.map((row) => row.map((value: Cell) => valueSnapshot(value))),
  );
}

/** The worksheets of a template, each in the place of one of the same name, and its named cells. */
export function putTemplate(workbook: FWorkbook, template: WorkbookTemplate): void {
  for (const sheet of template.sheets) putSheet(workbook, sheet.name, sheet.widths, templateCells(sheet));
  for (const [name, reference] of template.names) {
    const former = workbook.getDefinedName(name);
    if (former === null) workbook.insertDefinedName(name, reference);
    else former.setRef(reference);
  }
}

/** Widths in characters, from the longest text of each column, within reason. */
function widthsOf(rows: Table): number[] {
  const widths: number[] = [];
  for (const row of rows) {
    row.forEach((cell: Cell, c) => {
      widths[c] = Math.max(widths[c] ?? 10, Math.min(60, String(cell).length));
    });
  }
  return widths;
}
