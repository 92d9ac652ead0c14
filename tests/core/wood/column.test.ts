import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { BadInput, OutOfRange } from "../../../src/core/kit/refusal.ts";
import { Tape } from "../../../src/core/kit/tape.ts";
import { beamColumnChecks, combined } from "../../../src/core/wood/beam-column.ts";
import { columnAnswer, type Fastening } from "../../../src/core/wood/column.ts";
import {
  beamFactor,
  beamLength,
  beamStability,
  columnC,
  columnEuler,
  columnFactor,
} from "../../../src/core/wood/stability.ts";
import { actual, asd, member, own } from "../../published/wood-known.ts";

const WOOD = own({ Fb: 1000, Fv: 150, Fc: 1350, E: 1.6e6, Emin: 580_000 });
const answer = (
  strongIn: number,
  weakIn: number,
  fastening: Fastening = "none",
  plies = 1,
  d = 5.5,
  b = 1.5,
  wood = WOOD,
) => columnAnswer(member(actual(b, d, plies), wood, asd(1)), { strongIn, weakIn, fastening });

describe("CP between Euler and crushing", () => {
  test("crushing where it is short, Euler where it is slender, c decides how the two meet", () => {
    for (const c of [0.8, 0.85, 0.9]) {
      expect(columnFactor(1e4, c)).toBeCloseTo(1, 3);
      expect(columnFactor(1e-4, c) / 1e-4).toBeCloseTo(1, 3);
      expect(columnFactor(1, c)).toBeCloseTo(1 / c - Math.sqrt(1 / c ** 2 - 1 / c), 12);
    }
    expect(columnFactor(1, 0.9)).toBeGreaterThan(columnFactor(1, 0.8));
  });
  test("a slender column carries its Euler load over the safety of Emin, a stub its crushing stress", () => {
    const stub = answer(1, 0);
    expect(stub.fcPrimePsi / 1350).toBeGreaterThan(0.999);
    const slender = answer(5.5 * 50, 0);
    expect(slender.fcPrimePsi).toBeLessThan((0.822 * 580_000) / 2500);
    expect(slender.fcPrimePsi).toBeGreaterThan((0.96 * 0.822 * 580_000) / 2500);
  });
  test("capacity never grows with length, nor falls with size", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 270, noNaN: true }),
        fc.double({ min: 0.01, max: 5, noNaN: true }),
        (l, more) => {
          const capacity = answer(l, 0).capacityLb;
          expect(answer(Math.min(275, l + more), 0).capacityLb).toBeLessThanOrEqual(capacity);
          expect(answer(l, 0, "none", 1, 5.5 + more).capacityLb).toBeGreaterThan(capacity);
        },
      ),
    );
  });
});

test("c by kind", () => {
  expect(columnC("sawn")).toBe(0.8);
  for (const kind of ["LVL", "PSL", "LSL", "glulam"] as const) expect(columnC(kind)).toBe(0.9);
});

test("slenderness of 50 is answered, above it is refused", () => {
  expect(columnEuler(75, 1.5, 580_000, "weak")).toBeCloseTo((0.822 * 580_000) / 2500, 9);
  expect(() => columnEuler(75.01, 1.5, 580_000, "weak")).toThrow(OutOfRange);
  expect(() => columnEuler(90, 1.5, 580_000, "weak")).toThrow(
    "The slenderness le/d of the column (weak) is 60: it may not exceed 50 (NDS 3.7.1.4). Brace it, or take a larger section.",
  );
});

describe("bracing", () => {
  test("the worse plane counts, and a plane that is held does not", () => {
    const held = answer(96, 0);
    const weak = answer(96, 24);
    expect(weak.capacityLb).toBe(Math.min(held.capacityLb, answer(0, 24).capacityLb));
    expect(answer(0, 0).fcPrimePsi).toBe(1350);
    expect(answer(0, 0).eulerStrongPsi).toBeUndefined();
    expect(answer(96, 0).eulerStrongPsi).toBeCloseTo((0.822 * 580_000) / (96 / 5.5) ** 2, 9);
  });
  test("both orders of a square post are alike", () => {
    expect(answer(96, 48, "none", 1, 3.5, 3.5).capacityLb).toBeCloseTo(
      answer(48, 96, "none", 1, 3.5, 3.5).capacityLb,
      9,
    );
  });
});

