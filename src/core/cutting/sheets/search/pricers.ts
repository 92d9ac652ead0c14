import { at } from "../../engine/at.ts";
import { dualFeasible } from "../../engine/dual-feasible.ts";
import type { Pricer } from "../../engine/problem.ts";
import type { SheetModel } from "../plan/model.ts";
import { GuillotinePricer } from "./guillotine-pricing.ts";
import { Stairs } from "./stairs.ts";
import { SubsetPricer, type Weights } from "./subset-pricing.ts";

/** Sheets that give more parts than this on average are not priced set by set. */
const MOST_PER_SHEET = 9;
/** Dynamic programming over the sheet is used up to this many steps a round. */
const MOST_PRICING_WORK = 6e6;

/** Pieces of each part on average from which on they repeat much. */
const MANY_REPEATS = 3;

/** Parts that the largest sheet gives by area. */
export function partsPerSheet(model: SheetModel): number {
  const area = model.types.reduce((sum, t) => sum + t.need * t.area, 0);
  const sheet = Math.max(...model.stocks.filter((s) => s.index >= 0).map((s) => s.w * s.h));
  return (sheet * model.total) / area;
}

/** Pricing by the raster, with parts without limit of number, where its tables stay small. */
export function rasterPricer(model: SheetModel): Pricer | undefined {
  if (model.types.length === 0) return undefined;
  const raster = new GuillotinePricer(model);
  return raster.work <= MOST_PRICING_WORK ? raster : undefined;
}

/** Pricing set by set, where a sheet holds few parts. */
export function setPricer(model: SheetModel): Pricer | undefined {
  if (model.types.length === 0 || partsPerSheet(model) > MOST_PER_SHEET) return undefined;
  return new SubsetPricer(model, new Stairs(model), weightSystems(model));
}

/** Whether parts repeat so much that pricing without limit of number gives plans, too. */
export const repeatsMuch = (model: SheetModel): boolean => model.total >= MANY_REPEATS * model.types.length;

/** For each stock: the area, and the pair of dual-feasible functions that gives the highest bound. */
function weightSystems(model: SheetModel): Weights[][] {
  return model.stocks.map((s) => {
    const area = Float64Array.from(model.types, (t) => t.area / (s.w * s.h));
    if (s.index < 0) return [area];
    const turning = model.types.some((t) => t.turns);
    const xs = model.types.map((t) => Math.min(t.w, s.w));
    const ys = model.types.map((t) => Math.min(t.h, s.h));
    if (turning) return [area];
    const fs = dualFeasible(xs, Float64Array.from(xs).sort(), s.w);
    const gs = dualFeasible(ys, Float64Array.from(ys).sort(), s.h);
    let best = area;
    let most = model.types.reduce((sum, t, i) => sum + t.need * (area[i] as number), 0);
    for (const f of fs) {
      for (const g of gs) {
        let sum = 0;
        for (let i = 0; i < xs.length; i++) sum += at(model.types, i).need * (f[i] as number) * (g[i] as number);
        if (sum > most + 1e-9) {
          most = sum;
          best = Float64Array.from(xs, (_, i) => (f[i] as number) * (g[i] as number));
        }
      }
    }
    return best === area ? [area] : [best, area];
  });
}
