import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  flatRoofZones,
  gableRoofZones,
  wallZones,
  type ZoneOutlines,
} from "../../../src/core/wind/cladding/zone-outlines.ts";
import type { Outline } from "../../../src/core/wind/pictures.ts";

/** Outlines here are rectangles along the axes. */
function holds(outline: Outline, x: number, y: number): boolean {
  const [xs, ys] = [outline.map((p) => p[0]), outline.map((p) => p[1])];
  return x > Math.min(...xs) && x < Math.max(...xs) && y > Math.min(...ys) && y < Math.max(...ys);
}

function zonesAt(zones: ZoneOutlines, x: number, y: number): readonly string[] {
  return Object.entries(zones).flatMap(([zone, outlines]) => (outlines.some((o) => holds(o, x, y)) ? [zone] : []));
}

function stayInside(zones: ZoneOutlines, lengthFt: number, widthFt: number): void {
  for (const [x, y] of Object.values(zones).flat(2)) {
    expect(x >= -1e-9 && x <= lengthFt + 1e-9 && y >= -1e-9 && y <= widthFt + 1e-9).toBe(true);
  }
}

const share = fc.double({ min: 0.001, max: 0.999, noNaN: true });
const side = fc.double({ min: 40, max: 200, noNaN: true });
const depth = fc.double({ min: 3, max: 20, noNaN: true });

/** The zone by the distances from the nearest edges, as the figures draw it; what lies on a border is left out. */
function flat2010(dx: number, dy: number, a: number): string {
  if (dx < a && dy < a) return "3";
  return dx < a || dy < a ? "2" : "1";
}
function flat2022(dx: number, dy: number, h: number): string {
  const [near, far] = [Math.min(dx, dy), Math.max(dx, dy)];
  if (near < 0.2 * h && far < 0.6 * h) return "3";
  if (near < 0.6 * h) return "2";
  return near < 1.2 * h ? "1" : "1'";
}

describe("roof zones in plan: every place has the zone that its distance from the edges gives", () => {
  test.each([
    ["7-10", flat2010],
    ["7-16", flat2022],
    ["7-22", flat2022],
  ] as const)("up to 7 degrees, %s", (edition, zoneOf) => {
    fc.assert(
      fc.property(side, side, depth, share, share, (lengthFt, widthFt, deep, sx, sy) => {
        const zones = flatRoofZones(lengthFt, widthFt, deep, deep, edition);
        const least = Math.min(lengthFt, widthFt);
        expect(zones === undefined).toBe(edition === "7-10" ? 2 * deep >= least : 2.4 * deep >= least);
        if (zones === undefined) return;
        stayInside(zones, lengthFt, widthFt);
        const [x, y] = [sx * lengthFt, sy * widthFt];
        const zone = zoneOf(Math.min(x, lengthFt - x), Math.min(y, widthFt - y), deep);
        // The strip of zone 2 runs under the corners of zone 3.
        expect(zonesAt(zones, x, y)).toEqual(zone === "3" ? ["2", "3"] : [zone]);
      }),
      { numRuns: 200 },
    );
  });

  test("gables to 7-10: strips at eaves, rakes and both sides of the ridge", () => {
    fc.assert(
      fc.property(side, side, depth, share, share, (lengthFt, widthFt, a, sx, sy) => {
        const zones = gableRoofZones(lengthFt, widthFt, a);
        expect(zones === undefined).toBe(2 * a >= widthFt / 2 || 2 * a >= lengthFt);
        if (zones === undefined) return;
        stayInside(zones, lengthFt, widthFt);
        const [x, y] = [sx * lengthFt, sy * widthFt];
        const dy = Math.min(y, widthFt - y, Math.abs(widthFt / 2 - y));
        expect(zonesAt(zones, x, y)).toEqual([flat2010(Math.min(x, lengthFt - x), dy, a)]);
      }),
      { numRuns: 200 },
    );
  });

  test("walls: zone 5 within a of each end, no zone 4 where the ends meet", () => {
    fc.assert(
      fc.property(side, depth, share, share, (lengthFt, a, sx, sy) => {
        const zones = wallZones(lengthFt, 10, a);
        const x = sx * lengthFt;
        expect(zonesAt(zones, x, sy * 10)).toEqual([Math.min(x, lengthFt - x) < a ? "5" : "4"]);
      }),
    );
    expect(wallZones(20, 10, 10)["4"]).toEqual([]);
    expect(wallZones(20, 10, 15)["5"]).toEqual(wallZones(20, 10, 10)["5"]);
  });

  test("a roof just as small as its strips has no zones", () => {
    expect(flatRoofZones(40, 20, 10, 10, "7-10")).toBeUndefined();
    expect(flatRoofZones(40, 20.1, 10, 10, "7-10")).toBeDefined();
    expect(flatRoofZones(60, 24, 3, 10, "7-22")).toBeUndefined();
    expect(flatRoofZones(60, 24.1, 3, 10, "7-22")).toBeDefined();
    expect(gableRoofZones(40, 20, 5)).toBeUndefined();
    expect(gableRoofZones(10, 40, 5)).toBeUndefined();
    expect(gableRoofZones(10.1, 20.1, 5)).toBeDefined();
  });
});
