import {
  FAR_MI,
  nearestStation,
  nearText,
  type Point,
  stationBeside,
} from "../../../core/enclosure/climate/nearest.ts";
import {
  NORMALS_SOURCE,
  type NormalsPlace,
  normals,
  type Place,
  STATION_SOURCE,
  type Station,
  stations,
} from "../../../core/enclosure/climate/stations.ts";
import { BadInput, plain } from "../../../core/kit/refusal.ts";
import type { Tape } from "../../../core/kit/tape.ts";
import { readPoint } from "./coordinates.ts";
import { stateCode } from "./state.ts";

/**
 * The station of a place: `Burlington VT`, `Portland, OR`, `Portland, Oregon`, a WMO number, or `44.48, -73.15` for the nearest one.
 * @throws BadInput where none or several fit, with the names that come near, and where only normals are held; OutOfRange for a point far from all
 */
export function readStation(text: string, tape?: Tape): Station {
  const place = readPlace(text, tape);
  if (place.kind === "station") return place;
  const near = stationBeside(place);
  throw new BadInput(
    `Of ${place.name} ${place.state} only mean temperatures are kept, without the moisture of the air`,
    `no year of hours is held in that state (${NORMALS_SOURCE})`,
    `Use the nearest station that has one, ${near === undefined ? "" : nearText(near)}, or give twelve rows of temperature and humidity`,
  );
}

/** As readStation, but a place with mean temperatures alone is given back too. */
export function readPlace(text: string, tape?: Tape): Station | NormalsPlace {
  const point = readPoint(text);
  if (point !== undefined) return beside(point, text, tape);
  const fits = placesOf(text);
  const [only] = fits;
  if (only !== undefined && fits.length === 1) return only;
  throw notOne(text, fits);
}

function beside(point: Point, text: string, tape: Tape | undefined): Station {
  const near = nearestStation(point);
  tape?.assume(`the station nearest to ${text.trim()} is ${nearText(near)} off`);
  if (near.miles > FAR_MI) {
    tape?.caution(
      `The nearest station to ${text.trim()} is ${nearText(near)} off, at ${plain(Math.round(near.station.elevationM))} m: does its climate stand for the place?`,
    );
  }
  return near.station;
}

/** All places that a text names: a state alone, or words of a name with or without a state, or a number. */
export function placesOf(text: string): readonly (Station | NormalsPlace)[] {
  const words = text
    .toLowerCase()
    .split(/[\s,;.]+/)
    .filter((w) => w !== "");
  const all = [...stations(), ...normals()];
  if (words.length === 0) return [];
  const alone = stateCode(words.join(" "));
  if (alone !== undefined) return all.filter((s) => s.state === alone);
  const byNumber = all.filter((s) => s.kind === "station" && s.wmo === words[0]);
  if (byNumber.length > 0 && words.length === 1) return byNumber;
  const { state, name } = splitState(words);
  const fits = all.filter((s) => (state === undefined || s.state === state) && containsAll(s, name));
  // The airport of Washington DC stands across the river, in Virginia.
  const across = state === "DC" ? stations().filter((s) => containsAll(s, words)) : [];
  return across.length > 0 ? across : fits;
}

function notOne(text: string, fits: readonly Place[]): BadInput {
  const all = stations();
  const near = fits.length > 0 ? fits : inItsState(text);
  const list = near.map((s) => `${s.name} ${s.state}`).slice(0, 6);
  return new BadInput(
    `"${text.length > 40 ? `${text.slice(0, 39)}…` : text}" fits ${fits.length === 0 ? "no station" : `${fits.length} stations`}`,
    `climate is kept for ${all.length} stations (${STATION_SOURCE})`,
    list.length > 0
      ? `Use one of: ${list.join("; ")}, or give twelve rows of temperature and humidity`
      : "Write city and state such as Burlington VT (CLIMATE_STATIONS lists them), latitude and longitude such as 44.48 N 73.15 W, or give twelve rows of temperature and humidity",
  );
}

function inItsState(text: string): readonly Place[] {
  const { state } = splitState(text.toLowerCase().split(/[\s,;.]+/));
  return state === undefined ? [] : [...stations(), ...normals()].filter((s) => s.state === state);
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

function containsAll(station: Place, words: readonly string[]): boolean {
  const own = station.name.toLowerCase().split(" ");
  return words.every((w) => own.some((o) => o.startsWith(w)));
}
