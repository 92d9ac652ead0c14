import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { Effort } from "../../../src/core/cutting/engine/effort.ts";
import type { NestOptions } from "../../../src/core/cutting/engine/types.ts";
import { type LengthPart, type LengthStock, nestLengths, nestSheets } from "../../../src/core/cutting/index.ts";
import { coverLengths } from "../../../src/core/cutting/lengths/cover/cover.ts";
import { keepOneLong, longestRoom, roomOf } from "../../../src/core/cutting/lengths/later/leftover.ts";
import { columnsOf, fewerPatterns, patternsOf } from "../../../src/core/cutting/lengths/later/patterns.ts";
import { lengthModel } from "../../../src/core/cutting/lengths/model/model.ts";
import { lengthColumn } from "../../../src/core/cutting/lengths/model/pricing.ts";
import { Random } from "../../../src/core/kit/random.ts";
import { faults } from "./verify.ts";
import { lengthFaults } from "./verify-lengths.ts";

const options = (more: Partial<NestOptions> = {}): NestOptions => ({
  kerfIn: 0,
  trimIn: 0,
  goal: "sheets",
  effort: 0.02,
  ...more,
});
const part = (id: string, lengthIn: number, quantity: number): LengthPart => ({ id, lengthIn, quantity });
const bar = (id: string, lengthIn: number, cost = 1, quantity: number | null = null): LengthStock => ({
  id,
  lengthIn,
  cost,
  quantity,
});
const goalOf = (n: { reached: readonly { goal: string; value: number; proven: boolean }[] }, goal: string) =>
  n.reached.find((r) => r.goal === goal);

describe("lengths, goal after goal", () => {
  test("at the same count the cheaper stock, and at the same price the shorter", () => {
    const stocks = [bar("8 ft", 96, 10), bar("16 ft", 192, 19)];
    const n = nestLengths([part("a", 90, 1)], stocks, options());
    expect(n.lengths.map((l) => l.stock)).toEqual(["8 ft"]);
    expect(goalOf(n, "price")).toEqual({ goal: "price", value: 10, proven: true });
    const same = nestLengths([part("a", 90, 1)], [bar("8 ft", 96, 19), bar("16 ft", 192, 19)], options());
    expect(same.lengths.map((l) => l.stock)).toEqual(["8 ft"]);
    expect(goalOf(same, "size of stock")).toMatchObject({ value: 96, proven: true });
  });

  test("price is never bought with a length more", () => {
    const n = nestLengths([part("a", 90, 2)], [bar("8 ft", 96, 1), bar("16 ft", 192, 50)], options());
    expect([n.count, n.cost]).toEqual([1, 50]);
  });

  test("one long leftover: of two ways to cut the same bars the one that keeps a bar nearly whole", () => {
    // 60 + 40 fills a bar; 60 + 20 + 20 too
    const n = nestLengths([part("a", 60, 2), part("b", 40, 1), part("c", 20, 3)], [bar("s", 100)], options());
    expect([n.count, goalOf(n, "longest leftover")?.value]).toEqual([3, 80]);
  });

  test("few patterns: equal work is cut alike", () => {
    const n = nestLengths([part("a", 60, 6), part("b", 40, 3), part("c", 20, 6)], [bar("s", 100)], options());
    expect([n.count, goalOf(n, "patterns")?.value]).toEqual([6, 2]);
  });

  test("later goals keep parts, count and cost", () => {
    const rows = fc.array(fc.tuple(fc.integer({ min: 40, max: 700 }), fc.integer({ min: 1, max: 9 })), {
      minLength: 2,
      maxLength: 7,
    });
    fc.assert(
      fc.property(rows, fc.boolean(), (list, priced) => {
        const parts = list.map(([n, quantity], i) => part(`p${i}`, n / 8, quantity));
        const stocks = priced ? [bar("96", 96, 7), bar("120", 120, 9), bar("left", 50, 0, 3)] : [bar("96", 96)];
        const o = options({ kerfIn: 0.125, goal: priced ? "cost" : "sheets" });
        const n = nestLengths(parts, stocks, o);
        expect(lengthFaults(n, parts, stocks, o)).toEqual([]);
        expect(n.value).toBeGreaterThanOrEqual(n.bound);
        expect(n.reached[0]!.value).toBe(n.value);
      }),
      { numRuns: 25 },
    );
  });
});

