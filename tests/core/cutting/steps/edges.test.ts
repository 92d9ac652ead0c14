import { expect, test } from "vitest";
import { ColumnGeneration } from "../../../../src/core/cutting/engine/column-generation.ts";
import { Effort } from "../../../../src/core/cutting/engine/effort.ts";
import { cuttingProblem, type Pricer } from "../../../../src/core/cutting/engine/problem.ts";
import { dualFeasibleLengthBound, materialBound } from "../../../../src/core/cutting/lengths/search/bound.ts";
import { keepOneLarge } from "../../../../src/core/cutting/sheets/later/leftover.ts";
import { fewerTurns } from "../../../../src/core/cutting/sheets/later/turns.ts";
import type { Layout } from "../../../../src/core/cutting/sheets/plan/layout.ts";
import type { SheetModel } from "../../../../src/core/cutting/sheets/plan/model.ts";
import { boxesOf, sawnLayout } from "../../../../src/core/cutting/sheets/plan/sawn.ts";
import { areaBound, dualFeasibleBound } from "../../../../src/core/cutting/sheets/search/area-bound.ts";
import { BeamSearch } from "../../../../src/core/cutting/sheets/search/beam-search.ts";
import { GuillotinePricer } from "../../../../src/core/cutting/sheets/search/guillotine-pricing.ts";
import { rasterPricer, setPricer } from "../../../../src/core/cutting/sheets/search/pricers.ts";
import { searchSheets } from "../../../../src/core/cutting/sheets/search/search.ts";
import { Stairs } from "../../../../src/core/cutting/sheets/search/stairs.ts";
import { startSheets } from "../../../../src/core/cutting/sheets/search/start.ts";
import { PlannedBeams } from "../../../../src/core/cutting/sheets/search/stock-plans.ts";
import { SubsetPricer } from "../../../../src/core/cutting/sheets/search/subset-pricing.ts";
import { Random } from "../../../../src/core/kit/random.ts";
import { bar, each, lengthsOf, limitsOf, needsOf, ran, sheet, sheetsOf, someLengths, someParts, sumOf } from "./ran.ts";

/** Parts that are as long or as wide as a sheet, sizes of few values, two stocks. */
function edged(seed: number): SheetModel {
  const random = new Random(seed);
  const some = (of: readonly number[]): number => of[random.below(of.length)]!;
  const parts = Array.from({ length: 8 }, (_, i) => ({
    id: `p${i}`,
    lengthIn: some([48, 36, 24, 12, 30, 18]) / 64,
    widthIn: some([24, 12, 8, 16, 10]) / 64,
    quantity: 1 + random.below(3),
    turns: random.below(3) === 0,
  }));
  return sheetsOf(parts, [sheet(48, 24, 42), sheet(36, 24, 31, seed % 2 === 0 ? null : 2)], {
    goal: seed % 3 === 0 ? "sheets" : "cost",
  });
}
const SEEDS = [1, 2, 3, 4, 5, 6];
const start = (m: SheetModel) => startSheets(m, new Effort(1e6), new Random(5));

test("raster, sets, stairs", () => {
  const lines = each(SEEDS, (seed) => {
    const m = edged(seed);
    const random = new Random(seed);
    const values = Float64Array.from(m.types, (t) => t.area * (5 + random.below(4)));
    const needs = needsOf(m);
    const stairs = new Stairs(m);
    const sets = new SubsetPricer(
      m,
      stairs,
      m.stocks.map((s) => [Float64Array.from(m.types, (t) => t.area / (s.w * s.h))]),
    );
    const of = m.stocks.flatMap((s, stock) => {
      if (s.index < 0) return [];
      const best = new GuillotinePricer(m).price({
        values,
        stock,
        threshold: 0,
        enough: 0,
        needs,
        effort: new Effort(1e6),
      });
      const near = [0.5, 0.9, 0.97, 0.99].map((share) => best.most * share);
      return [
        `${best.most} ${sumOf(best)}`,
        ...near.map((threshold) =>
          ran(2e5, (effort) => sets.price({ values, stock, threshold, enough: threshold * 1.01, needs, effort })),
        ),
        ran(
          2e5,
          (effort) =>
            setPricer(m)?.price({ values, stock, threshold: near[2]!, enough: near[2]!, needs, effort }) ?? "none",
        ),
      ];
    });
    return `${of.join("; ")}; ${stairs.known} sets, ${stairs.work} pairs`;
  });
  expect(lines).toMatchSnapshot();
});

test("sets of parts that the fillings do not look at, since there are so many small ones of more value for their area", () => {
  const lines = each(SEEDS, (seed) => {
    const turning = 25 * (seed % 4);
    const some = someParts(seed, 6, [30, 14], 2, turning).map((p) => ({ ...p, lengthIn: p.lengthIn + 8 / 64 }));
    const m = sheetsOf(
      [...some, { id: "tiny", lengthIn: 1 / 64, widthIn: 1 / 64, quantity: 64, turns: false }],
      [sheet(48, 24)],
    );
    const random = new Random(seed);
    const values = Float64Array.from(m.types, (t) => t.area * (t.area === 1 ? 9 : 5 + random.below(3)));
    const needs = needsOf(m);
    const area = Float64Array.from(m.types, (t) => t.area / (48 * 24));
    const other = Float64Array.from(m.types, (t) => (2 * t.w > 48 && 2 * t.h > 24 ? 1 : 2 * t.w > 48 ? 0.4 : 0));
    const ask = (weights: Float64Array[], share: number) => {
      const stairs = new Stairs(m);
      const threshold = 48 * 24 * share;
      const enough = threshold * 1.05;
      const text = ran(4e5, (effort) =>
        new SubsetPricer(m, stairs, [weights]).price({ values, stock: 0, threshold, enough, needs, effort }),
      );
      return `${text}, ${stairs.known} sets`;
    };
    return [ask([area], 1), ask([area], 4), ask([area], 5), ask([other, area], 4), ask([area, other], 3)].join("; ");
  });
  expect(lines).toMatchSnapshot();
});

