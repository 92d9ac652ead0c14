import type { CellFunction } from "./declare.ts";
import { combineFunctions } from "./loads-combine.ts";
import { gravityFunctions } from "./loads-gravity.ts";
import { snowFunctions } from "./loads-snow.ts";

/** Gravity loads, snow, and their combinations. */
export const loadsFunctions: readonly CellFunction[] = [...gravityFunctions, ...snowFunctions, ...combineFunctions];
