import type { CellFunction } from "../declare/cell-function.ts";
import { crane } from "./crane.ts";
import { picksForBending } from "./picks.ts";
import { centroid, sling } from "./sling.ts";
import { truck } from "./truck.ts";
import { weight } from "./weight.ts";
import { brace, windOnLift } from "./wind.ts";

/** The functions of this family, in the order in which lists show them. */
export const liftingFunctions: readonly CellFunction[] = [
  weight,
  centroid,
  sling,
  picksForBending,
  crane,
  windOnLift,
  brace,
  truck,
];
