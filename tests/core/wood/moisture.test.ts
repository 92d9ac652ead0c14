import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { woodWeightPcf } from "../../../src/core/wood/moisture/moist-weight.ts";
import { equilibriumMoisturePct } from "../../../src/core/wood/moisture/moisture.ts";
import { SHRINK_DIRECTIONS, woodShrinkIn } from "../../../src/core/wood/moisture/shrink.ts";
import { SHRINKAGE } from "../../../src/core/wood/tables/shrinkage.ts";
import { cautions, says, value } from "../enclosure/called.ts";

describe("WOOD_MOISTURE", () => {
  test("rises with humidity, and falls with warmth above room temperature", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 90, max: 190, noNaN: true }),
        fc.double({ min: 5, max: 90, noNaN: true }),
        (t, rh) => {
          const m = equilibriumMoisturePct(t, rh);
          expect(equilibriumMoisturePct(t, rh + 5)).toBeGreaterThan(m);
          expect(equilibriumMoisturePct(t + 10, rh)).toBeLessThan(m);
        },
      ),
    );
  });

  test("keeps to its table", () => {
    for (const [t, rh] of [
      [29.9, 50],
      [200.1, 50],
      [70, 4.9],
      [70, 95.1],
    ] as const) {
      expect(() => equilibriumMoisturePct(t, rh)).toThrow(/GTR-190/);
    }
    for (const [t, rh] of [
      [30, 50],
      [200, 50],
      [70, 5],
      [70, 95],
    ] as const)
      expect(equilibriumMoisturePct(t, rh)).toBeGreaterThan(0);
    expect(says("WOOD_MOISTURE", 20, 50)).toMatch(/^#N\/A/);
    expect(value("WOOD_MOISTURE", "20 C", "65%")).toBeCloseTo(12, 0);
  });
});

describe("WOOD_WEIGHT", () => {
  test("rises with gravity and moisture, and dry wood is its gravity of water", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.2, max: 1, noNaN: true }), fc.double({ min: 0, max: 29, noNaN: true }), (g, m) => {
        expect(woodWeightPcf(g, m + 1)).toBeGreaterThan(woodWeightPcf(g, m));
        expect(woodWeightPcf(g + 0.1, m)).toBeGreaterThan(woodWeightPcf(g, m));
        expect(woodWeightPcf(g, 0)).toBeCloseTo(62.4 * g, 9);
      }),
    );
    expect(() => woodWeightPcf(0.5, 31)).toThrow(/moisture content/);
    expect(() => woodWeightPcf(1.3, 10)).toThrow(/specific gravity/);
    expect(() => woodWeightPcf(0.05, 10)).toThrow(/specific gravity/);
    expect(value("WOOD_WEIGHT", 0.42)).toBeCloseTo(woodWeightPcf(0.42, 12), 12);
  });
});

describe("WOOD_SHRINK", () => {
  const fir = SHRINKAGE[0] as (typeof SHRINKAGE)[number];

  test("drying shrinks, wetting gives it back, and above fiber saturation nothing moves", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...SHRINKAGE),
        fc.constantFrom("tangential", "radial", "along" as const),
        fc.double({ min: 0, max: 30, noNaN: true }),
        fc.double({ min: 0, max: 30, noNaN: true }),
        (wood, direction, a, b) => {
          const change = woodShrinkIn(10, wood, a, b, direction);
          if (Math.abs(a - b) > 1e-6) expect(Math.sign(change)).toBe(Math.sign(b - a));
          expect(woodShrinkIn(10 + change, wood, b, a, direction)).toBeCloseTo(-change, 9);
          expect(woodShrinkIn(20, wood, a, b, direction)).toBeCloseTo(2 * change, 9);
        },
      ),
    );
    expect(woodShrinkIn(10, fir, 80, 30, "tangential")).toBeCloseTo(0, 12);
    expect(woodShrinkIn(100, fir, 30, 0, "tangential")).toBeCloseTo(-7.6, 9);
    expect(woodShrinkIn(100, fir, 30, 0, "radial")).toBeCloseTo(-4.8, 9);
    expect(woodShrinkIn(100, fir, 30, 0, "along")).toBeCloseTo(-0.2, 9);
    expect(woodShrinkIn(100, fir, 30, 15, "tangential")).toBeCloseTo(-3.8, 9);
  });

  test("a white fir board 232 mm wide swells 1.7 mm from 8 to 11 % (Wood Handbook ch. 13, from memory)", () => {
    const whiteFir = SHRINKAGE.find((s) => s.wood === "white fir");
    if (whiteFir === undefined) throw new Error("no white fir");
    expect(woodShrinkIn(232, whiteFir, 8, 11, "tangential")).toBeCloseTo(1.705, 1);
  });

  test("lumber by thickness and width keeps to the paper's moisture", () => {
    expect(woodShrinkIn(100, fir, 30, 19, "thickness")).toBeCloseTo(-(5.062 - 0.181 * 19), 9);
    expect(woodShrinkIn(100, fir, 28, 8, "width")).toBeCloseTo(-(6.031 - 0.215 * 8), 9);
    for (const m of [7.9, 19.1, 27.9]) expect(() => woodShrinkIn(100, fir, 30, m, "width")).toThrow(/8 to 19 %/);
  });

  test("is asked in words", () => {
    expect(value("WOOD_SHRINK", 11.25, "southern pine", 19, 9)).toBeCloseTo(
      11.25 * ((1 - 0.074 * 0.7) / (1 - 0.074 * (11 / 30)) - 1),
      9,
    );
    expect(cautions("WOOD_SHRINK", 11.25, "southern pine", 19, 9)).toMatch(/from memory/);
    expect(cautions("WOOD_SHRINK", 11.25, "Douglas-fir", 19, 9)).not.toMatch(/from memory/);
    expect(says("WOOD_SHRINK", 11.25, "balsa", 19, 9)).toMatch(/"balsa" is not in the table/);
    expect(says("WOOD_SHRINK", 11.25, "spruce", 19, 101)).toMatch(/from 0 to 100/);
    expect(SHRINK_DIRECTIONS[0]).toBe("tangential");
  });
});
