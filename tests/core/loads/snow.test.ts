import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { EDITIONS } from "../../../src/core/kit/edition.ts";
import { OutOfRange } from "../../../src/core/kit/refusal.ts";
import { Tape } from "../../../src/core/kit/tape.ts";
import { driftHeight, snowDensity, stepDrift } from "../../../src/core/loads/snow-drift.ts";
import {
  balancedSnow,
  flatRoofSnow,
  leastSnow,
  type SnowSite,
  slopeFactor,
} from "../../../src/core/loads/snow-roof.ts";
import { unbalancedSnow } from "../../../src/core/loads/snow-unbalanced.ts";
import { RISK_CATEGORIES, ROOF_SURFACES } from "../../../src/core/loads/tables/snow.ts";

const HOUSE: SnowSite = { groundPsf: 30, ce: 1, ct: 1.1, category: "II", edition: "7-16" };
const slopes = fc.double({ min: 0, max: 70, noNaN: true });
const editions = fc.constantFrom(...EDITIONS);
const categories = fc.constantFrom(...RISK_CATEGORIES);

describe("roof snow", () => {
  test("never grows with slope, and slippery roofs hold less", () => {
    fc.assert(
      fc.property(slopes, slopes, fc.constantFrom(1, 1.1, 1.2), (a, b, ct) => {
        for (const surface of ROOF_SURFACES) {
          expect(slopeFactor(Math.max(a, b), surface, ct)).toBeLessThanOrEqual(
            slopeFactor(Math.min(a, b), surface, ct),
          );
        }
        expect(slopeFactor(a, "slippery", ct)).toBeLessThanOrEqual(slopeFactor(a, "other", ct));
      }),
    );
  });

  test("the flat-roof load grows as each of its factors does", () => {
    const factor = fc.double({ min: 0.7, max: 1.3, noNaN: true });
    fc.assert(
      fc.property(
        factor,
        factor,
        fc.double({ min: 5, max: 200, noNaN: true }),
        editions,
        (ce, ct, groundPsf, edition) => {
          // pf = 0.7 Ce Ct Is pg, and Is is 1 in category II (ASCE/SEI 7-16 Eq. 7.3-1)
          const pf = flatRoofSnow({ groundPsf, ce, ct, category: "II", edition });
          expect(pf / (0.7 * groundPsf)).toBeCloseTo(ce * ct, 9);
        },
      ),
    );
  });

  test("the design load is never below the sloped or the least load", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 200, noNaN: true }),
        slopes,
        categories,
        editions,
        (groundPsf, slope, category, edition) => {
          const b = balancedSnow({ ...HOUSE, groundPsf, category, edition }, slope, "other", 20);
          expect(b.designPsf).toBeGreaterThanOrEqual(Math.max(b.slopedPsf, b.leastPsf));
        },
      ),
    );
  });

  test("the least load is for low slopes: Is min(pg, 20) to 7-16, min(pg, 30) in 7-22", () => {
    expect(leastSnow({ ...HOUSE, category: "IV" }, 5)).toBeCloseTo(24, 9);
    expect(leastSnow({ ...HOUSE, groundPsf: 12 }, 5)).toBe(12);
    expect(leastSnow({ ...HOUSE, groundPsf: 60, edition: "7-22" }, 5)).toBe(30);
    expect(leastSnow(HOUSE, 15)).toBe(0);
  });

  test("importance is in the load to 7-16 and in the map of 7-22", () => {
    expect(flatRoofSnow({ ...HOUSE, category: "IV" })).toBeCloseTo(1.2 * flatRoofSnow(HOUSE), 9);
    const now = { ...HOUSE, edition: "7-22" } as const;
    expect(flatRoofSnow({ ...now, category: "IV" })).toBe(flatRoofSnow(now));
  });

  test("rain on snow comes on nearly flat wide roofs under light snow", () => {
    const rain = (slope: number, width: number, groundPsf = 20) =>
      balancedSnow({ ...HOUSE, groundPsf }, slope, "other", width).rainPsf;
    expect(rain(1, 60)).toBe(5);
    expect(rain(2, 60)).toBe(0);
    expect(rain(1, 60, 21)).toBe(0);
    const tape = new Tape();
    balancedSnow({ ...HOUSE, groundPsf: 15 }, 1, "other", undefined, tape);
    expect(tape.cautions.join(" ")).toMatch(/Rain on snow/);
  });
});

