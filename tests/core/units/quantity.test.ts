import fc from "fast-check";
import { create, createUnitDependencies, unitDependencies } from "mathjs";
import { describe, expect, test } from "vitest";
import { BadInput } from "../../../src/core/kit/refusal.ts";
import { parseLength } from "../../../src/core/units/length.ts";
import { convert, fromInches, isUnit, parseQuantity } from "../../../src/core/units/quantity.ts";
import { parseSlope } from "../../../src/core/units/slope.ts";

/** A general units library, as a peer that shares nothing with the table here. */
const peer = create({ ...unitDependencies, ...createUnitDependencies });

describe("a peer agrees", () => {
  test.each([
    ["ft", "m", "ft", "m"],
    ["mile", "km", "mile", "km"],
    ["yd3", "ft3", "yard^3", "ft^3"],
    ["in4", "mm4", "inch^4", "mm^4"],
    ["mil", "in", "mil", "inch"],
    ["gal", "l", "gallon", "litre"],
    ["fl oz", "ml", "floz", "ml"],
    ["quart", "pint", "quart", "pint"],
    ["lb", "kg", "lbm", "kg"],
    ["oz", "g", "ounce", "gram"],
    ["grain", "mg", "grain", "mg"],
    ["ton", "tonne", "ton", "tonne"],
    ["oz/ft2", "kg/m2", "ounce/ft^2", "kg/m^2"],
    ["pcf", "kg/m3", "lbm/ft^3", "kg/m^3"],
    ["lbf", "N", "lbf", "N"],
    ["psf", "kPa", "lbf/ft^2", "kPa"],
    ["plf", "kN/m", "lbf/ft", "kN/m"],
    ["ft-lb", "J", "ft lbf", "J"],
    ["kip ft", "kN m", "1000 lbf ft", "kN m"],
    ["mph", "m/s", "mile/hour", "m/s"],
    ["cfm", "l/s", "ft^3/minute", "litre/s"],
    ["Btu", "kJ", "BTU", "kJ"],
    ["therm", "kWh", "100000 BTU", "kWh"],
    ["MMBtu", "GJ", "1000000 BTU", "GJ"],
    ["MMBtu/yr", "kWh/yr", "1000000 BTU", "kWh"],
    ["hp", "kW", "550 ft lbf/s", "kW"],
    ["Btu/(h ft2)", "W/m2", "BTU/(hour ft^2)", "W/m^2"],
    ["W/(m K)", "Btu in/(h ft2 F)", "W/(m K)", "1.8 BTU inch/(hour ft^2 K)"],
    ["gr/(h ft2 inHg)", "ng/(s m2 Pa)", "grain/(hour ft^2 3386.389 Pa)", "1e-12 kg/(s m^2 Pa)"],
    ["atm", "psi", "atm", "lbf/inch^2"],
    ["bar", "mbar", "bar", "mbar"],
    ["rad", "deg", "rad", "deg"],
    ["week", "h", "week", "hour"],
  ])("%s in %s", (from, to, theirFrom, theirTo) => {
    const scale = (text: string) => Number(/^[\d.e-]+(?= )/.exec(text)?.[0] ?? 1);
    const bare = (text: string) => text.replace(/^[\d.e-]+ /, "");
    const within = (text: string) => {
      const inner = /(.*)\(hour ft\^2 3386\.389 Pa\)$/.exec(text);
      return inner === null ? peer.unit(scale(text), bare(text)) : peer.unit(1 / 3386.389, `${inner[1]}(hour ft^2 Pa)`);
    };
    const want = within(theirFrom).toNumber(bare(theirTo)) / scale(theirTo);
    expect(convert(1, from, to) / want).toBeCloseTo(1, 6);
  });
});

