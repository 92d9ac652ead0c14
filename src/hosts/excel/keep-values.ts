import { callsOurs, usesSpill } from "../../workbook/formula.ts";
import { isNoValue } from "../../workbook/scan.ts";
import { type BlockCell, cellsOf } from "./sheet/blocks.ts";
import { runInExcel, wholeOrNothing } from "./sheet/run.ts";
import { asEntered, freeName } from "./sheet/write-sheet.ts";

/** Cells written in one request. */
const AT_ONCE = 500;

/**
 * Copies the active worksheet and puts values in the place of our formulas there, and of formulas that point at what ours spill; the worksheet itself
 * stays as it is. A cell that shows no value yet keeps its formula on the copy and is named.
 * @returns a sentence with what was done
 */
export async function keepValuesOnly(): Promise<string> {
  const found = await runInExcel(readActive);
  if (typeof found === "string") return found;
  const { name, copyName, kept, without } = found;
  await wholeOrNothing(
    (context) => writeCopy(context, found),
    (context) => takeOutCopy(context, found),
    `Delete the worksheet ${copyName} or ${name} (2) if it is there: it is not whole.`,
  );
  return sentence(name, copyName, kept.length, without);
}

interface Found {
  readonly name: string;
  readonly copyName: string;
  readonly kept: readonly Kept[];
  readonly without: readonly BlockCell[];
  /** ids of the worksheets that were there before */
  readonly before: ReadonlySet<string>;
}

/** What there is to keep, or a sentence where there is nothing or nothing may be changed. */
async function readActive(context: Excel.RequestContext): Promise<Found | string> {
  const { worksheets } = context.workbook;
  const sheet = worksheets.getActiveWorksheet();
  sheet.load("name");
  sheet.protection.load("protected");
  worksheets.load("items/name,items/id");
  await context.sync();
  const { name } = sheet;
  const before = new Set(worksheets.items.map(({ id }) => id));
  if (sheet.protection.protected) {
    return `${name} is protected, so no copy of it can be changed. Take the sheet protection off, then keep the values.`;
  }
  const formulas = await cellsOf(sheet, (formula) => callsOurs(formula) || usesSpill(formula));
  if (formulas.length === 0) return `${name} holds no formula of Sillwork: nothing was copied.`;
  const without = formulas.filter(({ isError, value }) => isError && isNoValue(String(value)));
  const withValue = formulas.filter((cell) => !without.includes(cell));
  const kept = await withTables(sheet, withValue);
  return { name, copyName: await freeName(context, `${name} values`), kept, without, before };
}

async function writeCopy(context: Excel.RequestContext, { name, copyName, kept }: Found): Promise<void> {
  const sheet = context.workbook.worksheets.getItem(name);
  const copy = sheet.copy("After", sheet);
  copy.name = copyName;
  await context.sync();
  for (let i = 0; i < kept.length; i += AT_ONCE) {
    for (const { row, column, values } of kept.slice(i, i + AT_ONCE)) {
      copy.getRangeByIndexes(row, column, values.length, values[0]?.length ?? 1).values = values;
    }
    await context.sync();
  }
  copy.activate();
  await context.sync();
}

/** Excel calls a copy `Wall (2)` until it has its own name. */
async function takeOutCopy(context: Excel.RequestContext, { name, copyName, before }: Found): Promise<void> {
  const { worksheets } = context.workbook;
  worksheets.load("items/name,items/id");
  await context.sync();
  for (const sheet of worksheets.items) {
    const made = sheet.name === copyName || (sheet.name.startsWith(name.slice(0, 20)) && / \(\d+\)$/.test(sheet.name));
    if (made && !before.has(sheet.id)) sheet.delete();
  }
  worksheets.getItem(name).activate();
  await context.sync();
}

/** Where a value or table goes, and its cells as one would type them. */
interface Kept {
  readonly row: number;
  readonly column: number;
  readonly values: (string | number | boolean)[][];
}

/** The values of each formula with all that it has spilled, read from the sheet itself: a copy calculates again and may show nothing yet. */
async function withTables(sheet: Excel.Worksheet, cells: readonly BlockCell[]): Promise<Kept[]> {
  const kept: Kept[] = [];
  for (let i = 0; i < cells.length; i += AT_ONCE) {
    const some = cells.slice(i, i + AT_ONCE).map((cell) => {
      const spill = sheet.getCell(cell.row, cell.column).getSpillingToRangeOrNullObject();
      spill.load("values");
      return { cell, spill };
    });
    await sheet.context.sync();
    for (const { cell, spill } of some) {
      const values: unknown[][] = spill.isNullObject ? [[cell.value]] : spill.values;
      kept.push({ row: cell.row, column: cell.column, values: values.map((row) => row.map(asKept)) });
    }
  }
  return kept;
}

/** An error stays an error; a text stays the text that it is. */
function asKept(value: unknown): string | number | boolean {
  if (typeof value === "number" || typeof value === "boolean") return value;
  const text = String(value ?? "");
  return /^#[A-Z/0-9]+[!?]?$/.test(text) ? text : (asEntered(text) as string);
}

function sentence(name: string, copy: string, kept: number, without: readonly BlockCell[]): string {
  const done = `${name} is unchanged. Its copy ${copy} holds ${kept} ${kept === 1 ? "value" : "values"} in the place of formulas.`;
  if (without.length === 0) return done;
  const shown = [...new Set(without.map(({ value }) => String(value)))].join(", ");
  return `${done} ${without.length} ${without.length === 1 ? "cell that shows" : "cells that show"} ${shown} had no value to keep and still ${without.length === 1 ? "holds its formula" : "hold their formulas"}.`;
}
