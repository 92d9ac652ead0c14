import type { Random } from "../../../kit/random.ts";
import type { Effort } from "../../engine/effort.ts";
import { alikeLayouts, kindOf } from "../plan/alike.ts";
import type { Layout } from "../plan/layout.ts";
import { fits, type SheetModel } from "../plan/model.ts";
import { roomOf } from "../plan/sawn.ts";
import { cutRemainder } from "../search/columns.ts";
import { FIT_RULES, SheetFill, SPLIT_RULES } from "../search/fill.ts";
import { largestRest } from "./leftover.ts";
import { onSameSheets, partsOn } from "./same-sheets.ts";

/** Work of one try, elementary steps: what the sheets that are not cut alike may take. */
const EACH = 400_000;
/** Work of one try by itself, for each part and sheet. */
const TRY_STEPS = 200;
/** Tries without a better plan after which no more are made. */
const PATIENCE = 16;
/** Work of looking at one sheet, by itself and for each part that may be on it. */
const LOOK_STEPS = 400;
const PART_STEPS = 40;
/** Sheets looked at for one that can be repeated. */
const LOOKS = 24;
/** How often a sheet of the plan is repeated, not a new one. */
const KNOWN = 0.4;
/** How often no more sheets are repeated. */
const ENOUGH = 0.1;
const NOISE = 0.6;

const kindsOf = (layouts: readonly Layout[]): number => new Set(layouts.map(kindOf)).size;

/** Fewest ways to cut that can be: more than one where the parts cannot be shared out evenly. */
export const leastKinds = (model: SheetModel, sheets: number): number =>
  model.types.some((t) => t.need % sheets !== 0) ? 2 : 1;

/**
 * The same sheets cut in fewer ways: sheets that can be repeated as often as their parts are needed are taken first, the
 * rest is searched. The sheet with the largest leftover stays as it is.
 */
export function fewerKinds(
  model: SheetModel,
  layouts: readonly Layout[],
  random: Random,
  effort: Effort,
): readonly Layout[] {
  const rests = layouts.map((l) => largestRest(model, l));
  const largest = rests.indexOf(Math.max(...rests));
  const kept = layouts.filter((_, i) => i === largest);
  let others = layouts.filter((_, i) => i !== largest);
  if (others.length > 1 && Math.max(...partsOn(model, others)) > 1) {
    const least = leastKinds(model, layouts.length);
    const repeats = new Repeats(model, others, random);
    for (let n = 0; n < PATIENCE && !effort.over && kindsOf([...kept, ...others]) > least; n++) {
      effort.spend(TRY_STEPS * (model.total + others.length));
      const found = effort.stage(EACH, (e) => repeats.plan(e));
      if (!found || kindsOf([...kept, ...found]) >= kindsOf([...kept, ...others])) continue;
      others = found;
      n = -1;
    }
  }
  // the sheet with the leftover comes first, so that those with its parts are laid as it is
  return alikeLayouts([...kept, ...others]);
}

/** What is still to be cut, and from how many sheets of each stock. */
interface Open {
  readonly needs: number[];
  readonly sheets: number[];
  /** area that may still be wasted */
  spare: number;
}

/** Plans from sheets that are repeated. */
class Repeats {
  readonly #model: SheetModel;
  readonly #problem: SheetModel;
  readonly #sheets: readonly Layout[];
  readonly #fill: SheetFill;
  readonly #random: Random;

  constructor(model: SheetModel, sheets: readonly Layout[], random: Random) {
    const counts = partsOn(model, sheets);
    const types = model.types.map((t, i) => ({ ...t, need: counts[i] ?? 0 }));
    this.#model = model;
    this.#problem = onSameSheets(model, types, sheets);
    this.#sheets = sheets;
    this.#fill = new SheetFill(this.#problem);
    this.#random = random;
  }

