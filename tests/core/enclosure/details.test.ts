import { describe, expect, test } from "vitest";
import {
  dewPointF,
  relativeHumidityPct,
  vaporPressureInHg,
  vaporPressurePa,
} from "../../../src/core/enclosure/air/humid-air.ts";
import {
  dewPointFromPressureC,
  SATURATION_FORMULAS,
  saturationPressurePa,
} from "../../../src/core/enclosure/air/saturation.ts";
import { R_IP_IN_RSI } from "../../../src/core/enclosure/air/si.ts";
import { designClimate, rowsClimate } from "../../../src/core/enclosure/climate/climate.ts";
import { zoneColumn } from "../../../src/core/enclosure/climate/zone.ts";
import { givenFilm, isoFilm, moldFilm, outdoorFilm, stillAirFilm } from "../../../src/core/enclosure/layers/films.ts";
import { framedWall } from "../../../src/core/enclosure/layers/framed.ts";
import { sdAtM, varies } from "../../../src/core/enclosure/layers/layer-vapor.ts";
import { materialFacts } from "../../../src/core/enclosure/layers/material-list.ts";
import { rSchedule, stackR } from "../../../src/core/enclosure/layers/r-value.ts";
import {
  type HeatPath,
  rLimits,
  U_METHODS,
  type UMethod,
  uFactor,
} from "../../../src/core/enclosure/layers/u-factor.ts";
import { airAgainstCode, naturalCfm } from "../../../src/core/enclosure/loss/air-leakage.ts";
import { ach50Of } from "../../../src/core/enclosure/loss/air-tightness.ts";
import { codeKeeps, codeParts, codeValue } from "../../../src/core/enclosure/loss/energy-code.ts";
import { type Ground, groundLoss } from "../../../src/core/enclosure/loss/ground.ts";
import { airDensityRatio, lossPerDegree } from "../../../src/core/enclosure/loss/heat-loss.ts";
import { massWall } from "../../../src/core/enclosure/loss/mass-wall.ts";
import { uaAgainstCode } from "../../../src/core/enclosure/loss/ua-code.ts";
import type { CodeEdition, CodeKind } from "../../../src/core/enclosure/tables/energy-code.ts";
import { HEAT_FLOWS } from "../../../src/core/enclosure/tables/films.ts";
import { specificHeat } from "../../../src/core/enclosure/tables/heat-capacity.ts";
import { Tape } from "../../../src/core/kit/tape.ts";
import { readZone } from "../../../src/functions/basis/glossary/zone.ts";
import { readLayer } from "../../../src/functions/enclosure/read/layer.ts";
import { findMaterial } from "../../../src/functions/enclosure/read/material.ts";
import { cautions, working } from "./called.ts";
import { assemble, insideFilm, type LayerRow, layerOf, ofR, outsideFilm, permOf } from "./from-text.ts";

/** 1 Btu is 1055.05585262 J, 1 ft 0.3048 m, 1 F 5/9 K: 1 h ft2 F/Btu is 0.1761101837 m2 K/W (NIST SP 811). */
const RSI_IN_R_IP = 0.1761101837;

describe("films", () => {
  test("of ISO in the units of the trade", () => {
    expect(1 / R_IP_IN_RSI).toBeCloseTo(RSI_IN_R_IP, 9);
    const rsi = (flow: (typeof HEAT_FLOWS)[number]) => isoFilm(flow).rIp * RSI_IN_R_IP;
    expect(HEAT_FLOWS.map(rsi)).toEqual([0.13, 0.1, 0.17, 0.1, 0.17].map((r) => expect.closeTo(r, 8)));
    expect(isoFilm("down").stillAirRIp * RSI_IN_R_IP).toBeCloseTo(0.17, 8);
    expect(moldFilm().rIp * RSI_IN_R_IP).toBeCloseTo(0.25, 8);
    expect(moldFilm().stillAirRIp * RSI_IN_R_IP).toBeCloseTo(0.13, 8);
  });

  test("given by hand are those of a wall, or of the film at the other side", () => {
    expect(givenFilm("inside", 1)).toMatchObject({ rIp: 1, flow: "horizontal", stillAirRIp: 0.68 });
    // Table 10 and ISO 6946 Table 7 as printed: 0.61 and 0.62 up, 0.92 down; 0.10, 0.13, 0.17 m2 K/W are 0.57, 0.74 and 0.97.
    for (const [r, flow] of [
      ...([
        [0.61, "up"],
        [0.62, "45 up"],
        [0.68, "horizontal"],
        [0.76, "45 down"],
        [0.92, "down"],
      ] as const),
      ...([
        [0.568, "up"],
        [0.738, "horizontal"],
        [0.965, "down"],
      ] as const),
    ]) {
      expect(givenFilm("inside", r)).toMatchObject({
        rIp: r,
        flow,
        stillAirRIp: r,
        says: `as given: still air, heat flow ${flow}`,
      });
    }
    for (const r of [0, 0.55, 0.6, 0.64, 0.7]) {
      expect(givenFilm("inside", r)).toMatchObject({ flow: "horizontal", stillAirRIp: 0.68, says: "as given" });
    }
    expect(givenFilm("outside", 0.61, stillAirFilm("down", 0.9))).toMatchObject({
      rIp: 0.61,
      flow: "down",
      stillAirRIp: 0.92,
      says: "as given",
    });
    expect(givenFilm("outside", 1, stillAirFilm("down", 0.9))).toMatchObject({ flow: "down", stillAirRIp: 0.92 });
  });

  test("outdoors go by wind, and behind a cavity by the still air of the same direction", () => {
    const floor = stillAirFilm("down", 0.05);
    expect([floor.rIp, floor.stillAirRIp]).toEqual([4.55, 0.92]);
    expect(outdoorFilm("winter", floor)).toMatchObject({ rIp: 0.17, flow: "down", stillAirRIp: 0.92 });
    expect(outdoorFilm("summer", floor).rIp).toBe(0.25);
    expect(outdoorFilm("still air", floor).rIp).toBe(0.92);
    expect(outdoorFilm("iso", floor).rIp * RSI_IN_R_IP).toBeCloseTo(0.04, 8);
  });
});

