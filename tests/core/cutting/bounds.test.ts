import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { BestBound, upToStep } from "../../../src/core/cutting/engine/best-bound.ts";
import { dualFeasible } from "../../../src/core/cutting/engine/dual-feasible.ts";
import { isShort } from "../../../src/core/cutting/engine/goal-costs.ts";
import { costUnits, gcd, sizeDown, sizeUp, wholeCount } from "../../../src/core/cutting/engine/sixty-fourths.ts";
import { lengthModel } from "../../../src/core/cutting/lengths/model/model.ts";
import { dualFeasibleLengthBound, materialBound } from "../../../src/core/cutting/lengths/search/bound.ts";
import { sheetModel } from "../../../src/core/cutting/sheets/plan/model.ts";
import { areaBound, dualFeasibleBound } from "../../../src/core/cutting/sheets/search/area-bound.ts";
import { BadInput } from "../../../src/core/kit/refusal.ts";
import { guillotine, knapsack, leastCost } from "./brute.ts";

const options = { kerfIn: 0, trimIn: 0, goal: "sheets" } as const;

describe("dual-feasible functions", () => {
  test("no set of sizes that fits gets more than 1, however often each is taken", () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.integer({ min: 1, max: 40 }), { minLength: 1, maxLength: 5 }),
        fc.integer({ min: 0, max: 12 }),
        fc.array(fc.integer({ min: 1, max: 4 }), { minLength: 5, maxLength: 5 }),
        (sizes, more, often) => {
          const c = Math.max(...sizes) + more;
          const all = Float64Array.from(sizes.flatMap((s, i) => new Array<number>(often[i]!).fill(s))).sort();
          const rows = dualFeasible(sizes, all, c);
          expect(rows.length).toBeGreaterThan(0);
          // the function that counts holds for the parts there are, all others for any number of them
          for (const row of rows) expect(knapsack(sizes, often, row, c)).toBeLessThanOrEqual(1 + 1e-9);
          expect(rows.filter((row) => row.some((v, i) => Math.abs(v - sizes[i]! / c) > 1e-12)).length).toBe(
            rows.length - 1,
          );
        },
      ),
      { numRuns: 150 },
    );
  });

  /** Bound on the number of lengths of 100 by the functions alone. */
  const bound = (rows: readonly (readonly [length: number, quantity: number])[]) =>
    dualFeasibleLengthBound(
      lengthModel(
        rows.map(([lengthIn, quantity], i) => ({ id: `p${i}`, lengthIn, quantity })),
        [{ id: "s", lengthIn: 100, cost: 0, quantity: null }],
        options,
      ),
    );

  test("see what the length alone does not: by hand, and the plan for each exists", () => {
    // more than half: one to a length
    expect(bound([[51, 7]])).toBe(7);
    // more than a third: two to a length
    expect(bound([[34, 9]])).toBe(5);
    // more than a quarter: three; 34s count a half
    expect(bound([[26, 9]])).toBe(3);
    // 60 and 41 do not go together: each 60 keeps a 41 out
    expect(
      bound([
        [60, 4],
        [41, 4],
      ]),
    ).toBe(6);
    // 60 and 40 do
    expect(
      bound([
        [60, 4],
        [40, 4],
      ]),
    ).toBe(4);
    // beside a 55 nothing of 46 or more fits, two of 46 do together
    expect(
      bound([
        [55, 3],
        [46, 4],
      ]),
    ).toBe(5);
    // 70s keep 35s out, and two 35s leave 30: three 70s, five 35s
    expect(
      bound([
        [70, 3],
        [35, 5],
      ]),
    ).toBe(6);
    expect(
      bound([
        [100, 2],
        [1, 100],
      ]),
    ).toBe(3);
    expect(bound([])).toBe(0);
  });

  test("are never above the optimum for lengths, nor in pairs for sheets", () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.record({ w: fc.integer({ min: 1, max: 9 }), h: fc.integer({ min: 1, max: 9 }), turns: fc.boolean() }),
          { minLength: 1, maxLength: 5 },
        ),
        fc.constantFrom(9, 7),
        (parts, height) => {
          const some = parts.map((p) => ({ ...p, h: Math.min(p.h, height) }));
          const model = sheetModel(
            some.map(({ w, h, turns }, i) => ({ id: `p${i}`, lengthIn: w, widthIn: h, quantity: 1, turns })),
            [{ id: "s", lengthIn: 9, widthIn: height, cost: 0, quantity: null }],
            options,
          );
          const fits = guillotine(some);
          const optimum = leastCost(some.length, [{ cost: 1 }], (mask) => fits(mask, 9, height))!;
          expect(areaBound(model)).toBeLessThanOrEqual(optimum);
          expect(dualFeasibleBound(model)).toBeLessThanOrEqual(optimum);
        },
      ),
      { numRuns: 150 },
    );
  });

  test("see in sheets what the area does not: by hand", () => {
    const of = (
      lengthIn: number,
      widthIn: number,
      quantity: number,
      turns: boolean,
      sheet: readonly [number, number],
    ) =>
      dualFeasibleBound(
        sheetModel(
          [{ id: "p", lengthIn, widthIn, quantity, turns }],
          [{ id: "s", lengthIn: sheet[0], widthIn: sheet[1], cost: 0, quantity: null }],
          options,
        ),
      );
    // more than half of both sides
    expect(of(51, 26, 5, false, [100, 50])).toBe(5);
    expect(of(51, 51, 5, true, [100, 100])).toBe(5);
    // four to a sheet, of any area above a ninth
    expect(of(34, 17, 9, false, [100, 50])).toBe(3);
    expect(of(34, 34, 9, true, [100, 100])).toBe(3);
    // long enough to keep to its way
    expect(of(90, 20, 5, false, [100, 50])).toBe(3);
    // two that turn, 60 x 30: upright or across, one column or one row of two, or one of each
    expect(of(60, 30, 6, true, [100, 60])).toBe(2);
    // too wide for two in either direction, whichever way they lie
    expect(of(60, 56, 3, true, [110, 100])).toBe(3);
  });
});

