import { BadInput } from "../../core/kit/refusal.ts";
import type { Tape } from "../../core/kit/tape.ts";
import { planCourses } from "../../core/takeoff/courses/courses.ts";
import type { CoursePiece, CoursePlan, Offcut } from "../../core/takeoff/courses/types.ts";
import { placedOpenings } from "../../core/takeoff/wall/opening.ts";
import { needed, orElse } from "../basis/term.ts";
import { NONE, offcutStock, type SheetStockRow } from "../cutting/tables.ts";
import { capital } from "../declare/cell.ts";
import type { ArgumentsOf } from "../declare/cell-function.ts";
import { columnsOf } from "../declare/columns.ts";
import { optional } from "../declare/param.ts";
import { mapped } from "../declare/scalar.ts";
import { spill } from "../declare/spill.ts";
import type { ExampleRows } from "../declare/table.ts";
import { familyFunction } from "./family.ts";
import { columnLines, columns, openedWalls, someOpenings, walls } from "./walls.ts";

/** Courses of long panels on the columns of walls, and what they leave over. */

/** Most offcuts on hand, each counted. */
const MOST_OFFCUTS = 500;

const offcuts = optional<readonly Offcut[], ExampleRows>(
  mapped(offcutStock, (rows, at) => {
    const all = rows.flatMap(offcutsOf);
    if (all.length <= MOST_OFFCUTS) return all;
    throw new BadInput(
      `${capital(at)} counts ${all.length} offcuts`,
      `at most ${MOST_OFFCUTS} are worked with`,
      "Give the larger ones",
    );
  }),
  [],
  "no offcuts on hand",
);

/** A row of stock as the pieces that are there; one where it does not say how many. */
function offcutsOf(row: SheetStockRow): readonly Offcut[] {
  const count = row.onHand ?? 1;
  const off = 2 * (row.trim ?? 0);
  return Array.from({ length: Math.min(count, MOST_OFFCUTS + 1) }, (_, i) => ({
    name: count === 1 ? row.stock : `${row.stock} #${i + 1}`,
    lengthIn: row.length - off,
    widthIn: row.width - off,
  })).filter((o) => o.lengthIn > 0 && o.widthIn > 0);
}

const params = { walls, columns, openings: someOpenings };
const placed = {
  panelSize: needed("panel size"),
  kerf: orElse("kerf"),
  jointGap: orElse("joint gap"),
  leastLeg: orElse("least leg"),
  offcuts,
};

function plan(a: ArgumentsOf<typeof params & typeof placed>, tape: Tape | undefined): CoursePlan {
  const lines = columnLines(a.walls, a.columns);
  const coursed = openedWalls(a.walls, a.openings).map(({ wall, openings }, i) => ({
    wall,
    openings: placedOpenings(openings, tape),
    columnsFt: lines[i] ?? [],
  }));
  const rules = {
    panelLengthFt: a.panelSize.lengthFt,
    panelWidthFt: a.panelSize.widthFt,
    jointGapIn: a.jointGap,
    kerfIn: a.kerf,
    leastLegIn: a.leastLeg,
  };
  return planCourses(coursed, a.offcuts, rules, tape);
}

const PIECES = columnsOf<CoursePiece>(
  ["wall", "", (p) => p.wall],
  ["piece", "", (p) => p.name],
  ["course", "", (p) => p.course],
  ["left", "ft", (p) => p.leftFt],
  ["length", "in", (p) => p.lengthIn],
  ["height", "in", (p) => p.heightIn],
  ["panel", "", (p) => (p.panel === 0 ? "offcut" : p.panel)],
  ["from left", "in", (p) => p.alongIn],
  ["from bottom", "in", (p) => p.upIn],
  ["from", "", (p) => p.from],
  ["cuts", "", (p) => p.cuts],
  ["mark", "", (p) => p.mark],
);

/** Leftovers in the layout of the stock table. */
interface StockRow {
  readonly stock: string;
  readonly lengthIn: number;
  readonly widthIn: number;
  readonly price: number;
  readonly onHand: number;
}

const STOCK = columnsOf<StockRow>(
  ["stock", "", (r) => r.stock],
  ["length", "in", (r) => r.lengthIn],
  ["width", "in", (r) => r.widthIn],
  ["price", "", (r) => r.price],
  ["number on hand", "", (r) => r.onHand],
);

/** The leftovers; where there are none, the row that the stock table reads as empty. */
function stockRows({ offcuts: left }: CoursePlan): readonly StockRow[] {
  if (left.length === 0) return [{ stock: NONE, lengthIn: 0, widthIn: 0, price: 0, onHand: 0 }];
  return left.map((o) => ({ stock: o.name, lengthIn: o.lengthIn, widthIn: o.widthIn, price: 0, onHand: 1 }));
}

