import { expect, test } from "vitest";
import { reportLook, reportRuns } from "../../src/workbook/report.ts";

const long = "A sentence that is much longer than any column may be, and longer still than that.";
const rows = [
  ["Title", "", ""],
  ["Project", "", ""],
  [long, "", ""],
  ["", "", ""],
  ["Kind", "What", "Cells"],
  ["Caution", long, "A1"],
  ["Source", "short", "Wall!B2"],
  ["", "", ""],
  ["Result", "Value", "Cell"],
  ["WIND", 3.5, "B2"],
];

test("a list has a heading behind an empty row; what stands alone in its row runs on", () => {
  expect(reportLook(rows).roles).toEqual([
    ...["title", "sentence", "sentence", "sentence", "heading", "row", "row", "sentence", "heading", "row"],
  ]);
});

test("columns are as wide as their lists, not as their sentences, within reason", () => {
  expect(reportLook(rows).widths).toEqual([10, 70, 10]);
  expect(reportLook([["Title"], [], ["Kind", "What"], ["x".repeat(40), "y".repeat(50)]]).widths).toEqual([28, 50]);
  expect(reportLook([["a", "b"]]).widths).toEqual([10, 10]);
  expect(reportLook([])).toEqual({ roles: [], widths: [] });
});

test("rows of one kind that follow each other are one run", () => {
  expect(reportRuns(reportLook(rows).roles).map(({ role, start, count }) => `${role} ${start} ${count}`)).toEqual([
    ...["title 0 1", "sentence 1 3", "heading 4 1", "row 5 2", "sentence 7 1", "heading 8 1", "row 9 1"],
  ]);
});
