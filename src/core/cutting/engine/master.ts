import { at, real, whole } from "./at.ts";
import { inverseOf } from "./inverse.ts";

/** A column of the master problem: one way to cut one piece of stock. */
export interface Column {
  /** number of the stock in the model; NO_STOCK for what only shifts parts */
  readonly stock: number;
  readonly cost: number;
  /** types cut, ascending, and how many of each */
  readonly types: readonly number[];
  readonly counts: readonly number[];
}

/** The stock of a column that takes none. */
export const NO_STOCK = -1;

const SMALL = 1e-9;
/** What a column must gain to enter, and the same as a share of the cost of an artificial column. */
const LEAST_GAIN = 1e-7;
const LEAST_SHARE = 1e-12;
/** Pivots after which the inverse is made from the basis again. */
const FRESH_AFTER = 100;
/** Pivots of the dual simplex method, for each row, after which it is taken to circle. */
const REPAIRS_PER_ROW = 4;
/** Basis entries below 0: the artificial (or, for a stock row, the slack) of row r is -1 - r; the surplus of row r -1 - m - r. */

/**
 * The linear master problem of column generation, by the revised simplex method with a dense inverse (G. Dantzig):
 * least cost of columns so that each part row is covered and no limited stock is used beyond its limit.
 * Rows: one per part type (at least `need`), then one per limited stock (at most `limit`).
 */
export class Master {
  readonly columns: Column[] = [];
  /** the columns once more, one after the other in plain arrays: they are gone through all the time */
  #starts = new Int32Array(64);
  #types = new Int32Array(256);
  #counts = new Float64Array(256);
  #costs = new Float64Array(64);
  #limitRows = new Int32Array(64);
  readonly duals: Float64Array;
  readonly #m: number;
  readonly #parts: number;
  readonly #stockRow: Int32Array;
  readonly #inverse: Float64Array;
  readonly #basis: Int32Array;
  readonly #values: Float64Array;
  readonly #needs: Float64Array;
  readonly #bigCost: number;
  /** a reduced cost nearer to 0 than this is rounding */
  readonly #least: number;
  readonly #work: Float64Array;
  readonly #filled: Int32Array;
  /** pivots done, for the count of work */
  pivots = 0;
  /** pivots since the inverse was made from the basis itself */
  #stale = 0;

  constructor(needs: readonly number[], limits: readonly number[], limited: readonly boolean[], bigCost: number) {
    this.#parts = needs.length;
    this.#stockRow = new Int32Array(limits.length).fill(-1);
    let m = this.#parts;
    const right = [...needs];
    limited.forEach((is, s) => {
      if (!is) return;
      this.#stockRow[s] = m++;
      right.push(at(limits, s));
    });
    this.#m = m;
    this.#bigCost = bigCost;
    this.#least = -Math.max(LEAST_GAIN, LEAST_SHARE * bigCost);
    this.#inverse = new Float64Array(m * m);
    this.#basis = new Int32Array(m);
    this.#needs = Float64Array.from(right);
    this.#values = Float64Array.from(right);
    this.duals = new Float64Array(m);
    this.#work = new Float64Array(m);
    this.#filled = new Int32Array(m);
    for (let r = 0; r < m; r++) {
      this.#inverse[r * m + r] = 1;
      this.#basis[r] = -1 - r;
    }
  }

  get rows(): number {
    return this.#m;
  }

  add(column: Column): void {
    const n = this.columns.push(column);
    const from = whole(this.#starts, n - 1);
    const to = from + column.types.length;
    if (n >= this.#starts.length) {
      this.#starts = grown(this.#starts, new Int32Array(2 * n));
      this.#costs = grown(this.#costs, new Float64Array(2 * n));
      this.#limitRows = grown(this.#limitRows, new Int32Array(2 * n));
    }
    if (to > this.#types.length) {
      this.#types = grown(this.#types, new Int32Array(2 * to));
      this.#counts = grown(this.#counts, new Float64Array(2 * to));
    }
    this.#types.set(column.types, from);
    this.#counts.set(column.counts, from);
    this.#starts[n] = to;
    this.#costs[n - 1] = column.cost;
    this.#limitRows[n - 1] = this.#rowOf(column.stock);
  }

  #costOf(b: number): number {
    if (b >= 0) return real(this.#costs, b);
    return b >= -this.#m && -1 - b < this.#parts ? this.#bigCost : 0;
  }

  /** Multipliers of the rows from the present basis. */
  #findDuals(): void {
    const { duals } = this;
    const m = this.#m;
    const inverse = this.#inverse;
    duals.fill(0);
    for (let r = 0; r < m; r++) {
      const c = this.#costOf(whole(this.#basis, r));
      if (c === 0) continue;
      const at = r * m;
      for (let i = 0; i < m; i++) duals[i] = real(duals, i) + c * real(inverse, at + i);
    }
  }

