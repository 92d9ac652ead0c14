import { BadInput, plain } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import { COST_KINDS, type CostKind, type CostLine } from "./lines.ts";
import type { BidPicture } from "./pictures.ts";
import { marginOfMarkup, markupOfMargin } from "./price.ts";

export interface BidShares {
  /** office overhead, on cost with tax */
  readonly overhead: number;
  /** for risk, on cost with overhead */
  readonly contingency: number;
  /** on materials */
  readonly salesTax: number;
  /** on the price */
  readonly bond: number;
  /** exactly one of the two is given */
  readonly margin: number | undefined;
  readonly markup: number | undefined;
}

export interface BidStep {
  readonly step: string;
  /** what the share is of, $ */
  readonly on: number;
  readonly share: number;
  readonly amount: number;
  /** all steps so far, $ */
  readonly running: number;
}

/**
 * From direct cost to price: cost by kind, sales tax on materials, overhead on cost with tax, contingency on the sum, margin on the price or markup on the
 * cost with all that, bond on the price. The last row sums all steps anew and takes the price off: nothing is left.
 * @throws BadInput for a margin and a markup together, for neither, or for margin and bond that leave nothing for cost
 * Source: the order of the build-up is the office's; margin and markup by definition.
 */
export function bidBuildUp(lines: readonly CostLine[], shares: BidShares, tape?: Tape): readonly BidStep[] {
  checkShares(shares);
  const steps: BidStep[] = [];
  const add = (step: string, on: number, share: number, amount = on * share): number => {
    const running = (steps.at(-1)?.running ?? 0) + amount;
    steps.push({ step, on, share, amount, running });
    tape?.step(step, share === 1 ? "sum of its lines" : `${plain(share)} x ${plain(on)}`, amount, "$", "arithmetic");
    return running;
  };
  const sumOf = (kind: CostKind | undefined) =>
    lines.filter((l) => l.kind === kind).reduce((sum, l) => sum + l.amount, 0);
  for (const kind of [...COST_KINDS, undefined]) {
    if (lines.some((l) => l.kind === kind)) add(kind ?? "other", sumOf(kind), 1);
  }
  const cost = add("sales tax", sumOf("material"), shares.salesTax);
  const withOverhead = add("overhead", cost, shares.overhead);
  const withRisk = add("contingency", withOverhead, shares.contingency);
  const price = priceOf(withRisk, shares);
  if (shares.margin === undefined) add("markup", withRisk, shares.markup ?? 0);
  else add("margin", price, shares.margin);
  add("bond", price, shares.bond);
  sayProfit(withRisk, price, shares, tape);
  steps.push({ step: "price", on: 0, share: 1, amount: price, running: price });
  tape?.step("price", "cost with overhead and contingency, profit and bond", price, "$", "arithmetic");
  const check = steps.slice(0, -1).reduce((sum, s) => sum + s.amount, 0) - price;
  // A sum of parts is off by rounding of the last bits at most.
  const left = Math.abs(check) < 1e-9 * Math.max(1, price) ? 0 : check;
  steps.push({ step: "check", on: price, share: 0, amount: left, running: price + left });
  tape?.step("check", "sum of the steps less the price", left, "$", "must be 0");
  tape?.show(bidPicture(steps, price));
  return steps;
}

function priceOf(cost: number, { margin, markup, bond }: BidShares): number {
  return margin === undefined ? (cost * (1 + (markup ?? 0))) / (1 - bond) : cost / (1 - margin - bond);
}

function checkShares({ margin, markup, bond }: BidShares): void {
  if (margin !== undefined && markup !== undefined) {
    throw new BadInput(
      `Both a margin of ${plain(margin)} and a markup of ${plain(markup)} are given`,
      "a margin is a share of the price, a markup one of the cost: one bid has one of them",
      "Leave one out",
    );
  }
  if (margin === undefined && markup === undefined) {
    throw new BadInput(
      "Neither margin nor markup is given",
      "the price would hold no profit",
      "Give one of them; type none for a bid without profit",
    );
  }
  if ((margin ?? 0) + bond >= 1) {
    throw new BadInput(
      "Margin and bond together take the whole price",
      "nothing is left for the cost",
      "Check both; they are shares of the price",
    );
  }
}

function sayProfit(cost: number, price: number, { margin, markup, bond }: BidShares, tape: Tape | undefined): void {
  if (margin !== undefined) {
    tape?.step(
      "markup",
      `equal markup on cost of the margin ${plain(margin)}`,
      markupOfMargin(margin),
      "",
      "before bond",
    );
  } else {
    tape?.step(
      "margin",
      `equal margin on price of the markup ${plain(markup ?? 0)}`,
      marginOfMarkup(markup ?? 0),
      "",
      "before bond",
    );
  }
  tape?.step(
    "profit",
    `price ${plain(price)} - cost ${plain(cost)} - bond`,
    price * (1 - bond) - cost,
    "$",
    "arithmetic",
  );
}

function bidPicture(steps: readonly BidStep[], price: number): BidPicture {
  const shown = steps.filter((s) => s.step !== "check" && s.step !== "price" && s.amount !== 0);
  return {
    kind: "bid",
    alt: `Build-up of a price of $${Math.round(price)}: ${shown.map((s) => `${s.step} $${Math.round(s.amount)}`).join(", ")}`,
    price,
    steps: shown.map(({ step, amount, running }) => ({ step, from: running - amount, to: running })),
  };
}
