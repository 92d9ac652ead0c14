import { type ICellData, type IStyleData, VerticalAlign, WrapStrategy } from "@univerjs/core";
import type { FWorkbook, FWorksheet } from "@univerjs/sheets/facade";
import type { Cell, Table } from "../../../core/kit/tape.ts";
import { fitted, inserted } from "../../../templates/insert.ts";
import type { WorkbookTemplate } from "../../../templates/kit/template.ts";
import type { InsertedTemplate } from "../../../workbook/host.ts";
import { type CellRange, parseRange } from "../../../workbook/named-rows.ts";
import { type ReportRole, reportLook, reportRuns } from "../../../workbook/report.ts";
import { COLUMNS, columnWidth, LOOK, ROWS, templateCells, valueSnapshot } from "../engine/snapshot.ts";

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
  const { roles, widths } = reportLook(rows);
  const cells = rows.map((row, r) => {
    const s = reportStyle(roles[r] ?? "row");
    return row.map((value: Cell) => ({ ...valueSnapshot(value), s }));
  });
  const sheet = putSheet(workbook, name, widths, cells);
  for (const { role, start, count } of reportRuns(roles)) if (role === "row") sheet.setRowAutoHeight(start, count);
  return sheet;
}

function reportStyle(role: ReportRole): IStyleData {
  if (role === "row") return { tb: WrapStrategy.WRAP, vt: VerticalAlign.TOP };
  return role === "sentence" ? { tb: WrapStrategy.OVERFLOW } : LOOK[role];
}

/** The worksheets of a template as new ones, and its named cells; see `Host.insertTemplate`. */
export function putTemplate(workbook: FWorkbook, template: WorkbookTemplate): InsertedTemplate {
  const fit = fitted(template, {
    sheets: workbook.getSheets().map((sheet) => sheet.getSheetName()),
    names: new Map(
      workbook.getDefinedNames().map((name) => [name.getName(), rangeOfName(workbook, name.getName())?.first.sheet]),
    ),
  });
  for (const sheet of fit.template.sheets) putSheet(workbook, sheet.name, sheet.widths, templateCells(sheet));
  for (const [name, formulaOrRefString] of fit.template.names) {
    workbook.deleteDefinedName(name);
    // Not the engine's own way in: it takes no name that one of its functions or a worksheet has, as Excel does.
    workbook.insertDefinedNameBuilder({
      ...{ unitId: workbook.getId(), id: `template-${name}`, name, formulaOrRefString },
      ...{ comment: "", localSheetId: "AllDefaultWorkbook" },
    });
  }
  return inserted(fit, "Delete a sheet to take it out again.");
}

/** The cells that a name stands for; undefined where there is no such name or it stands for no cells. */
export function rangeOfName(workbook: FWorkbook, name: string): CellRange | undefined {
  const defined = workbook.getDefinedName(name);
  const range = defined === null ? undefined : parseRange(defined.getFormulaOrRefString());
  return range === undefined || workbook.getSheetByName(range.first.sheet) === null ? undefined : range;
}
