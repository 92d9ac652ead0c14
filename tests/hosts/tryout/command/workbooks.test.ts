import { expect, test } from "vitest";
import { formulaOf } from "../../../../src/functions/declare/formula.ts";
import { registry } from "../../../../src/functions/registry.ts";
import { review } from "../../../../src/hosts/tryout/command/review.ts";
import { HeadlessWorkbook } from "../../../../src/hosts/tryout/engine/headless.ts";
import { placeKey, placeOf, type WorkbookFile } from "../../../../src/workbook/file/model.ts";
import { writeWorkbook } from "../../../../src/workbook/file/write.ts";
import { addressText } from "../../../../src/workbook/host.ts";
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

test("a number inside a table, a row that came in, and a sum of the spreadsheet's own are compared too", async () => {
  const layers = [
    ["gypsum board", 0.5],
    ["mineral wool board", 4],
    ["=SUM(B7:B9)", ""],
    ['=SILL.R_SCHEDULE({"gypsum board",0.5;"mineral wool board",4})'],
  ];
  const opened = await HeadlessWorkbook.open(workbook({ Wall: layers }, []));
  const file = opened.file("0.0.9");
  opened.dispose();
  const [wall] = file.sheets;
  if (wall === undefined) throw new Error("no sheet");
  const sound = await review(await writeWorkbook(file, { version: "0.0.9" }), "a.xlsx");
  expect(sound.changed).toEqual([]);
  const cells = new Map(wall.cells);
  const table = cells.get(placeKey(3, 0));
  expect(table?.spill?.rows).toBeGreaterThan(3);
  const last = placeKey(3 + (table?.spill?.rows ?? 0) - 1, 0);
  const now = cells.get(placeKey(5, 3))?.value;
  // What another version might have stored: another number in the table, and a row less.
  cells.set(placeKey(5, 3), { value: 99 });
  cells.set(placeKey(3, 0), { ...table, value: "layer", spill: { rows: (table?.spill?.rows ?? 0) - 1, columns: 4 } });
  for (let c = 0; c < 4; c++) cells.delete(placeKey(3 + (table?.spill?.rows ?? 0) - 1, c));
  cells.set(placeKey(2, 0), { value: 7, formula: "=SUM(B7:B9)" });
  const other = { ...file, sheets: [{ ...wall, cells }] };
  const found = await review(await writeWorkbook(other, { version: "0.0.8" }), "b.xlsx");
  expect(found.changed).toContainEqual({ cell: "Wall!D6", stored: 99, now });
  expect(found.changed).toContainEqual({ cell: "Wall!A3", stored: 7, now: expect.any(Number) });
  expect(found.changed.map(({ cell, stored }) => [cell, stored])).toContainEqual([
    addressText({ sheet: "Wall", ...placeOf(last) }),
    "",
  ]);
});

test("what a search is to be careful about is said though it is not made again", async () => {
  const fn = registry.find(({ heavy, cautions }) => heavy && cautions.length > 0);
  if (fn === undefined) throw new Error("no search has a caution");
  const opened = await HeadlessWorkbook.open(workbook({ Cut: [[formulaOf(fn, fn.example.args, "SILL")]] }, []));
  await opened.arrived();
  const file = opened.file("0.0.9");
  opened.dispose();
  const found = await review(await writeWorkbook(file, { version: "0.0.9" }), "a.xlsx");
  expect(found.cautions).toContainEqual({ caution: fn.cautions[0], cells: ["Cut!A1"] });
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
