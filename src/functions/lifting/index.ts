import type { CellFunction } from "../declare/cell-function.ts";

/** The functions of this family, in the order in which lists show them. */
export const liftingFunctions: readonly CellFunction[] = [];
