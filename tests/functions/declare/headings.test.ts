import { describe, expect, test } from "vitest";
import { optional } from "../../../src/functions/declare/param.ts";
import { length, number } from "../../../src/functions/declare/scalar.ts";
import { table } from "../../../src/functions/declare/table.ts";
import { text } from "../../../src/functions/declare/word.ts";

const wall = table(
  {
    wall: text({ says: "name" }),
    length: length("ft", { says: "length", min: 0, max: 500 }),
    setUp: optional(number({ says: "set-up" }), 0, "none"),
    beam: optional(text({ says: "a name that ends like a unit", heads: ["load in"] }), "", ""),
  },
  { says: "walls" },
);
const notes = { assume: () => {}, caution: () => {} };
const read = (...heads: string[]) => wall.read([heads, [2, "north", 12]], "walls", notes).value[0];

describe("headings with units", () => {
  test.each(["length", "length ft", "length, ft", "length (ft)", "Length [ft]", "LENGTH FT"])("%s", (head) => {
    expect(read("set-up h", "wall", head)).toMatchObject({ wall: "north", length: 12, setUp: 2 });
  });

  test.each(["set-up h", "setup h", "set up", "set-up, h"])("%s names the column setUp", (head) => {
    expect(read(head, "wall", "length ft")).toMatchObject({ setUp: 2 });
  });

  test.each(["set\u00a0up", "set  up", " Set\tup "])("%j: any spaces are one", (head) => {
    expect(read(head, "wall", "length\u00a0ft")).toMatchObject({ setUp: 2, length: 12 });
  });

  test.each(["length in", "length, in", "length (m)"])("%s over a column in feet is refused", (head) => {
    expect(() => read("set-up", "wall", head)).toThrow(/read in ft/);
  });

  test("a name whose last word is a unit too stays the name that it is", () => {
    expect(
      wall.read(
        [
          ["wall", "length ft", "load in"],
          ["north", 12, "x"],
        ],
        "walls",
        notes,
      ).value[0],
    ).toMatchObject({ beam: "x" });
  });

  test("an unknown heading is still named", () => {
    expect(() => read("set-up", "wall", "lenght ft")).toThrow(/"lenght ft"/);
  });
});

describe("tables stacked one above the other", () => {
  const stacked = (...second: (string | number)[][]) =>
    wall.read([["wall", "length ft"], ["north", 12], ...second], "walls", notes).value;

  test("each with its headings, in an order of its own", () => {
    expect(stacked(["length ft", "wall"], [9, "south"])).toMatchObject([
      { wall: "north", length: 12, row: 2 },
      { wall: "south", length: 9, row: 4 },
    ]);
  });

  test("the second without headings goes on in the order of the first", () => {
    expect(stacked(["south", 9])).toMatchObject([{ wall: "north" }, { wall: "south", length: 9 }]);
  });

  test("a heading that is not known is named with its row", () => {
    expect(() => stacked(["wall", "length ft", "hight"], ["south", 9, 8])).toThrow(/"hight".*row 3 of walls/);
  });

  test("a narrower table, which VSTACK fills up with #N/A, is told from a value that is wrong", () => {
    const gap = { error: "#N/A" };
    const rows =
      (...cells: (string | number | { error: string })[]) =>
      () =>
        wall.read([["north", 12, 2], cells], "walls", notes);
    expect(rows("south", 9, gap)).toThrow(/set up in row 2 of walls and all behind it hold #N\/A.*IFNA\(VSTACK/);
    expect(rows("south", gap, 3)).toThrow(/length in row 2 of walls holds #N\/A/);
    expect(rows("south", 9, { error: "#REF!" })).toThrow(/holds #REF!/);
  });

  test("a length that happens to be called wall is a value", () => {
    expect(stacked(["wall", 9])).toMatchObject([{ wall: "north" }, { wall: "wall", length: 9 }]);
  });
});
