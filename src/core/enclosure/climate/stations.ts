import { lateTable } from "../../kit/late-tables.ts";

/** A weather station with its monthly means. */
export interface Station {
  readonly name: string;
  readonly state: string;
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
  readonly tempC: readonly number[];
  readonly vaporPa: readonly number[];
}

export const STATION_SOURCE =
  "a US national laboratory's typical-year hourly data, TMY3 (2008, US Department of Energy), monthly means of the hours";

let parsed: readonly Station[] | undefined;

/** The stations, read on first use. Throws NeedsTable while their table is not loaded. */
export function stations(): readonly Station[] {
  parsed ??= lateTable("climate stations")
    .split("\n")
    .map((line) => {
      const f = line.split("|");
      const number = (i: number) => Number(f[i]);
      const numbers = (i: number) => (f[i] ?? "").split(" ").map(Number);
      return {
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
        tempC: numbers(10).map((t) => t / 10),
        vaporPa: numbers(11),
      };
    });
  return parsed;
}
