import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { BadInput, Refusal } from "../../../src/core/kit/refusal.ts";
import { beadContainers, beadCoverageFt } from "../../../src/core/takeoff/bead.ts";
import type { Opening } from "../../../src/core/takeoff/opening.ts";
import { wholePacks } from "../../../src/core/takeoff/packs.ts";
import { parseSheetSize } from "../../../src/core/takeoff/sheet-size.ts";
import { sheetsCount } from "../../../src/core/takeoff/sheets-count.ts";
import { wallArea } from "../../../src/core/takeoff/wall-area.ts";

const positive = (max: number) => fc.double({ min: 0.05, max, noNaN: true });

function opening(widthFt: number, heightFt: number, count = 1): Opening {
  return { name: "window", widthFt, heightFt, count, sillFt: 0, leftFt: undefined };
}

describe("wall area", () => {
  test("rectangle, gable and openings by hand", () => {
    const a = wallArea({ lengthFt: 32, heightFt: 9, gableRiseFt: 8 }, [opening(3, 4, 2), opening(3, 6.75)]);
    expect(a).toEqual({ grossFt2: 416, netFt2: 371.75, openingsFt2: 44.25 });
  });

  test("an opening that does not fit is refused by name", () => {
    expect(() => wallArea({ lengthFt: 10, heightFt: 8, gableRiseFt: 0 }, [opening(11, 3)])).toThrow(BadInput);
    expect(() => wallArea({ lengthFt: 10, heightFt: 8, gableRiseFt: 0 }, [opening(3, 9)])).toThrow(/window/);
    expect(() => wallArea({ lengthFt: 10, heightFt: 8, gableRiseFt: 0 }, [opening(9, 7, 2)])).toThrow(/126 ft2/);
  });

  test("a value or a refusal; net and openings make gross; never negative", () => {
    fc.assert(
      fc.property(
        positive(300),
        positive(40),
        positive(20),
        fc.array(fc.tuple(positive(50), positive(20))),
        (l, h, g, os) => {
          try {
            const a = wallArea(
              { lengthFt: l, heightFt: h, gableRiseFt: g },
              os.map(([w, t]) => opening(w, t)),
            );
            expect(a.netFt2).toBeGreaterThanOrEqual(0);
            expect(a.netFt2 + a.openingsFt2).toBeCloseTo(a.grossFt2, 6);
          } catch (error) {
            expect(error).toBeInstanceOf(Refusal);
          }
        },
      ),
    );
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
