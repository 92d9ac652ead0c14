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
export function partSets(pool: readonly number[], sizes: ArrayLike<number>, longest: number): PartSets {
  const sorted = [...pool].sort((a, b) => a - b);
  const n = sorted.length;
  const triples = (n * n * n) / 6 <= MOST_SETS;
  const list: [sum: number, a: number, b: number, c: number][] = [[0, -1, -1, -1]];
  const repeats = (i: number, from: number): boolean => i > from && sorted[i - 1] === sorted[i];
  for (let i = 0; i < n; i++) {
    if (repeats(i, 0)) continue;
    const a = sorted[i]!;
    const one = sizes[a]!;
    list.push([one, a, -1, -1]);
    for (let j = i + 1; j < n; j++) {
      const b = sorted[j]!;
      const two = one + sizes[b]!;
      if (two > longest || repeats(j, i + 1)) continue;
      list.push([two, a, b, -1]);
      if (!triples) continue;
      for (let k = j + 1; k < n; k++) {
        const c = sorted[k]!;
        const three = two + sizes[c]!;
        if (three <= longest && !repeats(k, j + 1)) list.push([three, a, b, c]);
      }
    }
  }
  list.sort((x, y) => x[0] - y[0]);
  const types = new Int32Array(list.length * 3);
  list.forEach(([, ...set], i) => {
    types.set(set, 3 * i);
  });
  return { sums: Int32Array.from(list, (x) => x[0]), types };
}

/** Place of the longest set that fits. */
export function longestThatFits({ sums }: PartSets, room: number): number {
  let low = 0;
  let high = sums.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (sums[middle]! <= room) low = middle;
    else high = middle - 1;
  }
  return low;
}
