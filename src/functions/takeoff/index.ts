import type { CellFunction } from "../declare/cell-function.ts";
import { areaFunctions } from "./area.ts";
import { columnFunctions } from "./columns.ts";
import { courseFunctions } from "./courses.ts";
import { layerFunctions } from "./layers.ts";
import { supplyFunctions } from "./supplies.ts";

/** Takeoff: what a wall, its openings and its layers take, in units to order by. */
export const takeoffFunctions: readonly CellFunction[] = [
  ...areaFunctions,
  ...columnFunctions,
  ...courseFunctions,
  ...layerFunctions,
  ...supplyFunctions,
];
