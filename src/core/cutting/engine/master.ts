import { at } from "./at.ts";
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
  readonly #pivotRow: Float64Array;
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
    this.#pivotRow = new Float64Array(m);
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
    const from = this.#starts[n - 1] as number;
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
    if (b >= 0) return this.#costs[b] as number;
    return b >= -this.#m && -1 - b < this.#parts ? this.#bigCost : 0;
  }

  /** Multipliers of the rows from the present basis: four rows of the inverse at a time, added in their order. */
  #findDuals(): void {
    const { duals } = this;
    const m = this.#m;
    const inverse = this.#inverse;
    const rows = this.#filled;
    let n = 0;
    for (let r = 0; r < m; r++) if (this.#costOf(this.#basis[r] as number) !== 0) rows[n++] = r;
    duals.fill(0);
    const cost = (k: number): number => this.#costOf(this.#basis[rows[k] as number] as number);
    let k = 0;
    for (; k + 3 < n; k += 4) {
      const [a, b, c, d] = [cost(k), cost(k + 1), cost(k + 2), cost(k + 3)];
      const atA = (rows[k] as number) * m;
      const atB = (rows[k + 1] as number) * m;
      const atC = (rows[k + 2] as number) * m;
      const atD = (rows[k + 3] as number) * m;
      for (let i = 0; i < m; i++) {
        let sum = (duals[i] as number) + a * (inverse[atA + i] as number);
        sum += b * (inverse[atB + i] as number);
        sum += c * (inverse[atC + i] as number);
        duals[i] = sum + d * (inverse[atD + i] as number);
      }
    }
    for (; k < n; k++) this.#moveDuals(rows[k] as number, cost(k));
  }

  /** Multipliers after a pivot: what entered is now worth its cost. */
  #moveDuals(row: number, gain: number): void {
    const { duals } = this;
    const m = this.#m;
    const inverse = this.#inverse;
    const at = row * m;
    for (let i = 0; i < m; i++) duals[i] = (duals[i] as number) + gain * (inverse[at + i] as number);
  }

  /** Row of a limited stock; -1 for any other, and for a column that takes no stock. */
  #rowOf(stock: number): number {
    return stock === NO_STOCK ? -1 : (this.#stockRow[stock] as number);
  }

  reducedCost(column: Column): number {
    let c = column.cost;
    const { types, counts } = column;
    for (let k = 0; k < types.length; k++) c -= (this.duals[at(types, k)] as number) * at(counts, k);
    const row = this.#rowOf(column.stock);
    return row >= 0 ? c - (this.duals[row] as number) : c;
  }

  #reducedAt(j: number): number {
    const { duals } = this;
    const types = this.#types;
    const counts = this.#counts;
    const end = this.#starts[j + 1] as number;
    let c = this.#costs[j] as number;
    for (let k = this.#starts[j] as number; k < end; k++)
      c -= (duals[types[k] as number] as number) * (counts[k] as number);
    const row = this.#limitRows[j] as number;
    return row >= 0 ? c - (duals[row] as number) : c;
  }

  /** What limited stock `s` is worth beyond its cost: 0 or less. */
  stockDual(s: number): number {
    const row = this.#stockRow[s] as number;
    return row >= 0 ? (this.duals[row] as number) : 0;
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
      const from = this.#starts[b] as number;
      const end = this.#starts[b + 1] as number;
      for (let r = 0; r < m; r++) {
        let v = row >= 0 ? (inverse[r * m + row] as number) : 0;
        for (let k = from; k < end; k++) v += (inverse[r * m + (types[k] as number)] as number) * (counts[k] as number);
        work[r] = v;
      }
    } else {
      const surplus = b < -m;
      const i = surplus ? -1 - m - b : -1 - b;
      for (let r = 0; r < m; r++) work[r] = surplus ? -(inverse[r * m + i] as number) : (inverse[r * m + i] as number);
    }
    return work;
  }

  /** Much of the inverse is 0: only the places where the pivot row is not are gone through. */
  #pivot(row: number, enters: number, d: Float64Array): void {
    const m = this.#m;
    const inverse = this.#inverse;
    const values = this.#values;
    const filled = this.#filled;
    const pivotRow = this.#pivotRow;
    const at = row * m;
    const p = d[row] as number;
    let n = 0;
    for (let i = 0; i < m; i++) {
      if (inverse[at + i] === 0) continue;
      const entry = (inverse[at + i] as number) / p;
      inverse[at + i] = entry;
      pivotRow[n] = entry;
      filled[n++] = i;
    }
    values[row] = (values[row] as number) / p;
    for (let r = 0; r < m; r++) {
      const f = d[r] as number;
      if (r === row || (f < 1e-12 && f > -1e-12)) continue;
      const to = r * m;
      for (let k = 0; k < n; k++) {
        const i = to + (filled[k] as number);
        inverse[i] = (inverse[i] as number) - f * (pivotRow[k] as number);
      }
      values[r] = (values[r] as number) - f * (values[row] as number);
      if ((values[r] as number) < 0 && (values[r] as number) > -1e-11) values[r] = 0;
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
    const fresh = inverseOf(m, (r) => this.#entries(basis[r] as number));
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
      const c = r < this.#parts ? (this.duals[r] as number) : -(this.duals[r] as number);
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
        if ((d[r] as number) <= SMALL) continue;
        const ratio = (this.#values[r] as number) / (d[r] as number);
        if (ratio < step - 1e-12 || (ratio < step + 1e-12 && row >= 0 && (d[r] as number) > (d[row] as number))) {
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
        if ((this.#values[r] as number) < least) {
          least = this.#values[r] as number;
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
      const limitRow = this.#limitRows[j] as number;
      let entry = limitRow >= 0 ? (inverse[from + limitRow] as number) : 0;
      for (let k = starts[j] as number; k < (starts[j + 1] as number); k++)
        entry += (inverse[from + (types[k] as number)] as number) * (counts[k] as number);
      if (entry < -1e-8) look(j, entry, this.#reducedAt(j));
    }
    for (let r = 0; r < m; r++) {
      if (r < this.#parts) look(-1 - m - r, -(inverse[from + r] as number), this.duals[r] as number);
      else look(-1 - r, inverse[from + r] as number, -(this.duals[r] as number));
      if (r < this.#parts) look(-1 - r, inverse[from + r] as number, this.#bigCost - (this.duals[r] as number));
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
      for (let i = 0; i < m; i++) v += (this.#inverse[r * m + i] as number) * (this.#needs[i] as number);
      this.#values[r] = v < 0 && v > -1e-9 ? 0 : v;
    }
  }

  get objective(): number {
    let sum = 0;
    for (let r = 0; r < this.#m; r++) sum += this.#costOf(this.#basis[r] as number) * (this.#values[r] as number);
    return sum;
  }

  /** How often each column is used: column number and value, for those above 0. */
  solution(): { column: number; value: number }[] {
    const used: { column: number; value: number }[] = [];
    for (let r = 0; r < this.#m; r++) {
      if ((this.#basis[r] as number) >= 0 && (this.#values[r] as number) > 1e-7)
        used.push({ column: this.#basis[r] as number, value: this.#values[r] as number });
    }
    return used;
  }
}

/** The larger array, begun with what the smaller one holds. */
function grown<T extends Int32Array | Float64Array>(small: T, large: T): T {
  large.set(small);
  return large;
}
