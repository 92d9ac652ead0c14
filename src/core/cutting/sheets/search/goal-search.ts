import type { Random } from "../../../kit/random.ts";
import type { Effort } from "../../engine/effort.ts";
import { sortDown } from "../../engine/sort.ts";
import type { Layout, Packing } from "../plan/layout.ts";
import type { SheetModel } from "../plan/model.ts";
import { FIT_RULES, SheetFill, SPLIT_RULES } from "./fill.ts";
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
  private readonly model: SheetModel;
  private readonly random: Random;
  private readonly fill: SheetFill;
  private readonly weight: Float64Array;
  private sheets: Layout[] = [];
  private waste: number[] = [];
  private pool: number[] = [];
  private cost = 0;
  private readonly used: Int32Array;
  private items = new Int32Array(64);
  private keys = new Float64Array(64);
  /** parts in the last rebuilding */
  private gathered = 0;
  /** well filled sheets met on the way, each set of parts once */
  readonly harvest = new Map<string, Layout>();

  constructor(model: SheetModel, random: Random) {
    this.model = model;
    this.random = random;
    this.fill = new SheetFill(model);
    this.weight = new Float64Array(model.types.length);
    this.used = new Int32Array(model.stocks.length);
  }

  /** Lowers the cost of a packing towards `floor` as far as the effort goes; calls back with each better packing. */
  improve(start: Packing, floor: number, effort: Effort): Packing {
    let best = start;
    while (best.cost > floor && !effort.over) {
      const found = this.reach(best, best.cost - this.model.costStep, effort);
      if (!found) break;
      best = found;
    }
    return best;
  }

  /** The stocks that are left of a packing when its least useful sheets are taken away until the cost is at most `target`. */
  plan(start: Packing, target: number): number[] {
    this.load(start);
    this.cutDown(target);
    return this.sheets.map((l) => l.stock).sort((a, b) => a - b);
  }

  private load(start: Packing): void {
    this.sheets = start.layouts.filter((l) => l.placed.length > 0);
    this.waste = this.sheets.map((l) => this.freeArea(l));
    this.pool = [];
    this.used.fill(0);
    for (const l of this.sheets) this.used[l.stock]!++;
    this.cost = this.sheets.reduce((sum, l) => sum + this.model.stocks[l.stock]!.cost, 0);
    for (let t = 0; t < this.weight.length; t++) this.weight[t] = this.model.types[t]!.area;
  }

  private freeArea(l: Layout): number {
    const s = this.model.stocks[l.stock]!;
    return s.w * s.h - this.filledArea(l);
  }

  private filledArea(l: Layout): number {
    return l.placed.reduce((sum, p) => sum + this.model.types[p.type]!.area, 0);
  }

  /** Takes away sheets, the least useful for their cost first, until the cost is at most `target`. */
  private cutDown(target: number): void {
    while (this.cost > target) {
      let worst = -1;
      let worstValue = Number.POSITIVE_INFINITY;
      this.sheets.forEach((l, i) => {
        const c = this.model.stocks[l.stock]!.cost;
        if (c === 0) return;
        const value = this.filledArea(l) / c;
        if (value < worstValue) {
          worstValue = value;
          worst = i;
        }
      });
      this.drop(worst);
    }
  }

  private drop(i: number): void {
    const l = this.sheets[i]!;
    this.sheets[i] = this.sheets[this.sheets.length - 1]!;
    this.sheets.pop();
    this.waste[i] = this.waste[this.waste.length - 1]!;
    this.waste.pop();
    this.used[l.stock]!--;
    this.cost -= this.model.stocks[l.stock]!.cost;
    for (const p of l.placed) this.pool.push(p.type);
  }

  private reach(start: Packing, target: number, effort: Effort): Packing | undefined {
    this.load(start);
    this.cutDown(target);
    const scale = Math.max(...this.model.types.map((t) => t.area));
    let clock = 0;
    let current = this.poolWeight();
    while (this.pool.length > 0) {
      const heat = HEAT * scale * (1 - clock / COOLING) ** 2 + 1e-9;
      const allowed = current - heat * Math.log(1 - this.random.unit());
      const left = this.rebuild(target, allowed);
      clock = (clock + this.fill.looked) % COOLING;
      if (left >= 0) {
        current = left;
        for (const t of this.pool) this.weight[t]! += GROWTH * this.model.types[t]!.area;
        current = this.poolWeight();
      }
      if (!effort.spend(this.fill.looked + REBUILD_STEPS + STEPS_PER_PART * this.gathered)) break;
    }
    return this.pool.length === 0 ? { layouts: [...this.sheets], cost: this.cost } : undefined;
  }

  private keep(l: Layout): void {
    if (this.harvest.size >= MOST_KEPT || l.placed.length > MOST_PARTS) return;
    const s = this.model.stocks[l.stock]!;
    if (this.filledArea(l) < 0.8 * s.w * s.h) return;
    const key = `${l.stock}:${l.placed.map((p) => p.type).sort((a, b) => a - b)}`;
    if (!this.harvest.has(key)) this.harvest.set(key, l);
  }

  private poolWeight(): number {
    let sum = 0;
    for (const t of this.pool) sum += this.weight[t]!;
    return sum;
  }

  /** Rebuilds one to three sheets; the new weight of the pool, or -1 when that is more than `allowed`. */
  private rebuild(target: number, allowed: number): number {
    const { random, fill } = this;
    const u = random.unit();
    const want = Math.min(this.sheets.length, u < 0.2 ? 1 : u < 0.85 ? 2 : 3);
    const chosen: number[] = [];
    while (chosen.length < want) {
      let i = random.below(this.sheets.length);
      if (random.unit() < LOOSER) {
        const j = random.below(this.sheets.length);
        if (this.waste[j]! > this.waste[i]!) i = j;
      }
      if (!chosen.includes(i)) chosen.push(i);
    }
    const n = this.gather(chosen);
    this.order(n);
    const plan = this.restock(chosen, target);
    fill.reset();
    const fit = random.below(FIT_RULES);
    const split = random.below(SPLIT_RULES);
    const together = plan.length > 1 && random.unit() < 0.2;
    const serve = random.unit() < SERVED;
    const reach = 1 + random.below(MOST_REACH);
    const { items, weight } = this;
    let rest = n;
    for (let s = 0; s < plan.length; s++) {
      fill.open(plan[s]!);
      if (together && s + 1 < plan.length) continue;
      if (serve) {
        rest = fill.serve(items, rest, reach, split, random);
        continue;
      }
      let kept = 0;
      let failed = -1;
      let lost = s + 1 < plan.length ? Number.NEGATIVE_INFINITY : 0;
      for (let i = 0; i < rest; i++) {
        const t = items[i]!;
        if (t === failed || !fill.place(t, fit, split, random)) {
          items[kept++] = t;
          failed = t;
          lost += weight[t]!;
          if (lost > allowed) return -1;
        }
      }
      rest = kept;
      if (!together) fill.close();
    }
    let left = 0;
    for (let i = 0; i < rest; i++) left += weight[items[i]!]!;
    if (left > allowed) return -1;
    this.replace(chosen, fill.layouts(), rest);
    return left;
  }

  /** The parts of the chosen sheets and of the pool, into `items`. */
  private gather(chosen: readonly number[]): number {
    let n = 0;
    let size = this.pool.length;
    for (const i of chosen) size += this.sheets[i]!.placed.length;
    if (size > this.items.length) {
      this.items = new Int32Array(2 * size);
      this.keys = new Float64Array(2 * size);
    }
    for (const i of chosen) for (const p of this.sheets[i]!.placed) this.items[n++] = p.type;
    for (const t of this.pool) this.items[n++] = t;
    this.gathered = n;
    return n;
  }

  /** Sorts `items` by a random measure with noise, largest first. */
  private order(n: number): void {
    const { random, items, keys, weight, model } = this;
    const measure = random.below(6);
    const noise = NOISE[random.below(NOISE.length)]!;
    for (let i = 0; i < n; i++) {
      const t = items[i]!;
      const p = model.types[t]!;
      let key = weight[t]! / p.area;
      if (measure < 2) key *= p.area;
      else if (measure === 2) key *= Math.max(p.w, p.h) ** 2;
      else if (measure === 3) key *= p.w * p.w;
      else if (measure === 4) key *= p.h * p.h;
      else key *= (p.w + p.h) ** 2;
      keys[i] = key * (1 + noise * (random.unit() - random.unit()));
    }
    sortDown(keys, items, n);
  }

  /** The stocks to rebuild on: those of the chosen sheets, or others within the cost that is left. */
  private restock(chosen: readonly number[], target: number): number[] {
    const { model, random } = this;
    const same = chosen.map((i) => this.sheets[i]!.stock);
    if (model.stocks.length === 1) return same;
    let budget = target - this.cost;
    for (const s of same) {
      budget += model.stocks[s]!.cost;
      this.used[s]!--;
    }
    const plan: number[] = [];
    if (random.unit() < 0.5) {
      for (const s of same) {
        plan.push(s);
        this.used[s]!++;
        budget -= model.stocks[s]!.cost;
      }
    }
    for (;;) {
      const open = model.stocks
        .map((_, i) => i)
        .filter((i) => this.used[i]! < model.stocks[i]!.limit && model.stocks[i]!.cost <= budget);
      if (open.length === 0 || plan.length > chosen.length + 2) break;
      const s = open[random.below(open.length)]!;
      plan.push(s);
      this.used[s]!++;
      budget -= model.stocks[s]!.cost;
    }
    for (const s of plan) this.used[s]!--;
    for (const s of same) this.used[s]!++;
    return plan;
  }

  private replace(chosen: readonly number[], layouts: readonly Layout[], rest: number): void {
    chosen
      .slice()
      .sort((a, b) => b - a)
      .forEach((i) => {
        this.drop(i);
      });
    this.pool = [];
    for (let i = 0; i < rest; i++) this.pool.push(this.items[i]!);
    for (const l of layouts) {
      if (l.placed.length === 0) continue;
      this.sheets.push(l);
      this.waste.push(this.freeArea(l));
      this.keep(l);
      this.used[l.stock]!++;
      this.cost += this.model.stocks[l.stock]!.cost;
    }
  }
}

/** Most sheets kept for the column generation. */
const MOST_KEPT = 3000;
