/** The command `npm run -s cell`: formulas in, one line of JSON out for each. */
import { readFileSync } from "node:fs";
import { sentence } from "../../../core/kit/refusal.ts";
import { NAMESPACE } from "../../../functions/declare/cell-function.ts";
import { isCellError, type RawArgument } from "../../../functions/declare/raw.ts";
import { registry } from "../../../functions/registry.ts";
import { explain } from "../../../functions/run/invoke.ts";
import { type Evaluation, Evaluator } from "../engine/evaluate.ts";
import { whyError } from "../engine/sentences.ts";
import { print, quietly } from "./quietly.ts";

const USAGE = `Usage:
  npm run -s cell -- '=${NAMESPACE}.LENGTH("12 ft 6 in")'      prints the value as JSON
  npm run -s cell -- --working '=...'             prints the value and its working
  npm run -s cell -- --file formulas.txt          one formula a line; # starts a comment; - reads standard input
In a shell, keep the formula in single quotes and write a foot mark as '\\'' or as ft.`;

interface Task {
  readonly formulas: readonly string[];
  readonly working: boolean;
}

function readTask(args: readonly string[]): Task | undefined {
  const rest = [...args];
  const working = rest[0] === "--working" && rest.shift() !== undefined;
  if (rest[0] === "--file" && rest.length === 2) {
    const lines = readFileSync(rest[1] === "-" ? 0 : String(rest[1]), "utf8").split(/\r?\n/);
    return {
      working,
      formulas: lines.map((line) => line.trim()).filter((line) => line !== "" && !line.startsWith("#")),
    };
  }
  const formula = rest[0];
  return rest.length === 1 && formula !== undefined && formula.trim() !== "" && !formula.startsWith("--")
    ? { working, formulas: [formula.trim()] }
    : undefined;
}

/** The answer as printed: a value, rows of values, or { error, says }. */
function answer(formula: string, found: Evaluation): unknown {
  const cell = (value: unknown): unknown =>
    isCellError(value as RawArgument)
      ? {
          error: (value as { error: string }).error,
          says: whyError(formula, (value as { error: string }).error, found),
        }
      : (value ?? "");
  return Array.isArray(found.value) ? found.value.map((row) => row.map(cell)) : cell(found.value);
}

function holdsError(value: RawArgument): boolean {
  return Array.isArray(value) ? value.flat().some(isCellError) : isCellError(value);
}

/** The working of each call, in the order in which the cell made them. */
function workings(found: Evaluation): unknown[] {
  return found.calls.flatMap((call) => {
    const fn = registry.find(({ id }) => id === call.id);
    if (fn === undefined) return [];
    const { outcome, arguments: given, steps, assumptions, cautions, sources } = explain(fn, call.args);
    const result = outcome.ok ? { value: outcome.value } : { error: outcome.code, says: sentence(outcome.said) };
    return [
      {
        function: `${NAMESPACE}.${fn.name}`,
        unit: fn.returns.unit,
        ...result,
        arguments: given,
        steps,
        assumptions,
        cautions,
        sources,
      },
    ];
  });
}

async function main(): Promise<number> {
  const task = readTask(process.argv.slice(2));
  if (task === undefined) {
    process.stderr.write(`${USAGE}\n`);
    return 2;
  }
  const evaluator = new Evaluator(registry);
  const lines: string[] = [];
  let failed = false;
  for (const formula of task.formulas) {
    const found = await evaluator.evaluate(formula);
    failed ||= holdsError(found.value);
    const value = answer(formula, found);
    lines.push(JSON.stringify(task.working ? { formula, result: value, calls: workings(found) } : value));
  }
  evaluator.dispose();
  await print(lines.map((line) => `${line}\n`).join(""));
  return failed ? 1 : 0;
}

await quietly(main);
