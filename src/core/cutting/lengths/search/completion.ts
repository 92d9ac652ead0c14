import { at } from "../../engine/at.ts";
import type { Effort } from "../../engine/effort.ts";
import type { Column } from "../../engine/master.ts";
import type { LengthModel } from "../model/model.ts";
import { lengthColumn } from "../model/pricing.ts";

/** Steps before a search gives up, unless the caller sets them. */
const MOST_STEPS = 40_000;
/** Rests of more pieces than this are left to the other methods. */
const MOST_PIECES = 40;

/**
 * Cuts a small rest from a given number of lengths of the one stock there is, or shows within its steps that it finds no way: length by length, each with
 * the longest part left and a set of others that leaves no more waste than all lengths together may (bin completion,
 * R. Korf, AAAI 2002).
 * @param pieces lengths that may be used
 * @param most steps before the search gives up
 * @returns the columns, or undefined
 */
export function completeLengths(
  model: LengthModel,
  needs: readonly number[],
  pieces: number,
  effort: Effort,
  most = MOST_STEPS,
): Column[] | undefined {
  const stock = model.stocks[0];
  if (model.stocks.length !== 1 || stock === undefined || pieces < 1 || pieces > MOST_PIECES) return undefined;
  const { size, cost } = stock;
  const left = Int32Array.from(needs);
  const sizes = Int32Array.from(model.types, (t) => t.size);
  const demand = left.reduce((sum, n, i) => sum + n * (sizes[i] as number), 0);
  if (demand > pieces * size) return undefined;
  const counts = new Int32Array(left.length);
  const columns: Column[] = [];
  let steps = 0;

  /** The first type from `from` on that is no longer than a room. */
  const firstWithin = (room: number, from: number): number => {
    let low = from;
    let high = sizes.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((sizes[middle] as number) <= room) high = middle;
      else low = middle + 1;
    }
    return low;
  };

  /** Starts the next length with the longest part left. */
  const open = (from: number, free: number, waste: number): boolean => {
    let first = from;
    while (first < left.length && left[first] === 0) first++;
    if (first === left.length) return true;
    if (free === 0) return false;
    const kept = counts.slice();
    counts.fill(0);
    left[first] = (left[first] as number) - 1;
    counts[first] = 1;
    const done = fill(first, first, size - (sizes[first] as number), free, waste);
    if (!done) {
      left[first] = (left[first] as number) + 1;
      counts.set(kept);
    }
    return done;
  };

  /** Adds parts, long ones first, until none fits; then goes on with the next length. */
  const fill = (first: number, from: number, room: number, free: number, waste: number): boolean => {
    let closed = true;
    for (let i = firstWithin(room, from); i < left.length; i++) {
      const s = sizes[i] as number;
      if (left[i] === 0) continue;
      if (++steps > most) return false;
      closed = false;
      left[i] = (left[i] as number) - 1;
      counts[i] = (counts[i] as number) + 1;
      const done = fill(first, i, room - s, free, waste);
      if (done) return true;
      left[i] = (left[i] as number) + 1;
      counts[i] = (counts[i] as number) - 1;
    }
    // Where a part still fits, a length with it is no worse than one closed here, and was tried.
    if (!closed || room > waste) return false;
    const column = lengthColumn(0, cost, counts);
    columns.push(column);
    if (open(first, free - 1, waste - room)) return true;
    columns.pop();
    counts.fill(0);
    column.types.forEach((t, k) => {
      counts[t] = at(column.counts, k);
    });
    return false;
  };

  const found = open(0, pieces, pieces * size - demand);
  effort.spend(steps * 8);
  return found ? columns : undefined;
}
