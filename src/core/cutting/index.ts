/** Cutting sheets and lengths: what the functions and the pane may use. */
export type { LengthNesting, LengthPart, LengthStock, NestedLength, Piece } from "./length-types.ts";
export { boundLengths, nestLengths } from "./nest-lengths.ts";
export { boundSheets, nestSheets } from "./nest-sheets.ts";
export type {
  Cut,
  NestedSheet,
  NestOptions,
  Placement,
  SheetBound,
  SheetNesting,
  SheetPart,
  SheetStock,
  Unplaced,
} from "./sheet-types.ts";
