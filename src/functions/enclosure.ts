import { enclosureDewFunctions } from "./enclosure-dew.ts";
import { enclosureHeatFunctions } from "./enclosure-heat.ts";
import { enclosureMonthsFunctions } from "./enclosure-months.ts";

/** Heat, vapor and the energy code, in the order in which lists show them. */
export const enclosureFunctions = [
  ...enclosureHeatFunctions,
  ...enclosureDewFunctions,
  ...enclosureMonthsFunctions,
] as const;