describe("layers", () => {
  test("an air space has the R of the standard's formula, in the units of the trade", () => {
    // 25 mm, heat sideways: h_a 1.25, E 1/(2/0.9 - 1) = 0.81818, h_r0 5.1; heat up 1.95; shining face E 1/(1/0.9 + 20 - 1) = 0.049724.
    const rsi = (material: string, film: string, mm: number) =>
      (assemble([{ row: 1, material, thicknessIn: mm / 25.4 }], film, "none").layers[0]?.rIp ?? 0) * RSI_IN_R_IP;
    expect(rsi("air space", "wall", 25)).toBeCloseTo(1 / (1.25 + 0.8181818 * 5.1), 6);
    expect(rsi("air space", "roof", 25)).toBeCloseTo(1 / (1.95 + 0.8181818 * 5.1), 6);
    expect(rsi("reflective air space", "wall", 25)).toBeCloseTo(1 / (1.25 + 0.0497238 * 5.1), 6);
    // Thin, it conducts: 0.025 / 0.005; thick, heat downward: 0.12 x 0.1^-0.44 = 0.33051.
    expect(rsi("air space", "wall", 5)).toBeCloseTo(1 / (5 + 0.8181818 * 5.1), 6);
    expect(rsi("air space", "floor", 100)).toBeCloseTo(1 / (0.330507 + 0.8181818 * 5.1), 6);
  });

  test("the caution of a built-in figure is said, and only of one that has it", () => {
    expect(cautions("R_LAYER", "panel", 1.5)).toMatch(/good to about 20 %/);
    const tape = new Tape();
    layerOf({ row: 1, material: "drywall", thicknessIn: 0.5 }, tape);
    expect(tape.cautions).toEqual([]);
    expect(cautions("R_LAYER", "panel", 1.5, 2)).not.toMatch(/good to about 20 %/);
  });

  test("a built-in material with an own vapor figure and no thickness is a sheet, without one it lacks its thickness", () => {
    const sheet = layerOf({ row: 1, material: "plywood", thicknessIn: undefined, vapor: "1 perm" });
    expect([sheet.rIp, sheet.thicknessIn]).toEqual([0, 0]);
    expect(layerOf({ row: 1, material: "osb", thicknessIn: 0.5, vapor: "1 perm" }).rIp).toBeCloseTo(0.6814, 3);
    for (const thicknessIn of [undefined, 0])
      expect(() => layerOf({ row: 1, material: "plywood", thicknessIn })).toThrow(/has no thickness/);
    expect(layerOf({ row: 1, material: "shingles", thicknessIn: undefined, vapor: "1 perm" }).rIp).toBeCloseTo(
      0.4429,
      3,
    );
  });

  test("the caution of a built-in vapor figure goes with that figure only", () => {
    const caution = (vapor?: string) => layerOf({ row: 1, material: "osb", thicknessIn: 0.5, vapor }).vaporCaution;
    expect(caution()).toMatch(/one sample/);
    expect(caution("1 perm")).toBeUndefined();
    const said = (material: string) => {
      const tape = new Tape();
      permOf({ row: 1, material, thicknessIn: 0.5 }, 0.25, tape);
      return tape.cautions;
    };
    expect([said("drywall"), said("osb")]).toEqual([[], [expect.stringMatching(/one sample/)]]);
  });

  test("an own dry and wet cup hold at 25 and 75 %, and their mean by logarithm halfway", () => {
    const layer = layerOf({
      row: 1,
      material: "x",
      thicknessIn: undefined,
      resistance: "1",
      vapor: "sd 8 m",
      vaporWet: "sd 2 m",
    });
    expect([0, 0.25, 0.5, 0.75, 1].map((rh) => sdAtM(layer.sd ?? [], rh))).toEqual(
      [8, 8, 4, 2, 2].map((sd) => expect.closeTo(sd, 12)),
    );
  });

  test("an own R is held against the built-in one from twice and from half of it on, and against no R never", () => {
    // 1 in of XPS has 0.0254 / 0.029 x 5.678 = 4.973.
    const asked = (r: number) => /by its own figure/.test(cautions("R_LAYER", "xps", 1, r));
    expect([2.48, 2.49, 9.94, 9.95].map(asked)).toEqual([true, false, false, true]);
    const bare = new Tape();
    expect(layerOf({ row: 1, material: "plywood", thicknessIn: 0, resistance: "5" }, bare).rIp).toBe(5);
    expect(bare.cautions).toEqual([]);
    expect(cautions("R_LAYER", "wrb", 0.02, 0.5)).not.toMatch(/by its own figure/);
    expect(cautions("R_LAYER", "wrb", 0.02, 1)).not.toMatch(/by its own figure/);
  });

  test("openings to 500 mm2/m change nothing, to 1500 they weigh, from 1500 on the outside drops out", () => {
    const at = (mm2: number) =>
      assemble(
        [...ofR([10]), { row: 2, material: "air space", thicknessIn: 1, role: `ventilated cavity ${mm2} mm2/m` }],
        "wall",
        "winter",
      );
    expect([at(500).ventilated, at(500).dropped]).toEqual([undefined, []]);
    expect(at(510).ventilated?.share).toBeCloseTo(0.01, 12);
    expect(at(1499).ventilated?.share).toBeCloseTo(0.999, 12);
    expect(at(1500)).toMatchObject({ ventilated: undefined, outside: { rIp: 0.68 } });
    expect(at(1500).dropped).toHaveLength(1);
  });

  test("MATERIALS gives R an inch, perm-inch and density where a material has them, and says what goes by no thickness", () => {
    const facts = (name: string) => {
      const m = findMaterial(name);
      if (m === undefined) throw new Error(name);
      return materialFacts(m);
    };
    // k 0.16 W/(m K) / 0.1442279; mu 6: 2e-10 / (6 x 0.0254) / 5.7213e-11 perm; 640 / 16.01846 pcf.
    expect(facts("gypsum board")).toMatchObject({
      kBtuIn: expect.closeTo(1.10936, 4),
      rPerIn: expect.closeTo(0.90142, 4),
      permIn: expect.closeTo(22.938, 2),
      mu: expect.closeTo(6, 9),
      densityPcf: expect.closeTo(39.954, 2),
      thickness: "by thickness",
    });
    expect(facts("glulam").source).not.toMatch(/undefined/);
    expect(facts("gypsum board").source).toMatch(/^heat: .*; vapor: [^.]*$/);
    expect(facts("polyiso").source).toMatch(/^heat: .*; vapor: .*\. Polyiso: aged.*\. Polyiso: without facers/);
    expect(facts("carpet")).toMatchObject({
      mu: undefined,
      permIn: undefined,
      densityPcf: undefined,
      kBtuIn: undefined,
    });
    expect(facts("carpet").thickness).toBe("R 2.38 whatever the thickness");
    expect(facts("air space").thickness).toMatch(
      /^by thickness and direction of heat; .* perm whatever the thickness$/,
    );
    expect(facts("kraft facing").thickness).toBe("sheet, no R; 0.297 perm whatever the thickness");
    expect(facts("foil-faced polyiso").thickness).toBe("0.0507 perm whatever the thickness");
    expect(facts("CLT").kBtuIn).toBeCloseTo((0.42 * (0.1941 + 0.004064 * 12) + 0.01864) / 0.1442279, 5);
  });

  test("an air space beyond its table with an own R is asked nothing", () => {
    expect(cautions("R_STACK", [["air space", 20, 1]])).not.toMatch(/by its own figure/);
  });

  test("one figure does not vary with humidity, two do", () => {
    expect([
      varies([[0.5, 1]]),
      varies(layerOf({ row: 1, material: "kraft facing", thicknessIn: undefined }).sd ?? []),
    ]).toEqual([false, true]);
  });

  test("a stack without any R is refused", () => {
    const sheet = assemble([{ row: 1, material: "wrb", thicknessIn: undefined }], "none", "none");
    expect(() => stackR(sheet)).toThrow(/total R is 0/);
  });

  test("a slightly ventilated cavity is weighed, and stands in a row of the schedule", () => {
    const rows = [
      { row: 1, material: "x", thicknessIn: undefined, resistance: "10" },
      { row: 2, material: "cavity", thicknessIn: undefined, resistance: "1", role: "ventilated cavity 750 mm2/m" },
      { row: 3, material: "y", thicknessIn: undefined, resistance: "2" },
    ];
    const stack = assemble(rows, "wall", "winter");
    // Still 0.68 + 13 + 0.17; open 0.68 + 10 + 0.68; a quarter of the way from 500 to 1500.
    const weighed = 0.75 * 13.85 + 0.25 * 11.36;
    const tape = new Tape();
    expect(stackR(stack, tape)).toBeCloseTo(weighed, 12);
    expect(tape.steps.find((s) => s.symbol === "w")?.value).toBeCloseTo(0.25, 12);
    const last = rSchedule(stack).at(-1);
    expect(last?.name).toBe("slightly ventilated cavity");
    expect([last?.rIp, last?.totalIp]).toEqual([expect.closeTo(weighed - 13.85, 12), expect.closeTo(weighed, 12)]);
  });
});

