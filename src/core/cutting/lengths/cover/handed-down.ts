import { at } from "../../engine/at.ts";
import type { Column } from "../../engine/master.ts";
import type { LengthModel } from "../model/model.ts";
import { lengthColumn } from "../model/pricing.ts";

/**
 * A plan for just the parts from one whose parts are long enough: the places, the longest first, are given to the parts,
 * the longest first; what is over is left out.
 */
export function handedDown(model: LengthModel, columns: readonly Column[]): Column[] {
  const left = model.types.map((t) => t.need);
  const places = columns
    .flatMap((c, column) =>
      c.types.flatMap((t, k) => new Array<{ column: number; t: number }>(at(c.counts, k)).fill({ column, t })),
    )
    .sort((a, b) => a.t - b.t || a.column - b.column);
  const counts = columns.map(() => new Int32Array(model.types.length));
  let next = 0;
  for (const { column } of places) {
    while (next < left.length && at(left, next) === 0) next++;
    if (next === left.length) break;
    left[next] = at(left, next) - 1;
    const own = at(counts, column);
    own[next] = at(own, next) + 1;
  }
  return columns.map((c, i) => lengthColumn(c.stock, c.cost, at(counts, i))).filter((c) => c.types.length > 0);
}
