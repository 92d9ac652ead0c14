import { describe, expect, test } from "vitest";
import { measure, share } from "../../../src/functions/declare/scalar.ts";

function read(param: ReturnType<typeof measure>, cell: string | number): { value: number; cautions: string[] } {
  const cautions: string[] = [];
  const notes = { assume: () => {}, caution: (sentence: string) => cautions.push(sentence) };
  return { value: param.read(cell, "the rate", notes).value, cautions };
}

describe("a number in a unit that is never converted", () => {
  test.each([
    ["h", "12 h", 12],
    ["h", "12", 12],
    ["$/h", "34 $/h", 34],
    ["$/h", "$34", 34],
    ["$", "$1,200", 1200],
    ["$", "-5 $", -5],
  ])("in %s: %s", (unit, text, value) => {
    expect(read(measure(unit, { says: "a rate" }), text).value).toBe(value);
  });

  test("a word that holds the letters of the unit is quoted whole", () => {
    expect(() => read(measure("h", { says: "a rate" }), "hours each")).toThrow('"hours each" is not a number');
  });
});

describe("a share", () => {
  const waste = share({ says: "a waste" });

  test.each(["0.1%", 0.001, "0.004"])("%s is likely a percent that was divided twice, and a caution asks", (cell) => {
    const { value, cautions } = read(waste, cell);
    expect(cautions).toEqual([expect.stringContaining("less than half a percent")]);
    expect(cautions[0]).toContain(`is ${Number((value * 100).toPrecision(6))} meant?`);
  });

  test.each([0.005, "0.5%", 0.1, "10%", 1, "none", 0])("%s is taken as it is", (cell) => {
    expect(read(waste, cell).cautions).toEqual([]);
  });
});

describe("a number next to nothing", () => {
  const load = (above?: number) =>
    measure("psf", { says: "a load", ...(above === undefined ? { min: 0 } : { above }) });

  test.each([5e-324, -5e-324, 1e-40, "1e-40 psf"])("%s is what rounding left, and is not calculated with", (cell) => {
    expect(() => read(load(), cell)).toThrow(/The rate is -?(5e-324|1e-40) psf.*Give 0, or the number that is meant/);
    expect(() => read(load(0), cell)).toThrow(/Give the number that is meant/);
  });

  test("0 and what a thin layer or a tight one may be are taken", () => {
    expect(read(load(), 0).value).toBe(0);
    expect(read(load(0), 1e-20).value).toBe(1e-20);
  });
});
