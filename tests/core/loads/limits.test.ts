import { describe, expect, test } from "vitest";
import { partWeight } from "../../../src/core/loads/part-weight.ts";
import { stepDrift } from "../../../src/core/loads/snow-drift.ts";
import { balancedSnow, type SnowSite } from "../../../src/core/loads/snow-roof.ts";
import { unbalancedSnow } from "../../../src/core/loads/snow-unbalanced.ts";

const SITE: SnowSite = { groundPsf: 20, ce: 1, ct: 1, category: "II", edition: "7-16" };

describe("balanced snow by hand", () => {
  // pf = 0.7 x 20 = 14 psf; pm = 20 psf under 15 degrees; rain on snow 5 psf where the slope in degrees is below W / 50.
  test("the sloped load, with rain on snow, or the least load, whichever is more", () => {
    expect(balancedSnow(SITE, 5, "other", 300)).toEqual({
      flatPsf: 14,
      slopedPsf: 14,
      leastPsf: 20,
      rainPsf: 5,
      designPsf: 20,
    });
    // Cs = 1 - (40 - 30) / 40 = 0.75 above 15 degrees, where no least load stands.
    expect(balancedSnow(SITE, 40, "other", undefined)).toMatchObject({ slopedPsf: 10.5, leastPsf: 0, designPsf: 10.5 });
    // Ce 1.2 and Ct 1.2: pf = 0.7 x 1.2 x 1.2 x 20 = 20.16 psf, above the least load with rain alone.
    const cold = balancedSnow({ ...SITE, ce: 1.2, ct: 1.2 }, 5, "other", 300);
    expect(cold.designPsf).toBeCloseTo(25.16, 9);
    expect(balancedSnow({ ...SITE, groundPsf: 1 }, 5, "other", 300).rainPsf).toBe(5);
    expect(balancedSnow({ ...SITE, groundPsf: 0 }, 5, "other", 300).rainPsf).toBe(0);
  });
});

describe("a drift needs room", () => {
  // Density 0.13 x 40 + 14 = 19.2 pcf; 38.4 psf lie 2 ft deep: a step of 2.4 ft leaves hc / hb = 0.2.
  const step = (stepFt: number, balancedPsf = 38.4) =>
    stepDrift({ ...SITE, groundPsf: 40, winterWind: undefined, balancedPsf, stepFt, upperFt: 60, lowerFt: 60 });
  const none = { peakPsf: 0, totalPsf: 38.4, widthFt: 0, heightFt: 0, from: "none" };

  test("none under a fifth of the balanced depth, one above it", () => {
    for (const stepFt of [1, 2, 2.39]) expect(step(stepFt)).toEqual(none);
    const small = step(2.41);
    expect(small.heightFt).toBeCloseTo(0.41, 9);
    // hd is above hc: 4 hd^2 / hc is cut at 8 hc.
    expect(small.widthFt).toBeCloseTo(8 * 0.41, 9);
    expect(small.totalPsf).toBeCloseTo(38.4 + 19.2 * 0.41, 9);
  });

  test("no step, no drift, whatever lies there", () => {
    expect(step(0, 0)).toEqual({ ...none, totalPsf: 0 });
  });
});

test("gables take unbalanced snow from 1/2 on 12 to 7 on 12", () => {
  const deg = (rise: number) => (Math.atan(rise / 12) * 180) / Math.PI;
  const at = (slopeDeg: number) =>
    unbalancedSnow({ ...SITE, groundPsf: 40, winterWind: undefined }, 28, slopeDeg, 30, false);
  for (const rise of [0.5, 3, 7]) expect(at(deg(rise)), `${rise} on 12`).toHaveLength(3);
  for (const rise of [0.49, 7.01]) expect(at(deg(rise)), `${rise} on 12`).toEqual([]);
  // Is pg on the leeward side up to 20 ft with simple rafters, else 0.3 ps windward.
  const simple = (eaveToRidgeFt: number) =>
    unbalancedSnow({ ...SITE, groundPsf: 40, winterWind: undefined }, 28, 20, eaveToRidgeFt, true).map((p) => p.psf);
  expect(simple(20)).toEqual([0, 40]);
  expect(simple(20.1)[0]).toBeCloseTo(8.4, 9);
});

test("weights of parts from nothing to 1000", () => {
  expect(partWeight("0 psf", undefined, "roof")).toMatchObject({ psf: 0 });
  expect(partWeight("0.5 psf", undefined, "roof")).toMatchObject({ psf: 0.5 });
  expect(partWeight("1000 psf", undefined, "roof")).toMatchObject({ psf: 1000 });
  expect(partWeight("0.5 pcf", 6, "roof")).toMatchObject({ psf: 0.25 });
  expect(() => partWeight("1001 psf", undefined, "roof")).toThrow(/1000/);
});
