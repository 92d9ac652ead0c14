/** Modules by themselves, by hand. */
import { describe, expect, test } from "vitest";
import { Effort } from "../../../src/core/cutting/engine/effort.ts";
import { boundLengths, boundSheets, nestLengths, nestSheets } from "../../../src/core/cutting/index.ts";
import { keepOneLong, longestRoom } from "../../../src/core/cutting/lengths/later/leftover.ts";
import { lengthModel } from "../../../src/core/cutting/lengths/model/model.ts";
import { lengthColumn } from "../../../src/core/cutting/lengths/model/pricing.ts";
import { isLargest } from "../../../src/core/cutting/sheets/later/leftover.ts";
import { onSameSheets } from "../../../src/core/cutting/sheets/later/same-sheets.ts";
import type { Layout } from "../../../src/core/cutting/sheets/plan/layout.ts";
import { sheetModel } from "../../../src/core/cutting/sheets/plan/model.ts";
import { leftoverOf, roomOf } from "../../../src/core/cutting/sheets/plan/sawn.ts";
import { areaBound, dualFeasibleBound } from "../../../src/core/cutting/sheets/search/area-bound.ts";
import { fromColumns, toColumn } from "../../../src/core/cutting/sheets/search/columns.ts";
import { GuillotinePricer, type SheetColumn } from "../../../src/core/cutting/sheets/search/guillotine-pricing.ts";
import { rasterPricer } from "../../../src/core/cutting/sheets/search/pricers.ts";
import { Stairs } from "../../../src/core/cutting/sheets/search/stairs.ts";
import { mayFill, planWithin } from "../../../src/core/cutting/sheets/search/stock-plans.ts";
import { SubsetPricer } from "../../../src/core/cutting/sheets/search/subset-pricing.ts";

const options = { kerfIn: 0, trimIn: 0, goal: "sheets" } as const;
type Rows = readonly (readonly [w: number, h: number, quantity: number, turns?: boolean])[];
type Stocks = readonly (readonly [w: number, h: number, cost?: number, quantity?: number | null])[];
/** In sixty-fourths, so that the model counts in ones where the sizes have no common factor. */
const sheets = (parts: Rows, stocks: Stocks, goal: "sheets" | "cost" = "sheets") =>
  sheetModel(
    parts.map(([w, h, quantity, turns = false], i) => ({
      id: `p${i}`,
      lengthIn: w / 64,
      widthIn: h / 64,
      quantity,
      turns,
    })),
    stocks.map(([w, h, cost = 0, quantity = null], i) => ({
      id: `s${i}`,
      lengthIn: w / 64,
      widthIn: h / 64,
      cost,
      quantity,
    })),
    { ...options, goal },
  );
const ask = (values: readonly number[], threshold: number, needs: readonly number[], stock = 0) => ({
  values: Float64Array.from(values),
  stock,
  threshold,
  enough: threshold,
  needs,
  effort: new Effort(1e7),
});

describe("pricing set by set", () => {
  // the fillings look at the 64 parts of most value for their area alone, so that the one that counts is left to the search
  const small = [1, 1, 64] as const;

  test("a part that is the whole sheet, dearer than all that is small together", () => {
    const model = sheets([[12, 8, 1], small], [[12, 8]]);
    expect(model.types.map((t) => t.area)).toEqual([96, 1]);
    const weights = [[Float64Array.of(1, 1 / 96)]];
    const pricer = new SubsetPricer(model, new Stairs(model), weights);
    const { columns } = pricer.price(ask([150, 2], 140, [1, 64]));
    expect(columns).toEqual([
      { stock: 0, cost: 1, types: [0], counts: [1], placed: [{ type: 0, x: 0, y: 0, turned: false }] },
    ]);
  });

  test("the same lying across, and not where it must lie upright", () => {
    for (const turns of [true, false]) {
      const parts: Rows = [[8, 12, 1, turns], small];
      const model = sheets(parts, [
        [12, 8],
        [8, 12],
      ]);
      const across = model.stocks.findIndex((s) => s.w === 12);
      const big = model.types.findIndex((t) => t.area === 96);
      const values = model.types.map((_, t) => (t === big ? 150 : 2));
      const needs = model.types.map((t) => t.need);
      const area = Float64Array.from(model.types, (t) => t.area / 96);
      const pricer = new SubsetPricer(model, new Stairs(model), [[area], [area]]);
      const { columns } = pricer.price(ask(values, 140, needs, across));
      expect(columns.map((c) => c.types)).toEqual(turns ? [[big]] : []);
    }
  });
});

