import { dive } from "./dive.ts";
import type { Effort } from "./effort.ts";
import { type Column, Master } from "./master.ts";
import type { Random } from "./random.ts";

/** What one pricing found: columns worth more than the threshold, and a proven limit on the value of any column. */
export interface Priced {
  readonly columns: readonly Column[];
  readonly most: number;
}

/** Finds the most valuable way to cut one piece of a stock; values are whole numbers, so that `most` is exact. */
export interface Pricer {
  price(values: Float64Array, stock: number, threshold: number, needs: ArrayLike<number>, effort: Effort): Priced;
}

/** A cutting problem as the column generation sees it. */
export interface CuttingProblem {
  readonly needs: readonly number[];
  readonly costs: readonly number[];
  readonly limits: readonly number[];
  /** whether the limit can ever bind */
  readonly limited: readonly boolean[];
  /** stocks that must not be priced: the stand-in for what limited stock cannot hold */
  readonly standIn: readonly boolean[];
  readonly costStep: number;
}

/** What the models of sheets and of lengths have in common. */
interface CuttingModel {
  readonly types: readonly { readonly need: number }[];
  readonly stocks: readonly { readonly cost: number; readonly limit: number; readonly index: number }[];
  readonly total: number;
  readonly costStep: number;
}

/** The problem of a model; a stock with an index below 0 is the stand-in. */
export function cuttingProblem(model: CuttingModel): CuttingProblem {
  return {
    needs: model.types.map((t) => t.need),
    costs: model.stocks.map((s) => s.cost),
    limits: model.stocks.map((s) => s.limit),
    limited: model.stocks.map((s) => s.limit < model.total),
    standIn: model.stocks.map((s) => s.index < 0),
    costStep: model.costStep,
  };
}

/** The dearest stock's cost in whole units of the values given to the pricer. */
const VALUE_SCALE = 2 ** 24;

/**
 * Column generation for cutting (P. Gilmore, R. Gomory, Oper. Res. 9 (1961) 849-859 and 11 (1963) 863-888). Lower bound
 * at every round from the multipliers scaled until they price no column too high (A. Farley, Oper. Res. 38 (1990)
 * 922-923), limited stock by Lagrange multipliers. Multipliers are rounded to whole numbers before they are priced, so
 * that the bound does not rest on rounded arithmetic.
 */
export class ColumnGeneration {
  readonly master: Master;
  private readonly problem: CuttingProblem;
  private readonly pricer: Pricer;
  private readonly scale: number;
  /** best proven lower bound on the cost, not yet rounded up to a step */
  bound = 0;

  constructor(problem: CuttingProblem, pricer: Pricer) {
    this.problem = problem;
    this.pricer = pricer;
    const dearest = Math.max(...problem.costs.filter((_, s) => !problem.standIn[s]), 1);
    this.scale = VALUE_SCALE / dearest;
    const big = 1000 * Math.max(...problem.costs, 1);
    this.master = new Master(problem.needs, problem.limits, problem.limited, big);
  }

  /** Least total, a multiple of the cost step, that the bound allows. */
  get leastCost(): number {
    return Math.max(0, Math.ceil(this.bound / this.problem.costStep - 1e-9) * this.problem.costStep);
  }

  /** A cost rounded up to a multiple of the cost step. */
  stepUp(cost: number): number {
    return Math.ceil(cost / this.problem.costStep - 1e-6) * this.problem.costStep;
  }

  /**
   * Solves the linear problem for the present needs.
   * @param whole the needs are those of the whole problem, so that every round gives a lower bound
   * @param enough stop as soon as the bound, rounded up, cannot grow any more or the objective is at most this
   */
  run(needs: ArrayLike<number>, limits: ArrayLike<number>, whole: boolean, enough: number, effort: Effort): boolean {
    const { master, problem } = this;
    for (;;) {
      const before = master.pivots;
      master.solve(20_000);
      const searched = master.columns.length * 4 + (master.rows * master.rows) / 2;
      if (!effort.spend((master.pivots - before + 1) * searched)) return false;
      const objective = master.objective;
      if (objective <= enough + 1e-6) return true;
      const values = Float64Array.from(needs, (_, i) => Math.max(0, Math.floor(master.duals[i]! * this.scale)));
      const most: number[] = [];
      let found = false;
      for (let s = 0; s < problem.costs.length; s++) {
        if (problem.standIn[s]) {
          most.push(dot(values, needs));
          continue;
        }
        const threshold = (problem.costs[s]! - master.stockDual(s)) * this.scale;
        if (limits[s] === 0) {
          most.push(0);
          continue;
        }
        const priced = this.pricer.price(values, s, threshold + 1e-6 * this.scale, needs, effort);
        for (const c of priced.columns) master.add(c);
        if (priced.columns.length > 0) found = true;
        most.push(priced.most);
      }
      if (whole) this.raise(values, most);
      if (!found) return !effort.over;
      if (whole && this.leastCost >= this.stepUp(objective)) return true;
      if (effort.over) return false;
    }
  }

  private raise(values: Float64Array, most: readonly number[]): void {
    const { problem, scale } = this;
    let share = Number.POSITIVE_INFINITY;
    most.forEach((v, s) => {
      if (!problem.limited[s] && v > 0) share = Math.min(share, (problem.costs[s]! * scale) / v);
    });
    if (share === Number.POSITIVE_INFINITY) return;
    let bound = share * dot(values, problem.needs);
    most.forEach((v, s) => {
      if (problem.limited[s]) bound -= problem.limits[s]! * Math.max(0, share * v - problem.costs[s]! * scale);
    });
    this.bound = Math.max(this.bound, bound / scale);
  }

  /**
   * Rounds the linear solution to a plan, see `dive`.
   * @param target the most that the plan may cost
   * @param returns how often the dive may go back
   */
  dive(
    target: number,
    random: Random,
    noise: number,
    finish: Finish,
    effort: Effort,
    returns = 0,
  ): Column[] | undefined {
    return dive(this, this.problem, { target, random, noise, finish, effort, returns });
  }
}

/** Cuts what is still needed within a cost, or gives up. */
export type Finish = (
  needs: readonly number[],
  limits: readonly number[],
  cost: number,
  effort: Effort,
) => Column[] | undefined;

function dot(a: Float64Array, b: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}
