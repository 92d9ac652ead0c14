import { Workbook } from "@cj-tech-master/excelts";
import { strFromU8, unzipSync } from "fflate";
import { expect, test } from "vitest";
import { fitsInto, type Opened, writeInto } from "../../../src/workbook/file/into.ts";
import type { FileCell, WorkbookFile } from "../../../src/workbook/file/model.ts";
import { readWorkbook } from "../../../src/workbook/file/read.ts";
import { schemaFaults } from "./schema.ts";

const DOT = "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==";

/** A file of an office, made by a library that has no part in ours, with much that we do not know. */
async function office(): Promise<Uint8Array> {
  const book = new Workbook();
  const sheet = book.addWorksheet("Bid");
  sheet.getCell("A1").value = "Our bid";
  sheet.mergeCells("A1:C1");
  sheet.getCell("A2").value = 2;
  sheet.getCell("A2").border = { bottom: { style: "double" } };
  sheet.getCell("A2").note = "agreed on the phone";
  sheet.getCell("A3").value = { formula: "A2*2", result: 4 };
  sheet.getCell("B2").value = new Date(Date.UTC(2024, 0, 15));
  sheet.getCell("B2").numFmt = "yyyy-mm-dd";
  sheet.getCell("C2").value = { text: "terms", hyperlink: "https://example.com/terms" };
  sheet.addConditionalFormatting({
    ref: "A2:A3",
    rules: [{ type: "cellIs", operator: "greaterThan", formulae: ["3"], priority: 1, style: { font: { bold: true } } }],
  });
  const image = book.addImage({ extension: "png", base64: DOT });
  sheet.addImage(image, "H2:I4");
  book.addWorksheet("Notes").getCell("A1").value = "kept";
  return new Uint8Array(await book.xlsx.writeBuffer());
}

/** The workbook with other cells on its first sheet. */
function withCells(file: WorkbookFile, cells: Readonly<Record<string, FileCell>>): WorkbookFile {
  const [first, ...rest] = file.sheets;
  if (first === undefined) throw new Error("no sheet");
  return { ...file, sheets: [{ ...first, cells: new Map([...first.cells, ...Object.entries(cells)]) }, ...rest] };
}

async function opened(): Promise<Opened & { leftOut: readonly string[] }> {
  const bytes = await office();
  const { file, leftOut } = await readWorkbook(bytes, "office");
  return { bytes, file, leftOut };
}

async function read(bytes: Uint8Array) {
  const book = new Workbook();
  await book.xlsx.load(bytes);
  return book;
}

test("what a file holds and we do not is named with its worksheet", async () => {
  const { leftOut } = await opened();
  expect(leftOut).toEqual(
    expect.arrayContaining(["merged cells (Bid)", "conditional formats (Bid)", "borders (Bid)", "notes (Bid)"]),
  );
});

test("saved into its own file, what was changed is changed and all else is there", async () => {
  const from = await opened();
  const now = withCells(from.file, {
    "1,0": { ...(from.file.sheets[0]?.cells.get("1,0") ?? { value: "" }), value: 5 },
    "2,0": { value: 10, formula: "=A2*2" },
    "3,0": { value: 1.5, formula: '=SILL.LENGTH("1\'-6""")' },
    "4,4": { value: "new" },
  });
  const bytes = await writeInto(from, now);
  const sheet = (await read(bytes)).getWorksheet("Bid");
  expect(sheet?.getCell("A2").value).toBe(5);
  expect(sheet?.getCell("A2").border?.bottom?.style).toBe("double");
  expect(JSON.stringify(sheet?.getCell("A2").note)).toContain("agreed on the phone");
  expect(sheet?.getCell("A3").value).toMatchObject({ formula: "A2*2", result: 10 });
  expect(sheet?.getCell("B2").value).toEqual(new Date(Date.UTC(2024, 0, 15)));
  expect(sheet?.getCell("B2").numFmt).toBe("yyyy-mm-dd");
  expect(sheet?.getCell("C2").value).toMatchObject({ hyperlink: "https://example.com/terms" });
  expect(sheet?.getCell("B1").isMerged).toBe(true);
  expect(sheet?.getCell("E5").value).toBe("new");
  const xml = strFromU8(unzipSync(bytes)["xl/worksheets/sheet1.xml"] ?? new Uint8Array());
  expect(xml).toContain("<conditionalFormatting");
  expect(xml).toMatch(/<c r="A4"[^>]*cm="1"[^>]*><f t="array" ref="A4">_xldudf_SILL_LENGTH/);
  expect((await read(bytes)).getWorksheet("Notes")?.getCell("A1").value).toBe("kept");
  expect((await read(bytes)).getWorksheet("Bid")?.getImages()).toHaveLength(1);
  expect(await schemaFaults(bytes)).toEqual(await schemaFaults(from.bytes));
});

test("a cell that was emptied is empty, and a new worksheet stands behind the others with its names", async () => {
  const from = await opened();
  const emptied = { ...from.file, sheets: from.file.sheets.map((s) => ({ ...s, cells: new Map(s.cells) })) };
  emptied.sheets[0]?.cells.delete("1,0");
  const added = { name: "Site", widths: [20], cells: new Map([["0,0", { value: "Wind speed" }]]) };
  const now: WorkbookFile = { ...emptied, sheets: [...emptied.sheets, added], names: [["Basis", "Site!$A$1"]] };
  const bytes = await writeInto(from, now);
  expect(await schemaFaults(bytes)).toEqual(await schemaFaults(from.bytes));
  const book = await read(bytes);
  expect(book.getWorksheet("Bid")?.getCell("A2").value).toBeNull();
  expect(book.getWorksheet("Site")?.getCell("A1").value).toBe("Wind speed");
  expect((await readWorkbook(bytes, "again")).file.names).toEqual([["Basis", "Site!$A$1"]]);
});

test("a picture of ours goes in beside the pictures of the file, and takes the place of an earlier one", async () => {
  const from = await opened();
  const picture = { name: "Sillwork FTIN A4", alt: "", png: DOT, row: 3, column: 5, width: 64, height: 32 };
  const withPicture = (file: WorkbookFile, height: number): WorkbookFile => ({
    ...file,
    sheets: file.sheets.map((s, i) => (i === 0 ? { ...s, pictures: [{ ...picture, height }] } : s)),
  });
  const once = await writeInto(from, withPicture(from.file, 32));
  const { file, leftOut } = await readWorkbook(once, "once");
  expect(file.sheets[0]?.pictures).toEqual([picture]);
  expect(leftOut).toContain("pictures (Bid)");
  const twice = await writeInto({ bytes: once, file }, withPicture(file, 48));
  const sheet = (await read(twice)).getWorksheet("Bid");
  expect(sheet?.getImages()).toHaveLength(2);
  expect((await readWorkbook(twice, "twice")).file.sheets[0]?.pictures?.map(({ height }) => height)).toEqual([48]);
  expect(await schemaFaults(twice)).toEqual(await schemaFaults(from.bytes));
});

test("worksheets that were renamed or taken out do not fit into the file any more", async () => {
  const from = await opened();
  expect(fitsInto(from, from.file)).toBe(true);
  expect(fitsInto(from, { ...from.file, sheets: from.file.sheets.slice(1) })).toBe(false);
  expect(fitsInto(from, { ...from.file, sheets: from.file.sheets.map((s) => ({ ...s, name: `${s.name} 2` })) })).toBe(
    false,
  );
});
