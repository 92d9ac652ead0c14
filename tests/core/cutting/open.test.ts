/** Open instances with published optima (tests/bench/data says whose), small enough for each run of the tests. */
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { Effort } from "../../../src/core/cutting/engine/effort.ts";
import { lengthModel } from "../../../src/core/cutting/lengths/model/model.ts";
import { searchLengths } from "../../../src/core/cutting/lengths/search/search.ts";
import { sheetModel } from "../../../src/core/cutting/sheets/plan/model.ts";
import { searchSheets } from "../../../src/core/cutting/sheets/search/search.ts";
import { Random } from "../../../src/core/kit/random.ts";

const instances = <T>(file: string): ReadonlyMap<string, T> => {
  const url = new URL(`../../bench/data/${file}.json`, import.meta.url);
  const { instances: all } = JSON.parse(readFileSync(url, "utf8")) as { instances: (T & { id: string })[] };
  return new Map(all.map((i) => [i.id, i]));
};

/** Steps that the search may take: an own bound, about twice what it took when this was written, so that a fault that only slows it down is seen. */
type Ceiling = number;

describe("lengths", () => {
  const all = instances<{ C: number; items: [size: number, count: number][]; lb: number; ub: number }>("bpp1d");
  const cases: readonly (readonly [id: string, ceiling: Ceiling])[] = [
    ["F_u250_00", 400e3],
    ["F_u500_00", 700e3],
    ["F_t60_00", 700e3],
    ["F_t60_01", 9e6],
    ["F_t120_00", 400e3],
    ["S_N1C1W1_B", 3e3],
    ["S_N2C1W1_A", 2.5e6],
    ["S_N3C1W1_B", 2.7e6],
    ["S_N4C1W1_A", 8e6],
    ["S_N1W1B1R0", 30e3],
    ["SW2_BPP2", 130e3],
    ["W2_TEST0049", 8e3],
  ];
  test.each(cases)("%s: the published optimum, proven", (id, ceiling) => {
    const { C, items, lb, ub } = all.get(id)!;
    expect(lb).toBe(ub);
    const model = lengthModel(
      items.map(([size, quantity], i) => ({ id: `p${i}`, lengthIn: size / 64, quantity })),
      [{ id: "s", lengthIn: C / 64, cost: 0, quantity: null }],
      { kerfIn: 0, trimIn: 0, goal: "sheets" },
    );
    const effort = new Effort(2e7);
    const { plan, bound } = searchLengths(model, effort, new Random(1961), false);
    expect([plan.cost, bound]).toEqual([ub, ub]);
    expect(2e7 - effort.remaining).toBeLessThanOrEqual(ceiling);
  });
});

describe("sheets", () => {
  interface Instance {
    readonly W: number;
    readonly H: number;
    readonly items: readonly (readonly [w: number, h: number, quantity: number])[];
    /** fewest known: without (o) and with turning (r), any layout (f) and three stages of edge-to-edge cuts (g3) */
    readonly best: { readonly of: number; readonly rf: number; readonly og3: number; readonly rg3: number };
  }
  const all = instances<Instance>("bpp2d_classes");
  const cases: readonly (readonly [id: string, turns: boolean, ceiling: Ceiling])[] = [
    ["C01_20_1", false, 70e3],
    ["C01_20_1", true, 60e3],
    ["C03_20_1", false, 90e3],
    ["C05_20_2", false, 700e3],
    ["C07_20_2", false, 95e3],
    ["C09_20_1", false, 100e3],
    ["C10_20_2", true, 75e3],
  ];
  test.each(cases)("%s, turning %s: as few as are known, the bound not above", (id, turns, ceiling) => {
    const { W, H, items, best } = all.get(id)!;
    const [free, cut] = turns ? [best.rf, best.rg3] : [best.of, best.og3];
    expect(free).toBe(cut);
    const model = sheetModel(
      items.map(([w, h, quantity], i) => ({ id: `p${i}`, lengthIn: w / 64, widthIn: h / 64, quantity, turns })),
      [{ id: "s", lengthIn: W / 64, widthIn: H / 64, cost: 0, quantity: null }],
      { kerfIn: 0, trimIn: 0, goal: "sheets" },
    );
    const effort = new Effort(1e6);
    const { packing, bound } = searchSheets(model, effort, new Random(1961), false);
    expect(packing.cost).toBe(cut);
    expect(bound).toBeLessThanOrEqual(cut);
    expect(1e6 - effort.remaining).toBeLessThanOrEqual(ceiling);
  });
});

describe("effort", () => {
  test("is spent to the last unit", () => {
    const effort = new Effort(10);
    expect([effort.remaining, effort.over, effort.cut]).toEqual([10, false, false]);
    expect(effort.spend(9)).toBe(true);
    expect([effort.remaining, effort.over]).toEqual([1, false]);
    expect(effort.spend(1)).toBe(false);
    expect([effort.remaining, effort.over, effort.cut]).toEqual([0, true, false]);
    effort.spend(5);
    expect(effort.remaining).toBe(0);
  });

  test("a stage takes no more than its share and gives back what it leaves", () => {
    const effort = new Effort(100);
    expect(
      effort.stage(40, (part) => {
        expect(part.remaining).toBe(40);
        part.spend(15);
        return "done";
      }),
    ).toBe("done");
    expect(effort.remaining).toBe(85);
    effort.stage(40, (part) => part.spend(60));
    expect(effort.remaining).toBe(45);
    effort.stage(99, (part) => expect(part.remaining).toBe(45));
    expect(effort.remaining).toBe(45);
    expect(effort.part(20).remaining).toBe(20);
    expect(effort.part(60).remaining).toBe(45);
    expect(effort.remaining).toBe(45);
  });

  test("the safety stop is looked at each 100,000 units, and ends part and whole for good", () => {
    let looks = 0;
    let late = false;
    const effort = new Effort(1e6, () => {
      looks++;
      return late;
    });
    effort.spend(99_999);
    expect(looks).toBe(0);
    effort.spend(1);
    expect(looks).toBe(1);
    effort.spend(99_999);
    expect(looks).toBe(1);
    late = true;
    effort.stage(200_000, (part) => {
      expect(part.spend(100_000)).toBe(false);
      expect([part.over, part.cut, part.remaining]).toEqual([true, true, 0]);
    });
    expect([effort.over, effort.cut, effort.remaining]).toEqual([true, true, 0]);
    late = false;
    expect(effort.spend(100_000)).toBe(false);
    expect(effort.cut).toBe(true);
    expect(looks).toBe(2);
  });
});
