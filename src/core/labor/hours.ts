import { plain } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";

/**
 * Labor hours of a task.
 * @param quantity 0 or more, in the unit of the rate
 * @param ratePerUnit labor hours for one unit at usual pace
 * @param pace output an hour against the usual; 0.8 is a fifth less, above 0
 * @returns labor hours (of one worker, whatever the crew)
 * Source: arithmetic; the sense of pace is that of the production efficiency of NAVEDTRA 14045, where less is slower.
 */
export function laborHours(quantity: number, ratePerUnit: number, pace: number, tape?: Tape): number {
  const hours = (quantity * ratePerUnit) / pace;
  tape?.step("t", `${plain(quantity)} x ${plain(ratePerUnit)} h / pace ${plain(pace)}`, hours, "h", "arithmetic");
  return hours;
}