  /** All parts from the sheets, or undefined. */
  plan(effort: Effort): Layout[] | undefined {
    const { types, stocks } = this.#problem;
    const open: Open = {
      needs: types.map((t) => t.need),
      sheets: stocks.map((s) => (s.index < 0 ? 0 : s.limit)),
      spare: this.#sheets.reduce((sum, l) => sum + roomOf(this.#model, l), 0),
    };
    const taken: Layout[] = [];
    while (open.needs.some((n) => n > 0)) {
      const next = this.#random.unit() < ENOUGH ? undefined : this.#repeated(open, effort);
      if (!next) break;
      taken.push(...new Array<Layout>(next.times).fill(next.layout));
      this.#take(open, next.layout, next.times);
    }
    if (open.needs.every((n) => n === 0)) return taken;
    const limits = stocks.map((s, i) => (s.index < 0 ? s.limit : (open.sheets[i] ?? 0)));
    const rest = cutRemainder(this.#problem, open.needs, limits, 0, this.#random, effort);
    return rest && [...taken, ...rest];
  }

  #take(open: Open, l: Layout, times: number): void {
    for (const p of l.placed) open.needs[p.type] = (open.needs[p.type] ?? 0) - times;
    open.sheets[l.stock] = (open.sheets[l.stock] ?? 0) - times;
    open.spare -= times * roomOf(this.#model, l);
  }

  /** A sheet that can be cut twice or more, the more often the likelier, within the area that may be wasted. */
  #repeated(open: Open, effort: Effort): { readonly layout: Layout; readonly times: number } | undefined {
    const random = this.#random;
    const most = Math.min(Math.max(...open.sheets), Math.max(...open.needs));
    for (let n = 0; n < LOOKS && !effort.over; n++) {
      effort.spend(LOOK_STEPS);
      const times = Math.max(2, most - Math.floor((most - 1) * random.unit() ** 2 * ((n + 1) / LOOKS) * 2));
      const layout =
        random.unit() < KNOWN ? this.#sheets[random.below(this.#sheets.length)] : this.#filled(open, times, effort);
      if (!layout || layout.placed.length === 0) continue;
      const can = Math.min(open.sheets[layout.stock] ?? 0, this.#times(open, layout));
      if (can >= Math.min(times, 2) && can >= 2 && can * roomOf(this.#model, layout) <= open.spare) {
        return { layout, times: can };
      }
    }
    return undefined;
  }

  /** How often the needs allow a layout. */
  #times({ needs }: Open, { placed }: Layout): number {
    const counts = new Map<number, number>();
    for (const p of placed) counts.set(p.type, (counts.get(p.type) ?? 0) + 1);
    return Math.min(...[...counts].map(([type, count]) => Math.floor((needs[type] ?? 0) / count)));
  }

  /** One sheet of parts that are needed so often that it can be cut so many times. */
  #filled(open: Open, times: number, effort: Effort): Layout | undefined {
    const { types, stocks } = this.#problem;
    const random = this.#random;
    const fill = this.#fill;
    const able = stocks.flatMap((_, i) => ((open.sheets[i] ?? 0) >= times ? [i] : []));
    const stock = able[random.below(able.length)];
    const s = stock === undefined ? undefined : stocks[stock];
    if (stock === undefined || s === undefined) return undefined;
    const items = types.flatMap((t, type) => {
      const count = Math.min(Math.floor((open.needs[type] ?? 0) / times), Math.floor((s.w * s.h) / t.area));
      const key = t.area * (1 + NOISE * (random.unit() - random.unit()));
      return fits(t, s) ? new Array<{ type: number; key: number }>(count).fill({ type, key }) : [];
    });
    items.sort((a, b) => b.key - a.key);
    fill.reset();
    fill.open(stock);
    const fit = random.below(FIT_RULES);
    const split = random.below(SPLIT_RULES);
    let failed = -1;
    for (const { type } of items) if (type !== failed && !fill.place(type, fit, split, random)) failed = type;
    effort.spend(2 * fill.looked + PART_STEPS * items.length);
    return fill.layouts()[0];
  }
}
