import { planCourses } from "../../core/takeoff/courses/courses.ts";
import type { CoursedWall } from "../../core/takeoff/courses/types.ts";
import { type Opening, placedOpenings } from "../../core/takeoff/opening.ts";
import { cellFunction } from "../declare/cell-function.ts";
import {
  COURSE_ASSUMPTIONS,
  COURSE_CAUTIONS,
  COURSE_SOURCES,
  columnLines,
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
import { gableRise, noOpenings, wallHeight, wallLength, wallOf } from "./params.ts";

/** Courses of long panels on the columns of one wall. */

const params = {
  length: wallLength,
  height: wallHeight,
  columns: columnLines,
  panel,
  openings: noOpenings(),
  gableRise,
  offcuts,
  jointGap,
  kerf,
};

function oneWall(a: {
  readonly length: number;
  readonly height: number;
  readonly gableRise: number;
  readonly columns: readonly number[];
  readonly openings: readonly Opening[];
}): readonly CoursedWall[] {
  return [{ name: "the wall", wall: wallOf(a), columnsFt: a.columns, openings: placedOpenings(a.openings) }];
}

const courses = cellFunction({
  name: "WALL_COURSES",
  family: "Takeoff and cutting",
  summary:
    "Courses of long panels on a wall: each piece with its panel; joints on columns and staggered, openings cut out, gables raked, fewest panels.",
  params,
  returns: piecesReturns,
  sources: COURSE_SOURCES,
  assumptions: COURSE_ASSUMPTIONS,
  cautions: COURSE_CAUTIONS,
  heavy: true,
  example: {
    args: { length: 48, height: 4, columns: [[0, 32, 48]], panel: "4x32" },
    gives: [
      ["1-1", 1, 0.0625 / 12, 383.875, 48, 1, 0, 0, "panel 1", ""],
      ["1-2", 1, 32 + 0.0625 / 12, 191.875, 48, 2, 0, 0, "panel 2", ""],
    ],
    within: 1e-9,
    source: "exact arithmetic: the one joint at 32 ft; 384 - 1/8 and 192 - 1/8 in",
  },
  run: (a, tape) => piecesTable(planCourses(oneWall(a), a.offcuts, courseRules(a), tape), tape),
});

const leftovers = cellFunction({
  name: "WALL_OFFCUTS",
  family: "Takeoff and cutting",
  summary: "What the plan of WALL_COURSES leaves over, window cut-outs and panel ends, as stock rows for SHEETS_NEST.",
  params,
  returns: offcutsReturns,
  sources: COURSE_SOURCES,
  assumptions: COURSE_ASSUMPTIONS,
  cautions: COURSE_CAUTIONS,
  heavy: true,
  example: {
    args: { length: 48, height: 4, columns: [[0, 32, 48]], panel: "4x32" },
    gives: [["rest of panel 2", 192, 48, 0, 1]],
    within: 1e-9,
    source: "exact arithmetic: 384 - 191.875 - 1/8 saw cut = 192 in",
  },
  run: (a, tape) => offcutsTable(planCourses(oneWall(a), a.offcuts, courseRules(a), tape), tape),
});

export const courseFunctions = [courses, leftovers] as const;
