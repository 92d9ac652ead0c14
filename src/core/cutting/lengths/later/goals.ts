import type { Random } from "../../../kit/random.ts";
import { at } from "../../engine/at.ts";
import type { Effort } from "../../engine/effort.ts";
import type { Column } from "../../engine/master.ts";
import { rankedCosts } from "../../engine/ranked.ts";
import type { LengthModel } from "../model/model.ts";
import { searchLengths } from "../search/search.ts";
import type { Plan } from "../search/start.ts";
import { keepOneLong, longestRoom } from "./leftover.ts";
import { columnsOf, fewerPatterns, patternsOf } from "./patterns.ts";

/** Shares of the effort for the price of the stock, for its size alone, for the longest leftover, and for the patterns. */
const RANKED = 0.09;
const BY_SIZE = 0.015;
const LEFTOVER = 0.09;
const PATTERNS = 0.45;

/** A plan after all goals, and what is proven of them. */
export interface LengthGoals {
  readonly columns: readonly Column[];
  /** no other stock is better */
  readonly stockProven: boolean;
  /** the same stock leaves nothing longer */
  readonly leftoverProven: boolean;
  /** the same stock with this leftover is not cut in fewer ways */
  readonly patternsProven: boolean;
}

/**
 * The later goals, each without making an earlier one worse: price, size of the stock used, one long leftover, few
 * patterns.
 */
export function laterGoals(model: LengthModel, plan: Plan, effort: Effort, random: Random): LengthGoals {
  const whole = effort.remaining;
  const priced = model.stocks.some((s) => s.price > 0 && s.price !== s.cost);
  const ranked = effort.stage(whole * (priced ? RANKED : BY_SIZE), (e) =>
    bestStock(model, exactly(model, plan.columns), e, random),
  );
  const one = effort.stage(whole * LEFTOVER, (e) => keepOneLong(model, ranked.columns, e));
  const few = effort.stage(whole * PATTERNS, (e) =>
    fewerPatterns(model, patternsOf(model, one.columns), longestRoom(model, one.columns), random, e),
  );
  return {
    columns: columnsOf(model, few.patterns),
    stockProven: ranked.stockProven,
    leftoverProven: one.proven,
    patternsProven: few.proven,
  };
}

interface BestStock {
  readonly columns: readonly Column[];
  readonly stockProven: boolean;
}

function bestStock(model: LengthModel, columns: readonly Column[], effort: Effort, random: Random): BestStock {
  const real = model.stocks.filter((s) => s.index >= 0);
  if (real.length < 2) return { columns, stockProven: true };
  const costs = rankedCosts(
    model.stocks,
    columns.map((c) => c.stock),
  );
  const dear = columns.reduce((sum, c) => sum + at(costs, c.stock), 0) + 1;
  const ranked: LengthModel = {
    ...model,
    stocks: model.stocks.map((s, i) => ({ ...s, cost: s.index < 0 ? dear : at(costs, i) })),
    costStep: 1,
  };
  const known = columns.map((c) => ({ ...c, cost: at(ranked.stocks, c.stock).cost }));
  const found = searchLengths(ranked, effort, random, false, {
    columns: known,
    cost: known.reduce((sum, c) => sum + c.cost, 0),
  });
  return {
    columns: exactly(
      model,
      found.plan.columns.map((c) => ({ ...c, cost: at(model.stocks, c.stock).cost })),
    ),
    stockProven: found.plan.cost <= found.bound,
  };
}

/** The plan without parts that are more than needed, and without lengths that are then empty. */
function exactly(model: LengthModel, columns: readonly Column[]): Column[] {
  const left = model.types.map((t) => t.need);
  return columns
    .map((c) => {
      const counts = c.types.map((t, k) => {
        const n = Math.min(at(left, t), at(c.counts, k));
        left[t] = at(left, t) - n;
        return n;
      });
      return { ...c, types: c.types.filter((_, k) => at(counts, k) > 0), counts: counts.filter((n) => n > 0) };
    })
    .filter((c) => c.types.length > 0);
}
