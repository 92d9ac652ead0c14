import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { BadInput, Refusal } from "../../../src/core/kit/refusal.ts";
import { beadContainers, beadCoverageFt } from "../../../src/core/takeoff/bead.ts";
import { wholePacks } from "../../../src/core/takeoff/packs.ts";
import { parseSheetSize } from "../../../src/core/takeoff/sheet-size.ts";
import { sheetsCount } from "../../../src/core/takeoff/sheets-count.ts";
import type { Opening } from "../../../src/core/takeoff/wall/opening.ts";
import {
  checkWall,
  grossAreaFt2,
  heightAtFt,
  highestFt,
  type OpenedWall,
  outlineFt,
  spanAtFt,
  topEdgeFt,
  type Wall,
} from "../../../src/core/takeoff/wall/wall.ts";
import { wallAreas } from "../../../src/core/takeoff/wall/wall-area.ts";
import { SHED } from "./joinery-shed.ts";

const positive = (max: number) => fc.double({ min: 0.05, max, noNaN: true });

function opening(widthFt: number, heightFt: number, count = 1): Opening {
  return { name: "window", widthFt, heightFt, count, sillFt: 0, leftFt: undefined };
}

function wall(lengthFt: number, heightFt: number, riseFt = 0, over: Partial<Wall> = {}): Wall {
  return { name: "w", lengthFt, heightFt, riseFt, top: "gable", ...over };
}

describe("wall area", () => {
  test("rectangle, gable and openings by hand", () => {
    const a = wallAreas([{ wall: wall(32, 9, 8), openings: [opening(3, 4, 2), opening(3, 6.75)] }]);
    expect(a).toEqual([
      { wall: "w", grossFt2: 416, openingsFt2: 44.25, netFt2: 371.75 },
      { wall: "total", grossFt2: 416, openingsFt2: 44.25, netFt2: 371.75 },
    ]);
  });

  test("the walls of the shed by hand, and their sum", () => {
    const rows = wallAreas(SHED);
    const long = 47.75 * 9.875;
    const gable = 32 * 9.875 + 32 * 4;
    const door = (40 * 83) / 144;
    expect(rows.map((r) => r.grossFt2)).toEqual([long, long, gable, gable, 2 * long + 2 * gable]);
    const open = [5 * 18 + door, 2 * 6, 2 * 13.5 + door, 13.5 + 102];
    rows.slice(0, 4).forEach((r, i) => {
      expect(r.openingsFt2).toBeCloseTo(open[i] ?? 0, 9);
      expect(r.netFt2).toBeCloseTo(r.grossFt2 - (open[i] ?? 0), 9);
    });
    expect(rows.at(-1)?.netFt2).toBeCloseTo(2 * long + 2 * gable - open.reduce((a, b) => a + b, 0), 9);
  });

  test("an opening that does not fit is refused by name, with its wall", () => {
    const areas = (w: OpenedWall) => () => wallAreas([w]);
    expect(areas({ wall: wall(10, 8), openings: [opening(11, 3)] })).toThrow(BadInput);
    expect(areas({ wall: wall(10, 8), openings: [opening(3, 9)] })).toThrow(/window .*does not fit in w/);
    expect(areas({ wall: wall(10, 8), openings: [opening(9, 7, 2)] })).toThrow(/126 ft2/);
    expect(areas({ wall: wall(10, 8), openings: [{ ...opening(10, 8), sillFt: undefined }] })).not.toThrow();
    const placed = (leftFt: number) => [{ ...opening(3, 7), leftFt, sillFt: 1 }];
    expect(areas({ wall: wall(10, 8), openings: placed(7) })).not.toThrow();
    expect(areas({ wall: wall(10, 8), openings: placed(7.01) })).toThrow(/left edge at 7.01 ft/);
    expect(areas({ wall: wall(10, 4, 8), openings: placed(3.5) })).not.toThrow();
    expect(areas({ wall: wall(10, 4, 8), openings: placed(1) })).toThrow(/a gable of 8 ft on top/);
    expect(areas({ wall: wall(10, 4, 8, { top: "shed" }), openings: placed(5) })).not.toThrow();
    expect(areas({ wall: wall(10, 4, 8, { top: "shed" }), openings: placed(4.9) })).toThrow(/a shed of 8 ft/);
  });

  test("a gable that falls and a shed below the ground are refused", () => {
    expect(() => checkWall(wall(10, 8, -1))).toThrow(/rises -1 ft/);
    expect(() => checkWall(wall(10, 8, -8, { top: "shed" }))).toThrow(/right end of w is 0 ft/);
    expect(() => checkWall(wall(10, 8, -7, { top: "shed" }))).not.toThrow();
  });

  test("a value or a refusal; net and openings make gross; never negative; walls add up", () => {
    fc.assert(
      fc.property(
        positive(300),
        positive(40),
        positive(20),
        fc.array(fc.tuple(positive(50), positive(20))),
        (l, h, g, os) => {
          try {
            const one = { wall: wall(l, h, g), openings: os.map(([w, t]) => opening(w, t)) };
            const a = wallAreas([one])[0];
            if (a === undefined) throw new Error("no row");
            expect(a.netFt2).toBeGreaterThanOrEqual(0);
            expect(a.netFt2 + a.openingsFt2).toBeCloseTo(a.grossFt2, 6);
            expect(wallAreas([one, one]).at(-1)?.grossFt2).toBeCloseTo(2 * a.grossFt2, 6);
          } catch (error) {
            expect(error).toBeInstanceOf(Refusal);
          }
        },
      ),
    );
  });
});

