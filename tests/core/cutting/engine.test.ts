import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { Effort } from "../../../src/core/cutting/engine/effort.ts";
import { goalCosts, isOnHand } from "../../../src/core/cutting/engine/goal-costs.ts";
import type { Variable } from "../../../src/core/cutting/engine/integer/program.ts";
import { solveInteger } from "../../../src/core/cutting/engine/integer/solve.ts";
import { inverseOf } from "../../../src/core/cutting/engine/inverse.ts";
import { rankedCosts } from "../../../src/core/cutting/engine/ranked.ts";

describe("inverse", () => {
  const columnsOf = (a: readonly (readonly number[])[]) => (c: number) =>
    a.flatMap((row, r) => (row[c] === 0 ? [] : [[r, row[c]!] as const]));

  test("times its matrix gives 1, also where the first pivot is tiny and must not be taken", () => {
    for (const a of [
      [
        [1e-8, 1],
        [1, 1],
      ],
      [
        [0, 2, 0],
        [3, 0, 0],
        [0, 0, 4],
      ],
      [
        [1, 2, 0],
        [0, -1, 5],
        [7, 0, 1],
      ],
    ]) {
      const m = a.length;
      const inverse = inverseOf(m, columnsOf(a))!;
      for (let r = 0; r < m; r++) {
        for (let c = 0; c < m; c++) {
          const sum = a.reduce((s, _, k) => s + inverse[r * m + k]! * a[k]![c]!, 0);
          expect(sum).toBeCloseTo(r === c ? 1 : 0, 12);
        }
      }
    }
  });

  test("of a singular matrix there is none", () => {
    expect(
      inverseOf(
        2,
        columnsOf([
          [1, 2],
          [2, 4],
        ]),
      ),
    ).toBeUndefined();
  });
});

describe("integer program", () => {
  /** All whole numbers, one variable after the other. */
  function plainly(totals: readonly number[], variables: readonly Variable[]): number | undefined {
    let best: number | undefined;
    const go = (j: number, left: readonly number[], cost: number): void => {
      const v = variables[j];
      if (v === undefined) {
        if (left.every((x) => x === 0) && (best === undefined || cost < best)) best = cost;
        return;
      }
      for (let n = 0; n <= v.most; n++) {
        const next = left.map((x, r) => x - n * (v.entries[v.rows.indexOf(r)] ?? 0));
        if (next.some((x) => x < 0)) break;
        go(j + 1, next, cost + n * v.cost);
      }
    };
    go(0, totals, 0);
    return best;
  }

  test("the least cost, as trying everything finds it, with a goal and without", () => {
    const variable = fc
      .record({
        cost: fc.integer({ min: 1, max: 9 }),
        most: fc.integer({ min: 1, max: 4 }),
        at: fc.uniqueArray(fc.integer({ min: 0, max: 2 }), { minLength: 1, maxLength: 3 }),
        entry: fc.integer({ min: 1, max: 3 }),
      })
      .map(
        ({ cost, most, at, entry }): Variable => ({
          cost,
          most,
          rows: at,
          entries: at.map((r) => 1 + ((entry + r) % 3)),
        }),
      );
    fc.assert(
      fc.property(
        fc.array(variable, { minLength: 2, maxLength: 6 }),
        fc.array(fc.integer({ min: 0, max: 6 }), { minLength: 3, maxLength: 3 }),
        (variables, totals) => {
          const known = plainly(totals, variables);
          const program = { totals, variables, costStep: 1 };
          const found = solveInteger(program, 1000, new Effort(1e7));
          expect(found.complete).toBe(true);
          if (known === undefined) expect(found.counts).toBeUndefined();
          else {
            const cost = found.counts!.reduce((sum, n, j) => sum + n * variables[j]!.cost, 0);
            expect(cost).toBe(known);
            expect(solveInteger(program, known, new Effort(1e7)).counts).toBeDefined();
            expect(solveInteger(program, known - 1, new Effort(1e7)).counts).toBeUndefined();
          }
        },
      ),
      { numRuns: 300 },
    );
  });

  test("without effort nothing is claimed", () => {
    const program = { totals: [1], variables: [{ cost: 1, most: 1, rows: [0], entries: [1] }], costStep: 1 };
    expect(solveInteger(program, 10, new Effort(0))).toEqual({ counts: undefined, complete: false });
  });
});

describe("costs of the goals", () => {
  const stock = (id: string, cost: number, quantity: number | null) => ({ id, cost, quantity });

  test("what is on hand costs nothing unless a price says so", () => {
    const all = [stock("new", 0, null), stock("left", 0, 3)];
    expect(all.map(isOnHand)).toEqual([false, true]);
    expect(goalCosts(all, { goal: "sheets" })).toEqual([1, 0]);
    expect(goalCosts([stock("new", 5, null), stock("left", 0, 3)], { goal: "sheets" })).toEqual([1, 0]);
    expect(goalCosts([stock("new", 5, null), stock("left", 2, 3)], { goal: "sheets" })).toEqual([1, 1]);
    expect(goalCosts([stock("new", 5, null), stock("left", 2, 3)], { goal: "cost" })).toEqual([50_000, 20_000]);
  });

  test("where all is on hand, all is counted; endless stock at no price beside prices is refused", () => {
    expect(goalCosts([stock("a", 0, 2), stock("b", 0, 3)], { goal: "sheets" })).toEqual([1, 1]);
    expect(() => goalCosts([stock("a", 1, null), stock("b", 0, null)], { goal: "sheets" })).toThrow(/b has neither/);
  });

  test("ranked: never a worse earlier goal for a better later one", () => {
    const kinds = [
      { cost: 1, price: 420_000, size: 4608, index: 0 },
      { cost: 1, price: 540_000, size: 5760, index: 1 },
      { cost: 0, price: 0, size: 900, index: 2 },
    ];
    const sum = (of: (s: (typeof kinds)[number]) => number, plan: readonly number[]): number =>
      plan.reduce((total, s) => total + of(kinds[s]!), 0);
    const plan = fc.array(fc.integer({ min: 0, max: 2 }), { minLength: 1, maxLength: 12 });
    fc.assert(
      fc.property(plan, plan, (given, other) => {
        const costs = rankedCosts(kinds, given);
        const rank = (p: readonly number[]): number => p.reduce((total, s) => total + costs[s]!, 0);
        const order = [
          sum((s) => s.cost, other) - sum((s) => s.cost, given),
          sum((s) => s.price, other) - sum((s) => s.price, given),
        ];
        const first = order.find((d) => d !== 0);
        if (first !== undefined && first > 0) expect(rank(other)).toBeGreaterThan(rank(given));
        if (first === undefined && sum((s) => s.size, other) > sum((s) => s.size, given) * 1.01) {
          expect(rank(other)).toBeGreaterThan(rank(given));
        }
      }),
    );
  });
});
