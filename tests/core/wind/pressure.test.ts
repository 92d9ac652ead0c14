import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { EDITIONS } from "../../../src/core/kit/edition.ts";
import { OutOfRange } from "../../../src/core/kit/refusal.ts";
import { Tape } from "../../../src/core/kit/tape.ts";
import { effectiveArea } from "../../../src/core/wind/cladding/effective-area.ts";
import { inDebrisRegion } from "../../../src/core/wind/debris-region.ts";
import { edgeWidth } from "../../../src/core/wind/edge.ts";
import { exposureCoefficient, WIND_USES } from "../../../src/core/wind/exposure-coefficient.ts";
import { EXPOSURES } from "../../../src/core/wind/tables/terrain.ts";
import { HILL_SHAPES } from "../../../src/core/wind/tables/topography.ts";
import { type HillSite, topographicFactor } from "../../../src/core/wind/topographic-factor.ts";
import { elevationFactor, velocityPressure } from "../../../src/core/wind/velocity-pressure.ts";

const editions = fc.constantFrom(...EDITIONS);
const exposures = fc.constantFrom(...EXPOSURES);
const uses = fc.constantFrom(...WIND_USES);
const heights = fc.double({ min: 1, max: 500, noNaN: true });

describe("Kz", () => {
  test("never falls with height, and rougher ground never has more", () => {
    fc.assert(
      fc.property(heights, heights, exposures, uses, editions, (a, b, exposure, use, edition) => {
        const [low, high] = [Math.min(a, b), Math.max(a, b)];
        const kz = (h: number, e = exposure) => exposureCoefficient(h, e, use, edition);
        expect(kz(low)).toBeLessThanOrEqual(kz(high) + 1e-12);
        expect(kz(low, "B")).toBeLessThanOrEqual(kz(low, "C"));
        expect(kz(low, "C")).toBeLessThanOrEqual(kz(low, "D"));
      }),
    );
  });

  test("7-10 and 7-16 agree but for the least value of cladding in Exposure B", () => {
    fc.assert(
      fc.property(heights, exposures, uses, (h, exposure, use) => {
        const [then, now] = [
          exposureCoefficient(h, exposure, use, "7-10"),
          exposureCoefficient(h, exposure, use, "7-16"),
        ];
        if (use === "cladding" && exposure === "B") expect(then).toBe(Math.max(now, 0.7));
        else expect(then).toBe(now);
      }),
    );
  });

  test("a use that is not said takes the largest of the uses, and says so where it matters", () => {
    fc.assert(
      fc.property(heights, exposures, editions, (h, exposure, edition) => {
        const largest = Math.max(...WIND_USES.map((use) => exposureCoefficient(h, exposure, use, edition)));
        expect(exposureCoefficient(h, exposure, undefined, edition)).toBe(largest);
      }),
    );
    const cautions = (h: number) => {
      const tape = new Tape();
      exposureCoefficient(h, "B", undefined, "7-10", tape);
      return tape.cautions.join(" ");
    };
    expect(cautions(20)).toMatch(/give purpose/);
    expect(cautions(31)).not.toMatch(/give purpose/);
  });

  test("holds its value at 15 ft below, and ends at 500 ft", () => {
    expect(exposureCoefficient(3, "C", "frame", "7-16")).toBe(exposureCoefficient(15, "C", "frame", "7-16"));
    expect(() => exposureCoefficient(501, "C", "frame", "7-16")).toThrow(OutOfRange);
  });
});

describe("velocity pressure", () => {
  const base = { heightFt: 30, exposure: "C", kzt: 1, kd: 0.85, elevationFt: 0, use: "frame" } as const;

  test("grows with the square of the speed and with each factor", () => {
    fc.assert(
      fc.property(fc.double({ min: 50, max: 150, noNaN: true }), editions, heights, (v, edition, heightFt) => {
        const q = (speedMph: number, kzt = 1) => velocityPressure({ ...base, speedMph, heightFt, kzt, edition });
        expect(q(2 * v) / q(v)).toBeCloseTo(4, 9);
        expect(q(v, 1.5) / q(v)).toBeCloseTo(1.5, 9);
      }),
    );
  });

  test("7-22 leaves Kd to the pressure equation, and says so", () => {
    const tape = new Tape();
    const with1 = velocityPressure({ ...base, speedMph: 120, kd: 1, edition: "7-22" });
    expect(velocityPressure({ ...base, speedMph: 120, edition: "7-22" }, tape)).toBe(with1);
    expect(tape.cautions.join(" ")).toMatch(/q does not hold Kd; the pressure equation multiplies by it\./);
    const other = new Tape();
    velocityPressure({ ...base, speedMph: 120, kd: 0.9, edition: "7-22" }, other);
    expect(other.cautions.join(" ")).toMatch(/the 0.9 given is not used here/);
  });

  test("7-10 has no elevation factor, and says so", () => {
    const tape = new Tape();
    expect(elevationFactor(5000, "7-10", tape)).toBe(1);
    expect(tape.cautions).toHaveLength(1);
    expect(elevationFactor(5000, "7-16")).toBeLessThan(0.85);
  });
});

