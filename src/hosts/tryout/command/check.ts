import { sentence } from "../../../core/kit/refusal.ts";
import { convert } from "../../../core/units/quantity.ts";
import { NAMESPACE } from "../../../functions/declare/cell-function.ts";
import { literal } from "../../../functions/declare/formula.ts";
import { isCellError, type RawArgument } from "../../../functions/declare/raw.ts";
import { registry } from "../../../functions/registry.ts";
import { explain } from "../../../functions/run/invoke.ts";
import type { Evaluation, Evaluator } from "../engine/evaluate.ts";
import { whyError } from "../engine/sentences.ts";

/** What a text of cases came to. */
export interface Checked {
  readonly passed: number;
  /** each with the number of its line, from 1 */
  readonly failed: readonly { readonly line: number; readonly says: string }[];
}

/** What a line asks for; all other lines are prose. */
type Line =
  | { readonly verb: "name"; readonly name: string; readonly stands: string }
  | { readonly verb: "formula"; readonly formula: string; readonly back: boolean }
  | { readonly verb: "expect"; readonly expected: Expected }
  | { readonly verb: "unread" };

type Expected =
  | { readonly kind: "number"; readonly value: number; readonly unit: string; readonly within: number }
  | { readonly kind: "text"; readonly text: string }
  | { readonly kind: "refusal"; readonly text: string }
  | { readonly kind: "caution"; readonly text: string };

