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
  const leftAt = new Int32Array(m);
  const rightAt = new Int32Array(m);
  for (let c = 0; c < m; c++) {
    for (const [row, entry] of column(c)) a[row * m + c] = entry;
    out[c * m + c] = 1;
  }
  for (let c = 0; c < m; c++) {
    let best = c;
    for (let r = c + 1; r < m; r++)
      if (Math.abs(a[r * m + c] as number) > Math.abs(a[best * m + c] as number)) best = r;
    const pivot = a[best * m + c] as number;
    if (Math.abs(pivot) < LEAST_PIVOT) return undefined;
    // Few entries of a basis are not 0: each row gathers where its own are before it is taken from the others.
    let left = 0;
    let right = 0;
    for (let i = 0; i < m; i++) {
      swap(a, best * m + i, c * m + i);
      swap(out, best * m + i, c * m + i);
      if (i >= c && a[c * m + i] !== 0) {
        a[c * m + i] = (a[c * m + i] as number) / pivot;
        leftAt[left++] = i;
      }
      if (out[c * m + i] !== 0) {
        out[c * m + i] = (out[c * m + i] as number) / pivot;
        rightAt[right++] = i;
      }
    }
    for (let r = 0; r < m; r++) {
      const f = a[r * m + c] as number;
      if (r === c || f === 0) continue;
      for (let k = 0; k < left; k++)
        a[r * m + (leftAt[k] as number)] =
          (a[r * m + (leftAt[k] as number)] as number) - f * (a[c * m + (leftAt[k] as number)] as number);
      for (let k = 0; k < right; k++)
        out[r * m + (rightAt[k] as number)] =
          (out[r * m + (rightAt[k] as number)] as number) - f * (out[c * m + (rightAt[k] as number)] as number);
    }
  }
  return out;
}

function swap(a: Float64Array, i: number, j: number): void {
  const kept = a[i] as number;
  a[i] = a[j] as number;
  a[j] = kept;
}
