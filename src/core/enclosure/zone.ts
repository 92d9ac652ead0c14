import { lateTable } from "../kit/late-tables.ts";
import { BadInput } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";

/** A climate zone of the energy code: number, and moisture regime where it is stated. */
export interface Zone {
  readonly number: number;
  readonly regime: "A" | "B" | "C" | "";
}

export const ZONE_SAYS = "climate zone, such as 5, 5A, 4C or marine 4";

/**
 * Reads a climate zone: `5`, `5A`, `4C`, `marine 4`, `zone 6`.
 * @throws BadInput for anything else
 */
export function parseZone(text: string): Zone {
  const tidy = text
    .trim()
    .toLowerCase()
    .replace(/^(climate )?zone /, "")
    .replace(/\s+/g, " ");
  const marine = /^(?:marine ([345])|([345]) marine)$/.exec(tidy);
  if (marine !== null) return { number: Number(marine[1] ?? marine[2]), regime: "C" };
  const zone = /^([0-8])([abc])?$/.exec(tidy);
  if (zone !== null) {
    const regime = (zone[2] ?? "").toUpperCase() as Zone["regime"];
    return { number: Number(zone[1]), regime };
  }
  throw new BadInput(
    `"${text}" is not a climate zone`,
    "zones run from 0 to 8, with A moist, B dry or C marine behind",
    "Write it like 5A, 6, 4C or marine 4",
  );
}

/** True for marine zone 4, which the code tables list apart from the rest of zone 4. */
export function isMarine4(zone: Zone, tape?: Tape): boolean {
  if (zone.number === 4 && zone.regime === "") tape?.assume("zone 4 is taken as not marine; write 4C for marine 4");
  return zone.number === 4 && zone.regime === "C";
}

export function zoneName(zone: Zone): string {
  return `${zone.number}${zone.regime}`;
}

const MAP = "county list of the US Department of Energy, 2010: the map of the IECC 2009 to 2018";

/**
 * Climate zone of a county.
 * @param county with or without "County"
 * @param state two letters
 * @returns such as "5A"
 * @throws BadInput for a state or county that is not in the list
 * Source: county climate zones of the US Department of Energy, 2010 (CC0 data package).
 */
export function countyZone(county: string, state: string, tape?: Tape): string {
  const wantedState = state.trim().toUpperCase();
  const line = lateTable("county zones")
    .split("\n")
    .find((l) => l.startsWith(`${wantedState}:`));
  if (line === undefined) {
    throw new BadInput(
      `"${state}" is not a state in the list`,
      `counties are listed by the two letters of their state (${MAP})`,
      "Write the state like NY",
    );
  }
  const wanted = plainName(county);
  const near: string[] = [];
  for (const part of line.slice(wantedState.length + 1).split(";")) {
    const [zone = "", names = ""] = part.split("~");
    for (const listed of names.split(",")) {
      const name = listed.replace(/^=/, "");
      if (plainName(name) === wanted) return found(zone, tape);
      if (wanted !== "" && plainName(name).startsWith(wanted.slice(0, 4))) near.push(name);
    }
  }
  throw new BadInput(
    `"${county}" is not a county of ${wantedState} in the list`,
    MAP,
    near.length > 0 ? `Near names: ${near.slice(0, 5).join(", ")}` : "Check the spelling",
  );
}

function found(listed: string, tape: Tape | undefined): string {
  const zone = listed.replace(/w$/, "");
  if (listed.endsWith("w")) tape?.assume("the county is warm-humid in the list");
  tape?.caution(
    "The 2021 map moved some counties to another zone: under a 2021 or later code check the zone with the building department.",
  );
  tape?.step("zone", "as listed for the county", zone, "", MAP);
  return zone;
}

function plainName(name: string): string {
  return name
    .toLowerCase()
    .replace(/ (county|parish|borough|census area|municipality|city and borough|municipio)$/, "")
    .replace(/^saint /, "st ")
    .replace(/[^a-z0-9 ]/g, "")
    .replace(/\s+/g, " ")
    .trim();
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
