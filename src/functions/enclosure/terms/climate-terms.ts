import { fToC } from "../../../core/enclosure/air/si.ts";
import { type Climate, designClimate, rowsClimate, stationClimate } from "../../../core/enclosure/climate/climate.ts";
import { type NormalsPlace, STATION_SOURCE, type Station } from "../../../core/enclosure/climate/stations.ts";
import type { Assembly } from "../../../core/enclosure/layers/assembly.ts";
import { type IndoorAir, monthlyAir } from "../../../core/enclosure/moisture/indoor.ts";
import { cautionSunDriven, hasVentilatedCavity } from "../../../core/enclosure/moisture/sun-driven.ts";
import type { MonthAir } from "../../../core/enclosure/moisture/wetting-year.ts";
import { BadInput } from "../../../core/kit/refusal.ts";
import type { Tape } from "../../../core/kit/tape.ts";
import type { AirRow } from "../../basis/glossary/air-rows.ts";
import { readZone } from "../../basis/glossary/zone.ts";
import { needed } from "../../basis/term.ts";
import { readIndoor } from "../read/indoor.ts";
import { checkMonths } from "../read/months.ts";
import { readPlace, readStation } from "../read/station.ts";

export const CLIMATE_PLACES = {
  climateStation: needed("climate station"),
  indoorMoisture: needed("indoor moisture"),
};

/** Temperature of the room where only its humidity is given: 20 C, that of ISO 13788. */
const ROOM_C = 20;

/** The place that a single name calls: a station, or one with mean temperatures alone. @throws BadInput for rows of months */
export function placeOf(rows: readonly AirRow[], tape?: Tape): Station | NormalsPlace {
  const [only] = rows;
  if (only !== undefined && rows.length === 1 && only.temperature === undefined) return readPlace(only.name, tape);
  throw new BadInput(
    "The climate station is a table",
    "a station is wanted here",
    "Give one cell such as Burlington VT",
  );
}

/** Monthly air on both sides. Where `oneWillDo`, a single row of outdoor air is a design condition. */
export function airOfYear(
  a: { readonly climateStation: readonly AirRow[]; readonly indoorMoisture: readonly AirRow[] },
  oneWillDo: boolean,
  tape: Tape | undefined,
): readonly MonthAir[] {
  return monthlyAir(outdoor(a.climateStation, oneWillDo, tape), indoor(a.indoorMoisture, tape), tape);
}

function outdoor(rows: readonly AirRow[], oneWillDo: boolean, tape: Tape | undefined): Climate {
  const [only] = rows;
  if (only !== undefined && rows.length === 1 && only.temperature === undefined) {
    const station = readStation(only.name, tape);
    tape?.assume(`climate of ${station.name} ${station.state}, elevation ${station.elevationM} m: ${STATION_SOURCE}`);
    return stationClimate(station);
  }
  const months = rows.map((r) => ({ name: r.name, ...airOf(r, "climate") }));
  const [design] = months;
  if (oneWillDo && design !== undefined && months.length === 1) return designClimate(design);
  checkMonths(rows);
  askCelsius(months, tape);
  return rowsClimate(months);
}

/** The mean of the warmest month lies above this in every state (Utqiagvik, Alaska, about 41 F: from memory). */
const COOLEST_SUMMER_C = 4;

function askCelsius(months: readonly IndoorAir[], tape: Tape | undefined): void {
  const warmest = Math.max(...months.map((m) => m.tempC));
  if (warmest >= COOLEST_SUMMER_C) return;
  tape?.caution("No month of the climate is above 39 F: are its temperatures in F?");
}

function indoor(rows: readonly AirRow[], tape: Tape | undefined) {
  const [first] = rows;
  if (first !== undefined && rows.length === 1) {
    if (first.temperature !== undefined) return [airOf(first, "indoor air")];
    const percent = /^(\d+(?:\.\d+)?|\.\d+)\s*%?$/.exec(first.name)?.[1];
    if (percent === undefined) return readIndoor(first.name);
    tape?.assume("indoor air 68 F");
    return [{ tempC: ROOM_C, rhShare: shareOf(Number(percent), first.name) }];
  }
  checkMonths(rows);
  return rows.map((r) => airOf(r, "indoor air"));
}

/** A percent, or a share up to 1 as a percent cell holds it. */
function shareOf(value: number, text: string): number {
  const share = value <= 1 && !text.includes("%") ? value : value / 100;
  if (share > 0 && share <= 1) return share;
  throw new BadInput(
    `The indoor humidity is ${text}`,
    "relative humidity is above 0 and at most 100 %",
    "Write it like 45, or name a class such as class 2",
  );
}

function airOf(row: AirRow, at: string): IndoorAir {
  if (row.temperature === undefined || row.humidity === undefined) {
    throw new BadInput(
      `Row ${row.row} of the ${at} lacks a temperature or a humidity`,
      "each row is a name, a temperature and a relative humidity",
      "Fill in the row, or give one cell with a name",
    );
  }
  return { tempC: fToC(row.temperature), rhShare: row.humidity / 100 };
}

/** Cautions against vapor that the sun drives inward, by the zone of the station; months without a station have none. */
export function cautionSunByStation(
  rows: readonly AirRow[],
  { layers, dropped }: Pick<Assembly, "layers" | "dropped">,
  tape: Tape | undefined,
): void {
  const [only] = rows;
  if (only === undefined || rows.length > 1 || only.temperature !== undefined) return;
  cautionSunDriven(readZone(readStation(only.name).zone), hasVentilatedCavity([...layers, ...dropped]), tape);
}
