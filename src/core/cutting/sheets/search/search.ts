import type { Random } from "../../../kit/random.ts";
import { at } from "../../engine/at.ts";
import { BestBound } from "../../engine/best-bound.ts";
import { ColumnGeneration } from "../../engine/column-generation.ts";
import type { Effort } from "../../engine/effort.ts";
import { isShort } from "../../engine/goal-costs.ts";
import { cuttingProblem, type Finish, type Pricer } from "../../engine/problem.ts";
import type { SheetBound } from "../../engine/types.ts";
import type { Packing } from "../plan/layout.ts";
import type { SheetModel } from "../plan/model.ts";
import { areaBound, dualFeasibleBound } from "./area-bound.ts";
import { BeamSearch } from "./beam-search.ts";
import { cutRemainder, fromColumns, toColumn } from "./columns.ts";
import { GoalSearch } from "./goal-search.ts";
import type { SheetColumn } from "./guillotine-pricing.ts";
import { Joining } from "./joining.ts";
import { partsPerSheet, rasterPricer, repeatsMuch, setPricer } from "./pricers.ts";
import { startSheets } from "./start.ts";
import { mayFill, PlannedBeams } from "./stock-plans.ts";

/** Share of the multipliers of the best bound where the raster is priced. */
const SMOOTHING = 0.7;

/** Elementary steps of the simplex method that take as long as one step of a search. */
const STEPS_PER_UNIT = 5;

/** Shares of the whole effort. */
const START = 0.05;
/** Joining without waste, where the parts can fill sheets to the last bit, where there are several sizes, and where one. */
const JOIN_FULL = 0.35;
const JOIN = 0.04;
const JOIN_OF_ONE = 0.01;
const FIRST_SEARCH = 0.04;
const RASTER = 0.09;
const LINEAR = 0.1;
/** The first of the rounds of dive, beam and goal-driven search, and how much longer the next is. */
const FIRST_ROUND = 0.03;
const ROUND_GROWTH = 1.5;
/** A dive to the others of its round. */
const DIVE = 1.5;
/** Rounds where the stock is proven not to suffice: how many parts are left over matters little. */
const SHORT_ROUNDS = 2;

/** How far past the goal, in steps of cost, a dive goes on: the sets that would lower the linear solution may be missed. */
const SLACK = 0.2;
/** How often a dive may go back where the pricing is exact. */
const RETURNS = 2;

/** Parts per sheet from which the beam search gets twice as much as the goal-driven search, and as much. */
const MANY_PER_SHEET = 9;
const SOME_PER_SHEET = 5;

/** Steps that a measurement or a test may leave out: the answer then takes longer or is worse, but stays right. */
export type SheetStep =
  | "dual-feasible functions"
  | "joining"
  | "goal search"
  | "memory"
  | "raster"
  | "sets"
  | "dive"
  | "beam";

export interface SheetSearch {
  readonly packing: Packing;
  /** proven lower bound in the units of the goal */
  readonly bound: number;
  readonly method: SheetBound["method"];
}

/**
 * Bounds and searches in turn, cheap ones first, until the packing meets the bound or the effort is spent.
 * @param known a packing that is there already
 * @param without steps to leave out
 */
