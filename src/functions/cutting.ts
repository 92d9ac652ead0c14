import { lengthFunctions } from "./cutting-lengths.ts";
import { sheetFunctions } from "./cutting-sheets.ts";
import type { CellFunction } from "./declare.ts";

/** Cutting: sheets and lengths with their cutting lists and the proven bound. */
export const cuttingFunctions: readonly CellFunction[] = [...sheetFunctions, ...lengthFunctions];
