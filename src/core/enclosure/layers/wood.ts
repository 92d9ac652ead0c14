import { within } from "../../kit/refusal.ts";
import type { Tape } from "../../kit/tape.ts";

const CLAUSE = "USDA FPL Wood Handbook GTR-190 eq. 4-15";
/** Coefficients of eq. 4-15, W/(m K): k = G (B + C M) + A. */
const A = 0.01864;
const B = 0.1941;
const C = 0.004064;

/**
 * Thermal conductivity of solid wood across the grain near 75 F (24 C): k = G (B + C M) + A.
 * The source gives it as good to about 20 %; along the grain it is 1.5 to 2.8 times as much.
 * @param specificGravity on ovendry mass and volume at the moisture content, 0.3 to 0.8
 * @param moisturePct percent of the ovendry mass, 0 to 25
 * @returns W/(m K)
 * @throws OutOfRange outside those limits
 * Source: USDA FPL Wood Handbook GTR-190 (2010) eq. 4-15.
 */
export function woodConductivityWmK(specificGravity: number, moisturePct: number, tape?: Tape): number {
  // The lower limit is the equation's; the upper is the densest species of its Table 4-7.
  within("The specific gravity", specificGravity, 0.3, 0.8, "", `${CLAUSE} and Table 4-7`);
  within("The moisture content", moisturePct, 0, 25, "%", CLAUSE);
  const k = specificGravity * (B + C * moisturePct) + A;
  tape?.step("k", `${specificGravity} (${B} + ${C} x ${moisturePct}) + ${A}`, k, "W/(m K)", CLAUSE);
  return k;
}
