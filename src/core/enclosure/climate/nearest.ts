import { BadInput, OutOfRange, plain, within } from "../../kit/refusal.ts";
import { type Place, STATION_SOURCE, type Station, stations } from "./stations.ts";

/** Mean radius of the earth: 6371 km. */
const EARTH_MI = 6371 / 1.609344;
/** Beyond it no station is taken for the place. Common practice, no source. */
const FARTHEST_MI = 200;
/** Beyond it the answer asks whether the station stands for the place. Common practice, no source. */
export const FAR_MI = 60;

/** A point on the map: degrees, south and west below 0. */
export interface Point {
  readonly latDeg: number;
  readonly lonDeg: number;
}

/** A station, and how far off it stands. */
export interface Near {
  readonly station: Station;
  readonly miles: number;
}

/**
 * Length of the great circle between two points, in miles.
 * Source: spherical trigonometry, in the form by arctangent that keeps its digits both for near points and for opposite ones; mean radius of the earth
 * 6371 km.
 */
export function milesBetween(a: Point, b: Point): number {
  const rad = Math.PI / 180;
  const [sinA, cosA] = [Math.sin(a.latDeg * rad), Math.cos(a.latDeg * rad)];
  const [sinB, cosB] = [Math.sin(b.latDeg * rad), Math.cos(b.latDeg * rad)];
  const apart = (b.lonDeg - a.lonDeg) * rad;
  const across = Math.hypot(cosB * Math.sin(apart), cosA * sinB - sinA * cosB * Math.cos(apart));
  return EARTH_MI * Math.atan2(across, sinA * sinB + cosA * cosB * Math.cos(apart));
}

/** The stations by their distance from a point, the nearest first. */
export function byDistance(point: Point): readonly Near[] {
  return stations()
    .map((station) => ({ station, miles: milesBetween(point, station) }))
    .sort((a, b) => a.miles - b.miles);
}

/** @throws OutOfRange for a latitude beyond the poles; BadInput for a longitude that lacks its minus or its W */
export function pointOf(latDeg: number, lonDeg: number): Point {
  within("The latitude", latDeg, -90, 90, "deg", "degrees from the equator");
  within("The longitude", lonDeg, -180, 180, "deg", "degrees from Greenwich");
  const mirrored = byDistance({ latDeg, lonDeg: -lonDeg })[0];
  if (lonDeg > 0 && mirrored !== undefined && mirrored.miles <= FARTHEST_MI) {
    throw new BadInput(
      `The longitude ${plain(lonDeg)} lies east of Greenwich`,
      "the stations stand in the United States, west of it",
      `Write ${plain(lonDeg)} W, or -${plain(lonDeg)}`,
    );
  }
  return { latDeg, lonDeg };
}

/** The nearest station. @throws OutOfRange where it is farther than 200 miles, naming it */
export function nearestStation(point: Point): Near {
  const near = byDistance(point)[0];
  if (near !== undefined && near.miles <= FARTHEST_MI) return near;
  throw new OutOfRange(
    `No station stands within ${FARTHEST_MI} miles of ${plain(point.latDeg)}, ${plain(point.lonDeg)}`,
    near === undefined ? STATION_SOURCE : `the nearest is ${nearText(near)}`,
    "Name a station yourself, or give twelve rows of temperature and humidity",
  );
}

/** "Atlanta Hartsfield Intl Ap GA, 134 miles" */
export function nearText({ station, miles }: Near): string {
  return `${station.name} ${station.state}, ${Math.round(miles)} miles`;
}

/** The station nearest to a place of which no year is held. */
export function stationBeside(place: Place): Near | undefined {
  return byDistance(place)[0];
}
