/** Cutting sheets and lengths: what the functions and the pane may use. */

export { alikeLengths, alikeSheets } from "./alike.ts";
export type { NestOptions, Reached, SheetBound, Unplaced } from "./engine/types.ts";
export type { LengthNesting, LengthPart, LengthStock, NestedLength, Piece } from "./lengths/model/types.ts";
export { boundLengths, nestLengths, recordLengths } from "./lengths/nest.ts";
export { lengthsPicture, sheetsPicture } from "./pictures.ts";
export { boundSheets, nestSheets, recordSheets } from "./sheets/nest.ts";
export type { Cut, NestedSheet, Placement, Rest, SheetNesting, SheetPart, SheetStock } from "./sheets/plan/types.ts";
