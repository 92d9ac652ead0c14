import { at } from "../../engine/at.ts";
import { gcd } from "../../engine/sixty-fourths.ts";
import type { Demand } from "./demand.ts";

/** A pattern whose parts are to be found: how often it is cut, and the length that its parts may take. */
export interface Blank {
  readonly times: number;
  readonly room: number;
}

export interface Shared {
  /** how many of each type of the demand each pattern holds, pattern after pattern */
  readonly counts: Int32Array | undefined;
  readonly steps: number;
  /** nothing was found, and nothing was left out */
  readonly none: boolean;
}

/**
 * Shares parts out to patterns so that each type is cut just as often as it is needed: type after type, the longest first,
 * pattern after pattern. A branch ends where what can no longer be filled adds up to more than is left over.
 * @param limit steps before it gives up
 */
export function shareOut(demand: Demand, blanks: readonly Blank[], limit: number): Shared {
  const n = blanks.length;
  const kinds = demand.types.length;
  const spare = blanks.reduce((sum, b) => sum + b.times * b.room, 0) - demand.length;
  if (spare < 0) return { counts: undefined, steps: 0, none: true };
  const times = Int32Array.from(blanks, (b) => b.times);
  const rooms = Int32Array.from(blanks, (b) => b.room);
  const fills = blanks.map((b) => demand.fills(b.times));
  const counts = new Int32Array(n * kinds);
  /** largest number that divides how often each of the patterns from `p` on is cut */
  const common = new Int32Array(n + 1);
  for (let p = n - 1; p >= 0; p--) common[p] = gcd(times[p] as number, common[p + 1] as number);
  /** for each type when its turn comes: what the patterns from `p` on can hold of it, and waste at least */
  const holds = new Int32Array((n + 1) * kinds);
  const wastes = new Int32Array((n + 1) * kinds);
  /** for each type when its turn comes: whether a pattern is the twin of the one before so far; it then holds no more */
  const twins = new Uint8Array(n * (kinds + 1));
  for (let p = 1; p < n; p++) {
    twins[p] = Number(times[p] === times[p - 1] && rooms[p] === rooms[p - 1]);
  }
  let steps = 0;

  const wasteOf = (k: number, p: number, room: number): number =>
    (times[p] as number) * (room - demand.fill(at(fills, p), k, room));

  const alike = (k: number, p: number): boolean => counts[p * kinds + k] === counts[(p - 1) * kinds + k];

  const begin = (k: number): boolean => {
    if (k === kinds) return true;
    const size = demand.sizes[k] as number;
    const from = k * (n + 1);
    for (let p = n - 1; p >= 0; p--) {
      const room = rooms[p] as number;
      holds[from + p] = (holds[from + p + 1] as number) + (times[p] as number) * Math.floor(room / size);
      wastes[from + p] = (wastes[from + p + 1] as number) + wasteOf(k, p, room);
      if (k > 0 && p > 0) twins[k * n + p] = Number(twins[(k - 1) * n + p] === 1 && alike(k - 1, p));
    }
    return (wastes[from] as number) <= spare && share(k, 0, demand.needs[k] as number, 0);
  };

  /** Shares the rest of the `k`-th type out to the patterns from `p` on; those before waste so much. */
  const share = (k: number, p: number, left: number, wasted: number): boolean => {
    if (p === n) return left === 0 && begin(k + 1);
    if (++steps > limit || left % (common[p] as number) !== 0) return false;
    const size = demand.sizes[k] as number;
    const often = times[p] as number;
    const room = rooms[p] as number;
    const next = k * (n + 1) + p + 1;
    const others = holds[next] as number;
    const free = spare - wasted - (wastes[next] as number);
    const place = p * kinds + k;
    const most = twins[k * n + p] === 1 ? (counts[place - kinds] as number) : Number.POSITIVE_INFINITY;
    for (let each = Math.min(most, Math.floor(left / often), Math.floor(room / size)); each >= 0; each--) {
      if (left - each * often > others) break;
      const waste = wasteOf(k + 1, p, room - each * size);
      if (waste > free) continue;
      counts[place] = each;
      rooms[p] = room - each * size;
      if (share(k, p + 1, left - each * often, wasted + waste)) return true;
    }
    counts[place] = 0;
    rooms[p] = room;
    return false;
  };

  const found = begin(0);
  return { counts: found ? counts : undefined, steps, none: !found && steps <= limit };
}
