import { BadInput } from "../kit/refusal.ts";
import { vaporPressurePa } from "./humid-air.ts";
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
const DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
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

/** A month as a user writes it. */
export interface ClimateRow {
  readonly row: number;
  readonly name: string;
  readonly tempC: number;
  /** share, above 0 to 1 */
  readonly rhShare: number;
}

/**
 * Twelve rows, January to December, of mean temperature and relative humidity.
 * @throws BadInput for another number of rows or another order
 */
export function rowsClimate(rows: readonly ClimateRow[]): Climate {
  checkMonths(rows);
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

/** Refuses anything but twelve rows; names that are months must be in their order. */
export function checkMonths(rows: readonly { readonly row: number; readonly name: string }[]): void {
  if (rows.length !== 12) {
    throw new BadInput(
      `${rows.length} rows of months are given`,
      "a year is worked out from twelve months",
      "Give twelve rows, January to December, or one row that names a station or a condition",
    );
  }
  rows.forEach((r, i) => {
    const named = MONTH_NAMES.findIndex((m) => r.name.trim().toLowerCase().startsWith(m.toLowerCase()));
    if (named >= 0 && named !== i) {
      throw new BadInput(
        `Row ${r.row} is ${r.name} where ${MONTH_NAMES[i]} belongs`,
        "the months run from January to December",
        "Put the rows in the order of the calendar",
      );
    }
  });
}