  /** Multipliers after a pivot: what entered is now worth its cost. */
  #moveDuals(row: number, gain: number): void {
    const { duals } = this;
    const m = this.#m;
    const inverse = this.#inverse;
    const at = row * m;
    for (let i = 0; i < m; i++) duals[i] = real(duals, i) + gain * real(inverse, at + i);
  }

  /** Row of a limited stock; -1 for any other, and for a column that takes no stock. */
  #rowOf(stock: number): number {
    return stock === NO_STOCK ? -1 : whole(this.#stockRow, stock);
  }

  reducedCost(column: Column): number {
    let c = column.cost;
    const { types, counts } = column;
    for (let k = 0; k < types.length; k++) c -= real(this.duals, at(types, k)) * at(counts, k);
    const row = this.#rowOf(column.stock);
    return row >= 0 ? c - real(this.duals, row) : c;
  }

  #reducedAt(j: number): number {
    const { duals } = this;
    const types = this.#types;
    const counts = this.#counts;
    const end = whole(this.#starts, j + 1);
    let c = real(this.#costs, j);
    for (let k = whole(this.#starts, j); k < end; k++) c -= real(duals, whole(types, k)) * real(counts, k);
    const row = whole(this.#limitRows, j);
    return row >= 0 ? c - real(duals, row) : c;
  }

  /** What limited stock `s` is worth beyond its cost: 0 or less. */
  stockDual(s: number): number {
    const row = whole(this.#stockRow, s);
    return row >= 0 ? real(this.duals, row) : 0;
  }

  /** Inverse times the column that enters. */
  #direction(b: number): Float64Array {
    const m = this.#m;
    const inverse = this.#inverse;
    const work = this.#work;
    if (b >= 0) {
      const row = this.#rowOf(at(this.columns, b).stock);
      const types = this.#types;
      const counts = this.#counts;
      const from = whole(this.#starts, b);
      const end = whole(this.#starts, b + 1);
      for (let r = 0; r < m; r++) {
        let v = row >= 0 ? real(inverse, r * m + row) : 0;
        for (let k = from; k < end; k++) v += real(inverse, r * m + whole(types, k)) * real(counts, k);
        work[r] = v;
      }
    } else {
      const surplus = b < -m;
      const i = surplus ? -1 - m - b : -1 - b;
      for (let r = 0; r < m; r++) work[r] = surplus ? -real(inverse, r * m + i) : real(inverse, r * m + i);
    }
    return work;
  }

  /** Much of the inverse is 0: only the places where the pivot row is not are gone through. */
  #pivot(row: number, enters: number, d: Float64Array): void {
    const m = this.#m;
    const inverse = this.#inverse;
    const values = this.#values;
    const filled = this.#filled;
    const at = row * m;
    const p = real(d, row);
    let n = 0;
    for (let i = 0; i < m; i++) {
      if (inverse[at + i] === 0) continue;
      inverse[at + i] = real(inverse, at + i) / p;
      filled[n++] = i;
    }
    values[row] = real(values, row) / p;
    for (let r = 0; r < m; r++) {
      const f = real(d, r);
      if (r === row || (f < 1e-12 && f > -1e-12)) continue;
      const to = r * m;
      for (let k = 0; k < n; k++) {
        const i = whole(filled, k);
        inverse[to + i] = real(inverse, to + i) - f * real(inverse, at + i);
      }
      values[r] = real(values, r) - f * real(values, row);
      if (real(values, r) < 0 && real(values, r) > -1e-11) values[r] = 0;
    }
    this.#basis[row] = enters;
    this.pivots++;
    if (++this.#stale >= FRESH_AFTER) this.#refresh();
  }

  /** Makes the inverse anew from the basis, since each pivot adds to its rounding errors; a basis that has become singular starts over. */
  #refresh(): void {
    const m = this.#m;
    const basis = this.#basis;
    const inverse = this.#inverse;
    const fresh = inverseOf(m, (r) => this.#entries(whole(basis, r)));
    this.#stale = 0;
    if (fresh === undefined) this.#startOver();
    else {
      inverse.set(fresh);
      this.#solveValues();
    }
  }

  #startOver(): void {
    const m = this.#m;
    const basis = this.#basis;
    const inverse = this.#inverse;
    inverse.fill(0);
    for (let r = 0; r < m; r++) {
      inverse[r * m + r] = 1;
      basis[r] = -1 - r;
    }
    this.#solveValues();
  }

  /** Row and entry of each place of a basis column that is not 0. */
  #entries(b: number): (readonly [number, number])[] {
    if (b < 0) return b < -this.#m ? [[-1 - this.#m - b, -1]] : [[-1 - b, 1]];
    const { types, counts, stock } = at(this.columns, b);
    const out = types.map((t, k) => [t, at(counts, k)] as const);
    const row = this.#rowOf(stock);
    return row >= 0 ? [...out, [row, 1]] : out;
  }

  /** Best entering column, surplus or slack by reduced cost; undefined at the optimum of the known columns. */
  #entering(): { readonly b: number; readonly gain: number } | undefined {
    const least = this.#least;
    let best = least;
    let b = 0;
    for (let j = 0; j < this.columns.length; j++) {
      const c = this.#reducedAt(j);
      if (c < best) {
        best = c;
        b = j;
      }
    }
    for (let r = 0; r < this.#m; r++) {
      const c = r < this.#parts ? real(this.duals, r) : -real(this.duals, r);
      if (c < best) {
        best = c;
        b = r < this.#parts ? -1 - this.#m - r : -1 - r;
      }
    }
    return best < least ? { b, gain: best } : undefined;
  }

  /** Runs to the optimum over the known columns; stops after `most` pivots. */
  solve(most: number): void {
    // a repair that circles among equals starts over from the artificial basis
    if (!this.#repair(REPAIRS_PER_ROW * this.#m)) this.#startOver();
    this.#findDuals();
    let exact = true;
    for (let n = 0; n < most; n++) {
      const enters = this.#entering();
      if (enters === undefined) {
        if (exact) return;
        this.#findDuals();
        exact = true;
        continue;
      }
      const d = this.#direction(enters.b);
      let row = -1;
      let step = Number.POSITIVE_INFINITY;
      for (let r = 0; r < this.#m; r++) {
        if (real(d, r) <= SMALL) continue;
        const ratio = real(this.#values, r) / real(d, r);
        if (ratio < step - 1e-12 || (ratio < step + 1e-12 && row >= 0 && real(d, r) > real(d, row))) {
          step = Math.min(step, ratio);
          row = r;
        }
      }
      if (row < 0) return;
      this.#pivot(row, enters.b, d);
      exact = this.#stale === 0;
      if (exact) this.#findDuals();
      else this.#moveDuals(row, enters.gain);
    }
    this.#findDuals();
  }

  /** Dual simplex: makes negative values good again after the right-hand side was lowered. */
  #repair(most: number): boolean {
    for (let n = 0; n < most; n++) {
      let row = -1;
      let least = -1e-8;
      for (let r = 0; r < this.#m; r++) {
        if (real(this.#values, r) < least) {
          least = real(this.#values, r);
          row = r;
        }
      }
      if (row < 0) return true;
      this.#findDuals();
      const enters = this.#leavingRatio(row);
      if (enters === undefined) return true;
      this.#pivot(row, enters, this.#direction(enters));
    }
    return false;
  }

  #leavingRatio(row: number): number | undefined {
    const m = this.#m;
    const inverse = this.#inverse;
    const from = row * m;
    let best = Number.POSITIVE_INFINITY;
    let largest = 0;
    let enters: number | undefined;
    const look = (b: number, entry: number, cost: number): void => {
      if (entry >= -1e-8) return;
      const ratio = Math.max(0, cost) / -entry;
      if (ratio < best - 1e-9 || (ratio < best + 1e-9 && -entry > largest)) {
        best = Math.min(best, ratio);
        largest = -entry;
        enters = b;
      }
    };
    const { columns } = this;
    const starts = this.#starts;
    const types = this.#types;
    const counts = this.#counts;
    for (let j = 0; j < columns.length; j++) {
      const limitRow = whole(this.#limitRows, j);
      let entry = limitRow >= 0 ? real(inverse, from + limitRow) : 0;
      for (let k = whole(starts, j); k < whole(starts, j + 1); k++)
        entry += real(inverse, from + whole(types, k)) * real(counts, k);
      if (entry < -1e-8) look(j, entry, this.#reducedAt(j));
    }
    for (let r = 0; r < m; r++) {
      if (r < this.#parts) look(-1 - m - r, -real(inverse, from + r), real(this.duals, r));
      else look(-1 - r, real(inverse, from + r), -real(this.duals, r));
      if (r < this.#parts) look(-1 - r, real(inverse, from + r), this.#bigCost - real(this.duals, r));
    }
    return enters;
  }

  /** A new right-hand side: what is still needed, and how much limited stock is left. */
  setNeeds(needs: ArrayLike<number>, limits: ArrayLike<number>): void {
    for (let r = 0; r < this.#parts; r++) this.#needs[r] = at(needs, r);
    this.#stockRow.forEach((row, s) => {
      if (row >= 0) this.#needs[row] = at(limits, s);
    });
    this.#solveValues();
  }

  #solveValues(): void {
    const m = this.#m;
    for (let r = 0; r < m; r++) {
      let v = 0;
      for (let i = 0; i < m; i++) v += real(this.#inverse, r * m + i) * real(this.#needs, i);
      this.#values[r] = v < 0 && v > -1e-9 ? 0 : v;
    }
  }

  get objective(): number {
    let sum = 0;
    for (let r = 0; r < this.#m; r++) sum += this.#costOf(whole(this.#basis, r)) * real(this.#values, r);
    return sum;
  }

  /** How often each column is used: column number and value, for those above 0. */
  solution(): { column: number; value: number }[] {
    const used: { column: number; value: number }[] = [];
    for (let r = 0; r < this.#m; r++) {
      if (whole(this.#basis, r) >= 0 && real(this.#values, r) > 1e-7)
        used.push({ column: whole(this.#basis, r), value: real(this.#values, r) });
    }
    return used;
  }
}

/** The larger array, begun with what the smaller one holds. */
function grown<T extends Int32Array | Float64Array>(small: T, large: T): T {
  large.set(small);
  return large;
}
