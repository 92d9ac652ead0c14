import { Random } from "../../../kit/random.ts";
import { at } from "../../engine/at.ts";
import type { Effort } from "../../engine/effort.ts";
import { sortDown } from "../../engine/sort.ts";
import { fits, type SheetModel } from "../plan/model.ts";
import { FIT_RULES, SheetFill, SPLIT_RULES } from "./fill.ts";
import { type SheetColumn, sheetColumn } from "./guillotine-pricing.ts";

/** Fillings tried in one pricing. */
const TRIES = 120;
/** Columns handed on by one pricing at most. */
const MOST_COLUMNS = 8;
const SEED = 8087;
const NOISE: readonly number[] = [0.05, 0.15, 0.4];
/** How much the parts of the best filling so far are preferred in the next. */
const LOYALTY = 0.25;
/** Parts looked at, in each pricing, for each part that the sheet may hold. */
const MOST_PARTS_SEEN = 64;

/**
 * Valuable sheets without a proof: parts in a noisy order of their value for their area are put into one sheet, those
 * of the best sheet so far a little preferred. Much cheaper than an exact pricing, which is then left for the proof.
 */
export class FillPricer {
  readonly #model: SheetModel;
  readonly #fill: SheetFill;
  readonly #random = new Random(SEED);
  #items = new Int32Array(MOST_PARTS_SEEN);
  #keys = new Float64Array(MOST_PARTS_SEEN);

  constructor(model: SheetModel) {
    this.#model = model;
    this.#fill = new SheetFill(model);
  }

  /** Sheets of a stock worth more than `threshold`, the best first, each with parts that those before do not have. */
  find(
    values: Float64Array,
    stock: number,
    threshold: number,
    needs: ArrayLike<number>,
    effort: Effort,
  ): SheetColumn[] {
    const model = this.#model;
    const fill = this.#fill;
    const random = this.#random;
    const items = this.#items;
    const keys = this.#keys;
    const candidates = this.#candidates(values, stock, needs);
    let loyal: ReadonlySet<number> = new Set();
    let best = threshold;
    const found = new Map<string, { worth: number; column: SheetColumn }>();
    for (let n = 0; n < TRIES && !effort.over; n++) {
      const noise = at(NOISE, random.below(NOISE.length));
      const power = random.below(3) / 2;
      for (let i = 0; i < candidates.length; i++) {
        const t = at(candidates, i);
        items[i] = t;
        const rate = (values[t] as number) / at(model.types, t).area ** power;
        keys[i] = rate * (1 + noise * (random.unit() - random.unit()) + (loyal.has(t) ? LOYALTY : 0));
      }
      sortDown(keys, items, candidates.length);
      fill.reset();
      fill.open(stock);
      const split = random.below(SPLIT_RULES);
      let failed = -1;
      const fit = random.below(FIT_RULES);
      for (let i = 0; i < candidates.length; i++) {
        const t = items[i] as number;
        if (t !== failed && !fill.place(t, fit, split, random)) failed = t;
      }
      effort.spend(2 * (fill.looked + candidates.length));
      const worth = fill.worth(values);
      const better = worth >= best || (n < TRIES / 4 && worth > 0.95 * best);
      if (worth <= threshold && !better) continue;
      const { placed } = at(fill.layouts(), 0);
      if (worth > threshold) {
        const column = sheetColumn(stock, at(model.stocks, stock).cost, placed);
        found.set(`${column.types}:${column.counts}`, { worth, column });
      }
      if (better) {
        best = Math.max(best, worth);
        loyal = new Set(placed.map((p) => p.type));
      }
    }
    return disjoint([...found.values()].sort((a, b) => b.worth - a.worth).map((f) => f.column));
  }

  /** The parts that fit the stock, the most valuable for their area first. */
  #candidates(values: Float64Array, stock: number, needs: ArrayLike<number>): number[] {
    const model = this.#model;
    const s = at(model.stocks, stock);
    const types: number[] = [];
    for (let t = 0; t < values.length; t++) {
      if ((values[t] as number) > 0 && at(needs, t) > 0 && fits(at(model.types, t), s)) types.push(t);
    }
    const rate = (t: number): number => (values[t] as number) / at(model.types, t).area;
    types.sort((a, b) => rate(b) - rate(a) || a - b);
    const parts: number[] = [];
    for (const t of types) {
      const most = Math.min(at(needs, t), Math.ceil((s.w * s.h) / at(model.types, t).area));
      for (let k = 0; k < most && parts.length < MOST_PARTS_SEEN; k++) parts.push(t);
    }
    return parts;
  }
}

function disjoint(columns: readonly SheetColumn[]): SheetColumn[] {
  const chosen: SheetColumn[] = [];
  const seen = new Set<number>();
  for (const c of columns) {
    if (chosen.length === MOST_COLUMNS) break;
    if (c.types.some((t) => seen.has(t))) continue;
    for (const t of c.types) seen.add(t);
    chosen.push(c);
  }
  return chosen;
}
