import { describe, expect, test } from "vitest";
import { gcpAt } from "../../../src/core/wind/area-curve.ts";
import { baseShear } from "../../../src/core/wind/base-shear.ts";
import { meanRoofHeightFt } from "../../../src/core/wind/building.ts";
import { claddingFigure } from "../../../src/core/wind/cladding-figure.ts";
import { edgeWidth } from "../../../src/core/wind/edge.ts";
import type { FrameInput } from "../../../src/core/wind/frame.ts";
import { windwardRoofCp } from "../../../src/core/wind/frame-coefficients.ts";
import { speedUp, topographicFactor } from "../../../src/core/wind/topographic-factor.ts";
import { roofUplift } from "../../../src/core/wind/uplift.ts";

// Rules of the standard worked by hand, for numbers that no print at hand holds.

const DEG = 180 / Math.PI;

/** 40 ft across the ridge, 80 ft along it, 10 ft eave, 6 on 12: rise 10 ft, mean roof height 15 ft. */
const BARN: FrameInput = {
  qPsf: 20,
  kd: 0.85,
  widthFt: 40,
  lengthFt: 80,
  eaveFt: 10,
  slopeDeg: Math.atan(0.5) * DEG,
  roof: "gable",
  enclosure: "enclosed",
  exposure: undefined,
  level: "strength",
  edition: "7-16",
};

test("the edge width takes each of its four bounds", () => {
  expect(edgeWidth(40, 80, 30, "7-16")).toBeCloseTo(4, 12); // 10 % of 40
  expect(edgeWidth(80, 120, 15, "7-16")).toBeCloseTo(6, 12); // 0.4 x 15, below 8
  expect(edgeWidth(20, 60, 30, "7-16")).toBe(3); // 2 by 10 %, not below 3
  expect(edgeWidth(200, 250, 12, "7-16")).toBeCloseTo(8, 12); // 4.8 by 0.4 h, not below 4 % of 200
});

test("the mean roof height is half way up the roof, and the eave up to 10 degrees", () => {
  expect(meanRoofHeightFt(BARN)).toBeCloseTo(15, 9);
  expect(meanRoofHeightFt({ ...BARN, slopeDeg: 10 })).toBe(10);
  expect(meanRoofHeightFt({ ...BARN, roof: "monoslope" })).toBeCloseTo(20, 9);
});

test("the flat roof of 7-16 as its figure lists it", () => {
  const { zones } = claddingFigure("flat", 2, "7-16");
  const away = (zone: string, area: number) => gcpAt(zones?.[zone]?.away ?? [[1, Number.NaN]], area);
  expect(["1'", "1", "2", "3"].map((z) => away(z, 10))).toEqual([-0.9, -1.7, -2.3, -3.2]);
  expect(["1", "2", "3"].map((z) => away(z, 500))).toEqual([-1, -1.4, -1.4]);
  expect(away("1'", 1000)).toBe(-0.4);
});

test("a steep tall roof's pressure at 45 degrees, h/L 1", () => {
  expect(windwardRoofCp(45, 1)).toEqual({ suction: 0, pressure: 0.3 });
});

describe("hills", () => {
  const ridge = {
    shape: "ridge",
    hillFt: 100,
    halfLengthFt: 400,
    distanceFt: 0,
    side: "downwind",
    heightFt: 0.001,
    exposure: "D",
    edition: "7-16",
  } as const;

  test("K1 of a ridge goes by the exposure", () => {
    expect(speedUp(ridge).k1).toBeCloseTo(1.55 / 4, 12);
    expect(speedUp({ ...ridge, exposure: "B" }).k1).toBeCloseTo(1.3 / 4, 12);
  });

  test("count from H/Lh 0.2 up, and from 15 ft, in Exposure B 60 ft", () => {
    expect(topographicFactor({ ...ridge, halfLengthFt: 501 })).toBe(1);
    expect(topographicFactor({ ...ridge, halfLengthFt: 500 })).toBeGreaterThan(1.5);
    expect(topographicFactor({ ...ridge, hillFt: 14, halfLengthFt: 40 })).toBe(1);
    expect(topographicFactor({ ...ridge, hillFt: 15, halfLengthFt: 40 })).toBeGreaterThan(1);
    expect(topographicFactor({ ...ridge, exposure: "B", hillFt: 59, halfLengthFt: 200 })).toBe(1);
    expect(topographicFactor({ ...ridge, exposure: "B", hillFt: 60, halfLengthFt: 200 })).toBeGreaterThan(1);
  });

  test("steeper than 0.5 take 0.5 in K1 and twice their height as length", () => {
    const steep = { ...ridge, halfLengthFt: 50, heightFt: 40, distanceFt: 30 };
    const { k1, k2, k3 } = speedUp(steep);
    expect(k1).toBeCloseTo(1.55 * 0.5, 12);
    expect(k2).toBeCloseTo(1 - 30 / (1.5 * 200), 12);
    expect(k3).toBeCloseTo(Math.exp((-3 * 40) / 200), 12);
  });
});

describe("base shear of a gable", () => {
  test("by pressures", () => {
    const [across, along] = baseShear(BARN);
    // across: L/B 0.5, h/L 0.375; 26.57 degrees lies 0.3130 of the way from 25 to 30.
    const suctionShare = (26.56505 - 25) / 5;
    const pressure25 = (0.3 + 0.2) / 2; // h/L half way from 0.25 to 0.5
    const pressure30 = (0.3 + 0.2) / 2;
    const roofCp = pressure25 + suctionShare * (pressure30 - pressure25);
    const q = 20 * 0.85;
    expect(across?.pressureLb).toBeCloseTo(q * (0.8 + 0.5) * 800 + q * (roofCp + 0.6) * 800, 3);
    // along: L/B 2, end wall 40 x 10 and a triangle 40 x 10 / 2.
    expect(along?.pressureLb).toBeCloseTo(q * (0.8 + 0.3) * 600, 6);
  });

  test("by the least load: 16 psf on walls, 8 psf on the roof in projection", () => {
    const [across, along] = baseShear({ ...BARN, qPsf: 1 });
    expect(across?.designLb).toBeCloseTo(16 * 800 + 8 * 800, 6);
    expect(along?.designLb).toBeCloseTo(16 * 600, 6);
    const allowable = baseShear({ ...BARN, qPsf: 1, level: "allowable" })[0];
    expect(allowable?.designLb).toBeCloseTo(0.6 * (16 + 8) * 800, 6);
  });

  test("a hip has its ends as roof, with less of a side", () => {
    const [across, along] = baseShear({ ...BARN, roof: "hip", qPsf: 1 });
    expect(across?.leastLb).toBeCloseTo(16 * 800 + 8 * 10 * 60, 6);
    expect(along?.leastLb).toBeCloseTo(16 * 400 + 8 * 200, 6);
  });
});

test("uplift of a low roof with an overhang", () => {
  const low = { ...BARN, slopeDeg: 5, deadPsf: 8, tributariesFt: [22], overhangFt: 2 };
  // h/L at most 0.5: 0 to h has -0.9; 0.8 under the overhang.
  const wind = 20 * (0.85 * 0.9 + 0.18) * 22 + 20 * 0.85 * 0.8 * 2;
  expect(roofUplift(low)[0]?.netPlf).toBeCloseTo(wind - 0.9 * 8 * 22, 9);
  expect(roofUplift({ ...low, level: "allowable" })[0]?.netPlf).toBeCloseTo(0.6 * wind - 0.6 * 8 * 22, 9);
});
