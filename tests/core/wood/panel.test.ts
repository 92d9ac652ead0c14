import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { BadInput } from "../../../src/core/kit/refusal.ts";
import { Tape } from "../../../src/core/kit/tape.ts";
import { frequency, panelChecks, panelSpans } from "../../../src/core/wood/panel.ts";
import type { PanelCase } from "../../../src/core/wood/panel-case.ts";
import { asd } from "../../published/wood-known.ts";

const VALUES = { E: 1.6e6, G: 60_000, Fb: 1800, Fs: 50, I: 3.375, S: 4.5, Q: 12, thickness: 1.5 };
const CASE: PanelCase = {
  values: VALUES,
  grain: "along",
  spanIn: 96,
  spans: 1,
  psf: 30,
  servicePsf: 18,
  deflectionOver: 180,
  use: asd("wind"),
};
const of = (over: Partial<PanelCase> = {}, tape?: Tape) => {
  const checks = panelChecks({ ...CASE, ...over }, tape);
  return (name: string) => {
    const check = checks.find((c) => c.check === name);
    if (check === undefined) throw new Error(name);
    return check;
  };
};

describe("a panel", () => {
  test("by hand, one span", () => {
    const check = of();
    expect(check("bending").demand).toBeCloseTo((2.5 * 96 ** 2) / 8 / 4.5, 9);
    expect(check("bending").capacity).toBeCloseTo(1.6 * 1800, 9);
    expect(check("rolling shear").demand).toBeCloseTo((2.5 * 48) / 12, 9);
    expect(check("rolling shear").capacity).toBeCloseTo(80, 9);
    const bent = (5 * 1.5 * 96 ** 4) / (384 * 1.6e6 * 3.375);
    const sheared = (1.5 * 96 ** 2) / (8 * ((60_000 * 12 * 1.5) / 1.2));
    expect(check("deflection").demand).toBeCloseTo(bent + sheared, 9);
    expect(check("deflection").capacity).toBeCloseTo(96 / 180, 12);
  });
  test("two and three spans", () => {
    expect(of({ spans: 2 })("bending").ratio).toBeCloseTo(of()("bending").ratio, 9);
    expect(of({ spans: 3 })("bending").ratio / of()("bending").ratio).toBeCloseTo(0.8, 9);
    expect(of({ spans: 2 })("rolling shear").ratio / of()("rolling shear").ratio).toBeCloseTo(1.25, 9);
    expect(of({ spans: 3 })("rolling shear").ratio / of()("rolling shear").ratio).toBeCloseTo(1.2, 9);
    expect(of({ spans: 3 })("deflection").ratio).toBeLessThan(of()("deflection").ratio);
    expect(of({ spans: 2 })("deflection").ratio).toBeLessThan(of({ spans: 3 })("deflection").ratio);
  });
  test("shear counts: a softer panel deflects more; none leaves it out and says so", () => {
    expect(of({ values: { ...VALUES, G: 30_000 } })("deflection").demand).toBeGreaterThan(of()("deflection").demand);
    const tape = new Tape();
    const stiff = of({ values: { ...VALUES, G: 0 } }, tape)("deflection").demand;
    expect(stiff).toBeCloseTo((5 * 1.5 * 96 ** 4) / (384 * 1.6e6 * 3.375), 9);
    expect(tape.cautions.join(" ")).toContain("Shear deflection is left out");
  });
  test("supports of some width: shear by the clear span, deflection by 1/4 in more", () => {
    const wide = of({ values: { ...VALUES, G: 0, "support width": 4.5 } });
    expect(wide("rolling shear").demand).toBeCloseTo((2.5 * 91.5) / 2 / 12, 9);
    expect(wide("bending").demand).toBeCloseTo(of()("bending").demand, 9);
    expect(wide("deflection").demand).toBeCloseTo((5 * 1.5 * 91.75 ** 4) / (384 * 1.6e6 * 3.375), 9);
    const thin = of({ values: { ...VALUES, G: 0, "support width": 0.1 } });
    expect(thin("deflection").demand).toBeCloseTo((5 * 1.5 * 96 ** 4) / (384 * 1.6e6 * 3.375), 9);
    expect(() => of({ values: { ...VALUES, "support width": 96 } })).toThrow(/no clear span/);
  });
  test("plywood's factor C in place of G", () => {
    const check = of({ values: { ...VALUES, C: 120, thickness: 0.75, "support width": 1.5 } });
    const bent = (5 * 1.5 * 94.75 ** 4) / (384 * 1.6e6 * 3.375);
    expect(check("deflection").demand).toBeCloseTo(
      bent + (120 * 18 * 0.75 ** 2 * 94.5 ** 2) / ((1270 * 1.6e6 * 3.375) / 1.1),
      9,
    );
  });
  test("shear along the grain beside or in place of rolling shear", () => {
    const { Fs: _fs, ...rest } = VALUES;
    expect(of({ values: { ...rest, Fv: 150 } })("shear").capacity).toBeCloseTo(240, 9);
    expect(panelChecks({ ...CASE, values: { ...rest, Fv: 150 } }).map((c) => c.check)).not.toContain("rolling shear");
    expect(of({ values: { ...VALUES, Fv: 150 } })("shear").demand).toBe(of()("rolling shear").demand);
  });
  test("strength level: format conversion, resistance, time", () => {
    const check = of({ use: { ...asd("live"), method: "strength" } });
    expect(check("bending").capacity).toBeCloseTo(1800 * 2.54 * 0.85 * 0.8, 9);
    expect(check("rolling shear").capacity).toBeCloseTo(50 * 2.88 * 0.75 * 0.8, 9);
    expect(() => of({ use: { ...asd(1.15), method: "strength" } })).toThrow(BadInput);
  });
  test("the value that is missing is named", () => {
    for (const name of ["E", "Fb", "I", "S", "Q", "G", "thickness", "Fs"] as const) {
      const { [name]: _left, ...rest } = VALUES;
      expect(() => of({ values: rest })).toThrow(`The panel's ${name} along the grain is missing`);
    }
    expect(() => of({ grain: "across", values: { ...VALUES, Fb: 0 } })).toThrow(/Fb across the grain/);
    const { I: _i, ...noI } = VALUES;
    expect(() => of({ values: noI })).toThrow(/for a solid section of 1.5 in it would be 3.375/);
    const { S: _s, ...noS } = VALUES;
    expect(() => of({ values: noS })).toThrow(/would be 4.5/);
    const { Q: _q, ...noQ } = VALUES;
    expect(() => of({ values: noQ })).toThrow(/would be 12/);
    const { I: _i2, thickness: _t, ...bare } = VALUES;
    expect(() => of({ values: bare })).toThrow(/report\.$/);
  });
  test("wet service is in the report", () => {
    expect(() => of({ use: asd("wind", true) })).toThrow(/wet use/);
  });
  test("a floor panel: vibration as a caution, with how fast it swings", () => {
    const tape = new Tape();
    const check = of({ use: asd("live"), servicePsf: 30 }, tape);
    const hertz = 3.52 / Math.sqrt(check("deflection").demand);
    expect(Number(tape.steps.find((s) => s.symbol === "f1")?.value)).toBeCloseTo(hertz, 2);
    expect(tape.cautions.join(" ")).toContain("under the 8 Hz");
    const stiff = new Tape();
    of({ use: asd("live"), spanIn: 48 }, stiff);
    expect(stiff.cautions.join(" ")).toContain("Vibration");
    expect(stiff.cautions.join(" ")).not.toContain("under the 8 Hz");
    const two = new Tape();
    of({ use: asd("live"), spans: 2 }, two);
    expect([two, stiff].map((t) => t.cautions.join(" ").includes("loaded alike"))).toEqual([true, false]);
    const wind = new Tape();
    of({}, wind);
    expect(wind.cautions).toEqual([]);
    expect(wind.pictures.map((p) => p.kind)).toEqual(["panel-bays"]);
    expect(wind.assumptions.join(" ")).toContain("whole pressure");
  });
  test("frequency is that of the mass on the stiffness", () => {
    // (pi/2) sqrt(E I / (m L^4)) with E I 1e6 lb in2, 0.5 lb/in, 60 in.
    const sag = (5 * 0.5 * 60 ** 4) / (384 * 1e6);
    expect(frequency(sag)).toBeCloseTo((Math.PI / 2) * Math.sqrt(1e6 / ((0.5 / 386.09) * 60 ** 4)), 9);
  });
  test("ratios grow with span and pressure", () => {
    fc.assert(
      fc.property(fc.double({ min: 10, max: 200, noNaN: true }), fc.integer({ min: 1, max: 3 }), (spanIn, spans) => {
        for (const name of ["bending", "rolling shear", "deflection"]) {
          const now = of({ spanIn, spans })(name).ratio;
          expect(of({ spanIn: spanIn * 1.05, spans })(name).ratio).toBeGreaterThan(now);
          expect(of({ spanIn, spans, psf: 60, servicePsf: 36 })(name).ratio).toBeCloseTo(2 * now, 6);
        }
      }),
      { numRuns: 40 },
    );
  });
});