describe("pricing by the raster", () => {
  test("parts that are as wide or as high as the sheet", () => {
    const model = sheets(
      [
        [12, 3, 1],
        [5, 8, 1],
        [7, 5, 1],
      ],
      [[12, 8]],
    );
    const of = (w: number) => model.types.findIndex((t) => t.w === w);
    const price = (whole: number, high: number, rest: number) => {
      const values = [0, 0, 0];
      values[of(12)] = whole;
      values[of(5)] = high;
      values[of(7)] = rest;
      const { columns, most } = new GuillotinePricer(model).price(ask(values, 0, [1, 1, 1]));
      return { columns: columns as SheetColumn[], most };
    };
    // two of 12 x 3; a 12 x 3 above a 7 x 5; two of 5 x 8; a 5 x 8 beside a 7 x 5
    expect(price(10, 1, 1).most).toBe(20);
    expect(price(10, 1, 15).most).toBe(25);
    expect(price(1, 10, 1).most).toBe(20);
    expect(price(1, 10, 12).most).toBe(22);
    const [best] = price(1, 10, 12).columns;
    expect(best!.placed.map((p) => [p.type, p.x, p.y]).sort()).toEqual(
      [
        [of(7), 5, 0],
        [of(5), 0, 0],
      ].sort(),
    );
    expect(price(10, 1, 1).columns.every((c) => c.placed.every((p) => !p.turned))).toBe(true);
    // nothing is worth more than the threshold
    expect(rasterPricer(model)!.price(ask([1, 1, 1], 3, [1, 1, 1]))).toEqual({ columns: [], most: 2 });
  });
});

describe("bounds with prices", () => {
  test("one square sheet that has a price, parts that turn: three of more than half at 7 each", () => {
    const model = sheets([[51, 51, 3, true]], [[100, 100, 7]], "cost");
    expect(dualFeasibleBound(model)).toBe(210_000);
    expect(areaBound(model)).toBe(70_000);
  });

  test("one sheet that is no square: two to a sheet", () => {
    const model = sheets([[34, 51, 5]], [[100, 90, 7]], "cost");
    expect(dualFeasibleBound(model)).toBe(210_000);
  });
});

describe("sets of sheets", () => {
  const model = sheets(
    [[10, 10, 4]],
    [
      [20, 10, 5],
      [10, 10, 3],
    ],
    "cost",
  );

  test("enough to the last bit, and not for less", () => {
    expect([planWithin(model, 100_000), planWithin(model, 99_999)]).toEqual([true, false]);
    expect([mayFill(model, 100_000), mayFill(model, 99_999)]).toEqual([true, false]);
  });

  test("no more of a sheet than there are", () => {
    const few = sheets(
      [[10, 10, 4]],
      [
        [20, 10, 5, 1],
        [10, 10, 3, 9],
      ],
      "cost",
    );
    // one of 5 and two of 3
    expect([planWithin(few, 110_000), planWithin(few, 109_999)]).toEqual([true, false]);
    expect([mayFill(few, 110_000), mayFill(few, 109_999)]).toEqual([true, false]);
  });
});

