import { at } from "../at.ts";
import type { Effort } from "../effort.ts";
import { inverseOf } from "../inverse.ts";
import type { IntegerProgram } from "./program.ts";

const SMALL = 1e-7;
const MOST_PIVOTS = 2000;
/** Pivots after which the inverse is made from the basis again. */
const FRESH_AFTER = 80;

/** The entries of all variables, one after the other in plain arrays. */
class Entries {
  readonly starts: Int32Array;
  readonly rows: Int32Array;
  readonly entries: Float64Array;
  readonly costs: Float64Array;

  constructor({ variables }: IntegerProgram) {
    this.starts = new Int32Array(variables.length + 1);
    variables.forEach((v, j) => {
      this.starts[j + 1] = (this.starts[j] as number) + v.rows.length;
    });
    this.rows = Int32Array.from(variables.flatMap((v) => [...v.rows]));
    this.entries = Float64Array.from(variables.flatMap((v) => [...v.entries]));
    this.costs = Float64Array.from(variables, (v) => v.cost);
  }

  /** The sum of a row vector's products with a variable's entries. */
  dot(rowVector: Float64Array, j: number): number {
    let sum = 0;
    const end = this.starts[j + 1] as number;
    for (let k = this.starts[j] as number; k < end; k++) {
      sum += (rowVector[this.rows[k] as number] as number) * (this.entries[k] as number);
    }
    return sum;
  }
}

/** A variable that is not whole in the solution. */
export interface Fraction {
  readonly variable: number;
  readonly value: number;
  /** its row of the basis */
  readonly row: number;
}

/**
 * The linear problem with bounds, at some basis, by the dual simplex method for bounded variables (C. Lemke 1954).
 * Variables from `n` on are the rows' own, fixed at 0.
 */
export class Relaxation {
  readonly #program: IntegerProgram;
  readonly #all: Entries;
  readonly #m: number;
  readonly #n: number;
  readonly low: Float64Array;
  readonly high: Float64Array;
  /** variable of each row of the basis */
  readonly #basis: Int32Array;
  readonly #inBasis: Uint8Array;
  readonly #atHigh: Uint8Array;
  readonly #inverse: Float64Array;
  /** values of the basic variables */
  readonly #basic: Float64Array;
  /** what one more of each variable costs beyond its worth */
  readonly #reduced: Float64Array;
  readonly #rest: Float64Array;
  readonly #row: Float64Array;
  readonly #along: Float64Array;
  readonly #alpha: Float64Array;
  #stale = 0;

  constructor(from: Relaxation | IntegerProgram) {
    if (from instanceof Relaxation) {
      this.#program = from.#program;
      this.#all = from.#all;
      this.#m = from.#m;
      this.#n = from.#n;
      this.low = from.low.slice();
      this.high = from.high.slice();
      this.#basis = from.#basis.slice();
      this.#inBasis = from.#inBasis.slice();
      this.#atHigh = from.#atHigh.slice();
      this.#inverse = from.#inverse.slice();
      this.#basic = from.#basic.slice();
      this.#reduced = from.#reduced.slice();
      this.#stale = from.#stale;
      this.#rest = from.#rest;
      this.#row = from.#row;
      this.#along = from.#along;
      this.#alpha = from.#alpha;
      return;
    }
    const m = from.totals.length;
    const n = from.variables.length;
    this.#program = from;
    this.#all = new Entries(from);
    this.#m = m;
    this.#n = n;
    this.low = new Float64Array(n + m);
    this.high = new Float64Array(n + m);
    from.variables.forEach((v, j) => {
      this.high[j] = v.most;
    });
    this.#basis = Int32Array.from({ length: m }, (_, r) => n + r);
    this.#inBasis = new Uint8Array(n + m).fill(1, n);
    this.#atHigh = new Uint8Array(n + m);
    this.#inverse = new Float64Array(m * m);
    for (let r = 0; r < m; r++) this.#inverse[r * m + r] = 1;
    this.#basic = new Float64Array(m);
    this.#reduced = this.#all.costs.slice();
    this.#rest = new Float64Array(m);
    this.#row = new Float64Array(m);
    this.#along = new Float64Array(m);
    this.#alpha = new Float64Array(n);
  }

  copy(): Relaxation {
    return new Relaxation(this);
  }

