import { describe, expect, test } from "vitest";
import { Tape } from "../../../src/core/kit/tape.ts";
import { checkBuilding } from "../../../src/core/wind/building.ts";
import { claddingCoefficients } from "../../../src/core/wind/cladding/cladding-coefficients.ts";
import { edgeWidth } from "../../../src/core/wind/edge.ts";
import { parallelRoofCp, windwardRoofCp } from "../../../src/core/wind/frame/frame-coefficients.ts";
import { directionalFrame } from "../../../src/core/wind/frame/frame-directional.ts";
import { type HillSite, speedUp, topographicFactor } from "../../../src/core/wind/topographic-factor.ts";

describe("hills", () => {
  const site: HillSite = {
    shape: "ridge",
    hillFt: 100,
    halfLengthFt: 400,
    distanceFt: 100,
    side: "upwind",
    heightFt: 30,
    exposure: "B",
    edition: "7-22",
  };

  // Fig. 26.8-1: K1 = 1.30, 0.75 and 0.95 H/Lh in Exposure B, 1.55, 0.95 and 1.15 in D (B and D from memory); gamma 3, 2.5, 4.
  test.each([
    ["ridge", 1.3, 1.55, 3],
    ["escarpment", 0.75, 0.95, 2.5],
    ["hill", 0.95, 1.15, 4],
  ] as const)("%s: all three multipliers stand in Kzt", (shape, inB, inD, gamma) => {
    for (const [exposure, slope] of [
      ["B", inB],
      ["D", inD],
    ] as const) {
      const k1 = slope * 0.25;
      const k2 = 1 - 100 / (1.5 * 400);
      const k3 = Math.exp((-gamma * 30) / 400);
      const got = topographicFactor({ ...site, shape, exposure });
      expect(got).toBeCloseTo((1 + k1 * k2 * k3) ** 2, 12);
    }
  });

  test("steeper than 1 in 2 takes 0.5 in K1 and twice the height as its length", () => {
    const steep = speedUp({ ...site, halfLengthFt: 100 });
    expect(steep.k1).toBeCloseTo(0.65, 12);
    expect(steep.k2).toBeCloseTo(1 - 100 / 300, 12);
    expect(steep.k3).toBeCloseTo(Math.exp(-90 / 200), 12);
  });

  test("too flat, too low, or the building in the lower half: 1", () => {
    expect(topographicFactor({ ...site, halfLengthFt: 501 })).toBe(1);
    expect(topographicFactor({ ...site, halfLengthFt: 500 })).toBeGreaterThan(1);
    expect(topographicFactor({ ...site, hillFt: 59.9, halfLengthFt: 200 })).toBe(1);
    expect(topographicFactor({ ...site, hillFt: 60, halfLengthFt: 200 })).toBeGreaterThan(1);
    expect(topographicFactor({ ...site, hillFt: 15, halfLengthFt: 60, distanceFt: 0, exposure: "D" })).toBeGreaterThan(
      1,
    );
    expect(topographicFactor({ ...site, hillFt: 14.9, halfLengthFt: 60, distanceFt: 0, exposure: "D" })).toBe(1);
    expect(topographicFactor({ ...site, distanceFt: 401 })).toBe(1);
    expect(topographicFactor({ ...site, distanceFt: 400 })).toBeGreaterThan(1);
    expect(topographicFactor({ ...site, distanceFt: 401, side: "downwind" })).toBeGreaterThan(1);
    expect(topographicFactor({ ...site, distanceFt: 401, shape: "escarpment" })).toBeGreaterThan(1);
  });
});

