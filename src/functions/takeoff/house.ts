import { BadInput } from "../../core/kit/refusal.ts";
import { planCourses } from "../../core/takeoff/courses/courses.ts";
import type { CoursedWall } from "../../core/takeoff/courses/types.ts";
import { placedOpenings } from "../../core/takeoff/opening.ts";
import { cellFunction } from "../declare/cell-function.ts";
import { optional } from "../declare/param.ts";
import { length, text } from "../declare/scalar.ts";
import { type RowOf, table } from "../declare/table.ts";
import {
  COURSE_ASSUMPTIONS,
  COURSE_CAUTIONS,
  COURSE_SOURCES,
  courseRules,
  jointGap,
  kerf,
  offcuts,
  offcutsReturns,
  offcutsTable,
  panel,
  piecesReturns,
  piecesTable,
} from "./course-params.ts";
import { gableRise, OPENING_COLUMNS, openingOf, wallHeight, wallLength } from "./params.ts";

/** Courses of long panels on several walls that are cut from the same panels. */

const wallName = text({ says: "name of the wall", heads: ["walls"] });
const WALLS = { name: { ...wallName, heads: ["wall"] }, length: wallLength, height: wallHeight, rise: gableRise };
const COLUMNS = {
  wall: wallName,
  position: length("ft", { says: "column line from the left end of the wall", min: 0, max: 2000, heads: ["column"] }),
};
const OPENINGS = { wall: wallName, ...OPENING_COLUMNS };

const params = {
  walls: table(WALLS, { says: "walls: name | length | height | gable rise, in ft", maxRows: 60 }),
  columns: table(COLUMNS, {
    says: "column lines: wall | position in ft, both ends of each wall among them",
    maxRows: 2000,
  }),
  panel,
  openings: optional(
    table(OPENINGS, {
      says: "openings: wall | name | width | height | count | sill height | left edge; lengths in ft",
      maxRows: 500,
    }),
    [],
    "no openings",
  ),
  offcuts,
  jointGap,
  kerf,
};

function wallsOf(
  walls: readonly RowOf<typeof WALLS>[],
  columns: readonly RowOf<typeof COLUMNS>[],
  openings: readonly RowOf<typeof OPENINGS>[],
): readonly CoursedWall[] {
  const key = (name: string) => name.trim().toLowerCase();
  const known = new Set(walls.map((w) => key(w.name)));
  const twice = walls.find((w, i) => walls.findIndex((v) => key(v.name) === key(w.name)) !== i);
  if (twice !== undefined) {
    throw new BadInput(
      `The wall ${twice.name} in row ${twice.row} of walls is there twice`,
      "columns and openings go by the name of their wall",
      "Give each wall its own name",
    );
  }
  for (const [range, rows] of [
    ["columns", columns],
    ["openings", openings],
  ] as const) {
    const stray = rows.find((r) => !known.has(key(r.wall)));
    if (stray !== undefined) {
      throw new BadInput(
        `The wall ${stray.wall} in row ${stray.row} of ${range} is unknown`,
        `the walls are ${walls.map((w) => w.name).join(", ")}`,
        "Write the name as in the range of walls",
      );
    }
  }
  return walls.map((w) => ({
    name: w.name,
    wall: { lengthFt: w.length, heightFt: w.height, gableRiseFt: w.rise },
    columnsFt: columns.filter((c) => key(c.wall) === key(w.name)).map((c) => c.position),
    openings: placedOpenings(openings.filter((o) => key(o.wall) === key(w.name)).map(openingOf)),
  }));
}

const EXAMPLE = {
  walls: [
    ["a", 16, 4],
    ["b", 16, 4],
  ],
  columns: [
    ["a", 0],
    ["a", 16],
    ["b", 0],
    ["b", 16],
  ],
  panel: "4x32",
} as const;

const house = cellFunction({
  name: "HOUSE_COURSES",
  family: "Takeoff and cutting",
  summary:
    "Courses of long panels on all walls of a house, cut from the same panels: WALL_COURSES with the joints of all walls chosen together.",
  params,
  returns: piecesReturns,
  sources: COURSE_SOURCES,
  assumptions: COURSE_ASSUMPTIONS,
  cautions: COURSE_CAUTIONS,
  heavy: true,
  example: {
    args: EXAMPLE,
    gives: [
      ["a 1-1", 1, 0.0625 / 12, 191.875, 48, 1, 0, 0, "panel 1", ""],
      ["b 1-1", 1, 0.0625 / 12, 191.875, 48, 1, 192, 0, "panel 1", ""],
    ],
    within: 1e-9,
    source: "exact arithmetic: two pieces of 192 - 1/8 in and a saw cut of 1/8 in out of 384 in",
  },
  run: (a, tape) =>
    piecesTable(planCourses(wallsOf(a.walls, a.columns, a.openings), a.offcuts, courseRules(a), tape), tape),
});

const houseOffcuts = cellFunction({
  name: "HOUSE_OFFCUTS",
  family: "Takeoff and cutting",
  summary: "What the plan of HOUSE_COURSES leaves over, window cut-outs and panel ends, as stock rows for SHEETS_NEST.",
  params,
  returns: offcutsReturns,
  sources: COURSE_SOURCES,
  assumptions: COURSE_ASSUMPTIONS,
  cautions: COURSE_CAUTIONS,
  heavy: true,
  example: {
    args: {
      ...EXAMPLE,
      walls: [["a", 16, 4]],
      columns: [
        ["a", 0],
        ["a", 16],
      ],
    },
    gives: [["rest of panel 1", 192, 48, 0, 1]],
    within: 1e-9,
    source: "exact arithmetic: 384 - 191.875 - 1/8 = 192 in",
  },
  run: (a, tape) =>
    offcutsTable(planCourses(wallsOf(a.walls, a.columns, a.openings), a.offcuts, courseRules(a), tape), tape),
});

export const houseFunctions = [house, houseOffcuts] as const;
