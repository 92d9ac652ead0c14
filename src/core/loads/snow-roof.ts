import { asce, type Edition, renumbered } from "../kit/edition.ts";
import { cautionRecalled } from "../kit/known.ts";
import { BadInput, plain } from "../kit/refusal.ts";
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
  /** thermal factor Ct; 7-22 asks for it */
  readonly ct: number | undefined;
  readonly category: RiskCategory;
  readonly edition: Edition;
}

/** Flat-roof factor between ground and roof. */
const FLAT_SHARE = 0.7;

/** Ct of a heated roof to 7-16. */
const CT_HEATED = 1;

/**
 * Thermal factor: as given, else 1 to 7-16.
 * @throws BadInput in 7-22 where it is missing: its table goes by the roof's R and the ground snow and was not found in print
 */
export function thermalFactor({ ct, edition }: SnowSite, tape?: Tape): number {
  if (ct !== undefined) return ct;
  if (edition === "7-22") {
    throw new BadInput(
      "The thermal factor Ct is missing",
      "ASCE/SEI 7-22 Table 7.3-3 goes by the roof's R and the ground snow; printed examples are 1.2 for a ventilated roof and 1.17 for an unventilated one of R 30 under 30 psf",
      "Read Ct in the table and give it, in the call or as the row thermal factor",
    );
  }
  tape?.assume(`Thermal factor Ct ${CT_HEATED}: a heated roof, neither cold ventilated (1.1) nor unheated (1.2).`);
  return CT_HEATED;
}

/** Importance factor of the snow: 1 in 7-22, whose map holds the risk category. */
export function snowImportance(category: RiskCategory, edition: Edition): number {
  return edition === "7-22" ? 1 : SNOW_IMPORTANCE[category];
}

/**
 * Snow load of a flat roof.
 * Source: ASCE/SEI 7-10 and 7-16 Eq. 7.3-1, pf = 0.7 Ce Ct Is pg; 7-22 the same without Is.
 */
export function flatRoofSnow(site: SnowSite, tape?: Tape): number {
  const { groundPsf, ce, category, edition } = site;
  const ct = thermalFactor(site, tape);
  const is = snowImportance(category, edition);
  if (edition === "7-22")
    tape?.step("pg", "ground snow, strength level of the risk category", groundPsf, "psf", "ASCE/SEI 7-22 7.2");
  else {
    tape?.step("Is", `importance, risk category ${category} (from memory)`, is, "", asce(edition, "Table 1.5-2"));
    cautionRecalled(tape, "The snow importance factor", asce(edition, "Table 1.5-2"));
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
    cautionRecalled(tape, "The greatest minimum snow load of 7-22", "ASCE/SEI 7-22 section 7.3.3");
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
 * @param slopeDeg from 70 degrees up no snow stays
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
  const { groundPsf, edition } = site;
  if (slopeDeg >= NO_SNOW_DEGREES) return noSnow(slopeDeg, edition, tape);
  const ct = thermalFactor(site, tape);
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

function noSnow(slopeDeg: number, edition: Edition, tape: Tape | undefined): BalancedSnow {
  const why = `${plain(slopeDeg)} degrees: no snow stays from ${NO_SNOW_DEGREES} degrees`;
  tape?.step("balanced", why, 0, "psf", asce(edition, "7.4"));
  return { flatPsf: 0, slopedPsf: 0, leastPsf: 0, rainPsf: 0, designPsf: 0 };
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
