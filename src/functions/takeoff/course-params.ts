import { BadInput } from "../../core/kit/refusal.ts";
import type { Table, Tape } from "../../core/kit/tape.ts";
import type { CoursePlan, CourseRules, Offcut } from "../../core/takeoff/courses/types.ts";
import { tableOf } from "../declare/cell-function.ts";
import { optional, type Param } from "../declare/param.ts";
import { isBlank, isRange } from "../declare/raw.ts";
import { capital, length, number, text, whole } from "../declare/scalar.ts";
import { table } from "../declare/table.ts";
import { sheetSides } from "./params.ts";

/** Parameters and results that the functions for courses of panels share. */

const position = length("ft", { says: "column line from the left end of the wall", min: 0, max: 2000 });

/** Column lines: a row or a column of positions, or rows whose first cell is one, as WALL_COLUMNS gives them. */
export const columnLines: Param<readonly number[], number | string | readonly (readonly (number | string)[])[]> = {
  kind: "list",
  unit: "ft",
  says: "column lines from the left end of the wall, both ends among them: a list, or the rows of WALL_COLUMNS",
  read(raw, at, notes) {
    const rows = isRange(raw) ? raw : [[raw]];
    const cells = rows.length === 1 ? (rows[0] ?? []) : rows.map((row) => row[0]);
    const head = rows.length > 1 && typeof cells[0] === "string" && /^(position|columns?)\b/i.test(cells[0].trim());
    const value = cells
      .slice(head ? 1 : 0)
      .flatMap((cell, i) => (isBlank(cell) ? [] : [position.read(cell, `value ${i + 1} of ${at}`, notes).value]));
    if (value.length < 2 || value.length > 2000) {
      throw new BadInput(
        `${capital(at)} holds ${value.length} column lines`,
        "from 2 to 2000 are wanted: the two ends of the wall and what stands between",
        "Give their distances from the left end; WALL_COLUMNS lists them",
      );
    }
    return { value, shown: `${value.length} column lines` };
  },
};

export const panel: typeof sheetSides = {
  ...sheetSides,
  says: "size of a panel, such as 4x32: its width is the height of a course",
};

export const jointGap = optional(
  length("in", { says: "gap left open at each joint and end", min: 0, max: 2 }),
  0.125,
  "pieces are 1/8 in shorter than their bays",
);

export const kerf = optional(
  length("in", { says: "width of a saw cut", min: 0, max: 1 }),
  0.125,
  "a saw cut takes 1/8 in",
);

const offcutTable = table(
  {
    name: text({ says: "name of the offcut", heads: ["offcut", "stock"] }),
    length: length("in", { says: "length along the grain", min: 1, max: 960 }),
    width: length("in", { says: "width across the grain", min: 1, max: 240 }),
    cost: optional(number({ says: "cost, not looked at here", min: 0, max: 1e7, heads: ["price"] }), 0, ""),
    count: optional(
      whole({ says: "how many alike", min: 1, max: 500, heads: ["quantity", "qty", "number", "available"] }),
      1,
      "one",
    ),
  },
  { says: "offcuts on hand: name | length | width | cost | number; sizes in in", maxRows: 200 },
);

/** Offcuts on hand, in the columns that the stock of SHEETS_NEST has and WALL_OFFCUTS gives. */
const offcutsOnHand: Param<readonly Offcut[], readonly (readonly (string | number | boolean | null)[])[]> = {
  ...offcutTable,
  read(raw, at, notes) {
    const { value, shown } = offcutTable.read(raw, at, notes);
    const all = value.flatMap((r) =>
      Array.from({ length: r.count }, (_, i) => ({
        name: r.count === 1 ? r.name : `${r.name} #${i + 1}`,
        lengthIn: r.length,
        widthIn: r.width,
      })),
    );
    if (all.length > 500) {
      throw new BadInput(
        `${capital(at)} counts ${all.length} offcuts`,
        "at most 500 are worked with",
        "Give the larger ones",
      );
    }
    return { value: all, shown };
  },
};

export const offcuts = optional<readonly Offcut[], readonly (readonly (string | number | boolean | null)[])[]>(
  offcutsOnHand,
  [],
  "no offcuts on hand",
);

export function courseRules(a: {
  readonly panel: { readonly lengthFt: number; readonly widthFt: number };
  readonly jointGap: number;
  readonly kerf: number;
}): CourseRules {
  return {
    panelLengthFt: a.panel.lengthFt,
    panelWidthFt: a.panel.widthFt,
    jointGapIn: a.jointGap,
    kerfIn: a.kerf,
  };
}

export const piecesReturns = tableOf(
  "a row for each piece: name, course, left end on the wall, size to cut, panel (0 for an offcut) and place on it, further cuts",
  [
    ["piece", ""],
    ["course", ""],
    ["left", "ft"],
    ["length", "in"],
    ["height", "in"],
    ["panel", ""],
    ["along", "in"],
    ["up", "in"],
    ["from", ""],
    ["cuts", ""],
  ],
);

export const offcutsReturns = tableOf(
  "a row for each leftover, as stock for SHEETS_NEST: name, length, width, cost 0, number 1",
  [
    ["name", ""],
    ["length", "in"],
    ["width", "in"],
    ["cost", ""],
    ["number", ""],
  ],
);

export function piecesTable(plan: CoursePlan, tape: Tape | undefined): Table {
  const rows = plan.pieces.map((p) => [
    p.name,
    p.course,
    p.leftFt,
    p.lengthIn,
    p.heightIn,
    p.panel,
    p.alongIn,
    p.upIn,
    p.from,
    p.cuts,
  ]);
  tape?.step("pieces", "each piece of each course", rows, "", "");
  return rows;
}

export function offcutsTable(plan: CoursePlan, tape: Tape | undefined): Table {
  const rows: (string | number)[][] = plan.offcuts.map((o) => [o.name, o.lengthIn, o.widthIn, 0, 1]);
  if (rows.length === 0) rows.push(["none", 0, 0, 0, 0]);
  tape?.step("offcuts", "6 in and more both ways, largest first", rows, "in", "");
  return rows;
}

export const COURSE_SOURCES: readonly [string, ...string[]] = [
  "Joint rules of panel courses: joints on columns, staggered by a bay between courses that touch (common practice, no source)",
  "Search: annealing over the joints with a fixed effort and seed; lower bound by run and area",
];

export const COURSE_ASSUMPTIONS = [
  "Panels lie with their length along the wall and are not turned over or end for end; a raked piece takes the rectangle that holds it.",
  "An opening that takes the whole height of a course leaves that part of the course out; other openings are cut from the panels that cross them.",
  "Cut-outs of openings and offcuts on hand are used first, for pieces that are less than a full course high.",
];

export const COURSE_CAUTIONS = [
  "Preliminary layout: the strength of panels, lintels and joints is for a licensed professional.",
];
