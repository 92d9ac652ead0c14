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

/** Upper bounds of heating degree-days (base 65 F) for zones 4 to 7; above the last is zone 8. IECC 2018/2021 Table R301.3(2). */
const HDD_BOUNDS = [5400, 7200, 9000, 12600];
/** Lower bounds of cooling degree-days (base 50 F). */
const CDD = { zone1: 9000, zone2: 6300, zone3: 4500 };
const MARINE_3_HDD = 3600;

/**
 * Number of the climate zone from degree-days.
 * @param hdd65F heating degree-days, base 65 F, F day, 0 or more
 * @param cdd50F cooling degree-days, base 50 F, F day, 0 or more
 * Source: IECC 2018 Table R301.3(2), thermal criteria. The 2021 edition divides zone 0 (above 10800) from zone 1.
 */
export function zoneFromDegreeDays(hdd65F: number, cdd50F: number): number {
  if (cdd50F > CDD.zone1) return 1;
  if (cdd50F > CDD.zone2) return 2;
  if (cdd50F > CDD.zone3) return hdd65F <= (HDD_BOUNDS[0] ?? 0) ? 3 : 4;
  if (hdd65F <= MARINE_3_HDD) return 3;
  const above = HDD_BOUNDS.findIndex((bound) => hdd65F <= bound);
  return above < 0 ? 8 : above + 4;
}
