import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { HeadlessWorkbook } from "../../src/hosts/tryout/engine/headless.ts";
import { demo } from "../../src/templates/demo.ts";
import { addressText } from "../../src/workbook/host.ts";

/** The demo in the real spreadsheet engine, without a screen. */
let workbook: HeadlessWorkbook;
beforeAll(async () => {
  workbook = await HeadlessWorkbook.open(demo);
});
afterAll(() => workbook.dispose());

describe.each(demo.sheets.map((sheet) => [sheet.name, sheet] as const))("%s", (_name, sheet) => {
  const formulas = sheet.rows.flatMap((row, r) =>
    row.flatMap((cell, c) =>
      typeof cell?.is === "string" && cell.is.startsWith("=")
        ? [[addressText({ sheet: sheet.name, row: r, column: c }), cell.is] as const]
        : [],
    ),
  );

  test.each(formulas)("%s %s gives values", (address) => {
    for (const cell of workbook.tableAt(address).flat()) expect(String(cell)).not.toMatch(/^#/);
  });
});

test("a faster wind raises what hangs on it, sheet after sheet", async () => {
  const q = () => Number(workbook.valueAt("Site!B19"));
  const before = q();
  const shear = Number(workbook.tableAt("Wind!A31")[1]?.[3]);
  await workbook.set("Site!B5", 140);
  expect(q()).toBeCloseTo(before * (140 / 115) ** 2, 6);
  expect(Number(workbook.tableAt("Wind!A31")[1]?.[3])).toBeGreaterThan(shear);
  await workbook.set("Site!B5", 115);
});
