import { at } from "../../engine/at.ts";

/** Three parts of the pool go into a length together only while there are no more sets than this. */
const MOST_SETS = 2500;

/** The sets of up to three parts of a pool, by length: what may go into a cut length at one time. */
export interface PartSets {
  /** total length of each set, ascending; the first is the empty set */
  readonly sums: Int32Array;
  /** three types for each set; -1 where it has fewer */
  readonly types: Int32Array;
}

/**
 * Sets of up to three parts, or of two where the pool is large; equal sets once.
 * @param pool types of the parts
 * @param sizes length of each type
 * @param longest sets longer than this are left out
 */
export function partSets(pool: readonly number[], sizes: Int32Array, longest: number): PartSets {
  const sorted = Int32Array.from(pool).sort();
  const n = sorted.length;
  const triples = (n * n * n) / 6 <= MOST_SETS;
  const list: number[] = [];
  const sums: number[] = [];
  const put = (sum: number, a: number, b: number, c: number): void => {
    sums.push(sum);
    list.push(a, b, c);
  };
  put(0, -1, -1, -1);
  const repeats = (i: number, from: number): boolean => i > from && sorted[i - 1] === sorted[i];
  for (let i = 0; i < n; i++) {
    if (repeats(i, 0)) continue;
    const a = sorted[i] as number;
    const one = sizes[a] as number;
    put(one, a, -1, -1);
    for (let j = i + 1; j < n; j++) {
      const b = sorted[j] as number;
      const two = one + (sizes[b] as number);
      if (two > longest || repeats(j, i + 1)) continue;
      put(two, a, b, -1);
      if (!triples) continue;
      for (let k = j + 1; k < n; k++) {
        const c = sorted[k] as number;
        const three = two + (sizes[c] as number);
        if (three <= longest && !repeats(k, j + 1)) put(three, a, b, c);
      }
    }
  }
  // Sum and place in one number each, so that they sort as plain numbers.
  const order = Float64Array.from(sums, (sum, i) => sum * sums.length + i).sort();
  const ascending = new Int32Array(sums.length);
  const types = new Int32Array(list.length);
  order.forEach((key, to) => {
    const from = key % sums.length;
    ascending[to] = at(sums, from);
    for (let k = 0; k < 3; k++) types[3 * to + k] = at(list, 3 * from + k);
  });
  return { sums: ascending, types };
}

/** Place of the longest set that fits. */
export function longestThatFits({ sums }: PartSets, room: number): number {
  let low = 0;
  let high = sums.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((sums[middle] as number) <= room) low = middle;
    else high = middle - 1;
  }
  return low;
}
