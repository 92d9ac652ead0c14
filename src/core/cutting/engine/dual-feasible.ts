import { at } from "./at.ts";

/**
 * Dual-feasible functions: any set of sizes that fits into the capacity keeps a total of at most 1 when each size x is
 * replaced by f(x). Families: S. Martello, P. Toth, Knapsack Problems (1990), L2; S. Fekete, J. Schepers, Math. Program.
 * 91 (2001) 11-31; J. Carlier, F. Clautiaux, A. Moukrim, Comput. Oper. Res. 34 (2007) 2223-2250; rounding of
 * C. Burdet, E. Johnson (1977) as stated in C. Alves, F. Clautiaux, J. Valerio de Carvalho, J. Rietz, Dual-Feasible
 * Functions (2016).
 */

/** More functions than this per direction are thinned out. */
const MOST = 400;

/** Drops the small, keeps the middle, counts the large as full. */
function threshold(k: number, x: number, c: number): number {
  return x > c - k ? c : x >= k ? x : 0;
}

/** Rounds down by k, and the complement up. */
function roundHalves(k: number, x: number, c: number): number {
  if (2 * x > c) return 2 * (Math.floor(c / k) - Math.floor((c - x) / k));
  return 2 * x === c ? Math.floor(c / k) : 2 * Math.floor(x / k);
}

/** Rounds to multiples of 1/(k + 1) of the capacity. */
function roundShares(k: number, x: number, c: number): number {
  return ((k + 1) * x) % c === 0 ? x * k : Math.floor(((k + 1) * x) / c) * c;
}

/** Rounds down by k, and lets what exceeds the remainder of the capacity count in proportion. */
function roundWithRest(k: number, x: number, c: number): number {
  const rest = c % k;
  return Math.floor(x / k) * (k - rest) + Math.max(0, (x % k) - rest);
}

/** Of the sizes from k to half the capacity each counts 1; a larger one counts those that it keeps out. */
function countSmall(k: number, sorted: Float64Array, c: number): (x: number) => number {
  const prefix: number[] = [];
  let sum = 0;
  for (const s of sorted) {
    if (s < k) continue;
    if (2 * s > c) break;
    sum += s;
    if (sum > c) break;
    prefix.push(sum);
  }
  const fit = (room: number): number => {
    let n = 0;
    while (n < prefix.length && at(prefix, n) <= room) n++;
    return n;
  };
  const all = fit(c);
  return (x) => (2 * x > c ? all - fit(c - x) : x >= k ? 1 : 0);
}

/**
 * The values of each size under each function, divided by the value of the capacity; equal rows once.
 * @param sizes distinct sizes, model units
 * @param all every size as often as it occurs, ascending (for the family that counts)
 */
export function dualFeasible(sizes: readonly number[], all: Float64Array, c: number): Float64Array[] {
  const rows = new Map<string, Float64Array>();
  const add = (f: (x: number) => number, cap: number): void => {
    if (!(cap > 0)) return;
    const row = Float64Array.from(sizes, (x) => f(x) / cap);
    if (row.some((v) => v > 0)) rows.set(row.join(), row);
  };
  add((x) => x, c);
  const points = new Set<number>();
  for (const x of sizes) {
    for (const k of [x, c - x, c - x + 1, x + 1, Math.floor(x / 2), Math.floor(x / 2) + 1]) points.add(k);
  }
  for (let j = 2; j <= 6; j++) points.add(Math.floor(c / j)).add(Math.floor(c / j) + 1);
  const ks = [...points].filter((k) => k >= 1 && k <= c).sort((a, b) => a - b);
  for (const k of ks) {
    if (2 * k <= c) {
      add((x) => threshold(k, x, c), c);
      add((x) => roundHalves(k, x, c), 2 * Math.floor(c / k));
      const counted = countSmall(k, all, c);
      add(counted, counted(c));
    }
    if (c % k !== k) add((x) => roundWithRest(k, x, c), Math.floor(c / k) * (k - (c % k)));
  }
  for (let k = 1; k <= 20; k++) add((x) => roundShares(k, x, c), c * k);
  const list = [...rows.values()];
  const step = Math.ceil(list.length / MOST);
  return list.filter((_, i) => i % step === 0);
}