describe("framed walls", () => {
  const film = insideFilm("wall");
  const rows = (...rs: readonly number[]) => ofR(rs).map((row) => readLayer(row));

  test("write the framing's R only where it differs from the layer beside it", () => {
    const tape = new Tape();
    const { paths } = framedWall(rows(1, 13, 2), rows(1, 4, 2), 0.25, film, outsideFilm("winter", film), tape);
    expect(tape.steps.filter((s) => s.symbol.endsWith("framing")).map((s) => [s.symbol, s.value])).toEqual([
      ["R_2 framing", 4],
    ]);
    expect(paths.map((p) => [p.name, p.share, p.rIp])).toEqual([
      ["clear", 0.75, [0.68, 1, 13, 2, 0.17]],
      ["framing", 0.25, [0.68, 1, 4, 2, 0.17]],
    ]);
  });

  test("metal across insulation is refused, a metal sheet through both parts is none of that", () => {
    const wall = (between: string) =>
      [
        { row: 1, material: between, thicknessIn: 3.5 },
        { row: 2, material: "steel sheet", thicknessIn: 0.05 },
      ].map((row) => readLayer(row));
    const framed = (between: string) =>
      framedWall(wall("fiberglass batt"), wall(between), 0.2, film, outsideFilm("winter", film));
    expect(() => framed("steel sheet")).toThrow(/framing in row 1 conducts 45.28 W/);
    // Brick conducts 0.895 W/(m K), concrete 1.95: the border is 1.
    expect(() => framed("concrete")).toThrow(/conducts 1.95 W/);
    expect(framed("brick").paths).toHaveLength(2);
    expect(framed("spf").paths).toHaveLength(2);
  });

  test("framing rows and share come together, row beside row or one for the only layer of its thickness", () => {
    const film2 = outsideFilm("winter", film);
    const layer = (row: number, material: string, thicknessIn: number) => readLayer({ row, material, thicknessIn });
    const wall = [layer(1, "drywall", 0.5), layer(2, "fiberglass batt", 5.5), layer(3, "osb", 0.5)];
    const stud = layer(1, "spf", 5.5);
    expect(() => framedWall(wall, [stud], 0, film, film2)).toThrow(/Framing share is missing/);
    const tape = new Tape();
    expect(framedWall(wall, [], 0.1, film, film2, tape).paths).toHaveLength(1);
    expect(tape.cautions).toContainEqual(expect.stringContaining("share of 10 % is not used"));
    expect(framedWall(wall, [], 0, film, film2).paths).toEqual([
      { name: "all", share: 1, rIp: [0.68, expect.anything(), expect.anything(), expect.anything(), 0.17] },
    ]);
    const one = framedWall(wall, [stud], 0.2, film, film2).paths;
    expect(one).toEqual(framedWall(wall, ["same", stud, "same"], 0.2, film, film2).paths);
    expect(one[1]?.rIp[2]).toBeCloseTo((5.5 * 0.0254 * 5.678263) / 0.13, 5);
    expect(one[1]?.rIp[1]).toBe(one[0]?.rIp[1]);
    expect(() => framedWall(wall, [layer(1, "spf", 3.5)], 0.2, film, film2)).toThrow(/3.5 in fits 0 layers/);
    expect(() => framedWall(wall, [layer(1, "spf", 0.5)], 0.2, film, film2)).toThrow(/0.5 in fits 2 layers/);
    expect(() => framedWall(wall, ["same"], 0.2, film, film2)).toThrow(/fits 0 layers/);
    expect(() => framedWall(wall, [stud, stud], 0.2, film, film2)).toThrow(/has 2 rows and the layers have 3/);
  });

  test("framing beside a ventilated cavity is ventilated too, unless it says what it does", () => {
    const rows = [
      { row: 1, material: "panel", thicknessIn: 1.5 },
      { row: 2, material: "air space", thicknessIn: 0.75, role: "ventilated cavity" },
      { row: 3, material: "cedar siding", thicknessIn: 0.75 },
    ].map((row) => readLayer(row));
    const strip = readLayer({ row: 2, material: "furring strip", thicknessIn: 0.75 });
    const both = framedWall(rows, ["same", strip, "same"], 0.1, film, outsideFilm("winter", film)).paths;
    expect(both.map((p) => p.rIp.length)).toEqual([3, 3]);
    const barrier = readLayer({ row: 2, material: "furring strip", thicknessIn: 0.75, role: "air barrier" });
    const closed = framedWall(rows, ["same", barrier, "same"], 0.1, film, outsideFilm("winter", film)).paths;
    expect(closed.map((p) => p.rIp.length)).toEqual([3, 5]);
  });

  test("U is 1 over R and what fixings add, and both limits are written where there are two parts", () => {
    const two = [
      { name: "clear", share: 0.75, rIp: [1, 13] },
      { name: "framing", share: 0.25, rIp: [1, 4] },
    ];
    const upper = 1 / (0.75 / 14 + 0.25 / 5);
    const lower = 1 + 1 / (0.75 / 13 + 0.25 / 4);
    const steps = (method: UMethod, paths: readonly HeatPath[]) => {
      const tape = new Tape();
      const u = uFactor(paths, method, () => 0.01, tape);
      return { u, symbols: tape.steps.map((s) => s.symbol), values: tape.steps.map((s) => s.value) };
    };
    expect(steps("parallel", two)).toMatchObject({
      u: expect.closeTo(1 / upper + 0.01, 12),
      symbols: ["R clear", "R framing", "R_upper", "U"],
      values: [14, 5, expect.closeTo(upper, 12), expect.closeTo(1 / upper + 0.01, 12)],
    });
    expect(steps("isothermal", two)).toMatchObject({
      u: expect.closeTo(1 / lower + 0.01, 12),
      symbols: ["R clear", "R framing", "R_lower", "U"],
    });
    const mean = (upper + lower) / 2;
    expect(steps("combined", two)).toMatchObject({
      u: expect.closeTo(1 / mean + 0.01, 12),
      symbols: ["R clear", "R framing", "R_upper", "R_lower", "R_T", "e", "U"],
    });
    expect(steps("combined", two).values.at(-2)).toBeCloseTo((upper - lower) / (2 * mean), 12);
    expect(steps("combined", [{ name: "all", share: 1, rIp: [1, 13] }]).symbols).toEqual(["R all", "U"]);
    const one = [{ name: "all", share: 1, rIp: [1, 13] }];
    for (const method of U_METHODS) expect(uFactor(one, method, () => 0)).toBeCloseTo(1 / 14, 12);
    expect(rLimits(two).error).toBeCloseTo((upper - lower) / (upper + lower), 12);
  });

  test("shares make one whole, each above 0, and the parts have as many layers", () => {
    const part = (share: number, ...rIp: number[]) => ({ name: "x", share, rIp });
    expect(() => rLimits([part(0.5, 1), part(0.6, 1)])).toThrow(/add up to 1.1/);
    expect(() => rLimits([part(0.5, 1), part(0.4, 1)])).toThrow(/add up to 0.9/);
    expect(() => rLimits([part(1, 1), part(0, 1)])).toThrow(/each above 0/);
    expect(() => rLimits([part(0.5, 1), part(0.5, 1, 2)])).toThrow(/unlike numbers of layers/);
    expect(() => rLimits([part(0.5, 0), part(0.5, 1)])).toThrow(/unlike numbers of layers/);
    // Layers 2 beside 4 half and half are 1/(1/4 + 1/8); the same 1 on both parts stays 1.
    expect(rLimits([part(0.5, 1, 2), part(0.5, 1, 4)])).toMatchObject({
      lower: expect.closeTo(1 + 8 / 3, 12),
      upper: expect.closeTo(1 / (0.5 / 3 + 0.5 / 5), 12),
    });
  });
});

