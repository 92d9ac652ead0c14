import type { Random } from "../../../kit/random.ts";
import { at } from "../../engine/at.ts";
import type { Effort } from "../../engine/effort.ts";
import { sortDown } from "../../engine/sort.ts";
import type { Layout, Packing } from "../plan/layout.ts";
import type { PartType, SheetModel } from "../plan/model.ts";
import { FIT_RULES, type FilledSheet, layoutOf, NUMBERS_A_PART, SheetFill, SPLIT_RULES } from "./fill.ts";
import { MOST_PARTS } from "./stairs.ts";

/** Units of work from the start of an annealing to its end; then it is warmed up again. */
const COOLING = 600_000;
/** Weight by which the pool may grow at the start of an annealing, in areas of the largest part. */
const HEAT = 0.01;
/** Growth of the weight of a part, in its areas, each time it stays in the pool. */
const GROWTH = 0.002;
/** How often the looser one of two sheets is rebuilt, not just any. */
const LOOSER = 0.8;
/** How often the free rectangles are served in turn, not the parts; and of how many parts that fit the best is taken. */
const SERVED = 0.5;
const MOST_REACH = 6;
/** What the parts of a rebuilding are sorted by. */
const MEASURES: readonly ((t: PartType) => number)[] = [
  (t) => t.area,
  (t) => t.area,
  (t) => Math.max(t.w, t.h) ** 2,
  (t) => t.w * t.w,
  (t) => t.h * t.h,
  (t) => (t.w + t.h) ** 2,
];
const NOISE: readonly number[] = [0.05, 0.15, 0.3, 0.6];
/** Work of one rebuilding beside the rectangles looked at: by itself, and for each part. */
const REBUILD_STEPS = 40;
const STEPS_PER_PART = 2;

/**
 * Goal-driven search. A sheet is taken away, its parts go to a pool; then one to three sheets at a time are rebuilt
 * from their parts and the pool in a noisy order, within the cost that is left, until the pool is empty. Rebuilding is
 * accepted by annealing on the weighted area of the pool; parts that stay in the pool grow heavier.
 */
export class GoalSearch {
  readonly #model: SheetModel;
  readonly #random: Random;
  readonly #harvests: boolean;
  readonly #fill: SheetFill;
  readonly #area: Float64Array;
  /** for each measure that of each type */
  readonly #measures: readonly Float64Array[];
  readonly #weight: Float64Array;
  #sheets: Sheet[] = [];
  #pool: number[] = [];
  #cost = 0;
  readonly #used: Int32Array;
  #items = new Int32Array(64);
  #keys = new Float64Array(64);
  /** parts in the last rebuilding */
  #gathered = 0;
  /** well filled sheets met on the way, each set of parts once */
  readonly harvest = new Map<string, Layout>();

  /** @param harvests whether sheets met on the way are wanted */
  constructor(model: SheetModel, random: Random, harvests = false) {
    this.#harvests = harvests;
    this.#model = model;
    this.#random = random;
    this.#fill = new SheetFill(model);
    this.#area = Float64Array.from(model.types, (t) => t.area);
    this.#measures = MEASURES.map((of) => Float64Array.from(model.types, of));
    this.#weight = new Float64Array(model.types.length);
    this.#used = new Int32Array(model.stocks.length);
  }

  /** Lowers the cost of a packing towards `floor` as far as the effort goes; calls back with each better packing. */
  improve(start: Packing, floor: number, effort: Effort): Packing {
    let best = start;
    while (best.cost > floor && !effort.over) {
      const found = this.#reach(best, best.cost - this.#model.costStep, effort);
      if (!found) break;
      best = found;
    }
    return best;
  }

  /** The stocks that are left of a packing when its least useful sheets are taken away until the cost is at most `target`. */
  plan(start: Packing, target: number): number[] {
    this.#load(start);
    this.#cutDown(target);
    return this.#sheets.map((s) => s.stock).sort((a, b) => a - b);
  }

