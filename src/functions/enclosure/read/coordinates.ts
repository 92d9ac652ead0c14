import { type Point, pointOf } from "../../../core/enclosure/climate/nearest.ts";

const DEGREES = String.raw`([+-]?\d+(?:\.\d+)?)\s*(?:°|deg)?`;
const POINT = new RegExp(String.raw`^\s*${DEGREES}\s*([NS])?\s*[,;/\s]\s*${DEGREES}\s*([EW])?\s*$`, "i");

/**
 * Reads a latitude and a longitude in degrees: `44.48, -73.15`, `44.48 N 73.15 W`. Undefined for any other text.
 * @throws as pointOf
 */
export function readPoint(text: string): Point | undefined {
  const found = POINT.exec(text);
  if (found === null) return undefined;
  const [, lat, ns = "", lon, ew = ""] = found;
  const signed = (value: string | undefined, letter: string) =>
    /[SW]/i.test(letter) ? -Math.abs(Number(value)) : Number(value);
  return pointOf(signed(lat, ns), signed(lon, ew));
}
