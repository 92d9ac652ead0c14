import { expect, test } from "vitest";
import { number } from "../../../src/functions/declare/scalar.ts";
import { type TableOptions, table } from "../../../src/functions/declare/table.ts";
import { choice, text } from "../../../src/functions/declare/word.ts";

const notes = { assume: () => {}, caution: () => {} };
const value = number({ says: "a value" });
const rowsRead = (columns: Parameters<typeof table>[0], rows: (string | number)[][]) =>
  (table(columns, { says: "rows" }).read(rows, "rows", notes as never) as { value: readonly unknown[] }).value.length;

test("a blank row that arrives as zeros is no row where its rows are named by a text or by a word to choose", () => {
  expect(
    rowsRead({ name: text({ says: "a name" }), value }, [
      ["a", 1],
      [0, 0],
    ]),
  ).toBe(1);
  expect(
    rowsRead({ load: choice(["D", "S"], { says: "a load" }), value }, [
      ["D", 1],
      [0, 0],
      ["S", 0],
    ]),
  ).toBe(2);
});

test("a 0 that could be meant is read: numbers alone, and a choice that has 0", () => {
  expect(
    rowsRead({ value, other: value }, [
      [1, 1],
      [0, 0],
    ]),
  ).toBe(2);
  expect(
    rowsRead({ code: choice(["0", "1"], { says: "a code" }), value }, [
      ["1", 1],
      [0, 0],
    ]),
  ).toBe(2);
});

const weight = number({ says: "a weight", above: 0 });

test("a row of zeros is blank where no column that is wanted can be 0, and a 0 elsewhere is refused", () => {
  expect(
    rowsRead({ weight, more: weight }, [
      [1, 2],
      [0, 0],
    ]),
  ).toBe(1);
  expect(() =>
    rowsRead({ weight, more: weight }, [
      [1, 2],
      [0, 3],
    ]),
  ).toThrow("above 0");
});

/** What reading rows cautions against. */
function cautioned(rows: (string | number)[][], options: Partial<TableOptions> = {}): string[] {
  const said: string[] = [];
  const keep = { assume: () => {}, caution: (sentence: string) => said.push(sentence) };
  table({ part: text({ says: "a part" }), weight }, { says: "rows", ...options }).read(rows, "parts", keep as never);
  return said;
}

test.each(["Total", "total weight", "Grand total", "Subtotal", "sub-total", "SUM"])(
  "a row named %s may sum those above it, and a caution asks",
  (name) => {
    const rows = [
      ["a", 1],
      ["b", 2],
    ];
    expect(cautioned([...rows, [name, 3]])).toEqual([
      `Row 3 of parts is named ${name} and counts like any other: does it sum the rows above?`,
    ]);
    expect(cautioned([...rows, [name, 3], ["c", 4]])).toHaveLength(1);
    expect(cautioned([[name, 3], ...rows])).toEqual([]);
    expect(cautioned([[name, 3]])).toEqual([]);
    expect(cautioned([...rows, [name, 3]], { knowsTotals: true })).toEqual([]);
  },
);

test("a row that stands there twice is asked about where rows should be unlike, once for all", () => {
  const rows = [
    ["a", 1],
    ["a", 2],
    ["a", 1],
    ["b", 1],
    ["a", 2],
  ];
  expect(cautioned(rows)).toEqual([]);
  expect(cautioned(rows, { unlike: true })).toEqual([
    "Row 3, 5 of parts is the same as one above: was it copied twice?",
  ]);
});
