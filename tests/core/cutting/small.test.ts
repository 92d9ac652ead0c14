import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  boundLengths,
  boundSheets,
  type LengthPart,
  type LengthStock,
  type NestOptions,
  nestLengths,
  nestSheets,
  type SheetPart,
  type SheetStock,
} from "../../../src/core/cutting/index.ts";
import { type BrutePart, type BruteStock, fitsLength, guillotine, leastCost } from "./brute.ts";
import { faults } from "./verify.ts";
import { lengthFaults } from "./verify-lengths.ts";

/** Small cases whose optimum is found by trying everything; the seed is fixed, since a search need not find it always. */
const runs = (numRuns: number) => ({ numRuns, seed: 20_240 });

const options = (more: Partial<NestOptions> = {}): NestOptions => ({
  kerfIn: 0,
  trimIn: 0,
  goal: "sheets",
  effort: 0.004,
  ...more,
});

describe("lengths", () => {
  const some = fc.array(fc.integer({ min: 3, max: 40 }), { minLength: 1, maxLength: 8 });
  const partsOf = (lengths: readonly number[]): LengthPart[] =>
    lengths.map((lengthIn, i) => ({ id: `p${i}`, lengthIn, quantity: 1 }));
  const least = (lengths: readonly number[], stocks: readonly (BruteStock & { size: number })[], kerf = 0) =>
    leastCost(lengths.length, stocks, (mask, s) => fitsLength(lengths, mask, stocks[s]!.size, kerf));

  test("the fewest of one length, proven by a bound that is never above it", () => {
    fc.assert(
      fc.property(some, fc.constantFrom(0, 1, 2), (lengths, kerfIn) => {
        const stock: LengthStock = { id: "s", lengthIn: 41, cost: 0, quantity: null };
        const optimum = least(lengths, [{ cost: 1, size: 41 }], kerfIn);
        const o = options({ kerfIn });
        const n = nestLengths(partsOf(lengths), [stock], o);
        expect(lengthFaults(n, partsOf(lengths), [stock], o)).toEqual([]);
        expect(n.count).toBe(optimum);
        expect(n.bound).toBeLessThanOrEqual(n.count);
        expect(boundLengths(partsOf(lengths), [stock], o).bound).toBeLessThanOrEqual(n.count);
      }),
      runs(60),
    );
  });

  test("the least cost of several lengths, proven", () => {
    fc.assert(
      fc.property(some, fc.integer({ min: 5, max: 9 }), fc.integer({ min: 8, max: 14 }), (lengths, short, long) => {
        const sizes = [
          { cost: 6, size: 40 },
          { cost: short, size: 47 },
          { cost: long, size: 66 },
        ];
        const stocks = sizes.map(
          ({ cost, size }): LengthStock => ({ id: `${size}`, lengthIn: size, cost, quantity: null }),
        );
        const o = options({ goal: "cost", effort: 0.02 });
        const n = nestLengths(partsOf(lengths), stocks, o);
        expect(lengthFaults(n, partsOf(lengths), stocks, o)).toEqual([]);
        expect(n).toMatchObject({ cost: least(lengths, sizes), proven: true });
        expect(boundLengths(partsOf(lengths), stocks, o).bound).toBeLessThanOrEqual(n.cost);
      }),
      runs(60),
    );
  });

  test("the least cost where the cheap lengths run out, or that it cannot be", () => {
    fc.assert(
      fc.property(some, fc.integer({ min: 0, max: 2 }), fc.integer({ min: 0, max: 3 }), (lengths, few, more) => {
        const sizes = [
          { cost: 3, size: 40, limit: few },
          { cost: 9, size: 55, limit: more },
        ];
        if (few + more === 0) return;
        const fit = lengths.filter((l) => (few > 0 && l <= 40) || more > 0);
        const stocks = sizes.map(
          ({ cost, size, limit }): LengthStock => ({ id: `${size}`, lengthIn: size, cost, quantity: limit }),
        );
        const o = options({ goal: "cost" });
        const n = nestLengths(partsOf(fit), stocks, o);
        expect(lengthFaults(n, partsOf(fit), stocks, o)).toEqual([]);
        const optimum = least(fit, sizes);
        expect(n.unplaced.length > 0).toBe(optimum === undefined);
        if (optimum === undefined) expect(n.bound).toBe(0);
        else expect(n).toMatchObject({ cost: optimum, short: false, proven: true });
      }),
      runs(60),
    );
  });
});

