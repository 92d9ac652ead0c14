import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  boundSheets,
  type NestOptions,
  nestSheets,
  type SheetPart,
  type SheetStock,
} from "../../../src/core/cutting/index.ts";
import { BadInput } from "../../../src/core/kit/refusal.ts";
import { plant } from "./planted.ts";
import { faults } from "./verify.ts";

const options = (more: Partial<NestOptions> = {}): NestOptions => ({
  kerfIn: 0.125,
  trimIn: 0.25,
  goal: "sheets",
  effort: 0.02,
  ...more,
});
const sheet: SheetStock = { id: "sheet", lengthIn: 96, widthIn: 48, cost: 42, quantity: null };
const part = (id: string, lengthIn: number, widthIn: number, quantity = 1, turns = false): SheetPart => ({
  id,
  lengthIn,
  widthIn,
  quantity,
  turns,
});

const eighths = (max: number): fc.Arbitrary<number> => fc.integer({ min: 16, max: max * 8 }).map((n) => n / 8);
const someParts = fc
  .array(fc.tuple(eighths(90), eighths(44), fc.integer({ min: 1, max: 4 }), fc.boolean()), {
    minLength: 1,
    maxLength: 10,
  })
  .map((rows) => rows.map(([l, w, q, turns], i) => part(`p${i}`, l, w, q, turns)));
const runs = { numRuns: 12 };

describe("a layout", () => {
  test("holds every part, edge to edge, inside the trimmed sheet, and never beats its bound", () => {
    fc.assert(
      fc.property(someParts, fc.constantFrom(0, 0.125, 0.25), fc.constantFrom(0, 0.25, 1), (parts, kerfIn, trimIn) => {
        const o = options({ kerfIn, trimIn });
        const n = nestSheets(parts, [sheet], o);
        expect(faults(n, parts, [sheet], o)).toEqual([]);
        expect(n.count).toBeGreaterThanOrEqual(n.bound);
        expect(n.proven).toBe(n.count === n.bound);
      }),
      runs,
    );
  });

  test("does so with several sizes, leftovers at no cost and stock that may run out", () => {
    fc.assert(
      fc.property(someParts, fc.integer({ min: 0, max: 3 }), fc.constantFrom("sheets", "cost"), (parts, left, goal) => {
        const stocks: SheetStock[] = [
          { ...sheet, quantity: null },
          { id: "leftover", lengthIn: 60, widthIn: 48, cost: 0, quantity: left },
          { id: "long", lengthIn: 120, widthIn: 48, cost: 55, quantity: left },
        ];
        const plan = options({ goal });
        const nesting = nestSheets(parts, stocks, plan);
        expect(faults(nesting, parts, stocks, plan)).toEqual([]);
        expect(nesting.bound).toBeLessThanOrEqual(goal === "cost" ? nesting.cost : nesting.count);
      }),
      runs,
    );
  });

  test("does not depend on the order of the rows", () => {
    fc.assert(
      fc.property(someParts, fc.integer(), (parts, seed) => {
        const shuffled = [...parts].sort((a, b) => ((seed ^ a.lengthIn) % 7) - ((seed ^ b.lengthIn) % 7) || 1);
        const stocks = [sheet, { ...sheet, id: "long", lengthIn: 120, cost: 54 }];
        const a = nestSheets(parts, stocks, options({ goal: "cost" }));
        const b = nestSheets(shuffled, [...stocks].reverse(), options({ goal: "cost" }));
        expect(b).toEqual(a);
      }),
      runs,
    );
  });

  test("is the same again for the same input", () => {
    const parts = plant(5, 4, [{ l: 96, w: 48, cost: 1 }], 0.125, 0.25, true).parts;
    expect(nestSheets(parts, [sheet], options())).toEqual(nestSheets(parts, [sheet], options()));
  });

  test("with cuts that free each part: as many stages as the saw turns", () => {
    const n = nestSheets([part("a", 40, 20, 4)], [sheet], options());
    expect(n.count).toBe(1);
    for (const cut of n.sheets[0]!.cuts) {
      expect(cut.toIn).toBeGreaterThan(cut.fromIn);
      expect(cut.stage).toBeGreaterThanOrEqual(1);
    }
  });
});

