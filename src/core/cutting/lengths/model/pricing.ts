import { at } from "../../engine/at.ts";
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
    const most = sizes.map((s, i) => ((values[i] as number) > 0 ? Math.min(at(needs, i), Math.floor(size / s)) : 0));
    const useful = [...most.keys()].filter((i) => (most[i] as number) > 0);
    useful.sort(
      (a, b) =>
        (values[b] as number) * (sizes[a] as number) - (values[a] as number) * (sizes[b] as number) ||
        (sizes[b] as number) - (sizes[a] as number),
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
    for (let k = n - 1; k >= 0; k--) least[k] = Math.min(least[k + 1] as number, sizes[order[k] as number] as number);
    const limit = (from: number, room: number): number => {
      let left = room;
      let sum = 0;
      for (let k = from; k < n; k++) {
        steps++;
        const i = order[k] as number;
        const s = sizes[i] as number;
        const full = s * (most[i] as number);
        if (full > left) {
          const fits = Math.floor(left / s);
          left -= fits * s;
          sum += fits * (values[i] as number);
          if (fits < (most[i] as number)) return sum + (left * (values[i] as number)) / s;
        } else {
          left -= full;
          sum += (most[i] as number) * (values[i] as number);
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
        if ((least[k] as number) > room) return true;
        if (steps > MOST_STEPS) return false;
        if (Math.floor(value + limit(k, room) + 1e-6) <= best) return true;
        const i = order[k] as number;
        const s = sizes[i] as number;
        for (let c = Math.min(most[i] as number, Math.floor(room / s)); c > 0; c--) {
          chosen[i] = c;
          const done = walk(k + 1, room - c * s, value + c * (values[i] as number));
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
    for (const i of order) for (let c = 0; c < (most[i] as number); c++) passes.push(i);
    const taken = passes.map(() => new Uint8Array(size + 1));
    passes.forEach((i, pass) => {
      const s = sizes[i] as number;
      const v = values[i] as number;
      const row = at(taken, pass);
      for (let c = size; c >= s; c--) {
        const w = (best[c - s] as number) + v;
        if (w > (best[c] as number)) {
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
      this.#bestCounts[i] = (this.#bestCounts[i] as number) + 1;
      room -= sizes[i] as number;
    }
    return best[size] as number;
  }
}
