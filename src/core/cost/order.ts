import { BadInput, plain } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";

/** A line of an order list: whole packs of an item. */
export interface OrderedItem {
  readonly item: string;
  readonly packs: number;
}

export interface PackPrice {
  readonly item: string;
  /** $ a pack */
  readonly price: number;
}

export interface PricedItem {
  readonly item: string;
  readonly packs: number;
  readonly price: number;
  readonly amount: number;
}

const key = (name: string) => name.trim().toLowerCase().replace(/\s+/g, " ");

/**
 * An order list with its prices, and the total.
 * @throws BadInput for an item without a price, or one with two
 * Arithmetic.
 */
export function pricedOrder(
  order: readonly OrderedItem[],
  prices: readonly PackPrice[],
  tape?: Tape,
): { readonly items: readonly PricedItem[]; readonly total: number } {
  const priceOf = new Map<string, number>();
  for (const { item, price } of prices) {
    if (priceOf.has(key(item))) {
      throw new BadInput(`The prices give ${item} twice`, "one item has one price a pack", "Leave one of the rows out");
    }
    priceOf.set(key(item), price);
  }
  const items = order.map(({ item, packs }): PricedItem => {
    const price = priceOf.get(key(item));
    if (price === undefined) throw noPrice(item, prices);
    tape?.step("amount", `${item}: ${plain(packs)} x ${plain(price)}`, packs * price, "$", "arithmetic");
    return { item, packs, price, amount: packs * price };
  });
  const total = items.reduce((sum, i) => sum + i.amount, 0);
  tape?.step("total", "sum of the amounts", total, "$", "arithmetic");
  return { items, total };
}

function noPrice(item: string, prices: readonly PackPrice[]): BadInput {
  const some = prices.slice(0, 5).map((p) => p.item);
  return new BadInput(
    `"${item}" has no price`,
    `the prices hold ${some.join(", ")}${prices.length > some.length ? " and more" : ""}`,
    "Add a row with this name and its price a pack",
  );
}
