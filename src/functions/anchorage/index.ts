import type { CellFunction } from "../declare/cell-function.ts";
import { anchorFunctions } from "./anchors.ts";
import { holdDownFunctions } from "./hold-downs.ts";
import { openingFunctions } from "./openings.ts";
import { shearWallFunctions } from "./shear-walls.ts";

/** The functions of this family, in the order in which lists show them. */
export const anchorageFunctions: readonly CellFunction[] = [
  ...shearWallFunctions,
  ...openingFunctions,
  ...holdDownFunctions,
  ...anchorFunctions,
];
