import { asce, type Edition, renumbered } from "../kit/edition.ts";
import { within } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import { KD_BUILDINGS, kdInVelocityPressure } from "./directionality.ts";
import { exposureCoefficient, type WindUse } from "./exposure-coefficient.ts";
import type { Exposure } from "./tables/terrain.ts";

/** Half the density of air in psf/mph2 at 59 F and sea level. ASCE/SEI 7-10 Eq. 27.3-1, 7-16 and 7-22 Eq. 26.10-1. */
const HALF_AIR_DENSITY = 0.00256;

/** ft^-1, ASCE/SEI 7-16 and 7-22 Table 26.9-1 note 2. */
const ELEVATION_DECAY_PER_FT = 0.0000362;

export interface VelocityPressureInput {
  /** basic wind speed, 3-second gust at 33 ft in Exposure C, mph */
  readonly speedMph: number;
  /** height above ground, ft */
  readonly heightFt: number;
  readonly exposure: Exposure;
  /** topographic factor, 1 on a flat site */
  readonly kzt: number;
  /** directionality factor; 7-22 applies it to the pressure, not here */
  readonly kd: number;
  /** ground above sea level, ft */
  readonly elevationFt: number;
  readonly use: WindUse | undefined;
  readonly edition: Edition;
}

/**
 * Ground elevation factor for the density of air; 1 in 7-10, which has none.
 * @param elevationFt ground above sea level, -1500 to 15000 ft
 * Source: ASCE/SEI 7-16 and 7-22 Table 26.9-1 note 2.
 */
export function elevationFactor(elevationFt: number, edition: Edition, tape?: Tape): number {
  within("The elevation", elevationFt, -1500, 15000, "ft", "the range of inhabited ground");
  if (edition === "7-10") {
    tape?.step("Ke", "ASCE/SEI 7-10 has no ground elevation factor", 1, "", "ASCE/SEI 7-10");
    if (elevationFt !== 0) tape?.caution("ASCE/SEI 7-10 has no ground elevation factor: the elevation is not used.");
    return 1;
  }
  const ke = Math.exp(-ELEVATION_DECAY_PER_FT * elevationFt);
  tape?.step("Ke", `exp(-${ELEVATION_DECAY_PER_FT} ze)`, ke, "", asce(edition, "Table 26.9-1 note 2"));
  return ke;
}

/**
 * Velocity pressure of the wind at a height. From 7-22 on it does not hold Kd, which stands in the pressure equations instead.
 * @returns psf, at the level of the speed (strength level for the maps of these editions)
 * @throws OutOfRange above 500 ft
 * Source: ASCE/SEI 7-10 Eq. 27.3-1, 28.3-1, 30.3-1; 7-16 and 7-22 Eq. 26.10-1.
 */
export function velocityPressure(input: VelocityPressureInput, tape?: Tape): number {
  const { speedMph, heightFt, exposure, kzt, kd, elevationFt, use, edition } = input;
  const kz = exposureCoefficient(heightFt, exposure, use, edition, tape);
  const ke = elevationFactor(elevationFt, edition, tape);
  const kdInQ = kdInVelocityPressure(edition);
  const pressurePsf = HALF_AIR_DENSITY * kz * kzt * (kdInQ ? kd : 1) * ke * speedMph ** 2;
  tape?.step("Kzt", "topographic factor", kzt, "", asce(edition, "26.8"));
  if (kdInQ) tape?.step("Kd", "directionality factor", kd, "", asce(edition, "Table 26.6-1"));
  else {
    tape?.caution(
      `ASCE/SEI 7-22: q does not hold Kd; the pressure equation multiplies by it${kd === KD_BUILDINGS ? "" : `, and the ${kd} given is not used here`}. Use this q with edition 7-22 only.`,
    );
  }
  const factors = `Kz Kzt ${kdInQ ? "Kd " : ""}${edition === "7-10" ? "" : "Ke "}`;
  tape?.step("q", `${HALF_AIR_DENSITY} ${factors}V^2, V = ${speedMph} mph`, pressurePsf, "psf", equation(use, edition));
  return pressurePsf;
}

function equation(use: WindUse | undefined, edition: Edition): string {
  const in2010 = { frame: "Eq. 27.3-1", "low-rise": "Eq. 28.3-1", cladding: "Eq. 30.3-1" }[use ?? "frame"];
  return asce(edition, renumbered(in2010, "Eq. 26.10-1"));
}
