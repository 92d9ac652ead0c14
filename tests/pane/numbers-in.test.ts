import { evaluate } from "mathjs";
import { describe, expect, test } from "vitest";
import type { Step } from "../../src/core/kit/tape.ts";
import { positional } from "../../src/functions/declare/formula.ts";
import { registry } from "../../src/functions/registry.ts";
import { explain } from "../../src/functions/run/invoke.ts";
import { numbersIn } from "../../src/pane/working/numbers-in.ts";

const step = (expression: string): Step => ({ symbol: "y", expression, value: 1, unit: "", clause: "" });
const known: readonly Step[] = [
  ["Kz", 0.8487],
  ["Ke", 0.975],
  ["r", 0.5],
  ["z", 15],
  ["zg", 2460],
  ["alpha", 9.8],
  ["dT", -8],
  ["upper", 3.2],
].map(([symbol, value]) => ({ symbol: String(symbol), expression: "", value: value as number, unit: "", clause: "" }));

describe("the numbers of a step", () => {
  test.each([
    ["0.00256 Kz Ke V^2, V = 110 mph", "0.00256 x 0.8487 x 0.975 x 110^2"],
    ["2.41 (z/zg)^(2/alpha)", "2.41 (15/2460)^(2/9.8)"],
    ["r / (3 - 2 r) x 40 / 20, at most 1", "0.5 / (3 - 2 x 0.5) x 40 / 20, at most 1"],
    ["max(Kz, r) x z", "max(0.8487, 0.5) x 15"],
    ["r dT", "0.5 x (−8)"],
  ])("%s", (expression, numbers) => expect(numbersIn(step(expression), known)).toBe(numbers));

  test.each([
    "smaller of 0.1 least width and 0.4 h",
    "upper, but not less than lower",
    "Kz P",
    "0.5 x 40",
    "as given",
    "2r + 1",
    "1930 x r 0.5",
  ])("of %s are none, or not known", (expression) => expect(numbersIn(step(expression), known)).toBeUndefined());

  test("the last value of a symbol counts", () => {
    const again = [...known, { symbol: "r", expression: "", value: 0.25, unit: "", clause: "" }];
    expect(numbersIn(step("1 / r"), again)).toBe("1 / 0.25");
  });
});

/** The line as a calculator reads it; undefined for one with a rule behind it, which goes beyond the formula. */
function reckoned(line: string): number | undefined {
  if (/, (?![^()]*\))/.test(line)) return undefined;
  const value = evaluate(
    line
      .replaceAll("−", "-")
      .replaceAll("[", "(")
      .replaceAll("]", ")")
      .replaceAll(" x ", " * ")
      .replace(/\bln\b/g, "log")
      .replace(/(?<=\d),(?=\d{3})/g, ""),
  );
  return typeof value === "number" ? value : undefined;
}

test("with its numbers put in, each formula of the examples gives the value of its step", () => {
  const wrong: string[] = [];
  let lines = 0;
  for (const fn of registry) {
    const { steps } = explain(fn, positional(fn, fn.example.args));
    steps.forEach((step, i) => {
      const line = numbersIn(step, steps.slice(0, i));
      if (line === undefined || typeof step.value !== "number") return;
      let value: number | undefined;
      try {
        value = reckoned(line);
      } catch (error) {
        wrong.push(`${fn.name}: ${step.symbol} = ${step.expression} = ${line}: ${error}`);
        return;
      }
      if (value === undefined) return;
      lines++;
      // Numbers are shown in five digits.
      if (Math.abs(value - step.value) > 2e-3 * Math.max(Math.abs(step.value), 1e-9))
        wrong.push(`${fn.name}: ${step.symbol} ${step.value} ${step.unit} = ${step.expression} = ${line} = ${value}`);
    });
  }
  expect(wrong).toEqual([]);
  expect(lines).toBeGreaterThan(25);
});
