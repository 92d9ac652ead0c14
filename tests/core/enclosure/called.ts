import { sentence } from "../../../src/core/kit/refusal.ts";
import type { Cell, Table } from "../../../src/core/kit/tape.ts";
import type { RawArgument } from "../../../src/functions/declare/param.ts";
import { functionNamed } from "../../../src/functions/registry.ts";
import { explain, invoke, type Working } from "../../../src/functions/run/invoke.ts";
import { withoutHeadings } from "../../../src/functions/run/present.ts";

const named = (name: string) => {
  const fn = functionNamed(name);
  if (fn === undefined) throw new Error(`There is no ${name}`);
  return fn;
};

/** The answer of a call as a cell gets it, without headings. */
export function value(name: string, ...args: RawArgument[]): Cell | Table {
  const fn = named(name);
  const outcome = invoke(fn, args);
  if (!outcome.ok) throw new Error(`${outcome.code} ${sentence(outcome.said)}`);
  return withoutHeadings(fn, outcome.value);
}

/** The sentence of a refusal with its code, "" where there is an answer. */
export function says(name: string, ...args: RawArgument[]): string {
  const outcome = invoke(named(name), args);
  return outcome.ok ? "" : `${outcome.code} ${sentence(outcome.said)}`;
}

export const working = (name: string, ...args: RawArgument[]): Working => explain(named(name), args);
export const cautions = (name: string, ...args: RawArgument[]): string => working(name, ...args).cautions.join(" | ");
