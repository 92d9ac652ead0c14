import { at, real, whole } from "../../engine/at.ts";
import type { Effort } from "../../engine/effort.ts";
import type { Column } from "../../engine/master.ts";
import type { Priced, PriceRequest, Pricer } from "../../engine/problem.ts";
import type { LengthModel } from "./model.ts";

/** Branch and bound gives up after so many steps and leaves it to dynamic programming. */
const MOST_STEPS = 30_000;

/** Stock column from how many of each type are cut. */
export function lengthColumn(stock: number, cost: number, counts: ArrayLike<number>): Column {
  const types: number[] = [];
  const some: number[] = [];
  for (let t = 0; t < counts.length; t++) {
    if (at(counts, t) > 0) {
      types.push(t);
      some.push(at(counts, t));
    }
  }
  return { stock, cost, types, counts: some };
}

/**
 * The most valuable way to cut one length, no more of each part than is needed: the bounded knapsack, by branch and bound
 * over the parts by value for length (S. Martello, P. Toth 1990), or by dynamic programming where that grows too long.
 */
export class LengthPricer implements Pricer {
  readonly #model: LengthModel;
  readonly #sizes: Int32Array;
  readonly #chosen: Int32Array;
  readonly #bestCounts: Int32Array;

  constructor(model: LengthModel) {
    this.#model = model;
    this.#sizes = Int32Array.from(model.types, (t) => t.size);
    this.#chosen = new Int32Array(model.types.length);
    this.#bestCounts = new Int32Array(model.types.length);
  }

  price({ values, stock, threshold, needs, effort }: PriceRequest): Priced {
    const { size, cost } = at(this.#model.stocks, stock);
    const sizes = this.#sizes;
    const most = sizes.map((s, i) => (real(values, i) > 0 ? Math.min(at(needs, i), Math.floor(size / s)) : 0));
    const useful = [...most.keys()].filter((i) => whole(most, i) > 0);
    useful.sort(
      (a, b) =>
        real(values, b) * whole(sizes, a) - real(values, a) * whole(sizes, b) || whole(sizes, b) - whole(sizes, a),
    );
    const order = Int32Array.from(useful);
    const found =
      this.#branch(order, most, values, size, threshold, effort) ?? this.#table(order, most, values, size, effort);
    if (found <= threshold) return { columns: [], most: Math.max(found, threshold) };
    return { columns: [lengthColumn(stock, cost, this.#bestCounts)], most: found };
  }

  /** Depth first, as many as fit first; undefined when it takes too many steps. */
  #branch(
    order: Int32Array,
    most: Int32Array,
    values: Float64Array,
    size: number,
    threshold: number,
    effort: Effort,
  ): number | undefined {
    const chosen = this.#chosen;
    const bestCounts = this.#bestCounts;
    const sizes = this.#sizes;
    let best = threshold;
    let steps = 0;
    chosen.fill(0);
    const n = order.length;
    const least = new Float64Array(n + 1).fill(Number.POSITIVE_INFINITY);
    for (let k = n - 1; k >= 0; k--) least[k] = Math.min(real(least, k + 1), whole(sizes, whole(order, k)));
    const limit = (from: number, room: number): number => {
      let left = room;
      let sum = 0;
      for (let k = from; k < n; k++) {
        steps++;
        const i = whole(order, k);
        const s = whole(sizes, i);
        const full = s * whole(most, i);
        if (full > left) {
          const fits = Math.floor(left / s);
          left -= fits * s;
          sum += fits * real(values, i);
          if (fits < whole(most, i)) return sum + (left * real(values, i)) / s;
        } else {
          left -= full;
          sum += whole(most, i) * real(values, i);
        }
      }
      return sum;
    };
    const walk = (from: number, room: number, value: number): boolean => {
      if (value > best) {
        best = value;
        bestCounts.set(chosen);
      }
      for (let k = from; k < n; k++) {
        if (real(least, k) > room) return true;
        if (steps > MOST_STEPS) return false;
        if (Math.floor(value + limit(k, room) + 1e-6) <= best) return true;
        const i = whole(order, k);
        const s = whole(sizes, i);
        for (let c = Math.min(whole(most, i), Math.floor(room / s)); c > 0; c--) {
          chosen[i] = c;
          const done = walk(k + 1, room - c * s, value + c * real(values, i));
          chosen[i] = 0;
          if (!done) return false;
        }
      }
      return true;
    };
    const done = walk(0, size, 0);
    effort.spend(steps);
    return done ? best : undefined;
  }

  #table(order: Int32Array, most: Int32Array, values: Float64Array, size: number, effort: Effort): number {
    const sizes = this.#sizes;
    const best = new Float64Array(size + 1);
    const passes: number[] = [];
    for (const i of order) for (let c = 0; c < whole(most, i); c++) passes.push(i);
    const taken = passes.map(() => new Uint8Array(size + 1));
    passes.forEach((i, pass) => {
      const s = whole(sizes, i);
      const v = real(values, i);
      const row = at(taken, pass);
      for (let c = size; c >= s; c--) {
        const w = real(best, c - s) + v;
        if (w > real(best, c)) {
          best[c] = w;
          row[c] = 1;
        }
      }
    });
    effort.spend(passes.length * size);
    this.#bestCounts.fill(0);
    let room = size;
    for (let pass = passes.length - 1; pass >= 0; pass--) {
      if (!at(taken, pass)[room]) continue;
      const i = at(passes, pass);
      this.#bestCounts[i] = whole(this.#bestCounts, i) + 1;
      room -= whole(sizes, i);
    }
    return real(best, size);
  }
}
