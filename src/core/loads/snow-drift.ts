import { asce, type Edition, renumbered } from "../kit/edition.ts";
import { cautionRecalled } from "../kit/known.ts";
import { OutOfRange, within } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import { snowImportance } from "./snow-roof.ts";
import { HEAVIEST_SNOW_PCF, type RiskCategory, SHORTEST_FETCH_FT } from "./tables/snow.ts";

/**
 * Density of drifted snow, pcf: 0.13 pg + 14, at most 30.
 * Source: ASCE/SEI 7-10, 7-16, 7-22 Eq. 7.7-1.
 */
export function snowDensity(groundPsf: number, edition: Edition, tape?: Tape): number {
  const gamma = Math.min(0.13 * groundPsf + 14, HEAVIEST_SNOW_PCF);
  tape?.step("gamma", `0.13 pg + 14, at most ${HEAVIEST_SNOW_PCF}`, gamma, "pcf", asce(edition, "Eq. 7.7-1"));
  return gamma;
}

export interface DriftSite {
  readonly groundPsf: number;
  readonly category: RiskCategory;
  /** winter wind parameter W2 of 7-22 */
  readonly winterWind: number | undefined;
  readonly edition: Edition;
}

/**
 * Height of a snow drift behind a fetch, ft.
 * To 7-16: 0.43 lu^(1/3) (pg + 10)^(1/4) - 1.5, from 7-16 on times the root of Is. 7-22: 1.5 sqrt(pg^0.74 lu^0.70 W2^1.7 / gamma), from memory.
 * @param fetchFt length of roof that the snow comes from; under 20 ft, 20 ft is used
 * @throws OutOfRange in 7-22 without the winter wind parameter
 * Source: ASCE/SEI 7-10 Fig. 7-9, 7-16 Fig. 7.6-1, 7-22 Eq. 7.6-1.
 */
export function driftHeight(site: DriftSite, fetchFt: number, tape?: Tape): number {
  const { groundPsf, category, winterWind, edition } = site;
  const lu = Math.max(fetchFt, SHORTEST_FETCH_FT);
  tape?.step("lu", `fetch, not below ${SHORTEST_FETCH_FT} ft`, lu, "ft", asce(edition, "7.6, 7.7"));
  if (groundPsf === 0) {
    tape?.step("hd", "no ground snow", 0, "ft", asce(edition, "7.7"));
    return 0;
  }
  if (edition !== "7-22") {
    const root = edition === "7-16" ? Math.sqrt(snowImportance(category, edition)) : 1;
    // Above 0 for any snow: 20 ft of fetch alone bring 0.57 ft.
    const hd = (0.43 * lu ** (1 / 3) * (groundPsf + 10) ** (1 / 4) - 1.5) * root;
    const text = `0.43 lu^(1/3) (pg + 10)^(1/4) - 1.5${edition === "7-16" ? ", times sqrt(Is)" : ""}`;
    tape?.step("hd", text, hd, "ft", asce(edition, renumbered("Fig. 7-9", "Fig. 7.6-1")));
    return hd;
  }
  if (winterWind === undefined) {
    throw new OutOfRange(
      "The winter wind parameter is missing",
      "the drift height of ASCE/SEI 7-22 Eq. 7.6-1 goes by W2 of its map",
      "Read W2 in the map, about 0.25 to 0.65, and give it as the row winter wind, or work with edition 7-16",
    );
  }
  within("The winter wind parameter", winterWind, 0.05, 1, "", "ASCE/SEI 7-22 Fig. 7.6-1");
  const gamma = snowDensity(groundPsf, edition);
  const hd = 1.5 * Math.sqrt((groundPsf ** 0.74 * lu ** 0.7 * winterWind ** 1.7) / gamma);
  tape?.step("hd", "1.5 sqrt(pg^0.74 lu^0.70 W2^1.7 / gamma) (from memory)", hd, "ft", "ASCE/SEI 7-22 Eq. 7.6-1");
  cautionRecalled(tape, "The drift height of 7-22", "ASCE/SEI 7-22 Eq. 7.6-1");
  return hd;
}

