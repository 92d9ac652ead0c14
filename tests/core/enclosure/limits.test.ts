import { describe, expect, test } from "vitest";
import { vaporPressurePa } from "../../../src/core/enclosure/air/humid-air.ts";
import { SATURATION_FORMULAS, saturationPressurePa } from "../../../src/core/enclosure/air/saturation.ts";
import { pointOf } from "../../../src/core/enclosure/climate/nearest.ts";
import { airLayerRM2KW } from "../../../src/core/enclosure/layers/air-layer.ts";
import { givenFilm } from "../../../src/core/enclosure/layers/films.ts";
import { FIXING_W_MK, type Fixing, fixingsU } from "../../../src/core/enclosure/layers/fixings.ts";
import { rLimits, uFactor } from "../../../src/core/enclosure/layers/u-factor.ts";
import { woodConductivityWmK } from "../../../src/core/enclosure/layers/wood.ts";
import { airLeakageCfm } from "../../../src/core/enclosure/loss/air-leakage.ts";
import { ach50Of } from "../../../src/core/enclosure/loss/air-tightness.ts";
import { groundLoss } from "../../../src/core/enclosure/loss/ground.ts";
import { airDensityRatio } from "../../../src/core/enclosure/loss/heat-loss.ts";
import { thermalBridges } from "../../../src/core/enclosure/loss/thermal-bridges.ts";
import { retarderClass } from "../../../src/core/enclosure/moisture/retarder.ts";
import { Tape } from "../../../src/core/kit/tape.ts";
import { assemble, layerOf, ofR } from "./from-text.ts";

const wall = assemble(ofR([4, 2]), "wall", "winter");
const board = assemble([{ row: 1, material: "mineral wool board", thicknessIn: 4 }], "wall", "winter");
const SCREW: Fixing = {
  row: 1,
  name: "screw",
  conductivityWmK: 50,
  diameterIn: 0.25,
  perFt2: 1,
  layerRow: 1,
  depthIn: undefined,
};
const screw = (change: Partial<Fixing>) => fixingsU(board, [{ ...SCREW, ...change }], 20);
const house = (cfm: number) =>
  ach50Of({ kind: "flow", cfm, pa: 50 }, { volumeFt3: 60, areaFt2: undefined, exponent: 0.65 });
const line = (psi: number) =>
  thermalBridges([{ row: 1, name: "a", line: { psi, lengthFt: 1, source: "x" }, points: undefined }]);
const dots = (chi: number) => thermalBridges([{ row: 1, name: "a", line: undefined, points: { chi, count: 1 } }]);
const slab = (perimeterFt: number) =>
  groundLoss({ kind: "slab", perimeterFt, areaFt2: undefined, insulation: "none" }, 1, 0);
const rLayer = (r: number) =>
  layerOf({ row: 1, material: "x", thicknessIn: undefined, resistance: r === 0 ? "none" : String(r) });
const thick = (thicknessIn: number) => layerOf({ row: 1, material: "x", thicknessIn, resistance: "1" });
const paths = (a: number, b: number) => [
  { name: "a", share: 0.5, rIp: [a, 10] },
  { name: "b", share: 0.5, rIp: [10, b] },
];

/** Both ends of what a method holds for: at the ends it answers, a little past them it refuses. */
const LIMITS: readonly (readonly [string, (value: number) => unknown, number, number, number])[] = [
  ["permeance, perm", (v) => retarderClass(v), 0, 1e6, 1e-3],
  ["specific gravity", (v) => woodConductivityWmK(v, 12), 0.3, 0.8, 1e-3],
  ["moisture, %", (v) => woodConductivityWmK(0.5, v), 0, 25, 1e-3],
  ["film, h ft2 F/Btu", (v) => givenFilm("inside", v), 0, 5, 1e-3],
  ["fixing's diameter, in", (v) => screw({ diameterIn: v }), 0.01, 2, 1e-4],
  ["fixing's conductivity, W/(m K)", (v) => screw({ conductivityWmK: v }), 0.01, 500, 1e-4],
  ["air layer, m", (v) => airLayerRM2KW(v, "up", [0.9, 0.9]), 0.001, 0.3, 1e-6],
  ["emittance of the first face", (v) => airLayerRM2KW(0.02, "up", [v, 0.9]), 0.01, 1, 1e-4],
  ["emittance of the second face", (v) => airLayerRM2KW(0.02, "up", [0.9, v]), 0.01, 1, 1e-4],
  ["thickness of a layer, in", thick, 0, 120, 1e-3],
  ["R of a layer", rLayer, 0, 200, 1e-3],
  ["air changes an hour at 50 Pa", house, 0, 50, 1e-3],
  ["flow exponent", (v) => airLeakageCfm(3, 1000, 50, v), 0.5, 1, 1e-4],
  ["pressure, Pa", (v) => airLeakageCfm(3, 1000, v, 0.65), 0.1, 100, 1e-4],
  ["psi, Btu/(h ft F)", line, -1, 2, 1e-4],
  ["chi, Btu/(h F)", dots, 0, 2, 1e-4],
  ["elevation, ft", (v) => airDensityRatio(v), -1000, 15_000, 1],
  ["perimeter, ft", slab, 0, 100_000, 1],
  ["latitude", (v) => pointOf(v, -100), -90, 90, 1e-3],
  ["longitude", (v) => pointOf(-60, v), -180, 180, 1e-3],
  ...SATURATION_FORMULAS.map((formula) => {
    const [low, high] = formula === "ASHRAE" ? [-100, 200] : [-60, 100];
    return [`temperature, C, ${formula}`, (v: number) => saturationPressurePa(v, formula), low, high, 1e-3] as const;
  }),
];

