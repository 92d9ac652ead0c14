import type { CellFunction } from "../declare/cell-function.ts";
import { windCladdingFunctions } from "./cladding.ts";
import { windFrameFunctions } from "./frame.ts";
import { windSiteFunctions } from "./site.ts";
import { windTorsionFunctions } from "./torsion.ts";

/** Wind on the building: site, cladding, frame. */
export const windFunctions: readonly CellFunction[] = [
  ...windSiteFunctions,
  ...windCladdingFunctions,
  ...windFrameFunctions,
  ...windTorsionFunctions,
];
