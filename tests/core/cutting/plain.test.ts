import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { Effort } from "../../../src/core/cutting/engine/effort.ts";
import { lengthModel } from "../../../src/core/cutting/lengths/model/model.ts";
import { searchLengths } from "../../../src/core/cutting/lengths/search/search.ts";
import { sheetModel } from "../../../src/core/cutting/sheets/plan/model.ts";
import { searchSheets } from "../../../src/core/cutting/sheets/search/search.ts";
import { Random } from "../../../src/core/kit/random.ts";
import { fitsLength, guillotine, leastCost } from "./brute.ts";
import { LENGTH_STEPS, SHEET_STEPS } from "./search-steps.ts";

/**
 * The searches with one step left out at a time: what is an exact shortcut must not change the best result, and no step may give a plan below the bound.
 * Small cases, so that the best result is known from trying everything. The seed is fixed, since a search need not find the best always.
 */
const runs = (numRuns: number) => ({ numRuns, seed: 1961 });

describe("lengths", () => {
  const some = fc.array(fc.integer({ min: 9, max: 40 }), { minLength: 4, maxLength: 9 });

  test.each(LENGTH_STEPS)("without %s the fewest and the cheapest are the same, or no better than the best", (step) => {
    fc.assert(
      fc.property(some, fc.boolean(), (lengths, several) => {
        const sizes = several
          ? [
              { size: 41, cost: 6 },
              { size: 66, cost: 9 },
            ]
          : [{ size: 53, cost: 1 }];
        const optimum = leastCost(lengths.length, sizes, (mask, s) => fitsLength(lengths, mask, sizes[s]!.size, 0))!;
        const model = lengthModel(
          lengths.map((lengthIn, i) => ({ id: `p${i}`, lengthIn, quantity: 1 })),
          sizes.map(({ size, cost }) => ({ id: `${size}`, lengthIn: size, cost, quantity: null })),
          { kerfIn: 0, trimIn: 0, goal: "cost" },
        );
        const { plan, bound } = searchLengths(model, new Effort(3e6), new Random(1), false, undefined, [step]);
        // The dive is no exact shortcut: without it the best may be missed, never undercut.
        if (step === "dive") expect(plan.cost).toBeGreaterThanOrEqual(optimum * 10_000);
        else expect(plan.cost).toBe(optimum * 10_000);
        expect(bound).toBeLessThanOrEqual(optimum * 10_000);
        const alone = searchLengths(model, new Effort(3e6), new Random(1), true, undefined, [step]);
        expect(alone.bound).toBeLessThanOrEqual(optimum * 10_000);
      }),
      runs(25),
    );
  });
});

describe("sheets", () => {
  const some = fc.array(
    fc.record({ w: fc.integer({ min: 3, max: 11 }), h: fc.integer({ min: 3, max: 8 }), turns: fc.boolean() }),
    { minLength: 3, maxLength: 6 },
  );

  test.each(SHEET_STEPS)(
    "without %s the fewest and the cheapest are the same, and no plan is below the bound",
    (step) => {
      fc.assert(
        fc.property(some, fc.boolean(), (parts, several) => {
          const sizes = several
            ? ([
                { w: 12, h: 8, cost: 5 },
                { w: 15, h: 9, cost: 8 },
              ] as const)
            : ([{ w: 12, h: 8, cost: 1 }] as const);
          const fits = guillotine(parts);
          const optimum = leastCost(parts.length, sizes, (mask, s) => fits(mask, sizes[s]!.w, sizes[s]!.h))!;
          const model = sheetModel(
            parts.map(({ w, h, turns }, i) => ({ id: `p${i}`, lengthIn: w, widthIn: h, quantity: 1, turns })),
            sizes.map(({ w, h, cost }) => ({ id: `${w}`, lengthIn: w, widthIn: h, cost, quantity: null })),
            { kerfIn: 0, trimIn: 0, goal: "cost" },
          );
          const { packing, bound } = searchSheets(model, new Effort(4e5), new Random(1), false, undefined, [step]);
          expect(packing.cost).toBe(optimum * 10_000);
          expect(bound).toBeLessThanOrEqual(packing.cost);
        }),
        runs(8),
      );
    },
  );
});
