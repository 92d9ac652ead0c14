import type { Tape } from "../kit/tape.ts";

/** One check of a member: demand and capacity share the unit. */
export interface Check {
  readonly check: string;
  readonly demand: number;
  readonly capacity: number;
  readonly unit: string;
  /** demand over capacity: up to 1 is enough */
  readonly ratio: number;
  readonly clause: string;
}

/** Makes a check and writes it as a step. */
export function checkOf(
  check: string,
  demand: number,
  capacity: number,
  unit: string,
  clause: string,
  tape?: Tape,
): Check {
  const ratio = demand / capacity;
  tape?.step(`${check} ratio`, "demand / capacity", ratio, "", clause);
  return { check, demand, capacity, unit, ratio, clause };
}

/** The worst first; equal ones keep their order. */
export function worstFirst(checks: readonly Check[]): Check[] {
  return [...checks].sort((a, b) => b.ratio - a.ratio);
}