describe("climate", () => {
  const row = { name: "x", tempC: 10, rhShare: 0.5 };

  test("months have their days, a design condition thirty", () => {
    const days = rowsClimate(Array(12).fill(row)).months.map((m) => m.seconds / 86_400);
    expect(days).toEqual([31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]);
    expect(designClimate(row).months.map((m) => [m.name, m.seconds, m.tempC])).toEqual([["x", 2_592_000, 10]]);
  });

  test("only zone 4 without a letter is asked about the sea", () => {
    const assumed = (zone: string) => {
      const tape = new Tape();
      return [zoneColumn(readZone(zone), tape), tape.assumptions.length];
    };
    expect(["4", "4A", "4C", "5", "7", "3C"].map(assumed)).toEqual([
      ["4", 1],
      ["4", 0],
      ["4C", 0],
      ["5", 0],
      ["7", 0],
      ["3", 0],
    ]);
  });
});

describe("dew points", () => {
  test("below freezing the answer says what it is over, above it nothing", () => {
    const said = (dewC: number, formula: "ASHRAE" | "water") => {
      const tape = new Tape();
      const f = dewPointF(20, saturationPressurePa(dewC, formula) / saturationPressurePa(20, formula), formula, tape);
      expect(f).toBeCloseTo(dewC * 1.8 + 32, 5);
      return tape.assumptions.join();
    };
    expect(said(-0.5, "ASHRAE")).toMatch(/frost point, over ice/);
    expect(said(-0.5, "water")).toMatch(/over liquid water/);
    expect([said(0.5, "ASHRAE"), said(0.5, "water"), said(9, "ASHRAE")]).toEqual(["", "", ""]);
  });

  test("at the triple point the curve over ice leads back to it", () => {
    expect(dewPointFromPressureC(saturationPressurePa(0.01, "ASHRAE"), "ASHRAE")).toBeCloseTo(0.01, 10);
  });

  test("the curve rises as over ice below the triple point, as over water above it", () => {
    // Clausius and Clapeyron: L p / (461.5 T^2), L 2.834e6 J/kg from ice and 2.501e6 from water: 50.3 and 44.4 Pa/K.
    const rise = (from: number, to: number) =>
      (saturationPressurePa(to, "ASHRAE") - saturationPressurePa(from, "ASHRAE")) / (to - from);
    expect(Math.abs(rise(0.0091, 0.0099) - 50.3)).toBeLessThan(0.5);
    expect(Math.abs(rise(0.0101, 0.0109) - 44.4)).toBeLessThan(0.5);
  });

  test("outside the curve there is none", () => {
    for (const formula of SATURATION_FORMULAS) {
      for (const pa of [0, 1e-9, 1e8, Number.NaN]) {
        expect(() => dewPointFromPressureC(pa, formula)).toThrow(/dew points are computed from/);
      }
    }
  });

  test("humidity from a dew point, up to the air's own temperature", () => {
    expect(relativeHumidityPct(20, 20, "ASHRAE")).toBe(100);
    expect(relativeHumidityPct(20, 9.27, "ASHRAE")).toBeCloseTo(50, 1);
    expect(() => relativeHumidityPct(20, 20.01, "ASHRAE")).toThrow(/above the air temperature/);
    expect(vaporPressureInHg(20, 0.5, "ASHRAE") * 3386.389).toBeCloseTo(vaporPressurePa(20, 0.5, "ASHRAE"), 9);
  });
});

