import { vaporPressurePa } from "../air/humid-air.ts";
import { STATION_SOURCE, type Station } from "./stations.ts";

export const MONTH_NAMES = [
  "Jan",
  "Feb",
  "Mar",
  "Apr",
  "May",
  "Jun",
  "Jul",
  "Aug",
  "Sep",
  "Oct",
  "Nov",
  "Dec",
] as const;
export const DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
const SECONDS_A_DAY = 86400;

/** Outdoor means of a month. */
export interface MonthClimate {
  readonly name: string;
  readonly seconds: number;
  readonly tempC: number;
  readonly vaporPa: number;
}

export interface Climate {
  readonly says: string;
  /** January to December */
  readonly months: readonly MonthClimate[];
}

export function stationClimate(station: Station): Climate {
  const months = MONTH_NAMES.map((name, i) => ({
    name,
    seconds: (DAYS[i] ?? 30) * SECONDS_A_DAY,
    tempC: station.tempC[i] ?? 0,
    vaporPa: station.vaporPa[i] ?? 0,
  }));
  return { says: `${station.name} ${station.state}: ${STATION_SOURCE}`, months };
}

/** Means of a month, or a design condition. */
export interface ClimateRow {
  readonly name: string;
  readonly tempC: number;
  /** share, above 0 to 1 */
  readonly rhShare: number;
}

/**
 * Twelve rows, January to December, of mean temperature and relative humidity.
 */
export function rowsClimate(rows: readonly ClimateRow[]): Climate {
  const months = rows.map((r, i) => ({
    name: MONTH_NAMES[i] ?? r.name,
    seconds: (DAYS[i] ?? 30) * SECONDS_A_DAY,
    tempC: r.tempC,
    vaporPa: vaporPressurePa(r.tempC, r.rhShare, "ISO 13788"),
  }));
  return { says: "the twelve rows given", months };
}

/** One design condition in place of a year. */
export function designClimate(row: ClimateRow): Climate {
  const vaporPa = vaporPressurePa(row.tempC, row.rhShare, "ISO 13788");
  const month = { name: row.name, seconds: 30 * SECONDS_A_DAY, tempC: row.tempC, vaporPa };
  return { says: "the design condition given", months: [month] };
}
