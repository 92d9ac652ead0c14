import type { Random } from "../../../kit/random.ts";
import { at } from "../../engine/at.ts";
import { BestBound } from "../../engine/best-bound.ts";
import { ColumnGeneration } from "../../engine/column-generation.ts";
import type { Effort } from "../../engine/effort.ts";
import { isShort } from "../../engine/goal-costs.ts";
import type { Column } from "../../engine/master.ts";
import { cuttingProblem, type Finish } from "../../engine/problem.ts";
import type { SheetBound } from "../../engine/types.ts";
import { coverLengths } from "../cover/cover.ts";
import { fallingValues } from "../cover/values.ts";
import type { LengthModel } from "../model/model.ts";
import { LengthPricer } from "../model/pricing.ts";
import { dualFeasibleLengthBound, materialBound } from "./bound.ts";
import { completeLengths } from "./completion.ts";
import { LengthExchange } from "./exchange.ts";
import { type Plan, startLengths } from "./start.ts";

/** Shares of the whole effort for the exchange before the linear problem, after it, and after each dive. */
const FIRST_EXCHANGE = 0.06;
const SECOND_EXCHANGE = 0.3;
const EXCHANGE = 0.06;
/** Shares of the covering of all parts, and of what rounding the linear solution down leaves, where there are several lengths. */
const COVER = 0.15;
const COVER_REST = 0.075;
/** Roundings whose remainder is covered. */
const MOST_ROUNDINGS = 30;
/** Dives before the search gives up. */
const MOST_DIVES = 30;
/** Dives where the stock is proven not to suffice. */
const SHORT_DIVES = 2;
/** Shares of the gap between bound and plan that are tried as goals of the covering. */
const GOALS: readonly number[] = [0.05, 0.15, 0.4, 1];
/** How often one dive may go back. */
const RETURNS = 10;

/** Steps that a measurement or a test may leave out: the answer then takes longer or is worse, but stays right. */
export type LengthStep = "dual-feasible functions" | "exchange" | "memory" | "covering" | "dive";

export interface LengthSearch {
  readonly plan: Plan;
  /** proven lower bound in the units of the goal */
  readonly bound: number;
  readonly method: SheetBound["method"];
}

/**
 * Bounds and searches in turn, cheap ones first, until the plan meets the bound or the effort is spent.
 * @param known a plan that is there already
 * @param without steps to leave out
 */