describe("built-up columns", () => {
  const three = (fastening: Fastening, weakIn = 96) => answer(96, weakIn, fastening, 3);
  test("joined plies act as one about the joined axis, less by Kf", () => {
    const whole = (kf: number) => kf * columnFactor((0.822 * 580_000) / (96 / 4.5) ** 2 / 1350, 0.8);
    expect(three("nailed").fcPrimePsi / 1350).toBeCloseTo(whole(0.6), 12);
    expect(three("bolted").fcPrimePsi / 1350).toBeCloseTo(whole(0.75), 12);
  });
  test("two plies are a built-up column too, one is solid", () => {
    const whole = columnFactor((0.822 * 580_000) / (96 / 3) ** 2 / 1350, 0.8);
    expect(answer(96, 96, "nailed", 2).fcPrimePsi / 1350).toBeCloseTo(0.6 * whole, 12);
    expect(answer(96, 96, "nailed", 1, 5.5, 3).fcPrimePsi / 1350).toBeCloseTo(whole, 12);
  });
  test("not joined, each buckles by itself", () => {
    const one = answer(96, 60, "none", 1);
    expect(three("none", 60).capacityLb).toBeCloseTo(3 * one.capacityLb, 9);
    expect(() => three("none", 96)).toThrow(/slenderness/);
    expect(answer(96, 0, "none", 3).capacityLb).toBeCloseTo(3 * answer(96, 0).capacityLb, 9);
  });
  test("never less than the plies by themselves", () => {
    const tape = new Tape();
    const short = columnAnswer(
      member(actual(1.5, 5.5, 3), WOOD, asd(1)),
      { strongIn: 12, weakIn: 12, fastening: "nailed" },
      tape,
    );
    expect(short.capacityLb).toBeCloseTo(3 * answer(12, 12).capacityLb, 6);
    expect(tape.steps.map((s) => s.symbol)).toContain("CP one ply");
    expect(tape.steps.at(-1)?.value).toBe(short.capacityLb);
    expect(tape.assumptions.join(" ")).toContain("nailed as NDS 15.3.3");
  });
  test("2 to 5 plies of at least 1.5 in", () => {
    expect(answer(96, 96, "nailed", 5).capacityLb).toBeGreaterThan(0);
    expect(answer(96, 96, "nailed", 2).capacityLb).toBeGreaterThan(0);
    expect(() => answer(96, 96, "nailed", 6)).toThrow(BadInput);
    expect(() => answer(96, 96, "bolted", 3, 5.5, 1.49)).toThrow(/2 to 5 plies of at least 1.5 in/);
  });
  test("plies whose joining nobody says are said to buckle by themselves", () => {
    const tape = new Tape();
    columnAnswer(member(actual(1.5, 5.5, 3), WOOD, asd(1)), { strongIn: 96, weakIn: 60, fastening: "none" }, tape);
    expect(tape.cautions.join(" ")).toContain("ply fastening");
  });
});

describe("beam stability", () => {
  const section = actual(1.5, 11.25);
  test("held, or no deeper than wide: 1", () => {
    expect(beamStability(section, 0, 1000, 580_000)).toBe(1);
    expect(beamStability(actual(3.5, 3.5), 96, 1000, 580_000)).toBe(1);
    expect(beamStability(actual(3.49, 3.5), 96, 1000, 580_000)).toBeLessThan(1);
  });
  test("falls with the unbraced length, toward the critical stress", () => {
    const cl = [24, 48, 96, 144].map((lu) => beamStability(section, lu, 1000, 580_000));
    expect([...cl].sort((a, b) => b - a)).toEqual(cl);
    expect(beamFactor(1e4)).toBeCloseTo(1, 4);
    expect(beamFactor(1e-4) / 1e-4).toBeCloseTo(1, 3);
    expect(beamFactor(1)).toBeCloseTo(2 / 1.9 - Math.sqrt((2 / 1.9) ** 2 - 1 / 0.95), 12);
  });
  test("effective length in three stretches", () => {
    expect(beamLength(69.9, 10)).toBeCloseTo(2.06 * 69.9, 9);
    expect(beamLength(70, 10)).toBeCloseTo(1.63 * 70 + 30, 9);
    expect(beamLength(142.9, 10)).toBeCloseTo(1.63 * 142.9 + 30, 9);
    expect(beamLength(143, 10)).toBeCloseTo(1.84 * 143, 9);
  });
  test("RB of 50 at most", () => {
    expect(() => beamStability(section, 300, 1000, 580_000)).toThrow(/RB of the beam .* may not exceed 50/);
  });
});

describe("bending with compression", () => {
  const ratio = (fcPsi: number, fbPsi: number, euler = 400) => combined(fcPsi, 300, fbPsi, 1000, euler).ratio;
  test("is one on its boundary", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 299, noNaN: true }), (fcPsi) => {
        const fb = (1 - (fcPsi / 300) ** 2) * 1000 * (1 - fcPsi / 400);
        expect(ratio(fcPsi, fb)).toBeCloseTo(1, 12);
      }),
    );
    expect(ratio(300, 0)).toBe(1);
    expect(ratio(0, 1000)).toBe(1);
    expect(combined(150, 300, 500, 1000, undefined).ratio).toBe(0.75);
    expect(ratio(200, 250)).toBeCloseTo(4 / 9 + 0.5, 12);
  });
  test("a column at its critical stress is refused", () => {
    expect(ratio(299.9, 1, 300)).toBeGreaterThan(1);
    expect(() => ratio(300, 1, 300)).toThrow(OutOfRange);
    expect(() => ratio(301, 1, 300)).toThrow(/the column buckles/);
  });
});

