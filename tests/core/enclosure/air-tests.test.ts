import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type AirTightness, ach50Of } from "../../../src/core/enclosure/loss/air-tightness.ts";
import { airTightness } from "../../../src/functions/basis/glossary/air-tightness.ts";
import { cautions, says, value, working } from "./called.ts";

const HOUSE = { volumeFt3: 20_000, areaFt2: 5000, exponent: 0.65 };
const notes = { assume: () => undefined, caution: () => undefined };
const read = (text: string | number) => airTightness.read(text, "air tightness", notes).value;

describe("results of a pressurization test", () => {
  test("air changes in any of their names are themselves", () => {
    for (const text of ["1.2", "1.2 ACH50", "1.2 ach", "1.2 n50", "1.2 1/h", "1.2 /h at 50 Pa", 1.2]) {
      expect(read(text), String(text)).toEqual({ kind: "changes", ach50: 1.2 });
    }
    expect(ach50Of({ kind: "changes", ach50: 1.2 }, { volumeFt3: undefined, areaFt2: undefined, exponent: 0.65 })).toBe(
      1.2,
    );
  });

  test("flows, flows over the area and leakage areas, with their pressures", () => {
    const flow = (text: string) => read(text);
    for (const text of ["400 cfm50", "400 cfm 50", "400 CFM at 50 Pa", "400 cfm", "400 ft3/min @ 50 Pa"]) {
      expect(flow(text), text).toEqual({ kind: "flow", cfm: 400, pa: 50 });
    }
    expect(flow("400 cfm75")).toEqual({ kind: "flow", cfm: 400, pa: 75 });
    for (const text of ["0.15 cfm50/ft2", "0.15 cfm/sf", "0.15 cfm/ft² at 50 Pa"]) {
      expect(flow(text), text).toEqual({ kind: "per area", cfmFt2: 0.15, pa: 50 });
    }
    expect(flow("0.25 cfm75/ft2")).toEqual({ kind: "per area", cfmFt2: 0.25, pa: 75 });
    for (const text of ["0.8 m3/(h m2)", "q50 0.8", "0.8 m³/h/m²", "q50 = 0.8", "0.8 m3/h m2"]) {
      expect(flow(text), text).toMatchObject({ kind: "per area", cfmFt2: expect.closeTo(0.0437445, 6), pa: 50 });
    }
    expect(flow("0.1 L/(s m2) at 75 Pa")).toMatchObject({ cfmFt2: expect.closeTo(0.019685, 6), pa: 75 });
    for (const text of ["55 in2 ELA", "ELA 55 sq in", "354.84 cm2 ELA"]) {
      expect(flow(text), text).toMatchObject({ kind: "hole", in2: expect.closeTo(55, 3), pa: 4, discharge: 1 });
    }
    expect(flow("EqLA 103 in2")).toMatchObject({ kind: "hole", in2: 103, pa: 10, discharge: 0.611 });
  });

  test("what is no result is refused in a sentence", () => {
    for (const text of ["3 bananas", "-400 cfm50", "0 cfm50", "55 in2", "400 cfm50 ELA"]) {
      expect(() => read(text), text).toThrow(/Write it like|above 0/);
    }
    expect(() => read(400)).toThrow(/at most 50/);
  });

  test("air changes go with the flow and against the volume, and by the power law with the pressure", () => {
    const positive = (max: number) => fc.double({ min: 0.1, max, noNaN: true });
    fc.assert(
      fc.property(positive(500), fc.double({ min: 10, max: 100, noNaN: true }), (cfm, pa) => {
        const at = (test: AirTightness, volumeFt3 = 20_000) => ach50Of(test, { ...HOUSE, volumeFt3 });
        const one = at({ kind: "flow", cfm, pa });
        expect(at({ kind: "flow", cfm: 2 * cfm, pa })).toBeCloseTo(2 * one, 6);
        expect(at({ kind: "flow", cfm, pa }, 40_000)).toBeCloseTo(one / 2, 6);
        expect(at({ kind: "per area", cfmFt2: cfm / 5000, pa })).toBeCloseTo(one, 9);
        expect(one).toBeCloseTo(((cfm * 60) / 20_000) * (50 / pa) ** 0.65, 6);
      }),
    );
  });

  test("a hole passes by the root of the pressure", () => {
    const hole = (pa: number) => ach50Of({ kind: "hole", in2: 30, pa, discharge: 1 }, { ...HOUSE, exponent: 0.5 });
    // With n 0.5 the flow at 50 Pa is the same from whatever pressure the area was told at.
    expect(hole(4)).toBeCloseTo(hole(10), 9);
  });

  test("the functions take them, ask for what is lacking, and hold a house to a target of its own", () => {
    const basis = (...rows: (readonly (string | number)[])[]) => [
      ["Basis", "", ""],
      ...rows.map((r) => [...r, ""].slice(0, 3)),
    ];
    expect(value("AIR_LEAKAGE", "400 cfm50", 20_000)).toBeCloseTo(400, 9);
    // The exponent of the call turns the result back to 50 Pa too.
    expect(value("AIR_LEAKAGE", "400 cfm75", 20_000, 75, 0.5)).toBeCloseTo(400, 9);
    expect(value("AIR_LEAKAGE", "400 cfm75", 20_000, 75, 0.8)).toBeCloseTo(400, 9);
    expect(says("AIR_LEAKAGE", "0.15 cfm/ft2", 20_000)).toMatch(/Enclosure area is missing/);
    expect(value("AIR_LEAKAGE", "0.15 cfm/ft2", 20_000, null, null, basis(["enclosure area", 5000]))).toBeCloseTo(
      750,
      9,
    );
    expect(says("AIR_CODE", "400 cfm50", null, basis(["climate zone", "5A"]))).toMatch(/House volume is missing/);
    expect(
      value("AIR_CODE", basis(["air tightness", 400, "cfm50"], ["house volume", 20_000], ["climate zone", "5A"])),
    ).toEqual([[3, expect.closeTo(1.2, 9), "met"]]);
    expect(value("AIR_CODE", 1.2, null, basis(["air tightness target", 0.6]))).toEqual([[0.6, 1.2, "not met"]]);
    expect(value("AIR_CODE", 0.6, 20_000, basis(["air tightness target", "200 cfm50"]))).toEqual([
      [expect.closeTo(0.6, 9), 0.6, "met"],
    ]);
    expect(working("AIR_CODE", 1.2, null, basis(["air tightness target", 0.6])).assumptions.join()).toMatch(
      /target that is given/,
    );
    expect(cautions("AIR_CODE", 25, null, basis(["climate zone", "5A"]))).toMatch(/air changes an hour at 50 Pa\?/);
    expect(Number(value("AIR_NATURAL", "400 cfm50", 20_000))).toBeCloseTo(Number(value("AIR_NATURAL", 1.2, 20_000)), 9);
  });
});
