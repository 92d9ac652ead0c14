import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { Effort } from "../../../src/core/cutting/engine/effort.ts";
import { type LengthModel, lengthModel } from "../../../src/core/cutting/lengths/model/model.ts";
import { LengthPricer, lengthColumn } from "../../../src/core/cutting/lengths/model/pricing.ts";
import { completeLengths } from "../../../src/core/cutting/lengths/search/completion.ts";
import { LengthExchange } from "../../../src/core/cutting/lengths/search/exchange.ts";
import { longestThatFits, partSets } from "../../../src/core/cutting/lengths/search/sets.ts";
import { startLengths } from "../../../src/core/cutting/lengths/search/start.ts";
import { type SheetModel, sheetModel } from "../../../src/core/cutting/sheets/plan/model.ts";
import {
  partsPerSheet,
  rasterPricer,
  repeatsMuch,
  setPricer,
} from "../../../src/core/cutting/sheets/search/pricers.ts";
import { Stairs } from "../../../src/core/cutting/sheets/search/stairs.ts";
import { Random } from "../../../src/core/kit/random.ts";
import { type BrutePart, fitsLength, guillotine, knapsack, leastCost } from "./brute.ts";

const options = { kerfIn: 0, trimIn: 0, goal: "sheets" } as const;
const without = () => new Effort(1e8);

const lengths = (rows: readonly (readonly [length: number, quantity: number])[], stock: number): LengthModel =>
  lengthModel(
    // in sixty-fourths, so that the model counts in ones
    rows.map(([n, quantity], i) => ({ id: `p${i}`, lengthIn: n / 64, quantity })),
    [{ id: "s", lengthIn: stock / 64, cost: 0, quantity: null }],
    options,
  );
const sizesOf = (model: LengthModel) => model.types.map((t) => t.size);
const needsOf = (model: { types: readonly { need: number }[] }) => model.types.map((t) => t.need);

describe("the most valuable way to cut a length", () => {
  const rows = fc.array(fc.tuple(fc.integer({ min: 3, max: 30 }), fc.integer({ min: 1, max: 4 })), {
    minLength: 1,
    maxLength: 6,
  });

  test("as trying everything finds it, with no more of a part than are needed", () => {
    fc.assert(
      fc.property(rows, fc.array(fc.integer({ min: 0, max: 50 }), { minLength: 6, maxLength: 6 }), (list, worth) => {
        const model = lengths(list, 61);
        const { size } = model.stocks[0]!;
        const values = Float64Array.from(model.types, (_, t) => worth[t]!);
        const needs = needsOf(model);
        const best = knapsack(sizesOf(model), needs, values, size);
        const ask = (threshold: number) =>
          new LengthPricer(model).price({ values, stock: 0, threshold, enough: 0, needs, effort: without() });
        const { columns, most } = ask(-1);
        expect(most).toBe(best);
        const [column] = columns;
        const sum = (of: (t: number) => number) =>
          column!.types.reduce((total, t, k) => total + column!.counts[k]! * of(t), 0);
        if (best > 0) {
          expect(sum((t) => values[t]!)).toBe(best);
          expect(sum((t) => sizesOf(model)[t]!)).toBeLessThanOrEqual(size);
          column!.types.forEach((t, k) => {
            expect(column!.counts[k]).toBeLessThanOrEqual(needs[t]!);
          });
        }
        // nothing better than the best: it is of no use, and that is the limit
        expect(ask(best)).toEqual({ columns: [], most: best });
        expect(ask(best + 5)).toEqual({ columns: [], most: best + 5 });
      }),
      { numRuns: 200 },
    );
  });

  test("also where branching never ends: even parts for an odd length", () => {
    const list = Array.from({ length: 30 }, (_, i) => [200 + 2 * i, 3] as const);
    const model = lengths(list, 2001);
    const values = Float64Array.from(sizesOf(model));
    const { columns, most } = new LengthPricer(model).price({
      values,
      stock: 0,
      threshold: 0,
      enough: 0,
      needs: needsOf(model),
      effort: without(),
    });
    expect(most).toBe(2000);
    const [column] = columns;
    expect(column!.types.reduce((sum, t, k) => sum + column!.counts[k]! * values[t]!, 0)).toBe(2000);
    for (const n of column!.counts) expect(n).toBeLessThanOrEqual(3);
  });
});

