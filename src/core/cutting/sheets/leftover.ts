import type { Random } from "../../kit/random.ts";
import type { Effort } from "../engine/effort.ts";
import { FIT_RULES, SheetFill, SPLIT_RULES } from "./fill.ts";
import type { Layout } from "./plan/layout.ts";
import type { SheetModel } from "./plan/model.ts";

/** Ways tried to lay the parts of one sheet again. */
const TRIES = 60;

/** The largest rectangle left beside or above all parts of a sheet: what the first cut takes off. */
export function largestRest(model: SheetModel, l: Layout): number {
  const s = model.stocks[l.stock]!;
  let right = 0;
  let top = 0;
  for (const p of l.placed) {
    const t = model.types[p.type]!;
    right = Math.max(right, p.x + (p.turned ? t.h : t.w));
    top = Math.max(top, p.y + (p.turned ? t.w : t.h));
  }
  return Math.max((s.w - right) * s.h, s.w * (s.h - top));
}

/**
 * The same sheets with one large leftover: parts of the sheet with the most room go to the others as long as there is a
 * way to lay them, then those that stay are laid so as to leave the largest rectangle.
 */
export function keepOneLarge(
  model: SheetModel,
  layouts: readonly Layout[],
  random: Random,
  effort: Effort,
): readonly Layout[] {
  const now = [...layouts];
  const last = emptiest(model, now);
  if (last < 0) return now;
  const lay = new Relay(model, random, effort);
  for (const moved of [...now[last]!.placed].sort((a, b) => model.types[b.type]!.area - model.types[a.type]!.area)) {
    if (now[last]!.placed.length === 1) break;
    for (let i = 0; i < now.length && !effort.over; i++) {
      const l = now[i]!;
      if (i === last || lay.room(l) < model.types[moved.type]!.area) continue;
      const with1 = lay.again(l.stock, [...l.placed.map((p) => p.type), moved.type], false);
      if (!with1) continue;
      const left = now[last]!.placed.map((p) => p.type);
      left.splice(left.indexOf(moved.type), 1);
      const without = lay.again(now[last]!.stock, left, true);
      if (!without) continue;
      now[i] = with1;
      now[last] = without;
      break;
    }
  }
  const types = now[last]!.placed.map((p) => p.type);
  const better = lay.again(now[last]!.stock, types, true);
  if (better && largestRest(model, better) > largestRest(model, now[last]!)) now[last] = better;
  const most = (all: readonly Layout[]): number => Math.max(...all.map((l) => largestRest(model, l)));
  return most(now) > most(layouts) ? now : layouts;
}

/** The sheet with the most free area. */
function emptiest(model: SheetModel, layouts: readonly Layout[]): number {
  let most = -1;
  let found = -1;
  layouts.forEach((l, i) => {
    const s = model.stocks[l.stock]!;
    const room = s.w * s.h - l.placed.reduce((sum, p) => sum + model.types[p.type]!.area, 0);
    if (room <= most) return;
    most = room;
    found = i;
  });
  return found;
}

/** Lays a few parts on one sheet again. */
class Relay {
  private readonly model: SheetModel;
  private readonly random: Random;
  private readonly effort: Effort;
  private readonly fill: SheetFill;

  constructor(model: SheetModel, random: Random, effort: Effort) {
    this.model = model;
    this.random = random;
    this.effort = effort;
    this.fill = new SheetFill(model);
  }

  room(l: Layout): number {
    const s = this.model.stocks[l.stock]!;
    return s.w * s.h - l.placed.reduce((sum, p) => sum + this.model.types[p.type]!.area, 0);
  }

  /** The first layout that holds all, or the one with the largest rest; undefined where none was found. */
  again(stock: number, types: readonly number[], best: boolean): Layout | undefined {
    const { model, random, fill, effort } = this;
    let found: Layout | undefined;
    let most = -1;
    for (let n = 0; n < TRIES && !effort.over; n++) {
      const noise = n === 0 ? 0 : 0.5;
      const keyed = types.map((t) => ({
        t,
        key: model.types[t]!.area * (1 + noise * (random.unit() - random.unit())),
      }));
      keyed.sort((a, b) => b.key - a.key);
      fill.reset();
      fill.open(stock);
      const fit = random.below(FIT_RULES);
      const split = random.below(SPLIT_RULES);
      const all = keyed.every(({ t }) => fill.place(t, fit, split, random));
      effort.spend(fill.looked + 10 * types.length);
      if (!all) continue;
      const layout = fill.layouts()[0]!;
      if (!best) return layout;
      const rest = largestRest(model, layout);
      if (rest <= most) continue;
      most = rest;
      found = layout;
    }
    return found;
  }
}
