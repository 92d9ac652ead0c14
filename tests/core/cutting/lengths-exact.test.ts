import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type LengthPart, type LengthStock, nestLengths } from "../../../src/core/cutting/index.ts";
import { lengthFaults } from "./verify-lengths.ts";

/** Plans for a few parts beside all plans that there are, found here by trying everything. */

interface Tried {
  readonly cost: number;
  readonly leftover: number;
  readonly patterns: number;
}

/** Best of all plans: least cost; then the longest leftover, then the fewest patterns. */
function everyPlan(parts: readonly LengthPart[], stocks: readonly LengthStock[]): Tried {
  const all = parts.flatMap((p) => Array.from({ length: p.quantity }, () => p.lengthIn));
  let best: Tried | undefined;
  const better = (a: Tried, b: Tried): boolean =>
    a.cost !== b.cost ? a.cost < b.cost : a.leftover !== b.leftover ? a.leftover > b.leftover : a.patterns < b.patterns;
  const go = (n: number, bars: readonly { stock: LengthStock; cuts: readonly number[] }[], cost: number): void => {
    if (best && cost > best.cost) return;
    const next = all[n];
    if (next === undefined) {
      const rests = bars.map((b) => b.stock.lengthIn - b.cuts.reduce((sum, c) => sum + c, 0));
      const kinds = new Set(bars.map((b) => `${b.stock.id}: ${[...b.cuts].sort((x, y) => x - y)}`));
      const found = { cost, leftover: Math.max(0, ...rests), patterns: kinds.size };
      if (!best || better(found, best)) best = found;
      return;
    }
    bars.forEach((b, i) => {
      if (b.cuts.reduce((sum, c) => sum + c, next) > b.stock.lengthIn) return;
      go(
        n + 1,
        bars.map((o, k) => (k === i ? { ...o, cuts: [...o.cuts, next] } : o)),
        cost,
      );
    });
    for (const stock of stocks) {
      if (next > stock.lengthIn) continue;
      if (bars.filter((b) => b.stock === stock).length === stock.quantity) continue;
      go(n + 1, [...bars, { stock, cuts: [next] }], cost + stock.cost);
    }
  };
  go(0, [], 0);
  if (!best) throw new Error("no plan");
  return best;
}

const options = (goal: "sheets" | "cost") => ({ kerfIn: 0, trimIn: 0, goal, effort: 0.1 });
const someParts = fc
  .array(fc.tuple(fc.integer({ min: 2, max: 9 }), fc.integer({ min: 1, max: 3 })), { minLength: 1, maxLength: 4 })
  .filter((rows) => rows.reduce((sum, [, n]) => sum + n, 0) <= 8)
  .map((rows) => rows.map(([lengthIn, quantity], i): LengthPart => ({ id: `p${i}`, lengthIn, quantity })));
const reachedOf = (n: ReturnType<typeof nestLengths>, goal: string) => n.reached.find((r) => r.goal === goal);

describe("a few parts, beside all plans", () => {
  test("one length: count, then the longest leftover, then the fewest patterns, each proven", () => {
    const stocks: LengthStock[] = [{ id: "bar", lengthIn: 10, cost: 1, quantity: null }];
    fc.assert(
      fc.property(someParts, (parts) => {
        const n = nestLengths(parts, stocks, options("sheets"));
        const known = everyPlan(parts, stocks);
        expect(lengthFaults(n, parts, stocks, options("sheets"))).toEqual([]);
        expect([n.count, n.proven]).toEqual([known.cost, true]);
        expect(reachedOf(n, "longest leftover")).toMatchObject({ value: known.leftover, proven: true });
        expect(reachedOf(n, "patterns")).toMatchObject({ value: known.patterns, proven: true });
      }),
      { numRuns: 60 },
    );
  });

  test("several lengths at cost, one of them limited: least cost, proven", () => {
    const costs = fc.tuple(
      fc.integer({ min: 3, max: 9 }),
      fc.integer({ min: 5, max: 12 }),
      fc.integer({ min: 2, max: 9 }),
    );
    fc.assert(
      fc.property(someParts, costs, (parts, [short, long, few]) => {
        const stocks: LengthStock[] = [
          { id: "short", lengthIn: 9, cost: short, quantity: null },
          { id: "long", lengthIn: 13, cost: long, quantity: null },
          { id: "few", lengthIn: 17, cost: few, quantity: 2 },
        ];
        const n = nestLengths(parts, stocks, options("cost"));
        expect(lengthFaults(n, parts, stocks, options("cost"))).toEqual([]);
        expect([n.cost, n.bound, n.proven]).toEqual([everyPlan(parts, stocks).cost, n.cost, true]);
      }),
      { numRuns: 40 },
    );
  });
});
