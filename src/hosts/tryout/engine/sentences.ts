import { sentence } from "../../../core/kit/refusal.ts";
import { NAMESPACE } from "../../../functions/declare/cell-function.ts";
import { functionNamed } from "../../../functions/registry.ts";
import type { Evaluation } from "./evaluate.ts";

/** Errors that the spreadsheet itself gives, in words. */
const ENGINE_ERRORS: Readonly<Record<string, string>> = {
  "#DIV/0!": "The formula divides by zero or by a blank cell: no number can come of it. Check what it divides by.",
  "#NAME?": "A name in the formula is not known: it is no function and no named cell. Check the spelling.",
  "#REF!": "The formula points at a cell that is not there: it was deleted or never was. Point at another cell.",
  "#NUM!": "A number in the formula is too large, too small or not allowed where it stands. Check the numbers.",
  "#NULL!": "The formula asks for cells that two ranges share: they share none. Put a comma between the ranges.",
  "#SPILL!":
    "The result needs more cells than are free: something stands in its way. Clear the cells below and beside.",
  "#CALC!":
    "The formula gives nothing that a cell can hold, such as a function that is not called. Call it with its arguments.",
  "#N/A":
    "A spreadsheet function found no value: what it looks for is not in the range. Check the range and the value.",
  "#VALUE!":
    "A value in the formula is of a kind that cannot be calculated with, such as text where a number is wanted. Check each argument.",
};

/** Why a formula gives an error: the function's own sentence where one of ours refused, else the spreadsheet's reason in words. */
export function whyError(formula: string, error: string, { says, calls }: Evaluation): string {
  if (says !== "") return says;
  const refused = calls.map((call) => call.outcome).findLast((outcome) => !outcome.ok && outcome.code === error);
  if (refused !== undefined && !refused.ok) return sentence(refused.said);
  const unknown = error === "#NAME?" ? unknownFunction(formula) : undefined;
  if (unknown !== undefined) {
    return `${unknown} is not known: none of the functions has that name. Run "npm run functions" for the list.`;
  }
  return ENGINE_ERRORS[error] ?? `The spreadsheet gives ${error}. Check the formula.`;
}

function unknownFunction(formula: string): string | undefined {
  const outsideQuotes = formula.replace(/"(?:[^"]|"")*"/g, '""');
  const names = outsideQuotes.matchAll(new RegExp(String.raw`\b${NAMESPACE}\.([A-Z0-9_.]+)`, "gi"));
  return [...names].find(([, name]) => functionNamed(name ?? "") === undefined)?.[0];
}
