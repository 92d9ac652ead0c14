import { at } from "../../engine/at.ts";
import type { Effort } from "../../engine/effort.ts";
import type { Column } from "../../engine/master.ts";
import type { LengthModel } from "../model/model.ts";
import { lengthColumn } from "../model/pricing.ts";

/** A cutting plan for lengths: columns and their total cost. */
export interface Plan {
  readonly columns: readonly Column[];
  readonly cost: number;
}

const total = (columns: readonly Column[]): Plan => ({ columns, cost: columns.reduce((sum, c) => sum + c.cost, 0) });

/** Ways to choose the stock of the next length. */
const STOCK_RULES: readonly ((s: { size: number; cost: number }) => number)[] = [
  (s) => s.cost / s.size,
  (s) => s.cost,
  (s) => -s.size,
];

/** Best fit, longest first, and filling length by length by subset sums; the cheapest of them. */
export function startLengths(
  model: LengthModel,
  needs: ArrayLike<number>,
  limits: ArrayLike<number>,
  effort: Effort,
): Plan {
  const plans: Plan[] = [];
  const rules = model.stocks.length > 1 ? STOCK_RULES : STOCK_RULES.slice(0, 1);
  for (const rule of rules) {
    const stocks = model.stocks.map((_, i) => i);
    stocks.sort((a, b) => rule(at(model.stocks, a)) - rule(at(model.stocks, b)) || a - b);
    stocks.sort((a, b) => Number(at(model.stocks, a).index < 0) - Number(at(model.stocks, b).index < 0));
    plans.push(bestFit(model, stocks, needs, limits), subsetFill(model, stocks, needs, limits, effort));
  }
  return plans.reduce((best, plan) => (plan.cost < best.cost ? plan : best));
}

/** Longest part first, each into the length where the least is left (best fit decreasing). */
function bestFit(
  model: LengthModel,
  stocks: readonly number[],
  needs: ArrayLike<number>,
  limits: ArrayLike<number>,
): Plan {
  const open: { stock: number; room: number; counts: Map<number, number> }[] = [];
  const used = new Int32Array(model.stocks.length);
  model.types.forEach((t, i) => {
    for (let n = at(needs, i); n > 0; n--) {
      let best: (typeof open)[number] | undefined;
      for (const o of open) if (o.room >= t.size && (!best || o.room < best.room)) best = o;
      if (!best) {
        const stock = firstThatHolds(model, stocks, used, limits, t.size);
        used[stock] = (used[stock] as number) + 1;
        best = { stock, room: at(model.stocks, stock).size, counts: new Map() };
        open.push(best);
      }
      best.room -= t.size;
      best.counts.set(i, (best.counts.get(i) ?? 0) + 1);
    }
  });
  return total(
    open.map((o) => ({
      stock: o.stock,
      cost: at(model.stocks, o.stock).cost,
      types: [...o.counts.keys()],
      counts: [...o.counts.values()],
    })),
  );
}

/** The first stock that is not used up and long enough; there is one, since the stand-in holds what the others cannot. */
function firstThatHolds(
  model: LengthModel,
  stocks: readonly number[],
  used: Int32Array,
  limits: ArrayLike<number>,
  size: number,
): number {
  return at(
    stocks.filter((s) => (used[s] as number) < at(limits, s) && at(model.stocks, s).size >= size),
    0,
  );
}

/** Steps of one subset search before the fullest so far is taken. */
const SUBSET_STEPS = 2000;

/** Length by length: the longest part left, then the set of parts that fills the rest best, long parts preferred. */
function subsetFill(
  model: LengthModel,
  stocks: readonly number[],
  needs: ArrayLike<number>,
  limits: ArrayLike<number>,
  effort: Effort,
): Plan {
  const left = Int32Array.from(needs);
  const used = new Int32Array(model.stocks.length);
  const columns: Column[] = [];
  const counts = new Int32Array(left.length);
  const bestCounts = new Int32Array(left.length);
  for (let first = 0; first < left.length; ) {
    if (left[first] === 0) {
      first++;
      continue;
    }
    const size = at(model.types, first).size;
    const stock = firstThatHolds(model, stocks, used, limits, size);
    let least = Number.POSITIVE_INFINITY;
    let steps = 0;
    const fill = (from: number, room: number): boolean => {
      if (room < least) {
        least = room;
        bestCounts.set(counts);
      }
      if (room === 0) return true;
      for (let i = from; i < left.length; i++) {
        const s = at(model.types, i).size;
        if (s > room || (left[i] as number) <= (counts[i] as number)) continue;
        if (++steps > SUBSET_STEPS) return true;
        counts[i] = (counts[i] as number) + 1;
        const done = fill(i, room - s);
        counts[i] = (counts[i] as number) - 1;
        if (done) return true;
      }
      return false;
    };
    counts.fill(0);
    counts[first] = 1;
    fill(first, at(model.stocks, stock).size - size);
    effort.spend(steps + left.length);
    used[stock] = (used[stock] as number) + 1;
    for (let i = 0; i < left.length; i++) left[i] = (left[i] as number) - (bestCounts[i] as number);
    columns.push(lengthColumn(stock, at(model.stocks, stock).cost, bestCounts));
  }
  return total(columns);
}