describe("bounds by material", () => {
  test("lengths go to the stock of the least cost for its length first, as far as it goes", () => {
    const of = (total: number, few: number | null) =>
      materialBound(
        lengthModel(
          [{ id: "p", lengthIn: 1, quantity: total }],
          [
            { id: "dear", lengthIn: 100, cost: 10, quantity: null },
            { id: "cheap", lengthIn: 50, cost: 4, quantity: few },
          ],
          { ...options, goal: "cost" },
        ),
      ) / 10_000;
    // steps of 2: 4 for each 50
    expect(of(200, null)).toBe(16);
    expect(of(201, null)).toBe(18);
    expect(of(50, 2)).toBe(4);
    expect(of(100, 2)).toBe(8);
    expect(of(101, 2)).toBe(10);
    expect(of(200, 2)).toBe(18);
  });

  test("sheets alike, by area", () => {
    const of = (total: number, few: number | null) =>
      areaBound(
        sheetModel(
          [{ id: "p", lengthIn: 1, widthIn: 2, quantity: total, turns: false }],
          [
            { id: "dear", lengthIn: 20, widthIn: 10, cost: 10, quantity: null },
            { id: "cheap", lengthIn: 10, widthIn: 10, cost: 4, quantity: few },
          ],
          { ...options, goal: "cost" },
        ),
      ) / 10_000;
    expect([of(200, null), of(201, null), of(50, 2), of(101, 2), of(200, 2)]).toEqual([16, 18, 4, 10, 18]);
  });

  test("a bound goes up to the next step, and dust does not raise it", () => {
    expect(upToStep(2.1, 1)).toBe(3);
    expect(upToStep(3 + 1e-12, 1)).toBe(3);
    expect(upToStep(3.001, 1)).toBe(4);
    expect(upToStep(7, 5)).toBe(10);
    expect(upToStep(-1, 1)).toBe(0);
    const bound = new BestBound(3);
    bound.raise(3, "column generation");
    expect([bound.value, bound.method]).toEqual([3, "area"]);
    bound.raise(4, "column generation");
    expect([bound.value, bound.method]).toEqual([4, "column generation"]);
    bound.raise(2, "all ways to cut");
    expect([bound.value, bound.method]).toEqual([4, "column generation"]);
  });

  test("short: the bound is above all the stock together, which only a stand-in can be", () => {
    const real = { cost: 2, limit: 3, index: 0 };
    const standIn = { cost: 7, limit: 9, index: -1 };
    expect(isShort([real, standIn], 6)).toBe(false);
    expect(isShort([real, standIn], 7)).toBe(true);
    expect(isShort([real], 7)).toBe(false);
  });
});

describe("whole sixty-fourths", () => {
  test("parts are rounded up and stock down, dust is neither", () => {
    expect(sizeUp("p", 1)).toBe(64);
    expect(sizeUp("p", 1 + 1e-9)).toBe(64);
    expect(sizeUp("p", 1 + 1e-4)).toBe(65);
    expect(sizeDown("s", 1)).toBe(64);
    expect(sizeDown("s", 1 - 1e-9)).toBe(64);
    expect(sizeDown("s", 1 - 1e-4)).toBe(63);
    expect(sizeUp("kerf", 0, 0)).toBeCloseTo(0, 12);
    expect(gcd(84, 36)).toBe(12);
    expect(gcd(0, 7)).toBe(7);
  });

  test("from 1/64 in to 1000 ft, 0 to 100,000 pieces, up to 10 million", () => {
    expect(sizeUp("p", 1 / 64)).toBe(1);
    expect(sizeDown("s", 12_000)).toBe(768_000);
    for (const size of [1 / 65, 12_000.01, Number.NaN]) {
      expect(() => sizeUp("p", size)).toThrow(BadInput);
      expect(() => sizeDown("s", size)).toThrow(BadInput);
    }
    expect(() => sizeUp("kerf", -0.001, 0)).toThrow(BadInput);
    expect([wholeCount("q", 0, 0), wholeCount("q", 100_000, 1)]).toEqual([0, 100_000]);
    for (const q of [0, 1.5, 100_001, Number.NaN]) expect(() => wholeCount("q", q, 1)).toThrow(BadInput);
    expect([costUnits("c", 0), costUnits("c", 1.23456), costUnits("c", 1e7)]).toEqual([0, 12_346, 1e11]);
    for (const c of [-0.01, 1e7 + 1, Number.NaN]) expect(() => costUnits("c", c)).toThrow(BadInput);
  });
});