const NUMBER = /^expect (-?\d[\d.,]*(?:e[-+]?\d+)?)(?: ([^"]*?))??(?: within (\d[\d.]*(?:e[-+]?\d+)?))?$/i;
const WORDS = /^expect (?:(refusal|caution) )?"(.*)"$/;

/** The word that stands for the exact answer of the formula above, in a formula after `back`. */
const ANSWER = "ANSWER";

/** @returns undefined for prose */
function readLine(text: string): Line | undefined {
  const [, name, stands] = /^let (\w+) = (.+)$/.exec(text) ?? [];
  if (name !== undefined && stands !== undefined) return { verb: "name", name, stands };
  if (text.startsWith("=")) return { verb: "formula", formula: text, back: false };
  if (text.startsWith("back =")) return { verb: "formula", formula: text.slice("back ".length), back: true };
  if (!/^(expect|back|let) /.test(text)) return undefined;
  const expected = readExpected(text);
  return expected === undefined ? { verb: "unread" } : { verb: "expect", expected };
}

function readExpected(text: string): Expected | undefined {
  const [, kind = "text", words] = WORDS.exec(text) ?? [];
  if (words !== undefined) return { kind: kind as "text" | "refusal" | "caution", text: words.replaceAll('""', '"') };
  const [, printed, unit = "", within] = NUMBER.exec(text) ?? [];
  if (printed === undefined) return undefined;
  const digits = printed.replaceAll(",", "");
  return { kind: "number", value: Number(digits), unit, within: Number(within ?? halfLastDigit(digits)) };
}

/** Half of the last printed digit: what an expectation may miss by that says nothing else. */
function halfLastDigit(printed: string): number {
  const [mantissa = "", exponent = "0"] = printed.toLowerCase().split("e");
  return 0.5 * 10 ** (Number(exponent) - (mantissa.split(".")[1]?.length ?? 0));
}

/** A formula with names put in, but not inside its texts. */
function withNames(formula: string, names: ReadonlyMap<string, string>): string {
  const put = (part: string) => part.replace(/[A-Za-z_]\w*/g, (word) => names.get(word) ?? word);
  return formula
    .split(/("(?:[^"]|"")*")/)
    .map((part) => (part.startsWith('"') ? part : put(part)))
    .join("");
}

interface Case {
  readonly line: number;
  readonly formula: string;
  readonly found: Evaluation;
  expectations: number;
}

/**
 * Runs a text of cases: formulas, each followed by what is expected of it, with prose between. A formula of which nothing is expected fails, since it would
 * pass whatever it gave.
 */
export async function checkText(text: string, evaluator: Evaluator): Promise<Checked> {
  const names = new Map<string, string>();
  const failed: { line: number; says: string }[] = [];
  let passed = 0;
  let current: Case | undefined;
  const idle = () => {
    if (current?.expectations === 0) failed.push({ line: current.line, says: "nothing is expected of this formula" });
  };
  for (const [i, raw] of text.split(/\r?\n/).entries()) {
    const line = readLine(raw.trim());
    if (line === undefined) continue;
    const fail = (says: string) => failed.push({ line: i + 1, says });
    if (line.verb === "name") names.set(line.name, withNames(line.stands, names));
    else if (line.verb === "unread") fail("this cannot be read: see npm run -s cell without arguments");
    else if (line.verb === "formula") {
      idle();
      const answer = line.back && current !== undefined ? literal(current.found.value) : ANSWER;
      const formula = withNames(line.formula, new Map([...names, [ANSWER, answer]]));
      current = { line: i + 1, formula, found: await evaluator.evaluate(formula), expectations: 0 };
    } else if (current === undefined) fail("no formula stands above this");
    else {
      current.expectations++;
      const says = missOf(line.expected, current);
      if (says === undefined) passed++;
      else fail(says);
    }
  }
  idle();
  return { passed, failed: failed.sort((a, b) => a.line - b.line) };
}

/** What is wrong with an answer, or undefined. */
function missOf(expected: Expected, { formula, found }: Case): string | undefined {
  const value = single(found.value);
  const refusal = isCellError(value) ? `${value.error} ${whyError(formula, value.error, found)}` : undefined;
  if (expected.kind === "refusal") {
    if (refusal === undefined) return `it answers ${literal(value)}`;
    return refusal.includes(expected.text) ? undefined : `it says: ${refusal}`;
  }
  if (refusal !== undefined) return `it says: ${refusal}`;
  if (expected.kind === "caution") {
    const cautions = cautionsOf(found);
    return cautions.some((c) => c.includes(expected.text))
      ? undefined
      : `it cautions: ${cautions.join(" ") || "nothing"}`;
  }
  if (expected.kind === "text") return String(value) === expected.text ? undefined : `it gives ${literal(value)}`;
  return numberMiss(expected, value, unitOf(formula, found));
}

function numberMiss(expected: Expected & { kind: "number" }, value: RawArgument, unit: string): string | undefined {
  if (typeof value !== "number") return `it gives ${literal(value)}`;
  if (expected.unit !== "" && unit === "")
    return "an answer that no single function gives has no unit to hold this against";
  const got = inUnit(value, unit, expected.unit);
  if (got === undefined) return `its unit is ${unit}`;
  if (Math.abs(got - expected.value) <= expected.within * (1 + 1e-9)) return undefined;
  return `it gives ${got}${expected.unit === "" ? "" : ` ${expected.unit}`}, off by ${Math.abs(got - expected.value)}`;
}

/** The answer in the unit of the expectation; undefined where it measures something else. */
function inUnit(value: number, unit: string, wanted: string): number | undefined {
  if (wanted === "" || wanted === unit) return value;
  try {
    return convert(value, unit, wanted);
  } catch {
    // Another kind of quantity, or a unit that is never converted.
    return undefined;
  }
}

/** A range of one cell is its cell. */
function single(value: RawArgument): RawArgument {
  return Array.isArray(value) && value.length === 1 && value[0]?.length === 1 ? (value[0][0] as RawArgument) : value;
}

/** The unit of the function whose answer the formula is: the call that was made last, where nothing is done to it. */
function unitOf(formula: string, found: Evaluation): string {
  const fn = registry.find(({ id }) => id === found.calls.at(-1)?.id);
  return fn !== undefined && formula.toUpperCase().startsWith(`=${NAMESPACE}.${fn.name}(`) ? fn.returns.unit : "";
}

function cautionsOf(found: Evaluation): string[] {
  return found.calls.flatMap((call) => {
    const fn = registry.find(({ id }) => id === call.id);
    if (fn === undefined) return [];
    const { cautions, outcome } = explain(fn, call.args);
    return outcome.ok ? [...cautions] : [sentence(outcome.said)];
  });
}
