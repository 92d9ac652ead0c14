import { BadInput } from "../../../kit/refusal.ts";
import { at } from "../../engine/at.ts";
import { byText, goalCosts, priceUnits } from "../../engine/goal-costs.ts";
import { misfitsRefused, nameOfPart } from "../../engine/misfits.ts";
import { gcd, sizeDown, sizeUp, wholeCount } from "../../engine/sixty-fourths.ts";
import type { NestOptions } from "../../engine/types.ts";
import type { SheetPart, SheetStock } from "./types.ts";

/** Parts of one size, whatever their names. Sizes are inflated by the kerf and divided by the model's `unit`. */
export interface PartType {
  readonly w: number;
  readonly h: number;
  readonly turns: boolean;
  readonly need: number;
  readonly area: number;
  /** the named parts of this size in a fixed order */
  readonly members: readonly { readonly part: number; readonly quantity: number }[];
}

/** Stock of one size, trimmed and inflated by one kerf: part + kerf into sheet - 2 trim + kerf. */
export interface StockType {
  readonly w: number;
  readonly h: number;
  /** what the first goal counts for one sheet */
  readonly cost: number;
  /** in units of cost */
  readonly price: number;
  /** lost along each edge, sixty-fourths */
  readonly trim: number;
  /** at most so many; never more than there are parts */
  readonly limit: number;
  /** place in the caller's list; -1 for the stand-in that holds what the limited stock cannot */
  readonly index: number;
}

/**
 * The sheet problem in whole numbers, in an order that does not depend on the order of the input rows.
 * A layout with a kerf between any two parts is a plain guillotine layout of the inflated sizes.
 */
export interface SheetModel {
  readonly types: readonly PartType[];
  readonly stocks: readonly StockType[];
  /** sixty-fourths of an inch in one unit of the model */
  readonly unit: number;
  readonly kerf: number;
  /** most stages of cuts before a part is trimmed; undefined: any number */
  readonly stages: 2 | 3 | undefined;
  readonly total: number;
  /** every total of the goal is a multiple of this */
  readonly costStep: number;
}

export const fits = (t: { w: number; h: number; turns: boolean }, s: { w: number; h: number }): boolean =>
  (t.w <= s.w && t.h <= s.h) || (t.turns && t.h <= s.w && t.w <= s.h);

interface Sized {
  w: number;
  h: number;
  turns: boolean;
  part: number;
  quantity: number;
}

/** Turning is dropped where it changes nothing, and the one fitting way is taken where only one fits. */
function settleTurn(p: Sized, stocks: readonly { w: number; h: number }[]): Sized {
  if (!p.turns) return p;
  const upright = stocks.some((s) => p.w <= s.w && p.h <= s.h);
  const across = stocks.some((s) => p.h <= s.w && p.w <= s.h);
  if (p.w === p.h || (upright && !across)) return { ...p, turns: false };
  if (across && !upright) return { ...p, w: p.h, h: p.w, turns: false };
  return p.w >= p.h ? p : { ...p, w: p.h, h: p.w };
}

function mergeTypes(parts: readonly SheetPart[], sized: readonly Sized[]): PartType[] {
  const groups = new Map<string, Sized[]>();
  for (const p of sized) {
    const key = `${p.w} ${p.h} ${p.turns}`;
    const group = groups.get(key);
    if (group) group.push(p);
    else groups.set(key, [p]);
  }
  const types = [...groups.values()].map((group) => {
    const first = at(group, 0);
    return {
      w: first.w,
      h: first.h,
      turns: first.turns,
      need: group.reduce((sum, p) => sum + p.quantity, 0),
      area: first.w * first.h,
      members: group.sort((a, b) => byText(at(parts, a.part).id, at(parts, b.part).id) || a.part - b.part),
    };
  });
  return types.sort((a, b) => b.area - a.area || b.w - a.w || b.h - a.h || Number(a.turns) - Number(b.turns));
}

