import type { Edition } from "../../kit/edition.ts";
import type { Outline } from "../pictures.ts";

/** Roof zones in plan, by zone name; width across the ridge upward, length along it to the right, in feet. */
export type ZoneOutlines = Readonly<Record<string, readonly Outline[]>>;

const rect = (x0: number, y0: number, x1: number, y1: number): Outline => [
  [x0, y0],
  [x1, y0],
  [x1, y1],
  [x0, y1],
];

/** What is left of a rectangle around a smaller one: four strips. */
function ring(x0: number, y0: number, x1: number, y1: number, inset: number): Outline[] {
  return [
    rect(x0, y0, x1, y0 + inset),
    rect(x0, y1 - inset, x1, y1),
    rect(x0, y0 + inset, x0 + inset, y1 - inset),
    rect(x1 - inset, y0 + inset, x1, y1 - inset),
  ];
}

function corners(lengthFt: number, widthFt: number, side: number): Outline[] {
  return [
    rect(0, 0, side, side),
    rect(lengthFt - side, 0, lengthFt, side),
    rect(0, widthFt - side, side, widthFt),
    rect(lengthFt - side, widthFt - side, lengthFt, widthFt),
  ];
}

/**
 * Roof zones up to 7 degrees. To 7-10: strips of width a, corners a x a. From 7-16 on: L-shaped corners 0.6 h long and 0.2 h wide, strips of
 * 0.6 h, zone 1 to 1.2 h, zone 1' inside; undefined where the roof is too small for whole strips.
 * Source: ASCE/SEI 7-10 Fig. 30.4-2A, 7-16 and 7-22 Fig. 30.3-2A (layout from memory).
 */
export function flatRoofZones(
  lengthFt: number,
  widthFt: number,
  edgeFt: number,
  heightFt: number,
  edition: Edition,
): ZoneOutlines | undefined {
  const least = Math.min(lengthFt, widthFt);
  if (edition === "7-10") {
    if (2 * edgeFt >= least) return undefined;
    return {
      "1": [rect(edgeFt, edgeFt, lengthFt - edgeFt, widthFt - edgeFt)],
      "2": ring(0, 0, lengthFt, widthFt, edgeFt),
      "3": corners(lengthFt, widthFt, edgeFt),
    };
  }
  const strip = 0.6 * heightFt;
  const thin = 0.2 * heightFt;
  if (4 * strip >= least) return undefined;
  const long = (x: number, y: number, toRight: boolean, up: boolean): Outline[] => {
    const sx = toRight ? 1 : -1;
    const sy = up ? 1 : -1;
    const box = (dx: number, dy: number) =>
      rect(Math.min(x, x + sx * dx), Math.min(y, y + sy * dy), Math.max(x, x + sx * dx), Math.max(y, y + sy * dy));
    return [box(strip, thin), box(thin, strip)];
  };
  return {
    "1'": [rect(2 * strip, 2 * strip, lengthFt - 2 * strip, widthFt - 2 * strip)],
    "1": ring(strip, strip, lengthFt - strip, widthFt - strip, strip),
    "2": ring(0, 0, lengthFt, widthFt, strip),
    "3": [
      ...long(0, 0, true, true),
      ...long(lengthFt, 0, false, true),
      ...long(0, widthFt, true, false),
      ...long(lengthFt, widthFt, false, false),
    ],
  };
}

/** Gable roofs above 7 degrees to 7-10: strips of width a at eaves, rakes and both sides of the ridge, corners a x a at eave and ridge. */
export function gableRoofZones(lengthFt: number, widthFt: number, edgeFt: number): ZoneOutlines | undefined {
  const half = widthFt / 2;
  if (2 * edgeFt >= half || 2 * edgeFt >= lengthFt) return undefined;
  const inner = lengthFt - edgeFt;
  const rows = [0, half - edgeFt, half, widthFt - edgeFt];
  return {
    "1": [rect(edgeFt, edgeFt, inner, half - edgeFt), rect(edgeFt, half + edgeFt, inner, widthFt - edgeFt)],
    "2": [
      ...rows.map((y) => rect(edgeFt, y, inner, y + edgeFt)),
      ...[0, inner].flatMap((x) => [
        rect(x, edgeFt, x + edgeFt, half - edgeFt),
        rect(x, half + edgeFt, x + edgeFt, widthFt - edgeFt),
      ]),
    ],
    "3": [0, inner].flatMap((x) => rows.map((y) => rect(x, y, x + edgeFt, y + edgeFt))),
  };
}

/** Wall zones of one face: 5 within a of each end, 4 between. */
export function wallZones(lengthFt: number, heightFt: number, edgeFt: number): ZoneOutlines {
  const end = Math.min(edgeFt, lengthFt / 2);
  return {
    "4": end < lengthFt / 2 ? [rect(end, 0, lengthFt - end, heightFt)] : [],
    "5": [rect(0, 0, end, heightFt), rect(lengthFt - end, 0, lengthFt, heightFt)],
  };
}
