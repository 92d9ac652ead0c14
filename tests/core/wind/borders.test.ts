import { describe, expect, test } from "vitest";
import { Tape } from "../../../src/core/kit/tape.ts";
import { checkBuilding } from "../../../src/core/wind/building.ts";
import { claddingCoefficients } from "../../../src/core/wind/cladding/cladding-coefficients.ts";
import { claddingFigure, type Surface } from "../../../src/core/wind/cladding/cladding-figure.ts";
import { claddingSchedule } from "../../../src/core/wind/cladding/cladding-schedule.ts";
import { exposureCoefficient } from "../../../src/core/wind/exposure-coefficient.ts";
import { wallLineShear } from "../../../src/core/wind/frame/base-shear.ts";
import { leewardRoofCp, parallelRoofCp, windwardRoofCp } from "../../../src/core/wind/frame/frame-coefficients.ts";
import { directionalFrame } from "../../../src/core/wind/frame/frame-directional.ts";
import { envelopeFrame } from "../../../src/core/wind/frame/frame-envelope.ts";
import { roofUplift } from "../../../src/core/wind/frame/uplift.ts";
import type { WindZonesPicture } from "../../../src/core/wind/pictures.ts";
import { roofHeight } from "../../../src/core/wind/roof-height.ts";
import {
  GABLE_7_TO_27_7_10,
  GABLE_27_TO_45_7_10,
  GABLE_OVERHANG_7_TO_27_7_10,
  GABLE_OVERHANG_27_TO_45_7_10,
} from "../../../src/core/wind/tables/cladding-gable.ts";
import { MONOSLOPE_3_TO_10, MONOSLOPE_10_TO_30 } from "../../../src/core/wind/tables/cladding-monoslope.ts";
import { speedUp } from "../../../src/core/wind/topographic-factor.ts";

const worked = (work: (tape: Tape) => unknown): Tape => {
  const tape = new Tape();
  work(tape);
  return tape;
};

test("a mean roof height given is held against the one made, from half a foot on", () => {
  const from = { eaveFt: 10, widthFt: 40, slopeDeg: 0, roof: "flat" } as const;
  const said = (givenFt: number) => worked((tape) => roofHeight(givenFt, from, "7-16", tape)).cautions;
  expect([said(10.5), said(9.5), said(10)]).toEqual([[], [], []]);
  expect(said(10.51).join()).toMatch(/given is 10.5 ft; eave, slope and width make 10.0 ft/);
  expect(said(9.49)).toHaveLength(1);
});

test("a hip roof may be square, and no longer across its ridge than along it", () => {
  const square = { widthFt: 30, lengthFt: 30, eaveFt: 10, slopeDeg: 30, roof: "hip" } as const;
  expect(() => checkBuilding(square)).not.toThrow();
  expect(() => checkBuilding({ ...square, widthFt: 30.1 })).toThrow(/less than its width/);
});

test("the area factor of the -1.3: half way between 100 and 250 ft2, and level outside the table", () => {
  const first = (areaFt2: number) => parallelRoofCp(1, areaFt2)[0]?.cp ?? 0;
  expect(first(175)).toBeCloseTo(-1.3 * 0.95, 12);
  expect(first(625)).toBeCloseTo(-1.3 * 0.85, 12);
  expect([first(50), first(2000)]).toEqual([-1.3, expect.closeTo(-1.3 * 0.8, 12)]);
});

describe("what is known from memory", () => {
  const at = (areaFt2: number, surface: "flat" | "flat overhang", edition: "7-10" | "7-16", slopeDeg: number) =>
    worked((tape) =>
      claddingCoefficients({ surface, zone: "2", areaFt2, slopeDeg, given: [], edition }, tape),
    ).cautions.join(" ");

  test("as a whole is said of every area, with no area from which it begins", () => {
    for (const areaFt2 of [1, 10, 200]) {
      for (const said of [at(areaFt2, "flat", "7-16", 2), at(areaFt2, "flat overhang", "7-10", 2)]) {
        expect(said).toMatch(/are from memory, not from a print/);
        expect(said).not.toMatch(/beyond/);
      }
    }
  });
});

test("a schedule's picture has the pressures of the first area", () => {
  const tape = worked((t) =>
    claddingSchedule(
      {
        qPsf: 25,
        kd: 0.85,
        edition: "7-16",
        roof: "flat",
        slopeDeg: 0,
        areasFt2: [20, 100],
        widthFt: 60,
        lengthFt: 90,
        heightFt: 20,
        enclosure: "enclosed",
        level: "strength",
        given: [],
      },
      t,
    ),
  );
  expect((tape.pictures[0] as WindZonesPicture).areaFt2).toBe(20);
});

