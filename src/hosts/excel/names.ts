import type { Table } from "../../core/kit/tape.ts";
import { type NamedCell, type NamedRows, parseAddress } from "../../workbook/host.ts";
import type { CellAddress } from "../../workbook/ledger.ts";
import { BASIS_COLUMNS, BASIS_NAME, besideOf, changesOf, rangeText, SITE_SHEET } from "../../workbook/named-rows.ts";
import { runInExcel, wholeOrNothing } from "./sheet/run.ts";
import { asEntered, freeName, takeOutSheet } from "./sheet/write-sheet.ts";

/** A name may stand for whole columns; no more of it is read. */
const MOST_ROWS = 500;
const MOST_COLUMNS = 26;
/** The look of cells to type into. */
const INPUT_COLOR = "#FFF8DC";

/** The first cell of a name; see `Host.cellOfName`. */
export async function firstCellOf(context: Excel.RequestContext, name: string): Promise<CellAddress | undefined> {
  const range = await rangeOf(context, name);
  if (range === undefined) return undefined;
  const cell = range.getCell(0, 0);
  cell.load("address");
  await context.sync();
  return parseAddress(cell.address);
}

/** See `Host.readName`. */
export async function readName(context: Excel.RequestContext, name: string): Promise<NamedRows | undefined> {
  const range = await rangeOf(context, name);
  if (range === undefined) return undefined;
  const { rowCount, columnCount } = range;
  const part = range.getResizedRange(
    Math.min(rowCount, MOST_ROWS) - rowCount,
    Math.min(columnCount, MOST_COLUMNS) - columnCount,
  );
  const cell = range.getCell(0, 0);
  part.load("values,formulas");
  cell.load("address");
  await context.sync();
  const first = parseAddress(cell.address);
  if (first === undefined) return undefined;
  const formulas = part.formulas.map((row) =>
    row.map((held) => (typeof held === "string" && held.startsWith("=") ? held : "")),
  );
  return { first, rows: part.values, formulas };
}

/** See `Host.namedCells`. What a name stands for is looked at before its values are: it may be whole columns. */
export async function namedCells(context: Excel.RequestContext): Promise<readonly NamedCell[]> {
  const { names } = context.workbook;
  names.load("items/name");
  await context.sync();
  const ranges = names.items.map((item) => ({ name: item.name, range: item.getRangeOrNullObject() }));
  for (const { range } of ranges) range.load("rowCount,columnCount,address");
  await context.sync();
  const cells = ranges.flatMap(({ name, range }) => {
    if (range.isNullObject || range.rowCount * range.columnCount !== 1) return [];
    const address = parseAddress(range.address);
    if (address === undefined) return [];
    // With the cells before and behind it, which say what it is.
    const before = Math.min(1, address.column);
    const sheet = context.workbook.worksheets.getItem(address.sheet);
    const line = sheet.getRangeByIndexes(address.row, address.column - before, 1, before + 2);
    line.load("values,formulas");
    return [{ name, address, before, line }];
  });
  await context.sync();
  return cells.map(({ name, address, before, line }) => {
    const [values = []] = line.values;
    const held = line.formulas[0]?.[before];
    const formula = typeof held === "string" && held.startsWith("=") ? held : "";
    const beside = besideOf(before === 0 ? "" : values[0], values[before + 1]);
    return { name, address, value: values[before] ?? "", formula, ...beside };
  });
}

/** See `Host.writeBasis`. */
export async function writeBasis(rows: Table): Promise<void> {
  if (await runInExcel((context) => changeBasis(context, rows))) return;
  const name = await runInExcel((context) => freeName(context, SITE_SHEET));
  await wholeOrNothing(
    (context) => makeBasis(context, name, rows),
    (context) => takeOutBasis(context, name),
    `Delete the worksheet ${name} if it is there: it is not whole.`,
  );
}

/** @returns false where no cells have the name */
async function changeBasis(context: Excel.RequestContext, rows: Table): Promise<boolean> {
  const held = await readName(context, BASIS_NAME);
  if (held === undefined) return false;
  const { first } = held;
  const sheet = context.workbook.worksheets.getItem(first.sheet);
  const { cells, added } = changesOf(held.rows, rows);
  for (const { row, column, value } of cells) {
    sheet.getCell(first.row + row, first.column + column).values = [[asEntered(value)]];
  }
  if (added.length > 0) {
    const below = first.row + held.rows.length;
    sheet.getRangeByIndexes(below, 0, added.length, 1).getEntireRow().insert("Down");
    // The new rows take the look of the one above, but not its number format: a percent sign, or text in place of numbers.
    sheet.getRangeByIndexes(below, first.column, added.length, BASIS_COLUMNS).numberFormat = added.map(() =>
      Array.from({ length: BASIS_COLUMNS }, () => "General"),
    );
    const columns = held.rows[0]?.length ?? BASIS_COLUMNS;
    const whole = { first, rows: held.rows.length + added.length, columns };
    // The name before the rows: broken off in between it holds blank rows, which the next try fills.
    context.workbook.names.getItem(BASIS_NAME).formula = `=${rangeText(whole)}`;
    fill(sheet, { ...first, row: below }, added);
  }
  await context.sync();
  return true;
}

async function makeBasis(context: Excel.RequestContext, name: string, rows: Table): Promise<void> {
  const sheet = context.workbook.worksheets.add(name);
  const first = { sheet: name, row: 0, column: 0 };
  fill(sheet, first, rows);
  sheet.getRangeByIndexes(0, 0, 1, BASIS_COLUMNS + 1).format.font.bold = true;
  rows.forEach((row, r) => {
    if (r > 0 && row[1] !== "") sheet.getCell(r, 1).format.fill.color = INPUT_COLOR;
  });
  sheet.getRangeByIndexes(0, 0, rows.length, BASIS_COLUMNS).format.autofitColumns();
  const reference = `=${rangeText({ first, rows: rows.length, columns: BASIS_COLUMNS })}`;
  // The name may be left of a worksheet that was deleted, and then stands for no cells.
  const left = context.workbook.names.getItemOrNullObject(BASIS_NAME);
  await context.sync();
  if (left.isNullObject) context.workbook.names.add(BASIS_NAME, reference);
  else left.formula = reference;
  sheet.activate();
  await context.sync();
}

async function takeOutBasis(context: Excel.RequestContext, name: string): Promise<void> {
  await takeOutSheet(context, name);
  const item = context.workbook.names.getItemOrNullObject(BASIS_NAME);
  await context.sync();
  if (item.isNullObject) return;
  const range = item.getRangeOrNullObject();
  await context.sync();
  // The name stands for no cells: it was given to the sheet.
  if (range.isNullObject) item.delete();
  await context.sync();
}

function fill(sheet: Excel.Worksheet, at: CellAddress, rows: Table): void {
  const width = Math.max(...rows.map((row) => row.length));
  sheet.getRangeByIndexes(at.row, at.column, rows.length, width).values = rows.map((row) =>
    Array.from({ length: width }, (_, c) => asEntered(row[c] ?? "")),
  );
}

/** The cells of a name with their size loaded; undefined where there is no such name or it stands for no cells. */
async function rangeOf(context: Excel.RequestContext, name: string): Promise<Excel.Range | undefined> {
  const item = context.workbook.names.getItemOrNullObject(name);
  await context.sync();
  if (item.isNullObject) return undefined;
  const range = item.getRangeOrNullObject();
  range.load("rowCount,columnCount");
  await context.sync();
  return range.isNullObject ? undefined : range;
}
