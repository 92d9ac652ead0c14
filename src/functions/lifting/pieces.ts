import { BadInput } from "../../core/kit/refusal.ts";
import type { Tape } from "../../core/kit/tape.ts";
import { optional } from "../declare/param.ts";
import { length, quantity, whole } from "../declare/scalar.ts";
import { type RowOf, table } from "../declare/table.ts";
import { text } from "../declare/word.ts";

const place = (axis: string) =>
  optional(
    length("ft", {
      says: `${axis} of the piece's own center of gravity`,
      min: -1000,
      max: 1000,
      usual: { min: -100, max: 100, ask: "is it in feet?" },
    }),
    undefined,
    "",
  );

const piece = text({ says: "name of the piece", heads: ["name", "part"] });
const heads = ["weight each", "each"];
const USUAL_LB = { min: 5, max: 40_000, ask: "is it in pounds?" } as const;
const SIZES = {
  length: optional(length("ft", { says: "length of one", above: 0, max: 120 }), undefined, ""),
  width: optional(length("ft", { says: "width of one, across the truck", above: 0, max: 40 }), undefined, ""),
  thickness: optional(
    length("in", {
      says: "height of one as it lies, in",
      above: 0,
      max: 200,
      usual: { min: 1.5, max: 120, ask: "is it in inches?" },
    }),
    undefined,
    "",
  ),
  count: optional(whole({ says: "how many alike", min: 1, max: 500, heads: ["quantity", "qty", "number"] }), 1, "one"),
  x: place("x"),
  y: place("y"),
  z: place("z"),
  turn: optional(
    whole({ says: "turn of erection: 1 stands first", min: 1, max: 10_000, heads: ["order of erection", "order"] }),
    undefined,
    "",
  ),
};

/** Pieces that each weigh something. */
export const pieces = table(
  {
    piece,
    weight: quantity("lb", { says: "weight of one", above: 0, max: 200_000, usual: USUAL_LB, heads }),
    ...SIZES,
  },
  { says: "the pieces, one kind a row: piece, weight, length, width, thickness, count, x, y, z, turn", maxRows: 200 },
);

/** Pieces with their places; a weight below 0 is a hole. */
export const placedPieces = table(
  {
    piece,
    weight: quantity("lb", {
      says: "weight of one, below 0 for a hole",
      min: -200_000,
      max: 200_000,
      usual: { ...USUAL_LB, eitherSign: true },
      heads,
    }),
    ...SIZES,
  },
  {
    says: "the pieces, one kind a row: piece, weight, length, width, thickness, count, x, y, z",
    maxRows: 500,
    unlike: true,
  },
);

type PlacedRow = Pick<RowOf<typeof SIZES>, "x" | "y" | "z" | "row">;

/** A place along an axis where some rows have one and this one is blank counts as 0, which is said. */
export function axisOf(
  rows: readonly PlacedRow[],
  axis: "x" | "y" | "z",
  tape: Tape | undefined,
): (row: PlacedRow) => number {
  const blank = rows.filter((r) => r[axis] === undefined);
  if (blank.length === rows.length) tape?.assume(`No ${axis} is given: all are at ${axis} 0.`);
  else if (blank.length > 0) tape?.caution(`A blank ${axis} counts as 0: row ${blank.map((r) => r.row).join(", ")}.`);
  return (row) => row[axis] ?? 0;
}

/** The size of a piece that the truck must know. */
export function sizeOf(
  row: RowOf<typeof SIZES> & { readonly piece: string },
  size: "length" | "width" | "thickness",
): number {
  const value = row[size];
  if (value !== undefined) return value;
  throw new BadInput(
    `The piece ${row.piece} in row ${row.row} of pieces has no ${size}`,
    "a load is laid out by length and width in feet and thickness in inches",
    `Fill in its ${size}`,
  );
}