describe("the outline of a wall", () => {
  const any = fc.record({
    name: fc.constant("w"),
    lengthFt: fc.double({ min: 4, max: 100, noNaN: true }),
    heightFt: fc.double({ min: 9, max: 30, noNaN: true }),
    riseFt: fc.double({ min: -8, max: 20, noNaN: true }),
    top: fc.constantFrom("gable" as const, "shed" as const),
  });
  const sound = any.map((w) => (w.top === "gable" ? { ...w, riseFt: Math.abs(w.riseFt) } : w));

  test("its area is that of its corners, and the wall is as high as they are", () => {
    fc.assert(
      fc.property(sound, (w) => {
        const corners = outlineFt(w);
        const twice = corners.reduce((sum, [x, y], i) => {
          const [nextX, nextY] = corners[(i + 1) % corners.length] ?? [x, y];
          return sum + x * nextY - nextX * y;
        }, 0);
        expect(twice / 2).toBeCloseTo(grossAreaFt2(w), 6);
        for (const [x, y] of corners) if (y > 0) expect(heightAtFt(w, x)).toBeCloseTo(y, 9);
        const upper = corners.filter(([, y]) => y > 0);
        const edge = upper.slice(1).reduce((sum, [x, y], i) => {
          const [beforeX, beforeY] = upper[i] ?? [x, y];
          return sum + Math.hypot(x - beforeX, y - beforeY);
        }, 0);
        expect(topEdgeFt(w)).toBeCloseTo(edge, 6);
      }),
    );
  });

  test("what stands at a height lies between the ends at that height, and nothing beside them", () => {
    fc.assert(
      fc.property(
        sound,
        fc.double({ min: 0.01, max: 0.99, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (w, share, along) => {
          const y = share * (w.heightFt + Math.max(0, w.riseFt));
          const span = spanAtFt(w, y);
          const x = along * w.lengthFt;
          const inside = heightAtFt(w, x) >= y;
          if (span === undefined) expect(inside).toBe(false);
          else if (Math.abs(heightAtFt(w, x) - y) > 1e-5) expect(x >= span[0] && x <= span[1]).toBe(inside);
          expect(highestFt(w, x, w.lengthFt)).toBeGreaterThanOrEqual(heightAtFt(w, x) - 1e-9);
        },
      ),
    );
  });

  test("a shed by hand: it climbs to the right, or falls where its rise is below 0", () => {
    const up = wall(10, 8, 4, { top: "shed" });
    expect([heightAtFt(up, 0), heightAtFt(up, 5), heightAtFt(up, 10)]).toEqual([8, 10, 12]);
    expect(spanAtFt(up, 10)).toEqual([5, 10]);
    const down = wall(10, 8, -4, { top: "shed" });
    expect([heightAtFt(down, 0), heightAtFt(down, 10)]).toEqual([8, 4]);
    expect(spanAtFt(down, 6)).toEqual([0, 5]);
    expect(topEdgeFt(down)).toBeCloseTo(Math.sqrt(116), 12);
  });
});

describe("sheets by area", () => {
  test("decimal waste does not add a sheet", () => {
    expect(sheetsCount(3200, 32, 0.1)).toBe(110);
    expect(sheetsCount(3200.1, 32, 0.1)).toBe(111);
    expect(sheetsCount(0, 32, 0.1)).toBe(0);
  });

  test("never fewer than the area asks for, less than one more, and no fewer with more waste", () => {
    fc.assert(
      fc.property(positive(1e5), positive(200), fc.double({ min: 0, max: 0.5, noNaN: true }), (area, sheet, waste) => {
        const n = sheetsCount(area, sheet, waste);
        expect(n * sheet).toBeGreaterThanOrEqual(area * (1 + waste) * (1 - 1e-8));
        expect((n - 1) * sheet).toBeLessThan(area * (1 + waste));
        expect(sheetsCount(area, sheet, waste + 0.1)).toBeGreaterThanOrEqual(n);
      }),
    );
  });

  test("packs are whole", () => {
    fc.assert(fc.property(positive(1e6), positive(1e3), (q, p) => Number.isInteger(wholePacks(q, p))));
  });
});

test.each([
  ["4x8", 32],
  ["4' x 8'", 32],
  ["48 x 96 in", 32],
  ['48" x 96"', 32],
  ["4 by 8 ft", 32],
  ["4 × 32", 128],
  ["1 m x 2 m", 21.527821],
])("sheet %s has %d ft2", (text, areaFt2) => {
  const [a, b] = parseSheetSize(text);
  expect(a * b).toBeCloseTo(areaFt2, 5);
});

test.each(["48x96", "4", "x8", "4x", "4x8x2", "0 x 8", "-4 x 8", "four x eight"])("sheet %s is refused", (text) => {
  expect(() => parseSheetSize(text)).toThrow(BadInput);
});

describe("bead", () => {
  test("a joint and a round bead by hand", () => {
    const volumeIn3 = (10.1 * 231) / 128;
    expect(beadCoverageFt(10.1, { kind: "joint", widthIn: 0.375, depthIn: 0.25 })).toBeCloseTo(volumeIn3 / 1.125, 9);
    expect(beadCoverageFt(10.1, { kind: "round", diameterIn: 0.5 })).toBeCloseTo(volumeIn3 / (0.75 * Math.PI), 9);
    // 100 ft at 16.2 ft a cartridge, with a tenth on top.
    expect(beadContainers(100, { kind: "joint", widthIn: 0.375, depthIn: 0.25 }, 10.1, 0.1)).toBe(7);
  });

  test("coverage falls as the section grows and rises with the container", () => {
    fc.assert(
      fc.property(positive(2), positive(2), positive(40), (widthIn, depthIn, flOz) => {
        const c = beadCoverageFt(flOz, { kind: "joint", widthIn, depthIn });
        expect(beadCoverageFt(flOz, { kind: "joint", widthIn: widthIn * 1.1, depthIn })).toBeLessThan(c);
        expect(beadCoverageFt(flOz * 2, { kind: "joint", widthIn, depthIn })).toBeCloseTo(2 * c, 6);
      }),
    );
  });

  test("whole containers, monotone in run and waste", () => {
    const section = { kind: "round", diameterIn: 0.375 } as const;
    fc.assert(
      fc.property(positive(5000), fc.double({ min: 0, max: 0.3, noNaN: true }), (runFt, waste) => {
        const n = beadContainers(runFt, section, 10.1, waste);
        expect(Number.isInteger(n)).toBe(true);
        expect(beadContainers(runFt + 20, section, 10.1, waste)).toBeGreaterThanOrEqual(n);
        expect(beadContainers(runFt, section, 10.1, waste + 0.1)).toBeGreaterThanOrEqual(n);
        expect(n * beadCoverageFt(10.1, section)).toBeGreaterThanOrEqual(runFt * (1 - 1e-8));
      }),
    );
  });
});