describe("spans of a panel", () => {
  test("at each span its check just holds; the least first", () => {
    for (const spans of [1, 2, 3]) {
      const list = panelSpans({ ...CASE, spans, values: { ...VALUES, "support width": 4.5 } });
      expect(list).toHaveLength(3);
      for (const { check, spanIn } of list) {
        const ratio = of({ spans, spanIn, values: { ...VALUES, "support width": 4.5 } })(check).ratio;
        if (spanIn < 240) expect(ratio).toBeCloseTo(1, 6);
        else expect(ratio).toBeLessThanOrEqual(1);
      }
      expect(list.map((s) => s.spanIn)).toEqual(list.map((s) => s.spanIn).sort((a, b) => a - b));
    }
  });
  test("not over 240 in, and a pressure that nothing carries is refused", () => {
    expect(panelSpans({ ...CASE, psf: 0.01, servicePsf: 0.01 }).map((s) => s.spanIn)).toEqual([240, 240, 240]);
    expect(() => panelSpans({ ...CASE, psf: 1e6 })).toThrow(/does not carry/);
  });
  test("the working is that of the least span and ends with it", () => {
    const tape = new Tape();
    const list = panelSpans(CASE, tape);
    expect(tape.steps.at(-1)?.value).toBe(list[0]?.spanIn);
    expect(tape.pictures).toHaveLength(1);
  });
});
