import { within } from "../../kit/refusal.ts";
import type { Tape } from "../../kit/tape.ts";

const CLAUSE = "ASCE/SEI 7-10, 7-16, 7-22 section 26.2, effective wind area";

/**
 * Effective wind area: span times the width carried, which need not be taken less than a third of the span.
 * @param spanFt above 0
 * @param widthFt above 0
 * @returns ft2
 * Source: ASCE/SEI 7-10, 7-16, 7-22 section 26.2.
 */
export function effectiveArea(spanFt: number, widthFt: number, tape?: Tape): number {
  within("The span", spanFt, 0, 1000, "ft", "a component of a building");
  within("The width", widthFt, 0, 1000, "ft", "a component of a building");
  const takenFt = Math.max(widthFt, spanFt / 3);
  tape?.step("width", "larger of the width carried and span/3", takenFt, "ft", CLAUSE);
  const areaFt2 = spanFt * takenFt;
  tape?.step("A", "span x width", areaFt2, "ft2", CLAUSE);
  return areaFt2;
}
