import type { CellFunction } from "./declare.ts";
import { areaFunctions } from "./takeoff-area.ts";
import { columnFunctions } from "./takeoff-columns.ts";
import { courseFunctions } from "./takeoff-courses.ts";
import { houseFunctions } from "./takeoff-house.ts";
import { layerFunctions } from "./takeoff-layers.ts";
import { supplyFunctions } from "./takeoff-supplies.ts";

/** Takeoff: what a wall, its openings and its layers take, in units to order by. */
export const takeoffFunctions: readonly CellFunction[] = [
  ...areaFunctions,
  ...columnFunctions,
  ...courseFunctions,
  ...houseFunctions,
  ...layerFunctions,
  ...supplyFunctions,
];
