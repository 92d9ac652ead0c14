import { asce, type Edition } from "../kit/edition.ts";
import { within } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import { CLAUSE } from "./tables/clauses.ts";

/** Mean roof height up to which the low-rise figures of components and cladding hold. */
export const LOW_RISE_FT = 60;

/**
 * Width a of the edge zones: 10 % of the least plan dimension or 0.4 h, whichever is smaller, but not less than 4 % of the least
 * plan dimension or 3 ft.
 * @param widthFt plan dimension, ft
 * @param lengthFt plan dimension, ft
 * @param heightFt mean roof height (eave height for roofs up to 10 degrees), above 0 to 60 ft
 * @returns a, ft
 * @throws OutOfRange above 60 ft
 * Source: notation of ASCE/SEI 7-10 Fig. 30.4-1, 7-16 and 7-22 Fig. 30.3-1.
 */
export function edgeWidth(widthFt: number, lengthFt: number, heightFt: number, edition: Edition, tape?: Tape): number {
  const clause = asce(edition, `${CLAUSE.walls[edition]}, notation a`);
  within("The mean roof height", heightFt, 0, LOW_RISE_FT, "ft", clause);
  const leastFt = Math.min(widthFt, lengthFt);
  const upperFt = Math.min(0.1 * leastFt, 0.4 * heightFt);
  const lowerFt = Math.max(0.04 * leastFt, 3);
  const edgeFt = Math.max(upperFt, lowerFt);
  tape?.step("least width", "smaller plan dimension", leastFt, "ft", clause);
  tape?.step("upper", "smaller of 0.1 least width and 0.4 h", upperFt, "ft", clause);
  tape?.step("lower", "larger of 0.04 least width and 3 ft", lowerFt, "ft", clause);
  if (leastFt > 300) {
    tape?.caution("Least plan dimension above 300 ft: for roofs up to 7 degrees a need not be more than 0.8 h.");
  }
  tape?.step("a", "upper, but not less than lower", edgeFt, "ft", clause);
  return edgeFt;
}