describe("the energy code", () => {
  test("a kind of table lists its own parts", () => {
    expect(codeParts("ACH50")).toEqual(["air leakage"]);
    expect(codeParts("R")).not.toContain("window");
    expect(codeParts("U")).toEqual(expect.arrayContaining(["window", "SHGC", "slab edge"]));
  });

  test("cells have the unit of their part", () => {
    const unit = (part: string, zone: string, edition: CodeEdition, kind: CodeKind = "U") => {
      const tape = new Tape();
      codeValue(kind, readZone(zone), part, edition, tape);
      return tape.steps.at(-1)?.unit;
    };
    expect(unit("wood wall", "5A", "2018")).toBe("Btu/(h ft2 F)");
    expect(unit("SHGC", "4A", "2018")).toBe("");
    expect(unit("slab edge", "4C", "Washington 2021")).toBe("Btu/(h ft F)");
    expect(unit("ceiling", "5A", "2018", "R")).toBe("h ft2 F/Btu");
    expect(unit("air leakage", "5A", "2018", "ACH50")).toBe("1/h");
  });

  test("a part that an edition does not keep names the editions that do", () => {
    expect(() => codeValue("R", readZone("5A"), "heated slab", "2018")).toThrow(
      /Use one of these editions: New York 2025\.$/,
    );
    expect(() => codeValue("R", readZone("5A"), "ceiling", "Washington 2021")).toThrow(
      /no R table of that edition is kept\. Use one of these editions: 2012, 2015, 2018, 2021, New York 2025, Idaho 2018\.$/,
    );
    expect(codeKeeps("U", "SHGC", "2018")).toBe(true);
    expect([codeKeeps("U", "SHGC", "Washington 2021"), codeKeeps("R", "SHGC", "2018")]).toEqual([false, false]);
  });

  test("the trade-off says by how much: a wall of 0.05 and of 0.07 where the code has 0.060", () => {
    const total = (...us: number[]) =>
      uaAgainstCode(
        us.map((u) => ({ name: "w", areaFt2: 1000, u, codePart: "wood wall", shgc: undefined })),
        readZone("5A"),
        "2018",
      ).at(-1);
    expect(total(0.05)?.verdict).toBe("met, 17 % under the code");
    expect(total(0.07)?.verdict).toBe("not met, 17 % over the code");
    expect(total(0.06)?.verdict).toBe("met, 0 % under the code");
    const window = (shgc: number) =>
      uaAgainstCode([{ name: "w", areaFt2: 100, u: 0.32, codePart: "window", shgc }], readZone("4A"), "2018")[1]
        ?.verdict;
    const means = (a: number, b: number) =>
      uaAgainstCode(
        [
          { name: "e", areaFt2: 100, u: a, codePart: "window", shgc: undefined },
          { name: "w", areaFt2: 300, u: b, codePart: "window", shgc: undefined },
        ],
        readZone("4A"),
        "2018",
      )[2]?.verdict;
    expect([means(0.32, 0.32), means(0.32, 0.33)]).toEqual(["within the code's U", "above the code's U"]);
    expect([window(0.4), window(0.41)]).toEqual([
      "within the code's U; within the code's SHGC",
      "within the code's U; above the code's SHGC",
    ]);
    expect(total(0.05, 0.07)).toMatchObject({
      areaFt2: 2000,
      u: expect.closeTo(0.06, 12),
      codeU: expect.closeTo(0.06, 12),
    });
  });
});

