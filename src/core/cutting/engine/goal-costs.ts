import { BadInput } from "../../kit/refusal.ts";
import { costUnits } from "./sixty-fourths.ts";

/** Plain order of code units: the same on every machine, whatever its language. */
export const byText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

interface PricedStock {
  readonly id: string;
  readonly cost: number;
  readonly quantity: number | null;
}

/** What one has at no price. */
export const isOnHand = (s: PricedStock): boolean => s.quantity !== null && s.cost === 0;

/**
 * What the first goal counts for one piece of each stock, a whole number: its price, or 1 for what is bought. What one
 * has costs nothing unless a price says so; where there is nothing else, it is counted all the same.
 */
export function goalCosts(stocks: readonly PricedStock[], options: { goal: "sheets" | "cost" }): number[] {
  const prices = priceUnits(stocks);
  if (prices.every((c) => c === 0)) {
    const bought = stocks.some((s) => !isOnHand(s));
    return stocks.map((s) => (bought && isOnHand(s) ? 0 : 1));
  }
  stocks.forEach((s, i) => {
    if (prices[i] === 0 && s.quantity === null) {
      throw new BadInput(
        `Stock ${s.id} has neither a price nor a number on hand`,
        "others have a price, and stock at no cost without end leaves nothing to make least",
        "Give its price or how many there are",
      );
    }
  });
  return options.goal === "cost" ? prices : prices.map((c) => (c > 0 ? 1 : 0));
}

/** Prices in whole units of cost. */
export const priceUnits = (stocks: readonly PricedStock[]): number[] =>
  stocks.map((s) => costUnits(`The price of stock ${s.id}`, s.cost));

/** Whether a bound shows that not all parts can be cut: it needs the stand-in, which is dearer than all the stock together. */
export const isShort = (
  stocks: readonly { readonly cost: number; readonly limit: number; readonly index: number }[],
  bound: number,
): boolean =>
  stocks.some((s) => s.index < 0) && bound > stocks.reduce((sum, s) => sum + (s.index < 0 ? 0 : s.cost * s.limit), 0);
