import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { betaShare } from "../../../src/core/cost/beta.ts";
import { bidBuildUp } from "../../../src/core/cost/bid.ts";
import { contingency } from "../../../src/core/cost/contingency.ts";
import type { CostLine } from "../../../src/core/cost/lines.ts";
import { triangularQuantile } from "../../../src/core/cost/range.ts";
import { draw, errorOf, notPassed } from "../../../src/core/cost/simulation.ts";

const line = (name: string, amount: number, low?: number, high?: number): CostLine => ({
  line: name,
  kind: "labor",
  amount,
  low,
  high,
});

describe("curves at their ends", () => {
  test("the beta curve of whole shapes is a polynomial, to twelve digits", () => {
    // I_x(2, 3) = 6 x^2 - 8 x^3 + 3 x^4, I_x(1, 5) = 1 - (1 - x)^5, I_x(4, 1) = x^4
    for (const x of [0.05, 0.2, 0.39, 0.41, 0.5, 0.8, 0.95]) {
      expect(betaShare(x, { a: 2, b: 3 })).toBeCloseTo(6 * x ** 2 - 8 * x ** 3 + 3 * x ** 4, 12);
      expect(betaShare(x, { a: 1, b: 5 })).toBeCloseTo(1 - (1 - x) ** 5, 12);
      expect(betaShare(x, { a: 4, b: 1 })).toBeCloseTo(x ** 4, 12);
    }
    expect(betaShare(1.5, { a: 2, b: 3 })).toBe(1);
  });

  test("a triangle one dollar wide, and one of no width", () => {
    const at = triangularQuantile({ low: 0, likely: 0.5, high: 1 });
    expect([0.125, 0.5, 0.875].map(at)).toEqual([0.25, 0.5, 0.75].map((v) => expect.closeTo(v, 12)));
    expect(triangularQuantile({ low: 7, likely: 7, high: 7 })(0.3)).toBe(7);
  });
});

describe("trials", () => {
  test("20,000 of them, each drawn", () => {
    const { totals, each } = draw([() => 2, () => 3], 0.5, 1);
    expect(totals).toHaveLength(20_000);
    expect(new Set(totals)).toEqual(new Set([5]));
    expect(each.map((values) => new Set(values))).toEqual([new Set([2]), new Set([3])]);
  });

  test("the value that a share does not pass is one of the list at both ends, dust apart", () => {
    const ten = Float64Array.from({ length: 10 }, (_, i) => i + 1);
    const hundred = Float64Array.from({ length: 100 }, (_, i) => i + 1);
    expect(0.07 * 100).toBeGreaterThan(7);
    expect(notPassed(hundred, 0.07)).toBe(7);
    expect([0, 0.05, 0.1, 0.11, 1].map((s) => notPassed(ten, s))).toEqual([1, 1, 1, 2, 10]);
    // One deviation of the rank, 0.03, reaches beyond both ends: there is nothing farther.
    expect([errorOf(ten, 0.99), errorOf(ten, 0.01)]).toEqual([0, 0]);
  });

  test("a line with one end only can be the one that weighs most", () => {
    const lines = [line("certain", 1000), line("rough", 1000, undefined, 2000), line("fine", 1000, 950, 1050)];
    expect(contingency(lines, 0.8, 0.5, 1).heaviest?.line).toBe("rough");
    expect(contingency([line("a", 1000, 800)], 0.8, 0.5, 1).heaviest?.line).toBe("a");
    expect(contingency([line("a", 1000)], 0.8, 0.5, 1).heaviest).toBeUndefined();
  });
});

test("nothing is left between the steps and the price of a bid, small or huge", () => {
  const amount = fc.double({ min: 0.01, max: 3e9, noNaN: true });
  const share = fc.double({ min: 0, max: 0.3, noNaN: true });
  fc.assert(
    fc.property(
      fc.array(amount, { minLength: 1, maxLength: 8 }),
      share,
      share,
      share,
      (amounts, overhead, risk, margin) => {
        const shares = { overhead, contingency: risk, salesTax: 0.0825, bond: 0.015, margin, markup: undefined };
        const steps = bidBuildUp(
          amounts.map((a, i) => line(`${i}`, a)),
          shares,
        );
        expect(steps.at(-1)).toMatchObject({ step: "check", amount: 0, running: steps.at(-2)?.amount });
      },
    ),
  );
});
