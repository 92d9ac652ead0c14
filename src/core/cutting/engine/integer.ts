import type { Effort } from "./effort.ts";

/** A variable of an integer program: what one costs, at most how many, and its entries. */
export interface Variable {
  readonly cost: number;
  readonly most: number;
  readonly rows: readonly number[];
  readonly entries: readonly number[];
}

/** Least cost of whole numbers of the variables so that the entries of each row add up to its total exactly. */
export interface IntegerProgram {
  readonly totals: readonly number[];
  readonly variables: readonly Variable[];
  /** every total of the cost is a multiple of this */
  readonly costStep: number;
}

export interface IntegerAnswer {
  /** how many of each variable; undefined where there is nothing within the goal */
  readonly counts: readonly number[] | undefined;
  /** false when the effort ended the search: there may be something better */
  readonly complete: boolean;
}

const SMALL = 1e-7;
const MOST_PIVOTS = 2000;

/**
 * Branch and bound over the linear problem with bounded variables, which the dual simplex method solves again from
 * where the branch above left it (A. Land, A. Doig, Econometrica 28 (1960) 497-520; C. Lemke 1954).
 * @param most what the cost may be
 */
export function solveInteger(program: IntegerProgram, most: number, effort: Effort): IntegerAnswer {
  const { variables, costStep } = program;
  let counts: number[] | undefined;
  let goal = most;
  let complete = true;

  const branch = (node: Relaxation): void => {
    const end = effort.over ? "unknown" : node.solve(goal + costStep * 1e-3, effort);
    if (end === "unknown") complete = false;
    if (end !== "optimal") return;
    const at = node.fractional();
    if (at === undefined) {
      counts = Array.from(node.values(), Math.round);
      goal = counts.reduce((sum, n, j) => sum + n * variables[j]!.cost, 0) - costStep;
      return;
    }
    const { variable, value } = at;
    const up = value - Math.floor(value) > 0.5;
    for (const above of [up, !up]) {
      if (!complete && effort.over) return;
      const child = node.copy();
      if (above) child.low[variable] = Math.ceil(value);
      else child.high[variable] = Math.floor(value);
      branch(child);
    }
  };

  branch(Relaxation.of(program));
  return { counts, complete };
}

/** The linear problem with bounds, at some basis. Variables from `variables.length` on are the rows' own, fixed at 0. */
class Relaxation {
  private readonly program: IntegerProgram;
  private readonly m: number;
  private readonly n: number;
  readonly low: Float64Array;
  readonly high: Float64Array;
  /** variable of each row of the basis */
  private readonly basis: Int32Array;
  private readonly inBasis: Uint8Array;
  private readonly atHigh: Uint8Array;
  private readonly inverse: Float64Array;
  private readonly basic: Float64Array;

  private constructor(
    program: IntegerProgram,
    low: Float64Array,
    high: Float64Array,
    basis: Int32Array,
    inBasis: Uint8Array,
    atHigh: Uint8Array,
    inverse: Float64Array,
  ) {
    this.program = program;
    this.m = program.totals.length;
    this.n = program.variables.length;
    this.low = low;
    this.high = high;
    this.basis = basis;
    this.inBasis = inBasis;
    this.atHigh = atHigh;
    this.inverse = inverse;
    this.basic = new Float64Array(this.m);
  }

  static of(program: IntegerProgram): Relaxation {
    const m = program.totals.length;
    const n = program.variables.length;
    const inverse = new Float64Array(m * m);
    for (let r = 0; r < m; r++) inverse[r * m + r] = 1;
    const inBasis = new Uint8Array(n + m).fill(1, n);
    return new Relaxation(
      program,
      new Float64Array(n),
      Float64Array.from(program.variables, (v) => v.most),
      Int32Array.from({ length: m }, (_, r) => n + r),
      inBasis,
      new Uint8Array(n + m),
      inverse,
    );
  }

  copy(): Relaxation {
    return new Relaxation(
      this.program,
      this.low.slice(),
      this.high.slice(),
      this.basis.slice(),
      this.inBasis.slice(),
      this.atHigh.slice(),
      this.inverse.slice(),
    );
  }

  private lowOf = (j: number): number => (j < this.n ? this.low[j]! : 0);
  private highOf = (j: number): number => (j < this.n ? this.high[j]! : 0);
  private costOf = (j: number): number => (j < this.n ? this.program.variables[j]!.cost : 0);

  /** To the optimum, or until the cost is above `most`. */
  solve(most: number, effort: Effort): "optimal" | "none" | "unknown" {
    for (let n = 0; n < MOST_PIVOTS; n++) {
      effort.spend(10 + this.n * 3 + this.m * this.m);
      this.place();
      if (this.cost() > most) return "none";
      const leaving = this.worst();
      if (!leaving) return "optimal";
      const entering = this.entering(leaving.row, leaving.below);
      if (entering < 0) return "none";
      this.pivot(leaving.row, entering, leaving.below);
      if (effort.over) return "unknown";
    }
    return "unknown";
  }

