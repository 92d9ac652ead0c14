import { at } from "./at.ts";
import { type DiveRequest, dive } from "./dive.ts";
import type { Effort } from "./effort.ts";
import { type Column, Master } from "./master.ts";
import type { CuttingProblem, Generation, Pricer } from "./problem.ts";

export interface GenerationOptions {
  /**
   * share of the multipliers of the best bound in those that are priced, for a pricer that is exact and quick
   * (P. Wentges, Int. Trans. Oper. Res. 4 (1997) 151-162, from memory); 0: none
   */
  readonly smoothing: number;
  /** elementary steps of the simplex method that take as long as one unit of effort of the search */
  readonly stepsPerUnit: number;
}

/** Columns that come from the pool at a time. */
const MOST_DRAWN = 30;

/** The dearest stock's cost in whole units of the values given to the pricer. */
const VALUE_SCALE = 2 ** 24;

/**
 * Column generation for cutting (P. Gilmore, R. Gomory, Oper. Res. 9 (1961) 849-859 and 11 (1963) 863-888). Lower bound
 * at every round from the multipliers scaled until they price no column too high (A. Farley, Oper. Res. 38 (1990)
 * 922-923), limited stock by Lagrange multipliers. Multipliers are rounded to whole numbers before they are priced, so
 * that the bound does not rest on rounded arithmetic.
 */
export class ColumnGeneration implements Generation {
  readonly master: Master;
  /** columns known from elsewhere, brought into the master as they become of use */
  readonly #pool: Column[] = [];
  readonly #problem: CuttingProblem;
  readonly #pricer: Pricer;
  readonly #scale: number;
  /** best proven lower bound on the cost, not yet rounded up to a step */
  bound = 0;

  /** multipliers of the best bound so far */
  #center: Float64Array | undefined;
  readonly #smoothing: number;
  readonly #stepsPerUnit: number;

  constructor(problem: CuttingProblem, pricer: Pricer, options: GenerationOptions) {
    this.#problem = problem;
    this.#pricer = pricer;
    this.#smoothing = options.smoothing;
    this.#stepsPerUnit = options.stepsPerUnit;
    const dearest = Math.max(...problem.costs.filter((_, s) => !problem.standIn[s]), 1);
    this.#scale = VALUE_SCALE / dearest;
    const big = 1000 * Math.max(...problem.costs, 1);
    this.master = new Master(problem.needs, problem.limits, problem.limited, big);
  }

  /** Makes a column known that the master may use later: a large master is slow. */
  offer(column: Column): void {
    this.#pool.push(column);
  }

