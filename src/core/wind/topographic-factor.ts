import { asce, type Edition } from "../kit/edition.ts";
import { plain } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import type { Exposure } from "./tables/terrain.ts";
import { FLATTEST_HILL, HILLS, type HillShape, LOWEST_HILL_FT, STEEPEST_HILL } from "./tables/topography.ts";

export type HillSide = "upwind" | "downwind";

export interface HillSite {
  readonly shape: HillShape;
  /** height of the hill or escarpment above the terrain upwind, ft */
  readonly hillFt: number;
  /** distance upwind of the crest to where the ground is half the height, ft */
  readonly halfLengthFt: number;
  /** from the crest to the building, ft */
  readonly distanceFt: number;
  readonly side: HillSide;
  /** height above the ground at the building, ft */
  readonly heightFt: number;
  readonly exposure: Exposure;
  readonly edition: Edition;
}

/** The three multipliers of the speed-up. */
export interface SpeedUp {
  readonly k1: number;
  readonly k2: number;
  readonly k3: number;
}

/**
 * Multipliers K1 (shape), K2 (distance) and K3 (height), each not below 0.
 * Source: ASCE/SEI 7-10, 7-16, 7-22 Fig. 26.8-1.
 */
export function speedUp(site: HillSite, tape?: Tape): SpeedUp {
  const { shape, hillFt, halfLengthFt, distanceFt, side, heightFt, exposure, edition } = site;
  const clause = asce(edition, "Fig. 26.8-1");
  const figures = HILLS[shape];
  const steep = hillFt / halfLengthFt > STEEPEST_HILL;
  const ratio = steep ? STEEPEST_HILL : hillFt / halfLengthFt;
  const lengthFt = steep ? 2 * hillFt : halfLengthFt;
  tape?.step(
    "H/Lh",
    steep ? `above ${STEEPEST_HILL}: ${STEEPEST_HILL} is used in K1` : "hill height / half length",
    ratio,
    "",
    clause,
  );
  tape?.step("Lh", steep ? "2 H, steep hill" : "half length", lengthFt, "ft", clause);
  const k1 = figures.k1Slope[exposure] * ratio;
  const mu = figures.mu[side];
  const k2 = Math.max(0, 1 - distanceFt / (mu * lengthFt));
  const k3 = Math.exp((-figures.gamma * heightFt) / lengthFt);
  tape?.step("K1", `${figures.k1Slope[exposure]} H/Lh, ${shape}, Exposure ${exposure}`, k1, "", clause);
  tape?.step("K2", `1 - |x|/(mu Lh), mu = ${mu} ${side}, not below 0`, k2, "", clause);
  tape?.step("K3", `exp(-gamma z/Lh), gamma = ${figures.gamma}`, k3, "", clause);
  return { k1, k2, k3 };
}

/** Upwind of a hill or ridge the half length says where half the height is; behind the crest nothing given does. */
function belowHalf({ shape, side, distanceFt, halfLengthFt }: HillSite): boolean {
  return shape !== "escarpment" && side === "upwind" && distanceFt > halfLengthFt;
}

/**
 * Topographic factor Kzt of a building on or near a hill, ridge or escarpment; 1 where the hill is too flat or
 * too low to count, or the building is not in its upper half.
 * Source: ASCE/SEI 7-10, 7-16, 7-22 section 26.8, Eq. 26.8-1, Fig. 26.8-1.
 */
export function topographicFactor(site: HillSite, tape?: Tape): number {
  const { shape, hillFt, halfLengthFt, exposure, edition } = site;
  const conditions = asce(edition, "26.8.1");
  const lowest = LOWEST_HILL_FT[exposure];
  const flat = hillFt / halfLengthFt < FLATTEST_HILL;
  if (flat || hillFt < lowest) {
    const why = flat
      ? `H/Lh = ${plain(hillFt / halfLengthFt)} is below ${FLATTEST_HILL}`
      : `H is below ${lowest} ft in Exposure ${exposure}`;
    tape?.step("Kzt", `${why}: no speed-up`, 1, "", conditions);
    return 1;
  }
  if (belowHalf(site)) {
    tape?.step("Kzt", "building below half the height of the hill: no speed-up", 1, "", conditions);
    return 1;
  }
  const upper =
    site.side === "downwind" && shape !== "escarpment" ? ", and that the building is in its upper half" : "";
  tape?.caution(
    `${conditions} also asks that the hill stands alone upwind (100 H or 2 miles) and rises to twice the terrain within 2 miles${upper}: these are taken as met.`,
  );
  const { k1, k2, k3 } = speedUp(site, tape);
  const kzt = (1 + k1 * k2 * k3) ** 2;
  tape?.step("Kzt", "(1 + K1 K2 K3)^2", kzt, "", asce(edition, "Eq. 26.8-1"));
  return kzt;
}