describe("definitions are exact", () => {
  test.each([
    [1, "ft", "in", 12],
    [3, "ft", "yd", 1],
    [1, "mile", "ft", 5280],
    [1, "km", "m", 1000],
    [1, "ft2", "in2", 144],
    [1, "yd3", "ft3", 27],
    [1, "in", "mm", 25.4],
    [1, "kip", "lb", 1000],
    [1, "psi", "psf", 144],
    [1, "lb", "grain", 7000],
    [1, "lb", "oz", 16],
    [1, "ton", "lb", 2000],
    [1, "gal", "in3", 231],
    [1, "gal", "fl oz", 128],
    [1, "therm", "Btu", 100000],
    [1, "MMBtu", "therm", 10],
    [1, "MBH", "Btu/h", 1000],
    [1, "MBF", "board feet", 1000],
    [1, "h", "min", 60],
    [2, "day", "h", 48],
    [1, "perm", "gr/(h ft2 inHg)", 1],
    [1, "perm-in", "perm in", 1],
    [1, "R", "h ft2 F/Btu", 1],
    [1, "Btu in/h ft2 F", "Btu in/(h ft2 F)", 1],
    [1, "h·ft²·°F/Btu", "R", 1],
    [1, "lb/ft2", "psf", 1],
    [1, "lb/ft", "plf", 1],
    [1, "lb/in2", "psi", 1],
    [1, "ft lb", "ft-lb", 1],
    [12, "$/ft", "$/in", 1],
    [1, "sq ft", "ft2", 1],
    [1, "sq mm", "mm2", 1],
    [1, "cu mm", "mm3", 1],
    [1, "square mile", "mi2", 1],
    [1, "board_foot", "bf", 1],
    [1, "cubic yard", "cy", 1],
    [1, "square foot", "ft^2", 1],
    [5, "deg", "degrees", 5],
    [1, "unit", "each", 1],
    [8, "h/unit", "h", 8],
    [1, "m/s/s", "m s-2", 1],
    [1, "kip.in", "kip in", 1],
    [1, "kip_in", "kip in", 1],
    [240, "lb/square", "psf", 2.4],
    [1, "1/h", "1/day", 24],
  ])("%d %s is %s: %d", (value, from, to, want) => {
    expect(convert(value, from, to)).toBe(want);
  });

  test("temperatures are readings alone and differences beside other units", () => {
    expect(convert(32, "F", "C")).toBeCloseTo(0, 12);
    expect(convert(0, "C", "K")).toBe(273.15);
    expect(convert(98.6, "°F", "F")).toBe(98.6);
    expect(convert(9, "delta F", "delta C")).toBe(5);
    expect(convert(9, "F day", "C day")).toBe(5);
    expect(() => convert(70, "F", "delta F")).toThrow(/a temperature, delta F a temperature difference/);
  });

  test("a mass stands for its weight and a weight for its mass, and only once", () => {
    expect(convert(1, "kg", "N")).toBe(9.80665);
    expect(convert(9.80665, "N", "kg")).toBeCloseTo(1, 12);
    expect(convert(1, "kip", "kg")).toBeCloseTo(453.59237, 9);
    expect(convert(1, "psf", "kg/m2")).toBeCloseTo(4.882428, 6);
    expect(convert(1, "m", "m")).toBe(1);
    for (const [from, to] of [
      ["m", "m2/s2"],
      ["m2", "m3/s2"],
      ["kg2", "N2"],
    ] as const)
      expect(() => convert(1, from, to), `${from} to ${to}`).toThrow(BadInput);
  });
});

describe("what does not convert", () => {
  test.each([
    ["psf", "ft", "psf measures a pressure, ft a length"],
    ["perm in", "h", "perm in measures a permeability, h a time"],
    ["perm", "perm in", "a permeance, perm in a permeability"],
    ["R", "U", "an R-value, U a U-value. One is 1 over the other"],
    ["USI", "RSI", "One is 1 over the other"],
    ["F", "psf", "a temperature, psf a pressure"],
    ["oz/ft2", "lb", "a mass on an area, lb a mass"],
    ["lb", "h", "a mass, h a time"],
    ["ft5 lb", "ft", "ft5 lb measures a quantity in m^5 kg, ft a length"],
    // A length over a time, made of masses: no speed.
    ["h ft2 inHg/gr", "m/s", "m/s a speed"],
    ["oz/lb", "each", "a pure number. Give a unit of the same kind as each"],
    ["cfm", "mph", "a flow, mph a speed"],
  ])("%s to %s names both kinds", (from, to, says) => {
    expect(() => convert(1, from, to)).toThrow(says);
  });

  test.each([
    "",
    "furlong",
    "ft//in",
    "(ft",
    "ft)",
    "/h",
    "ft (",
    "ft2m(",
    "sq",
    "psf!",
    "12",
    "ft12",
    "1",
    "in^0",
    "furlong ft",
    "(furlong)",
  ])("%s is no unit", (word) => {
    expect(isUnit(word)).toBe(false);
    expect(() => convert(1, word, "ft")).toThrow(BadInput);
  });

  test("a unit has at most 60 characters", () => {
    const spaced = (length: number) => `ft${" ".repeat(length - 4)}in`;
    expect(convert(1, spaced(60), "in2")).toBe(12);
    expect(isUnit(spaced(61))).toBe(false);
  });

  test("any text is a unit or a sentence, quickly", () => {
    const piece = fc.constantFrom(
      "ft",
      "h",
      " ",
      "/",
      "(",
      ")",
      "2",
      "-",
      "^",
      "sq",
      "Btu",
      ".",
      "$",
      "´",
      "１",
      "\u200b",
    );
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 80 }), (parts) => {
        try {
          expect(Number.isFinite(convert(1, parts.join(""), "ft"))).toBe(true);
        } catch (error) {
          expect(error).toBeInstanceOf(BadInput);
        }
      }),
    );
  });
});

