import { describe, expect, test } from "vitest";
import { ColumnGeneration } from "../../../../src/core/cutting/engine/column-generation.ts";
import { Effort } from "../../../../src/core/cutting/engine/effort.ts";
import { cuttingProblem } from "../../../../src/core/cutting/engine/problem.ts";
import { laterGoals } from "../../../../src/core/cutting/sheets/later/goals.ts";
import { fewerKinds, leastKinds } from "../../../../src/core/cutting/sheets/later/kinds.ts";
import { isLargest, keepOneLarge, largestOf } from "../../../../src/core/cutting/sheets/later/leftover.ts";
import { Relay } from "../../../../src/core/cutting/sheets/later/relay.ts";
import { onSameSheets, partsOn } from "../../../../src/core/cutting/sheets/later/same-sheets.ts";
import { fewerTurns } from "../../../../src/core/cutting/sheets/later/turns.ts";
import { alikeLayouts } from "../../../../src/core/cutting/sheets/plan/alike.ts";
import type { Layout } from "../../../../src/core/cutting/sheets/plan/layout.ts";
import type { SheetModel } from "../../../../src/core/cutting/sheets/plan/model.ts";
import { boxesOf, leftoverOf, roomOf, sawnLayout } from "../../../../src/core/cutting/sheets/plan/sawn.ts";
import { areaBound, dualFeasibleBound } from "../../../../src/core/cutting/sheets/search/area-bound.ts";
import { BeamSearch } from "../../../../src/core/cutting/sheets/search/beam-search.ts";
import { cutRemainder, fromColumns, toColumn } from "../../../../src/core/cutting/sheets/search/columns.ts";
import { FIT_RULES, SheetFill, SPLIT_RULES } from "../../../../src/core/cutting/sheets/search/fill.ts";
import { FillPricer } from "../../../../src/core/cutting/sheets/search/fill-pricing.ts";
import { GoalSearch } from "../../../../src/core/cutting/sheets/search/goal-search.ts";
import { GuillotinePricer, type SheetColumn } from "../../../../src/core/cutting/sheets/search/guillotine-pricing.ts";
import { Joining } from "../../../../src/core/cutting/sheets/search/joining.ts";
import {
  partsPerSheet,
  rasterPricer,
  repeatsMuch,
  setPricer,
} from "../../../../src/core/cutting/sheets/search/pricers.ts";
import { searchSheets } from "../../../../src/core/cutting/sheets/search/search.ts";
import { Stairs } from "../../../../src/core/cutting/sheets/search/stairs.ts";
import { startSheets } from "../../../../src/core/cutting/sheets/search/start.ts";
import { mayFill, PlannedBeams, planWithin } from "../../../../src/core/cutting/sheets/search/stock-plans.ts";
import { Random } from "../../../../src/core/kit/random.ts";
import { plant } from "../planted.ts";
import { SHEET_STEPS } from "../search-steps.ts";
import { each, limitsOf, needsOf, ran, sheet, sheetsOf, someParts, sumOf } from "./ran.ts";

const SEEDS = [1, 2, 3, 4];

const MODELS: Readonly<Record<string, (seed: number) => SheetModel>> = {
  large: (seed) => sheetsOf(someParts(seed, 12, [60, 30], 2, 0), [sheet(96, 48)]),
  turning: (seed) => sheetsOf(someParts(seed, 10, [60, 40], 2, 70), [sheet(96, 48)]),
  small: (seed) => sheetsOf(someParts(seed, 18, [26, 18], 3, 30), [sheet(96, 48)]),
  repeating: (seed) => sheetsOf(someParts(seed, 4, [50, 30], 12, 60), [sheet(96, 48)]),
  square: (seed) => sheetsOf(someParts(seed, 9, [40, 40], 2, 100), [sheet(60, 60, 7)], { goal: "cost" }),
  several: (seed) =>
    sheetsOf(someParts(seed, 9, [60, 30], 2, 50), [sheet(96, 48, 42), sheet(120, 60, 60), sheet(64, 48, 30)], {
      goal: "cost",
    }),
  onHand: (seed) =>
    sheetsOf(someParts(seed, 9, [50, 30], 2, 40), [sheet(96, 48, 42), sheet(60, 33, 0, 2), sheet(54, 40, 0, seed)]),
  short: (seed) => sheetsOf(someParts(seed, 10, [50, 30], 2, 40), [sheet(96, 48, 42, 1 + seed), sheet(50, 50, 20, 1)]),
  twoStages: (seed) => sheetsOf(someParts(seed, 9, [50, 24], 2, 50), [sheet(96, 48)], { stages: 2 }),
  threeStages: (seed) => sheetsOf(someParts(seed, 9, [50, 24], 2, 50), [sheet(96, 48)], { stages: 3 }),
};
/** Seeds whose searches do not end at the first bound. */
const HARD: Readonly<Record<string, readonly number[]>> = {
  large: [2, 14, 23],
  turning: [5, 12, 20],
  small: [5, 14, 16],
  repeating: [6, 10, 34],
  square: [16, 19, 24],
  several: [2, 3, 4],
  onHand: [1, 2],
  short: [3, 8, 9],
  twoStages: [1, 2, 6],
  threeStages: [1, 2, 13],
};
const start = (m: SheetModel) => startSheets(m, new Effort(1e6), new Random(5));
/** Sheets of a plan that are real. */
const planned = (m: SheetModel): Layout[] | undefined => {
  const { layouts } = start(m);
  const used = layouts.filter((l) => l.placed.length > 0);
  return used.every((l) => m.stocks[l.stock]!.index >= 0) ? used : undefined;
};
const valuesOf = (m: SheetModel, seed: number) => {
  const random = new Random(seed);
  return Float64Array.from(m.types, (t) => (random.unit() < 0.1 ? 0 : t.area * 8 + random.below(4 * t.area)));
};

