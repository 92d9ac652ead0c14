import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { EDITIONS } from "../../../src/core/kit/edition.ts";
import { OutOfRange, Refusal } from "../../../src/core/kit/refusal.ts";
import { Tape } from "../../../src/core/kit/tape.ts";
import { ROOF_SHAPES } from "../../../src/core/wind/building.ts";
import { baseShear } from "../../../src/core/wind/frame/base-shear.ts";
import type { FrameInput } from "../../../src/core/wind/frame/frame.ts";
import {
  leewardRoofCp,
  leewardWallCp,
  parallelRoofCp,
  windwardRoofCp,
} from "../../../src/core/wind/frame/frame-coefficients.ts";
import { directionalFrame } from "../../../src/core/wind/frame/frame-directional.ts";
import { envelopeFrame } from "../../../src/core/wind/frame/frame-envelope.ts";
import { roofUplift } from "../../../src/core/wind/frame/uplift.ts";

const HOUSE: FrameInput = {
  qPsf: 25,
  kd: 0.85,
  kzt: 1,
  roofAreaFt2: undefined,
  widthFt: 30,
  lengthFt: 48,
  eaveFt: 18,
  slopeDeg: 26.57,
  roof: "gable",
  enclosure: "enclosed",
  exposure: undefined,
  level: "strength",
  edition: "7-16",
};

const house = fc.record({
  qPsf: fc.double({ min: 1, max: 150, noNaN: true }),
  kd: fc.constant(0.85),
  kzt: fc.constant(1),
  roofAreaFt2: fc.constantFrom(undefined, 400),
  widthFt: fc.double({ min: 10, max: 100, noNaN: true }),
  lengthFt: fc.double({ min: 10, max: 200, noNaN: true }),
  eaveFt: fc.double({ min: 8, max: 100, noNaN: true }),
  slopeDeg: fc.double({ min: 0, max: 60, noNaN: true }),
  roof: fc.constantFrom(...ROOF_SHAPES),
  enclosure: fc.constantFrom("enclosed" as const, "partially enclosed" as const),
  exposure: fc.constantFrom(undefined, "B" as const, "D" as const),
  level: fc.constantFrom("strength" as const, "allowable" as const),
  edition: fc.constantFrom(...EDITIONS),
});

/** A value, or undefined where the building is refused. */
function tried<T>(run: () => T): T | undefined {
  try {
    return run();
  } catch (refusal) {
    if (refusal instanceof Refusal) return undefined;
    throw refusal;
  }
}

describe("coefficients", () => {
  test("are continuous where their tables change over", () => {
    const near = (f: (x: number) => number, x: number) =>
      expect(f(x + 1e-9) - f(x - 1e-9), `at ${x}`).toBeCloseTo(0, 6);
    for (const x of [1, 2, 4]) near(leewardWallCp, x);
    for (const hOverL of [0.1, 0.25, 0.4, 0.5, 0.8, 1, 2]) {
      for (const x of [15, 20, 25, 30, 35, 45, 60]) {
        near((s) => windwardRoofCp(s, hOverL).suction, x);
        near((s) => windwardRoofCp(s, hOverL).pressure, x);
        near((s) => leewardRoofCp(s, hOverL), x);
      }
    }
    for (const x of [0.25, 0.5, 1]) {
      near((r) => windwardRoofCp(22, r).suction, x);
      near((r) => parallelRoofCp(r)[0]?.cp ?? 0, x);
    }
  });

  test("area takes suction off the first strip only", () => {
    expect(parallelRoofCp(1, 1000)[0]?.cp).toBeCloseTo(-1.04, 9);
    expect(parallelRoofCp(1, 1000).slice(1)).toEqual(parallelRoofCp(1).slice(1));
  });
});

describe("directional pressures", () => {
  test("internal pressure adds suction everywhere, and everything grows with q", () => {
    fc.assert(
      fc.property(house, (input) => {
        const rows = tried(() => directionalFrame(input));
        if (rows === undefined) return;
        const doubled = directionalFrame({ ...input, qPsf: 2 * input.qPsf });
        rows.forEach((r, i) => {
          expect(Number.isFinite(r.withPressurePsf) && Number.isFinite(r.withSuctionPsf)).toBe(true);
          expect(r.withPressurePsf).toBeLessThan(r.withSuctionPsf);
          expect(doubled[i]?.withPressurePsf).toBeCloseTo(2 * r.withPressurePsf, 6);
        });
      }),
    );
  });

  test("the height of the wall only takes pressure off it when the exposure is given", () => {
    const whole = directionalFrame(HOUSE).find((r) => r.surface === "windward wall");
    const bands = directionalFrame({ ...HOUSE, exposure: "C" }).filter((r) => r.surface === "windward wall");
    expect(bands.length).toBeGreaterThan(2);
    for (const band of bands) expect(band.withSuctionPsf).toBeLessThanOrEqual((whole?.withSuctionPsf ?? 0) + 1e-9);
  });

  test("7-22 with q without Kd equals 7-16 with q with it", () => {
    const now = directionalFrame({ ...HOUSE, edition: "7-22", qPsf: HOUSE.qPsf / 0.85 });
    directionalFrame(HOUSE).forEach((r, i) => {
      expect(now[i]?.withPressurePsf).toBeCloseTo(r.withPressurePsf, 9);
    });
  });
});

