import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { boundLengths, type LengthPart, type LengthStock, nestLengths } from "../../../src/core/cutting/index.ts";
import { lengthFaults } from "./verify-lengths.ts";

const options = { kerfIn: 0.125, trimIn: 0.5, goal: "cost" as const, effort: 0.004 };
const stocks: LengthStock[] = [
  { id: "s192", lengthIn: 192, cost: 38, quantity: null },
  { id: "s240", lengthIn: 240, cost: 49, quantity: null },
  { id: "s288", lengthIn: 288, cost: 62, quantity: 3 },
];
const someParts = fc
  .array(fc.tuple(fc.integer({ min: 40, max: 1500 }), fc.integer({ min: 1, max: 20 })), { minLength: 1, maxLength: 12 })
  .map((rows) => rows.map(([n, quantity], i): LengthPart => ({ id: `p${i}`, lengthIn: n / 8, quantity })));

describe("a plan for lengths", () => {
  test("holds every part with its kerf and never beats its bound", () => {
    fc.assert(
      fc.property(someParts, (parts) => {
        const n = nestLengths(parts, stocks, options);
        expect(lengthFaults(n, parts, stocks, options)).toEqual([]);
        expect(n.cost).toBeGreaterThanOrEqual(n.bound);
        expect(n.proven).toBe(n.cost === n.bound);
      }),
      { numRuns: 15 },
    );
  });

  test("does not depend on the order of the rows", () => {
    fc.assert(
      fc.property(someParts, (parts) => {
        const again = nestLengths([...parts].reverse(), [...stocks].reverse(), options);
        expect(again).toEqual(nestLengths(parts, stocks, options));
      }),
      { numRuns: 15 },
    );
  });

  test("a bound for some parts holds for more parts and for a wider kerf", () => {
    fc.assert(
      fc.property(someParts, fc.integer({ min: 40, max: 1500 }), (parts, n) => {
        const { bound } = boundLengths(parts, stocks, options);
        const more = [...parts, { id: "more", lengthIn: n / 8, quantity: 2 }];
        expect(nestLengths(more, stocks, options).cost).toBeGreaterThanOrEqual(bound);
        expect(nestLengths(parts, stocks, { ...options, kerfIn: 0.25 }).cost).toBeGreaterThanOrEqual(bound);
      }),
      { numRuns: 15 },
    );
  });

  test("a kerf decides whether two 16 ft pieces come out of a 32 ft length", () => {
    const long = [{ id: "long", lengthIn: 384, cost: 1, quantity: null }];
    const o = { ...options, trimIn: 0 };
    expect(nestLengths([{ id: "exact", lengthIn: 192, quantity: 2 }], long, o).count).toBe(2);
    expect(nestLengths([{ id: "with joint gap", lengthIn: 191.875, quantity: 2 }], long, o).count).toBe(1);
    expect(nestLengths([{ id: "exact", lengthIn: 192, quantity: 2 }], long, { ...o, kerfIn: 0 }).count).toBe(1);
  });

  test("parts longer than any stock are refused by name; too little stock leaves parts over", () => {
    expect(() => nestLengths([{ id: "mast", lengthIn: 300, quantity: 1 }], stocks, options)).toThrow(
      /^mast fits no stock: /,
    );
    const n = nestLengths([{ id: "a", lengthIn: 250, quantity: 5 }], stocks, options);
    expect(n).toMatchObject({ count: 3, proven: false, unplaced: [{ part: "a", quantity: 2 }] });
  });
});
