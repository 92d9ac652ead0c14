import { sentence } from "../../src/core/kit/refusal.ts";
import type { Cell, Table } from "../../src/core/kit/tape.ts";
import type { RawArgument } from "../../src/functions/declare/param.ts";
import { functionNamed } from "../../src/functions/registry.ts";
import { explain, invoke, type Working } from "../../src/functions/run/invoke.ts";
import { withoutHeadings } from "../../src/functions/run/present.ts";

/** Calls as they are typed into cells: a value of any kind stands for what a cell may hold. */

const named = (name: string) => {
  const fn = functionNamed(name);
  if (fn === undefined) throw new Error(`There is no ${name}`);
  return fn;
};

const outcomeOf = (name: string, args: readonly unknown[]) => invoke(named(name), args as readonly RawArgument[]);

function answer(name: string, args: readonly unknown[]): Cell | Table {
  const outcome = outcomeOf(name, args);
  if (!outcome.ok) throw new Error(`${outcome.code} ${sentence(outcome.said)}`);
  return outcome.value;
}

/** The answer of a call as a cell gets it, without headings. */
export const value = (name: string, ...args: readonly unknown[]): Cell | Table =>
  withoutHeadings(named(name), answer(name, args));

/** The answer with its headings. */
export const tableOf = (name: string, ...args: readonly unknown[]): Table => answer(name, args) as Table;

/** The sentence of a refusal, "" where there is an answer. */
export function refusal(name: string, ...args: readonly unknown[]): string {
  const outcome = outcomeOf(name, args);
  return outcome.ok ? "" : sentence(outcome.said);
}

/** The sentence of a refusal with its code, "" where there is an answer. */
export function says(name: string, ...args: readonly unknown[]): string {
  const outcome = outcomeOf(name, args);
  return outcome.ok ? "" : `${outcome.code} ${sentence(outcome.said)}`;
}

/** What a cell shows: the value, or the sentence of the refusal. */
export function cell(name: string, ...args: readonly unknown[]): Cell | Table {
  const outcome = outcomeOf(name, args);
  return outcome.ok ? outcome.value : sentence(outcome.said);
}

export const working = (name: string, ...args: readonly unknown[]): Working =>
  explain(named(name), args as readonly RawArgument[]);
export const cautions = (name: string, ...args: readonly unknown[]): string =>
  working(name, ...args).cautions.join(" | ");