test("the edge width keeps between its bounds and never falls with the building's size", () => {
  const sizes = fc.double({ min: 10, max: 1000, noNaN: true });
  fc.assert(
    fc.property(sizes, sizes, fc.double({ min: 8, max: 60, noNaN: true }), editions, (w, l, h, edition) => {
      const a = edgeWidth(w, l, h, edition);
      expect(a).toBeGreaterThanOrEqual(Math.max(3, 0.04 * Math.min(w, l)) - 1e-12);
      expect(a).toBeLessThanOrEqual(Math.max(3, 0.1 * Math.min(w, l)) + 1e-12);
      expect(edgeWidth(w + 10, l + 10, h, edition)).toBeGreaterThanOrEqual(a - 1e-12);
      expect(edgeWidth(l, w, h, edition)).toBe(a);
    }),
  );
});

test("the topographic factor is at least 1 and falls with distance and height", () => {
  const site = fc.record({
    shape: fc.constantFrom(...HILL_SHAPES),
    hillFt: fc.double({ min: 10, max: 500, noNaN: true }),
    halfLengthFt: fc.double({ min: 50, max: 3000, noNaN: true }),
    distanceFt: fc.double({ min: 0, max: 5000, noNaN: true }),
    side: fc.constantFrom("upwind" as const, "downwind" as const),
    heightFt: heights,
    exposure: exposures,
    edition: editions,
  });
  fc.assert(
    fc.property(site, (s: HillSite) => {
      const kzt = topographicFactor(s);
      expect(kzt).toBeGreaterThanOrEqual(1);
      expect(kzt).toBeLessThanOrEqual(3.2);
      expect(topographicFactor({ ...s, distanceFt: s.distanceFt + 50 })).toBeLessThanOrEqual(kzt);
      expect(topographicFactor({ ...s, heightFt: s.heightFt + 10 })).toBeLessThanOrEqual(kzt);
    }),
  );
});

test("debris region: both rules at their limits, each with its reason", () => {
  const at = (v: number, miles: number, d = true, hurricane = true) => inDebrisRegion(v, miles, d, hurricane, "7-16");
  expect(at(130, 1)).toEqual({
    inside: true,
    why: "within 1 mile of mean high water with Exposure D upwind, at 130 mph or more",
  });
  expect(at(129.9, 1).inside).toBe(false);
  expect(at(130, 1.01).inside).toBe(false);
  expect(at(130, 1, false).inside).toBe(false);
  expect(inDebrisRegion(130, 1, false, true, "7-10")).toEqual({
    inside: true,
    why: "within 1 mile of mean high water, at 130 mph or more",
  });
  expect(at(140, 200, false)).toEqual({ inside: true, why: "anywhere in a hurricane-prone region at 140 mph or more" });
  expect(at(139.9, 200, false).why).toMatch(/neither/);
  expect(at(180, 0, true, false)).toEqual({ inside: false, why: "not in a hurricane-prone region" });
});

test("an effective wind area is not less than span by a third of span", () => {
  const sizes = fc.double({ min: 0.1, max: 100, noNaN: true });
  fc.assert(
    fc.property(sizes, sizes, (span, width) => {
      const area = effectiveArea(span, width);
      expect(area).toBe(span * Math.max(width, span / 3));
      expect(effectiveArea(span, width + 1)).toBeGreaterThanOrEqual(area);
    }),
  );
  expect(effectiveArea(9, 2)).toBe(27);
  expect(effectiveArea(9, 4)).toBe(36);
  expect(() => effectiveArea(1001, 2)).toThrow(OutOfRange);
  expect(() => effectiveArea(2, 1001)).toThrow(OutOfRange);
});