test("a wall line takes its share of the least load too; of two winds alike the first is named", () => {
  const total = (wind: string, pressureLb: number) =>
    ({ wind, pressureLb, leastLb: 6400, designLb: 6400, designPlf: 160, level: "strength" }) as const;
  const line = { name: "east", wind: "across ridge", tributaryFt: 10 } as const;
  const rows = wallLineShear(
    [total("across ridge, from the low side", 10), total("across ridge, from the high side", 20)],
    [line],
  );
  expect(rows[2]).toEqual({
    wind: "east: across ridge, from the low side",
    pressureLb: 2.5,
    leastLb: 1600,
    designLb: 1600,
    designPlf: 160,
    level: "strength",
  });
  expect(() => wallLineShear([total("across ridge", 10)], [{ ...line, tributaryFt: 40 }])).not.toThrow();
});

test("only a monoslope's rows say which side they are for", () => {
  const assumed = (roof: "monoslope" | "gable") =>
    worked((tape) =>
      directionalFrame(
        {
          qPsf: 20,
          kd: 0.85,
          kzt: 1,
          roofAreaFt2: undefined,
          widthFt: 40,
          lengthFt: 80,
          eaveFt: 10,
          slopeDeg: 20,
          roof,
          enclosure: "enclosed",
          exposure: undefined,
          level: "strength",
          edition: "7-16",
        },
        tape,
      ),
    ).assumptions.join();
  expect(assumed("monoslope")).toMatch(/wind on the low side/);
  expect(assumed("gable")).not.toMatch(/low side/);
});

describe("slopes just on the limit of a figure take the flatter one", () => {
  const zones = (surface: Surface, slopeDeg: number) => claddingFigure(surface, slopeDeg, "7-10").zones;

  test("monoslopes at 10 degrees, gables and their overhangs at 27", () => {
    expect([10, 10.5].map((deg) => zones("monoslope", deg))).toEqual([
      MONOSLOPE_3_TO_10.zones,
      MONOSLOPE_10_TO_30.zones,
    ]);
    expect([27, 28].map((deg) => zones("gable", deg))).toEqual([GABLE_7_TO_27_7_10.zones, GABLE_27_TO_45_7_10.zones]);
    expect([27, 28].map((deg) => zones("gable overhang", deg))).toEqual([
      GABLE_OVERHANG_7_TO_27_7_10.zones,
      GABLE_OVERHANG_27_TO_45_7_10.zones,
    ]);
  });

  test("a roof of 10 degrees may be called flat, a steeper one not", () => {
    const flat = { widthFt: 30, lengthFt: 40, eaveFt: 10, slopeDeg: 10, roof: "flat" } as const;
    expect(() => checkBuilding(flat)).not.toThrow();
    expect(() => checkBuilding({ ...flat, slopeDeg: 10.1 })).toThrow(/flat roof slopes up to 10/);
  });
});

