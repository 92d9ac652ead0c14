/** The command `npm run -s cell`: formulas in, one line of JSON out for each. */
import { readFileSync } from "node:fs";
import { sentence } from "../../../core/kit/refusal.ts";
import { NAMESPACE } from "../../../functions/declare/cell-function.ts";
import { isCellError, type RawArgument } from "../../../functions/declare/raw.ts";
import { registry } from "../../../functions/registry.ts";
import { explain } from "../../../functions/run/invoke.ts";
import { type Evaluation, Evaluator } from "../engine/evaluate.ts";
import { whyError } from "../engine/sentences.ts";
import { checkText } from "./check.ts";
import { print, quietly } from "./quietly.ts";

const USAGE = `Usage:
  npm run -s cell -- '=${NAMESPACE}.LENGTH("12 ft 6 in")'      prints the value as JSON
  npm run -s cell -- --working '=...'             prints the value and its working
  npm run -s cell -- --file formulas.txt          one formula a line; # starts a comment; - reads standard input
  npm run -s cell -- --check cases.txt            formulas and what is expected of them, all else prose:
      =SILL.WIND_PRESSURE(115, 30, "B")
      expect 20.1 psf within 0.05                 (half of the last digit where nothing is said)
      expect "text", expect refusal "above 60", expect caution "map of the same edition"
      back =SILL.NAME(ANSWER)                     a formula on the exact answer of the one above
      let Basis = {"Basis","Value";"wind speed",115}
In a shell, keep the formula in single quotes and write a foot mark as '\\'' or as ft.`;

interface Task {
  readonly formulas: readonly string[];
  readonly working: boolean;
  /** a text of cases to check, instead of formulas */
  readonly cases?: string;
}

/** A file's text, or what comes on standard input. */
function textOf(file: string): string {
  return readFileSync(file === "-" ? 0 : file, "utf8");
}

function readTask(args: readonly string[]): Task | undefined {
  const rest = [...args];
  const at = rest.indexOf("--working");
  const working = at >= 0 && rest.splice(at, 1).length > 0;
  if (rest[0] === "--file" && rest.length === 2) {
    const lines = textOf(String(rest[1])).split(/\r?\n/);
    return {
      working,
      formulas: lines.map((line) => line.trim()).filter((line) => line !== "" && !line.startsWith("#")),
    };
  }
  if (rest[0] === "--check" && rest.length === 2) return { working, formulas: [], cases: textOf(String(rest[1])) };
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
  if (task.cases !== undefined) {
    const { passed, failed } = await checkText(task.cases, evaluator);
    evaluator.dispose();
    await print(
      `${failed.map(({ line, says }) => `line ${line}: ${says}\n`).join("")}${passed} hold, ${failed.length} fail\n`,
    );
    return failed.length === 0 && passed > 0 ? 0 : 1;
  }
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
