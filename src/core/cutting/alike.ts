import type { LengthNesting, NestedLength } from "./lengths/model/types.ts";
import type { NestedSheet, SheetNesting } from "./sheets/plan/types.ts";

/** Pieces of stock that are cut alike. */
export interface Alike<T> {
  readonly of: T;
  /** their numbers in the plan, from 1 */
  readonly numbers: readonly number[];
}

/** Sheets of the same stock with the same parts in the same places, in the order of the plan. */
export const alikeSheets = (nesting: SheetNesting): readonly Alike<NestedSheet>[] => alike(nesting.sheets);

/** Lengths of the same stock with the same parts in the same places, in the order of the plan. */
export const alikeLengths = (nesting: LengthNesting): readonly Alike<NestedLength>[] => alike(nesting.lengths);

function alike<T>(all: readonly T[]): readonly Alike<T>[] {
  const groups = new Map<string, { of: T; numbers: number[] }>();
  all.forEach((of, i) => {
    const key = JSON.stringify(of);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, { of, numbers: [i + 1] });
    else group.numbers.push(i + 1);
  });
  return [...groups.values()];
}
