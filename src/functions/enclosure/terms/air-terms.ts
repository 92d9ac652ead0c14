import { fToC } from "../../../core/enclosure/air/si.ts";
import { BadInput } from "../../../core/kit/refusal.ts";
import type { Tape } from "../../../core/kit/tape.ts";
import { ifGiven, needed } from "../../basis/term.ts";

/** Air on both sides: AIR of the signatures. */
export const AIR_PLACES = {
  indoorTemperature: needed("indoor temperature"),
  indoorHumidity: needed("indoor humidity"),
  outdoorTemperature: needed("outdoor temperature"),
  outdoorHumidity: ifGiven(
    "outdoor humidity",
    "80 % where it is below 50 F outdoors, the winter condition of DIN 4108-3",
  ),
};

export interface AirArguments {
  readonly indoorTemperature: number;
  readonly indoorHumidity: number;
  readonly outdoorTemperature: number;
  readonly outdoorHumidity: number | undefined;
}

const WINTER_PCT = 80;
const WINTER_BELOW_F = 50;

/** Temperatures in C and humidities as shares. @throws BadInput for warm weather without its humidity */
export function bothSides(a: AirArguments, tape: Tape | undefined) {
  if (a.outdoorHumidity === undefined && a.outdoorTemperature >= WINTER_BELOW_F) {
    throw new BadInput(
      "Outdoor humidity is missing",
      `80 % stands in for it in winter only, below ${WINTER_BELOW_F} F`,
      "Give it, or a row Outdoor humidity in the basis",
    );
  }
  if (a.outdoorTemperature > a.indoorTemperature) {
    tape?.caution(
      "Vapor is driven inward: sun on a wet cladding drives far more of it than the air alone, and that is not in this calculation. In zones 1 to 4 keep the inside open to vapor.",
    );
  }
  return {
    insideC: fToC(a.indoorTemperature),
    insideRh: a.indoorHumidity / 100,
    outsideC: fToC(a.outdoorTemperature),
    outsideRh: (a.outdoorHumidity ?? WINTER_PCT) / 100,
  };
}
