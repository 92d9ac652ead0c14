import { at } from "../../engine/at.ts";
import type { Effort } from "../../engine/effort.ts";
import type { Priced, PriceRequest, Pricer } from "../../engine/problem.ts";
import type { Placed } from "../plan/layout.ts";
import type { SheetModel } from "../plan/model.ts";
import { FillPricer } from "./fill-pricing.ts";
import { type SheetColumn, sheetColumn } from "./guillotine-pricing.ts";
import { MOST_PARTS, type PartSet, type Stairs } from "./stairs.ts";

/** The first look at a pricing ends after so many steps; it is repeated without end only where it found nothing. */
const QUICK_STEPS = 20_000;
/** Units of effort of one step. */
const STEP_UNITS = 2;

/** Weights of the parts that no sheet of a stock can exceed: sum of weight x count <= 1. */
export type Weights = Float64Array;

/**
 * The most valuable set of parts that one sheet can give, no more of each than there are: by branch and bound over the
 * parts, each set tested exactly. The limit at each node is the fractional knapsack over weights that no sheet can
 * exceed (its area, or a pair of dual-feasible functions), over the parts that still fit beside those chosen.
 */
export class SubsetPricer implements Pricer {
  readonly #model: SheetModel;
  readonly #stairs: Stairs;
  readonly #fillings: FillPricer;
  readonly #weights: readonly (readonly Weights[])[];
  #best = 0;
  #found: number[][] = [];
  /** limit on the value of what was left unsearched */
  #skipped = 0;
  #quick = 0;

  /** @param weights for each stock the weight systems; the first orders the search */
  constructor(model: SheetModel, stairs: Stairs, weights: readonly (readonly Weights[])[]) {
    this.#model = model;
    this.#fillings = new FillPricer(model);
    this.#stairs = stairs;
    this.#weights = weights;
  }

  price({ values, stock, threshold, enough, needs, effort }: PriceRequest): Priced {
    const quick = this.#fillings.find(values, stock, threshold, needs, effort);
    if (quick.length > 0) return { columns: quick, most: Number.POSITIVE_INFINITY };
    const s = at(this.#model.stocks, stock);
    const systems = at(this.#weights, stock);
    const main = at(systems, 0);
    const order: number[] = [];
    for (let t = 0; t < values.length; t++) {
      const p = at(this.#model.types, t);
      if (
        (values[t] as number) > 0 &&
        at(needs, t) > 0 &&
        ((p.w <= s.w && p.h <= s.h) || (p.turns && p.h <= s.w && p.w <= s.h))
      ) {
        order.push(t);
      }
    }
    const rate = (t: number): number =>
      (main[t] as number) > 0 ? (values[t] as number) / (main[t] as number) : Number.POSITIVE_INFINITY;
    order.sort((a, b) => rate(b) - rate(a) || a - b);
    this.#best = threshold;
    this.#found = [];
    this.#skipped = 0;
    const items: number[] = [];
    for (const t of order) for (let k = 0; k < Math.min(at(needs, t), MOST_PARTS); k++) items.push(t);
    this.#quick = QUICK_STEPS;
    const full = systems.map(() => 1);
    const sheet = { w: s.w, h: s.h, values, systems, effort };
    this.#search(this.#stairs.root, [], 0, items, sheet, full);
    if (this.#skipped > enough && this.#found.length === 0 && !effort.over) {
      this.#quick = Number.POSITIVE_INFINITY;
      this.#skipped = 0;
      this.#best = enough;
      this.#search(this.#stairs.root, [], 0, items, sheet, full);
    }
    const columns: SheetColumn[] = [];
    const seen = new Set<number>();
    for (let i = this.#found.length - 1; i >= 0 && columns.length < 8; i--) {
      const types = at(this.#found, i);
      if (columns.length > 0 && types.some((t) => seen.has(t))) continue;
      for (const t of types) seen.add(t);
      columns.push(this.column(stock, types));
    }
    return { columns, most: Math.max(this.#best, this.#skipped) };
  }

  column(stock: number, types: readonly number[]): SheetColumn {
    const s = at(this.#model.stocks, stock);
    const placed: Placed[] = [];
    this.#stairs.lay(this.#stairs.of([...types].sort((a, b) => a - b)), s.w, s.h, 0, 0, placed);
    return sheetColumn(stock, s.cost, placed);
  }

  /** Limit on what the items from `from` on can add: as many as the weights allow, and the fractional knapsack. */
  #limit(items: readonly number[], from: number, search: Sheet, room: readonly number[]): number {
    const { values, systems } = search;
    const main = at(systems, 0);
    let left = at(room, 0);
    let sum = 0;
    for (let i = from; i < items.length; i++) {
      const t = at(items, i);
      const w = main[t] as number;
      if (w > left) {
        sum += ((values[t] as number) * left) / w;
        break;
      }
      left -= w;
      sum += values[t] as number;
    }
    let first = 0;
    let second = 0;
    let least = Number.POSITIVE_INFINITY;
    const last = at(systems, systems.length - 1);
    for (let i = from; i < items.length; i++) {
      const t = at(items, i);
      const v = values[t] as number;
      if (v > first) {
        second = first;
        first = v;
      } else if (v > second) second = v;
      if ((last[t] as number) < least) least = last[t] as number;
    }
    const space = at(room, systems.length - 1) + 1e-9;
    if (2 * least > space) return Math.min(sum, first);
    return 3 * least > space ? Math.min(sum, first + second) : sum;
  }

  #search(
    set: PartSet,
    chosen: number[],
    value: number,
    items: readonly number[],
    sheet: Sheet,
    room: readonly number[],
  ): void {
    const stairs = this.#stairs;
    const { values, systems, effort } = sheet;
    for (let i = 0; i < items.length; i++) {
      const limit = value + this.#limit(items, i, sheet, room);
      if (limit <= this.#best * (1 + 1e-12)) return;
      if (effort.over || this.#quick <= 0) {
        this.#skipped = Math.max(this.#skipped, limit);
        return;
      }
      const t = at(items, i);
      // a second copy without the first gives the same sets again
      if (i > 0 && items[i - 1] === t) continue;
      const before = stairs.work;
      const next = stairs.with(set, t);
      chosen.push(t);
      const worth = value + (values[t] as number);
      if (worth > this.#best) {
        this.#best = worth;
        this.#found.push([...chosen]);
      }
      const nextRoom = systems.map((ws, k) => at(room, k) - (ws[t] as number));
      const light: number[] = [];
      for (let j = i + 1; j < items.length; j++) {
        const u = at(items, j);
        if (!systems.some((ws, k) => (ws[u] as number) > at(nextRoom, k) + 1e-9)) light.push(u);
      }
      const rest: number[] = [];
      if (light.length > 0 && worth + this.#limit(light, 0, sheet, nextRoom) > this.#best * (1 + 1e-12)) {
        for (const u of light) {
          if (next.size === MOST_PARTS) this.#skipped = Math.max(this.#skipped, limit);
          else if (stairs.fits(stairs.with(next, u), sheet.w, sheet.h)) rest.push(u);
        }
      }
      const steps = items.length - i + light.length + stairs.work - before;
      this.#quick -= steps;
      effort.spend(STEP_UNITS * steps);
      if (rest.length > 0) this.#search(next, chosen, worth, rest, sheet, nextRoom);
      chosen.pop();
    }
  }
}

/** What stays the same during one pricing. */
interface Sheet {
  readonly w: number;
  readonly h: number;
  readonly values: Float64Array;
  readonly systems: readonly Weights[];
  readonly effort: Effort;
}
