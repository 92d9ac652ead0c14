import { describe, expect, test } from "vitest";
import { Tape } from "../../../src/core/kit/tape.ts";
import { eaveToRidgeFt } from "../../../src/core/wind/building.ts";
import { exposureCoefficient } from "../../../src/core/wind/exposure-coefficient.ts";
import { baseShear, shearWithLines, wallLineShear } from "../../../src/core/wind/frame/base-shear.ts";
import type { FrameInput } from "../../../src/core/wind/frame/frame.ts";
import { windwardRoofCp } from "../../../src/core/wind/frame/frame-coefficients.ts";
import { directionalFrame } from "../../../src/core/wind/frame/frame-directional.ts";
import { envelopeFrame } from "../../../src/core/wind/frame/frame-envelope.ts";
import { torsionCases } from "../../../src/core/wind/frame/torsion.ts";
import { roofUplift } from "../../../src/core/wind/frame/uplift.ts";
import { roofHeight } from "../../../src/core/wind/roof-height.ts";

/** 40 ft across the ridge, 80 ft along it, 10 ft eave, 6 on 12: rise 10 ft, mean roof height 15 ft. */
const BARN: FrameInput = {
  qPsf: 20,
  kd: 0.85,
  kzt: 1,
  roofAreaFt2: undefined,
  widthFt: 40,
  lengthFt: 80,
  eaveFt: 10,
  slopeDeg: (Math.atan(0.5) * 180) / Math.PI,
  roof: "gable",
  enclosure: "enclosed",
  exposure: undefined,
  level: "strength",
  edition: "7-16",
};

/** q with the gust factor. */
const QG = 20 * 0.85;

function worked(work: (tape: Tape) => unknown): Tape {
  const tape = new Tape();
  work(tape);
  return tape;
}

describe("forces on whole buildings", () => {
  test("a hip from its end: straight walls, and both hip ends as slopes", () => {
    const [, along] = baseShear({ ...BARN, roof: "hip" });
    // h/L 15/80: windward slope 0.3, leeward -0.6, on triangles of 40 x 10 / 2; walls 40 x 10 with 0.8 and, at L/B 2, -0.3.
    expect(along?.pressureLb).toBeCloseTo(QG * ((0.8 + 0.3) * 400 + (0.3 + 0.6) * 200), 6);
  });

  test("the least load of a monoslope: its high wall and its whole roof, from either side", () => {
    const [low, high, end] = baseShear({ ...BARN, roof: "monoslope", qPsf: 1 });
    expect(low?.leastLb).toBeCloseTo(16 * 80 * 30 + 8 * 80 * 20, 6);
    expect(high?.leastLb).toBeCloseTo(16 * 80 * 30 + 8 * 80 * 20, 6);
    expect(end?.leastLb).toBeCloseTo(16 * (40 * 10 + (40 * 20) / 2), 6);
  });

  test("an end wall by bands: each by Kz at its top over Kz at the mean roof height, the gable not under that", () => {
    // Exposure C: Kz = 2.01 (z/900)^(2/9.5), from 15 ft up; eave 20 ft, mean roof height 25 ft.
    const kz = (z: number) => 2.01 * (z / 900) ** (2 / 9.5);
    const [, along] = baseShear({ ...BARN, eaveFt: 20, exposure: "C" });
    const bands = (kz(15) * 15 + kz(20) * 5) / kz(25);
    const lb = QG * 0.8 * (40 * bands + 200) + QG * 0.3 * (40 * 20 + 200);
    expect((along?.pressureLb ?? 0) / lb).toBeCloseTo(1, 3);
  });
});

describe("lines of walls", () => {
  const lines = [{ name: "a", wind: "across ridge", tributaryFt: 20 }] as const;
  test("are told how they share, whatever their number", () => {
    const said = (n: number) => worked((t) => shearWithLines(BARN, lines.slice(0, n), t)).cautions.join();
    expect(said(1)).toMatch(/flexible diaphragm/);
    expect(said(0)).not.toMatch(/flexible diaphragm/);
    const stiff = (n: number) =>
      worked((t) =>
        torsionCases(
          baseShear(BARN),
          [-20, 20]
            .slice(0, 2 * n)
            .map((positionFt) => ({ name: `${positionFt}`, wind: "across ridge" as const, positionFt })),
          "7-16",
          t,
        ),
      ).cautions.join();
    expect(stiff(1)).toMatch(/equal stiffness/);
    expect(stiff(0)).not.toMatch(/equal stiffness/);
  });

  test("one that carries the whole face may, whatever the dust in its length", () => {
    for (let faceFt = 10; faceFt < 200; faceFt++) {
      const total = {
        wind: "across ridge",
        pressureLb: 1,
        leastLb: 1,
        designLb: 1000,
        designPlf: 1000 / faceFt,
        level: "strength",
      } as const;
      expect(() => wallLineShear([total], [{ name: "a", wind: "across ridge", tributaryFt: faceFt }])).not.toThrow();
    }
  });
});

