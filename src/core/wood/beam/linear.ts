/**
 * Solves a small system of linear equations by elimination with row exchanges.
 * @param rows coefficients, one row an equation; square and not singular
 */
export function solveLinear(rows: readonly (readonly number[])[], rights: readonly number[]): number[] {
  const n = rights.length;
  const a = rows.map((row, i) => [...row, rights[i] ?? 0]);
  for (let k = 0; k < n; k++) {
    exchange(a, k);
    const pivot = a[k] as number[];
    for (let i = k + 1; i < n; i++) {
      const row = a[i] as number[];
      const share = (row[k] as number) / (pivot[k] as number);
      for (let j = k; j <= n; j++) row[j] = (row[j] as number) - share * (pivot[j] as number);
    }
  }
  return backward(a, n);
}

/** Brings the row with the largest entry in column k to place k. */
function exchange(a: number[][], k: number): void {
  let best = k;
  for (let i = k + 1; i < a.length; i++) {
    if (Math.abs(a[i]?.[k] ?? 0) > Math.abs(a[best]?.[k] ?? 0)) best = i;
  }
  const row = a[best] as number[];
  a[best] = a[k] as number[];
  a[k] = row;
}

function backward(a: readonly number[][], n: number): number[] {
  const x = new Array<number>(n).fill(0);
  for (let i = n - 1; i >= 0; i--) {
    const row = a[i] as number[];
    let rest = row[n] as number;
    for (let j = i + 1; j < n; j++) rest -= (row[j] as number) * (x[j] as number);
    x[i] = rest / (row[i] as number);
  }
  return x;
}
