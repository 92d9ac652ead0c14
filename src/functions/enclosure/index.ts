import { enclosureAirFunctions } from "./air.ts";
import { enclosureBridgeFunctions } from "./bridges.ts";
import { enclosureCodeFunctions } from "./code.ts";
import { enclosureDewFunctions } from "./dew.ts";
import { enclosureFramingFunctions } from "./framing.ts";
import { enclosureGroundFunctions } from "./ground.ts";
import { enclosureHeatFunctions } from "./heat.ts";
import { enclosureLeakageFunctions } from "./leakage.ts";
import { enclosureListFunctions } from "./lists.ts";
import { enclosureLossFunctions } from "./loss.ts";
import { enclosureMassFunctions } from "./mass.ts";
import { enclosureMaterialFunctions } from "./material.ts";
import { enclosureMonthsFunctions } from "./months.ts";
import { enclosureSurfaceFunctions } from "./surface.ts";
import { enclosureUFunctions } from "./u.ts";
import { enclosureUaFunctions } from "./ua.ts";

/** Heat, vapor and the energy code, in the order in which lists show them. */
export const enclosureFunctions = [
  ...enclosureListFunctions,
  ...enclosureMaterialFunctions,
  ...enclosureHeatFunctions,
  ...enclosureUFunctions,
  ...enclosureFramingFunctions,
  ...enclosureBridgeFunctions,
  ...enclosureLossFunctions,
  ...enclosureGroundFunctions,
  ...enclosureLeakageFunctions,
  ...enclosureAirFunctions,
  ...enclosureDewFunctions,
  ...enclosureMonthsFunctions,
  ...enclosureSurfaceFunctions,
  ...enclosureCodeFunctions,
  ...enclosureUaFunctions,
  ...enclosureMassFunctions,
] as const;