describe("envelope pressures", () => {
  test("end zones never have less than the field", () => {
    fc.assert(
      fc.property(house, (input) => {
        const rows = tried(() => envelopeFrame(input));
        if (rows === undefined) return;
        for (const r of rows.filter((x) => x.part === "field")) {
          const end = rows.find((x) => x.wind === r.wind && x.surface === r.surface.replace(")", "E)"));
          expect(Math.abs(end?.coefficient ?? 0)).toBeGreaterThanOrEqual(Math.abs(r.coefficient) - 0.11);
          if (r.wind.startsWith("case B"))
            expect(Math.abs(end?.coefficient ?? 0)).toBeGreaterThan(Math.abs(r.coefficient));
        }
      }),
    );
  });

  test("holds for low-rise buildings only, and says what is from memory", () => {
    expect(() => envelopeFrame({ ...HOUSE, eaveFt: 58, widthFt: 70, lengthFt: 80 })).toThrow(OutOfRange);
    expect(() => envelopeFrame({ ...HOUSE, eaveFt: 35 })).toThrow(/least plan dimension/);
    expect(() => envelopeFrame({ ...HOUSE, slopeDeg: 50 })).toThrow(/45 degrees/);
    const tape = new Tape();
    envelopeFrame(HOUSE, tape);
    expect(tape.cautions.join(" ")).toMatch(/from memory/);
  });
});

describe("base shear", () => {
  test("is never below the least load, and the walls' share is what the pressures give", () => {
    fc.assert(
      fc.property(house, (input) => {
        const flat: FrameInput = { ...input, roof: "flat", slopeDeg: 0 };
        for (const { wind, pressureLb, leastLb, designLb, designPlf } of baseShear(flat)) {
          const rows = directionalFrame(flat).filter((r) => r.wind === wind);
          const face = wind === "across ridge" ? flat.lengthFt : flat.widthFt;
          const windward = rows
            .filter((r) => r.surface === "windward wall")
            .reduce((sum, r) => {
              const [from = 0, to = 0] = r.part.replace(" ft", "").split(" to ").map(Number);
              return sum + r.withPressurePsf * (to - from);
            }, 0);
          const leeward = (rows.find((r) => r.surface === "leeward wall")?.withPressurePsf ?? 0) * flat.eaveFt;
          expect(pressureLb / ((windward - leeward) * face)).toBeCloseTo(1, 4);
          expect(designLb).toBe(Math.max(pressureLb, leastLb));
          expect(designPlf).toBeCloseTo(designLb / face, 9);
        }
      }),
    );
  });

  test("any building gives finite forces or a refusal", () => {
    fc.assert(
      fc.property(house, (input) => {
        for (const row of tried(() => baseShear(input)) ?? []) {
          for (const n of [row.pressureLb, row.leastLb, row.designLb, row.designPlf]) {
            expect(Number.isFinite(n) && n > 0).toBe(true);
          }
        }
      }),
    );
  });

  test("a monoslope is looked at from both sides", () => {
    expect(baseShear({ ...HOUSE, roof: "monoslope", slopeDeg: 14 }).map((r) => r.wind)).toEqual([
      "across ridge, from the low side",
      "across ridge, from the high side",
      "along ridge",
    ]);
  });
});

describe("uplift", () => {
  const uplift = (change: Partial<Parameters<typeof roofUplift>[0]>) =>
    roofUplift({ ...HOUSE, deadPsf: 10, tributariesFt: [16], overhangFt: 0, ...change })[0];

  test("falls with dead load, never below 0, and grows with overhang and width", () => {
    fc.assert(
      fc.property(house, fc.double({ min: 0, max: 60, noNaN: true }), (input, deadPsf) => {
        const at = (change: Partial<Parameters<typeof roofUplift>[0]>) =>
          tried(() => uplift({ ...input, deadPsf, ...change }));
        const base = at({});
        if (base === undefined) return;
        expect(base.netPlf).toBeGreaterThanOrEqual(0);
        expect(at({ deadPsf: deadPsf + 1 })?.netPlf).toBeLessThanOrEqual(base.netPlf);
        expect(at({ overhangFt: 2 })?.netPlf).toBeGreaterThanOrEqual(base.netPlf);
        expect(at({ tributariesFt: [20] })?.netPlf).toBeGreaterThanOrEqual(base.netPlf);
      }),
    );
  });

  test("counts 0.9 of the dead load at strength level and 0.6 at allowable", () => {
    expect(uplift({})?.deadPlf).toBeCloseTo(144, 9);
    expect(uplift({ level: "allowable" })?.deadPlf).toBeCloseTo(96, 9);
  });
});

test("a monoslope's high wall takes velocity pressure by its own height, over that at the mean roof height", () => {
  const shed: FrameInput = { ...HOUSE, roof: "monoslope", slopeDeg: 30, exposure: "C" };
  const [low, high] = baseShear(shed);
  const level = baseShear({ ...shed, exposure: undefined });
  // Bands above the mean roof height weigh more than 1, those below less.
  expect((high?.pressureLb ?? 0) / (level[1]?.pressureLb ?? 1)).toBeGreaterThan(
    (low?.pressureLb ?? 0) / (level[0]?.pressureLb ?? 1),
  );
});
