import type { Random } from "../../../kit/random.ts";
import { at } from "../../engine/at.ts";

/** How many lengths there are of each stock. */
export type Bars = ReadonlyMap<number, number>;

/** A pattern of which only the stock is known and how often it is cut. */
export interface Times {
  readonly stock: number;
  readonly times: number;
}

/** All ways to cut the lengths by so many patterns: how often each, those of one stock falling. */
export function* partitions(bars: Bars, patterns: number): Generator<Times[]> {
  const [first, ...others] = bars;
  if (first === undefined) {
    if (patterns === 0) yield [];
    return;
  }
  const [stock, lengths] = first;
  for (let own = 1; own <= Math.min(lengths, patterns - others.length); own++) {
    for (const times of falling(lengths, own, lengths)) {
      for (const rest of partitions(new Map(others), patterns - own)) {
        yield [...times.map((n) => ({ stock, times: n })), ...rest];
      }
    }
  }
}

/** A sum as so many whole numbers from 1 on, none larger than the one before. */
function* falling(sum: number, numbers: number, most: number): Generator<number[]> {
  if (numbers === 0) {
    if (sum === 0) yield [];
    return;
  }
  for (let n = Math.min(most, sum - numbers + 1); n * numbers >= sum; n--) {
    for (const rest of falling(sum - n, numbers - 1, n)) yield [n, ...rest];
  }
}

/** One of these ways by chance; undefined where there is none. */
export function drawnPartition(bars: Bars, patterns: number, random: Random): Times[] | undefined {
  const stocks = [...bars];
  const own = stocks.map(() => 1);
  const open = (): number[] => stocks.flatMap(([, lengths], i) => (at(own, i) < lengths ? [i] : []));
  if (patterns < stocks.length) return undefined;
  for (let left = patterns - stocks.length; left > 0; left--) {
    const some = open();
    if (some.length === 0) return undefined;
    const i = at(some, random.below(some.length));
    own[i] = at(own, i) + 1;
  }
  return stocks.flatMap(([stock, lengths], i) => {
    const ends = new Set([lengths]);
    while (ends.size < at(own, i)) ends.add(1 + random.below(lengths - 1));
    const sorted = [...ends].sort((a, b) => a - b);
    const times = sorted.map((end, k) => end - (k === 0 ? 0 : at(sorted, k - 1)));
    return times.sort((a, b) => b - a).map((n) => ({ stock, times: n }));
  });
}