test("search, beams, the order of the saw", () => {
  const lines = each(SEEDS, (seed) => {
    const m = edged(seed);
    const from = start(m);
    const layouts = from.layouts.filter((l) => l.placed.length > 0);
    return [
      ran(1e5, (e, r) => searchSheets(m, e, r, false)),
      ran(6e4, (e, r) => new PlannedBeams(m).reach(from, r, e)),
      ran(3e4, (e, r) =>
        new BeamSearch(m).reach(
          layouts.map((l) => l.stock),
          r,
          e,
          3,
        ),
      ),
      sumOf(layouts.map((l) => [boxesOf(m, l), sawnLayout(m, l)])),
    ].join("; ");
  });
  expect(lines).toMatchSnapshot();
});

test("sheets of one kind laid again, with a kerf and a limit of stages", () => {
  const lines = each(SEEDS, (seed) => {
    const m = { ...edged(seed), kerf: 2, stages: ([undefined, 2, 3] as const)[seed % 3] };
    const layouts: Layout[] = start(m).layouts.filter((l) => l.placed.length > 0);
    if (layouts.some((l) => m.stocks[l.stock]!.index < 0)) return "not all";
    return [ran(3e4, (e, r) => fewerTurns(m, layouts, r, e)), ran(6e4, (e, r) => keepOneLarge(m, layouts, r, e))].join(
      "; ",
    );
  });
  expect(lines).toMatchSnapshot();
});

test("column generation where stock is limited and smoothed", () => {
  const lines = each(SEEDS, (seed) => {
    const m = edged(seed);
    const pricer = rasterPricer(m)!;
    const made = new ColumnGeneration(cuttingProblem(m), pricer, { smoothing: 0.7, stepsPerUnit: 5 });
    const text = ran(2e5, (e) => made.run(needsOf(m), limitsOf(m), true, 0, e, start(m).cost));
    return `${text}; ${made.bound.toPrecision(8)} ${made.leastCost} ${made.master.columns.length} ${made.master.pivots}`;
  });
  expect(lines).toMatchSnapshot();
});

test("models of rows that are alike: the order does not depend on theirs", () => {
  const parts = someParts(3, 9, [30, 20], 2, 50);
  const stocks = [
    sheet(40, 30, 5, 4),
    { ...sheet(40, 30, 5, 4), id: "b" },
    sheet(30, 40, 5),
    sheet(50, 24, 3, 4),
    sheet(4, 4, 1),
  ];
  const bars = [bar(64, 5, 4), { ...bar(64, 5, 4), id: "b" }, bar(64, 3), bar(64, 5), bar(70, 0, 2), bar(3, 1)];
  const rods = someLengths(3, 9, [20, 60], 2);
  const twice = <T extends { id: string }>(rows: readonly T[]) => [
    ...rows,
    ...rows.map((p, i) => ({ ...p, id: `${(i * 4) % 7}` })),
  ];
  const lines = [
    sumOf(sheetsOf(twice(parts), stocks, { goal: "cost", kerfIn: 2 / 64, trimIn: 1 / 64 })),
    sumOf(sheetsOf(twice(parts).reverse(), [...stocks].reverse(), { goal: "sheets" })),
    sumOf(lengthsOf(twice(rods), bars, { goal: "cost", kerfIn: 2 / 64, trimIn: 1 / 64 }).types),
    sumOf(lengthsOf(twice(rods).reverse(), bars.slice(0, 4).reverse(), { goal: "cost" })),
  ];
  expect(lines.join(" ")).toMatchSnapshot();
});

test("bounds of many small models, with many parts so that a little of a bound is seen", () => {
  const lines = each(
    Array.from({ length: 40 }, (_, i) => i + 1),
    (seed) => {
      const side = 20 + (seed % 7);
      const parts = someParts(seed, 2 + (seed % 3), [side - 3, side - 3], 60, 60);
      const square = sheetsOf(parts, [sheet(side, side)]);
      const other = sheetsOf(parts, [sheet(side + 6, side)]);
      const lengths = lengthsOf(someLengths(seed, 2 + (seed % 3), [3, side], 60), [bar(side)]);
      const two = sheetsOf(parts, [sheet(side, side, 5), sheet(side + 6, side, 7, 20)], { goal: "cost" });
      return [
        [areaBound(square), dualFeasibleBound(square), areaBound(other), dualFeasibleBound(other), areaBound(two)],
        [materialBound(lengths), dualFeasibleLengthBound(lengths)],
      ].join(" ");
    },
  );
  expect(lines).toMatchSnapshot();
});

test("what column generation asks of its pricer", () => {
  const lines = each(SEEDS, (seed) => {
    const m = edged(seed);
    const inner = rasterPricer(m)!;
    const asked: unknown[] = [];
    const pricer: Pricer = {
      price: (request) => {
        const { values, stock, threshold, enough } = request;
        asked.push(values.slice(), stock, threshold, Number.isFinite(enough) ? enough : "any");
        return inner.price(request);
      },
    };
    const goal = areaBound(m) + m.costStep;
    const made = new ColumnGeneration(cuttingProblem(m), pricer, { smoothing: 0.5, stepsPerUnit: 5 });
    made.run(needsOf(m), limitsOf(m), true, 0, new Effort(2e5), goal);
    return `${asked.length} numbers, ${sumOf(asked)}`;
  });
  expect(lines).toMatchSnapshot();
});
