import { type ColumnRow, columnRows } from "../../core/takeoff/wall/columns.ts";
import { needed, orElse } from "../basis/term.ts";
import { columnsOf } from "../declare/columns.ts";
import { spill } from "../declare/spill.ts";
import { familyFunction } from "./family.ts";
import { openedWalls, someOpenings, walls } from "./walls.ts";

const COLUMNS = columnsOf<ColumnRow>(
  ["wall", "", (r) => r.wall],
  ["position", "ft", (r) => r.positionFt],
  ["bay", "ft", (r) => r.bayFt],
  ["stands", "", (r) => r.stands],
);

const wallColumnsFunction = familyFunction({
  name: "WALL_COLUMNS",
  summary: "Column lines of walls: near the spacing, none inside an opening, one on each side of every opening.",
  params: { walls, openings: someOpenings },
  placed: {
    columnSpacing: needed("column spacing"),
    columnWidth: orElse("column width"),
    columnLayout: orElse("column layout"),
    jambDistance: orElse("jamb distance"),
  },
  returns: COLUMNS.table(
    "a row for each column: its wall, its line from the left end, the bay to the one before, what it stands for",
  ),
  sources: ["Plane geometry; one column on each side of an opening is common practice, no source"],
  cautions: ["Preliminary layout: what columns, headers and panels carry is for a licensed professional."],
  example: {
    args: {
      walls: [["south", 24, 9]],
      openings: [["W1", 3, 4, 1, 3, 7]],
      columnSpacing: 96,
      jambDistance: 3,
    },
    gives: [
      ["south", 0, 0, "end"],
      ["south", 6.8125, 6.8125, "left of W1"],
      ["south", 10.1875, 3.375, "right of W1"],
      ["south", 16, 5.8125, "spacing"],
      ["south", 24, 8, "end"],
    ],
    within: 1e-9,
    source: "exact arithmetic: 7 - 4.5/24 and 10 + 4.5/24 ft; the column at 8 ft would stand in the window",
  },
  refuses: [
    { args: { walls: [["south", 3, 9]] }, says: "south is 3 ft long and 9 ft high" },
    { args: { walls: [["south", 24, 9, -1]] }, says: "a gable rises to its peak" },
    { args: { openings: [["W1", 3, 4, 3, 3, 7]] }, says: "openings alike cannot all be in one place" },
    { args: { openings: [["W1", 3, 4, 1, 3, 0]] }, says: "its place in the wall decides the result" },
    { args: { columnSpacing: 8 }, says: "it must be from 12 to 480 in" },
    {
      args: {
        openings: [
          ["a", 3, 4, 1, 0, 2],
          ["b", 3, 4, 1, 0, 4],
        ],
      },
      says: "a column of 0.375 ft has to stand there",
    },
    { args: { openings: [["a", 3, 4, 1, 0, 0.01]] }, says: "the end columns leave 0.1875 to 23.8125 ft of the wall" },
  ],
  notFor: "Where loads from above must land is the engineer's drawing: this keeps spacings and openings only.",
  run(a, tape) {
    const rules = {
      spacingFt: a.columnSpacing / 12,
      layout: a.columnLayout,
      columnFt: a.columnWidth / 12,
      jambFt: a.jambDistance / 12,
    };
    const rows = columnRows(openedWalls(a.walls, a.openings), rules, tape);
    return spill(COLUMNS, rows, "table", "wall, position, bay, what it stands for", tape);
  },
});

export const columnFunctions = [wallColumnsFunction] as const;
