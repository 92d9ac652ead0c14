import { asce, type Edition } from "../kit/edition.ts";
import type { Tape } from "../kit/tape.ts";
import { CLAUSE } from "./tables/clauses.ts";

/** Speeds of the two rules, mph, and the width of the coastal strip, miles. */
const COAST_MPH = 130;
const ANYWHERE_MPH = 140;
const COAST_MILES = 1;

/**
 * Whether a site lies in a wind-borne debris region: within a mile of the coastal mean high water line at 130 mph or more (from 7-16 on where
 * Exposure D lies upwind at that line), or anywhere at 140 mph or more; both within the hurricane-prone regions.
 * @param speedMph basic wind speed of the map that the risk category asks for
 * @param coastMiles from the mean high water line, miles
 * Source: ASCE/SEI 7-10 section 26.10.3.1, 7-16 and 7-22 section 26.12.3.1.
 */
export function inDebrisRegion(
  speedMph: number,
  coastMiles: number,
  exposureDUpwind: boolean,
  hurricaneProne: boolean,
  edition: Edition,
  tape?: Tape,
): boolean {
  const clause = asce(edition, CLAUSE.debris);
  const openCoast = edition === "7-10" || exposureDUpwind;
  const strip = openCoast && coastMiles <= COAST_MILES && speedMph >= COAST_MPH;
  const anywhere = speedMph >= ANYWHERE_MPH;
  const upwind = edition === "7-10" ? "" : " with Exposure D upwind";
  tape?.step("coast", `within ${COAST_MILES} mile${upwind} and ${COAST_MPH} mph or more`, strip, "", clause);
  tape?.step("anywhere", `${ANYWHERE_MPH} mph or more`, anywhere, "", clause);
  const inside = hurricaneProne && (strip || anywhere);
  tape?.step("hurricane-prone", "the rule holds in hurricane-prone regions only", hurricaneProne, "", clause);
  return inside;
}