describe("steps of the search for lengths", () => {
  const some = fc.array(fc.integer({ min: 3, max: 30 }), { minLength: 1, maxLength: 8 });

  test("completion finds a plan within a number of lengths just where there is one", () => {
    fc.assert(
      fc.property(some, (list) => {
        const model = lengths(
          list.map((l) => [l, 1]),
          31,
        );
        const { size } = model.stocks[0]!;
        const sizes = model.types.flatMap((t) => new Array<number>(t.need).fill(t.size));
        const optimum = leastCost(sizes.length, [{ cost: 1 }], (mask) => fitsLength(sizes, mask, size, 0))!;
        const found = completeLengths(model, needsOf(model), optimum, without())!;
        expect(found.length).toBeLessThanOrEqual(optimum);
        const cut = model.types.map((_, t) => found.reduce((sum, c) => sum + (c.counts[c.types.indexOf(t)] ?? 0), 0));
        expect(cut).toEqual(needsOf(model));
        for (const c of found) {
          expect(c.types.reduce((sum, t, k) => sum + c.counts[k]! * model.types[t]!.size, 0)).toBeLessThanOrEqual(size);
        }
        expect(completeLengths(model, needsOf(model), optimum - 1, without())).toBeUndefined();
      }),
      { numRuns: 150 },
    );
  });

  test("completion gives up after its steps, and leaves large rests alone", () => {
    const model = lengths(
      [
        [10, 30],
        [7, 30],
      ],
      31,
    );
    expect(completeLengths(model, [30, 30], 20, without())).toBeDefined();
    expect(completeLengths(model, [30, 30], 20, without(), 3)).toBeUndefined();
    expect(completeLengths(model, [30, 30], 40, without())).toBeDefined();
    expect(completeLengths(model, [30, 30], 41, without())).toBeUndefined();
    const effort = new Effort(1e8);
    completeLengths(model, [30, 30], 20, effort);
    expect(1e8 - effort.remaining).toBeGreaterThan(0);
  });

  test("a start uses each part once and no length beyond its room", () => {
    fc.assert(
      fc.property(some, (list) => {
        const model = lengthModel(
          list.map((l, i) => ({ id: `p${i}`, lengthIn: l, quantity: 1 + (i % 3) })),
          [
            { id: "long", lengthIn: 60, cost: 9, quantity: 2 },
            { id: "short", lengthIn: 31, cost: 5, quantity: null },
          ],
          { ...options, goal: "cost" },
        );
        const needs = needsOf(model);
        const plan = startLengths(
          model,
          needs,
          model.stocks.map((s) => s.limit),
          without(),
        );
        const cut = needs.map((_, t) => plan.columns.reduce((sum, c) => sum + (c.counts[c.types.indexOf(t)] ?? 0), 0));
        expect(cut).toEqual(needs);
        for (const c of plan.columns) {
          const filled = c.types.reduce((sum, t, k) => sum + c.counts[k]! * model.types[t]!.size, 0);
          expect(filled).toBeLessThanOrEqual(model.stocks[c.stock]!.size);
        }
        model.stocks.forEach((s, i) => {
          expect(plan.columns.filter((c) => c.stock === i).length).toBeLessThanOrEqual(s.limit);
        });
        expect(plan.cost).toBe(plan.columns.reduce((sum, c) => sum + model.stocks[c.stock]!.cost, 0));
      }),
      { numRuns: 60 },
    );
  });

  test("a start fills a length exactly where longest first does not, and takes the stock that is cheap for its length", () => {
    // longest first, too: 6 + 4 and 5 + 3 + 2
    const plan = startLengths(
      lengths(
        [
          [6, 1],
          [5, 1],
          [4, 1],
          [3, 1],
          [2, 1],
        ],
        10,
      ),
      [1, 1, 1, 1, 1],
      [99],
      without(),
    );
    expect(plan.cost).toBe(2);
    const two = lengthModel(
      [{ id: "p", lengthIn: 10, quantity: 4 }],
      [
        { id: "a", lengthIn: 20, cost: 5, quantity: null },
        { id: "b", lengthIn: 10, cost: 2, quantity: null },
      ],
      { ...options, goal: "cost" },
    );
    expect(startLengths(two, [4], [4, 4], without()).cost).toBe(80_000);
  });

  test("sets of up to three parts of a pool, each once, by length", () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 0, max: 4 }), { maxLength: 7 }),
        fc.integer({ min: 5, max: 60 }),
        (pool, longest) => {
          const sizes = Int32Array.of(23, 19, 17, 11, 5);
          const { sums, types } = partSets(pool, sizes, longest);
          const wanted = new Set<string>([""]);
          pool.forEach((a, i) => {
            wanted.add(`${a}`);
            pool.forEach((b, j) => {
              if (j <= i) return;
              if (sizes[a]! + sizes[b]! <= longest) wanted.add(`${[a, b].sort()}`);
              pool.forEach((c, k) => {
                if (k > j && sizes[a]! + sizes[b]! + sizes[c]! <= longest) wanted.add(`${[a, b, c].sort()}`);
              });
            });
          });
          const got = [...sums].map((sum, i) => {
            const set = [...types.subarray(3 * i, 3 * i + 3)].filter((t) => t >= 0);
            expect(set.reduce((total, t) => total + sizes[t]!, 0)).toBe(sum);
            return `${set.sort()}`;
          });
          expect(got.slice().sort()).toEqual([...wanted].sort());
          expect([...sums]).toEqual([...sums].sort((a, b) => a - b));
          for (const room of [0, 5, 12, 30, longest]) {
            const at = longestThatFits({ sums, types }, room);
            expect(sums[at]!).toBeLessThanOrEqual(room);
            expect(sums[at + 1] ?? 1e9).toBeGreaterThan(room);
          }
        },
      ),
    );
  });

  test("a large pool goes in by twos", () => {
    const pool = Array.from({ length: 30 }, (_, i) => i);
    const { sums } = partSets(
      pool,
      Int32Array.from(pool, (i) => 10 + i),
      1000,
    );
    expect(sums.length).toBe(1 + 30 + (30 * 29) / 2);
    const few = Array.from({ length: 20 }, (_, i) => i);
    expect(
      partSets(
        few,
        Int32Array.from(few, (i) => 10 + i),
        1000,
      ).sums.length,
    ).toBe(1 + 20 + 190 + 1140);
  });

  test("exchange comes from one length too many to the fewest", () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 8, max: 30 }), { minLength: 7, maxLength: 10 }), (list) => {
        const model = lengths(
          list.map((l) => [l, 1]),
          61,
        );
        const { size } = model.stocks[0]!;
        const sizes = model.types.flatMap((t) => new Array<number>(t.need).fill(t.size));
        const optimum = leastCost(sizes.length, [{ cost: 1 }], (mask) => fitsLength(sizes, mask, size, 0))!;
        const alone = model.types.flatMap((t, i) =>
          new Array(t.need).fill(
            lengthColumn(
              0,
              1,
              model.types.map((_, k) => (k === i ? 1 : 0)),
            ),
          ),
        );
        const exchange = new LengthExchange(model, new Random(1));
        exchange.start(alone, optimum);
        const found = exchange.search(new Effort(3e6))!;
        expect(found.length).toBeLessThanOrEqual(optimum);
        const cut = model.types.map((_, t) => found.reduce((sum, c) => sum + (c.counts[c.types.indexOf(t)] ?? 0), 0));
        expect(cut).toEqual(needsOf(model));
        for (const c of found) {
          expect(c.types.reduce((sum, t, k) => sum + c.counts[k]! * model.types[t]!.size, 0)).toBeLessThanOrEqual(size);
        }
      }),
      { numRuns: 30, seed: 7 },
    );
  });
});

