import { BadInput, plain } from "../../core/kit/refusal.ts";
import { columnTable, wallColumns } from "../../core/takeoff/columns.ts";
import { cellFunction, tableOf } from "../declare/cell-function.ts";
import { optional } from "../declare/param.ts";
import { capital, choice, length, oneCell } from "../declare/scalar.ts";
import { noOpenings, wallLength } from "./params.ts";

/** Columns closer than this are no columns: the number was meant in feet. */
const CLOSEST_IN = 12;

const inches = length("in", {
  says: "greatest spacing of the columns in inches, or text such as 8 ft",
  min: CLOSEST_IN,
  max: 480,
  usual: { min: 16, max: 192, ask: "is it in inches?" },
});

/** A spacing; a bare number that can only be feet is refused with both ways to write it. */
const spacing: typeof inches = {
  ...inches,
  read(raw, at, notes) {
    const cell = oneCell(raw, at, inches.says);
    const value = typeof cell === "boolean" || String(cell).trim() === "" ? Number.NaN : Number(cell);
    if (value >= 2 && value < CLOSEST_IN) {
      throw new BadInput(
        `${capital(at)} is ${plain(value)} in`,
        `a bare number is inches, and columns stand ${CLOSEST_IN} in apart at least`,
        `For feet type "${plain(value)} ft" or ${plain(value * 12)}`,
      );
    }
    return inches.read(raw, at, notes);
  },
};

const columns = cellFunction({
  name: "WALL_COLUMNS",
  family: "Takeoff and cutting",
  summary: "Column lines of a wall: near the spacing, none inside an opening, one on each side of every opening.",
  params: {
    length: wallLength,
    spacing,
    openings: noOpenings(),
    layout: optional(
      choice(["module", "even"], {
        says: "how columns stand between ends and openings",
        means: {
          module: "on multiples of the spacing from the left end",
          even: "in equal bays between ends and openings",
        },
      }),
      "module",
      "columns stand on multiples of the spacing from the left end",
    ),
    columnWidth: optional(
      length("in", { says: "width of a column across the face of the wall", min: 0, max: 48 }),
      4.5,
      "columns are 4-1/2 in wide across the face of the wall",
    ),
    reach: optional(
      length("in", { says: "farthest a column beside an opening may stand from its edge", min: 0, max: 240 }),
      24,
      "a column within 24 in of an opening's edge counts as the one beside it",
    ),
  },
  returns: tableOf("a row for each column: its line from the left end, the bay to the one before, what it stands for", [
    ["position", "ft"],
    ["bay", "ft"],
    ["stands", ""],
  ]),
  sources: ["Plane geometry; one column on each side of an opening is common practice, no source"],
  cautions: ["Preliminary layout: what columns, headers and panels carry is for a licensed professional."],
  example: {
    args: { length: 24, spacing: 96, openings: [["W1", 3, 4, 1, 3, 7]], reach: 0, columnWidth: 4.5 },
    gives: [
      [0, 0, "end"],
      [6.8125, 6.8125, "left of W1"],
      [10.1875, 3.375, "right of W1"],
      [16, 5.8125, "spacing"],
      [24, 8, "end"],
    ],
    within: 1e-9,
    source: "exact arithmetic: 7 - 4.5/24 and 10 + 4.5/24 ft; the column at 8 ft would stand in the window",
  },
  run(a, tape) {
    const rules = {
      spacingFt: a.spacing / 12,
      layout: a.layout,
      columnFt: a.columnWidth / 12,
      reachFt: a.reach / 12,
    };
    return columnTable(wallColumns(a.length, a.openings, rules, tape), rules.spacingFt, tape);
  },
});

export const columnFunctions = [columns] as const;
