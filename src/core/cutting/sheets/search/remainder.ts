import { at } from "../../engine/at.ts";
import type { SheetModel } from "../plan/model.ts";

/** The same problem for fewer parts and less stock. */
export function remainder(model: SheetModel, needs: readonly number[], limits: readonly number[]): SheetModel {
  return {
    ...model,
    types: model.types.map((t, i) => ({ ...t, need: at(needs, i) })),
    stocks: model.stocks.map((s, i) => ({ ...s, limit: at(limits, i) })),
    total: needs.reduce((sum, n) => sum + n, 0),
  };
}