export function searchSheets(
  model: SheetModel,
  effort: Effort,
  random: Random,
  boundOnly: boolean,
  known?: Packing,
  without: readonly SheetStep[] = [],
): SheetSearch {
  const does = (step: SheetStep): boolean => !without.includes(step);
  const bound = new BestBound(areaBound(model));
  if (does("dual-feasible functions")) bound.raise(dualFeasibleBound(model), "dual-feasible functions");
  const units = effort.remaining;
  const stage = <T>(share: number, run: (e: Effort) => T): T => effort.stage(units * share, run);
  let packing = stage(START, (e) => startSheets(model, e, random));
  if (known && known.cost <= packing.cost) packing = known;
  const done = (): boolean => packing.cost <= bound.value || effort.over;
  if (done()) return { packing, bound: bound.value, method: bound.method };
  const goal = new GoalSearch(model, random, true);
  const improve = (share: number): void => {
    if (!done() && does("goal search")) packing = stage(share, (e) => goal.improve(packing, bound.value, e));
  };
  const several = model.stocks.length > 1;
  const joining = new Joining(model);
  const join = (share: number): void => {
    if (done() || !does("joining")) return;
    const full = stage(share, (e) => joining.search(e));
    if (full && full.cost < packing.cost) packing = full;
  };
  const free = model.stages === undefined;
  const full = free && !done() && mayFill(model, packing.cost - model.costStep);
  if (free) join(full ? JOIN_FULL : several ? JOIN : JOIN_OF_ONE);
  improve(FIRST_SEARCH);
  const beams = boundOnly || !free || !does("beam") ? 0 : beamWork(model);
  let search = new BeamSearch(model);
  const planned = several ? new PlannedBeams(model) : undefined;
  const beam = (share: number): void => {
    if (share === 0 || done()) return;
    stage(share, (e) => {
      while (!e.over && packing.cost > bound.value) {
        const layouts = planned
          ? planned.reach(packing, random, e)
          : search.reach(goal.plan(packing, packing.cost - model.costStep), random, e);
        if (!layouts) return;
        packing = { layouts, cost: layouts.reduce((sum, l) => sum + at(model.stocks, l.stock).cost, 0) };
        search = new BeamSearch(model);
      }
    });
  };
  const needs = model.types.map((t) => t.need);
  const limits = model.stocks.map((s) => s.limit);
  const generation = (pricer: Pricer, smoothing: number): ColumnGeneration => {
    const made = new ColumnGeneration(cuttingProblem(model), pricer, { smoothing, stepsPerUnit: STEPS_PER_UNIT });
    for (const l of packing.layouts) made.master.add(toColumn(model, l));
    const met = does("memory") ? [...joining.harvest.values(), ...goal.harvest.values()] : [];
    for (const l of met) made.offer(toColumn(model, l));
    return made;
  };
  const solve = (made: ColumnGeneration, share: number): boolean => {
    const ended = stage(share, (e) => made.run(needs, limits, true, bound.value, e, packing.cost));
    bound.raise(made.leastCost, "column generation");
    return ended;
  };
  const raster = done() || !does("raster") ? undefined : rasterPricer(model);
  const relaxed = raster && generation(raster, SMOOTHING);
  let open = relaxed !== undefined;
  const prove = (share: number): void => {
    if (!open || !relaxed || done()) return;
    open = !solve(relaxed, share);
  };
  prove(boundOnly ? 0.5 : RASTER);
  let share = FIRST_ROUND;
  beam(share * beams);
  let plans = relaxed;
  // the raster's patterns are plans, too, where parts repeat much
  const exact = repeatsMuch(model);
  // with a limit of stages the patterns of the pricing may not be cut: they give the bound alone
  if (!exact && free) {
    const sets = done() || !does("sets") ? undefined : setPricer(model);
    plans = sets && generation(sets, 0);
    if (plans) solve(plans, boundOnly ? 1 : LINEAR);
  }
  for (let n = 0; !boundOnly && !done() && !(n >= SHORT_ROUNDS && isShort(model.stocks, bound.value)); n++) {
    const columns = stage(DIVE * share, (e) =>
      (free && does("dive") ? plans : undefined)?.dive({
        target: packing.cost - model.costStep,
        random,
        noise: n === 0 ? 0 : 0.3,
        finish: finisher(model, random, n),
        effort: e,
        returns: exact ? RETURNS : 0,
        slack: exact ? 0 : SLACK * model.costStep,
      }),
    );
    if (columns) packing = fromColumns(model, columns as SheetColumn[]);
    if (free && (several || full)) join(share);
    beam(share * beams);
    improve(share);
    prove(2 * share);
    share *= ROUND_GROWTH;
  }
  return { packing, bound: bound.value, method: bound.method };
}

/** Effort of the beam search to that of the goal-driven search: the more parts a sheet gives, the more it gains. */
function beamWork(model: SheetModel): number {
  if (model.stocks.length > 1) return 2;
  const per = partsPerSheet(model);
  return per >= MANY_PER_SHEET ? 2 : per >= SOME_PER_SHEET ? 1 : 0;
}

/** Tries the remainder of a dive where a good share is taken, and again each time a third of it has gone. */
function finisher(model: SheetModel, random: Random, n: number): Finish {
  let next = Math.floor(model.total * (n % 2 === 0 ? 0.8 : 0.5));
  return (needs, limits, cost, effort) => {
    const left = needs.reduce((sum, k) => sum + k, 0);
    if (left > next || left === 0) return undefined;
    next = Math.floor((left * 2) / 3);
    const units = effort.remaining * 0.4;
    return effort.stage(units, (e) => cutRemainder(model, needs, limits, cost, random, e));
  };
}
