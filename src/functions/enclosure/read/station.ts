import { STATION_SOURCE, type Station, stations } from "../../../core/enclosure/climate/stations.ts";
import { BadInput } from "../../../core/kit/refusal.ts";
import { stateCode } from "./state.ts";

/**
 * The station of a place: `Burlington VT`, `Portland, OR`, `Portland, Oregon`, or a WMO number.
 * @throws BadInput where none or several fit, with the names that come near
 */
export function readStation(place: string): Station {
  const words = place
    .toLowerCase()
    .split(/[\s,;.]+/)
    .filter((w) => w !== "");
  const all = stations();
  const byNumber = all.find((s) => s.wmo === words[0]);
  if (byNumber !== undefined && words.length === 1) return byNumber;
  const { state, name } = splitState(words);
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
      : "Write city and state such as Burlington VT (CLIMATE_STATIONS lists them), or give twelve rows of temperature and humidity",
  );
}

/** The state at the end, in letters or in one or two words, and the words before it. */
function splitState(words: readonly string[]): { state: string | undefined; name: readonly string[] } {
  for (const count of [2, 1]) {
    if (words.length <= count) continue;
    const state = stateCode(words.slice(-count).join(" "));
    if (state !== undefined) return { state, name: words.slice(0, -count) };
  }
  return { state: undefined, name: words };
}

function containsAll(station: Station, words: readonly string[]): boolean {
  const own = station.name.toLowerCase().split(" ");
  return words.every((w) => own.some((o) => o.startsWith(w)));
}
