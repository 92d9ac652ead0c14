import { at } from "../../engine/at.ts";
import { upToStep } from "../../engine/best-bound.ts";
import { dualFeasible } from "../../engine/dual-feasible.ts";
import type { LengthModel } from "../model/model.ts";

/** Length of the parts shared out to the stock of the least cost for its length. */
export function materialBound(model: LengthModel): number {
  let left = model.types.reduce((sum, t) => sum + t.need * t.size, 0);
  let cost = 0;
  for (const s of [...model.stocks].sort((a, b) => a.cost * b.size - b.cost * a.size)) {
    const pieces = Math.min(s.limit, left / s.size);
    cost += pieces * s.cost;
    left -= pieces * s.size;
  }
  return upToStep(cost, model.costStep);
}

/** The best single dual-feasible function; for one stock without end. */
export function dualFeasibleLengthBound(model: LengthModel): number {
  if (model.stocks.length !== 1 || model.types.length === 0) return 0;
  const { size, cost } = at(model.stocks, 0);
  const sizes = model.types.map((t) => t.size);
  const all = Float64Array.from(model.types.flatMap((t) => new Array<number>(t.need).fill(t.size))).sort();
  let best = 0;
  for (const f of dualFeasible(sizes, all, size)) {
    best = Math.max(
      best,
      model.types.reduce((sum, t, i) => sum + t.need * (f[i] as number), 0),
    );
  }
  return upToStep(best * cost, model.costStep);
}
