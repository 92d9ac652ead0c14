import { asce, type Edition } from "../kit/edition.ts";
import type { Tape } from "../kit/tape.ts";
import { CLAUSE } from "./tables/clauses.ts";

/** Speeds of the two rules, mph, and the width of the coastal strip, miles. */
const COAST_MPH = 130;
const ANYWHERE_MPH = 140;
const COAST_MILES = 1;

/** The answer and the rule that gave it. */
export interface DebrisRegion {
  readonly inside: boolean;
  readonly why: string;
}

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
): DebrisRegion {
  const clause = asce(edition, CLAUSE.debris);
  const asksD = edition !== "7-10";
  const strip = (!asksD || exposureDUpwind) && coastMiles <= COAST_MILES && speedMph >= COAST_MPH;
  const anywhere = speedMph >= ANYWHERE_MPH;
  const coastRule = `within ${COAST_MILES} mile of mean high water${asksD ? " with Exposure D upwind" : ""}, at ${COAST_MPH} mph or more`;
  const speedRule = `anywhere in a hurricane-prone region at ${ANYWHERE_MPH} mph or more`;
  tape?.step("hurricane-prone", "the rules hold in hurricane-prone regions only", hurricaneProne, "", clause);
  tape?.step("coast", coastRule, strip, "", clause);
  tape?.step("anywhere", speedRule, anywhere, "", clause);
  const region = decide(hurricaneProne, anywhere ? speedRule : strip ? coastRule : undefined);
  tape?.step("debris region", "yes or no, why", [[region.inside ? "yes" : "no", region.why]], "", clause);
  return region;
}

function decide(hurricaneProne: boolean, rule: string | undefined): DebrisRegion {
  if (!hurricaneProne) return { inside: false, why: "not in a hurricane-prone region" };
  if (rule === undefined)
    return { inside: false, why: "neither the rule of the coast nor the one of the speed is met" };
  return { inside: true, why: rule };
}
