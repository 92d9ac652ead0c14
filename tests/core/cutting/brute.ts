/** Answers by trying everything, for cases of a few parts: they share no code with the engine. */

export interface BruteStock {
  readonly cost: number;
  /** how many there are; as many as parts where left out */
  readonly limit?: number;
}

/**
 * Least cost to cut all parts, by going through all ways to share them out to pieces of stock.
 * @param n number of parts, each by itself
 * @param holds whether one piece of stock gives the parts of a set (a mask)
 * @returns undefined where the stock does not suffice
 */
export function leastCost(
  n: number,
  stocks: readonly BruteStock[],
  holds: (mask: number, stock: number) => boolean,
): number | undefined {
  const known = new Map<string, number>();
  const go = (left: number, used: readonly number[]): number => {
    if (left === 0) return 0;
    const key = `${left} ${used}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    const low = left & -left;
    let best = Number.POSITIVE_INFINITY;
    // each set of the parts left that holds the first of them
    for (let rest = left ^ low; ; rest = (rest - 1) & (left ^ low)) {
      stocks.forEach((s, i) => {
        if (used[i]! >= (s.limit ?? n) || !holds(rest | low, i)) return;
        const next = used.map((u, k) => (k === i ? u + 1 : u));
        best = Math.min(best, s.cost + go(left ^ (rest | low), next));
      });
      if (rest === 0) break;
    }
    known.set(key, best);
    return best;
  };
  const cost = go(
    2 ** n - 1,
    stocks.map(() => 0),
  );
  return Number.isFinite(cost) ? cost : undefined;
}

/** Whether lengths fit one stock length, a kerf between any two. */
export function fitsLength(lengths: readonly number[], mask: number, stock: number, kerf: number): boolean {
  let sum = -kerf;
  lengths.forEach((l, i) => {
    if (mask & (1 << i)) sum += l + kerf;
  });
  return sum <= stock;
}

export interface BrutePart {
  readonly w: number;
  readonly h: number;
  readonly turns: boolean;
}

/**
 * Whether a sheet gives the parts of a set by cuts edge to edge, no kerf: all divisions into two sets and all whole places of the first cut.
 * @param stages most directions of cuts one after the other; the cut that trims a part alone is not counted; so many parts need no more than as many
 */
export function guillotine(
  parts: readonly BrutePart[],
  stages = parts.length,
): (mask: number, w: number, h: number) => boolean {
  const known = new Map<string, boolean>();
  const look = (mask: number, w: number, h: number, along: boolean, left: number): boolean => {
    const key = `${mask} ${w} ${h} ${along} ${left}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    const found = (mask & (mask - 1)) === 0 ? alone(parts[Math.log2(mask)]!, w, h) : divided(mask, w, h, along, left);
    known.set(key, found);
    return found;
  };
  const divided = (mask: number, w: number, h: number, along: boolean, left: number): boolean => {
    if (left === 0) return false;
    if (left > 1 && look(mask, w, h, !along, left - 1)) return true;
    for (let a = (mask - 1) & mask; a > 0; a = (a - 1) & mask) {
      for (let at = 1; at < (along ? h : w); at++) {
        const first = along ? look(a, w, at, !along, left - 1) : look(a, at, h, !along, left - 1);
        if (first && (along ? look(mask ^ a, w, h - at, along, left) : look(mask ^ a, w - at, h, along, left)))
          return true;
      }
    }
    return false;
  };
  return (mask, w, h) => {
    const area = parts.reduce((sum, p, i) => sum + (mask & (1 << i) ? p.w * p.h : 0), 0);
    return area <= w * h && (look(mask, w, h, false, stages) || look(mask, w, h, true, stages));
  };
}

const alone = (p: BrutePart, w: number, h: number): boolean =>
  (p.w <= w && p.h <= h) || (p.turns && p.h <= w && p.w <= h);

/** The most that parts are worth that fit into a capacity, no more of each than there are. */
export function knapsack(
  sizes: readonly number[],
  most: readonly number[],
  values: ArrayLike<number>,
  room: number,
  from = 0,
): number {
  if (from === sizes.length) return 0;
  let best = 0;
  for (let n = 0; n <= most[from]! && n * sizes[from]! <= room; n++) {
    best = Math.max(best, n * values[from]! + knapsack(sizes, most, values, room - n * sizes[from]!, from + 1));
  }
  return best;
}
