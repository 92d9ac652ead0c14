import { expect, test } from "vitest";
import { asTyped, callsOurs } from "../../../src/hosts/excel/formula.ts";
import { asEntered, sheetName } from "../../../src/hosts/excel/write-sheet.ts";

test.each([
  ["=SILL.FTIN(A1)", true],
  ["=1+sill.ftin(A1)", true],
  ["=_xldudf_SILL_FTIN(A1)", true],
  ["=SUM([2]!_xldudf_SILL_FTIN(A1))", true],
  ["=WINDSILL.FTIN(A1)", false],
  ["=SILL+1", false],
  ['="SILL.FTIN("&A1', false],
  ["='SILL.X'!A1", false],
  ["SILL.FTIN(A1)", false],
  ["", false],
  [12, false],
])("%s calls a function of ours: %s", (formula, wanted) => {
  expect(callsOurs(formula)).toBe(wanted);
});

test.each([
  ["=_xldudf_SILL_FTIN(A1)", "=SILL.FTIN(A1)"],
  ["=[2]!_xldudf_SILL_FTIN(A1)&_xldudf_sill_length(B1)", "=SILL.FTIN(A1)&SILL.LENGTH(B1)"],
  [
    '=IF(A1="_xldudf_SILL_FTIN","[2]!_xldudf_SILL_FTIN",_xldudf_SILL_FTIN(1))',
    '=IF(A1="_xldudf_SILL_FTIN","[2]!_xldudf_SILL_FTIN",SILL.FTIN(1))',
  ],
  ["=_xldudf_SILL_UNKNOWN(A1)", "=_xldudf_SILL_UNKNOWN(A1)"],
  ["=_xldudf_OTHER_FTIN(A1)", "=_xldudf_OTHER_FTIN(A1)"],
  ["=SILL.FTIN(A1)", "=SILL.FTIN(A1)"],
])("%s is typed %s", (stored, typed) => {
  expect(asTyped(stored)).toBe(typed);
});

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