describe("lengths, by hand", () => {
  test("short parts that fit beside each long one: far more of them could be cut than are needed", () => {
    const parts = [
      { id: "long", lengthIn: 60, quantity: 14 },
      { id: "short", lengthIn: 5, quantity: 8 },
    ];
    const stocks = [
      { id: "100", lengthIn: 100, cost: 10, quantity: null },
      { id: "130", lengthIn: 130, cost: 15, quantity: 3 },
    ];
    // two long in each of the three of 130, the other eight alone, the short ones beside them
    const n = nestLengths(parts, stocks, options({ goal: "cost" }));
    expect(n).toMatchObject({ cost: 3 * 15 + 8 * 10, bound: 125, proven: true });
    const kerf = [
      { id: "p0", lengthIn: 5, quantity: 5 },
      { id: "p1", lengthIn: 119.5, quantity: 11 },
    ];
    const shop = [
      { id: "s192", lengthIn: 192, cost: 38, quantity: null },
      { id: "s240", lengthIn: 240, cost: 49, quantity: null },
      { id: "s288", lengthIn: 288, cost: 62, quantity: 3 },
    ];
    // the trim takes the 240 below two of 119.5: two in each 288, five 192
    const o = options({ goal: "cost", kerfIn: 0.125, trimIn: 0.5 });
    expect(nestLengths(kerf, shop, o)).toMatchObject({ cost: 3 * 62 + 5 * 38, bound: 376, proven: true });
    expect(nestLengths(kerf, shop, { ...o, effort: 0.05 })).toMatchObject({ cost: 376, bound: 376, proven: true });
  });
});

describe("sheets", () => {
  const some = fc.array(
    fc.record({
      w: fc.integer({ min: 2, max: 11 }),
      h: fc.integer({ min: 2, max: 8 }),
      turns: fc.boolean(),
    }),
    { minLength: 1, maxLength: 5 },
  );
  const partsOf = (parts: readonly BrutePart[]): SheetPart[] =>
    parts.map(({ w, h, turns }, i) => ({ id: `p${i}`, lengthIn: w, widthIn: h, quantity: 1, turns }));
  const sheet = (lengthIn: number, widthIn: number, cost = 0, quantity: number | null = null): SheetStock => ({
    id: `${lengthIn}x${widthIn}`,
    lengthIn,
    widthIn,
    cost,
    quantity,
  });

  test("the fewest of one sheet, with any number of stages and with two and three", () => {
    fc.assert(
      fc.property(some, fc.constantFrom(undefined, 2, 3), (parts, stages) => {
        const fits = guillotine(parts, stages);
        const optimum = leastCost(parts.length, [{ cost: 1 }], (mask) => fits(mask, 12, 8))!;
        const o = options(stages === undefined ? {} : { stages });
        const n = nestSheets(partsOf(parts), [sheet(12, 8)], o);
        expect(faults(n, partsOf(parts), [sheet(12, 8)], o)).toEqual([]);
        expect(n.count).toBe(optimum);
        expect(n.bound).toBeLessThanOrEqual(optimum);
        expect(boundSheets(partsOf(parts), [sheet(12, 8)], o).bound).toBeLessThanOrEqual(optimum);
      }),
      runs(40),
    );
  });

  test("the least cost of several sheets, one of them limited", () => {
    fc.assert(
      fc.property(some, fc.integer({ min: 0, max: 2 }), (parts, limit) => {
        const fits = guillotine(parts);
        const sizes = [
          { cost: 7, size: [12, 8] },
          { cost: 5, size: [11, 8], limit },
          { cost: 11, size: [16, 9] },
        ] as const;
        const optimum = leastCost(parts.length, sizes, (mask, s) => {
          const [w = 0, h = 0] = sizes[s]!.size;
          return fits(mask, w, h);
        });
        const stocks = [sheet(12, 8, 7), sheet(11, 8, 5, limit), sheet(16, 9, 11)];
        const o = options({ goal: "cost" });
        const n = nestSheets(partsOf(parts), stocks, o);
        expect(faults(n, partsOf(parts), stocks, o)).toEqual([]);
        expect(n.cost).toBe(optimum);
        expect(n.bound).toBeLessThanOrEqual(n.cost);
        expect(boundSheets(partsOf(parts), stocks, o).bound).toBeLessThanOrEqual(n.cost);
      }),
      runs(12),
    );
  });
});