describe("what is left over", () => {
  const rest = (w: number, h: number) => ({ lines: [], freed: [], rests: [{ x: 0, y: 0, w, h }], stages: 0, turns: 0 });

  test("a strip that the kerf takes is nothing", () => {
    expect([leftoverOf(rest(10, 2), 2), leftoverOf(rest(2, 10), 2), leftoverOf(rest(10, 3), 2)]).toEqual([0, 0, 8]);
    expect(leftoverOf({ ...rest(1, 1), rests: [] }, 2)).toBe(0);
  });

  test("none can be larger where a part alone on a sheet leaves no more, either way it lies", () => {
    const layout: Layout = { stock: 0, placed: [{ type: 0, x: 0, y: 0, turned: false }] };
    const model = sheets([[7, 5, 1]], [[12, 9]]);
    // 5 x 9 beside it, or 12 x 4 above it
    expect(roomOf(model, layout)).toBe(108 - 35);
    expect(isLargest(model, [layout])).toBe(true);
    const turning = sheets([[7, 5, 1, true]], [[12, 9]]);
    // upright 7 x 9 is left beside it
    expect(isLargest(turning, [layout])).toBe(false);
    expect(isLargest(turning, [{ stock: 0, placed: [{ type: 0, x: 0, y: 0, turned: true }] }])).toBe(true);
  });

  test("with any effort a leftover is called the longest only where it is", () => {
    const parts = [50, 25].map((n, i) => ({ id: `p${i}`, lengthIn: n / 64, quantity: 3 + i }));
    const model = lengthModel(
      [...parts, { id: "odd", lengthIn: 1 / 64, quantity: 1 }],
      [{ id: "s", lengthIn: 100 / 64, cost: 0, quantity: null }],
      options,
    );
    // 250 of 300 are needed, and the 1: two of 50 and one of each with two of 25 leave two of 25, and the 1 goes with them
    const plan = [lengthColumn(0, 1, [1, 1, 1]), lengthColumn(0, 1, [1, 1, 0]), lengthColumn(0, 1, [1, 2, 0])];
    let proven = 0;
    for (let effort = 100; effort < 3e5; effort *= 1.4) {
      const kept = keepOneLong(model, plan, new Effort(effort));
      const parts = [0, 1, 2].map((t) => kept.columns.reduce((n, c) => n + (c.counts[c.types.indexOf(t)] ?? 0), 0));
      expect(parts).toEqual([3, 4, 1]);
      if (kept.proven) expect(longestRoom(model, kept.columns)).toBe(49);
      proven += Number(kept.proven);
    }
    expect(proven).toBeGreaterThan(3);
  });
});

test("columns of more parts than are needed: the first ones keep theirs", () => {
  const model = sheets([[5, 5, 3]], [[11, 10]]);
  const full: Layout = {
    stock: 0,
    placed: [0, 5].map((x) => ({ type: 0, x, y: 0, turned: false })),
  };
  const packing = fromColumns(model, [toColumn(model, full), toColumn(model, full), toColumn(model, full)]);
  expect(packing.layouts.map((l) => l.placed.length)).toEqual([2, 1]);
  expect(packing.cost).toBe(2);
});

test("no other sheets than those of the plan, and a stand-in that costs 1", () => {
  const model = sheets(
    [
      [5, 5, 3],
      [9, 2, 1],
    ],
    [
      [11, 10, 4],
      [9, 6, 2],
    ],
    "cost",
  );
  const empty = (stock: number): Layout => ({ stock, placed: [] });
  const same = onSameSheets(model, model.types, [empty(1), empty(1)]);
  expect(same.stocks.map((s) => [s.w, s.h, s.cost, s.limit])).toEqual([
    [11, 10, 0, 0],
    [9, 6, 0, 2],
    [11, 11, 1, 4],
  ]);
  expect([same.total, same.costStep]).toEqual([4, 1]);
});

test("no parts and one part", () => {
  const bar = [{ id: "s", lengthIn: 10, cost: 0, quantity: null }];
  const board = [{ id: "s", lengthIn: 10, widthIn: 10, cost: 0, quantity: null }];
  const rod = (quantity: number) => [{ id: "p", lengthIn: 4, quantity }];
  const panel = (quantity: number) => [{ id: "p", lengthIn: 4, widthIn: 4, quantity, turns: false }];
  const none = { bound: 0, method: "no parts" };
  expect([boundLengths(rod(0), bar, options), boundSheets(panel(0), board, options)]).toEqual([none, none]);
  expect([nestLengths(rod(0), bar, options).count, nestSheets(panel(0), board, options).count]).toEqual([0, 0]);
  expect([boundLengths(rod(1), bar, options).bound, boundSheets(panel(1), board, options).bound]).toEqual([1, 1]);
  expect([nestLengths(rod(1), bar, options).count, nestSheets(panel(1), board, options).count]).toEqual([1, 1]);
});