describe("parts of the later goals", () => {
  const model = lengthModel([part("a", 60, 4), part("b", 40, 4), part("c", 20, 4)], [bar("s", 100)], options());
  const column = (...counts: number[]) => lengthColumn(0, 1, counts);
  const demand = (columns: readonly { types: readonly number[]; counts: readonly number[] }[]) =>
    model.types.map((_, t) => columns.reduce((sum, c) => sum + (c.counts[c.types.indexOf(t)] ?? 0), 0));

  test("the longest leftover, with the same parts from as many bars", () => {
    const three = lengthModel([part("a", 60, 2), part("b", 40, 1), part("c", 20, 3)], [bar("s", 100)], options());
    const plan = [column(1, 1, 0), column(1, 0, 1), column(0, 0, 2)];
    expect(longestRoom(three, plan) * three.unit).toBe(60 * 64);
    const kept = keepOneLong(three, plan, new Effort(2e6));
    expect(kept.proven).toBe(true);
    expect(longestRoom(three, kept.columns) * three.unit).toBe(80 * 64);
    expect(demand(kept.columns)).toEqual([2, 1, 3]);
    expect(kept.columns).toHaveLength(3);
    expect(kept.columns.reduce((sum, c) => sum + roomOf(three, c), 0) * three.unit).toBe(80 * 64);
  });

  test("fewer patterns, with the room that one bar must leave", () => {
    const plan = [column(1, 1, 0), column(1, 1, 0), column(1, 0, 2), column(1, 0, 2), column(0, 2, 0)];
    const few = fewerPatterns(model, patternsOf(model, plan), 0, new Random(1), new Effort(1e6));
    // four of 60 + 40 and one of four times 20
    expect(few.patterns).toHaveLength(2);
    expect(few.proven).toBe(true);
    expect(demand(columnsOf(model, few.patterns))).toEqual([4, 4, 4]);
    const kept = fewerPatterns(model, patternsOf(model, plan), (20 * 64) / model.unit, new Random(1), new Effort(1e6));
    expect(longestRoom(model, columnsOf(model, kept.patterns)) * model.unit).toBeGreaterThanOrEqual(20 * 64);
    expect(demand(columnsOf(model, kept.patterns))).toEqual([4, 4, 4]);
  });

  test("the least cost over all ways to cut is proven", () => {
    const stocks = [bar("100", 100, 10), bar("60", 60, 5)];
    const two = lengthModel([part("a", 60, 3), part("b", 40, 2)], stocks, options({ goal: "cost" }));
    // three of 60 at 5 and one of 100 at 10 for both of 40, or a 60 + 40 at 10, ...
    const values = { parts: Float64Array.from([50_000, 50_000]), stocks: new Float64Array(2) };
    const found = coverLengths(two, values, 300_000, new Effort(1e7));
    expect(found.bound).toBe(250_000);
    expect(found.columns?.reduce((sum, c) => sum + c.cost, 0)).toBe(250_000);
    expect(coverLengths(two, values, 200_000, new Effort(1e7))).toEqual({ columns: undefined, bound: 250_000 });
  });
});

describe("limited stock", () => {
  test("too little is proven too little, by area as by length", () => {
    const n = nestLengths([part("a", 60, 5)], [bar("s", 100, 1, 3)], options());
    expect(n).toMatchObject({ short: true, unplaced: [{ part: "a", quantity: 2 }], bound: 0, proven: false });
    const sheets = [{ id: "s", lengthIn: 96, widthIn: 48, cost: 1, quantity: 1 }];
    const parts = [{ id: "p", lengthIn: 60, widthIn: 40, quantity: 2, turns: false }];
    expect(nestSheets(parts, sheets, options())).toMatchObject({ short: true, unplaced: [{ part: "p", quantity: 1 }] });
  });

  test("enough is enough to the last bar", () => {
    const n = nestLengths([part("a", 60, 3), part("b", 40, 3)], [bar("s", 100, 1, 3)], options());
    expect(n).toMatchObject({ short: false, unplaced: [], count: 3, proven: true });
  });
});

describe("sheets, goal after goal", () => {
  const stock = (id: string, lengthIn: number, widthIn: number, cost: number) => ({
    id,
    lengthIn,
    widthIn,
    cost,
    quantity: null,
  });
  const sheetPart = (id: string, lengthIn: number, widthIn: number, quantity: number) => ({
    id,
    lengthIn,
    widthIn,
    quantity,
    turns: false,
  });

  test("price, then the smallest sheet", () => {
    const one = [sheetPart("p", 48, 24, 1)];
    const cheap = nestSheets(one, [stock("10", 120, 48, 54), stock("8", 96, 48, 42)], options());
    expect(cheap.sheets[0]!.stock).toBe("8");
    const long = nestSheets(one, [stock("10", 120, 48, 41), stock("8", 96, 48, 42)], options());
    expect(long.sheets[0]!.stock).toBe("10");
    const small = nestSheets(one, [stock("10", 120, 48, 0), stock("8", 96, 48, 0)], options());
    expect(small.sheets[0]!.stock).toBe("8");
    expect(goalOf(small, "size of stock")).toMatchObject({ value: 96 * 48, proven: true });
  });

  test("one large leftover: the parts of the emptiest sheet go where there is room", () => {
    const n = nestSheets([sheetPart("a", 60, 48, 2), sheetPart("b", 36, 48, 1)], [stock("s", 96, 48, 1)], options());
    expect([n.count, goalOf(n, "largest leftover")?.value]).toEqual([2, 36 * 48]);
    const single = nestSheets([sheetPart("a", 30, 20, 2)], [stock("s", 96, 48, 1)], options());
    // side by side along the short side or in a row: 66 x 48 or 96 x 28
    expect(goalOf(single, "largest leftover")?.value).toBe(66 * 48);
  });

  test("sheets with the same parts are laid alike", () => {
    const parts = [sheetPart("a", 40, 30, 4), sheetPart("b", 50, 18, 4)];
    const n = nestSheets(parts, [stock("s", 96, 48, 1)], options());
    const layouts = new Set(n.sheets.map((s) => JSON.stringify(s.placements)));
    expect(layouts.size).toBe(goalOf(n, "patterns")?.value);
  });
});

