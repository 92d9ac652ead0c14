import { assemble } from "../../core/enclosure/assembly.ts";
import { fToC } from "../../core/enclosure/si.ts";
import { type Climate, designClimate, rowsClimate, stationClimate } from "../../core/enclosure/climate.ts";
import { dewMonths } from "../../core/enclosure/dew-months.ts";
import { INDOOR_SAYS, type IndoorRow, monthlyAir } from "../../core/enclosure/indoor.ts";
import { findStation, STATION_SOURCE } from "../../core/enclosure/stations.ts";
import { DRY_OUTS } from "../../core/enclosure/wetting-year.ts";
import { BadInput } from "../../core/kit/refusal.ts";
import type { Tape } from "../../core/kit/tape.ts";
import { cellFunction, preliminary, tableOf } from "../declare/cell-function.ts";
import { optional } from "../declare/param.ts";
import { choice, number, text } from "../declare/scalar.ts";
import { type RowOf, table } from "../declare/table.ts";
import { airHumidity, airTemperature, ISO_13788, STEADY } from "./dew.ts";
import { insideFilm, MATERIAL_DATA, outsideFilm } from "./heat.ts";
import { layerRows, layers } from "./layers.ts";

const airColumns = (says: string) => ({
  name: text({ says, heads: ["month", "station", "place", "condition", "indoor", "climate"] }),
  temperature: optional(
    { ...airTemperature("mean temperature"), heads: ["temp", "t", "mean temperature"] },
    undefined,
    "",
  ),
  humidity: optional({ ...airHumidity("mean relative humidity"), heads: ["rh", "relative humidity"] }, undefined, ""),
});

export const climateParam = table(airColumns("a station such as Burlington VT, or the months"), {
  says: "outdoor climate: one cell with a station, or twelve rows of month, mean temperature and relative humidity",
  maxRows: 12,
});
export const indoorParam = table(airColumns("the condition, or the months"), { says: INDOOR_SAYS, maxRows: 12 });

type AirRow = RowOf<ReturnType<typeof airColumns>>;

/** A station by name, or twelve rows; where `oneWillDo`, a single row is a design condition. */
export function readClimate(rows: readonly AirRow[], oneWillDo: boolean, tape: Tape | undefined): Climate {
  const [only] = rows;
  if (only !== undefined && rows.length === 1 && only.temperature === undefined) {
    const station = findStation(only.name);
    tape?.assume(`climate of ${station.name} ${station.state}, elevation ${station.elevationM} m: ${STATION_SOURCE}`);
    return stationClimate(station);
  }
  const months = rows.map((r) => {
    if (r.temperature === undefined || r.humidity === undefined) {
      throw new BadInput(
        `Row ${r.row} of climate lacks a temperature or a humidity`,
        "each month is a name, a mean temperature and a relative humidity",
        "Fill in the row, or give one cell with a station such as Burlington VT",
      );
    }
    return { row: r.row, name: r.name, tempC: fToC(r.temperature), rhShare: r.humidity / 100 };
  });
  const [design] = months;
  return oneWillDo && design !== undefined && months.length === 1 ? designClimate(design) : rowsClimate(months);
}

export function indoorRows(rows: readonly AirRow[]): readonly IndoorRow[] {
  return rows.map((r) => ({
    row: r.row,
    name: r.name,
    tempC: r.temperature === undefined ? undefined : fToC(r.temperature),
    rhShare: r.humidity === undefined ? undefined : r.humidity / 100,
  }));
}

/** DIN 4108-3 5.2.2: 0.5 kg/m2 where a face does not take up water, in oz/ft2. */
const LIMIT_OZ_FT2 = 1.64;

const dewMonthsFunction = cellFunction({
  name: "DEW_MONTHS",
  family: "Enclosure",
  summary: "Condensation and drying month by month through a year, at any number of planes, with the verdict.",
  params: {
    layers: layers(),
    climate: climateParam,
    indoor: indoorParam,
    limit: optional(
      number({ says: "most water that may stand in the wall, oz/ft2", above: 0, max: 100 }),
      LIMIT_OZ_FT2,
      "1.64 oz/ft2, the 0.5 kg/m2 of DIN 4108-3 at a face that takes up no water",
    ),
    dryOut: optional(
      choice(DRY_OUTS, {
        says: "a month in which a plane dries out",
        means: {
          zero: "the plane is set to no water at the month's end (ISO 13788)",
          split: "the month is divided when it dries and solved again",
        },
      }),
      "zero",
      "a plane that dries in a month holds no water at its end (ISO 13788)",
    ),
    insideFilm,
    outsideFilm,
  },
  returns: tableOf("twelve months from the first wet one, then the year: end, peak and verdict", [
    ["month", ""],
    ["outdoor temperature", "F"],
    ["outdoor vapor pressure", "Pa"],
    ["indoor vapor pressure", "Pa"],
    ["change", "oz/ft2"],
    ["standing", "oz/ft2"],
    ["where", ""],
  ]),
  sources: [ISO_13788, `Climate of stations: ${STATION_SOURCE}`, MATERIAL_DATA],
  assumptions: STEADY,
  cautions: [preliminary("moisture")],
  example: {
    args: {
      layers: [["air gap", "1 in", "RSI 1", "sd 1 m"]],
      climate: [
        ["Jan", "20 C", 50],
        ["Feb", "20 C", 50],
        ["Mar", "20 C", 50],
        ["Apr", "20 C", 50],
        ["May", "20 C", 50],
        ["Jun", "20 C", 50],
        ["Jul", "20 C", 50],
        ["Aug", "20 C", 50],
        ["Sep", "20 C", 50],
        ["Oct", "20 C", 50],
        ["Nov", "20 C", 50],
        ["Dec", "20 C", 50],
      ],
      indoor: [["same as outside", "20 C", 50]],
    },
    gives: [
      ...["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"].map((m) => [
        m,
        68,
        1168,
        1168,
        0,
        0,
        "",
      ]),
      ["year", "", "", "", 0, 0, "no condensation"],
    ],
    within: 0.5,
    source: "DIN 4108-3 Table A.3: 20 C, 50 % is 1168 Pa; with the same air on both sides no vapor moves",
  },
  run(a, tape) {
    const climate = readClimate(a.climate, false, tape);
    const air = monthlyAir(climate, indoorRows(a.indoor), tape);
    return dewMonths(assemble(layerRows(a.layers), a.insideFilm, a.outsideFilm, tape), air, a.dryOut, a.limit, tape);
  },
});

export const enclosureMonthsFunctions = [dewMonthsFunction] as const;