const SOURCES: readonly [string, ...string[]] = [
  "Joint rules of panel courses: joints on columns, staggered by a bay between courses that touch, no narrow leg beside an opening (common practice, no source)",
  "Search over the joints with a fixed effort, the same on every machine; no plan takes fewer panels than run and area ask for",
];

const ASSUMPTIONS = [
  "Panels lie with their length along the wall and are not turned over or end for end; a raked piece takes the rectangle that holds it.",
  "An opening that takes the whole height of a course leaves that part of the course out; other openings are cut from the panels that cross them.",
  "Cut-outs of openings and offcuts on hand are used first, for pieces that are less than a full course high.",
];

const CAUTIONS = ["Preliminary layout: the strength of panels, lintels and joints is for a licensed professional."];

const courses = familyFunction({
  name: "WALL_COURSES",
  summary:
    "Courses of long panels on one wall or all walls of a house: each piece with its panel; joints on columns and staggered, fewest panels.",
  params,
  placed,
  returns: PIECES.table(
    "a row for each piece: wall, name, course, left end on the wall, size to cut, panel and place on it, what it is cut from, further cuts, mark",
  ),
  sources: SOURCES,
  assumptions: ASSUMPTIONS,
  cautions: CAUTIONS,
  heavy: true,
  example: {
    args: {
      walls: [
        ["north", 16, 4],
        ["south", 16, 4],
      ],
      columns: [
        ["north", 0],
        ["north", 16],
        ["south", 0],
        ["south", 16],
      ],
      panelSize: "4x32",
    },
    gives: [
      ["north", "1-1", 1, 0.0625 / 12, 191.875, 48, 1, 0, 0, "panel 1", "", "N 1-1"],
      ["south", "1-1", 1, 0.0625 / 12, 191.875, 48, 1, 192, 0, "panel 1", "", "S 1-1"],
    ],
    within: 1e-9,
    source: "exact arithmetic: two pieces of 192 - 1/8 in and a saw cut of 1/8 in out of 384 in",
  },
  refuses: [
    { args: { jointGap: 2, panelSize: "0.1x0.1" }, says: "the joint gap takes all of it" },
    {
      args: {
        panelSize: "0.25x32",
        walls: [
          ["north", 16, 90],
          ["south", 16, 90],
        ],
      },
      says: "up to 400 are planned at once",
    },
    {
      args: {
        columns: [
          ["north", 1],
          ["north", 16],
          ["south", 0],
          ["south", 16],
        ],
      },
      says: "with a column at each end",
    },
    { args: { panelSize: "6" }, says: "a size is two sides above 0 with an x between them" },
    { args: { panelSize: "2x6" }, says: "a panel is 6 ft long and a joint must land on a column outside the openings" },
    { args: { walls: [["south", 16, 4]] }, says: "the walls are south" },
    { args: { walls: [["north", 16, 4]] }, says: "the walls are north" },
    { args: { kerf: 2 }, says: "it must be from 0 to 1 in" },
    {
      args: {
        columns: [
          ["south", 50, 1, 1],
          ["south", 90, 2, 1],
        ],
      },
      says: "panels stand on columns, one at each end of a wall at least",
    },
  ],
  notFor: "Panels that stand upright, or are turned over, go by hand or as parts into SHEETS_LAYOUT.",
  run: (a, tape) => spill(PIECES, plan(a, tape).pieces, "table", "each piece of each course", tape),
});

const leftovers = familyFunction({
  name: "WALL_OFFCUTS",
  summary: "What the plan of WALL_COURSES leaves over, cut-outs of openings and ends of panels, as rows of stock.",
  params,
  placed,
  returns: STOCK.table("a row for each leftover of 6 in and more both ways, as stock to cut from"),
  sources: SOURCES,
  assumptions: ASSUMPTIONS,
  cautions: CAUTIONS,
  heavy: true,
  example: {
    args: {
      walls: [["north", 48, 4]],
      columns: [
        ["north", 0],
        ["north", 32],
        ["north", 48],
      ],
      panelSize: "4x32",
    },
    gives: [["rest of panel 2", 192, 48, 0, 1]],
    within: 1e-9,
    source: "exact arithmetic: 384 - 191.875 - 1/8 saw cut = 192 in",
  },
  refuses: [
    { args: { panelSize: "6" }, says: "a size is two sides above 0 with an x between them" },
    { args: { panelSize: "2x6" }, says: "a panel is 6 ft long and a joint must land on a column outside the openings" },
    { args: { walls: [["a", 48, 4]] }, says: "the walls are a" },
    { args: { kerf: 2 }, says: "it must be from 0 to 1 in" },
  ],
  notFor: "Offcuts of a plan that the shop has changed are measured on the floor.",
  run: (a, tape) => spill(STOCK, stockRows(plan(a, tape)), "table", "6 in and more both ways, largest first", tape),
});

export const courseFunctions = [courses, leftovers] as const;
