import { costPerArea, escalated, priceByMargin, priceByMarkup } from "../../core/cost/price.ts";
import { needed } from "../basis/term.ts";
import { quantityOf } from "../declare/cell-function.ts";
import { measure, number, quantity } from "../declare/scalar.ts";
import { familyFunction } from "./family.ts";

const PAGES = "Margin and markup pages (two trade sites)";

const cost = measure("$", { says: "cost", min: 0, max: 1e10 });

export const margin = familyFunction({
  name: "COST_MARGIN",
  summary: "Price that keeps a margin, a share of the price; the working shows the equal markup.",
  params: { cost },
  placed: { margin: needed("margin") },
  returns: quantityOf("$", "price = cost / (1 - margin)"),
  sources: [`${PAGES}: margin = (price - cost) / price, by definition`],
  example: {
    args: { cost: 80, margin: 0.2 },
    gives: 100,
    within: 0.5,
    source: `${PAGES}: cost 80, price 100, margin 20 %`,
  },
  refuses: [
    { args: { margin: 1 }, says: "it must be at least 0 and below 1" },
    { args: { cost: null }, says: "Cost is missing" },
  ],
  notFor: "A percentage on top of the cost is a markup: COST_MARKUP.",
  run: (a, tape) => priceByMargin(a.cost, a.margin, tape),
});

export const markup = familyFunction({
  name: "COST_MARKUP",
  summary: "Price with a markup, a share of the cost; the working shows the equal margin.",
  params: { cost },
  placed: { markup: needed("markup") },
  returns: quantityOf("$", "price = cost x (1 + markup)"),
  sources: [`${PAGES}: markup = (price - cost) / cost, by definition`],
  example: {
    args: { cost: 80, markup: 0.25 },
    gives: 100,
    within: 0.5,
    source: `${PAGES}: cost 80, price 100, markup 25 %`,
  },
  refuses: [
    { args: { markup: 250 }, says: "it must be from 0 to 5" },
    { args: { cost: null }, says: "Cost is missing" },
  ],
  notFor: "A percentage of the price is a margin: COST_MARGIN.",
  run: (a, tape) => priceByMarkup(a.cost, a.markup, tape),
});

export const escalate = familyFunction({
  name: "COST_ESCALATE",
  summary: "A cost after some years of rising prices, compound.",
  params: {
    cost,
    years: number({
      says: "years from the price to the purchase, parts of a year too; of two dates (later - earlier) / 365.25",
      min: 0,
      max: 50,
      usual: { min: 0, max: 15, ask: "is it years, not months or days?" },
    }),
  },
  placed: { escalation: needed("escalation") },
  returns: quantityOf("$", "cost then"),
  sources: ["Compound interest, exact arithmetic"],
  example: {
    args: { cost: 100_000, years: 2.5, escalation: 0.04 },
    gives: 110_301.99,
    within: 0.005,
    source: "exact arithmetic: 100,000 x 1.04^2.5",
  },
  refuses: [
    { args: { years: 250 }, says: "it must be from 0 to 50" },
    { args: { cost: null }, says: "Cost is missing" },
  ],
  notFor: "A price that has jumped, such as lumber in a shortage, takes a new quotation and not a rate.",
  run: (a, tape) => escalated(a.cost, a.years, a.escalation, tape),
});

export const perArea = familyFunction({
  name: "COST_PERAREA",
  summary: "Cost or price of a square foot.",
  params: {
    cost,
    area: quantity("ft2", {
      says: "floor area",
      min: 1,
      max: 1e7,
      usual: { min: 100, max: 100_000, ask: "is it in square feet?" },
    }),
  },
  returns: quantityOf("$/ft2", "cost of one square foot"),
  sources: ["exact arithmetic"],
  example: {
    args: { cost: 192_000, area: 1536 },
    gives: 125,
    within: 1e-9,
    source: "exact arithmetic: 192,000 / 1536",
  },
  refuses: [
    { args: { area: 0 }, says: "it must be from 1 to 10000000 ft2" },
    { args: { cost: null }, says: "Cost is missing" },
  ],
  notFor: "none, because it is a plain quotient; compare only buildings whose areas were measured alike.",
  run: (a, tape) => costPerArea(a.cost, a.area, tape),
});
