import type { Random } from "../../kit/random.ts";
import { BestBound } from "../engine/best-bound.ts";
import { ColumnGeneration, cuttingProblem, type Finish } from "../engine/column-generation.ts";
import type { Effort } from "../engine/effort.ts";
import type { Column } from "../engine/master.ts";
import type { SheetBound } from "../sheets/types.ts";
import { dualFeasibleLengthBound, materialBound } from "./bound.ts";
import { completeLengths } from "./completion.ts";
import { LengthExchange } from "./exchange.ts";
import type { LengthModel } from "./model.ts";
import { LengthPricer } from "./pricing.ts";
import { type Plan, startLengths } from "./start.ts";

/** Shares of the whole effort for the exchange before the linear problem, after it, and after each dive. */
const FIRST_EXCHANGE = 0.04;
const SECOND_EXCHANGE = 0.2;
const EXCHANGE = 0.04;
/** Dives before the search gives up. */
const MOST_DIVES = 30;
/** How often one dive may go back. */
const RETURNS = 10;

export interface LengthSearch {
  readonly plan: Plan;
  /** proven lower bound in the units of the goal */
  readonly bound: number;
  readonly method: SheetBound["method"];
}

/** Bounds and searches in turn, cheap ones first, until the plan meets the bound or the effort is spent. */
export function searchLengths(model: LengthModel, effort: Effort, random: Random, boundOnly: boolean): LengthSearch {
  const bound = new BestBound(materialBound(model));
  bound.raise(dualFeasibleLengthBound(model), "dual-feasible functions");
  const needs = model.types.map((t) => t.need);
  const limits = model.stocks.map((s) => s.limit);
  const whole = effort.remaining;
  let plan = startLengths(model, needs, limits, effort);
  const done = (): boolean => plan.cost <= bound.value || effort.over;
  if (done()) return { plan, bound: bound.value, method: bound.method };
  const exchange = boundOnly || model.stocks.length !== 1 ? undefined : new LengthExchange(model, random);
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
  for (const c of exchange?.harvest.values() ?? []) generation.master.add(c);
  generation.run(needs, limits, true, boundOnly ? bound.value : 0, effort);
  bound.raise(generation.leastCost, "column generation");
  if (boundOnly) return { plan, bound: bound.value, method: bound.method };
  const finish: Finish = (rest, stock, cost, e) => {
    const tail = startLengths(model, rest, stock, e);
    if (tail.cost <= cost) return [...tail.columns];
    return completeLengths(model, rest, Math.floor(cost / model.stocks[0]!.cost), e);
  };
  swap(SECOND_EXCHANGE);
  for (let n = 0; n < MOST_DIVES && !done(); n++) {
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

const planOf = (columns: readonly Column[]): Plan => ({ columns, cost: columns.reduce((sum, c) => sum + c.cost, 0) });