  /** Adds the columns of the pool that the present multipliers make worth most; false when none is of use. */
  #draw(): boolean {
    const { master } = this;
    const pool = this.#pool;
    const useful: { place: number; reduced: number }[] = [];
    pool.forEach((c, place) => {
      const reduced = master.reducedCost(c);
      if (reduced < -1e-6 * c.cost) useful.push({ place, reduced });
    });
    useful.sort((a, b) => a.reduced - b.reduced || a.place - b.place);
    const drawn = useful.slice(0, MOST_DRAWN).sort((a, b) => b.place - a.place);
    for (const { place } of drawn) {
      master.add(at(pool, place));
      pool[place] = at(pool, pool.length - 1);
      pool.pop();
    }
    return drawn.length > 0;
  }

  /** Least total, a multiple of the cost step, that the bound allows. */
  get leastCost(): number {
    return Math.max(0, Math.ceil(this.bound / this.#problem.costStep - 1e-9) * this.#problem.costStep);
  }

  /** A cost rounded up to a multiple of the cost step. */
  stepUp(cost: number): number {
    return Math.ceil(cost / this.#problem.costStep - 1e-6) * this.#problem.costStep;
  }

  /**
   * Solves the linear problem for the present needs.
   * @param whole the needs are those of the whole problem, so that every round gives a lower bound
   * @param enough stop as soon as the bound, rounded up, cannot grow any more or the objective is at most this
   * @param goal least total that the bound need not exceed
   */
  run(
    needs: ArrayLike<number>,
    limits: ArrayLike<number>,
    whole: boolean,
    enough: number,
    effort: Effort,
    goal = Number.POSITIVE_INFINITY,
  ): boolean {
    const { master } = this;
    master.setNeeds(needs, limits);
    for (;;) {
      const before = master.pivots;
      master.solve(20_000);
      const searched = master.columns.length * 4 + (master.rows * master.rows) / 2;
      if (!effort.spend(((master.pivots - before + 1) * searched) / this.#stepsPerUnit)) return false;
      const objective = master.objective;
      if (objective <= enough + 1e-6) return true;
      effort.spend(this.#pool.length * 4);
      if (this.#draw()) continue;
      const duals = Float64Array.from(needs, (_, i) => Math.max(0, (master.duals[i] as number) * this.#scale));
      const price = (values: Float64Array, smooth: boolean): boolean =>
        this.#price(
          values.map(Math.floor),
          needs,
          limits,
          whole ? Math.min(goal, this.stepUp(objective)) : 0,
          smooth,
          effort,
        );
      let found = false;
      if (whole && this.#center) {
        const center = this.#center;
        const smoothing = this.#smoothing;
        found = price(
          duals.map((d, i) => smoothing * (center[i] as number) + (1 - smoothing) * d),
          true,
        );
        if (!found && this.leastCost >= this.stepUp(objective)) return true;
      }
      if (!found) found = price(duals, false);
      if (!found) return !effort.over;
      if (whole && this.leastCost >= this.stepUp(objective)) return true;
      if (effort.over) return false;
    }
  }

  /**
   * Prices every stock and adds the columns that the master can use.
   * @param goal total whose step below the bound is to exceed; 0 where the values give no bound
   * @param smooth the values are not those of the master, so that any column may be of use to it
   */
  #price(
    values: Float64Array,
    needs: ArrayLike<number>,
    limits: ArrayLike<number>,
    goal: number,
    smooth: boolean,
    effort: Effort,
  ): boolean {
    const { master } = this;
    const problem = this.#problem;
    const scale = this.#scale;
    const most: number[] = [];
    let found = false;
    const proof = this.#proof(values, goal);
    problem.costs.forEach((cost, s) => {
      if (problem.standIn[s]) most.push(dot(values, needs));
      else if (limits[s] === 0) most.push(0);
      else {
        const least = (cost - master.stockDual(s) + 1e-6) * scale;
        const priced = this.#pricer.price({
          values,
          stock: s,
          threshold: smooth ? 0 : least,
          enough: goal > 0 ? Math.max(least, proof * cost) : Number.POSITIVE_INFINITY,
          needs,
          effort,
        });
        for (const c of priced.columns) {
          if (smooth && master.reducedCost(c) > -1e-6 * cost) continue;
          master.add(c);
          found = true;
        }
        most.push(priced.most);
      }
    });
    if (goal === 0) return found;
    const before = this.bound;
    this.#raise(values, most);
    if (this.#smoothing > 0 && (this.bound > before || !this.#center)) this.#center = values;
    return found;
  }

  /** The value per cost that no column may exceed for the bound to exceed the step below `goal`. */
  #proof(values: Float64Array, goal: number): number {
    const problem = this.#problem;
    const below = goal - problem.costStep * (1 - 1e-6);
    return goal > 0 && below > 0 && problem.limited.every((is) => !is) ? dot(values, problem.needs) / below : 0;
  }

  #raise(values: Float64Array, most: readonly number[]): void {
    // a pricer that found columns without looking for the best one gives no limit
    if (most.includes(Number.POSITIVE_INFINITY)) return;
    const problem = this.#problem;
    const scale = this.#scale;
    let share = Number.POSITIVE_INFINITY;
    most.forEach((v, s) => {
      if (!problem.limited[s] && v > 0) share = Math.min(share, (at(problem.costs, s) * scale) / v);
    });
    if (share === Number.POSITIVE_INFINITY) return;
    let bound = share * dot(values, problem.needs);
    most.forEach((v, s) => {
      if (problem.limited[s]) bound -= at(problem.limits, s) * Math.max(0, share * v - at(problem.costs, s) * scale);
    });
    this.bound = Math.max(this.bound, bound / scale);
  }

  /** Rounds the linear solution to a plan, see `dive`. */
  dive(request: DiveRequest): Column[] | undefined {
    return dive(this, this.#problem, request);
  }
}

function dot(a: Float64Array, b: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += (a[i] as number) * at(b, i);
  return sum;
}