describe("monoslope roofs to 7-16 at the nodes of their curves and halfway in log area (from memory)", () => {
  const at = (slopeDeg: number, zone: string, areaFt2: number) =>
    claddingCoefficients({ surface: "monoslope", zone, areaFt2, slopeDeg, given: [], edition: "7-16" });
  test.each([
    [5, "1", 0.3, 0.2, -1.1, -1.1],
    [5, "2", 0.3, 0.2, -1.3, -1.2],
    [5, "2'", 0.3, 0.2, -1.6, -1.5],
    [5, "3", 0.3, 0.2, -1.8, -1.2],
    [5, "3'", 0.3, 0.2, -2.6, -1.6],
    [20, "1", 0.4, 0.3, -1.3, -1.1],
    [20, "2", 0.4, 0.3, -1.6, -1.2],
    [20, "3", 0.4, 0.3, -2.9, -2],
  ])("%d degrees, zone %s", (slopeDeg, zone, toward10, toward100, away10, away100) => {
    for (const [areaFt2, share] of [
      [1, 0],
      [10, 0],
      [Math.sqrt(1000), 0.5],
      [100, 1],
      [500, 1],
    ] as const) {
      const got = at(slopeDeg, zone, areaFt2);
      expect(got.toward).toBeCloseTo(toward10 + share * (toward100 - toward10), 9);
      expect(got.away).toBeCloseTo(away10 + share * (away100 - away10), 9);
    }
  });
});

test("roofs with the wind along the ridge: halfway between h/L of 0.5 and 1.0, and level beyond", () => {
  // Fig. 27.3-1: -0.9, -0.9, -0.5, -0.3 up to h/L 0.5; -1.3 to h/2 and -0.7 beyond from 1.0 on.
  const cp = (hOverL: number) => parallelRoofCp(hOverL).map((s) => s.cp);
  for (const low of [0.1, 0.5]) expect(cp(low)).toEqual([-0.9, -0.9, -0.5, -0.3]);
  for (const high of [1, 2]) expect(cp(high)).toEqual([-1.3, -0.7, -0.7, -0.7]);
  expect(cp(0.75)).toEqual([-1.1, -0.8, -0.6, -0.5].map((v) => expect.closeTo(v, 9)));
});

test("the windward wall is cut at the heights of Table 26.10-1, its last band at the eave", () => {
  const ends = (eaveFt: number) => {
    const rows = directionalFrame({
      qPsf: 25,
      kd: 0.85,
      kzt: 1,
      roofAreaFt2: undefined,
      widthFt: 100,
      lengthFt: 100,
      eaveFt,
      slopeDeg: 0,
      roof: "flat",
      enclosure: "enclosed",
      exposure: "B",
      level: "strength",
      edition: "7-22",
    });
    const wind = rows[0]?.wind;
    const bands = rows.filter((r) => r.wind === wind && r.surface === "windward wall");
    return bands.map((r) => Number(/to ([\d.]+) ft/.exec(r.part)?.[1]));
  };
  expect(ends(45)).toEqual([15, 20, 25, 30, 40, 45]);
  expect(ends(200)).toEqual([15, 20, 25, 30, 40, 50, 60, 70, 80, 90, 100, 120, 140, 160, 180, 200]);
});

test("windward roofs from 60 degrees: 0.01 theta, up to 0.8", () => {
  expect([60, 70, 80, 85].map((deg) => windwardRoofCp(deg, 0.5).pressure)).toEqual(
    [0.6, 0.7, 0.8, 0.8].map((v) => expect.closeTo(v, 12)),
  );
});

describe("limits of the plan", () => {
  test("a: 0.1 of the least width or 0.4 h, not below 0.04 of it or 3 ft; a caution only above 300 ft", () => {
    const at = (widthFt: number, heightFt: number) => {
      const tape = new Tape();
      return [edgeWidth(widthFt, 400, heightFt, "7-22", tape), tape.cautions.length];
    };
    expect(at(60, 20)).toEqual([6, 0]);
    expect(at(60, 10)).toEqual([4, 0]);
    expect(at(20, 20)).toEqual([3, 0]);
    expect(at(200, 10)).toEqual([8, 0]);
    expect(at(300, 60)).toEqual([24, 0]);
    expect(at(300.1, 60)[1]).toBe(1);
  });

  test("a roof of 60 degrees is worked, a steeper one refused", () => {
    const house = { widthFt: 30, lengthFt: 40, eaveFt: 10, roof: "gable" } as const;
    expect(() => checkBuilding({ ...house, slopeDeg: 60 })).not.toThrow();
    expect(() => checkBuilding({ ...house, slopeDeg: 60.1 })).toThrow(/60 degrees/);
  });
});