  /** Values of the basic variables where the others are at their bounds. */
  private place(): void {
    const { m, n, inverse, basic, program } = this;
    const rest = Float64Array.from(program.totals);
    for (let j = 0; j < n; j++) {
      if (this.inBasis[j]) continue;
      const value = this.atHigh[j] ? this.high[j]! : this.low[j]!;
      if (value === 0) continue;
      const { rows, entries } = program.variables[j]!;
      for (let k = 0; k < rows.length; k++) rest[rows[k]!]! -= value * entries[k]!;
    }
    for (let r = 0; r < m; r++) {
      let sum = 0;
      for (let i = 0; i < m; i++) sum += inverse[r * m + i]! * rest[i]!;
      basic[r] = sum;
    }
  }

  private cost(): number {
    let sum = 0;
    for (let r = 0; r < this.m; r++) sum += this.costOf(this.basis[r]!) * this.basic[r]!;
    for (let j = 0; j < this.n; j++) {
      if (!this.inBasis[j]) sum += this.costOf(j) * (this.atHigh[j] ? this.high[j]! : this.low[j]!);
    }
    return sum;
  }

  /** The basic variable farthest outside its bounds. */
  private worst(): { row: number; below: boolean } | undefined {
    let most = SMALL;
    let found: { row: number; below: boolean } | undefined;
    for (let row = 0; row < this.m; row++) {
      const j = this.basis[row]!;
      const under = this.lowOf(j) - this.basic[row]!;
      const over = this.basic[row]! - this.highOf(j);
      if (Math.max(under, over) <= most) continue;
      most = Math.max(under, over);
      found = { row, below: under > over };
    }
    return found;
  }

  /** The variable that keeps the others worth their cost; -1 where none can mend the row. */
  private entering(row: number, below: boolean): number {
    const { m, n, inverse, basis, program } = this;
    const worth = new Float64Array(m);
    for (let r = 0; r < m; r++) {
      const c = this.costOf(basis[r]!);
      if (c !== 0) for (let i = 0; i < m; i++) worth[i]! += c * inverse[r * m + i]!;
    }
    let best = -1;
    let least = Number.POSITIVE_INFINITY;
    let largest = 0;
    for (let j = 0; j < n; j++) {
      if (this.inBasis[j] || this.low[j] === this.high[j]) continue;
      const { rows, entries, cost } = program.variables[j]!;
      let alpha = 0;
      let reduced = cost;
      for (let k = 0; k < rows.length; k++) {
        alpha += inverse[row * m + rows[k]!]! * entries[k]!;
        reduced -= worth[rows[k]!]! * entries[k]!;
      }
      if (Math.abs(alpha) < SMALL || alpha > 0 !== (below === (this.atHigh[j] === 1))) continue;
      const ratio = Math.abs(reduced / alpha);
      if (ratio < least - SMALL || (ratio < least + SMALL && Math.abs(alpha) > largest)) {
        least = Math.min(least, ratio);
        largest = Math.abs(alpha);
        best = j;
      }
    }
    return best;
  }

  private pivot(row: number, enters: number, below: boolean): void {
    const { m, inverse, basis, program } = this;
    const { rows, entries } = program.variables[enters]!;
    const along = new Float64Array(m);
    for (let r = 0; r < m; r++) {
      for (let k = 0; k < rows.length; k++) along[r]! += inverse[r * m + rows[k]!]! * entries[k]!;
    }
    const p = along[row]!;
    for (let i = 0; i < m; i++) inverse[row * m + i]! /= p;
    for (let r = 0; r < m; r++) {
      const f = along[r]!;
      if (r === row || f === 0) continue;
      for (let i = 0; i < m; i++) inverse[r * m + i]! -= f * inverse[row * m + i]!;
    }
    const leaves = basis[row]!;
    this.inBasis[leaves] = 0;
    this.atHigh[leaves] = below ? 0 : 1;
    this.inBasis[enters] = 1;
    basis[row] = enters;
  }

  values(): Float64Array {
    const all = new Float64Array(this.n);
    for (let j = 0; j < this.n; j++) if (!this.inBasis[j]) all[j] = this.atHigh[j] ? this.high[j]! : this.low[j]!;
    for (let r = 0; r < this.m; r++) if (this.basis[r]! < this.n) all[this.basis[r]!] = this.basic[r]!;
    return all;
  }

  /** The basic variable that is farthest from a whole number. */
  fractional(): { variable: number; value: number } | undefined {
    let most = 1e-6;
    let found: { variable: number; value: number } | undefined;
    for (let r = 0; r < this.m; r++) {
      const value = this.basic[r]!;
      const off = Math.abs(value - Math.round(value));
      if (off <= most) continue;
      most = off;
      found = { variable: this.basis[r]!, value };
    }
    return found;
  }
}
