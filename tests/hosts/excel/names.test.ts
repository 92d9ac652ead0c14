import { afterEach, expect, test, vi } from "vitest";
import { excelHost } from "../../../src/hosts/excel/host.ts";
import { Ledger } from "../../../src/workbook/ledger.ts";
import { FakeWorkbook } from "./stand-in/book.ts";

afterEach(() => {
  vi.unstubAllGlobals();
});

const site = () => {
  const book = new FakeWorkbook({
    Site: {
      B3: "Basis",
      C3: "Value",
      D3: "Unit",
      B4: "Wind speed",
      C4: 110,
      D4: "mph",
      B5: "Foreman",
      C5: "on leave",
      B6: "Eave height",
      C6: { formula: "=Walls!B4", value: 11 },
      B8: "below",
    },
    Walls: {},
  });
  book.names.set("Basis", "=Site!$B$3:$D$6");
  book.names.set("Below", "=Site!$B$8:$B$8");
  return { book, host: excelHost(new Ledger()) };
};

test("a name is read with its values and its formulas", async () => {
  const { host } = site();
  expect(await host.cellOfName?.("Basis")).toEqual({ sheet: "Site", row: 2, column: 1 });
  expect(await host.readName?.("Basis")).toEqual({
    first: { sheet: "Site", row: 2, column: 1 },
    rows: [
      ["Basis", "Value", "Unit"],
      ["Wind speed", 110, "mph"],
      ["Foreman", "on leave", ""],
      ["Eave height", 11, ""],
    ],
    formulas: [
      ["", "", ""],
      ["", "", ""],
      ["", "", ""],
      ["", "=Walls!B4", ""],
    ],
  });
});

test("cells with a name of their own, typed and calculated; no ranges, no constants, nothing of a deleted sheet", async () => {
  const { book, host } = site();
  book.names.set("Gone", "=#REF!$A$1");
  book.names.set("Rate", "=0.08");
  book.names.set("Columns", "=Site!$A$1:$C$1048576");
  book.names.set("Eave", "=Site!$C$6");
  expect(await host.namedCells?.()).toEqual([
    { name: "Below", address: { sheet: "Site", row: 7, column: 1 }, value: "below", formula: "", label: "", unit: "" },
    {
      name: "Eave",
      address: { sheet: "Site", row: 5, column: 2 },
      value: 11,
      formula: "=Walls!B4",
      label: "Eave height",
      unit: "",
    },
  ]);
});

test("a name that is not there, of a deleted sheet or of no cells is none", async () => {
  const { book, host } = site();
  book.names.set("Gone", "=#REF!$A$1:$C$9");
  book.names.set("Rate", "=0.08");
  for (const name of ["Nothing", "Gone", "Rate"]) {
    expect(await host.readName?.(name)).toBeUndefined();
    expect(await host.cellOfName?.(name)).toBeUndefined();
  }
});

test("of a name for whole columns no more than its first rows is read", async () => {
  const { book, host } = site();
  book.names.set("Basis", "=Site!$B$1:$D$1048576");
  expect((await host.readName?.("Basis"))?.rows).toHaveLength(500);
});

test("the basis is written where it stands: only what differs, and new rows below it", async () => {
  const { book, host } = site();
  await host.writeBasis?.([
    ["Basis", "Value", "Unit"],
    ["Wind speed", 120, "mph"],
    ["Foreman", "on leave", ""],
    ["Eave height", 11, ""],
    ["ASCE 7 edition", "7-16", "", "edition"],
  ]);
  const sheet = book.sheet("Site");
  expect(sheet?.at("C4")?.value).toBe(120);
  expect(sheet?.at("C6")?.formula).toBe("=Walls!B4");
  expect([sheet?.at("B7")?.value, sheet?.at("C7")?.formula, sheet?.at("E7")?.value]).toEqual([
    "ASCE 7 edition",
    "7-16",
    "edition",
  ]);
  expect(sheet?.at("B9")?.value).toBe("below");
  expect(book.names.get("Basis")).toBe("=Site!$B$3:$D$7");
  expect(book.names.get("Below")).toBe("=Site!$B$9");
});

test("without the name a sheet is made, beside a user's own of that name, and the name given to three columns", async () => {
  const book = new FakeWorkbook({ "Site basis": { A1: "mine" } });
  const host = excelHost(new Ledger());
  const rows = [
    ["Basis", "Value", "Unit", "What it is"],
    ["Roof slope", "6:12", "", "slope"],
    ["County", "=1+1", "", ""],
  ];
  await host.writeBasis?.(rows);
  expect(book.sheet("Site basis")?.at("A1")?.value).toBe("mine");
  expect(book.names.get("Basis")).toBe("='Site basis (2)'!$A$1:$C$3");
  expect(book.active.sheet).toBe("Site basis (2)");
  expect((await host.readName?.("Basis"))?.rows).toEqual(rows.map((row) => row.slice(0, 3)));
  expect(book.sheet("Site basis (2)")?.at("B3")).toMatchObject({ value: "=1+1", text: true });
});

test("a name left of a deleted sheet is given to the new one", async () => {
  const book = new FakeWorkbook({ Start: {} });
  book.names.set("Basis", "=#REF!");
  await excelHost(new Ledger()).writeBasis?.([
    ["Basis", "Value", "Unit"],
    ["State", "WI", ""],
  ]);
  expect(book.names.get("Basis")).toBe("='Site basis'!$A$1:$C$2");
});
