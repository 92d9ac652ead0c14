import { type CellErrorValue, Workbook } from "@cj-tech-master/excelts";
import { strFromU8, unzipSync } from "fflate";
import { describe, expect, test } from "vitest";
import type { FileCell, FileSheet, WorkbookFile } from "../../../src/workbook/file/model.ts";
import { readWorkbook } from "../../../src/workbook/file/read.ts";
import { writeWorkbook } from "../../../src/workbook/file/write.ts";

const made = (cells: Readonly<Record<string, FileCell>>, more: Partial<WorkbookFile> = {}): WorkbookFile => ({
  title: "Test",
  names: [],
  sheets: [{ name: "Wall 1", cells: new Map(Object.entries(cells)), widths: [20, undefined, 8] }],
  ...more,
});
const write = (file: WorkbookFile, valuesOnly = false) => writeWorkbook(file, { version: "9.8.7", valuesOnly });
const part = (bytes: Uint8Array, path: string) => strFromU8(unzipSync(bytes)[path] ?? new Uint8Array());

const spill: Readonly<Record<string, FileCell>> = {
  "0,0": { value: "layer", formula: "=SILL.R_SCHEDULE(A9:B10,Basis)", spill: { rows: 2, columns: 2 } },
  "0,1": { value: "R" },
  "1,0": { value: "osb" },
  "1,1": { value: 0.62 },
  "3,0": { value: "1'-0\"", formula: "=SILL.FTIN(B1)", look: { bold: true, format: "0.00", fill: "#fff8dc" } },
  "4,0": { value: 2, formula: "=B2+1" },
  "5,0": { value: "#N/A", formula: "=SILL.WIND_KZ(900,2)" },
  "6,0": { value: true },
  "7,0": { value: "=1+1" },
  "8,0": { value: "_x0041_" },
  "9,0": { value: "C", choices: ["B", "C", "D"], hint: "surface roughness upwind" },
};

