import type { PictureBase } from "../kit/picture.ts";
import { alikeLengths, alikeSheets } from "./alike.ts";
import type { LengthNesting } from "./lengths/model/types.ts";
import type { Cut, Rest, SheetNesting } from "./sheets/plan/types.ts";

/** Name of a part and the mark that is written on it. */
type Label = (part: string) => { readonly part: string; readonly mark: string };

const plainName: Label = (part) => ({ part, mark: "" });

/** Sheets that are cut alike, to be drawn once. */
export interface SheetDrawing {
  /** numbers of the sheets, from 1 */
  readonly numbers: readonly number[];
  readonly stock: string;
  readonly lengthIn: number;
  readonly widthIn: number;
  readonly parts: readonly {
    readonly name: string;
    readonly mark: string;
    readonly xIn: number;
    readonly yIn: number;
    readonly lengthIn: number;
    readonly widthIn: number;
    readonly turned: boolean;
  }[];
  /** in the order of the saw */
  readonly cuts: readonly Cut[];
  /** what is left over, the largest first */
  readonly rests: readonly Rest[];
}

/** Cutting layouts of sheets, x along the length of the sheet. */
export interface CuttingLayoutPicture extends PictureBase {
  readonly kind: "cutting-layout";
  readonly sheets: readonly SheetDrawing[];
}

/** Stock lengths that are cut alike. */
export interface LengthDrawing {
  readonly numbers: readonly number[];
  readonly stock: string;
  readonly lengthIn: number;
  readonly parts: readonly {
    readonly name: string;
    readonly mark: string;
    readonly atIn: number;
    readonly lengthIn: number;
  }[];
  readonly restIn: number;
}

/** Cutting plan of lengths. */
export interface CuttingLengthsPicture extends PictureBase {
  readonly kind: "cutting-lengths";
  readonly lengths: readonly LengthDrawing[];
}

/** The layouts of a nesting; sheets are numbered in its order. */
export function sheetsPicture(nesting: SheetNesting, label: Label = plainName): CuttingLayoutPicture {
  const sheets = alikeSheets(nesting).map(({ of, numbers }) => ({
    numbers,
    stock: of.stock,
    lengthIn: of.lengthIn,
    widthIn: of.widthIn,
    parts: of.placements.map(({ part, xIn, yIn, lengthIn, widthIn, turned }) => {
      const { part: name, mark } = label(part);
      return { name, mark, xIn, yIn, lengthIn, widthIn, turned };
    }),
    cuts: of.cuts,
    rests: of.rests,
  }));
  const parts = nesting.sheets.reduce((sum, s) => sum + s.placements.length, 0);
  return {
    kind: "cutting-layout",
    alt: `Cutting layouts: ${parts} parts on ${nesting.count} sheets, in ${sheets.length} layouts.`,
    sheets,
  };
}

/** The plan of a nesting of lengths; lengths are numbered in its order. */
export function lengthsPicture(nesting: LengthNesting, label: Label = plainName): CuttingLengthsPicture {
  const lengths = alikeLengths(nesting).map(({ of, numbers }) => ({
    numbers,
    stock: of.stock,
    lengthIn: of.lengthIn,
    parts: of.pieces.map(({ part, atIn, lengthIn }) => {
      const { part: name, mark } = label(part);
      return { name, mark, atIn, lengthIn };
    }),
    restIn: of.restIn,
  }));
  const parts = nesting.lengths.reduce((sum, l) => sum + l.pieces.length, 0);
  return {
    kind: "cutting-lengths",
    alt: `Cutting plan: ${parts} parts from ${nesting.count} lengths, in ${lengths.length} patterns.`,
    lengths,
  };
}
