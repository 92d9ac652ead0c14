import type { Tape } from "../../kit/tape.ts";

/** A climate zone of the energy code: number, and moisture regime where it is stated. */
export interface Zone {
  readonly number: number;
  readonly regime: "A" | "B" | "C" | "";
}

/** True for marine zone 4, which the code tables list apart from the rest of zone 4. */
function isMarine4(zone: Zone, tape?: Tape): boolean {
  if (zone.number === 4 && zone.regime === "") tape?.assume("zone 4 is taken as not marine; write 4C for marine 4");
  return zone.number === 4 && zone.regime === "C";
}

/** The column of a code table that a zone belongs to: "4C" for marine 4, else its number. */
export function zoneColumn(zone: Zone, tape?: Tape): string {
  return isMarine4(zone, tape) ? "4C" : String(zone.number);
}

export function zoneName(zone: Zone): string {
  return `${zone.number}${zone.regime}`;
}
