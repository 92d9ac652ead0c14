import { at } from "../../engine/at.ts";
import type { LengthModel } from "../model/model.ts";

/** Entries of a table of fills; where it would be larger, nothing is foreseen. */
const MOST_ENTRIES = 2_000_000;
const NOTHING_FORESEEN = new Int32Array(0);

/** Parts to be shared out to patterns, so many of each type. */
export class Demand {
  /** types that are needed, the longest first */
  readonly types: Int32Array;
  readonly sizes: Int32Array;
  readonly needs: Int32Array;
  /** length of all parts */
  readonly length: number;
  /** one table for each number of times that a pattern may be cut */
  readonly #fills = new Map<number, Int32Array>();
  readonly #row: number;
  /** steps spent on tables */
  steps = 0;

  constructor(model: LengthModel, needs: readonly number[]) {
    this.types = Int32Array.from(needs.flatMap((n, t) => (n > 0 ? [t] : [])));
    this.sizes = this.types.map((t) => at(model.types, t).size);
    this.needs = this.types.map((t) => at(needs, t));
    this.length = this.sizes.reduce((sum, s, k) => sum + s * (this.needs[k] as number), 0);
    this.#row = Math.max(...model.stocks.map((s) => s.size)) + 1;
  }

  /** The longest fills of each room by the types from each on, in a pattern that is cut so many times. */
  fills(times: number): Int32Array {
    const known = this.#fills.get(times);
    if (known) return known;
    const made = this.#row * (this.types.length + 1) > MOST_ENTRIES ? NOTHING_FORESEEN : this.#table(times);
    this.#fills.set(times, made);
    return made;
  }

  #table(times: number): Int32Array {
    const n = this.types.length;
    const row = this.#row;
    const fills = new Int32Array((n + 1) * row);
    for (let k = n - 1; k >= 0; k--) {
      const s = this.sizes[k] as number;
      const most = Math.floor((this.needs[k] as number) / times);
      const [from, after] = [k * row, (k + 1) * row];
      for (let room = 0; room < row; room++) {
        let best = fills[after + room] as number;
        for (let c = Math.min(most, Math.floor(room / s)); c > 0; c--) {
          best = Math.max(best, c * s + (fills[after + room - c * s] as number));
        }
        fills[from + room] = best;
      }
      this.steps += row * (1 + Math.min(most, Math.floor(row / s)));
    }
    return fills;
  }

  /** The longest that the types from the `k`-th on can fill of a room. */
  fill(fills: Int32Array, k: number, room: number): number {
    return fills.length === 0 ? room : (fills[k * this.#row + room] as number);
  }
}
