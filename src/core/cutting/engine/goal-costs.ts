import { BadInput } from "../../kit/refusal.ts";
import { costUnits } from "./sixty-fourths.ts";

/** Plain order of code units: the same on every machine, whatever its language. */
export const byText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** What the goal counts for one piece of each stock, a whole number. */
export function goalCosts(
  stocks: readonly { id: string; cost: number; quantity: number | null }[],
  options: { goal: "sheets" | "cost" },
): number[] {
  const costs = stocks.map((s) => costUnits(`The cost of stock ${s.id}`, s.cost));
  if (costs.every((c) => c === 0)) return costs.map(() => 1);
  stocks.forEach((s, i) => {
    if (costs[i] === 0 && s.quantity === null) {
      throw new BadInput(
        `Stock ${s.id} costs nothing and has no quantity`,
        "stock at no cost without end leaves nothing to make least",
        "Give its cost or how many there are",
      );
    }
  });
  return options.goal === "cost" ? costs : costs.map((c) => (c > 0 ? 1 : 0));
}
