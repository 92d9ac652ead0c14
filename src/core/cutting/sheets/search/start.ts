import type { Random } from "../../../kit/random.ts";
import type { Effort } from "../../engine/effort.ts";
import type { Packing } from "../plan/layout.ts";
import { fits, type PartType, type SheetModel } from "../plan/model.ts";
import { FIT_RULES, SheetFill, SPLIT_RULES } from "./fill.ts";

const ORDERS: readonly ((t: PartType) => number)[] = [
  (t) => t.area,
  (t) => Math.max(t.w, t.h),
  (t) => t.w,
  (t) => t.h,
  (t) => t.w + t.h,
  (t) => Math.min(t.w, t.h),
];

/** Ways to choose the stock of the next sheet: free first, then the best of these. */
const STOCK_RULES: readonly ((s: { w: number; h: number; cost: number }) => number)[] = [
  (s) => s.cost / (s.w * s.h),
  (s) => s.cost,
  (s) => -s.w * s.h,
];

/** The constructive start: every order of the parts with every rule of fit, of split and of stock; the cheapest wins. */
export function startSheets(model: SheetModel, effort: Effort, random: Random): Packing {
  const fill = new SheetFill(model);
  let best: Packing | undefined;
  const stockRules = model.stocks.length > 1 ? STOCK_RULES : STOCK_RULES.slice(0, 1);
  for (const stockRule of stockRules) {
    const stocks = model.stocks.map((_, i) => i);
    stocks.sort((a, b) => stockRule(model.stocks[a]!) - stockRule(model.stocks[b]!) || a - b);
    stocks.sort((a, b) => Number(model.stocks[a]!.index < 0) - Number(model.stocks[b]!.index < 0));
    for (const key of ORDERS) {
      const order = model.types.map((_, i) => i);
      order.sort((a, b) => key(model.types[b]!) - key(model.types[a]!) || a - b);
      for (let fit = 0; fit < FIT_RULES; fit++) {
        for (let split = 0; split < SPLIT_RULES; split++) {
          if (best && !effort.spend(fill.looked + model.total)) return best;
          const packing = construct(model, fill, order, stocks, fit, split, random);
          if (!best || packing.cost < best.cost) best = packing;
        }
      }
    }
  }
  return best!;
}

function construct(
  model: SheetModel,
  fill: SheetFill,
  order: readonly number[],
  stocks: readonly number[],
  fit: number,
  split: number,
  random: Random,
): Packing {
  fill.reset();
  const used = model.stocks.map(() => 0);
  let cost = 0;
  for (const type of order) {
    for (let n = model.types[type]!.need; n > 0; n--) {
      if (fill.place(type, fit, split, random)) continue;
      const stock = stocks.find(
        (s) => used[s]! < model.stocks[s]!.limit && fits(model.types[type]!, model.stocks[s]!),
      )!;
      used[stock]!++;
      cost += model.stocks[stock]!.cost;
      fill.open(stock);
      fill.place(type, fit, split, random);
    }
  }
  return { layouts: fill.layouts(), cost };
}
