import { expect, test } from "vitest";
import { asEntered, sheetName } from "../../../src/hosts/excel/sheet/write-sheet.ts";

test("texts are entered as texts", () => {
  expect(["=1+1", "+1", "-1", "@x", "7-16", "plain"].map(asEntered)).toEqual([
    "'=1+1",
    "'+1",
    "'-1",
    "'@x",
    "'7-16",
    "'plain",
  ]);
  expect(["", 5, true].map(asEntered)).toEqual(["", 5, true]);
});

test.each([
  ["Basis and cautions", "Basis and cautions"],
  ["a/b:c*[d]?\\e", "a b c d e"],
  ["'quoted'", "quoted"],
  ["x".repeat(40), "x".repeat(31)],
  ["///", "Sillwork"],
  ["History", "Sillwork"],
])("sheet name %s", (asked, wanted) => {
  expect(sheetName(asked)).toBe(wanted);
});
