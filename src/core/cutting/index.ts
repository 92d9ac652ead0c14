/** Cutting sheets and lengths: what the functions and the pane may use. */

export { alikeLengths, alikeSheets } from "./alike.ts";
export { boundLengths, nestLengths, recordLengths } from "./lengths/nest.ts";
export type { LengthNesting, LengthPart, LengthStock, NestedLength, Piece } from "./lengths/types.ts";
export { lengthsPicture, sheetsPicture } from "./pictures.ts";
export { boundSheets, nestSheets, recordSheets } from "./sheets/nest.ts";
export type {
  Cut,
  NestedSheet,
  NestOptions,
  Placement,
  Reached,
  Rest,
  SheetBound,
  SheetNesting,
  SheetPart,
  SheetStock,
  Unplaced,
} from "./sheets/types.ts";