describe("air", () => {
  test("the code's limit is told in cfm too where the volume is known", () => {
    const limit = (volumeFt3: number | undefined) => {
      const tape = new Tape();
      airAgainstCode(2, volumeFt3, readZone("5A"), "2021", tape);
      return tape.steps.find((s) => s.symbol === "cfm50 limit")?.value;
    };
    expect([limit(20_000), limit(undefined)]).toEqual([1000, undefined]);
  });

  test("the steps of the natural rate are the factors, and a zone's stand-in is said", () => {
    const tape = new Tape();
    const house = { stories: 2, shielding: "heavy", zone: readZone("6A") } as const;
    expect(naturalCfm(3, 20_000, "factor", house, tape)).toBeCloseTo(1000 / (15.5 * 0.8 * 1.2), 9);
    expect(tape.steps.map((s) => [s.symbol, s.value])).toEqual([
      ["N", expect.closeTo(14.88, 12)],
      ["ACH", expect.closeTo(3 / 14.88, 12)],
      ["Q", expect.closeTo(1000 / 14.88, 9)],
    ]);
    expect(tape.assumptions.join()).toMatch(/infiltration zone 1 stands in for climate zone 6A/);
    const none = new Tape();
    naturalCfm(3, 20_000, "factor", { ...house, zone: undefined }, none);
    expect(none.assumptions.join()).toMatch(/plain 20/);
  });

  test("a leakage area passes by the root of the pressure over the density", () => {
    // 1 in2 = 6.4516e-4 m2; sqrt(2 x 4 / 1.204) = 2.57771 m/s; 1 m3/s = 2118.88 cfm.
    const cfm4 = 55 * 6.4516e-4 * 2.57771 * 2118.88;
    const house = { volumeFt3: 20_000, areaFt2: undefined, exponent: 0.65 };
    const tape = new Tape();
    const ach50 = ach50Of({ kind: "hole", in2: 55, pa: 4, discharge: 1 }, house, tape);
    expect(ach50).toBeCloseTo((cfm4 * (50 / 4) ** 0.65 * 60) / 20_000, 3);
    expect(tape.steps.map((s) => s.symbol)).toEqual(["Q", "cfm50", "ACH50"]);
    expect(ach50Of({ kind: "hole", in2: 55, pa: 4, discharge: 0.5 }, house)).toBeCloseTo(ach50 / 2, 9);
    const same = new Tape();
    ach50Of({ kind: "flow", cfm: 400, pa: 50 }, house, same);
    expect(same.steps.map((s) => s.symbol)).toEqual(["ACH50"]);
  });

  test("thin air carries less: the printed pressures of the standard atmosphere", () => {
    // ASHRAE Handbook Fundamentals ch. 1 Table 1 (from memory): 15.236 psi at -1,000 ft, 12.228 at 5,000, 10.108 at 10,000.
    expect(airDensityRatio(-1000)).toBeCloseTo(15.236 / 14.696, 3);
    expect(airDensityRatio(5000)).toBeCloseTo(12.228 / 14.696, 3);
    expect(airDensityRatio(10_000)).toBeCloseTo(10.108 / 14.696, 3);
    const tape = new Tape();
    expect(lossPerDegree([], 0, 100, 5000, tape)).toBeCloseTo(108 * airDensityRatio(5000), 9);
    expect(tape.steps.find((s) => s.symbol === "p/p_0")?.value).toBe(airDensityRatio(5000));
    const sea = new Tape();
    lossPerDegree([{ name: "a", areaFt2: 10, u: 0.5 }], 3, 0, 0, sea);
    expect(sea.steps.map((s) => [s.symbol, s.value])).toEqual([
      ["UA a", 5],
      ["UA", 5],
      ["H_tb", 3],
    ]);
    const none = new Tape();
    lossPerDegree([], 0, 100, 0, none);
    expect(none.steps.map((s) => s.symbol)).toEqual(["UA", "H_v"]);
  });
});

