import { lateTable } from "../../kit/late-tables.ts";
import type { Tape } from "../../kit/tape.ts";

/** The maps of climate zones: of the codes of 2009 to 2018, and of 2021 and later. */
export type ZoneMap = "2010" | "2021";

/** A county with its climate zone on both maps, such as "5A". */
export interface County {
  readonly name: string;
  readonly state: string;
  readonly zone: Readonly<Record<ZoneMap, string>>;
  /** warm and humid in the list of 2010 */
  readonly warmHumid: boolean;
}

const MAP: Readonly<Record<ZoneMap, string>> = {
  "2010": "county list of the US Department of Energy, 2010: the map of the IECC 2009 to 2018",
  "2021": "national laboratory report PNNL-33270 (2022): the map of the IECC 2021 and later",
};

let parsed: readonly County[] | undefined;

/** All counties, read on first use. Throws NeedsTable while their table is not loaded. */
export function counties(): readonly County[] {
  parsed ??= lateTable("county zones").split("\n").flatMap(ofState);
  return parsed;
}

function ofState(line: string): readonly County[] {
  const state = line.slice(0, 2);
  return line
    .slice(3)
    .split(";")
    .flatMap((group) => {
      const [listed = "", names = ""] = group.split("~");
      const old = listed.replace(/w$/, "");
      return names.split(",").map((entry) => {
        const [name = "", moved] = entry.split(">");
        return { name, state, zone: { "2010": old, "2021": moved ?? old }, warmHumid: listed.endsWith("w") };
      });
    });
}

/**
 * Climate zone of a county on a map. Where the maps differ the working says so for this county.
 * @returns such as "5A"
 * Source: county climate zones of the US Department of Energy, 2010 (CC0 data package); PNNL-33270 (2022).
 */
export function countyZone(county: County, map: ZoneMap, tape?: Tape): string {
  const { name, state, zone } = county;
  if (zone["2010"] !== zone["2021"]) {
    tape?.caution(
      `${name} ${state} is in zone ${zone["2010"]} up to the code of 2018 and in zone ${zone["2021"]} from 2021: take the map of the code that is adopted there.`,
    );
  }
  if (county.warmHumid) tape?.assume("the county is warm-humid in the list of 2010");
  tape?.step("zone", `${name} ${state}`, zone[map], "", MAP[map]);
  return zone[map];
}
