import { BeamSearch } from "./beam-search.ts";
import { ColumnGeneration, cuttingProblem, type Finish, type Pricer } from "./column-generation.ts";
import type { Effort } from "./effort.ts";
import { GoalSearch } from "./goal-search.ts";
import type { SheetColumn } from "./guillotine-pricing.ts";
import type { Packing } from "./layout.ts";
import type { Random } from "./random.ts";
import { areaBound, dualFeasibleBound } from "./sheet-area-bound.ts";
import { cutRemainder, fromColumns, toColumn } from "./sheet-columns.ts";
import type { SheetModel } from "./sheet-model.ts";
import { partsPerSheet, rasterPricer, repeatsMuch, setPricer } from "./sheet-pricers.ts";
import { startSheets } from "./sheet-start.ts";
import type { SheetBound } from "./sheet-types.ts";

/** Shares of the whole effort. */
const START = 0.15;
const FIRST_SEARCH = 0.2;
const SMOOTHING = 0.7;
const RASTER = 0.25;
const LINEAR = 0.25;
const DIVE = 0.06;

/** Parts per sheet from which the beam search gets half, and a quarter, of the effort. */
const MANY_PER_SHEET = 9;
const SOME_PER_SHEET = 5;

export interface SheetSearch {
  readonly packing: Packing;
  /** proven lower bound in the units of the goal */
  readonly bound: number;
  readonly method: SheetBound["method"];
}

/** Bounds and searches in turn, cheap ones first, until the packing meets the bound or the effort is spent. */
export function searchSheets(model: SheetModel, effort: Effort, random: Random, boundOnly: boolean): SheetSearch {
  let bound = areaBound(model);
  let method: SheetBound["method"] = "area";
  const raise = (b: number, by: SheetBound["method"]): void => {
    if (b <= bound) return;
    bound = b;
    method = by;
  };
  raise(dualFeasibleBound(model), "dual-feasible functions");
  const whole = effort.remaining;
  const stage = <T>(share: number, run: (e: Effort) => T): T => {
    const part = effort.part(whole * share);
    const result = run(part);
    effort.back(part, whole * share);
    return result;
  };
  let packing = stage(START, (e) => startSheets(model, e, random));
  const done = (): boolean => packing.cost <= bound || effort.over;
  if (done()) return { packing, bound, method };
  const goal = new GoalSearch(model, random);
  packing = stage(FIRST_SEARCH, (e) => goal.improve(packing, bound, e));
  const beamShare = boundOnly ? 0 : beamWork(model);
  const beam = (share: number): void => {
    if (share === 0 || done()) return;
    let search = new BeamSearch(model);
    stage(share, (e) => {
      while (!e.over && packing.cost > bound) {
        const layouts = search.reach(goal.plan(packing, packing.cost - model.costStep), random, e);
        if (!layouts) return;
        packing = { layouts, cost: layouts.reduce((sum, l) => sum + model.stocks[l.stock]!.cost, 0) };
        search = new BeamSearch(model);
      }
    });
  };
  const needs = model.types.map((t) => t.need);
  const limits = model.stocks.map((s) => s.limit);
  const generate = (pricer: Pricer, share: number, smoothing: number): ColumnGeneration => {
    const generation = new ColumnGeneration(cuttingProblem(model), pricer, smoothing);
    for (const l of packing.layouts) generation.master.add(toColumn(model, l));
    for (const l of goal.harvest.values()) generation.offer(toColumn(model, l));
    stage(share, (e) => generation.run(needs, limits, true, bound, e, packing.cost));
    raise(generation.leastCost, "column generation");
    return generation;
  };
  const raster = done() ? undefined : rasterPricer(model);
  let generation = raster && generate(raster, boundOnly ? 0.5 : RASTER, SMOOTHING);
  beam(beamShare);
  if (!repeatsMuch(model)) {
    const sets = done() ? undefined : setPricer(model);
    generation = sets && generate(sets, boundOnly ? 1 : LINEAR, 0);
  }
  for (let n = 0; generation && !boundOnly && !done(); n++) {
    const plans = generation;
    const columns = stage(DIVE, (e) =>
      plans.dive(packing.cost - model.costStep, random, n === 0 ? 0 : 0.3, finisher(model, random, n), e),
    );
    if (columns) packing = fromColumns(model, columns as SheetColumn[]);
    if (!done()) packing = stage(DIVE, (e) => goal.improve(packing, bound, e));
  }
  if (!boundOnly && !done()) packing = goal.improve(packing, bound, effort);
  return { packing, bound, method };
}

/** Share of the effort for the beam search: the more parts a sheet gives, the more it gains. */
function beamWork(model: SheetModel): number {
  const per = partsPerSheet(model);
  return per >= MANY_PER_SHEET ? 0.5 : per >= SOME_PER_SHEET ? 0.25 : 0;
}

/** Tries the remainder of a dive where a good share is taken, and again each time a third of it has gone. */
function finisher(model: SheetModel, random: Random, n: number): Finish {
  let next = Math.floor(model.total * (n % 2 === 0 ? 0.8 : 0.5));
  return (needs, limits, cost, effort) => {
    const left = needs.reduce((sum, k) => sum + k, 0);
    if (left > next || left === 0) return undefined;
    next = Math.floor((left * 2) / 3);
    const units = effort.remaining * 0.4;
    const part = effort.part(units);
    const columns = cutRemainder(model, needs, limits, cost, random, part);
    effort.back(part, units);
    return columns;
  };
}