/** Reads parts and stock into whole numbers; refuses parts that fit no stock, by name. */
export function sheetModel(
  parts: readonly SheetPart[],
  stocks: readonly SheetStock[],
  options: NestOptions,
): SheetModel {
  const kerf = sizeUp("The kerf", options.kerfIn, 0);
  if (stocks.length === 0) throw new BadInput("There is no stock", "parts are cut from stock", "Add a stock size");
  const goal = goalCosts(stocks, options);
  const prices = priceUnits(stocks);
  const total = parts.reduce((sum, p) => sum + wholeCount(`The quantity of ${nameOfPart(p)}`, p.quantity, 0), 0);
  const trims = stocks.map((s) => sizeUp(`The trim of ${s.id}`, s.trimIn ?? options.trimIn, 0));
  const sheets = stocks.map((s, index) => ({
    w: sizeDown(`The length of stock ${s.id}`, s.lengthIn) - 2 * at(trims, index) + kerf,
    h: sizeDown(`The width of stock ${s.id}`, s.widthIn) - 2 * at(trims, index) + kerf,
    cost: at(goal, index),
    price: at(prices, index),
    trim: at(trims, index),
    limit: Math.min(total, s.quantity === null ? total : wholeCount(`The quantity of stock ${s.id}`, s.quantity, 0)),
    index,
  }));
  const sized = parts
    .map((p, part) => ({
      w: sizeUp(`The length of ${nameOfPart(p)}`, p.lengthIn) + kerf,
      h: sizeUp(`The width of ${nameOfPart(p)}`, p.widthIn) + kerf,
      turns: p.turns,
      part,
      quantity: p.quantity,
    }))
    .filter((p) => p.quantity > 0);
  const usable = sheets.filter((s) => s.limit > 0 && s.w > kerf && s.h > kerf && sized.some((p) => fits(p, s)));
  const misfits = sized.filter((p) => !usable.some((s) => fits(p, s))).map((p) => at(parts, p.part));
  if (misfits.length > 0) {
    throw misfitsRefused(
      misfits,
      stocks,
      "a part must fit inside a sheet after trim, turned only where it may be turned",
      "Correct the size, allow turning, or add a larger stock size",
    );
  }
  const settled = sized.map((p) => settleTurn(p, usable));
  const unit = [...settled, ...usable].reduce((g, p) => gcd(gcd(g, p.w), p.h), 0) || 1;
  const types = mergeTypes(
    parts,
    settled.map((p) => ({ ...p, w: p.w / unit, h: p.h / unit })),
  );
  const order = usable
    .map((s) => ({ ...s, w: s.w / unit, h: s.h / unit }))
    .sort(
      (a, b) =>
        b.w * b.h - a.w * a.h ||
        b.w - a.w ||
        a.cost - b.cost ||
        a.limit - b.limit ||
        byText(at(stocks, a.index).id, at(stocks, b.index).id),
    );
  return {
    types,
    stocks: withStandIn(types, order, total),
    unit,
    kerf,
    stages: options.stages,
    total,
    costStep: order.reduce((g, s) => gcd(g, s.cost), 0) || 1,
  };
}

/** Where limited stock may not suffice, a stand-in sheet dearer than all else holds what is left over. */
function withStandIn(types: readonly PartType[], stocks: readonly StockType[], total: number): StockType[] {
  const endless = stocks.filter((s) => s.limit >= total);
  if (types.every((t) => endless.some((s) => fits(t, s)))) return [...stocks];
  const allCosts = stocks.reduce((sum, s) => sum + s.cost * Math.min(s.limit, total), 0);
  const side = (of: (t: { w: number; h: number }) => number): number => Math.max(...[...types, ...stocks].map(of));
  const w = side((t) => t.w);
  const h = side((t) => t.h);
  const span = types.some((t) => t.turns) ? Math.max(w, h) : 0;
  const [long, wide] = [Math.max(w, span), Math.max(h, span)];
  return [...stocks, { w: long, h: wide, cost: allCosts + 1, price: 0, trim: 0, limit: total, index: -1 }];
}
