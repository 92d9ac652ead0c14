import type { Random } from "../../../kit/random.ts";
import { at } from "../../engine/at.ts";
import type { Effort } from "../../engine/effort.ts";
import type { Layout, Packing } from "../plan/layout.ts";
import { fits, type SheetModel } from "../plan/model.ts";
import { BeamSearch } from "./beam-search.ts";

/** Sets of sheets kept, and sheets of one set at most, where sheets of several sizes are to be chosen. */
const MOST_PLANS = 24;
const MOST_SHEETS = 60;
/** Sets looked through for those. */
const MOST_LOOKED = 50_000;
/** How much narrower the beam of a set is than that of the set before it, which has more room for its parts. */
const RANK = 0.25;

/** Sheets that may be enough: stock of each, by number. */
export type StockPlan = readonly number[];

/**
 * The sets of sheets within a cost that have at least the area of the parts, those with most area first: in a set with
 * room to spare a layout is found sooner. A set is left out where another has the same sheets and more.
 */
function stockPlans(model: SheetModel, most: number): StockPlan[] {
  const area = model.types.reduce((sum, t) => sum + t.need * t.area, 0);
  const stocks = model.stocks.map((s, i) => ({ ...s, i, size: s.w * s.h })).filter((s) => s.index >= 0);
  const found: { plan: number[]; room: number }[] = [];
  let looked = 0;
  const choose = (from: number, plan: number[], cost: number, room: number): void => {
    if (++looked > MOST_LOOKED) return;
    const s = stocks[from];
    if (s === undefined) {
      const full =
        plan.length === MOST_SHEETS || stocks.every((k) => used(plan, k.i) === k.limit || cost + k.cost > most);
      if (full && room >= area && model.types.every((t) => plan.some((k) => fits(t, at(model.stocks, k))))) {
        found.push({ plan: [...plan], room });
      }
      return;
    }
    const before = plan.length;
    for (let n = 0; n <= s.limit && cost + n * s.cost <= most && plan.length <= MOST_SHEETS; n++) {
      choose(from + 1, plan, cost + n * s.cost, room + n * s.size);
      plan.push(s.i);
    }
    plan.length = before;
  };
  choose(0, [], 0, 0);
  return found
    .sort((a, b) => b.room - a.room)
    .slice(0, MOST_PLANS)
    .map((f) => f.plan);
}

/** Whether some sheets within a cost have exactly the area of the parts: then there may be a plan without any waste. */
export function mayFill(model: SheetModel, most: number): boolean {
  const stocks = model.stocks.filter((s) => s.index >= 0);
  let looked = 0;
  const fills = (from: number, cost: number, area: number): boolean => {
    if (area === 0) return true;
    const s = stocks[from];
    if (s === undefined || ++looked > MOST_LOOKED) return false;
    const size = s.w * s.h;
    for (let n = 0; n <= s.limit && cost + n * s.cost <= most && n * size <= area; n++) {
      if (fills(from + 1, cost + n * s.cost, area - n * size)) return true;
    }
    return false;
  };
  return fills(
    0,
    0,
    model.types.reduce((sum, t) => sum + t.need * t.area, 0),
  );
}

const used = (plan: readonly number[], stock: number): number => plan.filter((k) => k === stock).length;

/** Whether any sheets within a cost have room enough by area and take the largest parts; undefined: too many to look through. */
export function planWithin(model: SheetModel, most: number): boolean | undefined {
  const area = model.types.reduce((sum, t) => sum + t.need * t.area, 0);
  const stocks = model.stocks
    .filter((s) => s.index >= 0)
    .map((s) => ({ ...s, size: s.w * s.h }))
    .sort((a, b) => a.cost * b.size - b.cost * a.size);
  const chosen: boolean[] = [];
  let looked = 0;
  const holds = (from: number, cost: number, room: number): boolean => {
    const s = stocks[from];
    if (room >= area && model.types.every((t) => stocks.some((k, i) => chosen[i] === true && fits(t, k)))) return true;
    // the stock that is left is no cheaper for its area than this one
    if (s === undefined || (most - cost) * s.size < (area - room) * s.cost || ++looked > MOST_LOOKED) return false;
    const count = Math.min(s.limit, s.cost > 0 ? Math.floor((most - cost) / s.cost) : s.limit);
    for (let n = count; n >= 0; n--) {
      chosen[from] = n > 0;
      if (holds(from + 1, cost + n * s.cost, room + n * s.size)) return true;
    }
    return false;
  };
  const some = holds(0, 0, 0);
  return looked > MOST_LOOKED ? undefined : some;
}

/** A set of sheets and how far it was looked for. */
interface PlannedBeam {
  readonly plan: StockPlan;
  readonly search: BeamSearch;
  open: boolean;
}

/** Beams over the sets of sheets that would be an improvement, each in its turn. */
export class PlannedBeams {
  readonly #model: SheetModel;
  #beams: PlannedBeam[] = [];
  #most = Number.POSITIVE_INFINITY;

  constructor(model: SheetModel) {
    this.#model = model;
  }

  /** Looks for a packing that costs less; goes on with wider beams when called again. */
  reach(packing: Packing, random: Random, effort: Effort): Layout[] | undefined {
    const model = this.#model;
    const most = packing.cost - model.costStep;
    if (most !== this.#most) {
      this.#most = most;
      this.#beams = stockPlans(model, most).map((plan) => ({ plan, search: new BeamSearch(model), open: true }));
    }
    while (!effort.over) {
      let next: PlannedBeam | undefined;
      let least = Number.POSITIVE_INFINITY;
      for (const [rank, b] of this.#beams.entries()) {
        const width = b.search.width * (1 + RANK * rank);
        if (!b.open || width >= least) continue;
        least = width;
        next = b;
      }
      if (!next) return undefined;
      const layouts = next.search.reach(shuffled(next.plan, random), random, effort, 1);
      if (layouts) return layouts;
      next.open = next.search.narrow;
    }
    return undefined;
  }
}

/** Sheets of the largest size first, or in any order: which is filled first matters. */
function shuffled(plan: StockPlan, random: Random): StockPlan {
  const order = [...plan];
  if (random.unit() < 0.5) return order;
  for (let i = order.length - 1; i > 0; i--) {
    const j = random.below(i + 1);
    [order[i], order[j]] = [at(order, j), at(order, i)];
  }
  return order;
}
