import { asce, type Edition } from "../kit/edition.ts";
import { BadInput, plain, within } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import { GUARD_LB, LIVE_LOADS_PSF, LIVE_USE_WORDS, ROOF_LIVE_PSF } from "./tables/live.ts";

/** Influence area from which a floor live load may be reduced, ft2. */
const REDUCE_FROM_FT2 = 400;
/** Above this the live load is reduced only for several floors, psf. */
const HEAVY_LIVE_PSF = 100;
/** Most that heavy loads and garages may be reduced, for two floors or more. */
const LEAST_HEAVY_SHARE = 0.8;
const LEAST_ROOF_LIVE_PSF = 12;

/** An unreduced live load and the rule that reduces it. */
export interface LiveUse {
  readonly psf: number;
  readonly rule: "floor" | "garage" | "roof";
}

/** No use has a smaller load: attics without storage have 10. */
const SMALLEST_PSF = 10;

/**
 * The unreduced live load: a number of psf of a floor, a use of the residential code such as "sleeping rooms", or "roof", with its psf if other than 20.
 * @param code edition of the residential code, 2018 to 2024
 * @throws BadInput for an unknown use, and for guards, whose load is a point load
 * Source: residential code Table R301.5.
 */
export function liveUse(occupancy: string, code: string, tape?: Tape): LiveUse {
  const word = occupancy.trim().toLowerCase().replace(/\s+/g, " ");
  const [, roof, number] = /^(roofs?)?\s*(\d+(?:\.\d+)?)?(?:\s*psf)?$/.exec(word) ?? [];
  if (roof !== undefined || number !== undefined) {
    const psf = number === undefined ? ROOF_LIVE_PSF : Number(number);
    within("The live load", psf, 0, 1000, "psf", "a load of buildings");
    if (psf < SMALLEST_PSF) tape?.caution(`A live load of ${psf} psf is below every one of the codes: is it in psf?`);
    tape?.step("Lo", number === undefined ? "ordinary roof" : "given", psf, "psf", "");
    return { psf, rule: roof === undefined ? "floor" : "roof" };
  }
  const use = [word, `${word}s`].map(tableUse).find((u) => u !== undefined);
  const psf = use === undefined ? undefined : LIVE_LOADS_PSF[use];
  if (use === undefined || psf === undefined) throw unknownUse(occupancy, word);
  tape?.step("Lo", use, psf, "psf", `Residential code ${code} Table R301.5`);
  if (use === "decks" || use === "balconies") {
    tape?.caution(
      `The ${psf} psf of ${use} is the model code's (from memory): some states and cities ask for 60, and ASCE/SEI 7 from 7-16 on for 1.5 times the load of the rooms beside.`,
    );
  }
  return { psf, rule: use === "garages" ? "garage" : "floor" };
}

/** The use of the table that a word names, if it names one. */
function tableUse(word: string): string | undefined {
  const use = Object.hasOwn(LIVE_USE_WORDS, word) ? LIVE_USE_WORDS[word] : word;
  return use !== undefined && Object.hasOwn(LIVE_LOADS_PSF, use) ? use : undefined;
}

function unknownUse(occupancy: string, word: string): BadInput {
  if (/guard|handrail/.test(word)) {
    return new BadInput(
      `The load of ${word} is a point load`,
      `guards and handrails take ${GUARD_LB} lb in any direction at their top (residential code Table R301.5)`,
      "Use it as a force on the guard; it is no area load",
    );
  }
  return new BadInput(
    `"${occupancy}" is not a live load`,
    `it is a number of psf, roof, or one of ${Object.keys(LIVE_LOADS_PSF).join(", ")}`,
    "Give psf or one of these",
  );
}

/** A floor member and what it carries. */
export interface FloorMember {
  /** live load element factor, 1 to 4 */
  readonly kll: number;
  /** tributary area, ft2 */
  readonly areaFt2: number;
  /** floors that the member carries */
  readonly floors: number;
}

/**
 * Reduced live load of a floor: Lo (0.25 + 15/sqrt(KLL AT)) from KLL AT = 400 ft2, at least half (two or more floors: 0.4) of Lo.
 * Loads above 100 psf and garages are reduced for two or more floors only, to 0.8 Lo at least.
 * Source: ASCE/SEI 7-10, 7-16, 7-22 Eq. 4.7-1, sections 4.7.3, 4.7.4.
 */
export function floorLive({ psf: lo, rule }: LiveUse, member: FloorMember, edition: Edition, tape?: Tape): number {
  const { kll, areaFt2, floors } = member;
  const influence = kll * areaFt2;
  tape?.step("KLL AT", `${kll} x ${plain(areaFt2)}`, influence, "ft2", asce(edition, "4.7.2"));
  const kept = lo > HEAVY_LIVE_PSF ? "4.7.3" : rule === "garage" ? "4.7.4" : undefined;
  if (kept !== undefined && floors < 2) {
    const why = rule === "garage" ? "passenger vehicle garage" : `above ${HEAVY_LIVE_PSF} psf`;
    tape?.step("L", `${why}: not reduced for one floor`, lo, "psf", asce(edition, kept));
    return lo;
  }
  if (influence < REDUCE_FROM_FT2) {
    tape?.step("L", `KLL AT below ${REDUCE_FROM_FT2} ft2: not reduced`, lo, "psf", asce(edition, "4.7.2"));
    return lo;
  }
  const least = kept !== undefined ? LEAST_HEAVY_SHARE : floors >= 2 ? 0.4 : 0.5;
  const psf = lo * Math.max(0.25 + 15 / Math.sqrt(influence), least);
  tape?.step("L", `Lo (0.25 + 15/sqrt(KLL AT)), at least ${least} Lo`, psf, "psf", asce(edition, kept ?? "Eq. 4.7-1"));
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
  const psf = Math.max(loPsf * r1 * r2, LEAST_ROOF_LIVE_PSF);
  tape?.step("Lr", `Lo R1 R2, at least ${LEAST_ROOF_LIVE_PSF} psf`, psf, "psf", clause);
  return psf;
}
