import type { CellFunction } from "../declare/cell-function.ts";
import { combineFunctions } from "./combine.ts";
import { gravityFunctions } from "./gravity.ts";
import { snowFunctions } from "./snow.ts";

/** Gravity loads, snow, and their combinations. */
export const loadsFunctions: readonly CellFunction[] = [...gravityFunctions, ...snowFunctions, ...combineFunctions];
