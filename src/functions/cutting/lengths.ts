import { type LengthNesting, nestLengths } from "../../core/cutting/index.ts";
import { lengthsPicture } from "../../core/cutting/pictures.ts";
import type { Table, Tape } from "../../core/kit/tape.ts";
import { cellFunction, quantityOf, tableOf } from "../declare/cell-function.ts";
import {
  type CuttingArguments,
  checkPlaced,
  goal,
  goalValue,
  kerf,
  lengthPartsOf,
  lengthStockOf,
  options,
  trim,
} from "./params.ts";
import { lengthParts, lengthStock } from "./tables.ts";

/** Parts cut from stock lengths. */

const params = {
  parts: lengthParts,
  stock: lengthStock,
  kerf,
  trim: { ...trim, says: "trimmed off each end of a stock length" },
  goal: goal("lengths"),
};
const ASSUMPTIONS = [
  "Lengths count in whole 1/64 in, parts rounded up and stock down; there is one saw cut between any two pieces.",
];
const SOURCES: readonly [string, ...string[]] = [
  "Gilmore, Gomory 1961, 1963 (column generation), lower bound and patterns; search with a fixed effort and seed",
];

type Arguments = CuttingArguments<typeof lengthParts, typeof lengthStock>;

function nest(a: Arguments, tape: Tape | undefined): { readonly nesting: LengthNesting; readonly value: number } {
  const stock = lengthStockOf(a.stock, a.goal);
  const nesting = nestLengths(lengthPartsOf(a.parts), stock, options(a), tape);
  checkPlaced(nesting.unplaced);
  tape?.show(lengthsPicture(nesting));
  return { nesting, value: goalValue(nesting.lengths, nesting.cost, stock, a.goal) };
}

const stockNest = cellFunction({
  name: "STOCK_NEST",
  family: "Takeoff and cutting",
  summary: "Fewest stock lengths, or their least cost, that the parts can be cut from.",
  params,
  returns: quantityOf("", "stock lengths to buy, or their cost; STOCK_LAYOUT gives the cutting list"),
  sources: SOURCES,
  assumptions: ASSUMPTIONS,
  heavy: true,
  example: {
    args: { parts: [["jamb", 45, 4]], stock: [["8 ft", 96]] },
    gives: 2,
    within: 0,
    source: "exact arithmetic: two of 45 in and a saw cut fit in 96 in, three do not",
  },
  run(a, tape) {
    const { nesting, value } = nest(a, tape);
    const how = value === nesting.bound ? "equal to LB: proven least" : "least found; LB is the proven bound";
    tape?.step("N", a.goal === "cost" ? `cost, ${how}` : `stock lengths to buy, ${how}`, value, "", "");
    return value;
  },
});

const stockLayout = cellFunction({
  name: "STOCK_LAYOUT",
  family: "Takeoff and cutting",
  summary: "The cutting list of STOCK_NEST: each part with its stock length and its place on it.",
  params,
  returns: tableOf(
    "a row for each part: stock length by number, part, near end, length, stock, what that length leaves over",
    [
      ["number", ""],
      ["part", ""],
      ["at", "in"],
      ["length", "in"],
      ["stock", ""],
      ["rest", "in"],
    ],
  ),
  sources: SOURCES,
  assumptions: ASSUMPTIONS,
  heavy: true,
  example: {
    args: { parts: [["jamb", 45, 2]], stock: [["8 ft", 96]] },
    gives: [
      [1, "jamb", 0, 45, "8 ft", 5.75],
      [1, "jamb", 45.125, 45, "8 ft", 5.75],
    ],
    within: 0,
    source: "exact arithmetic: the second part starts after 45 in and a saw cut of 1/8 in; 96 - 2 x 45.125 is left",
  },
  run(a, tape) {
    const { nesting } = nest(a, tape);
    const rows: Table = nesting.lengths.flatMap((l, i) =>
      l.pieces.map((p) => [i + 1, p.part, p.atIn, p.lengthIn, l.stock, l.restIn]),
    );
    tape?.step("layout", "each part on its stock length", rows, "in", "");
    return rows;
  },
});

export const lengthFunctions = [stockNest, stockLayout] as const;
