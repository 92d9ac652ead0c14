import { sentence } from "../../core/kit/refusal.ts";
import { type CellFunction, NAMESPACE } from "../../functions/declare/cell-function.ts";
import type { FunctionText } from "../../functions/declare/describe.ts";
import { formulaOf, positional, refusedArguments } from "../../functions/declare/formula.ts";
import { invoke } from "../../functions/run/invoke.ts";
import "../../functions/run/tables-at-once.ts";

/** Refused calls with the whole sentence that the cell says. */
export function refusals(fn: CellFunction): FunctionText["refuses"] {
  return fn.refuses.map((refused) => {
    const args = refusedArguments(fn, refused);
    const outcome = invoke(fn, positional(fn, args));
    return { formula: formulaOf(fn, args, NAMESPACE), says: outcome.ok ? refused.says : sentence(outcome.said) };
  });
}
