import type { CellFunction } from "../declare/cell-function.ts";
import { combineFunctions } from "./combine.ts";
import { gravityFunctions } from "./gravity.ts";
import { seismicFunctions } from "./seismic.ts";
import { snowFunctions } from "./snow.ts";

/** Gravity loads, snow, their combinations, and the seismic base shear. */
export const loadsFunctions: readonly CellFunction[] = [
  ...gravityFunctions,
  ...snowFunctions,
  ...combineFunctions,
  ...seismicFunctions,
];