  #load(start: Packing): void {
    this.#sheets = start.layouts
      .filter((l) => l.placed.length > 0)
      .map((l) => this.#withWaste(filledOf(l, this.#area)));
    this.#pool = [];
    this.#used.fill(0);
    for (const { stock } of this.#sheets) this.#used[stock] = (this.#used[stock] as number) + 1;
    this.#cost = this.#sheets.reduce((sum, { stock }) => sum + at(this.#model.stocks, stock).cost, 0);
    for (let t = 0; t < this.#weight.length; t++) this.#weight[t] = at(this.#model.types, t).area;
  }

  #withWaste(of: FilledSheet): Sheet {
    const { w, h } = at(this.#model.stocks, of.stock);
    return { stock: of.stock, parts: of.parts, filled: of.filled, waste: w * h - of.filled };
  }

  /** Takes away sheets, the least useful for their cost first, until the cost is at most `target`. */
  #cutDown(target: number): void {
    while (this.#cost > target) {
      let worst = -1;
      let worstValue = Number.POSITIVE_INFINITY;
      this.#sheets.forEach(({ stock, filled }, i) => {
        const c = at(this.#model.stocks, stock).cost;
        if (c === 0) return;
        const value = filled / c;
        if (value < worstValue) {
          worstValue = value;
          worst = i;
        }
      });
      const { parts } = this.#drop(worst);
      for (let k = 0; k < parts.length; k += NUMBERS_A_PART) this.#pool.push(at(parts, k));
    }
  }

  /** Takes a sheet away; its place is taken by the last one. */
  #drop(i: number): Sheet {
    const sheet = at(this.#sheets, i);
    this.#sheets[i] = at(this.#sheets, this.#sheets.length - 1);
    this.#sheets.pop();
    this.#used[sheet.stock] = (this.#used[sheet.stock] as number) - 1;
    this.#cost -= at(this.#model.stocks, sheet.stock).cost;
    return sheet;
  }

