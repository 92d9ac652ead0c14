import { expect, test } from "vitest";
import { changesOf, parseRange, rangeText } from "../../src/workbook/named-rows.ts";

test.each([
  ["Site!$A$3:$C$9", { first: { sheet: "Site", row: 2, column: 0 }, rows: 7, columns: 3 }],
  ["'Site basis'!$AA$1:$AC$2", { first: { sheet: "Site basis", row: 0, column: 26 }, rows: 2, columns: 3 }],
  ["'Bob''s: site'!$B$4", { first: { sheet: "Bob's: site", row: 3, column: 1 }, rows: 1, columns: 1 }],
])("%s is read and written the same", (text, range) => {
  expect(parseRange(text)).toEqual(range);
  expect(rangeText(range)).toBe(text);
});

test("one cell is a range of one; a constant is none", () => {
  expect(parseRange("=Site!$B$4")).toEqual({ first: { sheet: "Site", row: 3, column: 1 }, rows: 1, columns: 1 });
  for (const text of ["=0.08", "=#REF!", "", "=SUM(A1:A2)"]) expect(parseRange(text)).toBeUndefined();
});

test("only cells that differ are written, and rows beyond the last are new", () => {
  const before = [
    ["Basis", "Value"],
    ["Wind speed", 110],
    ["", ""],
  ];
  const after = [
    ["Basis", "Value", "Note"],
    ["Wind speed", 120],
    ["", ""],
    ["State", "WI"],
  ];
  expect(changesOf(before, after)).toEqual({
    cells: [{ row: 1, column: 1, value: 120 }],
    added: [["State", "WI"]],
  });
});
