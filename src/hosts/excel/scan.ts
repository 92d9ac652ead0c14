import { asTyped, callsOurs } from "../../workbook/formula.ts";
import { addressText } from "../../workbook/host.ts";
import type { CellAddress } from "../../workbook/ledger.ts";
import type { FoundCell, Scan } from "../../workbook/scan.ts";
import { allSheets, cellsOf } from "./sheet/blocks.ts";
import { isProtected, runInExcel } from "./sheet/run.ts";

/** See `Host.scan`: looks at the formulas of every worksheet. */
export async function scanWorkbook(): Promise<Scan> {
  return runInExcel(async (context) => {
    const cells: FoundCell[] = [];
    const unread: { sheet: string; says: string }[] = [];
    for (const sheet of await allSheets(context)) {
      try {
        for (const { row, column, formula, value, isError } of await cellsOf(sheet, isOfInterest)) {
          const address = { sheet: sheet.name, row, column };
          cells.push({
            address,
            formula: String(formula),
            error: isError ? String(value) : "",
            ours: callsOurs(formula),
          });
        }
      } catch (error) {
        unread.push({ sheet: sheet.name, says: error instanceof Error ? error.message : String(error) });
      }
    }
    return { cells, unread };
  });
}

function isOfInterest(formula: unknown, isError: boolean): boolean {
  return callsOurs(formula) || (isError && typeof formula === "string" && formula.startsWith("="));
}

/**
 * See `Host.calculate`: writes formulas into their cells again, which is what makes Excel calculate them whatever state they were stored in.
 * @returns the cells that could not be written
 */
export async function calculateCells(cells: readonly CellAddress[]): Promise<CellAddress[]> {
  return runInExcel(async (context) => {
    const refused: CellAddress[] = [];
    for (const [name, places] of bySheet(cells)) {
      const sheet = context.workbook.worksheets.getItemOrNullObject(name);
      await context.sync();
      if (sheet.isNullObject) continue;
      const wanted = new Set(places.map(addressText));
      const found = await cellsOf(sheet, callsOurs);
      for (const { row, column, formula } of found) {
        if (wanted.has(addressText({ sheet: name, row, column }))) {
          sheet.getCell(row, column).formulas = [[asTyped(String(formula))]];
        }
      }
      try {
        await context.sync();
      } catch (error) {
        if (!isProtected(error)) throw error;
        refused.push(...places);
      }
    }
    return refused;
  });
}

function bySheet(cells: readonly CellAddress[]): Map<string, CellAddress[]> {
  const sheets = new Map<string, CellAddress[]>();
  for (const cell of cells) sheets.set(cell.sheet, [...(sheets.get(cell.sheet) ?? []), cell]);
  return sheets;
}
