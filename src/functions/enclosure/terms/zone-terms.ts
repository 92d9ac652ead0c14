import { countyZone, type ZoneMap } from "../../../core/enclosure/climate/county.ts";
import type { Zone } from "../../../core/enclosure/climate/zone.ts";
import type { CodeEdition } from "../../../core/enclosure/tables/energy-code.ts";
import type { RetarderEdition } from "../../../core/enclosure/tables/retarders.ts";
import { BadInput } from "../../../core/kit/refusal.ts";
import type { Tape } from "../../../core/kit/tape.ts";
import { readZone } from "../../basis/glossary/zone.ts";
import { ifGiven } from "../../basis/term.ts";
import { readCounty } from "../read/county.ts";

/** The climate zone in its place, and what it is made from where it is left out. */
export const climateZone = ifGiven("climate zone", "made from the county and its state");
export const countyTerms = { county: ifGiven("county"), state: ifGiven("state") };

export interface ZoneArguments {
  readonly climateZone: Zone | undefined;
  readonly county: string | undefined;
  readonly state: string | undefined;
}

/** Codes before 2021 go by the map of 2010. */
export function mapOf(edition: CodeEdition | RetarderEdition): ZoneMap {
  return /2012|2015|2018/.test(edition) ? "2010" : "2021";
}

/** The zone that is given, or that of the county on a map; undefined where neither is given. */
export function zoneIfGiven(a: ZoneArguments, map: ZoneMap, tape: Tape | undefined): Zone | undefined {
  if (a.climateZone !== undefined) return a.climateZone;
  if (a.county === undefined || a.state === undefined) return undefined;
  return readZone(countyZone(readCounty(a.county, a.state), map, tape));
}

/** @throws BadInput where the zone is neither given nor to be made */
export function zoneOf(a: ZoneArguments, map: ZoneMap, tape: Tape | undefined): Zone {
  const zone = zoneIfGiven(a, map, tape);
  if (zone !== undefined) return zone;
  throw new BadInput(
    "Climate zone is missing",
    "it stands neither in the call nor in the basis, and no county with its state to make it from",
    "Give it, or a row Climate zone, or rows County and State",
  );
}
