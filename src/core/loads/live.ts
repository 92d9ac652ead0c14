import { asce, type Edition } from "../kit/edition.ts";
import { BadInput, plain, within } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import { LIVE_LOAD_CLAUSE, LIVE_LOADS_PSF } from "./tables/live.ts";

/** Influence area from which a floor live load may be reduced, ft2. */
const REDUCE_FROM_FT2 = 400;
/** Above this the live load is not reduced here, psf. */
const HEAVY_LIVE_PSF = 100;
/** Unreduced roof live load that the reduction is made for, and its least, psf. */
const ROOF_LIVE_PSF = 20;
const LEAST_ROOF_LIVE_PSF = 12;

/**
 * The unreduced live load: a number of psf, or a use such as "sleeping rooms".
 * @throws BadInput for an unknown use
 */
export function baseLivePsf(base: string, tape?: Tape): number {
  const word = base.trim().toLowerCase();
  const psf = /^\d+(\.\d+)?(\s*psf)?$/.test(word) ? Number.parseFloat(word) : undefined;
  if (psf !== undefined) {
    within("The live load", psf, 0, 1000, "psf", "a load of buildings");
    tape?.step("Lo", "given", psf, "psf", "");
    return psf;
  }
  const known = Object.hasOwn(LIVE_LOADS_PSF, word) ? LIVE_LOADS_PSF[word] : undefined;
  if (known === undefined) {
    throw new BadInput(
      `"${base}" is not a live load`,
      `it is a number of psf or one of ${Object.keys(LIVE_LOADS_PSF).join(", ")}`,
      "Give psf or one of these",
    );
  }
  tape?.step("Lo", word, known, "psf", LIVE_LOAD_CLAUSE);
  return known;
}

/**
 * Reduced live load of a floor: Lo (0.25 + 15/sqrt(KLL AT)) from KLL AT = 400 ft2, at least half (two or more floors: 0.4) of Lo.
 * Loads above 100 psf are not reduced.
 * @param kll live load element factor, 1 to 4
 * @param areaFt2 tributary area AT
 * @param floors floors that the member carries
 * Source: ASCE/SEI 7-10 Eq. 4.7-1, 7-16 and 7-22 Eq. 4.7-1.
 */
export function floorLive(
  loPsf: number,
  kll: number,
  areaFt2: number,
  floors: number,
  edition: Edition,
  tape?: Tape,
): number {
  const clause = asce(edition, "Eq. 4.7-1");
  const influence = kll * areaFt2;
  tape?.step("KLL AT", `${kll} x ${plain(areaFt2)}`, influence, "ft2", asce(edition, "4.7.2"));
  if (loPsf > HEAVY_LIVE_PSF) {
    tape?.step("L", `above ${HEAVY_LIVE_PSF} psf: not reduced`, loPsf, "psf", asce(edition, "4.7.3"));
    return loPsf;
  }
  if (influence < REDUCE_FROM_FT2) {
    tape?.step("L", `KLL AT below ${REDUCE_FROM_FT2} ft2: not reduced`, loPsf, "psf", asce(edition, "4.7.2"));
    return loPsf;
  }
  const least = floors >= 2 ? 0.4 : 0.5;
  const share = Math.max(0.25 + 15 / Math.sqrt(influence), least);
  const psf = loPsf * Math.min(share, 1);
  tape?.step("L", `Lo (0.25 + 15/sqrt(KLL AT)), at least ${least} Lo`, psf, "psf", clause);
  return psf;
}

/**
 * Reduced roof live load of ordinary flat, pitched and curved roofs: Lo R1 R2, from 12 to 20 psf.
 * Source: ASCE/SEI 7-10 Eq. 4.8-1, 7-16 and 7-22 Eq. 4.8-1.
 */
export function roofLive(loPsf: number, areaFt2: number, slopeDeg: number, edition: Edition, tape?: Tape): number {
  const clause = asce(edition, "Eq. 4.8-1");
  if (loPsf > ROOF_LIVE_PSF) {
    tape?.step("Lr", `above ${ROOF_LIVE_PSF} psf: not reduced as an ordinary roof`, loPsf, "psf", asce(edition, "4.8"));
    return loPsf;
  }
  const riseIn = 12 * Math.tan((slopeDeg * Math.PI) / 180);
  const r1 = Math.min(1, Math.max(0.6, 1.2 - 0.001 * areaFt2));
  const r2 = Math.min(1, Math.max(0.6, 1.2 - 0.05 * riseIn));
  tape?.step("R1", "1.2 - 0.001 AT, from 0.6 to 1", r1, "", clause);
  tape?.step("F", "rise in inches per foot", riseIn, "in/ft", clause);
  tape?.step("R2", "1.2 - 0.05 F, from 0.6 to 1", r2, "", clause);
  const psf = Math.min(Math.max(loPsf * r1 * r2, LEAST_ROOF_LIVE_PSF), Math.max(loPsf, LEAST_ROOF_LIVE_PSF));
  tape?.step("Lr", `Lo R1 R2, at least ${LEAST_ROOF_LIVE_PSF} psf`, psf, "psf", clause);
  return psf;
}
