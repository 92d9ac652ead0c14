import { at } from "../../engine/at.ts";
import { upToStep } from "../../engine/best-bound.ts";
import { dualFeasible } from "../../engine/dual-feasible.ts";
import type { SheetModel } from "../plan/model.ts";

/** Area of the parts shared out to the stock of the least cost for its area. */
export function areaBound(model: SheetModel): number {
  let left = model.types.reduce((sum, t) => sum + t.need * t.area, 0);
  let cost = 0;
  const stocks = [...model.stocks].sort((a, b) => a.cost * b.w * b.h - b.cost * a.w * a.h);
  for (const s of stocks) {
    const sheets = Math.min(s.limit, left / (s.w * s.h));
    cost += sheets * s.cost;
    left -= sheets * s.w * s.h;
  }
  return upToStep(cost, model.costStep);
}

/** Pairs of dual-feasible functions, one for the widths and one for the heights; for one stock without end. */
export function dualFeasibleBound(model: SheetModel): number {
  if (model.stocks.length !== 1 || model.types.length === 0) return 0;
  const stock = at(model.stocks, 0);
  const anyTurn = model.types.some((t) => t.turns);
  if (anyTurn && stock.w === stock.h) return upToStep(squareTurning(model, stock.w) * stock.cost, model.costStep);
  const n = model.types.length;
  const xs = model.types.flatMap((t) => (anyTurn ? [t.w, t.h] : [t.w]));
  const ys = model.types.flatMap((t) => (anyTurn ? [t.h, t.w] : [t.h]));
  const per = anyTurn ? 2 : 1;
  const fs = dualFeasible(xs, repeated(model, xs, per), stock.w);
  const gs = dualFeasible(ys, repeated(model, ys, per), stock.h);
  let best = 0;
  for (const f of fs) {
    for (const g of gs) {
      let sum = 0;
      for (let i = 0; i < n; i++) {
        const t = at(model.types, i);
        let v = (f[i * per] as number) * (g[i * per] as number);
        if (t.turns) v = Math.min(v, (f[i * per + 1] as number) * (g[i * per + 1] as number));
        sum += t.need * v;
      }
      if (sum > best) best = sum;
    }
  }
  return upToStep(best * stock.cost, model.costStep);
}

/** On a square sheet the mean of f(w) g(h) and f(h) g(w) is the same for both ways of laying a part. */
function squareTurning(model: SheetModel, side: number): number {
  const sizes = model.types.flatMap((t) => [t.w, t.h]);
  const fs = dualFeasible(sizes, repeated(model, sizes, 2), side);
  let best = 0;
  for (let a = 0; a < fs.length; a++) {
    for (let b = a; b < fs.length; b++) {
      const f = at(fs, a);
      const g = at(fs, b);
      let sum = 0;
      for (let i = 0; i < model.types.length; i++) {
        sum +=
          at(model.types, i).need *
          ((f[2 * i] as number) * (g[2 * i + 1] as number) + (f[2 * i + 1] as number) * (g[2 * i] as number));
      }
      if (sum > best) best = sum;
    }
  }
  return best / 2;
}

/** Each size as often as its parts are needed, ascending. */
function repeated(model: SheetModel, sizes: readonly number[], per: number): Float64Array {
  return Float64Array.from(
    sizes.flatMap((x, i) => new Array<number>(at(model.types, Math.floor(i / per)).need).fill(x)),
  ).sort();
}
