import { enclosureAirFunctions } from "./air.ts";
import { enclosureCodeFunctions } from "./code.ts";
import { enclosureDewFunctions } from "./dew.ts";
import { enclosureFramingFunctions } from "./framing.ts";
import { enclosureHeatFunctions } from "./heat.ts";
import { enclosureLossFunctions } from "./loss.ts";
import { enclosureMaterialFunctions } from "./material.ts";
import { enclosureMonthsFunctions } from "./months.ts";
import { enclosureSurfaceFunctions } from "./surface.ts";
import { enclosureUFunctions } from "./u.ts";

/** Heat, vapor and the energy code, in the order in which lists show them. */
export const enclosureFunctions = [
  ...enclosureMaterialFunctions,
  ...enclosureHeatFunctions,
  ...enclosureUFunctions,
  ...enclosureFramingFunctions,
  ...enclosureLossFunctions,
  ...enclosureAirFunctions,
  ...enclosureDewFunctions,
  ...enclosureMonthsFunctions,
  ...enclosureSurfaceFunctions,
  ...enclosureCodeFunctions,
] as const;
