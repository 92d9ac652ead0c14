import { callsOurs, usesSpill } from "../../workbook/formula.ts";
import { isNoValue } from "../../workbook/scan.ts";
import { type BlockCell, cellsOf } from "./sheet/blocks.ts";
import { runInExcel } from "./sheet/run.ts";
import { asEntered, freeName } from "./sheet/write-sheet.ts";

/** Cells written in one request. */
const AT_ONCE = 500;

/**
 * Copies the active worksheet and puts values in the place of our formulas there, and of formulas that point at what ours spill; the worksheet itself
 * stays as it is. A cell that shows no value yet keeps its formula on the copy and is named.
 * @returns a sentence with what was done
 */
export async function keepValuesOnly(): Promise<string> {
  return runInExcel(async (context) => {
    const sheet = context.workbook.worksheets.getActiveWorksheet();
    sheet.load("name");
    sheet.protection.load("protected");
    await context.sync();
    const { name } = sheet;
    if (sheet.protection.protected) {
      return `${name} is protected, so no copy of it can be changed. Take the sheet protection off, then keep the values.`;
    }
    const formulas = await cellsOf(sheet, (formula) => callsOurs(formula) || usesSpill(formula));
    if (formulas.length === 0) return `${name} holds no formula of Sillwork: nothing was copied.`;

    const without = formulas.filter(({ isError, value }) => isError && isNoValue(String(value)));
    const kept = await withTables(
      sheet,
      formulas.filter((cell) => !without.includes(cell)),
    );
    const copyName = await freeName(context, `${name} values`);
    const copy = sheet.copy("After", sheet);
    copy.name = copyName;
    await context.sync();
    try {
      for (let i = 0; i < kept.length; i += AT_ONCE) {
        for (const { row, column, values } of kept.slice(i, i + AT_ONCE)) {
          copy.getRangeByIndexes(row, column, values.length, values[0]?.length ?? 1).values = values;
        }
        await context.sync();
      }
    } catch (error) {
      copy.delete();
      await context.sync();
      throw error;
    }
    copy.activate();
    await context.sync();
    return sentence(name, copyName, kept.length, without);
  });
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
