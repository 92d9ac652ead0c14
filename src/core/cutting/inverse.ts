/** A pivot smaller than this counts as 0. */
const LEAST_PIVOT = 1e-9;

/**
 * The inverse of a square matrix by Gauss and Jordan with partial pivoting, row by row; undefined where it has none.
 * @param column row and entry of each place of a column that is not 0
 */
export function inverseOf(
  m: number,
  column: (c: number) => readonly (readonly [number, number])[],
): Float64Array | undefined {
  const a = new Float64Array(m * m);
  const out = new Float64Array(m * m);
  for (let c = 0; c < m; c++) {
    for (const [row, entry] of column(c)) a[row * m + c] = entry;
    out[c * m + c] = 1;
  }
  for (let c = 0; c < m; c++) {
    let best = c;
    for (let r = c + 1; r < m; r++) if (Math.abs(a[r * m + c]!) > Math.abs(a[best * m + c]!)) best = r;
    const pivot = a[best * m + c]!;
    if (Math.abs(pivot) < LEAST_PIVOT) return undefined;
    for (let i = 0; i < m; i++) {
      swap(a, best * m + i, c * m + i);
      swap(out, best * m + i, c * m + i);
      a[c * m + i]! /= pivot;
      out[c * m + i]! /= pivot;
    }
    for (let r = 0; r < m; r++) {
      const f = a[r * m + c]!;
      if (r === c || f === 0) continue;
      for (let i = 0; i < m; i++) {
        a[r * m + i]! -= f * a[c * m + i]!;
        out[r * m + i]! -= f * out[c * m + i]!;
      }
    }
  }
  return out;
}

function swap(a: Float64Array, i: number, j: number): void {
  const kept = a[i]!;
  a[i] = a[j]!;
  a[j] = kept;
}
