import type { PictureBase } from "../kit/picture.ts";
import type { LengthNesting } from "./lengths/types.ts";
import type { SheetNesting } from "./sheets/types.ts";

/** Sheets that are cut alike, to be drawn once. */
export interface SheetDrawing {
  /** numbers of the sheets, from 1 */
  readonly numbers: readonly number[];
  readonly stock: string;
  readonly lengthIn: number;
  readonly widthIn: number;
  readonly parts: readonly {
    readonly name: string;
    readonly xIn: number;
    readonly yIn: number;
    readonly lengthIn: number;
    readonly widthIn: number;
    readonly turned: boolean;
  }[];
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
  readonly parts: readonly { readonly name: string; readonly atIn: number; readonly lengthIn: number }[];
  readonly restIn: number;
}

/** Cutting plan of lengths. */
export interface CuttingLengthsPicture extends PictureBase {
  readonly kind: "cutting-lengths";
  readonly lengths: readonly LengthDrawing[];
}

/** The layouts of a nesting; sheets are numbered in its order. */
export function sheetsPicture(nesting: SheetNesting): CuttingLayoutPicture {
  const sheets = alike(
    nesting.sheets.map(({ stock, lengthIn, widthIn, placements }) => ({
      stock,
      lengthIn,
      widthIn,
      parts: placements.map(({ part, ...place }) => ({ name: part, ...place })),
    })),
  );
  const parts = nesting.sheets.reduce((sum, s) => sum + s.placements.length, 0);
  return {
    kind: "cutting-layout",
    alt: `Cutting layouts: ${parts} parts on ${nesting.count} sheets, in ${sheets.length} layouts.`,
    sheets,
  };
}

/** The plan of a nesting of lengths; lengths are numbered in its order. */
export function lengthsPicture(nesting: LengthNesting): CuttingLengthsPicture {
  const lengths = alike(
    nesting.lengths.map(({ stock, lengthIn, pieces, restIn }) => ({
      stock,
      lengthIn,
      parts: pieces.map(({ part, ...place }) => ({ name: part, ...place })),
      restIn,
    })),
  );
  const parts = nesting.lengths.reduce((sum, l) => sum + l.pieces.length, 0);
  return {
    kind: "cutting-lengths",
    alt: `Cutting plan: ${parts} parts from ${nesting.count} lengths, in ${lengths.length} patterns.`,
    lengths,
  };
}

/** Drawings with the numbers of all that look the same, in the order of the first. */
function alike<T extends object>(drawings: readonly T[]): readonly (T & { readonly numbers: readonly number[] })[] {
  const groups = new Map<string, T & { numbers: number[] }>();
  drawings.forEach((drawing, i) => {
    const key = JSON.stringify(drawing);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, { ...drawing, numbers: [i + 1] });
    else group.numbers.push(i + 1);
  });
  return [...groups.values()];
}
