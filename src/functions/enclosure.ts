import { enclosureAirFunctions } from "./enclosure-air.ts";
import { enclosureCodeFunctions } from "./enclosure-code.ts";
import { enclosureDewFunctions } from "./enclosure-dew.ts";
import { enclosureFramingFunctions } from "./enclosure-framing.ts";
import { enclosureHeatFunctions } from "./enclosure-heat.ts";
import { enclosureLossFunctions } from "./enclosure-loss.ts";
import { enclosureMaterialFunctions } from "./enclosure-material.ts";
import { enclosureMonthsFunctions } from "./enclosure-months.ts";
import { enclosureSurfaceFunctions } from "./enclosure-surface.ts";
import { enclosureUFunctions } from "./enclosure-u.ts";

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
