import { expect, test } from "vitest";
import { HeadlessWorkbook } from "../../../../src/hosts/tryout/engine/headless.ts";
import { putTable, putTemplate } from "../../../../src/hosts/tryout/sheet/sheets.ts";
import { workbook } from "./sheet.ts";

async function opened(...given: Parameters<typeof workbook>) {
  const sheet = await HeadlessWorkbook.open(workbook(...given));
  const book = sheet.api.getActiveWorkbook();
  if (book === null) throw new Error("no workbook");
  const calculated = () => sheet.api.getFormula().onCalculationResultApplied();
  return { sheet, book, calculated };
}

test("a table goes in as values: no text becomes a formula, a number or a date", async () => {
  const { sheet, book } = await opened({ Start: [["x"]] });
  putTable(book, "Basis and cautions", [
    ["=1+1", "6:12", "007"],
    [3.5, true, ""],
  ]);
  expect(sheet.tableAt("'Basis and cautions'!A1")).toEqual([["=1+1"]]);
  const at = (cell: string) => sheet.valueAt(`'Basis and cautions'!${cell}`);
  expect([at("B1"), at("C1"), at("A2"), at("B2"), at("C2")]).toEqual(["6:12", "007", 3.5, true, undefined]);
  putTable(book, "Basis and cautions", [["only this"]]);
  expect([at("A1"), at("B1"), at("A2")]).toEqual(["only this", undefined, undefined]);
  expect(book.getSheets()).toHaveLength(2);
  sheet.dispose();
});

test("a template takes the place of worksheets of the same names; formulas that point there stay whole", async () => {
  const { sheet, book, calculated } = await opened(
    { Site: [["Height", 3], ["old"]], Start: [["=SILL.FTIN(Site!B1)", "=SILL.FTIN(height)"]] },
    [["height", "Site!$B$1"]],
  );
  putTemplate(
    book,
    workbook(
      {
        Site: [
          ["Height", 5],
          [undefined, 7],
        ],
        Roof: [['=SILL.SLOPE("12:12")']],
      },
      [["height", "Site!$B$2"]],
    ),
  );
  await calculated();
  expect(sheet.tableAt("Start!A1")).toEqual([["5'-0\""]]);
  expect(sheet.valueAt("Start!B1")).toBe("7'-0\"");
  expect(sheet.valueAt("Site!A2")).toBeUndefined();
  expect(sheet.valueAt("Roof!A1")).toBeCloseTo(45, 10);
  sheet.dispose();
});
