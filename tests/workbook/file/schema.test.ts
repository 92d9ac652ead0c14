import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { describe, expect, test } from "vitest";
import { HeadlessWorkbook } from "../../../src/hosts/tryout/engine/headless.ts";
import type { WorkbookFile } from "../../../src/workbook/file/model.ts";
import { writeWorkbook } from "../../../src/workbook/file/write.ts";
import { schemaFaults } from "./schema.ts";

const DOT = "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==";
const picture = { name: "Sillwork LENGTH A2", alt: "24 <in>", png: DOT, row: 1, column: 4, width: 640, height: 321.5 };

/** Something of all that we write. */
const file: WorkbookFile = {
  title: "Test",
  names: [["Basis", "Site!$A$1"]],
  sheets: [
    {
      name: "Site",
      widths: [20, undefined, 8],
      frozenRows: 1,
      cells: new Map([
        ["0,0", { value: "Basis", look: { bold: true, italic: true, fill: "#eef1f4", wrap: true, align: "center" } }],
        ["1,0", { value: 2, formula: "=SILL.LENGTH(24)", look: { format: "0.00", color: "#1d4f91", size: 15 } }],
        ["2,0", { value: "C", choices: ["B", "C"], hint: "roughness" }],
        ["3,0", { value: "layer", formula: "=SILL.R_SCHEDULE(A9:B10,Basis)", spill: { rows: 1, columns: 2 } }],
        ["3,1", { value: "R" }],
        ["4,0", { value: "#N/A", formula: "=SILL.WIND_KZ(900,2)" }],
        ["5,0", { value: 3, formula: "=FILTER(A2:A3,A2:A3>1)", spill: { rows: 1, columns: 1 } }],
        ["6,0", { value: true }],
        ["7,0", { value: "_x0041_ <&> 7'-6\"", hint: "typed" }],
      ]),
      pictures: [picture],
    },
  ],
};

const written = (valuesOnly = false) => writeWorkbook(file, { version: "1.2.3", valuesOnly });

/** The file with a change in one of its parts. */
function changed(bytes: Uint8Array, path: string, from: string, to: string): Uint8Array {
  const parts = unzipSync(bytes);
  const text = strFromU8(parts[path] ?? new Uint8Array());
  expect(text).toContain(from);
  return zipSync({ ...parts, [path]: strToU8(text.replace(from, to)) });
}

test.each([false, true])("what is written follows the published schemas, values only: %s", async (valuesOnly) => {
  expect(await schemaFaults(await written(valuesOnly))).toEqual([]);
});

test("so does a workbook that the try-out sheet saves", async () => {
  const workbook = await HeadlessWorkbook.openFile(file);
  const bytes = await writeWorkbook(workbook.file("1.2.3"), { version: "1.2.3" });
  workbook.dispose();
  expect(await schemaFaults(bytes)).toEqual([]);
});

describe("the check sees", () => {
  const SHEET = "xl/worksheets/sheet1.xml";
  test.each([
    [SHEET, "<pageMargins", "<pageBorders/><pageMargins", /pageBorders/],
    [SHEET, 't="s"', 't="x"', /'t' has invalid value 'x'/],
    [SHEET, ' sqref="A3"', "", /'sqref' is missing/],
    [SHEET, "</sheetData>", '</sheetData><cols><col min="1" max="1"/></cols>', /unexpected child element .*cols/],
    [SHEET, 'orientation="landscape"', 'orientation="sideways"', /sideways/],
    [SHEET, 's="1"', 's="99"', /99/],
    ["xl/workbook.xml", 'sheetId="1"', 'sheetId="one"', /'sheetId' has invalid value 'one'/],
    ["xl/workbook.xml", 'name="Site"', 'name="Site: all"', /Site: all/],
    ["xl/styles.xml", "<cellXfs", "<cellYfs/><cellXfs", /cellYfs/],
    ["xl/metadata.xml", "<metadataTypes", "<metadataKinds", /metadataKinds/],
    ["[Content_Types].xml", "/xl/metadata.xml", "/xl/other.xml", /metadata/],
  ])("in %s %s as %s", async (path, from, to, fault) => {
    expect((await schemaFaults(changed(await written(), path, from, to))).join("\n")).toMatch(fault);
  });
});
