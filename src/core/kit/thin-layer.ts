import { plain } from "./refusal.ts";
import type { Tape } from "./tape.ts";

/** A board, batt or foam is not made thinner (common practice, no source); one in feet falls below. */
const THINNEST_IN = 0.1;

/**
 * Asks about a layer that is thinner than any that is made: its thickness is likely in feet.
 * @param what the layer and its row: "plywood in row 2"
 */
export function askThin(what: string, thicknessIn: number, tape: Tape | undefined): void {
  if (thicknessIn <= 0 || thicknessIn >= THINNEST_IN) return;
  tape?.caution(`The ${what} is ${plain(thicknessIn)} in thick: is it in inches?`);
}
