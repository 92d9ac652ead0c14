import { alikeSheets, recordSheets, sheetsPicture } from "../../core/cutting/index.ts";
import type { Cell, Table, Tape } from "../../core/kit/tape.ts";
import { quantityOf, tableOf } from "../declare/cell-function.ts";
import { familyFunction } from "./family.ts";
import { LEAST_LEFTOVER_IN, sheetLeftovers } from "./leftovers.ts";
import { asksOf, nameOf, optionsOf, type SheetArguments, sheetPlan, sheetTerms } from "./problem.ts";
import { sheetParts, sheetStock } from "./tables.ts";

/** Parts cut from sheets. */

const common = {
  params: { parts: sheetParts, stock: sheetStock },
  placed: sheetTerms,
  sources: [
    "Gilmore, Gomory 1961, 1963 (column generation); Fekete, Schepers 2001 (dual-feasible functions): lower bounds; search with a fixed effort and seed",
  ],
  assumptions: [
    "Every cut runs from edge to edge of the piece on the saw; sizes count in whole 1/64 in, parts rounded up and stock down.",
    "Goals in order: the fewest sheets or the least cost, then their price, the size of the stock used, one large leftover, few ways to cut, few turns on the saw. None is made worse for a later one.",
    "With a limit of stages, the cut that trims a part when it is alone on the saw is not counted.",
  ],
  heavy: true,
  asks: asksOf,
} as const;

/** The plan, with its working and its picture. */
function planned(a: SheetArguments, tape: Tape | undefined) {
  const nesting = sheetPlan(a, tape);
  if (tape) {
    recordSheets(nesting, optionsOf(a), tape);
    tape.show(sheetsPicture(nesting, nameOf));
  }
  return nesting;
}

const sheetsNeeded = familyFunction({
  ...common,
  name: "SHEETS_NEEDED",
  summary: "Fewest sheets, or their least cost, that the parts can be cut from, edge to edge, with grain and saw cuts.",
  returns: quantityOf(
    "",
    "sheets to buy, or their cost; SHEETS_LAYOUT gives the cutting list, SHEETS_BOUND the proven least",
  ),
  example: {
    args: { parts: [["shelf", 48, 24, 8, "along"]], stock: [["plywood", 96, 48]], kerf: "none" },
    gives: 2,
    within: 0,
    source: "exact arithmetic: four parts of 48 x 24 fill a sheet of 96 x 48",
  },
  refuses: [
    { args: { cuttingGoal: "cost" }, says: "no stock has a price" },
    {
      args: { stock: [["plywood", 3, 48]] },
      says: "a part must fit inside a sheet after trim, turned only where it may be turned",
    },
    { args: { stock: [["plywood", 96, 48, "", 1]] }, says: "no plan cuts all parts from the numbers on hand" },
    { args: { kerf: 2 }, says: "it must be from 0 to 1 in" },
  ],
  notFor: "Parts that are not rectangles, and routers that cut round shapes, need a nesting program.",
  run(a, tape) {
    const { value, bound } = planned(a, tape);
    const how = value === bound ? "equal to LB: proven least" : "least found; LB is the proven bound";
    tape?.step("N", a.cuttingGoal === "cost" ? `cost, ${how}` : `sheets to buy, ${how}`, value, "", "");
    return value;
  },
});

