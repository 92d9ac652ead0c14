import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { upToStep } from "../../../src/core/cutting/engine/best-bound.ts";
import { ColumnGeneration } from "../../../src/core/cutting/engine/column-generation.ts";
import { Effort } from "../../../src/core/cutting/engine/effort.ts";
import { inverseOf } from "../../../src/core/cutting/engine/inverse.ts";
import { type Column, Master } from "../../../src/core/cutting/engine/master.ts";
import { cuttingProblem } from "../../../src/core/cutting/engine/problem.ts";
import { sortDown } from "../../../src/core/cutting/engine/sort.ts";
import { lengthModel } from "../../../src/core/cutting/lengths/model/model.ts";
import { LengthPricer, lengthColumn } from "../../../src/core/cutting/lengths/model/pricing.ts";

const CLOSE = 1e-6;

describe("the inverse", () => {
  test("of any matrix that has one, with many entries of 0, times the matrix is 1", () => {
    const entry = fc.oneof(fc.constant(0), fc.integer({ min: -5, max: 5 }));
    const matrix = fc
      .integer({ min: 1, max: 6 })
      .chain((m) => fc.array(fc.array(entry, { minLength: m, maxLength: m }), { minLength: m, maxLength: m }));
    let inverted = 0;
    fc.assert(
      fc.property(matrix, (a) => {
        const m = a.length;
        const inverse = inverseOf(m, (c) => a.flatMap((row, r) => (row[c] === 0 ? [] : [[r, row[c]!] as const])));
        if (inverse === undefined) {
          expect(Math.abs(determinant(a))).toBeLessThan(CLOSE);
          return;
        }
        inverted++;
        expect(determinant(a)).not.toBe(0);
        for (let r = 0; r < m; r++) {
          for (let c = 0; c < m; c++) {
            const sum = a.reduce((s, _, k) => s + inverse[r * m + k]! * a[k]![c]!, 0);
            expect(Math.abs(sum - (r === c ? 1 : 0))).toBeLessThan(1e-9);
          }
        }
      }),
      { numRuns: 300 },
    );
    expect(inverted).toBeGreaterThan(30);
  });

  /** By the first row, in whole numbers. */
  function determinant(a: readonly (readonly number[])[]): number {
    const [first, ...rest] = a;
    if (first === undefined) return 1;
    const minor = (c: number) => rest.map((row) => row.filter((_, k) => k !== c));
    return first.reduce((sum, v, c) => sum + (v === 0 ? 0 : (c % 2 === 0 ? v : -v) * determinant(minor(c))), 0);
  }
});

/** A linear problem with columns of two stocks, the second one limited. */
const someProblem = fc.record({
  needs: fc.array(fc.integer({ min: 0, max: 9 }), { minLength: 3, maxLength: 3 }),
  columns: fc.array(
    fc.record({
      stock: fc.integer({ min: 0, max: 1 }),
      counts: fc
        .array(fc.integer({ min: 0, max: 3 }), { minLength: 3, maxLength: 3 })
        .filter((counts) => counts.some((n) => n > 0)),
    }),
    { maxLength: 12 },
  ),
  limit: fc.integer({ min: 0, max: 4 }),
  fewer: fc.array(fc.integer({ min: 0, max: 9 }), { minLength: 3, maxLength: 3 }),
  fewerLimit: fc.integer({ min: 0, max: 4 }),
});
const COSTS = [10, 6] as const;

