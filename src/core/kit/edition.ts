/** Editions of the loading standard ASCE/SEI 7 that wind, snow and load combinations know. */
export const EDITIONS = ["7-10", "7-16", "7-22"] as const;
export type Edition = (typeof EDITIONS)[number];

/** Taken when no edition is given: the edition that the 2018 and 2021 model codes adopt. */
export const DEFAULT_EDITION: Edition = "7-16";

export type PerEdition<T> = Readonly<Record<Edition, T>>;

/** A place in the standard: "ASCE/SEI 7-16 Eq. 26.10-1". */
export function asce(edition: Edition, place: string | PerEdition<string>): string {
  return `ASCE/SEI ${edition} ${typeof place === "string" ? place : place[edition]}`;
}
