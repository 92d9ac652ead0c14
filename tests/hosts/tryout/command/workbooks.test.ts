import { expect, test } from "vitest";
import { review } from "../../../../src/hosts/tryout/command/review.ts";
import { HeadlessWorkbook } from "../../../../src/hosts/tryout/engine/headless.ts";
import { placeKey, type WorkbookFile } from "../../../../src/workbook/file/model.ts";
import { writeWorkbook } from "../../../../src/workbook/file/write.ts";
import { workbook } from "../sheet/sheet.ts";

const rows = [
  ["Basis", "Value"],
  ["wind speed", 115],
  ["exposure", "C"],
  ["mean roof height", 24],
  ['=SILL.FTIN(SILL.LENGTH("3 ft"))'],
  ["=SILL.WIND_PRESSURE(Basis)"],
  ['=SILL.WIND_PRESSURE({"ASCE 7 edition","7-10"},Basis)'],
  ['=SILL.LENGTH("x")'],
  ["=1/0"],
];

async function stored(): Promise<WorkbookFile> {
  const opened = await HeadlessWorkbook.open(workbook({ Site: rows }, [["Basis", "Site!$A$1:$B$4"]]));
  const file = opened.file("0.0.9");
  opened.dispose();
  return file;
}

test("a workbook's errors with their sentences, its cautions with their cells, and two editions in it", async () => {
  const found = await review(await writeWorkbook(await stored(), { version: "0.0.9" }), "a.xlsx");
  expect(found).toMatchObject({ file: "a.xlsx", storedBy: "0.0.9", formulas: 4, changed: [] });
  expect(found.errors.map(({ cell, error }) => [cell, error])).toEqual([
    ["Site!A8", "#VALUE!"],
    ["Site!A9", "#DIV/0!"],
  ]);
  expect(found.errors[0]?.says).toContain("is not a length");
  expect(found.cautions.some(({ cells }) => cells.includes("Site!A6") && cells.includes("Site!A7"))).toBe(true);
  expect(found.mixedEditions).toEqual([
    { edition: expect.stringMatching(/asce/i), cells: { "7-22": ["Site!A6"], "7-10": ["Site!A7"] } },
  ]);
});

test("values that another version stored and this one calculates otherwise", async () => {
  const file = await stored();
  const [site] = file.sheets;
  const cells = new Map(site?.cells);
  cells.set(placeKey(4, 0), { value: "2'-11\"", formula: '=SILL.FTIN(SILL.LENGTH("3 ft"))' });
  const changed = { ...file, sheets: [{ ...site, name: "Site", widths: [], cells }] };
  const found = await review(await writeWorkbook(changed, { version: "0.0.8" }), "b.xlsx");
  expect(found.changed).toEqual([{ cell: "Site!A5", stored: "2'-11\"", now: "3'-0\"" }]);
  expect(found.storedBy).toBe("0.0.8");
});
