import { vaporPressurePa } from "../../../core/enclosure/air/humid-air.ts";
import { fToC } from "../../../core/enclosure/air/si.ts";
import type { Assembly } from "../../../core/enclosure/layers/assembly.ts";
import { cautionSunDriven, hasVentilatedCavity } from "../../../core/enclosure/moisture/sun-driven.ts";
import { BadInput } from "../../../core/kit/refusal.ts";
import type { Tape } from "../../../core/kit/tape.ts";
import { ifGiven, needed } from "../../basis/term.ts";
import { countyTerms, type ZoneArguments, zoneIfGiven } from "./zone-terms.ts";

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

/** Terms that bring the zone for the caution against vapor that the sun drives inward. */
export const SUN_TERMS = {
  climateZone: ifGiven("climate zone", "sun-driven vapor is cautioned against without its zone"),
  ...countyTerms,
};

/** Temperatures in C and humidities as shares. @throws BadInput for warm weather without its humidity */
export function bothSides(a: AirArguments) {
  if (a.outdoorHumidity === undefined && a.outdoorTemperature >= WINTER_BELOW_F) {
    throw new BadInput(
      "Outdoor humidity is missing",
      `80 % stands in for it in winter only, below ${WINTER_BELOW_F} F`,
      "Give it, or a row Outdoor humidity in the basis",
    );
  }
  return {
    insideC: fToC(a.indoorTemperature),
    insideRh: a.indoorHumidity / 100,
    outsideC: fToC(a.outdoorTemperature),
    outsideRh: (a.outdoorHumidity ?? WINTER_PCT) / 100,
  };
}

/** Cautions against sun-driven vapor: by the zone where it is known, else where the air itself drives vapor inward. */
export function cautionInward(
  a: AirArguments & ZoneArguments,
  { layers, dropped }: Pick<Assembly, "layers" | "dropped">,
  tape: Tape | undefined,
): void {
  const zone = zoneIfGiven(a, "2021", tape);
  if (zone !== undefined) {
    cautionSunDriven(zone, hasVentilatedCavity([...layers, ...dropped]), tape);
    return;
  }
  const { insideC, insideRh, outsideC, outsideRh } = bothSides(a);
  const pa = (tempC: number, rh: number) => vaporPressurePa(tempC, rh, "ISO 13788");
  if (outsideC <= insideC && pa(outsideC, outsideRh) <= pa(insideC, insideRh)) return;
  tape?.caution(
    "Vapor is driven inward: sun on a wet cladding drives far more of it than the air alone, and that is not in this calculation. In zones 1 to 4 keep the inside open to vapor. A row Climate zone says more.",
  );
}
