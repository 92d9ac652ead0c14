import { asTyped, callsOurs } from "./formula.ts";
import { runInExcel } from "./run.ts";
import { asEntered } from "./write-sheet.ts";

/** Tells the user what a command has done. */
export type Report = (sentence: string) => void;

/** Binds the ribbon's buttons; the names are those of the manifest. */
export function associateCommands(report: Report): void {
  Office.actions.associate("repairFormulas", command(repairFormulas, report));
  Office.actions.associate("freezeSheet", command(freezeSheet, report));
}

/** Shows the pane, where the sentence stands. Every command ends with `completed`, or its button stays busy. */
function command(work: () => Promise<string>, report: Report): (event: Office.AddinCommands.Event) => Promise<void> {
  return async (event) => {
    try {
      report(await work());
    } catch (error) {
      report(error instanceof Error ? error.message : String(error));
    }
    await Office.addin.showAsTaskpane().catch(() => {});
    event.completed();
  };
}

/**
 * Writes the formulas of ours that show #NAME?, or that stand under their stored name, into their cells again, in all sheets: recalculating them
 * does not help.
 * @returns a sentence with what was done
 */
export async function repairFormulas(): Promise<string> {
  return runInExcel(async (context) => {
    const sheets = context.workbook.worksheets;
    sheets.load("items/name");
    await context.sync();
    const used = sheets.items.map((sheet) => {
      const range = sheet.getUsedRangeOrNullObject();
      range.load("formulas,values");
      return { sheet, range };
    });
    await context.sync();

    let repaired = 0;
    const refused: string[] = [];
    for (const { sheet, range } of used) {
      if (range.isNullObject) continue;
      const cells = brokenCells(range);
      for (const { row, column, formula } of cells) range.getCell(row, column).formulas = [[asTyped(formula)]];
      try {
        await context.sync();
        repaired += cells.length;
      } catch {
        refused.push(sheet.name);
      }
    }
    const done = `${counted(repaired, "formula")} written into ${repaired === 1 ? "its cell" : "their cells"} again.`;
    return refused.length === 0
      ? done
      : `${done} Nothing could be written in ${refused.join(", ")}: take the sheet protection off and repair again.`;
  });
}

function brokenCells(range: Excel.Range): { row: number; column: number; formula: string }[] {
  return range.formulas.flatMap((line: unknown[], row) =>
    line.flatMap((formula, column) =>
      callsOurs(formula) && (range.values[row]?.[column] === "#NAME?" || asTyped(formula) !== formula)
        ? [{ row, column, formula }]
        : [],
    ),
  );
}

/**
 * Replaces every formula of the active sheet that calls a function of ours by what it shows, tables with all their cells.
 * @returns a sentence with what was done
 */
export async function freezeSheet(): Promise<string> {
  return runInExcel(async (context) => {
    const sheet = context.workbook.worksheets.getActiveWorksheet();
    sheet.load("name");
    const used = sheet.getUsedRangeOrNullObject();
    used.load("formulas");
    await context.sync();
    if (used.isNullObject) return `${sheet.name} is empty: there was nothing to freeze.`;

    const cells = used.formulas.flatMap((line: unknown[], row) =>
      line.flatMap((formula, column) => (callsOurs(formula) ? [used.getCell(row, column)] : [])),
    );
    const results = cells.map((cell) => {
      const spill = cell.getSpillingToRangeOrNullObject();
      spill.load("values");
      cell.load("values");
      return { cell, spill };
    });
    await context.sync();
    for (const { cell, spill } of results) {
      const values = spill.isNullObject ? cell.values : spill.values;
      const target = spill.isNullObject ? cell : cell.getResizedRange(values.length - 1, (values[0]?.length ?? 1) - 1);
      target.values = values.map((row) => row.map(frozen));
    }
    await context.sync();
    return `${counted(cells.length, "formula")} on ${sheet.name} replaced by ${cells.length === 1 ? "its value" : "their values"}. Undo brings them back.`;
  });
}

/** An error stays an error; a text stays the text that it is. */
function frozen(value: unknown): string | number | boolean {
  if (typeof value === "number" || typeof value === "boolean") return value;
  const text = String(value ?? "");
  return /^#[A-Z/0-9]+[!?]?$/.test(text) ? text : (asEntered(text) as string);
}

function counted(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? "" : "s"}`;
}
