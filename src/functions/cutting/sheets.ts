import { boundSheets, nestSheets, type SheetNesting } from "../../core/cutting/index.ts";
import { sheetsPicture } from "../../core/cutting/pictures.ts";
import type { Table, Tape } from "../../core/kit/tape.ts";
import { cellFunction, quantityOf, tableOf } from "../declare/cell-function.ts";
import {
  type CuttingArguments,
  checkPlaced,
  goal,
  goalValue,
  kerf,
  options,
  sheetPartsOf,
  sheetStockOf,
  trim,
} from "./params.ts";
import { sheetParts, sheetStock } from "./tables.ts";

/** Parts cut from sheets. */

const params = { parts: sheetParts, stock: sheetStock, kerf, trim, goal: goal("sheets") };
const ASSUMPTIONS = [
  "Every cut runs from edge to edge of the piece on the saw; sizes count in whole 1/64 in, parts rounded up and stock down.",
];
export const SOURCES: readonly [string, ...string[]] = [
  "Gilmore, Gomory 1961, 1963 (column generation); Fekete, Schepers 2001 (dual-feasible functions): lower bounds; search with a fixed effort and seed",
];

type Arguments = CuttingArguments<typeof sheetParts, typeof sheetStock>;

function nest(a: Arguments, tape: Tape | undefined): { readonly nesting: SheetNesting; readonly value: number } {
  const stock = sheetStockOf(a.stock, a.goal);
  const nesting = nestSheets(sheetPartsOf(a.parts, tape), stock, options(a), tape);
  checkPlaced(nesting.unplaced);
  tape?.show(sheetsPicture(nesting));
  return { nesting, value: goalValue(nesting.sheets, nesting.cost, stock, a.goal) };
}

const sheetsNest = cellFunction({
  name: "SHEETS_NEST",
  family: "Takeoff and cutting",
  summary: "Fewest sheets, or their least cost, that the parts can be cut from, edge to edge, with grain and saw cuts.",
  params,
  returns: quantityOf(
    "",
    "sheets to buy, or their cost; SHEETS_LAYOUT gives the cutting list, SHEETS_BOUND the proven least",
  ),
  sources: SOURCES,
  assumptions: ASSUMPTIONS,
  heavy: true,
  example: {
    args: { parts: [["shelf", 48, 24, 8, "along"]], stock: [["plywood", 96, 48]], kerf: "none" },
    gives: 2,
    within: 0,
    source: "exact arithmetic: four parts of 48 x 24 fill a sheet of 96 x 48",
  },
  run(a, tape) {
    const { nesting, value } = nest(a, tape);
    const how = value === nesting.bound ? "equal to LB: proven least" : "least found; LB is the proven bound";
    tape?.step("N", a.goal === "cost" ? `cost, ${how}` : `sheets to buy, ${how}`, value, "", "");
    return value;
  },
});

const sheetsLayout = cellFunction({
  name: "SHEETS_LAYOUT",
  family: "Takeoff and cutting",
  summary: "The cutting list of SHEETS_NEST: each part with its sheet, place and size as laid.",
  params,
  returns: tableOf(
    "a row for each part: sheet, part, lower left corner, extents as laid, whether it is turned, stock",
    [
      ["sheet", ""],
      ["part", ""],
      ["x", "in"],
      ["y", "in"],
      ["length", "in"],
      ["width", "in"],
      ["turned", ""],
      ["stock", ""],
    ],
  ),
  sources: SOURCES,
  assumptions: ASSUMPTIONS,
  heavy: true,
  example: {
    args: { parts: [["top", 48, 48, 2, "along"]], stock: [["plywood", 96, 48]], kerf: "none" },
    gives: [
      [1, "top", 0, 0, 48, 48, false, "plywood"],
      [1, "top", 48, 0, 48, 48, false, "plywood"],
    ],
    within: 0,
    source: "exact arithmetic: two parts of 48 x 48 fill a sheet of 96 x 48",
  },
  run(a, tape) {
    const { nesting } = nest(a, tape);
    const rows: Table = nesting.sheets.flatMap((s, i) =>
      [...s.placements]
        .sort((p, q) => p.xIn - q.xIn || p.yIn - q.yIn)
        .map((p) => [i + 1, p.part, p.xIn, p.yIn, p.lengthIn, p.widthIn, p.turned, s.stock]),
    );
    tape?.step("layout", "each part on its sheet", rows, "in", "");
    return rows;
  },
});

const sheetsBound = cellFunction({
  name: "SHEETS_BOUND",
  family: "Takeoff and cutting",
  summary: "The proven least: no way of cutting these parts edge to edge takes fewer sheets, or costs less.",
  params,
  returns: quantityOf(
    "",
    "lower bound in sheets to buy, or in cost; when SHEETS_NEST equals it, nothing better exists",
  ),
  sources: SOURCES,
  assumptions: ASSUMPTIONS,
  heavy: true,
  example: {
    args: { parts: [["shelf", 48, 24, 9, "along"]], stock: [["plywood", 96, 48]], kerf: "none" },
    gives: 3,
    within: 0,
    source: "exact arithmetic: 9 x 48 x 24 / (96 x 48) = 2.25, rounded up",
  },
  run: (a, tape) => boundSheets(sheetPartsOf(a.parts, tape), sheetStockOf(a.stock, a.goal), options(a), tape).bound,
});

export const sheetFunctions = [sheetsNest, sheetsLayout, sheetsBound] as const;