for (const [name, model] of Object.entries(MODELS))
  describe(name, () => {
    test("model and bounds", () => {
      const lines = each(SEEDS, (seed) => {
        const m = model(seed);
        const all = m.stocks[0]!.cost * 3;
        return `${sumOf(m)} ${areaBound(m)} ${dualFeasibleBound(m)} ${mayFill(m, all)} ${planWithin(m, all)} ${partsPerSheet(m).toFixed(6)} ${repeatsMuch(m)} ${leastKinds(m, 2)}`;
      });
      expect(lines).toMatchSnapshot();
    });

    test("start", () => {
      const lines = each(SEEDS, (seed) => ran(1e6, (e, r) => startSheets(model(seed), e, r)));
      expect(lines).toMatchSnapshot();
    });

    test("goal search", () => {
      const lines = each(SEEDS, (seed) => {
        const m = model(seed);
        const from = start(m);
        return ran(1e5, (e, r) => {
          const goal = new GoalSearch(m, r, true);
          return [
            goal.improve(from, areaBound(m), e),
            goal.harvest,
            goal.plan(from, Math.max(0, from.cost - m.costStep)),
          ];
        });
      });
      expect(lines).toMatchSnapshot();
    });

    test("beams", () => {
      const lines = each(SEEDS, (seed) => {
        const m = model(seed);
        const from = start(m);
        const several = m.stocks.length > 1;
        return ran(1.5e5, (e, r) => {
          const beam = new BeamSearch(m);
          if (several) return new PlannedBeams(m).reach(from, r, e);
          return [beam.reach(new Array<number>(from.layouts.length).fill(0), r, e, 6), beam.width, beam.narrow];
        });
      });
      expect(lines).toMatchSnapshot();
    });

    test("one sheet less by beams", () => {
      const lines = each(SEEDS, (seed) => {
        const m = model(seed);
        const from = start(m).layouts.map((l) => l.stock);
        return ran(1e5, (e, r) => {
          const beam = new BeamSearch(m);
          return [beam.reach(from.slice(1), r, e), beam.width, beam.narrow];
        });
      });
      expect(lines).toMatchSnapshot();
    });

    test("joining", () => {
      const lines = each(SEEDS, (seed) =>
        ran(6e4, (e) => {
          const joining = new Joining(model(seed));
          return [joining.search(e), joining.harvest];
        }),
      );
      expect(lines).toMatchSnapshot();
    });

    test("pricing by raster, by filling, by sets", () => {
      const lines = each(SEEDS, (seed) => {
        const m = model(seed);
        const values = valuesOf(m, seed);
        const texts = m.stocks.flatMap((s, stock) => {
          if (s.index < 0) return [];
          const threshold = s.w * s.h * 9;
          const request = { values, stock, threshold, enough: threshold * 1.02, needs: needsOf(m) };
          return [
            ran(1e6, (effort) => rasterPricer(m)?.price({ ...request, effort }) ?? "none"),
            ran(1e5, (effort) => new FillPricer(m).find(values, stock, threshold, needsOf(m), effort)),
            ran(1e5, (effort) => setPricer(m)?.price({ ...request, threshold: threshold * 1.1, effort }) ?? "none"),
          ];
        });
        return texts.join("; ");
      });
      expect(lines).toMatchSnapshot();
    });

    test("column generation and dive", () => {
      const lines = each(SEEDS.slice(0, 2), (seed) => {
        const m = model(seed);
        const pricer = setPricer(m) ?? rasterPricer(m)!;
        const made = new ColumnGeneration(cuttingProblem(m), pricer, { smoothing: 0.5, stepsPerUnit: 5 });
        const from = start(m);
        for (const l of from.layouts) made.master.add(toColumn(m, l));
        const text = ran(1.5e5, (e) => made.run(needsOf(m), limitsOf(m), true, 0, e, from.cost));
        return `${text}; ${made.bound.toPrecision(8)} ${made.leastCost} ${sumOf(made.master.columns)}`;
      });
      expect(lines).toMatchSnapshot();
    });

    test("search", () => {
      const lines = each(HARD[name]!, (seed) => {
        const m = model(seed);
        const text = ran(2e5, (e, r) => searchSheets(m, e, r, false));
        const { packing, bound, method } = searchSheets(m, new Effort(2e5), new Random(1), false);
        return `${packing.cost} ${bound} ${method}: ${text}`;
      });
      expect(lines).toMatchSnapshot();
    });

    test("bound alone", () => {
      const lines = each(HARD[name]!, (seed) => {
        const { bound, method } = searchSheets(model(seed), new Effort(2e5), new Random(1), true);
        return `${bound} ${method}: ${ran(2e5, (e, r) => searchSheets(model(seed), e, r, true))}`;
      });
      expect(lines).toMatchSnapshot();
    });

    for (const step of SHEET_STEPS)
      test(`search without ${step}`, () => {
        expect(
          ran(1.5e5, (e, r) => searchSheets(model(HARD[name]![0]!), e, r, false, undefined, [step])),
        ).toMatchSnapshot();
      });

    test("later goals, one after the other and together", () => {
      const lines = each(SEEDS.slice(0, 3), (seed) => {
        const m = model(seed);
        const layouts = planned(m);
        if (!layouts) return "not all";
        const cost = layouts.reduce((sum, l) => sum + m.stocks[l.stock]!.cost, 0);
        return [
          `${largestOf(m, layouts)} ${isLargest(m, layouts)} ${sumOf(partsOn(m, layouts))} ${sumOf(onSameSheets(m, m.types, layouts))}`,
          ran(8e4, (e, r) => keepOneLarge(m, layouts, r, e)),
          ran(8e4, (e, r) => fewerKinds(m, layouts, r, e)),
          ran(8e4, (e, r) => fewerTurns(m, layouts, r, e)),
          ran(2e5, (e, r) => laterGoals(m, { layouts, cost }, e, r)),
        ].join("; ");
      });
      expect(lines).toMatchSnapshot();
    });

    test("parts of one sheet laid again", () => {
      const lines = each(SEEDS, (seed) => {
        const m = model(seed);
        const [l] = start(m).layouts;
        const types = l!.placed.map((p) => p.type);
        return ran(8e4, (e, r) => {
          const relay = new Relay(m, r, e);
          const rest = (other: Layout) => leftoverOf(sawnLayout(m, other), 1);
          return [relay.any(l!.stock, types), relay.best(l!.stock, types, rest), relay.any(l!.stock, [...types, 0])];
        });
      });
      expect(lines).toMatchSnapshot();
    });

    test("layouts, columns, the order of the saw", () => {
      const lines = each(SEEDS, (seed) => {
        const m = model(seed);
        const { layouts } = start(m);
        const columns = layouts.map((l) => toColumn(m, l));
        const limits = limitsOf(m);
        const some = needsOf(m).map((n, t) => (t % 2 === 0 ? n : 0));
        return [
          sumOf(layouts.map((l) => [boxesOf(m, l), roomOf(m, l), sawnLayout(m, l)])),
          sumOf([columns, fromColumns(m, [...columns, ...columns]), alikeLayouts(layouts)]),
          ran(1e5, (e, r) => cutRemainder(m, some, limits, start(m).cost, r, e)),
        ].join(" ");
      });
      expect(lines).toMatchSnapshot();
    });

    test("stairs of sets", () => {
      const lines = each(SEEDS, (seed) => {
        const m = model(seed);
        const stairs = new Stairs(m);
        const seen = [];
        const random = new Random(seed);
        for (let n = 0; n < 12; n++) {
          let set = stairs.root;
          for (let k = 0; k < 5; k++) {
            set = stairs.with(set, random.below(m.types.length));
            seen.push(set.w, set.h);
            const last = set.w.length - 1;
            if (last < 0) break;
            const placed: Layout["placed"][number][] = [];
            stairs.lay(set, set.w[last]!, set.h[last]!, 3, 5, placed);
            seen.push(placed, stairs.fits(set, set.w[0]!, set.h[0]!), stairs.fits(set, set.w[0]! - 1, set.h[0]!));
          }
        }
        return `${stairs.known} sets, ${stairs.work} pairs, ${sumOf(seen)}`;
      });
      expect(lines).toMatchSnapshot();
    });

    test("filling by every rule", () => {
      const m = model(3);
      const types = m.types.flatMap((t, i) => new Array<number>(t.need).fill(i));
      const lines = each(
        Array.from({ length: FIT_RULES }, (_x, fit) => fit),
        (fit) => {
          const seen: unknown[] = [];
          const random = new Random(fit);
          const fill = new SheetFill(m);
          for (let split = 0; split < SPLIT_RULES; split++) {
            fill.reset();
            fill.open(0);
            fill.open(m.stocks.length - 1);
            seen.push(types.map((t) => fill.place(t, fit, split, random)));
            fill.close();
            fill.open(0);
            const items = Int32Array.from(types);
            seen.push(fill.serve(items, items.length, 1 + split, split, random), [...items]);
            seen.push(fill.layouts(), fill.looked, fill.placedCount, fill.sheetCount);
          }
          return sumOf(seen);
        },
      );
      expect(lines).toMatchSnapshot();
    });
  });

