/** Cutting sheets and lengths: what the functions and the pane may use. */

export { boundLengths, nestLengths } from "./lengths/nest.ts";
export type { LengthNesting, LengthPart, LengthStock, NestedLength, Piece } from "./lengths/types.ts";
export { boundSheets, nestSheets } from "./sheets/nest.ts";
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
} from "./sheets/types.ts";