describe("coefficients as printed", () => {
  test("suction of the windward roof at each slope, h/L up to 0.25, 0.5 and from 1", () => {
    const suction = (hOverL: number) => [10, 15, 20, 25, 30, 35, 45, 60].map((s) => windwardRoofCp(s, hOverL).suction);
    expect(suction(0.25)).toEqual([-0.7, -0.5, -0.3, -0.2, -0.2, 0, 0, 0]);
    expect(suction(0.5)).toEqual([-0.9, -0.7, -0.4, -0.3, -0.2, -0.2, 0, 0]);
    expect(suction(1)).toEqual([-1.3, -1, -0.7, -0.5, -0.3, -0.2, 0, 0]);
  });

  test("from 60 degrees a hundredth of the slope", () => {
    expect([60, 63, 66, 80, 85].map((s) => windwardRoofCp(s, 0.25).pressure)).toEqual([
      expect.closeTo(0.6, 12),
      expect.closeTo(0.63, 12),
      expect.closeTo(0.66, 12),
      0.8,
      0.8,
    ]);
  });

  test("side walls -0.7, at both winds", () => {
    const sides = directionalFrame(BARN).filter((r) => r.surface === "side walls");
    expect(sides.map((r) => r.coefficient)).toEqual([-0.7, -0.7]);
    expect(sides[0]?.withPressurePsf).toBeCloseTo(20 * (-0.7 * 0.85 - 0.18), 9);
  });
});

test("the envelope of 7-22 says that it takes the coefficients of 7-16", () => {
  const said = (edition: "7-16" | "7-22") => worked((t) => envelopeFrame({ ...BARN, edition }, t)).cautions.join();
  expect(said("7-22")).toMatch(/those of 7-16/);
  expect(said("7-16")).not.toMatch(/those of 7-16/);
});

describe("uplift", () => {
  const uplift = (deadPsf: number, overhangFt: number, tape?: Tape) =>
    roofUplift({ ...BARN, deadPsf, tributariesFt: [10], overhangFt }, tape)[0];

  test("none where the dead load counted is more", () => {
    expect(uplift(60, 0)?.netPlf).toBe(0);
    expect(worked((t) => uplift(60, 0, t)).cautions.join()).toMatch(/net uplift is 0/);
    expect(worked((t) => uplift(0, 0, t)).cautions.join()).not.toMatch(/net uplift is 0/);
  });

  test("what pushes under an overhang is in the working where there is one", () => {
    const symbols = (overhangFt: number) => worked((t) => uplift(10, overhangFt, t)).steps.map((s) => s.symbol);
    expect(symbols(0.5)).toContain("p under");
    expect(symbols(0)).not.toContain("p under");
  });
});

test("heights: the width from eave to ridge, a low roof without its width, and Kz under a foot", () => {
  expect([eaveToRidgeFt(40, "gable"), eaveToRidgeFt(40, "hip")]).toEqual([20, 20]);
  expect([eaveToRidgeFt(40, "monoslope"), eaveToRidgeFt(40, "flat"), eaveToRidgeFt(undefined, "hip")]).toEqual([
    40,
    40,
    undefined,
  ]);
  const low = { eaveFt: 12, widthFt: undefined, roof: "gable" } as const;
  expect(roofHeight(undefined, { ...low, slopeDeg: 5 }, "7-16")).toBe(12);
  expect(roofHeight(undefined, { ...low, slopeDeg: 10 }, "7-16")).toBe(12);
  expect(roofHeight(undefined, { ...low, slopeDeg: 11 }, "7-16")).toBeUndefined();
  expect(roofHeight(undefined, { ...low, slopeDeg: undefined }, "7-16")).toBeUndefined();
  expect(exposureCoefficient(0.5, "C", "frame", "7-16")).toBe(exposureCoefficient(15, "C", "frame", "7-16"));
});
