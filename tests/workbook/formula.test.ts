import { expect, test } from "vitest";
import { asStored, asTyped, callsOurs, ourNames, unknownName, usesSpill } from "../../src/workbook/formula.ts";

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

test.each([
  ["=SILL.R_STACK(A1:B2)", "=_xldudf_SILL_RSTACK(A1:B2)"],
  ['=1+sill.ftin(A1)&"SILL.FTIN("', '=1+_xldudf_SILL_FTIN(A1)&"SILL.FTIN("'],
  ["='SILL.FTIN'!A1+SILL.NOSUCH(1)", "='SILL.FTIN'!A1+SILL.NOSUCH(1)"],
])("%s is stored %s", (typed, stored) => {
  expect(asStored(typed)).toBe(stored);
});

test("what is stored reads as it was typed", () => {
  for (const formula of ["=SILL.R_STACK(SILL.FTIN(1),2)", "=SUM(SILL.WIND_KZ(1,2))"]) {
    expect(asTyped(asStored(formula))).toBe(formula);
  }
});

test("the names of ours in a formula, and the first that no function has", () => {
  expect(ourNames('=SILL.FTIN(SILL.LENGTH(A1))&"SILL.SLOPE("')).toEqual(["FTIN", "LENGTH"]);
  expect(ourNames("=_xldudf_SILL_RSTACK(A1)")).toEqual(["R_STACK"]);
  expect(unknownName("=SILL.FTIN(SILL.NOSUCH(1))")).toBe("NOSUCH");
  expect(unknownName("=SILL.FTIN(1)")).toBeUndefined();
});

test.each([
  ["=SUM(B2#)", true],
  ["=INDEX($B$2#,1)", true],
  ['="B2#"', false],
  ["=B2", false],
])("%s uses what another cell spilled: %s", (formula, wanted) => {
  expect(usesSpill(formula)).toBe(wanted);
});
