import { at } from "./scale.ts";

export type Point = readonly [x: number, y: number];

/** Which way hatching runs: "/" up to the right, "\" down to the right, "x" both. */
export type Hatching = "/" | "\\" | "x";

/** The corners of a box, as hatching takes them. */
export function boxCorners(x: number, y: number, width: number, height: number): readonly Point[] {
  return [
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
  ];
}

/**
 * Hatching of an area at 45 degrees as the data of one path. Real lines rather than a fill pattern: they print and paste
 * everywhere, and lines of neighbouring areas meet.
 * @param gap between lines, measured across
 */
export function hatch(corners: readonly Point[], gap: number, hatching: Hatching): string {
  if (hatching === "x") return hatch(corners, gap, "/") + hatch(corners, gap, "\\");
  // A line of the hatching holds the points with x + s y = c.
  const s = hatching === "/" ? 1 : -1;
  const step = gap * Math.SQRT2;
  const level = corners.map(([x, y]) => x + s * y);
  const last = Math.floor(Math.max(...level) / step);
  let path = "";
  for (let k = Math.ceil(Math.min(...level) / step); k <= last; k++) {
    const meets = crossings(corners, level, k * step);
    for (let i = 0; i + 1 < meets.length; i += 2) {
      const [a, b] = [meets[i], meets[i + 1]];
      if (a !== undefined && b !== undefined && b[0] - a[0] > 0.5)
        path += `M${at(a[0])} ${at(a[1])}L${at(b[0])} ${at(b[1])}`;
    }
  }
  return path;
}

/** Where the line at level c enters and leaves the area, from the left. */
function crossings(corners: readonly Point[], level: readonly number[], c: number): readonly Point[] {
  const out: Point[] = [];
  corners.forEach(([x, y], i) => {
    const j = (i + 1) % corners.length;
    const [from = 0, to = 0] = [level[i], level[j]];
    const next = corners[j];
    // Half open, so that a corner on the line counts once.
    if (next === undefined || from < c === to < c) return;
    const t = (c - from) / (to - from);
    out.push([x + t * (next[0] - x), y + t * (next[1] - y)]);
  });
  return out.sort((a, b) => a[0] - b[0]);
}

/** Corners as the points of a polygon. */
export function points(corners: readonly Point[]): string {
  return corners.map(([x, y]) => `${at(x)},${at(y)}`).join(" ");
}
