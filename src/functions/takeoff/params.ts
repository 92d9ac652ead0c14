import { BadInput, plain } from "../../core/kit/refusal.ts";
import type { Opening } from "../../core/takeoff/opening.ts";
import { parseSheetSize } from "../../core/takeoff/sheet-size.ts";
import type { Wall } from "../../core/takeoff/wall.ts";
import { tableOf } from "../declare/cell-function.ts";
import { optional, type Param } from "../declare/param.ts";
import { capital, length, quantity, share, text, whole } from "../declare/scalar.ts";
import { table } from "../declare/table.ts";

/** Parameters that the takeoff functions share. */

/** The columns of every range of openings. */
export const OPENING_COLUMNS = {
  name: text({ says: "name of the opening", heads: ["opening", "mark", "tag", "window", "door"] }),
  width: length("ft", { says: "width of the rough opening", min: 0.25, max: 100 }),
  height: length("ft", { says: "height of the rough opening", min: 0.25, max: 100 }),
  count: optional(
    whole({ says: "how many alike", min: 1, max: 10_000, heads: ["quantity", "qty", "number"] }),
    1,
    "one",
  ),
  sill: optional(
    length("ft", {
      says: "bottom of the opening above the foot of the wall",
      min: 0,
      max: 100,
      heads: ["sill height"],
    }),
    0,
    "on the foot of the wall",
  ),
  left: optional(
    length("ft", {
      says: "left edge from the left end of the wall",
      above: 0,
      max: 2000,
      heads: ["left edge", "from left", "position"],
    }),
    undefined,
    "",
  ),
};

const MOST_OPENINGS = 5000;

const openingTable = table(OPENING_COLUMNS, {
  says: "openings, one a row: name | width | height | count | sill height | left edge; lengths in ft or as text",
  maxRows: 1000,
});

/** The openings of a wall or of a job: the same columns in every takeoff function. */
export const openings: Param<readonly Opening[], readonly (readonly (string | number | boolean | null)[])[]> = {
  ...openingTable,
  read(raw, at, notes) {
    const { value, shown } = openingTable.read(raw, at, notes);
    const total = value.reduce((sum, r) => sum + r.count, 0);
    if (total > MOST_OPENINGS) {
      throw new BadInput(
        `${capital(at)} counts ${total} openings`,
        `at most ${MOST_OPENINGS} are worked with at once`,
        "Check the counts, or split the range",
      );
    }
    return { value: value.map(openingOf), shown };
  },
};

/** A row of openings in the words of the core. */
export function openingOf(row: {
  readonly name: string;
  readonly width: number;
  readonly height: number;
  readonly count: number;
  readonly sill: number;
  readonly left: number | undefined;
}): Opening {
  return {
    name: row.name,
    widthFt: row.width,
    heightFt: row.height,
    count: row.count,
    sillFt: row.sill,
    leftFt: row.left,
  };
}

export const noOpenings = (says = "no openings") => optional<readonly Opening[], OpeningRows>(openings, [], says);
type OpeningRows = readonly (readonly (string | number | boolean | null)[])[];

/** Waste, always the caller's to give; left out, none is added and the working says so. */
export const waste = optional(
  share({
    says: "waste on top of the measured quantity, as a share: 10% or 0.1",
    usual: { min: 0, max: 0.25, ask: "is so much waste meant?" },
  }),
  0,
  "no waste is added",
);

/** A wall by its length, the height of its straight part, and the rise of a gable. */
export const wallLength = length("ft", { says: "length of the wall", min: 0.1, max: 2000 });
export const wallHeight = length("ft", { says: "height of the straight part", min: 0.1, max: 100 });
export const gableRise = optional(
  length("ft", { says: "rise of the gable triangle above the straight part", min: 0, max: 100 }),
  0,
  "no gable",
);

export function wallOf(a: { readonly length: number; readonly height: number; readonly gableRise: number }): Wall {
  return { lengthFt: a.length, heightFt: a.height, gableRiseFt: a.gableRise };
}

/** Rows of an order, the same from every takeoff function that gives them. */
export const orderReturns = (says: string) =>
  tableOf(says, [
    ["item", ""],
    ["quantity", ""],
    ["unit", ""],
    ["packs", ""],
    ["pack", ""],
  ]);

/** Two sides such as 4x8, in either order. */
export const sheetSides: Param<{ readonly widthFt: number; readonly lengthFt: number }, string> = {
  kind: "text",
  unit: "",
  says: "size of one board or sheet, such as 4x8 or 48 x 96 in",
  read(raw, at, notes) {
    const { value } = text({ says: "a size such as 4x8" }).read(raw, at, notes);
    const sides = parseSheetSize(value);
    const size = { widthFt: Math.min(...sides), lengthFt: Math.max(...sides) };
    return { value: size, shown: `${value} = ${plain(size.widthFt)} x ${plain(size.lengthFt)} ft` };
  },
};

const areaOfSheet = quantity("ft2", { says: "area of one sheet", min: 0.1, max: 1000 });

/** The size of a sheet as text (two sides), or its area in ft2. */
export const sheetArea: Param<number, number | string> = {
  ...areaOfSheet,
  says: "size of one sheet such as 4x8 or 48 x 96 in, or its area in ft2",
  read(raw, at, notes) {
    const cell = Array.isArray(raw) && raw.length === 1 && raw[0]?.length === 1 ? raw[0][0] : raw;
    if (typeof cell !== "string" || !/[x×*]|\bby\b/i.test(cell)) return areaOfSheet.read(raw, at, notes);
    const [a, b] = parseSheetSize(cell);
    return { value: a * b, shown: `${cell.trim()} = ${plain(a * b)} ft2` };
  },
};