describe("beam-column", () => {
  const at = (axialLb: number, lateral: number, weakIn = 0, tape?: Tape) =>
    beamColumnChecks(
      member(actual(1.5, 5.5), WOOD, asd("wind")),
      {
        lengthIn: 108,
        bracing: { strongIn: 108, weakIn, fastening: "none" },
        axialLb,
        lateralLbPerIn: lateral,
        serviceLbPerIn: lateral / 2,
        deflectionOver: 240,
      },
      tape,
    );
  const of = (checks: ReturnType<typeof at>, name: string) => {
    const found = checks.find((c) => c.check === name);
    if (found === undefined) throw new Error(name);
    return found;
  };
  test("demands by hand, the worst first, deflection under the service load", () => {
    const checks = at(800, 1.5);
    expect(of(checks, "compression").demand).toBeCloseTo(800 / 8.25, 9);
    expect(of(checks, "bending").demand).toBeCloseTo((1.5 * 108 ** 2) / 8 / 7.5625, 9);
    expect(of(checks, "bending").capacity).toBeCloseTo(1600, 9);
    expect(of(checks, "shear").demand).toBeCloseTo((1.5 * (54 - 5.5) * 1.5) / 8.25, 9);
    expect(of(checks, "shear").capacity).toBeCloseTo(240, 9);
    expect(of(checks, "deflection").demand).toBeCloseTo((5 * 0.75 * 108 ** 4) / (384 * 1.6e6 * 20.796875), 9);
    expect(of(checks, "deflection").capacity).toBeCloseTo(0.45, 12);
    expect(checks.map((c) => c.ratio)).toEqual(checks.map((c) => c.ratio).sort((a, b) => b - a));
    expect(of(checks, "combined").capacity).toBe(1);
    expect(checks.every((c) => Math.abs(c.ratio - c.demand / c.capacity) < 1e-12)).toBe(true);
  });
  test("weak bracing lowers compression and bending", () => {
    const [held, loose] = [at(800, 1.5), at(800, 1.5, 54)];
    for (const name of ["compression", "bending", "combined"])
      expect(of(loose, name).ratio).toBeGreaterThan(of(held, name).ratio);
  });
  test("plies that are not joined turn sideways each by itself", () => {
    const three = (fastening: Fastening) =>
      beamColumnChecks(member(actual(1.5, 5.5, 3), WOOD, asd("wind")), {
        lengthIn: 108,
        bracing: { strongIn: 108, weakIn: 54, fastening },
        axialLb: 900,
        lateralLbPerIn: 2,
        serviceLbPerIn: 2,
        deflectionOver: 240,
      });
    const one = beamStability(actual(1.5, 5.5), 54, 1600, 580_000);
    expect(of(three("none"), "bending").capacity).toBeCloseTo(1600 * one, 9);
    expect(of(three("nailed"), "bending").capacity).toBeCloseTo(
      1600 * beamStability(actual(4.5, 5.5), 54, 1600, 580_000),
      9,
    );
    expect(of(three("none"), "bending").demand).toBe(of(three("nailed"), "bending").demand);
  });
  test("grows with either load", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 900, noNaN: true }),
        fc.double({ min: 0.1, max: 3, noNaN: true }),
        (p, w) => {
          const now = of(at(p, w), "combined").ratio;
          expect(of(at(p * 1.1, w), "combined").ratio).toBeGreaterThan(now);
          expect(of(at(p, w * 1.1), "combined").ratio).toBeGreaterThan(now);
        },
      ),
    );
  });
  test("says when the axial load takes the deflection past its limit", () => {
    const limit = 0.45;
    const w = (limit * 0.97 * 384 * 1.6e6 * 20.796875) / (5 * 108 ** 4);
    const tape = new Tape();
    at(1500, 2 * w, 0, tape);
    const euler = (Math.PI ** 2 * 1.6e6 * 20.796875) / 108 ** 2;
    const step = tape.steps.find((s) => s.symbol === "deflection with axial");
    expect(step?.value).toBeCloseTo((limit * 0.97) / (1 - 1500 / euler), 9);
    expect(tape.cautions.join(" ")).toContain("The axial load makes the deflection");
    expect(tape.pictures).toHaveLength(1);
    const calm = new Tape();
    at(100, 2 * w, 0, calm);
    expect(calm.cautions.join(" ")).not.toContain("axial load makes");
    const over = new Tape();
    at(1500, 2.2 * w, 0, over);
    expect(over.cautions.join(" ")).not.toContain("axial load makes");
  });
});
