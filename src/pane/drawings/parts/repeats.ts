/** Things that are alike, shown once. */

export interface Repeat<T> {
  /** the first of them */
  readonly item: T;
  readonly count: number;
}

/** Items with equal keys taken together, in the order of the first of each. */
export function repeats<T>(items: readonly T[], key: (item: T) => string): readonly Repeat<T>[] {
  const found = new Map<string, { item: T; count: number }>();
  for (const item of items) {
    const same = found.get(key(item));
    if (same === undefined) found.set(key(item), { item, count: 1 });
    else same.count += 1;
  }
  return [...found.values()];
}

/** Ascending numbers in words: 1, 3 to 5, 8 */
export function numberRuns(numbers: readonly number[]): string {
  const runs: { from: number; to: number }[] = [];
  for (const n of numbers) {
    const last = runs.at(-1);
    if (last !== undefined && n === last.to + 1) last.to = n;
    else runs.push({ from: n, to: n });
  }
  return runs
    .map(({ from, to }) => (from === to ? `${from}` : to === from + 1 ? `${from}, ${to}` : `${from} to ${to}`))
    .join(", ");
}

/** "Sheet 3" or "Sheets 1 to 4 (4 alike)" */
export function numbered(one: string, many: string, numbers: readonly number[]): string {
  return numbers.length === 1 ? `${one} ${numbers[0]}` : `${many} ${numberRuns(numbers)} (${numbers.length} alike)`;
}
