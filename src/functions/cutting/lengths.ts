import { alikeLengths, lengthsPicture, recordLengths } from "../../core/cutting/index.ts";
import type { Cell, Table, Tape } from "../../core/kit/tape.ts";
import { quantityOf, tableOf } from "../declare/cell-function.ts";
import { familyFunction } from "./family.ts";
import { LEAST_LEFTOVER_IN, lengthLeftovers } from "./leftovers.ts";
import { asksOf, type LengthArguments, lengthPlan, lengthTerms, nameOf, optionsOf } from "./problem.ts";
import { lengthParts, lengthStock } from "./tables.ts";

/** Parts cut from stock lengths. */

const common = {
  params: { parts: lengthParts, stock: lengthStock },
  placed: lengthTerms,
  sources: [
    "Gilmore, Gomory 1961, 1963 (column generation), lower bound and patterns; search with a fixed effort and seed",
  ],
  assumptions: [
    "Lengths count in whole 1/64 in, parts rounded up and stock down; there is one saw cut between any two pieces.",
    "Goals in order: the fewest lengths or the least cost, then their price, the size of the stock used, one long leftover, few ways to cut. None is made worse for a later one.",
  ],
  heavy: true,
  asks: asksOf,
} as const;

/** The plan, with its working and its picture. */
function planned(a: LengthArguments, tape: Tape | undefined) {
  const nesting = lengthPlan(a, tape);
  if (tape) {
    recordLengths(nesting, optionsOf(a), tape);
    tape.show(lengthsPicture(nesting, nameOf));
  }
  return nesting;
}

const stockNeeded = familyFunction({
  ...common,
  name: "STOCK_NEEDED",
  summary: "Fewest stock lengths, or their least cost, that the parts can be cut from.",
  returns: quantityOf("", "stock lengths to buy, or their cost; STOCK_LAYOUT gives the cutting list"),
  example: {
    args: { parts: [["jamb", 45, 4]], stock: [["8 ft", 96]] },
    gives: 2,
    within: 0,
    source: "exact arithmetic: two of 45 in and a saw cut fit in 96 in, three do not",
  },
  refuses: [
    {
      args: {
        stock: [
          ["8 ft", 96, 5],
          ["10 ft", 120],
        ],
        cuttingGoal: "cost",
      },
      says: "stock at no cost without end leaves nothing to make least",
    },
    { args: { cuttingGoal: "cost" }, says: "no stock has a price" },
    { args: { stock: [["8 ft", 3]] }, says: "a part must fit inside a stock length after trim" },
    { args: { stock: [["8 ft", 96, "", 1]] }, says: "no plan cuts all parts from the numbers on hand" },
    { args: { kerf: 2 }, says: "it must be from 0 to 1 in" },
  ],
  notFor: "Bars cut on a slant or in bundles at once need the saw maker's own program.",
  run(a, tape) {
    const { value, bound } = planned(a, tape);
    const how = value === bound ? "equal to LB: proven least" : "least found; LB is the proven bound";
    tape?.step("N", a.cuttingGoal === "cost" ? `cost, ${how}` : `stock lengths to buy, ${how}`, value, "", "");
    return value;
  },
});

const stockLayout = familyFunction({
  ...common,
  name: "STOCK_LAYOUT",
  summary: "The cutting list: lengths that are cut alike once, each part with its place, and what is left over.",
  returns: tableOf(
    "a row for each part: type of length and how many are cut so, stock, near end, length, mark; what is left over stands in the last row of a length",
    [
      ["type", ""],
      ["alike", ""],
      ["stock", ""],
      ["part", ""],
      ["at", "in"],
      ["length", "in"],
      ["mark", ""],
      ["rest", "in"],
    ],
  ),
  example: {
    args: { parts: [["jamb", 45, 4, "J"]], stock: [["8 ft", 96]] },
    gives: [
      [1, 2, "8 ft", "jamb", 0, 45, "J", ""],
      [1, 2, "8 ft", "jamb", 45.125, 45, "J", 5.75],
    ],
    within: 0,
    source: "exact arithmetic: the second part starts after 45 in and a saw cut of 1/8 in; 96 - 2 x 45.125 is left",
  },
  refuses: [
    { args: { cuttingGoal: "cost" }, says: "no stock has a price" },
    { args: { stock: [["8 ft", 96, "", 1]] }, says: "no plan cuts all parts from the numbers on hand" },
    { args: { kerf: 2 }, says: "it must be from 0 to 1 in" },
  ],
  notFor: "Bars cut on a slant or in bundles at once need the saw maker's own program.",
  run(a, tape) {
    const rows: Table = alikeLengths(planned(a, tape)).flatMap(({ of, numbers }, i) =>
      of.pieces.map((p, k): Cell[] => {
        const { part, mark } = nameOf(p.part);
        const rest = k === of.pieces.length - 1 ? of.restIn : "";
        return [i + 1, numbers.length, of.stock, part, p.atIn, p.lengthIn, mark, rest];
      }),
    );
    tape?.step("layout", "each part on its stock length", rows, "", "");
    return rows;
  },
});

const stockOffcuts = familyFunction({
  ...common,
  name: "STOCK_OFFCUTS",
  summary: "What the cutting list leaves over, as stock rows for the next job.",
  returns: tableOf(
    "a row for each length of leftover, the longest first; one row that says none where nothing is left over",
    [
      ["stock", ""],
      ["length", "in"],
      ["price", ""],
      ["number on hand", ""],
      ["trim", "in"],
    ],
  ),
  assumptions: [
    ...common.assumptions,
    `Leftovers of less than ${LEAST_LEFTOVER_IN} in are not listed; a blank price is nothing, a blank trim is none.`,
  ],
  example: {
    args: { parts: [["plate", 60, 2]], stock: [["8 ft", 96]] },
    gives: [["8 ft offcut 1", 35.875, "", 2, ""]],
    within: 0,
    source: "exact arithmetic: 96 less the plate of 60 and a saw cut of 1/8 in",
  },
  refuses: [
    { args: { cuttingGoal: "cost" }, says: "no stock has a price" },
    { args: { stock: [["8 ft", 3]] }, says: "a part must fit inside a stock length after trim" },
    { args: { stock: [["8 ft", 96, "", 1]] }, says: "no plan cuts all parts from the numbers on hand" },
    { args: { kerf: 2 }, says: "it must be from 0 to 1 in" },
  ],
  notFor: "Leftovers of a job already cut are measured on the rack.",
  run(a, tape) {
    const rows = lengthLeftovers(planned(a, tape));
    tape?.step("offcuts", "leftovers, the longest first", rows, "", "");
    return rows;
  },
});

export const lengthFunctions = [stockNeeded, stockLayout, stockOffcuts] as const;
