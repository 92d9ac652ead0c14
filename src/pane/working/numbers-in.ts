import type { Step } from "../../core/kit/tape.ts";
import { shownCell } from "../parts/numbers.ts";

/** Words of a formula that stand for no number of their own. */
const OF_FORMULAS = new Set(["x", "sqrt", "exp", "ln", "log", "log10", "min", "max", "sin", "cos", "tan", "abs"]);
/** "V = 110 mph" behind the formula of an expression. */
const STATED = /(?:^|, | )([A-Za-z][\w']*) = (-?\d[\d.]*)(?: [\w/ ]+?)?(?=,|$)/g;
const SYMBOL = /(?<![\w.])[A-Za-z\u0370-\u03ff][\w']*/g;
/** "CD 1.6": the number stands beside its symbol already. */
const STANDS_BESIDE = /\d \d/;
const SEVERAL = /[-+*/^(]|\S \S/;

/**
 * The formula of a step with the numbers put in that the steps before it and its own words give: "0.00256 Kz V^2, V = 110 mph" as "0.00256 x 0.85 x 110^2".
 * Undefined where it is a sentence, or where a symbol's number is not known.
 */
export function numbersIn({ expression }: Step, before: readonly Step[]): string | undefined {
  const end = expression.search(/, (?![^()]*\))/);
  const formula = end < 0 ? expression : expression.slice(0, end);
  const behind = end < 0 ? "" : expression.slice(end + 2);
  const known = new Map<string, number>();
  for (const { symbol, value } of before) if (typeof value === "number") known.set(symbol, value);
  for (const [, symbol = "", number] of behind.matchAll(STATED)) known.set(symbol, Number(number));
  const line = formula.replace(SYMBOL, (symbol, at: number) => {
    const value = known.get(symbol);
    if (value === undefined || OF_FORMULAS.has(symbol)) return symbol;
    const number = value < 0 ? `(${shownCell(value)})` : shownCell(value);
    // What stands side by side is multiplied.
    const before = formula.slice(0, at);
    return /[\w)'.] $/.test(before) && !/(?:^|[\s(])x $/.test(before) ? `x ${number}` : number;
  });
  const words = line.match(/[A-Za-z\u0370-\u03ff][\w']*/g) ?? [];
  if (
    line === formula ||
    !SEVERAL.test(formula) ||
    STANDS_BESIDE.test(line) ||
    words.some((word) => !OF_FORMULAS.has(word))
  )
    return undefined;
  // "at most 1" and its like belong to the formula.
  const rule = behind.replace(STATED, "").replace(/^, /, "");
  return rule === "" ? line : `${line}, ${rule}`;
}