describe("later goals of sheets", () => {
  const s = (id: string, lengthIn: number, widthIn: number, cost = 1) => ({
    id,
    lengthIn,
    widthIn,
    cost,
    quantity: null,
  });
  const p = (id: string, lengthIn: number, widthIn: number, quantity: number, turns = false) => ({
    id,
    lengthIn,
    widthIn,
    quantity,
    turns,
  });

  test("a leftover that is all the parts leave, or all that a part alone leaves, is proven", () => {
    const n = nestSheets([p("a", 48, 48, 3)], [s("s", 96, 48)], options());
    expect(goalOf(n, "largest leftover")).toEqual({ goal: "largest leftover", value: 48 * 48, proven: true });
    // each of the two sheets holds one part, so that neither leaves more than 36 x 48
    const two = nestSheets([p("a", 60, 40, 2)], [s("s", 96, 48)], options());
    expect(goalOf(two, "largest leftover")).toEqual({ goal: "largest leftover", value: 36 * 48, proven: true });
  });

  test("parts of two sheets are shared out so that one keeps the largest strip", () => {
    // 12 of 24 x 16 fill a sheet; of 15 three are left, side by side along the end of the second sheet
    const n = nestSheets([p("a", 24, 16, 15)], [s("s", 96, 48)], options());
    expect(goalOf(n, "largest leftover")).toEqual({ goal: "largest leftover", value: 72 * 48, proven: true });
  });

  test("work that repeats is cut alike", () => {
    const parts = [p("a", 60, 24, 8), p("b", 36, 24, 4), p("c", 36, 12, 8)];
    const n = nestSheets(parts, [s("s", 96, 48)], options({ effort: 0.2 }));
    // 8 x 60 x 24 + 4 x 36 x 24 + 8 x 36 x 12 fill four sheets; two of one kind or all of one
    expect(n.count).toBe(4);
    expect(goalOf(n, "patterns")).toEqual({ goal: "patterns", value: 1, proven: true });
    expect(new Set(n.sheets.map((x) => JSON.stringify(x))).size).toBe(1);
  });

  test("sheets that are alike have parts of the same names where there are enough", () => {
    const n = nestSheets([p("b", 48, 48, 4), p("a", 48, 48, 2)], [s("s", 96, 48)], options());
    expect(n.sheets.map((x) => x.placements.map((q) => q.part))).toEqual([
      ["b", "a"],
      ["b", "a"],
      ["b", "b"],
    ]);
  });

  test("no turn of the saw that strips can do without", () => {
    const n = nestSheets([p("a", 48, 12, 4)], [s("s", 48, 48)], options());
    expect(goalOf(n, "turns")).toEqual({ goal: "turns", value: 0, proven: true });
  });

  test("what is reported of each goal is what the sheets have, and every part is there", () => {
    const list = fc.array(
      fc.tuple(fc.integer({ min: 8, max: 60 }), fc.integer({ min: 6, max: 40 }), fc.integer({ min: 1, max: 6 })),
      { minLength: 1, maxLength: 6 },
    );
    fc.assert(
      fc.property(list, fc.boolean(), (rows, turns) => {
        const parts = rows.map(([l, w, q], i) => p(`p${i}`, l, w, q, turns));
        const stocks = [s("big", 96, 48, 42), s("small", 72, 48, 33)];
        const o = options({ kerfIn: 0.125 });
        const n = nestSheets(parts, stocks, o);
        expect(faults(n, parts, stocks, o)).toEqual([]);
        const rests = n.sheets.map((x) => x.rests[0]).map((r) => (r ? r.lengthIn * r.widthIn : 0));
        expect(goalOf(n, "largest leftover")?.value).toBe(Math.max(...rests));
        expect(goalOf(n, "turns")?.value).toBe(n.sheets.reduce((sum, x) => sum + x.turns, 0));
        expect(n.reached[0]?.value).toBe(n.count);
      }),
      { numRuns: 20 },
    );
  });
});
