import type { CellFunction } from "../declare/cell-function.ts";
import { lengthFunctions } from "./lengths.ts";
import { sheetFunctions } from "./sheets.ts";

/** Cutting: sheets and lengths with their cutting lists and the proven bound. */
export const cuttingFunctions: readonly CellFunction[] = [...sheetFunctions, ...lengthFunctions];
