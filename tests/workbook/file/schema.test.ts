import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { describe, expect, test } from "vitest";
import { writeWorkbook } from "../../../src/workbook/file/write.ts";
import { schemaFaults } from "./schema.ts";

const file = {
  title: "Test",
  names: [["Basis", "Site!$A$1"]] as const,
  sheets: [
    {
      name: "Site",
      widths: [20],
      frozenRows: 1,
      cells: new Map([
        ["0,0", { value: "Basis", look: { bold: true, fill: "#eef1f4", wrap: true, align: "center" as const } }],
        ["1,0", { value: 2, formula: "=SILL.LENGTH(24)", look: { format: "0.00" } }],
        ["2,0", { value: "C", choices: ["B", "C"], hint: "roughness" }],
      ]),
    },
  ],
};

const written = () => writeWorkbook(file, { version: "1.2.3" });

/** The file with a change in one of its parts. */
function changed(bytes: Uint8Array, path: string, from: string, to: string): Uint8Array {
  const parts = unzipSync(bytes);
  const text = strFromU8(parts[path] ?? new Uint8Array());
  expect(text).toContain(from);
  return zipSync({ ...parts, [path]: strToU8(text.replace(from, to)) });
}

test("what is written follows the schema", async () => expect(schemaFaults(await written())).toEqual([]));

describe("the check sees", () => {
  const SHEET = "xl/worksheets/sheet1.xml";
  test.each([
    [SHEET, "<pageMargins", "<pageBorders/><pageMargins", /pageBorders/],
    [SHEET, '<c r="A1"', '<c r="A0"', /no ref/],
    [SHEET, 't="s"', 't="x"', /no cellType/],
    [SHEET, ' sqref="A3"', "", /lacks sqref/],
    [SHEET, "</sheetData>", '</sheetData><cols><col min="1" max="1"/></cols>', /<worksheet> holds/],
    ["xl/workbook.xml", 'sheetId="1"', 'sheetId="one"', /no uint/],
    ["xl/styles.xml", "<cellXfs", "<cellYfs/><cellXfs", /cellYfs/],
  ])("in %s %s as %s", async (path, from, to, fault) => {
    expect(schemaFaults(changed(await written(), path, from, to)).join("\n")).toMatch(fault);
  });
});
