import type { Edition } from "../../core/kit/edition.ts";
import { BadInput, plain } from "../../core/kit/refusal.ts";
import { Tape } from "../../core/kit/tape.ts";
import type { RoofShape } from "../../core/wind/building.ts";
import type { RoofWind } from "../../core/wind/directionality.ts";
import type { WindUse } from "../../core/wind/exposure-coefficient.ts";
import { roofHeight } from "../../core/wind/roof-height.ts";
import type { Exposure } from "../../core/wind/tables/terrain.ts";
import { type VelocityPressureInput, velocityPressure } from "../../core/wind/velocity-pressure.ts";

/** What the velocity pressure of the site is made from. */
export interface SiteTerms {
  readonly windSpeed: number | undefined;
  readonly exposure: Exposure | undefined;
  readonly meanRoofHeight: number | undefined;
  readonly topographicFactor: number;
  readonly directionalityFactor: number;
  readonly groundElevation: number;
  readonly asce7Edition: Edition;
}

/** What the mean roof height is made from where it is not given. */
export interface HeightTerms {
  readonly meanRoofHeight: number | undefined;
  readonly buildingWidth: number | undefined;
  readonly eaveHeight: number | undefined;
  readonly roofSlope: number | undefined;
  readonly roofShape: RoofShape;
  readonly asce7Edition: Edition;
}

/** The mean roof height, as given or made from the building. */
export function heightOf(a: HeightTerms, tape: Tape | undefined): number | undefined {
  const from = { eaveFt: a.eaveHeight, widthFt: a.buildingWidth, slopeDeg: a.roofSlope, roof: a.roofShape };
  return roofHeight(a.meanRoofHeight, from, a.asce7Edition, tape);
}

/** A term without which the calculation cannot be done. */
export function wanted<T>(value: T | undefined, term: string, why: string): T {
  if (value !== undefined) return value;
  throw new BadInput(
    `${term} is missing`,
    `it stands neither in the call nor in the basis, and ${why}`,
    `Give it, or a row ${term}`,
  );
}

const MEAN_HEIGHT_WHY = "it is not made either: that takes eave height, roof slope and building width";

/** The mean roof height where nothing can be done without it. */
export function heightWanted(a: HeightTerms, tape: Tape | undefined): number {
  return wanted(heightOf(a, tape), "Mean roof height", MEAN_HEIGHT_WHY);
}

/** What velocityPressure takes from the site at a height. */
export function pressureInput(a: SiteTerms, heightFt: number, use: WindUse | undefined): VelocityPressureInput {
  const why = "the velocity pressure is made from it";
  return {
    speedMph: wanted(a.windSpeed, "Wind speed", why),
    heightFt,
    exposure: wanted(a.exposure, "Exposure", why),
    kzt: a.topographicFactor,
    kd: a.directionalityFactor,
    elevationFt: a.groundElevation,
    use,
    edition: a.asce7Edition,
  };
}

/** A velocity pressure given may differ by this share from the one made before it is said. */
const TOLD_SHARE = 0.02;

/**
 * Wind at the mean roof height: the velocity pressure given, else made from the site with the edition that the function then uses.
 * @param heightFt mean roof height, undefined where it is not known
 */
export function windOf(
  a: SiteTerms & { readonly velocityPressure: number | undefined },
  heightFt: number | undefined,
  use: WindUse,
  tape: Tape | undefined,
): RoofWind {
  const { velocityPressure: given, directionalityFactor: kd, asce7Edition: edition } = a;
  if (given !== undefined) {
    checkGiven(given, a, heightFt, use, tape);
    return { qPsf: given, kd, edition };
  }
  const height = wanted(heightFt, "Mean roof height", MEAN_HEIGHT_WHY);
  return { qPsf: velocityPressure(pressureInput(a, height, use), tape), kd, edition };
}

/** Says of which edition a bare q is taken to be, and holds it against the site where that is known. */
function checkGiven(
  given: number,
  a: SiteTerms,
  heightFt: number | undefined,
  use: WindUse,
  tape: Tape | undefined,
): void {
  if (tape === undefined) return;
  const { asce7Edition: edition } = a;
  if (a.windSpeed === undefined || a.exposure === undefined || heightFt === undefined) {
    tape.caution(
      `The velocity pressure given is taken as one of ASCE/SEI ${edition}, ${edition === "7-22" ? "without" : "with"} Kd in it: a q of another edition is about 15 percent off.`,
    );
    return;
  }
  const made = velocityPressure(pressureInput(a, heightFt, use), new Tape());
  if (Math.abs(given / made - 1) <= TOLD_SHARE) return;
  tape.caution(
    `The velocity pressure given is ${plain(Number(given.toFixed(2)))} psf; wind speed, exposure and height make ${plain(Number(made.toFixed(2)))} psf in ASCE/SEI ${edition}. The one given is used: is it of the same edition?`,
  );
}