  #reach(start: Packing, target: number, effort: Effort): Packing | undefined {
    this.#load(start);
    this.#cutDown(target);
    const scale = Math.max(...this.#model.types.map((t) => t.area));
    let clock = 0;
    let current = this.#poolWeight();
    while (this.#pool.length > 0) {
      const heat = HEAT * scale * (1 - clock / COOLING) ** 2 + 1e-9;
      const allowed = current - heat * Math.log(1 - this.#random.unit());
      const left = this.#rebuild(target, allowed);
      clock = (clock + this.#fill.looked) % COOLING;
      if (left >= 0) {
        current = left;
        for (const t of this.#pool)
          this.#weight[t] = (this.#weight[t] as number) + GROWTH * at(this.#model.types, t).area;
        current = this.#poolWeight();
      }
      if (!effort.spend(this.#fill.looked + REBUILD_STEPS + STEPS_PER_PART * this.#gathered)) break;
    }
    return this.#pool.length === 0 ? { layouts: this.#sheets.map(layoutOf), cost: this.#cost } : undefined;
  }

  #keep(sheet: Sheet): void {
    if (!this.#harvests || this.harvest.size >= MOST_KEPT) return;
    const { stock, parts, filled } = sheet;
    if (parts.length > MOST_PARTS * NUMBERS_A_PART) return;
    const s = at(this.#model.stocks, stock);
    if (filled < 0.8 * s.w * s.h) return;
    const types: number[] = [];
    for (let k = 0; k < parts.length; k += NUMBERS_A_PART) types.push(at(parts, k));
    const key = `${stock}:${types.sort((a, b) => a - b)}`;
    if (!this.harvest.has(key)) this.harvest.set(key, layoutOf(sheet));
  }

  #poolWeight(): number {
    let sum = 0;
    for (const t of this.#pool) sum += this.#weight[t] as number;
    return sum;
  }

  /** Rebuilds one to three sheets; the new weight of the pool, or -1 when that is more than `allowed`. */
  #rebuild(target: number, allowed: number): number {
    const random = this.#random;
    const fill = this.#fill;
    const u = random.unit();
    const want = Math.min(this.#sheets.length, u < 0.2 ? 1 : u < 0.85 ? 2 : 3);
    const chosen: number[] = [];
    while (chosen.length < want) {
      let i = random.below(this.#sheets.length);
      if (random.unit() < LOOSER) {
        const j = random.below(this.#sheets.length);
        if (at(this.#sheets, j).waste > at(this.#sheets, i).waste) i = j;
      }
      if (!chosen.includes(i)) chosen.push(i);
    }
    const n = this.#gather(chosen);
    this.#order(n);
    const plan = this.#restock(chosen, target);
    fill.reset();
    const fit = random.below(FIT_RULES);
    const split = random.below(SPLIT_RULES);
    const together = plan.length > 1 && random.unit() < 0.2;
    const serve = random.unit() < SERVED;
    const reach = 1 + random.below(MOST_REACH);
    const items = this.#items;
    const weight = this.#weight;
    let rest = n;
    for (let s = 0; s < plan.length; s++) {
      fill.open(at(plan, s));
      if (together && s + 1 < plan.length) continue;
      if (serve) {
        rest = fill.serve(items, rest, reach, split, random);
        continue;
      }
      let kept = 0;
      let failed = -1;
      let lost = s + 1 < plan.length ? Number.NEGATIVE_INFINITY : 0;
      for (let i = 0; i < rest; i++) {
        const t = items[i] as number;
        if (t === failed || !fill.place(t, fit, split, random)) {
          items[kept++] = t;
          failed = t;
          lost += weight[t] as number;
          if (lost > allowed) return -1;
        }
      }
      rest = kept;
      if (!together) fill.close();
    }
    let left = 0;
    for (let i = 0; i < rest; i++) left += weight[items[i] as number] as number;
    if (left > allowed) return -1;
    this.#replace(chosen, fill.sheets(), rest);
    return left;
  }

  /** The parts of the chosen sheets and of the pool, into `items`. */
  #gather(chosen: readonly number[]): number {
    let n = 0;
    let size = this.#pool.length;
    for (const i of chosen) size += at(this.#sheets, i).parts.length / NUMBERS_A_PART;
    if (size > this.#items.length) {
      this.#items = new Int32Array(2 * size);
      this.#keys = new Float64Array(2 * size);
    }
    const items = this.#items;
    for (const i of chosen) {
      const { parts } = at(this.#sheets, i);
      for (let k = 0; k < parts.length; k += NUMBERS_A_PART) items[n++] = at(parts, k);
    }
    for (const t of this.#pool) items[n++] = t;
    this.#gathered = n;
    return n;
  }

  /** Sorts `items` by a random measure with noise, largest first. */
  #order(n: number): void {
    const random = this.#random;
    const items = this.#items;
    const keys = this.#keys;
    const weight = this.#weight;
    const measure = at(this.#measures, random.below(MEASURES.length));
    const noise = at(NOISE, random.below(NOISE.length));
    const area = this.#area;
    for (let i = 0; i < n; i++) {
      const t = items[i] as number;
      const key = ((weight[t] as number) / (area[t] as number)) * (measure[t] as number);
      keys[i] = key * (1 + noise * (random.unit() - random.unit()));
    }
    sortDown(keys, items, n);
  }

  /** The stocks to rebuild on: those of the chosen sheets, or others within the cost that is left. */
  #restock(chosen: readonly number[], target: number): number[] {
    const model = this.#model;
    const random = this.#random;
    const same = chosen.map((i) => at(this.#sheets, i).stock);
    if (model.stocks.length === 1) return same;
    let budget = target - this.#cost;
    for (const s of same) {
      budget += at(model.stocks, s).cost;
      this.#used[s] = (this.#used[s] as number) - 1;
    }
    const plan: number[] = [];
    if (random.unit() < 0.5) {
      for (const s of same) {
        plan.push(s);
        this.#used[s] = (this.#used[s] as number) + 1;
        budget -= at(model.stocks, s).cost;
      }
    }
    for (;;) {
      const open = model.stocks
        .map((_, i) => i)
        .filter((i) => (this.#used[i] as number) < at(model.stocks, i).limit && at(model.stocks, i).cost <= budget);
      if (open.length === 0 || plan.length > chosen.length + 2) break;
      const s = at(open, random.below(open.length));
      plan.push(s);
      this.#used[s] = (this.#used[s] as number) + 1;
      budget -= at(model.stocks, s).cost;
    }
    for (const s of plan) this.#used[s] = (this.#used[s] as number) - 1;
    for (const s of same) this.#used[s] = (this.#used[s] as number) + 1;
    return plan;
  }

  #replace(chosen: number[], filled: readonly FilledSheet[], rest: number): void {
    chosen.sort((a, b) => b - a);
    for (const i of chosen) this.#drop(i);
    this.#pool.length = 0;
    for (let i = 0; i < rest; i++) this.#pool.push(this.#items[i] as number);
    for (const f of filled) {
      if (f.parts.length === 0) continue;
      const sheet = this.#withWaste(f);
      this.#sheets.push(sheet);
      this.#keep(sheet);
      this.#used[f.stock] = (this.#used[f.stock] as number) + 1;
      this.#cost += at(this.#model.stocks, f.stock).cost;
    }
  }
}

/** A sheet of the plan, and the area that its parts leave. */
interface Sheet extends FilledSheet {
  readonly waste: number;
}

function filledOf({ stock, placed }: Layout, area: Float64Array): FilledSheet {
  return {
    stock,
    parts: placed.flatMap((p) => [p.type, p.x, p.y, Number(p.turned)]),
    filled: placed.reduce((sum, p) => sum + (area[p.type] as number), 0),
  };
}

/** Most sheets kept for the column generation. */
const MOST_KEPT = 3000;