describe("a bound", () => {
  test("never exceeds a plan that is known to exist", () => {
    fc.assert(
      fc.property(fc.integer(), fc.integer({ min: 1, max: 5 }), fc.boolean(), (seed, sheets, turns) => {
        const p = plant(seed, sheets, [{ l: 96, w: 48, cost: 1 }], 0.125, 0.25, turns);
        const n = nestSheets(p.parts, p.stocks, options());
        expect(n.bound).toBeLessThanOrEqual(p.sheets);
        expect(n.count).toBeGreaterThanOrEqual(n.bound);
        expect(boundSheets(p.parts, p.stocks, options()).bound).toBeLessThanOrEqual(p.sheets);
      }),
      { numRuns: 25 },
    );
  });

  test("never exceeds a known plan with several sheet sizes", () => {
    const sizes = [
      { l: 96, w: 48, cost: 42 },
      { l: 120, w: 48, cost: 54 },
      { l: 60, w: 40, cost: 17 },
    ];
    fc.assert(
      fc.property(fc.integer(), fc.integer({ min: 1, max: 5 }), (seed, sheets) => {
        const p = plant(seed, sheets, sizes, 0.125, 0.25, true);
        const o = options({ goal: "cost" });
        const n = nestSheets(p.parts, p.stocks, o);
        expect(n.bound).toBeLessThanOrEqual(p.cost);
        expect(n.cost).toBeGreaterThanOrEqual(n.bound);
        expect(faults(n, p.parts, p.stocks, o)).toEqual([]);
      }),
      runs,
    );
  });

  test("for some parts holds for more parts and for a wider kerf", () => {
    fc.assert(
      fc.property(someParts, eighths(90), eighths(44), (parts, l, w) => {
        const { bound } = boundSheets(parts, [sheet], options());
        expect(nestSheets([...parts, part("more", l, w)], [sheet], options()).count).toBeGreaterThanOrEqual(bound);
        expect(nestSheets(parts, [sheet], options({ kerfIn: 0.25 })).count).toBeGreaterThanOrEqual(bound);
      }),
      runs,
    );
  });
});

describe("stock", () => {
  test("a kerf decides whether two 16 ft pieces come out of a 32 ft panel", () => {
    const panel = [{ id: "panel", lengthIn: 384, widthIn: 48, cost: 1, quantity: null }];
    const o = options({ trimIn: 0 });
    expect(nestSheets([part("exact", 192, 48, 2)], panel, o).count).toBe(2);
    expect(nestSheets([part("with joint gap", 191.875, 48, 2)], panel, o).count).toBe(1);
  });

  test("grain keeps a part from turning", () => {
    const o = options({ kerfIn: 0, trimIn: 0 });
    expect(nestSheets([part("a", 48, 32, 3, true)], [sheet], o).count).toBe(1);
    expect(nestSheets([part("a", 48, 32, 3, false)], [sheet], o).count).toBe(2);
  });

  test("a part that fits only when turned says so in the layout", () => {
    const n = nestSheets([part("a", 40, 90, 1, true)], [sheet], options());
    expect(n.sheets[0]!.placements[0]).toMatchObject({ lengthIn: 90, widthIn: 40, turned: true });
  });

  test("leftovers at no cost are used before sheets that cost, and no more than there are", () => {
    const stocks = [sheet, { id: "cut-out", lengthIn: 40, widthIn: 40, cost: 0, quantity: 2 }];
    const parts = [part("a", 38, 38, 3)];
    const n = nestSheets(parts, stocks, options());
    // two fit the sheet that has to be bought, so that one cut-out stays whole
    expect(n.sheets.map((s) => s.stock).sort()).toEqual(["cut-out", "sheet"]);
    expect(n).toMatchObject({ count: 2, value: 1, cost: 42, bound: 1, proven: true });
    expect(faults(n, parts, stocks, options())).toEqual([]);
  });

  test("limited stock that does not suffice leaves parts over, by name", () => {
    const n = nestSheets([part("a", 90, 40, 3)], [{ ...sheet, quantity: 2 }], options());
    expect(n).toMatchObject({ count: 2, bound: 0, proven: false, unplaced: [{ part: "a", quantity: 1 }] });
  });

  test("parts that fit no stock are refused by name", () => {
    expect(() =>
      nestSheets([part("good", 20, 20), part("long", 97, 20), part("wide", 20, 48)], [sheet], options()),
    ).toThrow(/^long, wide fit no stock: /);
    expect(() => nestSheets([part("a", Number.NaN, 20)], [sheet], options())).toThrow(BadInput);
    expect(() => nestSheets([part("a", 20, 20, 1.5)], [sheet], options())).toThrow(BadInput);
    expect(() => nestSheets([part("a", 20, 20)], [], options())).toThrow(BadInput);
  });

  test("no parts need no sheets", () => {
    expect(nestSheets([], [sheet], options())).toMatchObject({ count: 0, cost: 0, bound: 0, proven: true, sheets: [] });
  });
});