describe("conversions among units of a kind", () => {
  const kinds = [
    ["in", "ft", "yd", "mm", "m", "mile", "mil"],
    ["psf", "psi", "ksi", "Pa", "kPa", "inHg", "in. w.g.", "lb/ft2"],
    ["Btu", "therm", "MMBtu", "kWh", "J", "ft-lb"],
    ["oz/ft2", "kg/m2", "lb/ft2", "gr/in2"],
    ["perm in", "ng/(s m Pa)", "gr in/(h ft2 inHg)"],
  ];
  test("go there and back, through a third, and scale with the value", () => {
    const pick = fc.constantFrom(...kinds).chain((kind) => fc.tuple(...[0, 1, 2].map(() => fc.constantFrom(...kind))));
    fc.assert(
      fc.property(pick, fc.double({ min: 1e-3, max: 1e6, noNaN: true }), ([a = "", b = "", c = ""], value) => {
        expect(convert(convert(value, a, b), b, a) / value).toBeCloseTo(1, 12);
        expect(convert(convert(value, a, b), b, c) / convert(value, a, c)).toBeCloseTo(1, 12);
        expect(convert(2 * value, a, b) / convert(value, a, b)).toBeCloseTo(2, 12);
      }),
    );
  });
});

describe("quantities as text", () => {
  test.each([
    ["24", "psf", 24],
    ["1,200 lb", "lb", 1200],
    ["2.4 kPa", "Pa", 2400],
    ["1/2 lb", "oz", 8],
    ["2 1/2 ft", "in", 30],
    ["-4", "psf", -4],
    ["-1", "psf", -1],
    ["− 4 psf", "psf", -4],
    ["+4", "", 4],
    ["1e3", "", 1000],
    [".5", "", 0.5],
    ["２４ ｐｓｆ", "psf", 24],
    ["2\u200b4", "", 24],
    ["0.02 1/h", "1/h", 0.02],
  ])("%s as %s", (text, unit, value) => {
    expect(parseQuantity(text, unit)).toBeCloseTo(value, 12);
  });
  test("no minus before nothing", () => {
    expect(Object.is(parseQuantity("-0", ""), 0)).toBe(true);
    expect(Object.is(parseLength("-0 ft", "ft"), 0)).toBe(true);
  });
  test.each(["tall", "", "--4", "1,20", "1e999", "1/0", "4 5", "1..2", "1,2345"])("%s is no number", (text) => {
    expect(() => parseQuantity(text, "psf")).toThrow(BadInput);
  });
  test("a plain number takes no unit and no fraction", () => {
    expect(() => parseQuantity("4 lb/ft2", "")).toThrow(/carries a unit/);
    expect(() => parseQuantity("1/2", "")).toThrow(/not a number.*Write a plain number such as 24/);
    expect(() => parseQuantity("tall", "psf")).toThrow(/Write a number of psf, or/);
  });
});

test("inches go to any unit of length", () => {
  expect([fromInches(150, "ft"), fromInches(54, "yd"), fromInches(2, "in")]).toEqual([12.5, 1.5, 2]);
  expect(fromInches(10, "mm")).toBeCloseTo(254, 9);
});

describe("long and odd texts", () => {
  test.each([201, 32_767])("a text of %d characters is refused at once, and quoted in part", (length) => {
    for (const run of [
      () => parseLength("1".repeat(length), "ft"),
      () => parseQuantity("1 ".repeat(length).slice(0, length), "psf"),
      () => parseSlope("6:".repeat(length).slice(0, length)),
    ]) {
      const from = performance.now();
      expect(run).toThrow(/has \d+ characters: a value has at most 200/);
      expect(performance.now() - from).toBeLessThan(100);
    }
    expect(() => parseLength("x".repeat(200), "ft")).toThrow(/^"x{60}\.\.\." is not a length/);
    expect(() => parseLength("x".repeat(60), "ft")).toThrow(/^"x{60}" is not a length/);
  });
});

describe("slopes", () => {
  test.each([
    ["6:12", 26.565051177],
    ["6/12", 26.565051177],
    ["6 in 12", 26.565051177],
    ["6 on 12", 26.565051177],
    ["６：１２", 26.565051177],
    ["50%", 26.565051177],
    ["26.57 deg", 26.57],
    ["26.57°", 26.57],
    ["0:12", 0],
    ["12:12", 45],
  ])("%s", (text, degrees) => {
    expect(parseSlope(text)).toBeCloseTo(degrees, 8);
  });
  test.each([
    ["8", /"8:12", "8 deg" or "8%"/],
    ["0:0", /neither rise nor run/],
    ["12:0", /90 degrees/],
    ["-5 deg", /-5 degrees/],
    ["steep", /not a slope/],
    ["6:12:1", /not a slope/],
    ["6 ft", /not a slope/],
  ])("%s is refused", (text, says) => {
    expect(() => parseSlope(text)).toThrow(says);
  });
});
