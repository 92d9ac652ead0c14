import type { Random } from "../../../kit/random.ts";
import type { Effort } from "../../engine/effort.ts";
import type { Layout } from "../plan/layout.ts";
import type { SheetModel } from "../plan/model.ts";
import { FIT_RULES, SheetFill, SPLIT_RULES } from "../search/fill.ts";

/** Ways tried to lay the parts of one sheet again. */
const TRIES = 60;
/** Work of one try by itself, and for each part. */
const TRY_STEPS = 500;
const PART_STEPS = 40;
/** Work of putting the cuts of a layout in order, for each part. */
const SAW_STEPS = 300;

/** Lays a few parts on one sheet again. */
export class Relay {
  readonly #model: SheetModel;
  readonly #random: Random;
  readonly #effort: Effort;
  readonly #fill: SheetFill;

  constructor(model: SheetModel, random: Random, effort: Effort) {
    this.#model = model;
    this.#random = random;
    this.#effort = effort;
    this.#fill = new SheetFill(model);
  }

  /** The first layout that holds all; undefined where none was found. */
  any(stock: number, types: readonly number[]): Layout | undefined {
    return this.best(stock, types, () => 0);
  }

  /** The layout that holds all and has the largest value above 0, the first one of value 0; undefined where there is none. */
  best(stock: number, types: readonly number[], value: (l: Layout) => number): Layout | undefined {
    let found: Layout | undefined;
    let most = -1;
    for (let n = 0; n < TRIES && !this.#effort.over; n++) {
      const layout = this.#lay(stock, types, n === 0 ? 0 : 0.5);
      if (!layout) continue;
      const v = value(layout);
      this.#effort.spend(SAW_STEPS * types.length);
      if (v === 0) return found ?? layout;
      if (v <= most) continue;
      most = v;
      found = layout;
    }
    return found;
  }

  #lay(stock: number, types: readonly number[], noise: number): Layout | undefined {
    const random = this.#random;
    const fill = this.#fill;
    const keyed = types.map((t) => ({
      t,
      key: (this.#model.types[t]?.area ?? 0) * (1 + noise * (random.unit() - random.unit())),
    }));
    keyed.sort((a, b) => b.key - a.key);
    fill.reset();
    fill.open(stock);
    const fit = random.below(FIT_RULES);
    const split = random.below(SPLIT_RULES);
    const all = keyed.every(({ t }) => fill.place(t, fit, split, random));
    this.#effort.spend(fill.looked + TRY_STEPS + PART_STEPS * types.length);
    return all ? fill.layouts()[0] : undefined;
  }
}