describe("frames", () => {
  const HOUSE = {
    qPsf: 20,
    kd: 0.85,
    kzt: 1,
    roofAreaFt2: undefined,
    widthFt: 40,
    lengthFt: 20,
    eaveFt: 10,
    slopeDeg: 0,
    roof: "flat",
    enclosure: "enclosed",
    exposure: undefined,
    level: "strength",
    edition: "7-16",
  } as const;

  test("a building as deep as a strip ends has no strip of no length behind it", () => {
    // Strips of a flat roof 10 ft up end at 5, 10 and 20 ft.
    const rows = (lengthFt: number) => directionalFrame({ ...HOUSE, lengthFt }).length;
    expect(rows(20)).toBe(rows(19.9));
    expect(rows(20.1)).toBe(rows(20) + 1);
  });

  test("coefficients of the envelope half way between 5 and 20 degrees, and between 20 and 30 (from memory of Fig. 28.3-1)", () => {
    const caseA = (slopeDeg: number) =>
      envelopeFrame({ ...HOUSE, roof: "gable", slopeDeg })
        .filter((r) => r.wind.startsWith("case A") && r.part === "field")
        .map((r) => r.coefficient);
    const rows = [0.4, 0.53, 0.56, -0.69, -0.69, 0.21, -0.37, -0.48, -0.43, -0.29, -0.43, -0.37];
    const half = (from: number) =>
      [0, 3, 6, 9].map((i) => expect.closeTo(((rows[i + from] ?? 0) + (rows[i + from + 1] ?? 0)) / 2, 9));
    expect(caseA(12.5)).toEqual(half(0));
    expect(caseA(25)).toEqual(half(1));
  });

  test("roof coefficients of Fig. 27.3-1 (from memory): rows of h/L 0.25, 0.5 and 1", () => {
    const leeward = (slopeDeg: number) => [0.25, 0.5, 1].map((h) => leewardRoofCp(slopeDeg, h));
    expect([10, 15, 20, 35].map(leeward)).toEqual([
      [-0.3, -0.5, -0.7],
      [-0.5, -0.5, -0.6],
      [-0.6, -0.6, -0.6],
      [-0.6, -0.6, -0.6],
    ]);
    const pushed = (slopeDeg: number) => [0.25, 0.5, 1].map((h) => windwardRoofCp(slopeDeg, h).pressure);
    expect([10, 15, 20, 25, 30, 35, 45].map(pushed)).toEqual([
      [-0.18, -0.18, -0.18],
      [0, -0.18, -0.18],
      [0.2, 0, -0.18],
      [0.3, 0.2, 0],
      [0.3, 0.2, 0.2],
      [0.4, 0.3, 0.2],
      [0.4, 0.4, 0.3],
    ]);
    const sucked = (slopeDeg: number) => [0.25, 0.5, 1].map((h) => windwardRoofCp(slopeDeg, h).suction);
    expect([10, 15, 20, 25, 30, 35, 45].map(sucked)).toEqual([
      [-0.7, -0.9, -1.3],
      [-0.5, -0.7, -1],
      [-0.3, -0.4, -0.7],
      [-0.2, -0.3, -0.5],
      [-0.2, -0.2, -0.3],
      [0, -0.2, -0.2],
      [0, 0, 0],
    ]);
  });

  test("a low-rise building is as high as it is wide at most", () => {
    expect(() => envelopeFrame({ ...HOUSE, eaveFt: 20 })).not.toThrow();
    expect(() => envelopeFrame({ ...HOUSE, eaveFt: 20.1 })).toThrow(/least plan dimension/);
  });

  test("the uplift's picture names the largest of its wall lines", () => {
    const tape = worked((t) => roofUplift({ ...HOUSE, deadPsf: 1, tributariesFt: [5, 15], overhangFt: 0 }, t));
    const [small, large] = roofUplift({ ...HOUSE, deadPsf: 1, tributariesFt: [5, 15], overhangFt: 0 });
    expect(large?.netPlf).toBeCloseTo(3 * (small?.netPlf ?? 0), 9);
    expect(tape.pictures.at(-1)?.alt).toContain(`largest net uplift is ${large?.netPlf.toFixed(0)} plf`);
  });
});

test("the working of a roof height says how it is made", () => {
  const said = (slopeDeg: number) =>
    worked((tape) => roofHeight(undefined, { eaveFt: 10, widthFt: 40, slopeDeg, roof: "gable" }, "7-16", tape)).steps[0]
      ?.expression;
  expect(said(10)).toContain("eave height, roof up to 10 degrees");
  expect(said(11)).toContain("half way from eave to ridge");
});

test("that the 7-22 table departs from its formula is said in 7-22 alone", () => {
  const said = (edition: "7-10" | "7-16" | "7-22") =>
    worked((tape) => exposureCoefficient(20, "C", "frame", edition, tape)).cautions.join();
  expect([said("7-10"), said("7-16")]).toEqual(["", ""]);
  expect(said("7-22")).toContain("printed table differs");
});

test("behind the crest a hill and a ridge reach 1.5 half lengths, an escarpment 4; before it all 1.5 (Fig. 26.8-1)", () => {
  const k2 = (shape: "hill" | "ridge" | "escarpment", side: "upwind" | "downwind") =>
    speedUp({
      shape,
      hillFt: 100,
      halfLengthFt: 400,
      distanceFt: 120,
      side,
      heightFt: 20,
      exposure: "C",
      edition: "7-16",
    }).k2;
  // 1 - 120 / (1.5 x 400) = 0.8, 1 - 120 / (4 x 400) = 0.925
  for (const shape of ["hill", "ridge", "escarpment"] as const) {
    expect(k2(shape, "upwind"), shape).toBeCloseTo(0.8, 12);
    expect(k2(shape, "downwind"), shape).toBeCloseTo(shape === "escarpment" ? 0.925 : 0.8, 12);
  }
});
