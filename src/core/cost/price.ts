import { plain } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";

/** The markup on cost that gives the same price as a margin on price. */
export function markupOfMargin(margin: number): number {
  return margin / (1 - margin);
}

/** The margin on price that gives the same price as a markup on cost. */
export function marginOfMarkup(markup: number): number {
  return markup / (1 + markup);
}

/**
 * Price that keeps a margin, a share of the price.
 * @param margin 0 to below 1
 * Source: definition, margin = (price - cost) / price.
 */
export function priceByMargin(cost: number, margin: number, tape?: Tape): number {
  tape?.step(
    "markup",
    `equal markup on cost, ${plain(margin)} / (1 - ${plain(margin)})`,
    markupOfMargin(margin),
    "",
    "definition",
  );
  const price = cost / (1 - margin);
  tape?.step("profit", "margin x price", margin * price, "$", "definition");
  tape?.step("price", `${plain(cost)} / (1 - ${plain(margin)})`, price, "$", "definition");
  return price;
}

/**
 * Price with a markup, a share of the cost.
 * @param markup 0 or more
 * Source: definition, markup = (price - cost) / cost.
 */
export function priceByMarkup(cost: number, markup: number, tape?: Tape): number {
  tape?.step(
    "margin",
    `equal margin on price, ${plain(markup)} / (1 + ${plain(markup)})`,
    marginOfMarkup(markup),
    "",
    "definition",
  );
  const price = cost * (1 + markup);
  tape?.step("profit", "markup x cost", markup * cost, "$", "definition");
  tape?.step("price", `${plain(cost)} x (1 + ${plain(markup)})`, price, "$", "definition");
  return price;
}

/**
 * Cost after some years of rising prices, compound.
 * @param years 0 or more, parts of a year too
 * @param yearly share a year; below 0 where prices fall
 * Source: compound interest.
 */
export function escalated(cost: number, years: number, yearly: number, tape?: Tape): number {
  const factor = (1 + yearly) ** years;
  tape?.step("factor", `(1 + ${plain(yearly)})^${plain(years)}`, factor, "", "compound");
  tape?.step("cost", `${plain(cost)} x factor`, cost * factor, "$", "arithmetic");
  return cost * factor;
}

/** Cost of one square foot. */
export function costPerArea(cost: number, areaFt2: number, tape?: Tape): number {
  const each = cost / areaFt2;
  tape?.step("c", `${plain(cost)} / ${plain(areaFt2)} ft2`, each, "$/ft2", "arithmetic");
  return each;
}
