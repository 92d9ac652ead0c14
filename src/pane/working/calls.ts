import { type CellFunction, NAMESPACE } from "../../functions/declare/cell-function.ts";
import type { CellAddress, LedgerCall, LedgerEntry } from "../../workbook/ledger.ts";
import { isTable } from "../parts/numbers.ts";

/** The names of our functions that a formula calls, without the namespace, in the order of the text; a name stands once for each time it is called. */
export function namesIn(formula: string): string[] {
  if (!formula.startsWith("=")) return [];
  const bare = formula.replace(/"(?:[^"]|"")*"|'(?:[^']|'')*'/g, " ");
  const call = new RegExp(`(?<![\\w.])${NAMESPACE}\\.([A-Z][A-Z0-9_.]*)\\s*\\(`, "gi");
  return [...bare.matchAll(call)].map((m) => (m[1] ?? "").toUpperCase());
}

/** Functions of the spreadsheet that call another many times. */
const REPEATERS = /(?<![\w.])(?:MAP|BYROW|BYCOL|MAKEARRAY|REDUCE|SCAN|LAMBDA)\s*\(/i;

export interface Call {
  readonly fn: CellFunction;
  readonly call: LedgerCall;
}

/**
 * The calls of a cell that belong to its formula, latest first: a function runs after the functions in its arguments, so the outermost comes first.
 * Calls of functions that the formula no longer names are left out, and of each function only as many as the formula has, since
 * earlier ones had other arguments.
 */
export function callsOf(formula: string, calls: readonly LedgerCall[], functions: readonly CellFunction[]): Call[] {
  const left = new Map<string, number>();
  for (const name of namesIn(formula)) left.set(name, (left.get(name) ?? 0) + 1);
  const repeats = REPEATERS.test(formula);
  const chosen: Call[] = [];
  for (const call of calls.toReversed()) {
    const fn = functions.find((f) => f.id === call.id);
    const count = left.get(fn?.name ?? "") ?? 0;
    if (fn === undefined || count === 0) continue;
    if (!repeats) left.set(fn.name, count - 1);
    chosen.push({ fn, call });
  }
  return chosen;
}

/** The latest call of each function, latest first: what a cell without a known formula most likely holds. */
export function latestCalls(calls: readonly LedgerCall[], functions: readonly CellFunction[]): Call[] {
  const seen = new Set<string>();
  const chosen: Call[] = [];
  for (const call of calls.toReversed()) {
    const fn = functions.find((f) => f.id === call.id);
    if (fn === undefined || seen.has(call.id)) continue;
    seen.add(call.id);
    chosen.push({ fn, call });
  }
  return chosen;
}

/** The cells whose table could reach over `address`, nearest first. */
export function spillsOver(address: CellAddress, entries: readonly LedgerEntry[]): CellAddress[] {
  return entries
    .filter(({ address: from, calls }) => {
      const down = address.row - from.row;
      const across = address.column - from.column;
      const outcome = calls.at(-1)?.outcome;
      if (from.sheet !== address.sheet || down < 0 || across < 0 || down + across === 0) return false;
      if (outcome?.ok !== true || !isTable(outcome.value)) return false;
      return down < outcome.value.length && across < (outcome.value[0]?.length ?? 0);
    })
    .map((entry) => entry.address)
    .sort((a, b) => b.row - a.row || b.column - a.column);
}
