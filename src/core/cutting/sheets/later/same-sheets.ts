import type { Layout } from "../plan/layout.ts";
import type { PartType, SheetModel } from "../plan/model.ts";

/**
 * The problem of laying parts on no other sheets than those of the layouts: they cost nothing and are as many as there
 * are; what finds no place is on a stand-in that costs 1.
 */
export function onSameSheets(model: SheetModel, types: readonly PartType[], sheets: readonly Layout[]): SheetModel {
  const total = types.reduce((sum, t) => sum + t.need, 0);
  const stocks = model.stocks.map((s, i) => ({ ...s, cost: 0, limit: sheets.filter((l) => l.stock === i).length }));
  const side = Math.max(...[...types, ...stocks].flatMap((t) => [t.w, t.h]));
  const standIn = { w: side, h: side, cost: 1, price: 0, trim: 0, limit: total, index: -1 };
  return { ...model, types, total, costStep: 1, stocks: [...stocks, standIn] };
}

/** How many of each type the layouts hold. */
export function partsOn(model: SheetModel, layouts: readonly Layout[]): number[] {
  const counts = model.types.map(() => 0);
  for (const l of layouts) for (const p of l.placed) counts[p.type] = (counts[p.type] ?? 0) + 1;
  return counts;
}
