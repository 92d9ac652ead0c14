import { inverseOf } from "./inverse.ts";

/** A column of the master problem: one way to cut one piece of stock. */
export interface Column {
  /** number of the stock in the model */
  readonly stock: number;
  readonly cost: number;
  /** types cut, ascending, and how many of each */
  readonly types: readonly number[];
  readonly counts: readonly number[];
}

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
  private starts = new Int32Array(64);
  private types = new Int32Array(256);
  private counts = new Float64Array(256);
  readonly duals: Float64Array;
  private readonly m: number;
  private readonly parts: number;
  private readonly stockRow: Int32Array;
  private readonly inverse: Float64Array;
  private readonly basis: Int32Array;
  private readonly values: Float64Array;
  private readonly needs: Float64Array;
  private readonly bigCost: number;
  /** a reduced cost nearer to 0 than this is rounding */
  private readonly least: number;
  private readonly work: Float64Array;
  private readonly filled: Int32Array;
  /** pivots done, for the count of work */
  pivots = 0;
  /** pivots since the inverse was made from the basis itself */
  private stale = 0;

  constructor(needs: readonly number[], limits: readonly number[], limited: readonly boolean[], bigCost: number) {
    this.parts = needs.length;
    this.stockRow = new Int32Array(limits.length).fill(-1);
    let m = this.parts;
    const right = [...needs];
    limited.forEach((is, s) => {
      if (!is) return;
      this.stockRow[s] = m++;
      right.push(limits[s]!);
    });
    this.m = m;
    this.bigCost = bigCost;
    this.least = -Math.max(LEAST_GAIN, LEAST_SHARE * bigCost);
    this.inverse = new Float64Array(m * m);
    this.basis = new Int32Array(m);
    this.needs = Float64Array.from(right);
    this.values = Float64Array.from(right);
    this.duals = new Float64Array(m);
    this.work = new Float64Array(m);
    this.filled = new Int32Array(m);
    for (let r = 0; r < m; r++) {
      this.inverse[r * m + r] = 1;
      this.basis[r] = -1 - r;
    }
  }

  get rows(): number {
    return this.m;
  }

  add(column: Column): void {
    const n = this.columns.push(column);
    const from = this.starts[n - 1]!;
    const to = from + column.types.length;
    if (n >= this.starts.length) this.starts = grown(this.starts, new Int32Array(2 * n));
    if (to > this.types.length) {
      this.types = grown(this.types, new Int32Array(2 * to));
      this.counts = grown(this.counts, new Float64Array(2 * to));
    }
    this.types.set(column.types, from);
    this.counts.set(column.counts, from);
    this.starts[n] = to;
  }

  private costOf(b: number): number {
    if (b >= 0) return this.columns[b]!.cost;
    return b >= -this.m && -1 - b < this.parts ? this.bigCost : 0;
  }

  /** Multipliers of the rows from the present basis. */
  private findDuals(): void {
    const { m, inverse, duals } = this;
    duals.fill(0);
    for (let r = 0; r < m; r++) {
      const c = this.costOf(this.basis[r]!);
      if (c === 0) continue;
      const at = r * m;
      for (let i = 0; i < m; i++) duals[i]! += c * inverse[at + i]!;
    }
  }

  /** Multipliers after a pivot: what entered is now worth its cost. */
  private moveDuals(row: number, gain: number): void {
    const { m, inverse, duals } = this;
    const at = row * m;
    for (let i = 0; i < m; i++) duals[i]! += gain * inverse[at + i]!;
  }

  reducedCost(column: Column): number {
    let c = column.cost;
    const { types, counts } = column;
    for (let k = 0; k < types.length; k++) c -= this.duals[types[k]!]! * counts[k]!;
    const row = this.stockRow[column.stock]!;
    return row >= 0 ? c - this.duals[row]! : c;
  }

  private reducedAt(j: number): number {
    const { columns, starts, types, counts, duals } = this;
    const column = columns[j]!;
    let c = column.cost;
    for (let k = starts[j]!; k < starts[j + 1]!; k++) c -= duals[types[k]!]! * counts[k]!;
    const row = this.stockRow[column.stock]!;
    return row >= 0 ? c - duals[row]! : c;
  }

  /** What limited stock `s` is worth beyond its cost: 0 or less. */
  stockDual(s: number): number {
    const row = this.stockRow[s]!;
    return row >= 0 ? this.duals[row]! : 0;
  }

  /** Inverse times the column that enters. */
  private direction(b: number): Float64Array {
    const { m, inverse, work } = this;
    if (b >= 0) {
      const column = this.columns[b]!;
      const { types, counts } = column;
      const row = this.stockRow[column.stock]!;
      for (let r = 0; r < m; r++) {
        let v = row >= 0 ? inverse[r * m + row]! : 0;
        for (let k = 0; k < types.length; k++) v += inverse[r * m + types[k]!]! * counts[k]!;
        work[r] = v;
      }
    } else {
      const surplus = b < -m;
      const i = surplus ? -1 - m - b : -1 - b;
      for (let r = 0; r < m; r++) work[r] = surplus ? -inverse[r * m + i]! : inverse[r * m + i]!;
    }
    return work;
  }

  /** Much of the inverse is 0: only the places where the pivot row is not are gone through. */
  private pivot(row: number, enters: number, d: Float64Array): void {
    const { m, inverse, values, filled } = this;
    const at = row * m;
    const p = d[row]!;
    let n = 0;
    for (let i = 0; i < m; i++) {
      if (inverse[at + i] === 0) continue;
      inverse[at + i]! /= p;
      filled[n++] = i;
    }
    values[row]! /= p;
    for (let r = 0; r < m; r++) {
      const f = d[r]!;
      if (r === row || (f < 1e-12 && f > -1e-12)) continue;
      const to = r * m;
      for (let k = 0; k < n; k++) {
        const i = filled[k]!;
        inverse[to + i]! -= f * inverse[at + i]!;
      }
      values[r]! -= f * values[row]!;
      if (values[r]! < 0 && values[r]! > -1e-11) values[r] = 0;
    }
    this.basis[row] = enters;
    this.pivots++;
    if (++this.stale >= FRESH_AFTER) this.refresh();
  }

  /** Makes the inverse anew from the basis, since each pivot adds to its rounding errors; a basis that has become singular starts over. */
  private refresh(): void {
    const { m, basis, inverse } = this;
    const fresh = inverseOf(m, (r) => this.entries(basis[r]!));
    this.stale = 0;
    if (fresh === undefined) this.startOver();
    else {
      inverse.set(fresh);
      this.solveValues();
    }
  }

  private startOver(): void {
    const { m, basis, inverse } = this;
    inverse.fill(0);
    for (let r = 0; r < m; r++) {
      inverse[r * m + r] = 1;
      basis[r] = -1 - r;
    }
    this.solveValues();
  }

  /** Row and entry of each place of a basis column that is not 0. */
  private entries(b: number): (readonly [number, number])[] {
    if (b < 0) return b < -this.m ? [[-1 - this.m - b, -1]] : [[-1 - b, 1]];
    const { types, counts, stock } = this.columns[b]!;
    const out = types.map((t, k) => [t, counts[k]!] as const);
    const row = this.stockRow[stock]!;
    return row >= 0 ? [...out, [row, 1]] : out;
  }

  /** Best entering column, surplus or slack by reduced cost; undefined at the optimum of the known columns. */
  private entering(): { readonly b: number; readonly gain: number } | undefined {
    const least = this.least;
    let best = least;
    let b = 0;
    for (let j = 0; j < this.columns.length; j++) {
      const c = this.reducedAt(j);
      if (c < best) {
        best = c;
        b = j;
      }
    }
    for (let r = 0; r < this.m; r++) {
      const c = r < this.parts ? this.duals[r]! : -this.duals[r]!;
      if (c < best) {
        best = c;
        b = r < this.parts ? -1 - this.m - r : -1 - r;
      }
    }
    return best < least ? { b, gain: best } : undefined;
  }

  /** Runs to the optimum over the known columns; stops after `most` pivots. */
  solve(most: number): void {
    // a repair that circles among equals starts over from the artificial basis
    if (!this.repair(REPAIRS_PER_ROW * this.m)) this.startOver();
    this.findDuals();
    let exact = true;
    for (let n = 0; n < most; n++) {
      const enters = this.entering();
      if (enters === undefined) {
        if (exact) return;
        this.findDuals();
        exact = true;
        continue;
      }
      const d = this.direction(enters.b);
      let row = -1;
      let step = Number.POSITIVE_INFINITY;
      for (let r = 0; r < this.m; r++) {
        if (d[r]! <= SMALL) continue;
        const ratio = this.values[r]! / d[r]!;
        if (ratio < step - 1e-12 || (ratio < step + 1e-12 && row >= 0 && d[r]! > d[row]!)) {
          step = Math.min(step, ratio);
          row = r;
        }
      }
      if (row < 0) return;
      this.pivot(row, enters.b, d);
      exact = this.stale === 0;
      if (exact) this.findDuals();
      else this.moveDuals(row, enters.gain);
    }
    this.findDuals();
  }

  /** Dual simplex: makes negative values good again after the right-hand side was lowered. */
  private repair(most: number): boolean {
    for (let n = 0; n < most; n++) {
      let row = -1;
      let least = -1e-8;
      for (let r = 0; r < this.m; r++) {
        if (this.values[r]! < least) {
          least = this.values[r]!;
          row = r;
        }
      }
      if (row < 0) return true;
      this.findDuals();
      const enters = this.leavingRatio(row);
      if (enters === undefined) return true;
      this.pivot(row, enters, this.direction(enters));
    }
    return false;
  }

  private leavingRatio(row: number): number | undefined {
    const { m, inverse } = this;
    const at = row * m;
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
    const { columns, starts, types, counts } = this;
    for (let j = 0; j < columns.length; j++) {
      const limitRow = this.stockRow[columns[j]!.stock]!;
      let entry = limitRow >= 0 ? inverse[at + limitRow]! : 0;
      for (let k = starts[j]!; k < starts[j + 1]!; k++) entry += inverse[at + types[k]!]! * counts[k]!;
      if (entry < -1e-8) look(j, entry, this.reducedAt(j));
    }
    for (let r = 0; r < m; r++) {
      if (r < this.parts) look(-1 - m - r, -inverse[at + r]!, this.duals[r]!);
      else look(-1 - r, inverse[at + r]!, -this.duals[r]!);
      if (r < this.parts) look(-1 - r, inverse[at + r]!, this.bigCost - this.duals[r]!);
    }
    return enters;
  }

  /** A new right-hand side: what is still needed, and how much limited stock is left. */
  setNeeds(needs: ArrayLike<number>, limits: ArrayLike<number>): void {
    for (let r = 0; r < this.parts; r++) this.needs[r] = needs[r]!;
    this.stockRow.forEach((row, s) => {
      if (row >= 0) this.needs[row] = limits[s]!;
    });
    this.solveValues();
  }

  private solveValues(): void {
    const { m } = this;
    for (let r = 0; r < m; r++) {
      let v = 0;
      for (let i = 0; i < m; i++) v += this.inverse[r * m + i]! * this.needs[i]!;
      this.values[r] = v < 0 && v > -1e-9 ? 0 : v;
    }
  }

  get objective(): number {
    let sum = 0;
    for (let r = 0; r < this.m; r++) sum += this.costOf(this.basis[r]!) * this.values[r]!;
    return sum;
  }

  /** How often each column is used: column number and value, for those above 0. */
  solution(): { column: number; value: number }[] {
    const used: { column: number; value: number }[] = [];
    for (let r = 0; r < this.m; r++) {
      if (this.basis[r]! >= 0 && this.values[r]! > 1e-7) used.push({ column: this.basis[r]!, value: this.values[r]! });
    }
    return used;
  }
}

/** The larger array, begun with what the smaller one holds. */
function grown<T extends Int32Array | Float64Array>(small: T, large: T): T {
  large.set(small);
  return large;
}
