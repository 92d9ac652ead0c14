import { asce, type Edition, renumbered } from "../kit/edition.ts";
import { within } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import {
  CS_BREAK_DEGREES,
  LEAST_SNOW_MOST_PSF,
  LEAST_SNOW_UP_TO_PSF,
  LOW_SLOPE_DEGREES,
  NO_SNOW_DEGREES,
  RAIN_ON_SNOW_PSF,
  type RiskCategory,
  type RoofSurface,
  SNOW_IMPORTANCE,
} from "./tables/snow.ts";

export interface SnowSite {
  /** ground snow load, psf; strength level by risk category in 7-22 */
  readonly groundPsf: number;
  /** exposure factor Ce */
  readonly ce: number;
  /** thermal factor Ct */
  readonly ct: number;
  readonly category: RiskCategory;
  readonly edition: Edition;
}

/** Flat-roof factor between ground and roof. */
const FLAT_SHARE = 0.7;

/** Importance factor of the snow: 1 in 7-22, whose map holds the risk category. */
export function snowImportance(category: RiskCategory, edition: Edition): number {
  return edition === "7-22" ? 1 : SNOW_IMPORTANCE[category];
}

/**
 * Snow load of a flat roof.
 * Source: ASCE/SEI 7-10 and 7-16 Eq. 7.3-1, pf = 0.7 Ce Ct Is pg; 7-22 the same without Is.
 */
export function flatRoofSnow({ groundPsf, ce, ct, category, edition }: SnowSite, tape?: Tape): number {
  const is = snowImportance(category, edition);
  if (edition === "7-22")
    tape?.step("pg", "ground snow, strength level of the risk category", groundPsf, "psf", "ASCE/SEI 7-22 7.2");
  else {
    tape?.step("Is", `importance, risk category ${category} (from memory)`, is, "", asce(edition, "Table 1.5-2"));
    tape?.caution(`The snow importance factor is from memory: check it against ${asce(edition, "Table 1.5-2")}.`);
  }
  const pf = FLAT_SHARE * ce * ct * is * groundPsf;
  tape?.step("pf", `0.7 Ce Ct ${edition === "7-22" ? "" : "Is "}pg`, pf, "psf", asce(edition, "Eq. 7.3-1"));
  return pf;
}

/**
 * Slope factor Cs: 1 up to the break of the surface and thermal factor, then straight to 0 at 70 degrees.
 * Source: ASCE/SEI 7-10 Fig. 7-2, 7-16 and 7-22 Fig. 7.4-1.
 */
export function slopeFactor(slopeDeg: number, surface: RoofSurface, ct: number): number {
  const [warm, cold, unheated] = CS_BREAK_DEGREES[surface];
  const breakDeg = ct <= 1 ? warm : ct <= 1.1 ? cold : unheated;
  if (slopeDeg <= breakDeg) return 1;
  return Math.max(0, (NO_SNOW_DEGREES - slopeDeg) / (NO_SNOW_DEGREES - breakDeg));
}

/**
 * Minimum snow load of a roof of low slope, a uniform case of its own; 0 from 15 degrees up.
 * Source: ASCE/SEI 7-10 section 7.3.4, 7-16 section 7.3.4: Is min(pg, 20); 7-22 section 7.3.3: min(pg, pm,max).
 */
export function leastSnow(site: SnowSite, slopeDeg: number, tape?: Tape): number {
  const { groundPsf, category, edition } = site;
  const clause = asce(edition, edition === "7-22" ? "7.3.3" : "7.3.4");
  if (slopeDeg >= LOW_SLOPE_DEGREES) {
    tape?.step("pm", `${LOW_SLOPE_DEGREES} degrees or steeper: none`, 0, "psf", clause);
    return 0;
  }
  const most = edition === "7-22" ? LEAST_SNOW_MOST_PSF[category] : LEAST_SNOW_UP_TO_PSF;
  const pm = snowImportance(category, edition) * Math.min(groundPsf, most);
  const text = edition === "7-22" ? `smaller of pg and ${most} (from memory)` : `Is, smaller of pg and ${most}`;
  if (edition === "7-22")
    tape?.caution(
      "The greatest minimum snow load of 7-22 is from memory: check it against ASCE/SEI 7-22 section 7.3.3.",
    );
  tape?.step("pm", text, pm, "psf", clause);
  return pm;
}

export interface BalancedSnow {
  readonly flatPsf: number;
  readonly slopedPsf: number;
  readonly leastPsf: number;
  readonly rainPsf: number;
  /** the largest balanced load */
  readonly designPsf: number;
}

/**
 * Balanced snow load of a roof: sloped, with rain on snow, or the minimum, whichever is most.
 * @param slopeDeg 0 to 70
 * @param eaveToRidgeFt level, for rain on snow; undefined leaves it out with a caution where it could count
 * Source: ASCE/SEI 7-10, 7-16, 7-22 sections 7.3, 7.4, 7.10.
 */
export function balancedSnow(
  site: SnowSite,
  slopeDeg: number,
  surface: RoofSurface,
  eaveToRidgeFt: number | undefined,
  tape?: Tape,
): BalancedSnow {
  const { groundPsf, ct, edition } = site;
  within("The slope", slopeDeg, 0, NO_SNOW_DEGREES, "degrees", asce(edition, "7.4: steeper roofs hold no snow"));
  const flatPsf = flatRoofSnow(site, tape);
  const cs = slopeFactor(slopeDeg, surface, ct);
  tape?.step("Cs", `${surface} surface, Ct ${ct}`, cs, "", asce(edition, renumbered("Fig. 7-2", "Fig. 7.4-1")));
  const slopedPsf = cs * flatPsf;
  tape?.step("ps", "Cs pf", slopedPsf, "psf", asce(edition, "Eq. 7.4-1"));
  const leastPsf = leastSnow(site, slopeDeg, tape);
  const rainPsf = rainOnSnow(site, slopeDeg, eaveToRidgeFt, groundPsf, tape);
  const designPsf = Math.max(slopedPsf + rainPsf, leastPsf);
  tape?.step("balanced", "larger of ps with rain on snow and pm", designPsf, "psf", asce(edition, "7.3, 7.4, 7.10"));
  return { flatPsf, slopedPsf, leastPsf, rainPsf, designPsf };
}

function rainOnSnow(
  { category, edition }: SnowSite,
  slopeDeg: number,
  eaveToRidgeFt: number | undefined,
  groundPsf: number,
  tape: Tape | undefined,
): number {
  const most = edition === "7-22" ? LEAST_SNOW_MOST_PSF[category] : LEAST_SNOW_UP_TO_PSF;
  if (groundPsf > most || groundPsf === 0) return 0;
  const clause = asce(edition, "7.10");
  if (eaveToRidgeFt === undefined) {
    if (slopeDeg < LOW_SLOPE_DEGREES) {
      tape?.caution(`Rain on snow (${clause}) is not looked at: give the width from eave to ridge.`);
    }
    return 0;
  }
  const rainPsf = slopeDeg < eaveToRidgeFt / 50 ? RAIN_ON_SNOW_PSF[edition] : 0;
  tape?.step("rain on snow", "where the slope in degrees is below W/50", rainPsf, "psf", clause);
  return rainPsf;
}