describe("the master problem", () => {
  /** What no solver can fake: what is used covers the needs within the limit, and multipliers that no column beats are worth as much. */
  function expectOptimal(master: Master, needs: readonly number[], limit: number): void {
    const covered = needs.map(() => 0);
    let limited = 0;
    let cost = 0;
    for (const { column, value } of master.solution()) {
      const { types, counts, stock, cost: each } = master.columns[column]!;
      expect(value).toBeGreaterThan(0);
      types.forEach((t, k) => {
        covered[t]! += counts[k]! * value;
      });
      if (stock === 1) limited += value;
      cost += each * value;
    }
    needs.forEach((need, t) => {
      expect(covered[t]!).toBeGreaterThanOrEqual(need - CLOSE);
    });
    expect(limited).toBeLessThanOrEqual(limit + CLOSE);
    expect(master.objective).toBeCloseTo(cost, 5);
    needs.forEach((_, t) => {
      expect(master.duals[t]!).toBeGreaterThanOrEqual(-CLOSE);
    });
    expect(master.stockDual(0)).toBe(0);
    expect(master.stockDual(1)).toBeLessThanOrEqual(CLOSE);
    for (const c of master.columns) expect(master.reducedCost(c)).toBeGreaterThanOrEqual(-CLOSE);
    const worth = needs.reduce((sum, n, t) => sum + n * master.duals[t]!, limit * master.stockDual(1));
    expect(worth).toBeCloseTo(cost, 5);
  }

  const column = (stock: 0 | 1, counts: readonly number[]): Column => lengthColumn(stock, COSTS[stock], counts);

  test("is solved to the optimum, and again after needs and limit have changed", () => {
    fc.assert(
      fc.property(someProblem, ({ needs, columns, limit, fewer, fewerLimit }) => {
        const master = new Master(needs, [99, limit], [false, true], 1e4);
        expect(master.rows).toBe(4);
        // one part alone from stock without end: all needs can be met
        needs.forEach((_, t) => {
          master.add(
            column(
              0,
              needs.map((_, k) => (k === t ? 1 : 0)),
            ),
          );
        });
        master.solve(1000);
        expectOptimal(master, needs, limit);
        for (const c of columns) master.add(column(c.stock as 0 | 1, c.counts));
        master.solve(1000);
        expectOptimal(master, needs, limit);
        master.setNeeds(fewer, [99, fewerLimit]);
        master.solve(1000);
        expectOptimal(master, fewer, fewerLimit);
      }),
      { numRuns: 300 },
    );
  });

  test("says by its cost what cannot be covered, and takes no more pivots than it is given", () => {
    const master = new Master([2, 3], [5], [false], 1000);
    master.add({ stock: 0, cost: 7, types: [0], counts: [2] });
    master.solve(100);
    expect(master.objective).toBeCloseTo(7 + 3 * 1000, 6);
    const idle = new Master([2, 3], [5], [false], 1000);
    idle.add({ stock: 0, cost: 7, types: [0], counts: [2] });
    idle.solve(0);
    expect([idle.pivots, idle.objective]).toEqual([0, 5000]);
  });

  test("stays exact over hundreds of pivots", () => {
    const sizes = [31, 29, 23, 19, 17, 13, 11, 7];
    const needs = sizes.map((_, t) => 3 + 5 * t);
    const master = new Master(needs, [1000], [false], 1e4);
    sizes.forEach((_, t) => {
      master.add(
        lengthColumn(
          0,
          1,
          sizes.map((_, k) => (k === t ? 1 : 0)),
        ),
      );
    });
    for (let n = 0; n < 400; n++) {
      const counts = sizes.map((_, t) => (n * 7 + t * t * 3 + n * t) % (t + 2));
      const size = counts.reduce((sum, c, t) => sum + c * sizes[t]!, 0);
      if (size <= 100 && size > 0) master.add(lengthColumn(0, 1, counts));
      master.setNeeds(
        needs.map((k, t) => (k + n * (t + 1)) % 40),
        [1000],
      );
      master.solve(1000);
    }
    expect(master.pivots).toBeGreaterThan(200);
    const last = needs.map((k, t) => (k + 399 * (t + 1)) % 40);
    const worth = last.reduce((sum, k, t) => sum + k * master.duals[t]!, 0);
    const cost = master.solution().reduce((sum, { value }) => sum + value, 0);
    expect(worth).toBeCloseTo(cost, 9);
    expect(master.objective).toBeCloseTo(cost, 9);
    for (const c of master.columns) expect(master.reducedCost(c)).toBeGreaterThanOrEqual(-CLOSE);
  });
});

