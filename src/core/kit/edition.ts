/** Editions of the loading standard ASCE/SEI 7 that wind, snow and load combinations know. */
export const EDITIONS = ["7-10", "7-16", "7-22"] as const;
export type Edition = (typeof EDITIONS)[number];

/** Taken when no edition is given: the one whose roof coefficients are held in print. */
export const DEFAULT_EDITION: Edition = "7-22";

export type PerEdition<T> = Readonly<Record<Edition, T>>;

/** A place that was numbered anew in 7-16 and has kept its number since. */
export function renumbered(in2010: string, since2016: string): PerEdition<string> {
  return { "7-10": in2010, "7-16": since2016, "7-22": since2016 };
}

/** A place in the standard: "ASCE/SEI 7-16 Eq. 26.10-1". */
export function asce(edition: Edition, place: string | PerEdition<string>): string {
  return `ASCE/SEI ${edition} ${typeof place === "string" ? place : place[edition]}`;
}
