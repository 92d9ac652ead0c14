import { asce, type Edition } from "../kit/edition.ts";
import type { Tape } from "../kit/tape.ts";

/** Directionality factor of buildings. ASCE/SEI 7-10, 7-16, 7-22 Table 26.6-1. */
export const KD_BUILDINGS = 0.85;

/** Whether the velocity pressure holds Kd. From 7-22 on the pressure equations hold it instead. */
export function kdInVelocityPressure(edition: Edition): boolean {
  return edition !== "7-22";
}

/** Velocity pressure as a pressure equation of an edition uses it. */
export interface RoofWind {
  /** velocity pressure at the mean roof height, psf; in 7-22 without Kd */
  readonly qPsf: number;
  /** directionality factor; to 7-16 it stands in q already and is not used again */
  readonly kd: number;
  readonly edition: Edition;
}

/** Symbol of that pressure in an expression. */
export function directedSymbol(edition: Edition, symbol: string): string {
  return kdInVelocityPressure(edition) ? symbol : `Kd ${symbol}`;
}

/** Velocity pressure with Kd in it, psf, whatever the edition. */
export function directedPressure({ qPsf, kd, edition }: RoofWind, tape?: Tape): number {
  if (kdInVelocityPressure(edition)) return qPsf;
  tape?.step("Kd", "directionality factor, not in q", kd, "", asce(edition, "Table 26.6-1"));
  return kd * qPsf;
}