describe("column generation", () => {
  const parts = fc.array(fc.tuple(fc.integer({ min: 9, max: 60 }), fc.integer({ min: 1, max: 6 })), {
    minLength: 1,
    maxLength: 5,
  });
  /** All ways to cut a length: the linear problem over them is the one that column generation solves. */
  function allWays(sizes: readonly number[], most: readonly number[], room: number): number[][] {
    if (sizes.length === 0) return [[]];
    const [size = 1, ...others] = sizes;
    const ways: number[][] = [];
    for (let n = 0; n <= most[0]! && n * size <= room; n++) {
      for (const rest of allWays(others, most.slice(1), room - n * size)) ways.push([n, ...rest]);
    }
    return ways;
  }

  test("reaches the value of the linear problem over all ways to cut, and its bound is never above it", () => {
    fc.assert(
      fc.property(parts, fc.integer({ min: 0, max: 4 }), fc.constantFrom(0, 0.5), (list, limit, smoothing) => {
        const model = lengthModel(
          list.map(([lengthIn, quantity], i) => ({ id: `p${i}`, lengthIn, quantity })),
          [
            { id: "s", lengthIn: 100, cost: 3, quantity: null },
            { id: "few", lengthIn: 70, cost: 1, quantity: limit },
          ],
          { kerfIn: 0, trimIn: 0, goal: "cost" },
        );
        const problem = cuttingProblem(model);
        const { needs, limits } = problem;
        const full = new Master(needs, limits, problem.limited, 1e9);
        model.stocks.forEach((s, stock) => {
          for (const way of allWays(
            model.types.map((t) => t.size),
            needs,
            s.size,
          )) {
            if (way.some((n) => n > 0)) full.add(lengthColumn(stock, s.cost, way));
          }
        });
        full.solve(10_000);
        const made = new ColumnGeneration(problem, new LengthPricer(model), { smoothing, stepsPerUnit: 1 });
        expect(made.run(needs, limits, true, 0, new Effort(1e8))).toBe(true);
        const lp = full.objective;
        expect(made.bound).toBeLessThanOrEqual(lp * (1 + 1e-9));
        // it may stop as soon as no step of cost lies between bound and objective
        expect(made.leastCost).toBe(upToStep(lp * (1 - 1e-6), model.costStep));
        expect(made.master.objective).toBeGreaterThanOrEqual(lp * (1 - 1e-6));
        expect(made.stepUp(made.master.objective)).toBe(made.stepUp(lp));
      }),
      { numRuns: 60 },
    );
  });

  test("without effort it proves nothing and says so", () => {
    const model = lengthModel(
      [{ id: "p", lengthIn: 40, quantity: 5 }],
      [{ id: "s", lengthIn: 100, cost: 1, quantity: null }],
      { kerfIn: 0, trimIn: 0, goal: "sheets" },
    );
    const problem = cuttingProblem(model);
    const made = new ColumnGeneration(problem, new LengthPricer(model), { smoothing: 0, stepsPerUnit: 1 });
    expect(made.run(problem.needs, problem.limits, true, 0, new Effort(0))).toBe(false);
    expect(made.leastCost).toBe(0);
  });
});

test("sortDown: largest key first, each item with its key", () => {
  const keys = fc.array(fc.integer({ min: 0, max: 50 }), { maxLength: 150 });
  fc.assert(
    fc.property(keys, fc.integer({ min: 0, max: 150 }), (list, n) => {
      const count = Math.min(n, list.length);
      const k = Float64Array.from(list);
      const items = Int32Array.from(list, (_, i) => i);
      sortDown(k, items, count);
      expect([...k.subarray(0, count)]).toEqual(list.slice(0, count).sort((a, b) => b - a));
      expect([...k.subarray(count)]).toEqual(list.slice(count));
      expect([...items].map((i) => list[i])).toEqual([...k]);
      expect([...items].sort((a, b) => a - b)).toEqual(list.map((_, i) => i));
    }),
  );
});
