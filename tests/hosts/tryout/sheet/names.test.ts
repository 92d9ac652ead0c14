import { FormulaDataModel } from "@univerjs/engine-formula";
import { expect, test } from "vitest";
import { HeadlessWorkbook } from "../../../../src/hosts/tryout/engine/headless.ts";
import { namedCells, readNamed, writeBasis } from "../../../../src/hosts/tryout/sheet/names.ts";
import { rangeOfName } from "../../../../src/hosts/tryout/sheet/sheets.ts";
import { workbook } from "./sheet.ts";

async function opened(...given: Parameters<typeof workbook>) {
  const sheet = await HeadlessWorkbook.open(workbook(...given));
  const book = sheet.api.getActiveWorkbook();
  if (book === null) throw new Error("no workbook");
  const model = (sheet.api as unknown as { _injector: { get(id: unknown): FormulaDataModel } })._injector.get(
    FormulaDataModel,
  );
  const calculated = () => sheet.api.getFormula().onCalculationResultApplied();
  return { sheet, book, model, calculated };
}

const at = (row: number, column: number) => ({ sheet: "Start", row, column });

const SITE = [
  ["Basis", "Value", "Unit"],
  ["Wind speed", 100, "mph"],
  ["Exposure", '=UPPER("c")', ""],
  ["Mean roof height", 15, "ft"],
  ["below"],
];

test("a name is read, written in place and grown; formulas that take it follow", async () => {
  const { sheet, book, model, calculated } = await opened({ Site: SITE, Start: [["=SILL.WIND_PRESSURE(Basis)"]] }, [
    ["Basis", "Site!$A$1:$C$4"],
  ]);
  expect(rangeOfName(book, "Basis")?.first).toEqual({ sheet: "Site", row: 0, column: 0 });
  expect(rangeOfName(book, "Nothing")).toBeUndefined();
  const held = readNamed(book, "Basis", model);
  expect(held?.rows[2]).toEqual(["Exposure", "C", ""]);
  expect(held?.formulas[2]).toEqual(["", '=UPPER("c")', ""]);
  const first = Number(sheet.valueAt("Start!A1"));
  const rows = (held?.rows ?? []).map((row) => [...row]);
  if (rows[1] !== undefined) rows[1][1] = 200;
  writeBasis(book, [...rows, ["ASCE 7 edition", "7-22", "", "edition"]], model);
  await calculated();
  // The pressure grows with the square of the speed.
  expect(Number(sheet.valueAt("Start!A1")) / first).toBeCloseTo(4, 6);
  expect(book.getDefinedName("Basis")?.getFormulaOrRefString()).toBe("Site!$A$1:$C$5");
  expect([sheet.valueAt("Site!B5"), sheet.valueAt("Site!D5"), sheet.valueAt("Site!A6")]).toEqual([
    "7-22",
    "edition",
    "below",
  ]);
  expect(book.getSheetByName("Site")?.getRange(2, 1).getFormula()).toBe('=UPPER("c")');
  sheet.dispose();
});

test("cells with a name of their own, with what stands beside them", async () => {
  const { sheet, book, model } = await opened(
    { Start: [["Dead load", 12, "psf"], ["Twice", "=2*B1", "a note that is too long for a unit"], [7]] },
    [
      ["Dead", "Start!$B$1"],
      ["Twice", "Start!$B$2"],
      ["Bare", "Start!$A$3"],
      ["All", "Start!$A$1:$C$2"],
    ],
  );
  expect(namedCells(book, model)).toEqual([
    { name: "Dead", address: at(0, 1), value: 12, formula: "", label: "Dead load", unit: "psf" },
    { name: "Twice", address: at(1, 1), value: 24, formula: "=2*B1", label: "Twice", unit: "" },
    { name: "Bare", address: at(2, 0), value: 7, formula: "", label: "", unit: "" },
  ]);
  sheet.dispose();
});

test("a new row takes the look of the one above, but not its number format", async () => {
  const { sheet, book, model, calculated } = await opened(
    {
      Site: [
        ["Basis", "Value", "Unit"],
        ["Sales tax", 0.05, ""],
      ],
    },
    [["Basis", "Site!$A$1:$C$2"]],
  );
  book
    .getSheetByName("Site")
    ?.getRange(1, 1)
    .setValue({ v: 0.05, s: { n: { pattern: "0.0%" }, bl: 1 } });
  writeBasis(
    book,
    [
      ["Basis", "Value", "Unit"],
      ["Sales tax", 0.05, ""],
      ["Topographic factor", 1.2, ""],
    ],
    model,
  );
  await calculated();
  const look = book.getSheetByName("Site")?.getRange(2, 1).getCellStyleData();
  expect(look?.n ?? undefined).toBeUndefined();
  expect(look?.bl).toBe(1);
  sheet.dispose();
});

test("without the name a sheet and the name are made; a cleared value is blank", async () => {
  const { sheet, book, model, calculated } = await opened({ Start: [["=SILL.CLIMATE_ZONE(Basis)"]] });
  const rows = [
    ["Basis", "Value", "Unit", "What it is"],
    ["Site and codes", "", "", ""],
    ["County", "Tompkins", "", "county"],
    ["State", "NY", "", "state"],
    ["Energy code", "2018", "", "=1+1"],
  ];
  writeBasis(book, rows, model);
  await calculated();
  expect(sheet.valueAt("Start!A1")).toBe("6A");
  expect(book.getDefinedName("Basis")?.getFormulaOrRefString()).toBe("'Site basis'!$A$1:$C$5");
  expect([sheet.valueAt("'Site basis'!B5"), sheet.valueAt("'Site basis'!D5")]).toEqual(["2018", "=1+1"]);
  writeBasis(
    book,
    rows.map((row) => (row[0] === "County" ? ["County", "", ""] : row)),
    model,
  );
  await calculated();
  expect(sheet.valueAt("'Site basis'!B3")).toBeUndefined();
  expect(sheet.valueAt("Start!A1")).not.toBe("6A");
  sheet.dispose();
});