export function searchLengths(
  model: LengthModel,
  effort: Effort,
  random: Random,
  boundOnly: boolean,
  known?: Plan,
  without: readonly LengthStep[] = [],
): LengthSearch {
  const does = (step: LengthStep): boolean => !without.includes(step);
  const bound = new BestBound(materialBound(model));
  if (does("dual-feasible functions")) bound.raise(dualFeasibleLengthBound(model), "dual-feasible functions");
  const needs = model.types.map((t) => t.need);
  const limits = model.stocks.map((s) => s.limit);
  const whole = effort.remaining;
  let plan = startLengths(model, needs, limits, effort);
  if (known && known.cost <= plan.cost) plan = known;
  const done = (): boolean => plan.cost <= bound.value || effort.over;
  if (done()) return { plan, bound: bound.value, method: bound.method };
  const one = model.stocks.length === 1 && does("exchange");
  const exchange = boundOnly || !one ? undefined : new LengthExchange(model, random);
  exchange?.start(plan.columns, plan.columns.length - 1);
  const swap = (share: number): void => {
    effort.stage(whole * share, (part) => {
      while (exchange && plan.cost > bound.value) {
        const columns = exchange.search(part);
        if (!columns) return;
        plan = planOf(columns);
        exchange.start(columns, columns.length - 1);
      }
    });
  };
  swap(FIRST_EXCHANGE);
  if (done()) return { plan, bound: bound.value, method: bound.method };
  const generation = new ColumnGeneration(cuttingProblem(model), new LengthPricer(model), {
    smoothing: 0,
    stepsPerUnit: 1,
  });
  for (const c of plan.columns) generation.master.add(c);
  if (does("memory")) for (const c of exchange?.harvest.values() ?? []) generation.master.add(c);
  generation.run(needs, limits, true, boundOnly ? bound.value : 0, effort);
  bound.raise(generation.leastCost, "column generation");
  if (boundOnly) return { plan, bound: bound.value, method: bound.method };
  const { master } = generation;
  const cover = (share: number): void => {
    effort.stage(whole * share, (part) => {
      const values = fallingValues(model, master.columns, part);
      if (!values) return;
      // goals near the bound leave few ways to cut, and so does the proof that they cannot be reached
      for (const near of GOALS) {
        if (done()) return;
        const room = plan.cost - model.costStep - bound.value;
        const most = bound.value + Math.floor((near * room) / model.costStep) * model.costStep;
        const found = part.stage(part.remaining * (near < 1 ? 0.4 : 1), (e) => coverLengths(model, values, most, e));
        bound.raise(found.bound, "all ways to cut");
        if (found.columns) plan = planOf(found.columns);
      }
    });
  };
  const used = master.solution().map((u) => ({ column: at(master.columns, u.column), value: u.value }));
  const coverRest = (share: number): void => {
    effort.stage(whole * share, (part) => {
      const values = fallingValues(model, master.columns, part);
      if (!values) return;
      for (let n = 0; n < MOST_ROUNDINGS && !part.over && !done(); n++) {
        const { rest, taken } = roundedDown(model, used, n, random);
        const spent = taken.reduce((sum, c) => sum + c.cost, 0);
        const most = plan.cost - model.costStep - spent;
        const found = part.stage(part.remaining / 4, (e) => coverLengths(rest, values, most, e));
        if (found.columns) plan = planOf([...taken, ...found.columns]);
      }
    });
  };
  if (model.stocks.length > 1 && does("covering")) {
    cover(COVER);
    coverRest(COVER_REST);
  }
  const finish: Finish = (rest, stock, cost, e) => {
    const tail = startLengths(model, rest, stock, e);
    if (tail.cost <= cost) return [...tail.columns];
    return completeLengths(model, rest, Math.floor(cost / at(model.stocks, 0).cost), e);
  };
  swap(SECOND_EXCHANGE);
  const dives = isShort(model.stocks, bound.value) ? SHORT_DIVES : MOST_DIVES;
  for (let n = 0; does("dive") && n < dives && !done(); n++) {
    const columns = generation.dive({
      target: plan.cost - model.costStep,
      random,
      noise: n === 0 ? 0 : 0.3,
      finish,
      effort,
      returns: RETURNS,
      slack: 0,
    });
    if (columns) {
      plan = planOf(columns);
      exchange?.start(columns, columns.length - 1);
    }
    if (!done()) swap(EXCHANGE);
  }
  return { plan, bound: bound.value, method: bound.method };
}

/** What is left to cut when the linear solution is rounded down; after the first time now and then a little further. */
function roundedDown(
  model: LengthModel,
  used: readonly { readonly column: Column; readonly value: number }[],
  round: number,
  random: Random,
): { rest: LengthModel; taken: Column[] } {
  const needs = model.types.map((t) => t.need);
  const limits = model.stocks.map((s) => s.limit);
  const taken: Column[] = [];
  for (const { column, value } of used) {
    const back = round === 0 ? 0 : random.below(1 + Math.min(3, round));
    for (let n = Math.floor(value + 1e-6) - back; n > 0; n--) {
      if (at(limits, column.stock) < 1 || column.types.some((t, k) => at(needs, t) < at(column.counts, k))) break;
      column.types.forEach((t, k) => {
        needs[t] = at(needs, t) - at(column.counts, k);
      });
      limits[column.stock] = at(limits, column.stock) - 1;
      taken.push(column);
    }
  }
  const rest = {
    ...model,
    types: model.types.map((t, i) => ({ ...t, need: at(needs, i) })),
    stocks: model.stocks.map((s, i) => ({ ...s, limit: at(limits, i) })),
  };
  return { rest, taken };
}

const planOf = (columns: readonly Column[]): Plan => ({ columns, cost: columns.reduce((sum, c) => sum + c.cost, 0) });
