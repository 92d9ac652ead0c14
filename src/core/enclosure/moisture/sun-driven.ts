import type { Tape } from "../../kit/tape.ts";
import { type Zone, zoneName } from "../climate/zone.ts";
import type { Layer } from "../layers/layer.ts";

/** When the sun drives vapor inward, and what the inside face should be. Common practice, no source. */
interface Drive {
  readonly when: string;
  readonly inside: string;
}

const MOST_OF_THE_YEAR: Drive = {
  when: "for most of the year",
  inside: "Keep the inside open to vapor, with nothing tighter than class III",
};
const WARM_MONTHS: Drive = {
  when: "in the warm months",
  inside: "Let no class I stand inside, and class II only where it opens as it gets damp",
};
const WARMEST_WEEKS: Drive = {
  when: "in the warmest weeks",
  inside: "A class I retarder inside then stops what comes in, and its outer face gets wet",
};
const AFTER_RAIN: Drive = {
  when: "after rain or watering",
  inside: "A tight face inside stops what comes in; dry air outside takes most of it back",
};

function driveOf({ number, regime }: Zone): Drive {
  if (regime === "B") return AFTER_RAIN;
  if (number <= 3) return MOST_OF_THE_YEAR;
  return number <= 5 ? WARM_MONTHS : WARMEST_WEEKS;
}

/** The sentence for a zone. */
export function sunDriven(zone: Zone): string {
  const { when, inside } = driveOf(zone);
  return `Zone ${zoneName(zone)}: ${when} the sun on a cladding that holds rain (wood, stucco, masonry, fiber cement) drives vapor inward, far more of it than the air alone, and that is not in this calculation. ${inside}. A ventilated cavity behind the cladding takes most of it away (common practice, no source).`;
}

/** Cautions against sun-driven vapor by zone; where a ventilated cavity stands behind the cladding the working says that it takes it away. */
export function cautionSunDriven(zone: Zone, ventilated: boolean, tape?: Tape): void {
  if (!ventilated) {
    tape?.caution(sunDriven(zone));
    return;
  }
  tape?.assume(
    "vapor that the sun drives out of a wet cladding leaves by the ventilated cavity behind it (common practice, no source)",
  );
}

/** True where a layer is a ventilated cavity, however much it is opened. */
export function hasVentilatedCavity(layers: readonly Pick<Layer, "role">[]): boolean {
  return layers.some((l) => l.role.kind === "ventilated cavity");
}