describe("drifts", () => {
  const site = { groundPsf: 30, category: "II", winterWind: 0.4, edition: "7-16" } as const;

  test("grow with fetch and ground snow in every edition", () => {
    const fetches = fc.double({ min: 1, max: 500, noNaN: true });
    fc.assert(
      fc.property(
        fetches,
        fetches,
        fc.double({ min: 5, max: 100, noNaN: true }),
        editions,
        (a, b, groundPsf, edition) => {
          const hd = (fetchFt: number) => driftHeight({ ...site, groundPsf, edition }, fetchFt);
          expect(hd(Math.max(a, b))).toBeGreaterThanOrEqual(hd(Math.min(a, b)));
          expect(hd(a)).toBeGreaterThanOrEqual(0);
        },
      ),
    );
    expect(driftHeight(site, 5)).toBe(driftHeight(site, 20));
  });

  test("never rise above the step, never spread beyond 8 hc, and are continuous where the step cuts them", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.5, max: 20, noNaN: true }),
        fc.double({ min: 5, max: 300, noNaN: true }),
        (stepFt, upperFt) => {
          const d = stepDrift({ ...site, balancedPsf: 23.1, stepFt, upperFt, lowerFt: 40 });
          const hc = stepFt - 23.1 / snowDensity(30, "7-16");
          if (d.from === "none") return;
          expect(d.heightFt).toBeLessThanOrEqual(hc + 1e-9);
          expect(d.widthFt).toBeLessThanOrEqual(8 * hc + 1e-9);
        },
      ),
    );
    const hd = driftHeight(site, 100);
    const hb = 23.1 / snowDensity(30, "7-16");
    const at = (more: number) =>
      stepDrift({ ...site, balancedPsf: 23.1, stepFt: hb + hd + more, upperFt: 100, lowerFt: 10 }).widthFt;
    expect(at(1e-9)).toBeCloseTo(at(-1e-9), 6);
  });

  test("no step left above the snow, no drift", () => {
    expect(stepDrift({ ...site, balancedPsf: 40, stepFt: 2, upperFt: 100, lowerFt: 100 }).peakPsf).toBe(0);
  });

  test("7-22 asks for its winter wind parameter", () => {
    expect(() => driftHeight({ ...site, winterWind: undefined, edition: "7-22" }, 50)).toThrow(OutOfRange);
    expect(driftHeight({ ...site, groundPsf: 0, edition: "7-22" }, 50)).toBe(0);
  });
});

describe("unbalanced gable", () => {
  const site = { groundPsf: 30, category: "II", winterWind: undefined, edition: "7-16" } as const;

  test("between 1/2 on 12 and 7 on 12 only", () => {
    expect(unbalancedSnow(site, 20, 2, 30, true)).toEqual([]);
    expect(unbalancedSnow(site, 20, 31, 30, true)).toEqual([]);
    expect(unbalancedSnow(site, 20, 20, 30, true)).toHaveLength(3);
  });

  test("simple rafters up to 20 ft take the ground snow on one side, others a surcharge at the ridge", () => {
    expect(unbalancedSnow(site, 20, 20, 20, true).map((p) => p.psf)).toEqual([0, 30]);
    const [windward, leeward, surcharge] = unbalancedSnow(site, 20, 26.565, 20, false);
    expect(windward?.psf).toBeCloseTo(6, 9);
    expect(leeward?.psf).toBe(20);
    // hand: hd = 0.43 x 20^(1/3) x 40^(1/4) - 1.5 = 1.435 ft, gamma 17.9 pcf, S = 2
    expect(surcharge?.psf).toBeCloseTo((1.435 * 17.9) / Math.SQRT2, 1);
    expect(surcharge?.widthFt).toBeCloseTo((8 * 1.435 * Math.SQRT2) / 3, 2);
  });
});
