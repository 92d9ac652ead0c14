import type { Tape } from "../../kit/tape.ts";
import type { Reached } from "./types.ts";

const WORDS: Readonly<
  Record<Reached["goal"], { readonly symbol: string; readonly says: string; readonly unit: string }>
> = {
  count: { symbol: "n", says: "pieces to buy", unit: "pieces" },
  cost: { symbol: "C", says: "cost", unit: "cost" },
  price: { symbol: "C", says: "price of these", unit: "cost" },
  "size of stock": { symbol: "S", says: "stock that is cut", unit: "" },
  "longest leftover": { symbol: "r", says: "longest single leftover", unit: "in" },
  "largest leftover": { symbol: "r", says: "largest single leftover", unit: "in2" },
  patterns: { symbol: "k", says: "different ways to cut", unit: "" },
  turns: { symbol: "t", says: "turns of the panel on the saw", unit: "" },
};

/** The goals in their order, with what was reached and what is proven of each. */
export function recordGoals(nesting: { readonly reached: readonly Reached[] }, tape: Tape): void {
  nesting.reached.forEach(({ goal, value, proven }, i) => {
    const { symbol, says, unit } = WORDS[goal];
    const after = i === 0 ? "first goal" : `goal ${i + 1}, none before it made worse`;
    tape.step(symbol, `${says} (${after}): ${proven ? "proven best" : "best found"}`, value, unit, "");
  });
}
