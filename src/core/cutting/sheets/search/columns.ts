import type { Random } from "../../../kit/random.ts";
import { at } from "../../engine/at.ts";
import type { Effort } from "../../engine/effort.ts";
import type { Layout, Packing, Placed } from "../plan/layout.ts";
import type { SheetModel } from "../plan/model.ts";
import { GoalSearch } from "./goal-search.ts";
import { type SheetColumn, sheetColumn } from "./guillotine-pricing.ts";
import { remainder } from "./remainder.ts";
import { startSheets } from "./start.ts";

export const toColumn = (model: SheetModel, l: Layout): SheetColumn =>
  sheetColumn(l.stock, at(model.stocks, l.stock).cost, l.placed);

/** Layouts of the columns without the parts that are more than needed. */
export function fromColumns(model: SheetModel, columns: readonly SheetColumn[]): Packing {
  const left = model.types.map((t) => t.need);
  const isNeeded = ({ type }: Placed): boolean => {
    left[type] = (left[type] ?? 0) - 1;
    return (left[type] ?? 0) >= 0;
  };
  const layouts = columns.map((c) => ({ stock: c.stock, placed: c.placed.filter(isNeeded) }));
  const used = layouts.filter((l) => l.placed.length > 0);
  return { layouts: used, cost: used.reduce((sum, l) => sum + at(model.stocks, l.stock).cost, 0) };
}

/** Cuts what a dive has left over by the constructive start and the goal-driven search, within a cost. */
export function cutRemainder(
  model: SheetModel,
  needs: readonly number[],
  limits: readonly number[],
  cost: number,
  random: Random,
  effort: Effort,
): SheetColumn[] | undefined {
  const rest = remainder(model, needs, limits);
  const start = startSheets(rest, effort.part(effort.remaining * 0.2), random);
  const found = new GoalSearch(rest, random).improve(start, cost, effort);
  return found.cost <= cost ? found.layouts.map((l) => toColumn(model, l)) : undefined;
}