describe("mass walls", () => {
  const mass = (...rows: LayerRow[]) => massWall(assemble(rows, "wall", "winter").layers);
  const inches = (material: string, thicknessIn: number): LayerRow => ({ row: 1, material, thicknessIn });

  test("air and sheets hold no heat, a thin board does, an unknown density is asked for", () => {
    expect(mass(inches("air space", 1), inches("reflective air space", 1)).heatCapacity).toBe(0);
    expect(mass({ row: 1, material: "shingles", thicknessIn: undefined }).heatCapacity).toBe(0);
    // By the density of the print: 640 / 16.01846 pcf x 0.26 x 0.5 / 12.
    expect(mass(inches("drywall", 0.5)).heatCapacity).toBeCloseTo((39.9539 * 0.26 * 0.5) / 12, 4);
    expect(mass(inches("drywall", 1)).heatCapacity).toBeCloseTo((39.9539 * 0.26) / 12, 4);
    expect(() => mass(inches("wood fiber insulation", 2))).toThrow(/density of the wood fiber insulation in row 1/);
    expect(() => mass({ row: 1, material: "own", thicknessIn: 2, resistance: "1" })).toThrow(/density of the own/);
  });

  test("solid timber is asked about, a wall without wood is not", () => {
    const asked = (...rows: LayerRow[]) => {
      const tape = new Tape();
      massWall(assemble(rows, "wall", "winter").layers, tape);
      return /solid timber and mass timber/.test(tape.cautions.join());
    };
    expect([asked(inches("panel", 2)), asked(inches("drywall", 1))]).toEqual([true, false]);
  });
});

