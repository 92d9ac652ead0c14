import { cellFunction, preliminary, quantityOf, tableOf } from "../../src/functions/declare/cell-function.ts";
import { optional } from "../../src/functions/declare/param.ts";
import { length, number, quantity } from "../../src/functions/declare/scalar.ts";
import { table } from "../../src/functions/declare/table.ts";
import { choice, text } from "../../src/functions/declare/word.ts";

/** Functions for the tests of the pane, small enough to reckon in the head. */
export const push = cellFunction({
  name: "WIND_PUSH",
  family: "Wind",
  summary: "A push that grows with the speed.",
  params: {
    speed: quantity("mph", {
      says: "wind speed",
      min: 0,
      max: 300,
      usual: { min: 90, max: 200, ask: "is it a gust?" },
    }),
    height: length("ft", { says: "height above ground", min: 0, max: 500, source: "a table" }),
    exposure: choice(["B", "C"], { says: "surface upwind" }),
    factor: optional(number({ says: "a factor" }), 1, "factor 1: flat site"),
  },
  returns: quantityOf("psf", "the push"),
  sources: ["A table of pushes"],
  cautions: [preliminary("wind")],
  example: {
    args: { speed: 100, height: "12'-6\"", exposure: "C" },
    gives: 100,
    within: 0,
    source: "exact arithmetic",
  },
  refuses: [{ args: {}, says: "" }],
  notFor: "none, because it is for tests.",
  run: ({ speed, factor }) => speed * factor,
});

export const count = cellFunction({
  name: "PART_COUNT",
  family: "Takeoff and cutting",
  summary: "Parts and their number.",
  params: {
    parts: table({ name: text({ says: "name" }), pieces: number({ says: "how many" }) }, { says: "the parts" }),
    unit: optional(text({ says: "unit of the parts" }), "each", "each"),
  },
  returns: tableOf("name and number", [
    ["name", ""],
    ["pieces", ""],
  ]),
  sources: ["Counting"],
  example: {
    args: {
      parts: [
        ["stud", 2],
        ['plate, "long"', 3],
      ],
    },
    gives: [
      ["stud", 2],
      ['plate, "long"', 3],
    ],
    within: 0,
    source: "exact arithmetic",
  },
  refuses: [{ args: {}, says: "" }],
  notFor: "none, because it is for tests.",
  run: ({ parts }) => parts.map((p) => [p.name, p.pieces]),
});

export const samples = [push, count] as const;