test("raster pricing of parts that turn on a square, and not", () => {
  const lines = each(
    [0, 50, 100].flatMap((turning) => [1, 2].map((seed) => ({ turning, seed }))),
    ({ turning, seed }) => {
      const m = sheetsOf(someParts(seed, 5, [22, 22], 9, turning), [sheet(60, 60), sheet(60, 40, 0, 3)]);
      const pricer = new GuillotinePricer(m);
      const values = valuesOf(m, seed);
      const ask = (stock: number, threshold: number) =>
        ran(1e6, (effort) => pricer.price({ values, stock, threshold, enough: 0, needs: needsOf(m), effort }));
      const { most, columns } = pricer.price({
        values,
        stock: 0,
        threshold: 0,
        enough: 0,
        needs: needsOf(m),
        effort: new Effort(1e6),
      });
      return `${most} of ${pricer.work}, ${columns.length}: ${ask(0, 0)}; ${ask(1, most * 0.6)}; ${ask(0, most)}`;
    },
  );
  expect(lines).toMatchSnapshot();
});

test("what was cut up is put together", () => {
  const lines = each([1, 2, 3, 4], (seed) => {
    const sizes = [
      { l: 96, w: 48, cost: 42 },
      { l: 84, w: 36, cost: 28 },
    ];
    const p = plant(seed, 4, sizes.slice(0, 1 + (seed % 2)), 0.125, 0.25, true, 4);
    const m = sheetsOf(p.parts, p.stocks, { kerfIn: 0.125, trimIn: 0.25, goal: "cost" });
    return `${p.cost}: ${ran(4e5, (e) => new Joining(m).search(e))}; ${ran(2e5, (e, r) => searchSheets(m, e, r, false))}`;
  });
  expect(lines).toMatchSnapshot();
});

test("dives of sheets that repeat, and of few to a sheet", () => {
  const lines = each(["repeating", "large", "several"] as const, (name) => {
    const m = MODELS[name]!(2);
    const pricer = (name === "repeating" ? undefined : setPricer(m)) ?? rasterPricer(m)!;
    const made = new ColumnGeneration(cuttingProblem(m), pricer, { smoothing: 0, stepsPerUnit: 5 });
    for (const l of start(m).layouts) made.master.add(toColumn(m, l));
    made.run(needsOf(m), limitsOf(m), true, 0, new Effort(2e5), start(m).cost);
    return ran(2e5, (effort, random) => {
      const columns = made.dive({
        target: start(m).cost,
        random,
        noise: 0.3,
        finish: () => undefined,
        effort,
        returns: 2,
        slack: 0.1 * m.costStep,
      });
      return columns && fromColumns(m, columns as SheetColumn[]);
    });
  });
  expect(lines).toMatchSnapshot();
});
