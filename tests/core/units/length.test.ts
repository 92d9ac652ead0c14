import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { BadInput } from "../../../src/core/kit/refusal.ts";
import { Tape } from "../../../src/core/kit/tape.ts";
import { formatLength, parseLength } from "../../../src/core/units/length.ts";
import { isUnit } from "../../../src/core/units/quantity.ts";
import { parseSlope, slopeAs } from "../../../src/core/units/slope.ts";
import { registry } from "../../../src/functions/registry.ts";

// Exact arithmetic on the definitions 1 ft = 12 in, 1 in = 25.4 mm.
test.each([
  [`12'-6 1/2"`, 150.5],
  [`12' 6.5"`, 150.5],
  [`12 ft 6.5 in`, 150.5],
  [`12 feet 6 1/2 inches`, 150.5],
  [`12'6`, 150],
  [`6 1/2 in`, 6.5],
  [`6-1/2"`, 6.5],
  [`150.5in`, 150.5],
  [`3.8 m`, 3800 / 25.4],
  [`25.4 mm`, 1],
  [`2.54 cm`, 1],
  [`1 yd`, 36],
  [`-2'`, -24],
  [`−2′ 6″`, -30],
  [`12′-6½″`, 150.5],
  [`⅝"`, 0.625],
  [`1,200 ft`, 14400],
  [`.5 ft`, 6],
  [`5 1/2 ft`, 66],
  [`3`, 36],
  [`12' - 6"`, 150],
])("%s is %f in", (text, inches) => {
  expect(parseLength(text, "ft")).toBeCloseTo(inches, 10);
});

test.each([
  "",
  "tall",
  "12 psf",
  "12'-",
  "1/0 in",
  "6 1/2 1/2 in",
  "12'' 6'",
  "--2'",
  "1,20 ft",
  "6:12",
  "12 in 6 in",
  "2 m 6 in",
  "6 6",
  "1e308 ft",
])("%s is refused", (text) => {
  expect(() => parseLength(text, "ft")).toThrow(BadInput);
});

describe("formatLength", () => {
  test.each([
    [150.5, 16, `12'-6 1/2"`],
    [11.999, 16, `1'-0"`],
    [0, 16, `0'-0"`],
    [-0.001, 16, `0'-0"`],
    [-30.25, 4, `-2'-6 1/4"`],
    [0.03125, 32, `0'-0 1/32"`],
    [0.03125, 16, `0'-0 1/16"`],
  ])("%f in to 1/%i is %s", (inches, denominator, text) => {
    expect(formatLength(inches, denominator)).toBe(text);
  });

  test("what is written is read back", () => {
    fc.assert(
      fc.property(fc.integer({ min: -200_000, max: 200_000 }), fc.constantFrom(1, 2, 4, 8, 16, 32, 64), (parts, d) => {
        expect(parseLength(formatLength(parts / d, d), "in")).toBeCloseTo(parts / d, 9);
      }),
    );
  });
});

test("slopes: the forms agree", () => {
  fc.assert(
    fc.property(fc.double({ min: 0.1, max: 40, noNaN: true }), (rise) => {
      const degrees = parseSlope(`${rise.toFixed(3)}:12`);
      expect(slopeAs(degrees, "ratio")).toBeCloseTo(Number(rise.toFixed(3)) / 12, 9);
      expect(slopeAs(degrees, "rake")).toBeCloseTo(Math.hypot(1, Number(rise.toFixed(3)) / 12), 9);
    }),
  );
});

test("the working of a slope names the form that it gives", () => {
  const steps = (form: "ratio" | "rake") => {
    const tape = new Tape();
    slopeAs(45, form, tape);
    return tape.steps.map((s) => s.symbol);
  };
  expect(steps("ratio")).toEqual(["theta", "rise/run"]);
  expect(steps("rake")).toEqual(["theta", "rake factor"]);
  expect(slopeAs(45, "degrees")).toBe(45);
});

test("every unit that an argument is declared in is known to the converter", () => {
  for (const fn of registry) {
    for (const { name, param } of fn.params) {
      const units = [param.unit, ...(param.columns ?? []).map((c) => c.unit)];
      for (const unit of units)
        if (!["", "%", "$"].includes(unit)) expect(isUnit(unit), `${fn.name} ${name}: ${unit}`).toBe(true);
    }
  }
});