export interface StepSite extends DriftSite {
  /** balanced snow on the lower roof, psf */
  readonly balancedPsf: number;
  /** height of the step, ft */
  readonly stepFt: number;
  /** length of the upper roof away from the step, ft */
  readonly upperFt: number;
  /** length of the lower roof away from the step, ft */
  readonly lowerFt: number;
}

/** A drift against a wall: triangle of this load at the wall, falling to 0 at its width. */
export interface Drift {
  readonly peakPsf: number;
  readonly totalPsf: number;
  readonly widthFt: number;
  readonly heightFt: number;
  readonly from: "leeward" | "windward" | "none";
}

/** Share of the drift height that builds up on the windward side. */
const WINDWARD_SHARE = 0.75;
/** Clear height over balanced depth under which no drift counts. */
const LEAST_CLEAR = 0.2;

/** From 7-16 on a leeward drift need not be higher than this share of the lower roof's length. Section 7.7.1, from memory. */
const LEEWARD_MOST = 0.6;

function leewardMost({ lowerFt, edition }: StepSite): number {
  return edition === "7-10" ? Number.POSITIVE_INFINITY : LEEWARD_MOST * lowerFt;
}

/**
 * Drift on a lower roof beside a step: the higher of the leeward drift (fetch: upper roof; from 7-16 on at most 0.6 of the lower roof's length) and 0.75 of the windward one (fetch: lower roof), not above
 * the clear height; 4 hd wide, or 4 hd^2/hc where the step cuts it off, at most 8 hc.
 * Source: ASCE/SEI 7-10, 7-16, 7-22 section 7.7.1.
 */
export function stepDrift(site: StepSite, tape?: Tape): Drift {
  const { groundPsf, balancedPsf, stepFt, upperFt, lowerFt, edition } = site;
  const clause = asce(edition, "7.7.1");
  const gamma = snowDensity(groundPsf, edition, tape);
  const hb = balancedPsf / gamma;
  const hc = stepFt - hb;
  tape?.step("hb", "balanced load / gamma", hb, "ft", clause);
  tape?.step("hc", "step - hb", hc, "ft", clause);
  if (hc <= 0 || (hb > 0 && hc / hb < LEAST_CLEAR)) {
    tape?.step("drift", `hc/hb below ${LEAST_CLEAR}: none`, 0, "psf", clause);
    return { peakPsf: 0, totalPsf: balancedPsf, widthFt: 0, heightFt: 0, from: "none" };
  }
  const most = leewardMost(site);
  const leeward = Math.min(driftHeight(site, upperFt, tape), most);
  const windward = WINDWARD_SHARE * driftHeight(site, lowerFt, tape);
  const cap = most === Number.POSITIVE_INFINITY ? "" : `, at most ${LEEWARD_MOST} of the lower roof's length`;
  tape?.step("hd leeward", `fetch: upper roof${cap}`, leeward, "ft", clause);
  tape?.step("hd windward", `${WINDWARD_SHARE} hd, fetch: lower roof`, windward, "ft", clause);
  const hd = Math.max(leeward, windward);
  const heightFt = Math.min(hd, hc);
  const widthFt = Math.min(hd <= hc ? 4 * hd : (4 * hd ** 2) / hc, 8 * hc);
  const peakPsf = gamma * heightFt;
  tape?.step("hd", "larger, not above hc", heightFt, "ft", clause);
  tape?.step("w", hd <= hc ? "4 hd" : "4 hd^2 / hc, at most 8 hc", widthFt, "ft", clause);
  tape?.step("pd", "gamma hd", peakPsf, "psf", clause);
  if (widthFt > lowerFt) tape?.caution("The drift is wider than the lower roof: it is cut off at the edge, not moved.");
  return {
    peakPsf,
    totalPsf: balancedPsf + peakPsf,
    widthFt,
    heightFt,
    from: leeward >= windward ? "leeward" : "windward",
  };
}
