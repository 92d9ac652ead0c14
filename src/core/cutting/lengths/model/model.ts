import { BadInput } from "../../../kit/refusal.ts";
import { at } from "../../engine/at.ts";
import { byText, goalCosts, priceUnits } from "../../engine/goal-costs.ts";
import { misfitsRefused, nameOfPart } from "../../engine/misfits.ts";
import { gcd, sizeDown, sizeUp, wholeCount } from "../../engine/sixty-fourths.ts";
import type { NestOptions } from "../../engine/types.ts";
import type { LengthPart, LengthStock } from "./types.ts";

export interface LengthType {
  readonly size: number;
  readonly need: number;
  readonly members: readonly { readonly part: number; readonly quantity: number }[];
}

export interface LengthStockType {
  readonly size: number;
  /** what the first goal counts for one */
  readonly cost: number;
  /** in units of cost */
  readonly price: number;
  /** lost at each end, sixty-fourths */
  readonly trim: number;
  readonly limit: number;
  /** place in the caller's list; -1 for the stand-in that holds what the limited stock cannot */
  readonly index: number;
}

/** The length problem in whole numbers, longest first: part + kerf into stock - 2 trim + kerf. */
export interface LengthModel {
  readonly types: readonly LengthType[];
  readonly stocks: readonly LengthStockType[];
  readonly unit: number;
  readonly kerf: number;
  readonly total: number;
  readonly costStep: number;
}

/** Reads parts and stock into whole numbers; refuses parts that fit no stock, by name. */
export function lengthModel(
  parts: readonly LengthPart[],
  stocks: readonly LengthStock[],
  options: NestOptions,
): LengthModel {
  const kerf = sizeUp("The kerf", options.kerfIn, 0);
  if (stocks.length === 0) throw new BadInput("There is no stock", "parts are cut from stock", "Add a stock length");
  const goal = goalCosts(stocks, options);
  const prices = priceUnits(stocks);
  const total = parts.reduce((sum, p) => sum + wholeCount(`The quantity of ${nameOfPart(p)}`, p.quantity, 0), 0);
  const usable = stocks
    .map((s, index) => ({ ...s, index, trim: sizeUp(`The trim of ${s.id}`, s.trimIn ?? options.trimIn, 0) }))
    .map(({ index, trim, ...s }) => ({
      size: sizeDown(`The length of stock ${s.id}`, s.lengthIn) - 2 * trim + kerf,
      cost: at(goal, index),
      price: at(prices, index),
      trim,
      limit: Math.min(total, s.quantity === null ? total : wholeCount(`The quantity of stock ${s.id}`, s.quantity, 0)),
      index,
    }))
    .filter((s) => s.limit > 0);
  const longest = Math.max(0, ...usable.map((s) => s.size));
  const groups = new Map<number, { part: number; quantity: number }[]>();
  const misfits = new Set<LengthPart>();
  parts.forEach((p, part) => {
    const size = sizeUp(`The length of ${nameOfPart(p)}`, p.lengthIn) + kerf;
    if (p.quantity === 0) return;
    if (size > longest) misfits.add(p);
    groups.set(size, [...(groups.get(size) ?? []), { part, quantity: p.quantity }]);
  });
  if (misfits.size > 0) {
    throw misfitsRefused(
      [...misfits],
      stocks,
      "a part must fit inside a stock length after trim",
      "Correct the length, or add a longer stock length",
    );
  }
  const shortest = Math.min(...groups.keys());
  const real = usable.filter((s) => s.size >= shortest);
  const unit = [...groups.keys(), ...real.map((s) => s.size)].reduce(gcd, 0) || 1;
  const types = [...groups].map(([size, members]) => ({
    size: size / unit,
    need: members.reduce((sum, m) => sum + m.quantity, 0),
    members: members.sort((a, b) => byText(at(parts, a.part).id, at(parts, b.part).id) || a.part - b.part),
  }));
  const order = real
    .map((s) => ({ ...s, size: s.size / unit }))
    .sort(
      (a, b) =>
        b.size - a.size ||
        a.cost - b.cost ||
        a.limit - b.limit ||
        byText(at(stocks, a.index).id, at(stocks, b.index).id) ||
        a.index - b.index,
    );
  return {
    types: types.sort((a, b) => b.size - a.size),
    stocks: withStandIn(order, total),
    unit,
    kerf,
    total,
    costStep: order.reduce((g, s) => gcd(g, s.cost), 0) || 1,
  };
}

/** Where the longest stock is limited, a stand-in dearer than all else holds what is left over. */
function withStandIn(stocks: readonly LengthStockType[], total: number): LengthStockType[] {
  const size = stocks[0]?.size ?? 0;
  if (stocks.some((s) => s.size === size && s.limit >= total)) return [...stocks];
  const allCosts = stocks.reduce((sum, s) => sum + s.cost * s.limit, 0);
  return [...stocks, { size, cost: allCosts + 1, price: 0, trim: 0, limit: total, index: -1 }];
}
