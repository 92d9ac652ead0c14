/** Levenshtein distance, with long names cut: no material's name is longer. */
export function editDistance(a: string, b: string): number {
  const left = a.slice(0, 40);
  const right = b.slice(0, 40);
  let row = Array.from({ length: right.length + 1 }, (_, i) => i);
  for (let i = 1; i <= left.length; i++) {
    const next = [i];
    for (let j = 1; j <= right.length; j++) {
      const cost = left[i - 1] === right[j - 1] ? 0 : 1;
      next.push(Math.min((row[j] ?? 0) + 1, (next[j - 1] ?? 0) + 1, (row[j - 1] ?? 0) + cost));
    }
    row = next;
  }
  return row[right.length] ?? 0;
}
