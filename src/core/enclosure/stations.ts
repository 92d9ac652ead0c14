import { lateTable } from "../kit/late-tables.ts";
import { BadInput } from "../kit/refusal.ts";

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

export const STATION_SOURCE = "NREL TMY3 (2008, US Department of Energy), monthly means of the hours";

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

/**
 * The station of a place: `Burlington VT`, `Portland, OR`, or a WMO number.
 * @throws BadInput where none or several fit, with the names that come near
 */
export function findStation(place: string): Station {
  const words = place
    .toLowerCase()
    .split(/[\s,;.]+/)
    .filter((w) => w !== "");
  const all = stations();
  const byNumber = all.find((s) => s.wmo === words[0]);
  if (byNumber !== undefined && words.length === 1) return byNumber;
  const state = all.find((s) => s.state.toLowerCase() === words.at(-1))?.state;
  const name = state === undefined ? words : words.slice(0, -1);
  const fits = all.filter((s) => (state === undefined || s.state === state) && containsAll(s, name));
  const [only] = fits;
  if (only !== undefined && fits.length === 1 && words.length > 0) return only;
  const near = fits.length > 0 ? fits : all.filter((s) => s.state === state);
  const list = near.map((s) => `${s.name} ${s.state}`).slice(0, 6);
  throw new BadInput(
    `"${place.length > 40 ? `${place.slice(0, 39)}…` : place}" fits ${fits.length === 0 ? "no station" : `${fits.length} stations`}`,
    `climate is kept for ${all.length} stations (${STATION_SOURCE})`,
    list.length > 0
      ? `Use one of: ${list.join("; ")}, or give twelve rows of temperature and humidity`
      : "Write city and state such as Burlington VT, or give twelve rows of temperature and humidity",
  );
}

function containsAll(station: Station, words: readonly string[]): boolean {
  const own = station.name.toLowerCase().split(" ");
  return words.every((w) => own.some((o) => o.startsWith(w)));
}