describe("the ground", () => {
  const basement = (depthFt: number, insulation = "R-19 interior") =>
    groundLoss({ kind: "basement", perimeterFt: 100, areaFt2: 100 * depthFt, insulation }, 30, 10);

  test("a basement takes the row of its depth or the next shallower one", () => {
    // Washington Administrative Code 51-11-0530 Table 5-1: 2 ft U 0.043 F 0.69, 3.5 ft 0.041 and 0.64, 7 ft 0.037 and 0.57.
    const rows = [
      [2, 0.043, 0.69],
      [3.4, 0.043, 0.69],
      [3.5, 0.041, 0.64],
      [6.9, 0.041, 0.64],
      [7, 0.037, 0.57],
    ] as const;
    for (const [depth, u, f] of rows) {
      expect(basement(depth)).toEqual({ btuH: expect.closeTo(20 * (u * 100 * depth + f * 100), 9), fFactor: f });
    }
    expect(() => basement(1.99)).toThrow(/from 2 to 7 ft/);
    expect(() => basement(7.01)).toThrow(/from 2 to 7 ft/);
    expect(() => basement(2, "R-12 exterior")).toThrow(/slab factor is not printed/);
  });

  test("the working names each step, the wall only where there is one", () => {
    const steps = (g: Ground) => {
      const tape = new Tape();
      groundLoss(g, 70, 20, tape);
      return tape.steps.map((s) => [s.symbol, s.value, s.expression]);
    };
    const slab = steps({ kind: "slab", perimeterFt: 100, areaFt2: undefined, insulation: "none" });
    expect(slab.map((s) => s[1])).toEqual([0.73, expect.closeTo(3650, 9)]);
    expect(slab.at(-1)?.[2]).toBe("(0.73 x 100) x 50");
    const under = steps({ kind: "basement", perimeterFt: 100, areaFt2: 200, insulation: "R-19 interior" });
    expect(under.map((s) => s[0])).toEqual(["U", "UA", "F", "q"]);
    expect(under.at(-1)?.[2]).toBe("(0.69 x 100 + 8.6) x 50");
  });

  test("a floor's edge is no shorter than a round one's", () => {
    const crawl = (areaFt2: number) =>
      groundLoss({ kind: "crawl space", perimeterFt: 100, areaFt2, insulation: "R-19 perimeter" }, 1, 0).btuH;
    // 100^2 / (4 pi) is 795.775 ft2.
    expect(crawl(795.77)).toBeCloseTo(0.075 * 795.77, 9);
    expect(() => crawl(795.78)).toThrow(/even a round one/);
  });
});

test("specific heats: of the public tables, the others from memory", () => {
  // California joint appendix JA4 Table 4.5.2: softwood 0.33, plywood 0.29, gypsum board 0.26, concrete and stucco 0.20; the rest from memory.
  const of = (name: string, wood?: "solid" | "panel") =>
    specificHeat({ name, ...(wood === undefined ? {} : { wood }) });
  expect([of("spruce-pine-fir lumber", "solid"), of("plywood", "panel"), of("gypsum board")]).toEqual([
    0.33, 0.29, 0.26,
  ]);
  for (const name of ["brick", "concrete", "concrete block", "stucco", "fiber-cement board", "cement board"])
    expect(of(name)).toBe(0.2);
  expect([of("mineral wool board"), of("steel sheet")]).toEqual([0.2, 0.12]);
});

test("R_LAYER's working ends with the answer", () => {
  const shown = working("R_LAYER", "panel", 1.5);
  expect(shown.outcome).toMatchObject({ ok: true, value: shown.steps.at(-1)?.value });
});