describe("sets of parts from one sheet", () => {
  const some = fc.array(
    fc.record({ w: fc.integer({ min: 2, max: 11 }), h: fc.integer({ min: 2, max: 8 }), turns: fc.boolean() }),
    { minLength: 1, maxLength: 5 },
  );
  /** At most eight to a sheet by area: those are priced set by set. */
  const large = fc.array(
    fc.record({ w: fc.integer({ min: 3, max: 11 }), h: fc.integer({ min: 4, max: 8 }), turns: fc.boolean() }),
    { minLength: 1, maxLength: 5 },
  );
  const modelOf = (parts: readonly BrutePart[]): SheetModel =>
    sheetModel(
      parts.map(({ w, h, turns }, i) => ({ id: `p${i}`, lengthIn: w / 64, widthIn: h / 64, quantity: 1, turns })),
      [{ id: "s", lengthIn: 12 / 64, widthIn: 8 / 64, cost: 0, quantity: null }],
      options,
    );
  /** The parts of the model one by one, and of which type each is. */
  const apart = (model: SheetModel) =>
    model.types.flatMap((t, type) => new Array(t.need).fill({ type, w: t.w, h: t.h, turns: t.turns }));

  test("stairs: just what trying everything finds, and the layout lies inside without overlap", () => {
    fc.assert(
      fc.property(some, (parts) => {
        const model = modelOf(parts);
        const single = apart(model) as (BrutePart & { type: number })[];
        const fits = guillotine(single);
        const { w, h } = model.stocks[0]!;
        const stairs = new Stairs(model);
        for (let mask = 1; mask < 2 ** single.length; mask++) {
          const set = stairs.of(single.flatMap((p, i) => (mask & (1 << i) ? [p.type] : [])));
          const holds = fits(mask, w, h);
          expect(stairs.fits(set, w, h)).toBe(holds);
          if (!holds) continue;
          const placed: { type: number; x: number; y: number; turned: boolean }[] = [];
          expect(stairs.lay(set, w, h, 0, 0, placed)).toBe(true);
          const boxes = placed.map((p) => {
            const t = model.types[p.type]!;
            const [pw, ph] = p.turned ? [t.h, t.w] : [t.w, t.h];
            return { x0: p.x, y0: p.y, x1: p.x + pw, y1: p.y + ph };
          });
          boxes.forEach((a, i) => {
            expect(a.x0 >= 0 && a.y0 >= 0 && a.x1 <= w && a.y1 <= h).toBe(true);
            for (const b of boxes.slice(i + 1)) {
              expect(a.x1 <= b.x0 || b.x1 <= a.x0 || a.y1 <= b.y0 || b.y1 <= a.y0).toBe(true);
            }
          });
        }
      }),
      { numRuns: 60 },
    );
  });

  test("stairs: steps rise on one side and fall on the other, none is of no use", () => {
    fc.assert(
      fc.property(some, (parts) => {
        const model = modelOf(parts);
        const stairs = new Stairs(model);
        const set = stairs.of(apart(model).map((p) => p.type));
        for (let i = 1; i < set.w.length; i++) {
          expect(set.w[i]!).toBeGreaterThan(set.w[i - 1]!);
          expect(set.h[i]!).toBeLessThan(set.h[i - 1]!);
        }
      }),
      { numRuns: 60 },
    );
  });

  test("the most valuable set, as trying everything finds it", () => {
    fc.assert(
      fc.property(large, fc.array(fc.integer({ min: 1, max: 60 }), { minLength: 5, maxLength: 5 }), (parts, worth) => {
        const model = modelOf(parts);
        const single = apart(model) as (BrutePart & { type: number })[];
        const fits = guillotine(single);
        const { w, h } = model.stocks[0]!;
        const values = Float64Array.from(model.types, (_, t) => worth[t]!);
        let best = 0;
        for (let mask = 1; mask < 2 ** single.length; mask++) {
          if (!fits(mask, w, h)) continue;
          best = Math.max(
            best,
            single.reduce((sum, p, i) => sum + (mask & (1 << i) ? values[p.type]! : 0), 0),
          );
        }
        const ask = (threshold: number) =>
          setPricer(model)!.price({
            values,
            stock: 0,
            threshold,
            enough: threshold,
            needs: needsOf(model),
            effort: without(),
          });
        const [column] = ask(best - 0.5).columns;
        expect(column!.types.reduce((sum, t, k) => sum + column!.counts[k]! * values[t]!, 0)).toBe(best);
        // proven: nothing is worth more
        expect(ask(best)).toEqual({ columns: [], most: best });
        const raster = rasterPricer(model)!.price({
          values,
          stock: 0,
          threshold: 0,
          enough: 0,
          needs: needsOf(model),
          effort: without(),
        });
        expect(raster.most).toBeGreaterThanOrEqual(best);
      }),
      { numRuns: 30 },
    );
  });

  test("which pricing: parts a sheet by area, and how much they repeat", () => {
    const of = (w: number, h: number, quantity: number, kinds = 1) =>
      sheetModel(
        Array.from({ length: kinds }, (_, i) => ({
          id: `p${i}`,
          lengthIn: w + i / 64,
          widthIn: h,
          quantity,
          turns: false,
        })),
        [{ id: "s", lengthIn: 12, widthIn: 8, cost: 0, quantity: null }],
        options,
      );
    expect(partsPerSheet(of(4, 4, 5))).toBeCloseTo(6, 9);
    expect(setPricer(of(4, 4, 5))).toBeDefined();
    expect(setPricer(of(2, 2, 5))).toBeUndefined();
    expect([repeatsMuch(of(4, 4, 3)), repeatsMuch(of(4, 4, 2))]).toEqual([true, false]);
    expect(repeatsMuch(of(4, 4, 3, 2))).toBe(true);
    expect(rasterPricer(of(4, 4, 5))).toBeDefined();
  });
});
