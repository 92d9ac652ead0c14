import { describe, expect, test } from "vitest";
import type { Step } from "../../src/core/kit/tape.ts";
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
  ])("of %s are none, or not known", (expression) => expect(numbersIn(step(expression), known)).toBeUndefined());

  test("the last value of a symbol counts", () => {
    const again = [...known, { symbol: "r", expression: "", value: 0.25, unit: "", clause: "" }];
    expect(numbersIn(step("1 / r"), again)).toBe("1 / 0.25");
  });
});
