import { expect, test } from "vitest";
import { number } from "../../../src/functions/declare/scalar.ts";
import { table } from "../../../src/functions/declare/table.ts";
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
