import { sentence } from "../../core/kit/refusal.ts";
import type { Cell } from "../../core/kit/tape.ts";
import type { CellFunction } from "../../functions/declare/cell-function.ts";
import type { Outcome } from "../../functions/run/invoke.ts";
import { type Answer, answered } from "../../functions/run/tables-on-demand.ts";
import { parseAddress } from "../../workbook/host.ts";
import type { CellAddress, Ledger } from "../../workbook/ledger.ts";
import { numberAgain, splitArguments } from "./arguments.ts";

/** What Excel gets of a function: a value, or rows that spill. */
export type ExcelResult = Cell | Cell[][];

/** A function as Excel calls it, with the invocation object behind the arguments. */
export type ExcelFunction = (...given: unknown[]) => ExcelResult | Promise<ExcelResult>;

/** The part of `CustomFunctions` that is there as soon as office.js is loaded, in Excel or out of it. */
export interface Association {
  associate(id: string, fn: ExcelFunction): void;
}

/**
 * A declared function as Excel calls it. It answers at once; by a promise, for which the cell shows that it is busy, only where a search is to be made or
 * a table to be loaded. Such a promise never stays open.
 * @throws the host's own error object with the sentence, since only that reaches the cell; a promise is refused with it
 */
export function excelFunction(fn: CellFunction, ledger: Ledger, answer: Answer = answered): ExcelFunction {
  return (...given) => {
    const { args: all, invocation } = splitArguments(given);
    const args = all.map((raw, i) => (fn.params[i]?.param.kind === "choice" ? numberAgain(raw) : raw));
    // Read now: Excel need not keep the object for an answer that comes later.
    const address = invocation?.address === undefined ? undefined : addressOfCall(invocation.address);
    // While the user looks at a part of a formula the cell has calculated nothing yet.
    const records = address !== undefined && !invocation?.isInValuePreview;
    const turn = ledger.turn();
    const finish = (outcome: Outcome): ExcelResult => {
      if (records) ledger.record(address, { id: fn.id, args, outcome }, turn);
      return resultOf(outcome);
    };
    const found = answer(fn, args);
    return found instanceof Promise ? found.then(finish) : finish(found);
  };
}

/** Some builds put the workbook's name in front: [Book.xlsx]Sheet1!B4 */
function addressOfCall(text: string): CellAddress | undefined {
  return parseAddress(text.replace(/^('?)\[[^\]]*\]/, "$1"));
}

function resultOf(outcome: Outcome): ExcelResult {
  if (!outcome.ok) throw hostError(outcome.code, sentence(outcome.said));
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