describe("the file", () => {
  test("holds our formulas under their stored name, with the flag of a formula that spills and the value", async () => {
    const bytes = await write(made(spill, { names: [["Basis", "'Wall 1'!$A$1:$B$2"]] }));
    const xml = part(bytes, "xl/worksheets/sheet1.xml");
    expect(xml).toMatch(
      /<c r="A1"[^>]* cm="1"[^>]*><f t="array" ref="A1:B2">_xldudf_SILL_RSCHEDULE\(A9:B10,Basis\)<\/f><v>layer<\/v><\/c>/,
    );
    expect(xml).toMatch(/<c r="A4"[^>]* cm="1"[^>]*><f t="array" ref="A4">_xldudf_SILL_FTIN\(B1\)<\/f>/);
    expect(xml).toMatch(/<c r="A5"[^>]*><f>B2\+1<\/f><v>2<\/v><\/c>/);
    expect(xml).toMatch(/<c r="A6"[^>]* t="e"[^>]*><f[^>]*>[^<]*<\/f><v>#N\/A<\/v><\/c>/);
    expect(part(bytes, "xl/metadata.xml")).toContain("XLDAPR");
    expect(part(bytes, "xl/workbook.xml")).toContain('<calcPr calcId="191029"/>');
    expect(part(bytes, "docProps/custom.xml")).toContain("9.8.7");
  });

  test("a formula that may spill has the flag though it gives one value now, so that more can come", async () => {
    const cells = {
      "0,0": { value: "", formula: '=IF(A9="","",FILTER(A9:B10,A9:A10=1,""))' },
      "1,0": { value: 3, formula: "=MAXIFS(A9:A10,B9:B10,1)" },
      "2,0": { value: "FILTER(", formula: '="FILTER("' },
    };
    const xml = part(await write(made(cells)), "xl/worksheets/sheet1.xml");
    expect(xml).toMatch(/<c r="A1"[^>]* cm="1"[^>]*><f t="array" ref="A1">[^<]*_xlfn\._xlws\.FILTER\(/);
    expect(xml).toMatch(/<c r="A2"[^>]*><f>_xlfn\.MAXIFS\(/);
    expect(xml).not.toMatch(/<c r="A3"[^>]* cm="1"/);
  });

  test("reads alike in a library that has no part in writing it", async () => {
    const book = new Workbook();
    await book.xlsx.load(await write(made(spill, { names: [["Basis", "'Wall 1'!$A$1:$B$2"]] })));
    const sheet = book.getWorksheet("Wall 1");
    const at = (address: string) => sheet?.getCell(address);
    expect(at("A1")?.value).toMatchObject({
      formula: "_xldudf_SILL_RSCHEDULE(A9:B10,Basis)",
      result: "layer",
      ref: "A1:B2",
      isDynamicArray: true,
    });
    expect([at("B1")?.value, at("A2")?.value, at("B2")?.value]).toEqual(["R", "osb", 0.62]);
    expect(at("A4")?.font).toMatchObject({ name: "Arial", size: 11, bold: true });
    expect(at("A4")?.numFmt).toBe("0.00");
    expect((at("A6")?.result as CellErrorValue | undefined)?.error).toBe("#N/A");
    expect([at("A7")?.value, at("A8")?.value, at("A9")?.value]).toEqual([true, "=1+1", "_x0041_"]);
    expect(at("A10")?.dataValidation).toMatchObject({
      type: "list",
      formulae: ['"B,C,D"'],
      prompt: "surface roughness upwind",
    });
    expect(book.definedNames.getRanges("Basis").ranges).toEqual(["'Wall 1'!$A$1:$B$2"]);
    expect(sheet?.pageSetup).toMatchObject({ orientation: "landscape", fitToPage: true });
  });

  test("with values only holds none of our formulas, and the host's own stay", async () => {
    const xml = part(await write(made(spill), true), "xl/worksheets/sheet1.xml");
    expect(xml).not.toContain("_xldudf");
    expect(xml).not.toContain("cm=");
    expect(xml).toContain("<f>B2+1</f>");
    const { file } = await readWorkbook(await write(made(spill), true), "x");
    const cells = file.sheets[0]?.cells;
    expect(["0,0", "0,1", "1,0", "1,1", "3,0"].map((key) => cells?.get(key)?.value)).toEqual([
      "layer",
      "R",
      "osb",
      0.62,
      "1'-0\"",
    ]);
  });
});

const DOT = "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==";

describe("read back", () => {
  test("a picture of ours stands where it stood, in its size, and is no thing that is left out", async () => {
    const picture = { name: "Sillwork WIND_KZ A6", alt: "Kz", png: DOT, row: 5, column: 3, width: 640, height: 322 };
    const [sheet] = made(spill).sheets;
    const bytes = await write({ ...made(spill), sheets: [{ ...sheet, pictures: [picture] } as FileSheet] });
    expect(part(bytes, "xl/drawings/drawing1.xml")).toMatch(
      /<xdr:oneCellAnchor>.*<xdr:ext cx="6096000" cy="3067050"\/>/,
    );
    const { file, leftOut } = await readWorkbook(bytes, "x");
    expect(file.sheets[0]?.pictures).toEqual([picture]);
    expect(leftOut).toEqual([]);
    const book = new Workbook();
    await book.xlsx.load(bytes);
    const [image] = book.getWorksheet("Wall 1")?.getImages() ?? [];
    expect(image?.range).toMatchObject({ tl: { nativeCol: 3, nativeRow: 5 }, ext: { width: 640, height: 322 } });
  });

  test("it is the same workbook; what formulas spill is left to them", async () => {
    const names = [["Basis", "'Wall 1'!$A$1:$B$2"]] as const;
    const { file, leftOut } = await readWorkbook(await write(made(spill, { names })), "other");
    expect(leftOut).toEqual([]);
    expect(file).toMatchObject({ title: "Test", version: "9.8.7", names });
    const cells = file.sheets[0]?.cells ?? new Map();
    const { "0,1": _a, "1,0": _b, "1,1": _c, ...rest } = spill;
    for (const [key, cell] of Object.entries(rest)) expect(cells.get(key), key).toEqual(cell);
    expect(cells.has("0,1") || cells.has("1,0")).toBe(false);
  });

  test.each([
    ["another program's spelling", "=SILL.FTIN(1)", "=SILL.FTIN(1)"],
    ["a newer function", '=FILTER(A1:A2,B1:B2="FILTER(")', '=FILTER(A1:A2,B1:B2="FILTER(")'],
    ["a newer function inside ours", "=SILL.FTIN(SUM(SEQUENCE(3)))", "=SILL.FTIN(SUM(SEQUENCE(3)))"],
  ])("%s", async (_, formula, wanted) => {
    const bytes = await write(made({ "0,0": { value: 1, formula } }));
    if (formula.includes("SEQUENCE")) expect(part(bytes, "xl/worksheets/sheet1.xml")).toContain("_xlfn.SEQUENCE(3)");
    const { file } = await readWorkbook(bytes, "x");
    expect(file.sheets[0]?.cells.get("0,0")?.formula).toBe(wanted);
  });
});

describe("what a file cannot hold is refused with its place", () => {
  test.each<[string, WorkbookFile, RegExp]>([
    ["no finite number", made({ "0,0": { value: Number.NaN } }), /'Wall 1'!A1 is no finite number/],
    ["a long text", made({ "1,1": { value: "x".repeat(32_768) } }), /B2 has a text of 32768/],
    ["a long formula", made({ "0,0": { value: 1, formula: `=${"1+".repeat(5000)}1` } }), /formula/],
    ["long choices", made({ "0,0": { value: 1, choices: ["x".repeat(256)] } }), /choices/],
    ["a choice with a comma", made({ "0,0": { value: 1, choices: ["a,b"] } }), /comma/],
    ["a long hint", made({ "0,0": { value: 1, hint: "x".repeat(256) } }), /hint/],
    ["a name like a cell", made({}, { names: [["B5", "A!$A$1"]] }), /name "B5"/],
    ["a name with a space", made({}, { names: [["wind speed", "A!$A$1"]] }), /name "wind speed"/],
    ["a sheet's name", made({}, { sheets: [{ name: "a/b", cells: new Map(), widths: [] }] }), /a\/b/],
  ])("%s", async (_, file, says) => {
    await expect(write(file)).rejects.toThrow(says);
  });
});

test("texts that are kept with the workbook come back out of its file, long ones too", async () => {
  const kept = { seen: Array.from({ length: 60 }, (_, i) => `mark${i}:${i}`).join(" "), other: "1" };
  expect((await readWorkbook(await write(made({ "0,0": { value: 1 } }, { kept })), "Test")).file.kept).toEqual(kept);
  expect((await readWorkbook(await write(made({ "0,0": { value: 1 } })), "Test")).file.kept).toBeUndefined();
});
