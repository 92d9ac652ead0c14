import { at } from "./at.ts";
import { gcd } from "./sixty-fourths.ts";

/** Sizes finer than this share of the largest stock count as equal. */
const SIZE_LEVELS = 1000;

interface RankedStock {
  /** what the first goal counts */
  readonly cost: number;
  readonly price: number;
  /** length or area */
  readonly size: number;
  readonly index: number;
}

/**
 * Costs that put the first goal before the price and the price before the size of the stock that is used: no plan that is
 * worse in an earlier goal than the one given costs less.
 * @param used number of the stock of each piece of the plan
 */
export function rankedCosts(stocks: readonly RankedStock[], used: readonly number[]): number[] {
  const real = stocks.filter((s) => s.index >= 0);
  const step = (of: (s: RankedStock) => number): number => real.reduce((g, s) => gcd(g, of(s)), 0) || 1;
  const [first, price] = [step((s) => s.cost), step((s) => s.price)];
  const largest = Math.max(...real.map((s) => s.size));
  const level = (s: RankedStock): number => Math.round((s.size / largest) * SIZE_LEVELS);
  const total = (of: (s: RankedStock) => number): number => used.reduce((sum, s) => sum + of(at(stocks, s)), 0);
  const bySize = total(level) + 1;
  const byPrice = (total((s) => s.price / price) + 1) * bySize;
  return stocks.map((s) => (s.cost / first) * byPrice + (s.price / price) * bySize + level(s));
}
