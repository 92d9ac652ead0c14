import { plain } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";

export interface CrewRow {
  readonly worker: string;
  readonly number: number;
  /** $/h of one, without burden */
  readonly wage: number;
}

export interface CrewRate {
  /** wages of the whole crew, $/h */
  readonly crewPerHour: number;
  /** wage of one worker on the mean, $/h */
  readonly meanWage: number;
  /** the mean wage with its burden, $/h */
  readonly burdenedWage: number;
}

/**
 * What an hour of a crew costs.
 * @param burden insurance, taxes and benefits as a share of the wages, 0 or more
 * Arithmetic.
 */
export function crewRate(crew: readonly CrewRow[], burden: number, tape?: Tape): CrewRate {
  const workers = crew.reduce((sum, r) => sum + r.number, 0);
  for (const r of crew)
    tape?.step("w", `${r.worker}: ${r.number} x ${plain(r.wage)}`, r.number * r.wage, "$/h", "given");
  const crewPerHour = crew.reduce((sum, r) => sum + r.number * r.wage, 0);
  tape?.step("w_crew", "sum of the wages", crewPerHour, "$/h", "arithmetic");
  const meanWage = crewPerHour / workers;
  tape?.step("w_mean", `w_crew / ${workers} workers`, meanWage, "$/h", "arithmetic");
  const burdenedWage = burdened(meanWage, burden);
  tape?.step("w_burdened", `w_mean x (1 + burden ${plain(burden)})`, burdenedWage, "$/h", "arithmetic");
  return { crewPerHour, meanWage, burdenedWage };
}

/** A wage with its burden. */
export function burdened(wage: number, burden: number): number {
  return wage * (1 + burden);
}
