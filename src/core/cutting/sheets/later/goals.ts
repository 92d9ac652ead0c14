import type { Random } from "../../../kit/random.ts";
import { at } from "../../engine/at.ts";
import type { Effort } from "../../engine/effort.ts";
import { rankedCosts } from "../../engine/ranked.ts";
import type { Layout, Packing } from "../plan/layout.ts";
import type { SheetModel } from "../plan/model.ts";
import { searchSheets } from "../search/search.ts";
import { planWithin } from "../search/stock-plans.ts";
import { fewerKinds } from "./kinds.ts";
import { keepOneLarge } from "./leftover.ts";
import { fewerTurns } from "./turns.ts";

/** Shares of the effort: price and size of the stock, the largest leftover, the ways to cut, the turns of the saw. */
const RANKED = 0.1;
const LEFTOVER = 0.06;
const KINDS = 0.04;
const TURNS = 0.02;

/** Layouts after all goals, and whether their stock is proven to be the best one. */
export interface SheetGoals {
  readonly layouts: readonly Layout[];
  readonly stockProven: boolean;
}

/**
 * The later goals, each without making an earlier one worse: price, size of the stock used, one large leftover, few
 * ways to cut, few turns of the saw.
 */
export function laterGoals(model: SheetModel, packing: Packing, effort: Effort, random: Random): SheetGoals {
  const whole = effort.remaining;
  const ranked = effort.stage(whole * RANKED, (e) => bestStock(model, packing, e, random));
  const large = effort.stage(whole * LEFTOVER, (e) => keepOneLarge(model, ranked.layouts, random, e));
  const few = effort.stage(whole * KINDS, (e) => fewerKinds(model, large, random, e));
  const layouts = effort.stage(whole * TURNS, (e) => fewerTurns(model, few, random, e));
  return { layouts, stockProven: ranked.stockProven };
}

function bestStock(model: SheetModel, packing: Packing, effort: Effort, random: Random): SheetGoals {
  const layouts = packing.layouts.filter((l) => l.placed.length > 0);
  if (model.stocks.filter((s) => s.index >= 0).length < 2) return { layouts, stockProven: true };
  const costs = rankedCosts(
    model.stocks.map((s) => ({ ...s, size: s.w * s.h })),
    layouts.map((l) => l.stock),
  );
  const cost = layouts.reduce((sum, l) => sum + at(costs, l.stock), 0);
  const ranked: SheetModel = {
    ...model,
    stocks: model.stocks.map((s, i) => ({ ...s, cost: s.index < 0 ? cost + 1 : at(costs, i) })),
    costStep: 1,
  };
  if (planWithin(ranked, cost - 1) === false) return { layouts, stockProven: true };
  const found = searchSheets(ranked, effort, random, false, { layouts, cost });
  return {
    layouts: found.packing.layouts.filter((l) => l.placed.length > 0),
    stockProven: found.packing.cost <= found.bound,
  };
}