  /** To the optimum, or until the cost is above `most`. */
  solve(most: number, effort: Effort): "optimal" | "none" | "unknown" {
    const [m, n] = [this.#m, this.#n];
    this.#place();
    effort.spend(n + m * m);
    for (let pivots = 0; pivots < MOST_PIVOTS; pivots++) {
      if (this.cost > most) return "none";
      const leaving = this.#worst();
      if (!leaving) return "optimal";
      effort.spend(n * 4 + m * m + 2 * m);
      const entering = this.#entering(leaving.row, leaving.below);
      if (entering < 0) return "none";
      this.#pivot(leaving.row, entering, leaving.below);
      if (effort.over) return "unknown";
    }
    return "unknown";
  }

  get cost(): number {
    const { costs } = this.#all;
    let sum = 0;
    for (let r = 0; r < this.#m; r++) {
      const j = this.#basis[r] as number;
      if (j < this.#n) sum += (costs[j] as number) * (this.#basic[r] as number);
    }
    for (let j = 0; j < this.#n; j++) if (!this.#inBasis[j]) sum += (costs[j] as number) * this.#resting(j);
    return sum;
  }

  #resting(j: number): number {
    return (this.#atHigh[j] ? this.high : this.low)[j] as number;
  }

  /** Values of the basic variables where the others are at their bounds. */
  #place(): void {
    const m = this.#m;
    const rest = this.#rest;
    const { starts, rows, entries } = this.#all;
    rest.set(this.#program.totals);
    for (let j = 0; j < this.#n; j++) {
      if (this.#inBasis[j]) continue;
      const value = this.#resting(j);
      if (value === 0) continue;
      const end = starts[j + 1] as number;
      for (let k = starts[j] as number; k < end; k++) {
        const r = rows[k] as number;
        rest[r] = (rest[r] as number) - value * (entries[k] as number);
      }
    }
    for (let r = 0; r < m; r++) {
      let sum = 0;
      for (let i = 0; i < m; i++) sum += (this.#inverse[r * m + i] as number) * (rest[i] as number);
      this.#basic[r] = sum;
    }
  }

  /** The basic variable farthest outside its bounds. */
  #worst(): { row: number; below: boolean } | undefined {
    let most = SMALL;
    let found = -1;
    let below = false;
    for (let row = 0; row < this.#m; row++) {
      const j = this.#basis[row] as number;
      const value = this.#basic[row] as number;
      const under = (this.low[j] as number) - value;
      const over = value - (this.high[j] as number);
      if (Math.max(under, over) <= most) continue;
      most = Math.max(under, over);
      found = row;
      below = under > over;
    }
    return found < 0 ? undefined : { row: found, below };
  }

  /** The variable that keeps the others worth their cost; -1 where none can mend the row. */
  #entering(row: number, below: boolean): number {
    const m = this.#m;
    const vector = this.#row;
    vector.set(this.#inverse.subarray(row * m, row * m + m));
    let best = -1;
    let least = Number.POSITIVE_INFINITY;
    let largest = 0;
    for (let j = 0; j < this.#n; j++) {
      if (this.#inBasis[j]) continue;
      const alpha = this.#all.dot(vector, j);
      this.#alpha[j] = alpha;
      if (Math.abs(alpha) < SMALL || (this.low[j] as number) === (this.high[j] as number)) continue;
      if (alpha > 0 !== (below === (this.#atHigh[j] === 1))) continue;
      const size = Math.abs(alpha);
      const ratio = Math.abs(this.#reduced[j] as number) / size;
      if (ratio < least - SMALL || (ratio < least + SMALL && size > largest)) {
        least = Math.min(least, ratio);
        largest = size;
        best = j;
      }
    }
    return best;
  }

  #pivot(row: number, enters: number, below: boolean): void {
    const m = this.#m;
    const inverse = this.#inverse;
    const along = this.#along;
    this.#direction(enters, along);
    const p = along[row] as number;
    const leaves = this.#basis[row] as number;
    const bound = (below ? this.low : this.high)[leaves] as number;
    const step = ((this.#basic[row] as number) - bound) / p;
    for (let r = 0; r < m; r++) this.#basic[r] = (this.#basic[r] as number) - step * (along[r] as number);
    this.#basic[row] = this.#resting(enters) + step;
    const gain = (this.#reduced[enters] as number) / p;
    for (let j = 0; j < this.#n; j++) {
      if (!this.#inBasis[j]) this.#reduced[j] = (this.#reduced[j] as number) - gain * (this.#alpha[j] as number);
    }
    this.#reduced[enters] = 0;
    if (leaves < this.#n) this.#reduced[leaves] = -gain;
    for (let i = row * m; i < row * m + m; i++) inverse[i] = (inverse[i] as number) / p;
    for (let r = 0; r < m; r++) {
      const f = along[r] as number;
      if (r === row || f === 0) continue;
      for (let i = 0; i < m; i++)
        inverse[r * m + i] = (inverse[r * m + i] as number) - f * (inverse[row * m + i] as number);
    }
    this.#inBasis[leaves] = 0;
    this.#atHigh[leaves] = below ? 0 : 1;
    this.#inBasis[enters] = 1;
    this.#atHigh[enters] = 0;
    this.#basis[row] = enters;
    if (++this.#stale >= FRESH_AFTER) this.#refresh();
  }

  /** Inverse times the column that enters. */
  #direction(enters: number, along: Float64Array): void {
    const m = this.#m;
    const { starts, rows, entries } = this.#all;
    along.fill(0);
    const end = starts[enters + 1] as number;
    for (let k = starts[enters] as number; k < end; k++) {
      const i = rows[k] as number;
      const entry = entries[k] as number;
      for (let r = 0; r < m; r++) along[r] = (along[r] as number) + (this.#inverse[r * m + i] as number) * entry;
    }
  }

  /** Makes the inverse anew from the basis, since each pivot adds to its rounding errors. */
  #refresh(): void {
    const [m, n] = [this.#m, this.#n];
    this.#stale = 0;
    const fresh = inverseOf(m, (r) => this.#column(this.#basis[r] as number));
    if (!fresh) return;
    this.#inverse.set(fresh);
    this.#place();
    const worth = this.#worth();
    for (let j = 0; j < n; j++) this.#reduced[j] = (this.#all.costs[j] as number) - this.#all.dot(worth, j);
  }

  #column(j: number): (readonly [number, number])[] {
    if (j >= this.#n) return [[j - this.#n, 1]];
    const { rows, entries } = at(this.#program.variables, j);
    return rows.map((r, k) => [r, at(entries, k)] as const);
  }

  /** What one more of each row's total costs. */
  #worth(): Float64Array {
    const m = this.#m;
    const worth = new Float64Array(m);
    for (let r = 0; r < m; r++) {
      const j = this.#basis[r] as number;
      const c = j < this.#n ? (this.#all.costs[j] as number) : 0;
      if (c === 0) continue;
      for (let i = 0; i < m; i++) worth[i] = (worth[i] as number) + c * (this.#inverse[r * m + i] as number);
    }
    return worth;
  }

  /** Takes from the bounds what no plan within the goal can use, by the reduced costs. */
  tighten(most: number): void {
    const room = most - this.cost;
    for (let j = 0; j < this.#n; j++) {
      if (this.#inBasis[j]) continue;
      const each = Math.abs(this.#reduced[j] as number);
      const [low, high] = [this.low[j] as number, this.high[j] as number];
      if (each * (high - low) <= room) continue;
      const steps = Math.floor(room / each + SMALL);
      if (this.#atHigh[j]) this.low[j] = high - steps;
      else this.high[j] = low + steps;
    }
  }

  values(): Float64Array {
    const all = new Float64Array(this.#n);
    for (let j = 0; j < this.#n; j++) if (!this.#inBasis[j]) all[j] = this.#resting(j);
    for (let r = 0; r < this.#m; r++) {
      const j = this.#basis[r] as number;
      if (j < this.#n) all[j] = this.#basic[r] as number;
    }
    return all;
  }

  /** The basic variables of the program that are not whole. */
  fractions(): Fraction[] {
    const found: Fraction[] = [];
    for (let row = 0; row < this.#m; row++) {
      const value = this.#basic[row] as number;
      const variable = this.#basis[row] as number;
      if (variable < this.#n && Math.abs(value - Math.round(value)) > 1e-6) found.push({ variable, value, row });
    }
    return found;
  }

  /** The multipliers of the rows that make a row of the basis. */
  multipliers(row: number): Float64Array {
    return this.#inverse.slice(row * this.#m, row * this.#m + this.#m);
  }
}
