import type { Pricer } from "./column-generation.ts";
import { dualFeasible } from "./dual-feasible.ts";
import { GuillotinePricer } from "./guillotine-pricing.ts";
import type { SheetModel } from "./sheet-model.ts";
import { Stairs } from "./stairs.ts";
import { SubsetPricer, type Weights } from "./subset-pricing.ts";

/** Sheets that give more parts than this on average are not priced set by set. */
const MOST_PER_SHEET = 9;
/** Dynamic programming over the sheet is used up to this many steps a round. */
const MOST_PRICING_WORK = 6e6;

/** Parts that the largest sheet gives by area. */
export function partsPerSheet(model: SheetModel): number {
  const area = model.types.reduce((sum, t) => sum + t.need * t.area, 0);
  const sheet = Math.max(...model.stocks.filter((s) => s.index >= 0).map((s) => s.w * s.h));
  return (sheet * model.total) / area;
}

/** The pricing that suits the problem: by the raster where parts repeat, by sets where a sheet holds few; or none. */
export function sheetPricer(model: SheetModel): Pricer | undefined {
  if (model.types.length === 0) return undefined;
  const raster = new GuillotinePricer(model);
  const repeats = model.total / model.types.length;
  const per = partsPerSheet(model);
  if (repeats >= 3 && raster.work <= MOST_PRICING_WORK) return raster;
  if (per <= MOST_PER_SHEET) return new SubsetPricer(model, new Stairs(model), weightSystems(model));
  return raster.work <= MOST_PRICING_WORK && repeats >= 2 ? raster : undefined;
}

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
    let most = model.types.reduce((sum, t, i) => sum + t.need * area[i]!, 0);
    for (const f of fs) {
      for (const g of gs) {
        let sum = 0;
        for (let i = 0; i < xs.length; i++) sum += model.types[i]!.need * f[i]! * g[i]!;
        if (sum > most + 1e-9) {
          most = sum;
          best = Float64Array.from(xs, (_, i) => f[i]! * g[i]!);
        }
      }
    }
    return best === area ? [area] : [best, area];
  });
}
