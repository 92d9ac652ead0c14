import type { IStyleData } from "@univerjs/core";
import type { FormulaDataModel } from "@univerjs/engine-formula";
import type { FWorkbook, FWorksheet } from "@univerjs/sheets/facade";
import type { Cell, Table } from "../../../core/kit/tape.ts";
import type { TemplateCell } from "../../../templates/kit/template.ts";
import { MOST_READ, type NamedCell, type NamedRows } from "../../../workbook/host.ts";
import {
  BASIS_COLUMNS,
  BASIS_NAME,
  besideOf,
  type CellRange,
  changesOf,
  parseRange,
  rangeText,
  SITE_SHEET,
} from "../../../workbook/named-rows.ts";
import { cellValue } from "../engine/cells.ts";
import { templateCells, valueSnapshot } from "../engine/snapshot.ts";
import { freeSheetName, putSheet, rangeOfName } from "./sheets.ts";

const WIDTHS = [28, 16, 8, 60];
/** A name may stand for whole columns; no more of it is read. */
const MOST_ROWS = 500;

/** See `Host.readName`. */
export function readNamed(workbook: FWorkbook, name: string, model: FormulaDataModel): NamedRows | undefined {
  const range = rangeOfName(workbook, name);
  const sheet = range && workbook.getSheetByName(range.first.sheet);
  if (!range || !sheet) return undefined;
  const { row, column } = range.first;
  const height = Math.min(range.rows, MOST_ROWS);
  const cells = <T>(read: (row: number, column: number) => T): T[][] =>
    Array.from({ length: height }, (_, r) =>
      Array.from({ length: range.columns }, (_, c) => read(row + r, column + c)),
    );
  return {
    first: range.first,
    rows: cells((r, c) => cellValue(sheet, r, c, model) ?? ""),
    formulas: cells((r, c) => sheet.getRange(r, c).getFormula()),
  };
}

/** See `Host.namedCells`. */
export function namedCells(workbook: FWorkbook, model: FormulaDataModel): readonly NamedCell[] {
  return workbook.getDefinedNames().flatMap((defined) => {
    const name = defined.getName();
    const range = rangeOfName(workbook, name);
    const sheet = range && workbook.getSheetByName(range.first.sheet);
    if (!range || !sheet || range.rows * range.columns !== 1) return [];
    const { row, column } = range.first;
    const value = cellValue(sheet, row, column, model) ?? "";
    const at = (c: number) => (c < 0 || c >= sheet.getMaxColumns() ? "" : cellValue(sheet, row, c, model));
    const beside = besideOf(at(column - 1), at(column + 1));
    return [{ name, address: range.first, value, formula: sheet.getRange(row, column).getFormula(), ...beside }];
  });
}

/** See `Host.readRange`. */
export function readReference(
  workbook: FWorkbook,
  reference: string,
  from: string,
  model: FormulaDataModel,
): Table | undefined {
  const range = parseRange(reference.includes("!") ? reference : `'${from.replaceAll("'", "''")}'!${reference}`);
  const sheet = range && workbook.getSheetByName(range.first.sheet);
  if (!range || !sheet || range.rows < 1 || range.columns < 1 || range.rows * range.columns > MOST_READ) {
    return undefined;
  }
  const { row, column } = range.first;
  return Array.from({ length: range.rows }, (_, r) =>
    Array.from({ length: range.columns }, (_, c) => cellValue(sheet, row + r, column + c, model) ?? ""),
  );
}

/** See `Host.writeBasis`. */
export function writeBasis(workbook: FWorkbook, rows: Table, model: FormulaDataModel): void {
  const held = readNamed(workbook, BASIS_NAME, model);
  const sheet = held && workbook.getSheetByName(held.first.sheet);
  if (!held || !sheet) {
    makeBasis(workbook, rows);
    return;
  }
  const { row: top, column: left } = held.first;
  const { cells, added } = changesOf(held.rows, rows);
  for (const { row, column, value } of cells) put(sheet, top + row, left + column, value);
  if (added.length === 0) return;
  const below = top + held.rows.length;
  sheet.insertRowsAfter(below - 1, added.length);
  added.forEach((line, r) => {
    line.forEach((value: Cell, c) => {
      // The new row takes the look of the one above, but not the percent sign of its number.
      put(sheet, below + r, left + c, value, { n: null });
    });
  });
  const columns = held.rows[0]?.length ?? BASIS_COLUMNS;
  nameRange(workbook, { first: held.first, rows: held.rows.length + added.length, columns });
}

function makeBasis(workbook: FWorkbook, rows: Table): void {
  const name = freeSheetName(workbook, SITE_SHEET);
  const cells = rows.map((row, r) => row.map((is: Cell, c) => roleCell(is, r, c, row)));
  const looks = templateCells({ name, says: "", widths: WIDTHS, rows: cells });
  // In a template a text with "=" in front is a formula; here it is a text.
  const safe = looks.map((line, r) =>
    line.map((look, c) => ("f" in look ? valueSnapshot((rows[r]?.[c] ?? "") as Cell) : look)),
  );
  const sheet = putSheet(workbook, name, WIDTHS, safe);
  nameRange(workbook, { first: { sheet: name, row: 0, column: 0 }, rows: rows.length, columns: BASIS_COLUMNS });
  sheet.activate();
}

function roleCell(is: Cell, row: number, column: number, line: readonly Cell[]): TemplateCell {
  if (row === 0 || (line[1] === "" && column === 0)) return { is, role: "heading" };
  if (column === 1 && is !== "") return { is, role: "input" };
  return { is, role: column > 2 ? "note" : "label" };
}

function put(sheet: FWorksheet, row: number, column: number, value: Cell, look?: IStyleData): void {
  const style = look === undefined ? {} : { s: look };
  sheet.getRange(row, column).setValue({ v: null, t: null, ...valueSnapshot(value), f: null, p: null, ...style });
}

function nameRange(workbook: FWorkbook, range: CellRange): void {
  const former = workbook.getDefinedName(BASIS_NAME);
  if (former === null) workbook.insertDefinedName(BASIS_NAME, rangeText(range));
  else former.setRef(rangeText(range));
}
