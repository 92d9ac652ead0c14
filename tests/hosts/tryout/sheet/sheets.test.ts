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

test("a template goes in beside what is there: a taken sheet gets a number, a taken name too, and nothing is written over", async () => {
  const { sheet, book, calculated } = await opened({ Roof: [["mine"]], Start: [["=SILL.FTIN(height)", 3]] }, [
    ["height", "Start!$B$1"],
  ]);
  const roof = workbook(
    {
      Roof: [
        ["Height", 5],
        ["=SILL.FTIN(height)", '=SILL.SLOPE("12:12")'],
      ],
    },
    [
      ["Height", "Roof!$B$1"],
      ["Slope", "Roof!$B$2"],
    ],
  );
  expect(putTemplate(book, roof)).toMatchObject({ sheets: ["Roof (2)"], used: [] });
  await calculated();
  expect(sheet.valueAt("Start!A1")).toBe("3'-0\"");
  expect(sheet.valueAt("'Roof (2)'!A2")).toBe("5'-0\"");
  expect(sheet.valueAt("Roof!A1")).toBe("mine");
  expect(book.getDefinedName("Height_2")?.getFormulaOrRefString()).toBe("'Roof (2)'!$B$1");
  sheet.dispose();
});

test("a template of which all names stand for cells already is used as it is there", async () => {
  const { sheet, book, calculated } = await opened({ Start: [["Height", 7]] }, [["Height", "Start!$B$1"]]);
  const two = workbook({ Site: [["Height", 5]], Roof: [["=SILL.FTIN(Height)"]] }, [["Height", "Site!$B$1"]]);
  expect(putTemplate(book, two)).toMatchObject({
    sheets: ["Roof"],
    used: ["Start"],
    says: expect.stringContaining("It uses Start, which was there."),
  });
  await calculated();
  expect(sheet.valueAt("Roof!A1")).toBe("7'-0\"");
  sheet.dispose();
});
