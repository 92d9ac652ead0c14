import { lateTable } from "../../kit/late-tables.ts";
import { fToC } from "../air/si.ts";

/** A place on the map. Latitude and longitude in degrees, south and west below 0. */
export interface Place {
  readonly name: string;
  readonly state: string;
  readonly latDeg: number;
  readonly lonDeg: number;
  /** mean temperature of the months, January to December */
  readonly tempC: readonly number[];
}

/** A weather station with its monthly means. */
export interface Station extends Place {
  readonly kind: "station";
  readonly wmo: string;
  /** as the companion of the weather file prints it, from the degree-days of that file */
  readonly zone: string;
  readonly elevationM: number;
  /** degree-days, F day, base 65 F */
  readonly hdd65F: number;
  readonly cdd65F: number;
  /** temperature that 99.6 % and 99 % of the hours of the file exceed, and that 1 % exceed */
  readonly cold996C: number;
  readonly cold99C: number;
  readonly hot1C: number;
  readonly vaporPa: readonly number[];
}

export const STATION_SOURCE =
  "a US national laboratory's typical-year hourly data, TMY3 (2008, US Department of Energy), monthly means of the hours";

/** A place of which only monthly temperatures are held. */
export interface NormalsPlace extends Place {
  readonly kind: "normals";
  /** that of its county in the Department of Energy's list of 2010 */
  readonly zone: string;
}

export const NORMALS_SOURCE =
  "NOAA normals of 1981 to 2010, daily mean temperature by month (US government, public domain)";

let parsed: readonly Station[] | undefined;
let parsedNormals: readonly NormalsPlace[] | undefined;

const part = (index: 0 | 1) => (lateTable("climate stations").split("\n\n")[index] ?? "").split("\n");
const numbersOf = (text: string | undefined) => (text ?? "").split(" ").map(Number);

/** Places of the states without a station. Throws NeedsTable while their table is not loaded. */
export function normals(): readonly NormalsPlace[] {
  parsedNormals ??= part(1).map((line) => {
    const [state = "", name = "", zone = "", lat, lon, tenthsF] = line.split("|");
    const tempC = numbersOf(tenthsF).map((t) => fToC(t / 10));
    return { kind: "normals", name, state, zone, latDeg: Number(lat), lonDeg: Number(lon), tempC };
  });
  return parsedNormals;
}

/** The stations, read on first use. Throws NeedsTable while their table is not loaded. */
export function stations(): readonly Station[] {
  parsed ??= part(0).map((line) => {
    const f = line.split("|");
    const number = (i: number) => Number(f[i]);
    return {
      kind: "station",
      state: f[0] ?? "",
      name: (f[1] ?? "").replace(/\s+/g, " ").trim(),
      wmo: f[2] ?? "",
      zone: f[3] ?? "",
      elevationM: number(4),
      hdd65F: number(5),
      cdd65F: number(6),
      cold996C: number(7) / 10,
      cold99C: number(8) / 10,
      hot1C: number(9) / 10,
      tempC: numbersOf(f[10]).map((t) => t / 10),
      vaporPa: numbersOf(f[11]),
      latDeg: number(12),
      lonDeg: number(13),
    };
  });
  return parsed;
}