const sheetsLayout = familyFunction({
  ...common,
  name: "SHEETS_LAYOUT",
  summary:
    "The cutting list: sheets that are cut alike once, each part in the order of the saw, with its cut and stage.",
  returns: tableOf(
    "a row for each part: type of sheet and how many are cut so, stock, number and stage of the cut that sets the part free, lower left corner, extents as laid, whether it is turned, its mark",
    [
      ["type", ""],
      ["alike", ""],
      ["sheet", ""],
      ["cut", ""],
      ["stage", ""],
      ["part", ""],
      ["x", "in"],
      ["y", "in"],
      ["length", "in"],
      ["width", "in"],
      ["turned", ""],
      ["mark", ""],
    ],
  ),
  example: {
    args: { parts: [["top", 48, 48, 4, "along", "T"]], stock: [["plywood", 96, 48]], kerf: "none" },
    gives: [
      [1, 2, "plywood", 1, 1, "top", 0, 0, 48, 48, "no", "T"],
      [1, 2, "plywood", 1, 1, "top", 48, 0, 48, 48, "no", "T"],
    ],
    within: 0,
    source: "exact arithmetic: two parts of 48 x 48 fill a sheet of 96 x 48, and one cut parts them",
  },
  refuses: [
    { args: { cuttingGoal: "cost" }, says: "no stock has a price" },
    { args: { stock: [["plywood", 96, 48, "", 1]] }, says: "no plan cuts all parts from the numbers on hand" },
    { args: { kerf: 2 }, says: "it must be from 0 to 1 in" },
  ],
  notFor: "Parts that are not rectangles, and routers that cut round shapes, need a nesting program.",
  run(a, tape) {
    const rows: Table = alikeSheets(planned(a, tape)).flatMap(({ of, numbers }, i) =>
      of.placements.map((p): Cell[] => {
        const { part, mark } = nameOf(p.part);
        const place = [p.xIn, p.yIn, p.lengthIn, p.widthIn];
        return [i + 1, numbers.length, of.stock, p.cut, p.stage, part, ...place, p.turned ? "yes" : "no", mark];
      }),
    );
    tape?.step("layout", "each part in the order of the saw", rows, "", "");
    return rows;
  },
});

const sheetsBound = familyFunction({
  ...common,
  name: "SHEETS_BOUND",
  summary: "The proven least: no way of cutting these parts edge to edge takes fewer sheets, or costs less.",
  returns: quantityOf(
    "",
    "lower bound in sheets to buy, or in cost; when SHEETS_NEEDED equals it, nothing better exists",
  ),
  example: {
    args: { parts: [["shelf", 48, 24, 9, "along"]], stock: [["plywood", 96, 48]], kerf: "none" },
    gives: 3,
    within: 0,
    source: "exact arithmetic: 9 x 48 x 24 / (96 x 48) = 2.25, rounded up",
  },
  refuses: [
    {
      args: { stock: [["plywood", 3, 48]] },
      says: "a part must fit inside a sheet after trim, turned only where it may be turned",
    },
    { args: { stock: [["plywood", 96, 48, "", 1]] }, says: "no plan cuts all parts from the numbers on hand" },
    { args: { stock: [["plywood", 0, 48]] }, says: "it must be from 1 to 1200 in" },
  ],
  notFor: "The plan itself takes SHEETS_LAYOUT: this only says how good any plan can be.",
  run(a, tape) {
    const { bound, method } = planned(a, tape);
    tape?.step("LB", `lower bound by ${method}`, bound, "", "");
    return bound;
  },
});

const sheetsOffcuts = familyFunction({
  ...common,
  name: "SHEETS_OFFCUTS",
  summary: "What the cutting list leaves over, as stock rows for the next job.",
  returns: tableOf(
    "a row for each size of leftover, the largest first; one row that says none where nothing is left over",
    [
      ["stock", ""],
      ["length", "in"],
      ["width", "in"],
      ["price", ""],
      ["number on hand", ""],
      ["trim", "in"],
    ],
  ),
  assumptions: [
    ...common.assumptions,
    `Leftovers of less than ${LEAST_LEFTOVER_IN} in either way are not listed; a blank price is nothing, a blank trim is none.`,
  ],
  example: {
    args: { parts: [["top", 60, 48, 2, "along"]], stock: [["plywood", 96, 48]], kerf: "none" },
    gives: [["plywood offcut 1", 36, 48, "", 2, ""]],
    within: 0,
    source: "exact arithmetic: 96 - 60 = 36 is left of either sheet",
  },
  refuses: [
    { args: { edgeTrim: 6 }, says: "a part must fit inside a sheet after trim, turned only where it may be turned" },
    { args: { cuttingGoal: "cost" }, says: "no stock has a price" },
    { args: { stock: [["plywood", 96, 48, "", 1]] }, says: "no plan cuts all parts from the numbers on hand" },
    { args: { kerf: 2 }, says: "it must be from 0 to 1 in" },
  ],
  notFor: "Leftovers of a job already cut are measured on the rack.",
  run(a, tape) {
    const rows = sheetLeftovers(planned(a, tape));
    tape?.step("offcuts", "leftovers, the largest first", rows, "", "");
    return rows;
  },
});

export const sheetFunctions = [sheetsNeeded, sheetsLayout, sheetsBound, sheetsOffcuts] as const;
