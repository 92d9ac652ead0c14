import type { CellFunction } from "./declare.ts";
import { windCladdingFunctions } from "./wind-cladding.ts";
import { windFrameFunctions } from "./wind-frame.ts";
import { windSiteFunctions } from "./wind-site.ts";

/** Wind on the building: site, cladding, frame. */
export const windFunctions: readonly CellFunction[] = [
  ...windSiteFunctions,
  ...windCladdingFunctions,
  ...windFrameFunctions,
];
