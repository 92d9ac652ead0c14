import { describe, expect, test } from "vitest";
import { Tape } from "../../../src/core/kit/tape.ts";
import { meanRoofHeightFt } from "../../../src/core/wind/building.ts";
import { claddingFigure } from "../../../src/core/wind/cladding/cladding-figure.ts";
import { edgeWidth } from "../../../src/core/wind/edge.ts";
import { baseShear } from "../../../src/core/wind/frame/base-shear.ts";
import type { FrameInput } from "../../../src/core/wind/frame/frame.ts";
import { windwardRoofCp } from "../../../src/core/wind/frame/frame-coefficients.ts";
import { directionalFrame } from "../../../src/core/wind/frame/frame-directional.ts";
import { envelopeFrame } from "../../../src/core/wind/frame/frame-envelope.ts";
import { roofUplift } from "../../../src/core/wind/frame/uplift.ts";
import { gcpAt } from "../../../src/core/wind/tables/area-curve.ts";
import { speedUp, topographicFactor } from "../../../src/core/wind/topographic-factor.ts";

// Rules of the standard worked by hand, for numbers that no print at hand holds.

const DEG = 180 / Math.PI;

/** 40 ft across the ridge, 80 ft along it, 10 ft eave, 6 on 12: rise 10 ft, mean roof height 15 ft. */
const BARN: FrameInput = {
  qPsf: 20,
  kd: 0.85,
  kzt: 1,
  roofAreaFt2: undefined,
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

  test("a building upwind and below half the height has no speed-up; behind the crest that is taken as met, and said", () => {
    const at = (change: Partial<typeof ridge> | object, tape?: Tape) =>
      topographicFactor({ ...ridge, heightFt: 20, ...change }, tape);
    expect(at({ side: "upwind", distanceFt: 400 })).toBeGreaterThan(1);
    expect(at({ side: "upwind", distanceFt: 401 })).toBe(1);
    expect(at({ side: "downwind", distanceFt: 401 })).toBeGreaterThan(1);
    expect(at({ side: "upwind", distanceFt: 401, shape: "escarpment" })).toBeGreaterThan(1);
    const cautions = (change: object) => {
      const tape = new Tape();
      at(change, tape);
      return tape.cautions.join(" ");
    };
    expect(cautions({ side: "downwind" })).toMatch(/upper half: these are taken as met/);
    expect(cautions({ side: "upwind" })).not.toMatch(/upper half/);
    expect(cautions({ side: "downwind", shape: "escarpment" })).not.toMatch(/upper half/);
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

describe("a low monoslope", () => {
  const shed: FrameInput = { ...BARN, roof: "monoslope", eaveFt: 12, slopeDeg: 9 };
  const perFt = 80 * Math.tan(9 / DEG); // level share of a foot of its slope

  test("pulls on with its whole roof when the wind meets the high side, back when it meets the low one", () => {
    const [low, high] = baseShear(shed);
    // h 12 ft, h/L 0.3: -0.9 to 12 ft, -0.5 to 24 ft, -0.3 to 40 ft; leeward wall -0.5 at L/B 0.5.
    const q = 20 * 0.85;
    const rise = 40 * Math.tan(9 / DEG);
    const roof = q * perFt * (0.9 * 12 + 0.5 * 12 + 0.3 * 16);
    expect(high?.pressureLb).toBeCloseTo(q * 80 * (0.8 * (12 + rise) + 0.5 * 12) + roof, 6);
    expect(low?.pressureLb).toBeCloseTo(q * 80 * (0.8 * 12 + 0.5 * (12 + rise)), 6);
  });

  test("falls by the standard's own step at 10 degrees, from strips to slope, and no further", () => {
    const at = (slopeDeg: number) => baseShear({ ...shed, slopeDeg })[1]?.pressureLb ?? 0;
    // At 10 degrees the whole slope has -0.3 (h/L under 0.25) or what lies between that and -0.5: h is half way up then.
    expect(at(9.999)).toBeGreaterThan(at(10));
    expect(at(10) / at(9.999)).toBeGreaterThan(0.9);
  });

  test("a low gable's windward slope holds back more than its leeward one pulls", () => {
    const gable = { ...shed, roof: "gable" } as const;
    expect(baseShear(gable)[0]?.pressureLb).toBeCloseTo(20 * 0.85 * 80 * 12 * 1.3, 6);
  });
});

describe("a hip roof", () => {
  const hip: FrameInput = { ...BARN, roof: "hip" };

  test("has its ends as strips across the ridge and as slopes along it", () => {
    const rows = directionalFrame(hip);
    const across = rows.filter((r) => r.wind === "across ridge" && r.surface === "hip ends");
    // h 15 ft, h/L 0.375, 40 ft deep: -0.9 to 15 ft, -0.5 to 30 ft, -0.3 to 40 ft, and the other condition.
    expect(across.map((r) => [r.part, r.coefficient])).toEqual([
      ["0 to 7.5 ft from the windward edge", -0.9],
      ["7.5 to 15 ft from the windward edge", -0.9],
      ["15 to 30 ft from the windward edge", -0.5],
      ["30 to 40 ft from the windward edge", -0.3],
      ["other condition", -0.18],
    ]);
    expect(rows.filter((r) => r.wind === "along ridge" && r.surface.includes("hip end"))).toHaveLength(3);
  });

  test("is lifted by its ends: -0.9 where the slopes have -0.6", () => {
    const [line] = roofUplift({ ...hip, deadPsf: 0, tributariesFt: [10], overhangFt: 0 });
    expect(line?.windPlf).toBeCloseTo(20 * (0.85 * 0.9 + 0.18) * 10, 6);
  });
});

test("the area given takes suction off the -1.3 of strips and of slopes at 10 degrees", () => {
  const tall: FrameInput = { ...BARN, eaveFt: 60, slopeDeg: 0, roof: "flat" };
  const first = (input: FrameInput) => directionalFrame(input).find((r) => r.surface.includes("roof"))?.coefficient;
  expect(first(tall)).toBe(-1.3);
  expect(first({ ...tall, roofAreaFt2: 100 })).toBe(-1.3);
  expect(first({ ...tall, roofAreaFt2: 250 })).toBeCloseTo(-1.17, 9);
  expect(first({ ...tall, roofAreaFt2: 1000 })).toBeCloseTo(-1.04, 9);
  const ten: FrameInput = { ...tall, roof: "gable", slopeDeg: 10, roofAreaFt2: 1000 };
  expect(first(ten)).toBeCloseTo(-1.04, 9);
});

test("the envelope's rows say in words what their numbers stand for, with both internal pressures", () => {
  const rows = envelopeFrame({ ...BARN, slopeDeg: 20 });
  expect(rows.map((r) => r.surface)).toContain("windward wall (1E)");
  expect(rows.map((r) => r.surface)).toContain("leeward end wall (6)");
  const wall = rows.find((r) => r.surface === "windward wall (1)");
  expect(wall?.withPressurePsf).toBeCloseTo(20 * (0.53 - 0.18), 9);
  expect(wall?.withSuctionPsf).toBeCloseTo(20 * (0.53 + 0.18), 9);
  expect(wall?.wind).toBe("case A, across ridge");
});

test("a hill's speed-up over the height of the wall is said where it is held constant", () => {
  const cautions = (change: Partial<FrameInput>) => {
    const tape = new Tape();
    directionalFrame({ ...BARN, ...change }, tape);
    return tape.cautions.join(" ");
  };
  expect(cautions({ kzt: 1.4, exposure: "C" })).toMatch(/topographic factor/);
  expect(cautions({ kzt: 1, exposure: "C" })).not.toMatch(/topographic factor/);
  expect(cautions({ kzt: 1.4 })).not.toMatch(/topographic factor/);
});
