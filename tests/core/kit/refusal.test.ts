import { describe, expect, test } from "vitest";
import { BadInput, OutOfRange, plain, refused, sentence, within } from "../../../src/core/kit/refusal.ts";
import { Tape } from "../../../src/core/kit/tape.ts";

test.each([
  [1.23456789, "1.23457"],
  [123456.7, "123457"],
  [0.1 + 0.2, "0.3"],
  [-2.5, "-2.5"],
  [1234567, "1234570"],
])("%d is written %s: six significant digits", (value, text) => {
  expect(plain(value)).toBe(text);
});

describe("limits", () => {
  const at = (value: number, unit = "ft") => within("The height", value, 15, 500, unit, "Table 26.10-1");

  test("both ends belong to the range, what lies past them and what is no number does not", () => {
    for (const inside of [15, 200, 500]) expect(() => at(inside)).not.toThrow();
    for (const outside of [14.999, 500.001, -15, Number.NaN, Number.POSITIVE_INFINITY])
      expect(() => at(outside)).toThrow(OutOfRange);
  });

  test.each([
    [500.001, "500.001"],
    [500.00001, "500.00001"],
    [500 + 2 ** -44, "500.0000000000001"],
    [14.999_999_9, "14.9999999"],
    [14.99999, "14.99999"],
    [700.123456, "700.123"],
  ])("%d is printed as %s: never as a number that the range allows", (value, text) => {
    expect(() => at(value)).toThrow(`The height is ${text} ft: the method holds from 15 to 500 ft`);
    expect(refused(value, (x) => x >= 15 && x <= 500)).toBe(text);
  });

  test("the sentence names value, limits, unit and source", () => {
    expect(() => at(700)).toThrow(/^The height is 700 ft: the method holds from 15 to 500 ft \(Table 26.10-1\)\. Use/);
    expect(() => at(700, "")).toThrow(/^The height is 700: the method holds from 15 to 500 \(/);
  });
});

test("a refusal keeps its three parts and joins them with one stop", () => {
  const said = new BadInput("The roof is 12", "it has no unit", "Write 12 ft.");
  expect([said.what, said.why, said.todo]).toEqual(["The roof is 12", "it has no unit", "Write 12 ft."]);
  expect(said.message).toBe("The roof is 12: it has no unit. Write 12 ft.");
  expect(sentence({ what: "a", why: "b", todo: "c" })).toBe("a: b. c.");
});

test("what is said twice stands once", () => {
  const tape = new Tape();
  for (const what of ["dry", "dry", "level"]) {
    tape.assume(what);
    tape.caution(what);
  }
  expect([tape.assumptions, tape.cautions]).toEqual([
    ["dry", "level"],
    ["dry", "level"],
  ]);
});
