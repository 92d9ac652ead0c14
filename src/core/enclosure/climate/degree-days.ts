import { plain } from "../../kit/refusal.ts";
import type { Tape } from "../../kit/tape.ts";
import { cToF } from "../air/si.ts";
import { DAYS } from "./climate.ts";
import { NORMALS_SOURCE, type NormalsPlace } from "./stations.ts";

const BASE_F = 65;

/**
 * Least heating degree-days, base 65 F, that monthly mean temperatures allow: in a month whose mean is above the base the days below it are not seen.
 * At the 91 stations with hours the true number is 0 to 265 F day more.
 * @param tempC mean temperature of the twelve months
 * @returns F day
 * Source: definition of a degree-day; a mean over a month never sums to more than its hours (Jensen).
 */
export function leastDegreeDays(tempC: readonly number[]): number {
  return tempC.reduce((sum, t, i) => sum + Math.max(0, BASE_F - cToF(t)) * (DAYS[i] ?? 0), 0);
}

/** Degree-days of a place with normals, with the words that say what they are. */
export function normalsDegreeDays(place: NormalsPlace, tape?: Tape): number {
  const hdd = leastDegreeDays(place.tempC);
  tape?.step("HDD", `${place.name} ${place.state}: sum of days x (65 F - monthly mean)`, hdd, "F day", NORMALS_SOURCE);
  tape?.caution(
    `The degree-days of ${place.name} ${place.state}, ${plain(Math.round(hdd))} F day, come from monthly means and are the least there can be: at 91 stations with hours the true number is 0 to 265 F day more.`,
  );
  return hdd;
}
