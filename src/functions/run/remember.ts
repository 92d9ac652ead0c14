import type { CellFunction } from "../declare/cell-function.ts";
import type { RawArgument } from "../declare/param.ts";
import { invoke, type Outcome } from "./invoke.ts";
import { argumentsKey } from "./sources.ts";

/** Answers kept; a workbook has few searches, and the host runs each again after every row or column edit. */
const KEPT = 500;

const answers = new Map<string, Outcome>();

/**
 * As `invoke`, but a search that was made before with the same arguments is not made again. Quick functions are not remembered:
 * finding the answer would take as long as making it.
 */
export function remembered(fn: CellFunction, raw: readonly RawArgument[]): Outcome {
  if (!fn.heavy) return invoke(fn, raw);
  const key = keyOf(fn, raw);
  const known = answers.get(key);
  const outcome = known ?? invoke(fn, raw);
  keep(key, outcome);
  return outcome;
}

/** The remembered answer of a search, where there is one. */
export function recall(fn: CellFunction, raw: readonly RawArgument[]): Outcome | undefined {
  return answers.get(keyOf(fn, raw));
}

/** Remembers an answer that was found elsewhere, in a worker. */
export function learn(fn: CellFunction, raw: readonly RawArgument[], outcome: Outcome): void {
  keep(keyOf(fn, raw), outcome);
}

function keep(key: string, outcome: Outcome): void {
  // Without a table that could not be loaded it is no answer.
  if (!outcome.ok && outcome.needs !== undefined) return;
  answers.delete(key);
  answers.set(key, outcome);
  if (answers.size > KEPT) answers.delete(answers.keys().next().value as string);
}

/** Function and arguments as one text. */
export function keyOf(fn: CellFunction, raw: readonly RawArgument[]): string {
  return `${fn.id}${argumentsKey(fn, raw)}`;
}
