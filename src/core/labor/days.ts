import { plain } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";

export interface WorkingDay {
  /** hours of a working day that go into the work, without lunch, travel and breaks */
  readonly productiveHours: number;
  /** share of days lost to weather, 0 to below 1 */
  readonly weatherShare: number;
}

export interface CrewTime extends WorkingDay {
  readonly crewSize: number;
}

/**
 * Days that a crew takes for labor hours.
 * @returns days, not rounded
 * Source: NAVEDTRA 14045 (man-days / crew / availability / man-day equivalent), the equivalent as productive hours; that manual deducts lunch, travel and
 * breaks, NAVEDTRA 14233 does not, so the hours are asked for.
 */
export function laborDays(hours: number, { crewSize, productiveHours, weatherShare }: CrewTime, tape?: Tape): number {
  const dryDays = hours / (crewSize * productiveHours);
  tape?.step(
    "D_dry",
    `${plain(hours)} h / (${plain(crewSize)} x ${plain(productiveHours)} h)`,
    dryDays,
    "days",
    "arithmetic",
  );
  const days = dryDays / (1 - weatherShare);
  tape?.step("D_whole", "whole days", Math.ceil(days - 1e-9), "days", "D rounded up");
  tape?.step("D", `D_dry / (1 - weather ${plain(weatherShare)})`, days, "days", "arithmetic");
  return days;
}