describe("limits", () => {
  test.each(LIMITS)("%s", (_name, of, low, high, past) => {
    for (const value of [low, high]) expect(() => of(value), String(value)).not.toThrow();
    for (const value of [low - past, high + past]) expect(() => of(value), String(value)).toThrow();
  });

  test("a relative humidity lies above 0 and up to 1", () => {
    expect(vaporPressurePa(20, 1, "ASHRAE")).toBe(saturationPressurePa(20, "ASHRAE"));
    for (const share of [0, -0.1, 1.001, 1.5, Number.NaN])
      expect(() => vaporPressurePa(20, share, "ASHRAE")).toThrow(/relative humidity lies above 0/);
  });

  test("the combined method holds up to a ratio of 1.5 of its limits", () => {
    const ratioOf = (r: number) => {
      const l = rLimits(paths(r, r));
      return l.upper / l.lower;
    };
    const combined = (r: number) => uFactor(paths(r, r), "combined", () => 0);
    // Two parts with R and 10 crosswise: the upper limit is 10 + R, the lower 40 R/(10 + R): 1.5 at R 2.679.
    expect(ratioOf(2.6795)).toBeCloseTo(1.5, 3);
    expect(combined(2.69)).toBeGreaterThan(0);
    expect(() => combined(2.67)).toThrow(/holds up to a ratio of 1.5/);
    expect(uFactor(paths(2, 2), "parallel", () => 0)).toBeCloseTo(1 / 12, 12);
    expect(uFactor(paths(2, 2), "isothermal", () => 0)).toBeCloseTo(12 / 80, 12);
  });
});

describe("a fixing", () => {
  test("crosses a layer that is there and has a thickness", () => {
    expect(() => screw({ layerRow: 2 })).toThrow(/no counted layer has that row/);
    expect(() => fixingsU(wall, [SCREW], 20)).toThrow(/that layer has no thickness/);
  });

  test("of a thin layer counts, says that the formula has no example, and that a small share may be left out", () => {
    const thin = assemble([{ row: 1, material: "mineral wool board", thicknessIn: 0.5 }], "none", "none");
    const rIp = (0.0127 / 0.036) * 5.678263;
    const added = (perFt2: number) => {
      const tape = new Tape();
      const u = fixingsU(thin, [{ ...SCREW, perFt2 }], rIp, tape);
      expect(tape.steps.map((s) => s.value)).toEqual([u]);
      return { u, cautioned: tape.cautions.length, assumed: tape.assumptions.length };
    };
    // 0.8 x 50 x pi/4 (6.35 mm)^2 x 10.76391 / 0.0127 = 1.07367 W/(m2 K) for one each ft2, R1 the whole R.
    expect(added(1)).toEqual({ u: expect.closeTo(1.07367 / 5.678263, 4), cautioned: 1, assumed: 1 });
    // 3 % of 1/R is 0.0150: 0.0793 of them each ft2.
    expect([added(0.0792).assumed, added(0.0795).assumed]).toEqual([2, 1]);
    const none = new Tape();
    expect(fixingsU(thin, [], rIp, none)).toBe(0);
    expect([none.cautions, none.assumptions]).toEqual([[], []]);
  });

  test("conducts as its metal does", () => {
    // ISO 10456:2007 Table 3 and common practice, from memory.
    expect(FIXING_W_MK).toEqual({
      steel: 50,
      stainless: 17,
      aluminum: 160,
      fiberglass: 0.3,
      plastic: 0.25,
      wood: 0.15,
    });
  });

  test("is longer than nothing and no longer than the layer is thick", () => {
    for (const depthIn of [0, -1, 4.01]) expect(() => screw({ depthIn })).toThrow(/in deep in a layer of 4 in/);
    expect(screw({ depthIn: 4 })).toBeCloseTo(screw({}), 12);
  });

  test("under 1 W/(m K) needs no correction", () => {
    expect(screw({ conductivityWmK: 0.99 })).toBe(0);
    expect(screw({ conductivityWmK: 1 })).toBeCloseTo(screw({}) / 50, 12);
  });

  test("half as deep: half the length, half the alpha, half the R1", () => {
    expect(screw({ depthIn: 2 })).toBeCloseTo(screw({}) / 4, 12);
    expect(screw({ diameterIn: 0.5 })).toBeCloseTo(4 * screw({}), 12);
  });
});
