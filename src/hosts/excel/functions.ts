import type { Cell } from "../../core/tape.ts";
import type { CellFunction } from "../../functions/declare.ts";
import { invoke, type Outcome } from "../../functions/invoke.ts";
import { registry } from "../../functions/registry.ts";
import { parseAddress } from "../host.ts";
import type { CellAddress, Ledger } from "../ledger.ts";
import { numberAgain, splitArguments } from "./arguments.ts";

/** What Excel gets of a function: a value, or rows that spill. */
export type ExcelResult = Cell | Cell[][];

/** The part of `CustomFunctions` that is there as soon as office.js is loaded, in Excel or out of it. */
export interface Association {
  associate(id: string, fn: (...given: unknown[]) => ExcelResult): void;
}

/**
 * Tells Excel which code belongs to which id of functions.json.
 * @returns how many functions were associated
 */
export function associateFunctions(
  to: Association,
  ledger: Ledger,
  functions: readonly CellFunction[] = registry,
): number {
  for (const fn of functions) to.associate(fn.id, excelFunction(fn, ledger));
  return functions.length;
}

/**
 * A declared function as Excel calls it. It answers at once, never by a promise: a promise that stays open leaves the cell busy.
 * @throws the host's own error object with the sentence, since only that reaches the cell
 */
export function excelFunction(fn: CellFunction, ledger: Ledger): (...given: unknown[]) => ExcelResult {
  return (...given) => {
    const { args: all, invocation } = splitArguments(given);
    const args = all.map((raw, i) => (fn.params[i]?.param.kind === "choice" ? numberAgain(raw) : raw));
    const outcome = invoke(fn, args);
    const address = invocation?.address === undefined ? undefined : addressOfCall(invocation.address);
    // While the user looks at a part of a formula the cell has calculated nothing yet.
    if (address !== undefined && !invocation?.isInValuePreview) ledger.record(address, { id: fn.id, args, outcome });
    return resultOf(outcome);
  };
}

/** Some builds put the workbook's name in front: [Book.xlsx]Sheet1!B4 */
function addressOfCall(text: string): CellAddress | undefined {
  return parseAddress(text.replace(/^('?)\[[^\]]*\]/, "$1"));
}

function resultOf(outcome: Outcome): ExcelResult {
  if (!outcome.ok) throw hostError(outcome.code, outcome.says);
  const { value } = outcome;
  return Array.isArray(value) ? value.map((row) => [...row]) : (value as Cell);
}

/** Looked up at run time: outside Excel, office.js has no such class. */
function hostError(code: "#VALUE!" | "#N/A", says: string): Error | CustomFunctions.Error {
  const host = (globalThis as { CustomFunctions?: Partial<typeof CustomFunctions> }).CustomFunctions;
  if (host?.Error === undefined || host.ErrorCode === undefined) return new Error(`${code} ${says}`);
  const codes = { "#VALUE!": host.ErrorCode.invalidValue, "#N/A": host.ErrorCode.notAvailable };
  return new host.Error(codes[code], says);
}
