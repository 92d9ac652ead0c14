import type { Random } from "../../../kit/random.ts";
import { at } from "../../engine/at.ts";
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

/** One way to go about it: parts and stocks in their order, rule of fit and rule of split. */
interface Way {
  readonly order: readonly number[];
  readonly stocks: readonly number[];
  readonly fit: number;
  readonly split: number;
}

/** The constructive start: every order of the parts with every rule of fit, of split and of stock; the cheapest wins. */
export function startSheets(model: SheetModel, effort: Effort, random: Random): Packing {
  const fill = new SheetFill(model);
  let best: Packing | undefined;
  for (const way of ways(model)) {
    if (best && !effort.spend(fill.looked + model.total)) break;
    const packing = construct(model, fill, way, random);
    if (!best || packing.cost < best.cost) best = packing;
  }
  return best ?? { layouts: [], cost: 0 };
}

function* ways({ types, stocks: all }: SheetModel): Generator<Way> {
  for (const rule of all.length > 1 ? STOCK_RULES : STOCK_RULES.slice(0, 1)) {
    const isStandIn = (s: { readonly index: number }): number => Number(s.index < 0);
    const stocks = sortedBy(all, rule);
    stocks.sort((a, b) => isStandIn(at(all, a)) - isStandIn(at(all, b)));
    for (const key of ORDERS) {
      const order = sortedBy(types, (t) => -key(t));
      for (let fit = 0; fit < FIT_RULES; fit++) {
        for (let split = 0; split < SPLIT_RULES; split++) yield { order, stocks, fit, split };
      }
    }
  }
}

/** The numbers of the entries, the least key first. */
const sortedBy = <T>(all: readonly T[], key: (entry: T) => number): number[] =>
  all.map((_, i) => i).sort((a, b) => key(at(all, a)) - key(at(all, b)) || a - b);

function construct(model: SheetModel, fill: SheetFill, way: Way, random: Random): Packing {
  const { order, stocks, fit, split } = way;
  fill.reset();
  const used = model.stocks.map(() => 0);
  let cost = 0;
  for (const type of order) {
    const part = at(model.types, type);
    for (let n = part.need; n > 0; n--) {
      if (fill.place(type, fit, split, random)) continue;
      const takes = (s: number): boolean => at(used, s) < at(model.stocks, s).limit && fits(part, at(model.stocks, s));
      const stock = at(stocks, stocks.findIndex(takes));
      used[stock] = at(used, stock) + 1;
      cost += at(model.stocks, stock).cost;
      fill.open(stock);
      fill.place(type, fit, split, random);
    }
  }
  return { layouts: fill.layouts(), cost };
}
