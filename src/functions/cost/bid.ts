import { type BidStep, bidBuildUp } from "../../core/cost/bid.ts";
import { pricedOrder } from "../../core/cost/order.ts";
import { ifGiven, orElse } from "../basis/term.ts";
import { columnsOf } from "../declare/columns.ts";
import { optional } from "../declare/param.ts";
import { measure, number } from "../declare/scalar.ts";
import { spill } from "../declare/spill.ts";
import { table } from "../declare/table.ts";
import { text } from "../declare/word.ts";
import { familyFunction } from "./family.ts";
import { costLines } from "./lines.ts";

const order = table(
  {
    item: text({ says: "name of the item", heads: ["name", "material"] }),
    quantity: number({ says: "what is needed, with waste", min: 0, max: 1e9, heads: ["needed"] }),
    unit: optional(text({ says: "unit of the quantity" }), "", ""),
    packs: number({ says: "whole packs to order", min: 0, max: 1e6, heads: ["number", "count"] }),
    pack: optional(text({ says: "what a pack is" }), "", ""),
  },
  { says: "an order list as takeoff functions give it: item, quantity, unit, packs, pack", maxRows: 500, unlike: true },
);

const prices = table(
  {
    item: text({ says: "name of the item, as in the order", heads: ["name", "material", "pack"] }),
    price: measure("$", {
      says: "price of a pack",
      min: 0,
      max: 1e6,
      usual: { min: 0.01, max: 100_000, ask: "is it dollars, or its cell blank?" },
      heads: ["price a pack", "cost"],
    }),
  },
  { says: "prices: item, price of a pack $", maxRows: 500 },
);

interface OrderRow {
  readonly item: string;
  readonly packs: number | "";
  readonly price: number | "";
  readonly amount: number;
}

const orderColumns = columnsOf<OrderRow>(
  ["item", "", (r) => r.item],
  ["packs", "", (r) => r.packs],
  ["price", "$", (r) => r.price],
  ["amount", "$", (r) => r.amount],
);

export const costOrder = familyFunction({
  name: "COST_ORDER",
  summary: "An order list with its prices and the total.",
  params: { order, prices },
  placed: {},
  returns: orderColumns.table("packs, price of a pack and amount of each item; last the total"),
  sources: ["exact arithmetic"],
  example: {
    args: {
      order: [
        ["mineral wool board", 3000, "ft2", 94, "board"],
        ["flashing tape", 210, "ft", 3, "roll"],
      ],
      prices: [
        ["flashing tape", 46],
        ["mineral wool board", 58],
      ],
    },
    gives: [
      ["mineral wool board", 94, 58, 5452],
      ["flashing tape", 3, 46, 138],
      ["total", "", "", 5590],
    ],
    within: 1e-9,
    source: "exact arithmetic: 94 x 58 + 3 x 46",
  },
  refuses: [
    { args: { prices: [["flashing tape", 46]] }, says: "the prices hold flashing tape" },
    {
      args: {
        prices: [
          ["flashing tape", -1],
          ["mineral wool board", 58],
        ],
      },
      says: "it must be from 0 to 1000000 $",
    },
    {
      args: {
        prices: [
          ["flashing tape", 46],
          ["mineral wool board", 58],
          ["flashing tape", 40],
        ],
      },
      says: "one item has one price a pack",
    },
  ],
  notFor: "Freight, breaks by quantity and tax at the till are on the supplier's quotation.",
  run(a, tape) {
    const { items, total } = pricedOrder(a.order, a.prices, tape);
    const rows: OrderRow[] = [...items, { item: "total", packs: "", price: "", amount: total }];
    return spill(orderColumns, rows, "order", "packs, price, amount; total", tape);
  },
});

const bidColumns = columnsOf<BidStep>(
  ["step", "", (s) => s.step],
  ["on", "$", (s) => s.on],
  ["share", "", (s) => s.share],
  ["amount", "$", (s) => s.amount],
  ["running total", "$", (s) => s.running],
);

export const bid = familyFunction({
  name: "COST_BID",
  summary: "From direct cost to price: tax, overhead, contingency, margin or markup, bond, with a check sum.",
  params: { costLines },
  placed: {
    overheadShare: orElse("overhead share"),
    contingencyShare: orElse("contingency share"),
    margin: ifGiven("margin"),
    markup: ifGiven("markup"),
    salesTax: orElse("sales tax"),
    bondShare: orElse("bond share"),
  },
  returns: bidColumns.table(
    "each step with what its share is of, its amount and the running total; then price and check, which is 0",
  ),
  sources: [
    "The office's own order of steps: sales tax on materials, overhead on cost with tax, contingency on the sum, bond and margin on the price",
    "Margin and markup by definition",
  ],
  assumptions: [
    "A margin is a share of the price, a markup one of the cost with overhead and contingency: never both.",
  ],
  cautions: ["What a tax falls on is local law; who pays it on subcontracts differs."],
  example: {
    args: {
      costLines: [
        ["direct cost 1", 500_000],
        ["direct cost 2", 300_000],
        ["direct cost 3", 100_000],
      ],
      overheadShare: 0.15,
      contingencyShare: 0.05,
      markup: 0.08,
    },
    gives: [
      ["other", 900_000, 1, 900_000, 900_000],
      ["sales tax", 0, 0, 0, 900_000],
      ["overhead", 900_000, 0.15, 135_000, 1_035_000],
      ["contingency", 1_035_000, 0.05, 51_750, 1_086_750],
      ["markup", 1_086_750, 0.08, 86_940, 1_173_690],
      ["bond", 1_173_690, 0, 0, 1_173_690],
      ["price", 0, 1, 1_173_690, 1_173_690],
      ["check", 1_173_690, 0, 0, 1_173_690],
    ],
    within: 1e-6,
    source: "exact arithmetic on the inputs of an engineering estimating course page (its solution is not shown)",
  },
  refuses: [
    { args: { margin: 0.5 }, says: "a margin is a share of the price, a markup one of the cost: one bid" },
    { args: { bondShare: 1 }, says: "nothing is left for the cost" },
    { args: { markup: null }, says: "the price would hold no profit" },
    { args: { margin: 1 }, says: "it must be at least 0 and below 1" },
  ],
  notFor: "Fee contracts, unit prices and alternates have sums of their own.",
  run(a, tape) {
    const shares = {
      overhead: a.overheadShare,
      contingency: a.contingencyShare,
      salesTax: a.salesTax,
      bond: a.bondShare,
      margin: a.margin,
      markup: a.markup,
    };
    if (a.salesTax > 0 && a.costLines.some((l) => l.kind === undefined)) {
      tape?.assume("A line without a kind is not taxed.");
    }
    return spill(bidColumns, bidBuildUp(a.costLines, shares, tape), "bid", "step by step to the price", tape);
  },
});
