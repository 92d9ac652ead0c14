import { asTyped, callsOurs, unknownName } from "../../workbook/formula.ts";
import { addressText } from "../../workbook/host.ts";
import { isNoValue } from "../../workbook/scan.ts";
import { allSheets, type BlockCell, cellsOf } from "./sheet/blocks.ts";
import { isProtected, runInExcel } from "./sheet/run.ts";

/** How many cells a sentence names. */
const NAMED = 5;

interface Result {
  readonly repaired: number;
  /** still without a value after they were written */
  readonly left: readonly string[];
  /** names that no function has */
  readonly unknown: readonly string[];
  readonly refused: readonly string[];
}

/**
 * Writes the formulas of ours that show no value, or that stand under their stored name, into their cells again, in all sheets: recalculating them
 * does not help. Counts those that came to life only.
 * @returns a sentence with what was done
 */
export async function repairFormulas(): Promise<string> {
  return runInExcel(async (context) => {
    const results: Result[] = [];
    for (const sheet of await allSheets(context)) results.push(await repairSheet(sheet));
    return sentence(results);
  });
}

async function repairSheet(sheet: Excel.Worksheet): Promise<Result> {
  const cells = await cellsOf(sheet, (formula) => callsOurs(formula));
  const broken = cells.filter(isBroken);
  const hopeless = broken.filter(({ formula }) => unknownName(String(formula)) !== undefined);
  const toWrite = broken.filter((cell) => !hopeless.includes(cell));
  const unknown = hopeless.map(({ formula }) => `${unknownName(String(formula))}`);
  for (const { row, column, formula } of toWrite) sheet.getCell(row, column).formulas = [[asTyped(String(formula))]];
  try {
    await sheet.context.sync();
  } catch (error) {
    if (!isProtected(error)) throw error;
    return { repaired: 0, left: [], unknown, refused: [sheet.name] };
  }
  const places = new Set(toWrite.map(({ row, column }) => `${row},${column}`));
  const after = places.size === 0 ? [] : await cellsOf(sheet, callsOurs);
  const left = after
    .filter((cell) => places.has(`${cell.row},${cell.column}`) && isNameError(cell))
    .map(({ row, column }) => addressText({ sheet: sheet.name, row, column }));
  return { repaired: toWrite.length - left.length, left, unknown, refused: [] };
}

function isBroken(cell: BlockCell): boolean {
  return isNameError(cell) || asTyped(String(cell.formula)) !== cell.formula;
}

/** Of the errors without a value, those that come of a name: #NAME? in any language. #SPILL! and #BUSY! need another remedy. */
function isNameError({ isError, value }: BlockCell): boolean {
  return (
    isError &&
    isNoValue(String(value)) &&
    !/^#(SPILL!|BUSY!|CALC!|GETTING_DATA|CONNECT!|BLOCKED!|FIELD!)$/.test(String(value))
  );
}

function sentence(results: readonly Result[]): string {
  const repaired = results.reduce((sum, result) => sum + result.repaired, 0);
  const left = results.flatMap((result) => result.left);
  const unknown = [...new Set(results.flatMap((result) => result.unknown))];
  const refused = results.flatMap((result) => result.refused);
  const parts = [
    `${repaired} ${repaired === 1 ? "formula works" : "formulas work"} again.`,
    left.length === 0
      ? ""
      : `Still without a value: ${named(left)}. Open the add-in from the Home tab, then repair again.`,
    unknown.length === 0 ? "" : `No function has the name ${named(unknown)}: correct the spelling in its cell.`,
    refused.length === 0
      ? ""
      : `Nothing could be written in ${refused.join(", ")}: take the sheet protection off and repair again.`,
  ];
  return parts.filter((part) => part !== "").join(" ");
}

function named(texts: readonly string[]): string {
  const rest = texts.length - NAMED;
  return `${texts.slice(0, NAMED).join(", ")}${rest > 0 ? ` and ${rest} more` : ""}`;
}
