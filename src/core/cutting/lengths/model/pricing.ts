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
    if (counts[t]! > 0) {
      types.push(t);
      some.push(counts[t]!);
    }
  }
  return { stock, cost, types, counts: some };
}

/**
 * The most valuable way to cut one length, no more of each part than is needed: the bounded knapsack, by branch and bound
 * over the parts by value for length (S. Martello, P. Toth 1990), or by dynamic programming where that grows too long.
 */
export class LengthPricer implements Pricer {
  private readonly model: LengthModel;
  private readonly chosen: Int32Array;
  private readonly bestCounts: Int32Array;

  constructor(model: LengthModel) {
    this.model = model;
    this.chosen = new Int32Array(model.types.length);
    this.bestCounts = new Int32Array(model.types.length);
  }

  price({ values, stock, threshold, needs, effort }: PriceRequest): Priced {
    const { size, cost } = this.model.stocks[stock]!;
    const order: number[] = [];
    const most: number[] = [];
    this.model.types.forEach((t, i) => {
      const n = Math.min(needs[i]!, Math.floor(size / t.size));
      if (values[i]! > 0 && n > 0) {
        order.push(i);
        most[i] = n;
      }
    });
    order.sort(
      (a, b) =>
        values[b]! * this.model.types[a]!.size - values[a]! * this.model.types[b]!.size ||
        this.model.types[b]!.size - this.model.types[a]!.size,
    );
    const found =
      this.branch(order, most, values, size, threshold, effort) ?? this.table(order, most, values, size, effort);
    if (found <= threshold) return { columns: [], most: Math.max(found, threshold) };
    return { columns: [lengthColumn(stock, cost, this.bestCounts)], most: found };
  }

  /** Depth first, as many as fit first; undefined when it takes too many steps. */
  private branch(
    order: readonly number[],
    most: readonly number[],
    values: Float64Array,
    size: number,
    threshold: number,
    effort: Effort,
  ): number | undefined {
    const { chosen, bestCounts } = this;
    const { types } = this.model;
    let best = threshold;
    let steps = 0;
    chosen.fill(0);
    const n = order.length;
    const least = new Float64Array(n + 1).fill(Number.POSITIVE_INFINITY);
    for (let k = n - 1; k >= 0; k--) least[k] = Math.min(least[k + 1]!, types[order[k]!]!.size);
    const limit = (from: number, room: number): number => {
      let left = room;
      let sum = 0;
      for (let k = from; k < n; k++) {
        steps++;
        const i = order[k]!;
        const s = types[i]!.size;
        const full = s * most[i]!;
        if (full > left) {
          const whole = Math.floor(left / s);
          left -= whole * s;
          sum += whole * values[i]!;
          if (whole < most[i]!) return sum + (left * values[i]!) / s;
        } else {
          left -= full;
          sum += most[i]! * values[i]!;
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
        if (least[k]! > room) return true;
        if (steps > MOST_STEPS) return false;
        if (Math.floor(value + limit(k, room) + 1e-6) <= best) return true;
        const i = order[k]!;
        const s = types[i]!.size;
        for (let c = Math.min(most[i]!, Math.floor(room / s)); c > 0; c--) {
          chosen[i] = c;
          const whole = walk(k + 1, room - c * s, value + c * values[i]!);
          chosen[i] = 0;
          if (!whole) return false;
        }
      }
      return true;
    };
    const done = walk(0, size, 0);
    effort.spend(steps);
    return done ? best : undefined;
  }

  private table(
    order: readonly number[],
    most: readonly number[],
    values: Float64Array,
    size: number,
    effort: Effort,
  ): number {
    const { types } = this.model;
    const best = new Float64Array(size + 1);
    const passes: number[] = [];
    for (const i of order) for (let c = 0; c < most[i]!; c++) passes.push(i);
    const taken = passes.map(() => new Uint8Array(size + 1));
    passes.forEach((i, pass) => {
      const s = types[i]!.size;
      const v = values[i]!;
      const row = taken[pass]!;
      for (let c = size; c >= s; c--) {
        const w = best[c - s]! + v;
        if (w > best[c]!) {
          best[c] = w;
          row[c] = 1;
        }
      }
    });
    effort.spend(passes.length * size);
    this.bestCounts.fill(0);
    let room = size;
    for (let pass = passes.length - 1; pass >= 0; pass--) {
      if (!taken[pass]![room]) continue;
      const i = passes[pass]!;
      this.bestCounts[i]!++;
      room -= types[i]!.size;
    }
    return best[size]!;
  }
}
