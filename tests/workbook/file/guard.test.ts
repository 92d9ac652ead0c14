import { strToU8, type Zippable, zipSync } from "fflate";
import { describe, expect, test } from "vitest";
import { guardWorkbook } from "../../../src/workbook/file/guard.ts";
import { readWorkbook } from "../../../src/workbook/file/read.ts";

const SHEET = "xl/worksheets/sheet1.xml";
const parts = (more: Zippable = {}): Zippable => ({
  "[Content_Types].xml": strToU8(
    '<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Override PartName="/xl/workbook.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml"/></Types>',
  ),
  "_rels/.rels": strToU8(
    '<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="r1" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/officeDocument" Target="xl/workbook.xml"/></Relationships>',
  ),
  "xl/_rels/workbook.xml.rels": strToU8(
    '<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="r1" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/worksheet" Target="worksheets/sheet1.xml"/></Relationships>',
  ),
  "xl/workbook.xml": strToU8(
    '<workbook xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships"><sheets><sheet name="A" sheetId="1" r:id="r1"/></sheets></workbook>',
  ),
  ...more,
});
const sheet = (cells: string, before = "") =>
  strToU8(
    `${before}<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetData>${cells}</sheetData></worksheet>`,
  );
const refusal = (bytes: Uint8Array): string => {
  try {
    guardWorkbook(bytes);
  } catch (error) {
    return (error as Error).message;
  }
  return "";
};
/** Changes a number of the first entry of the list of parts whose name is this. */
function changed(bytes: Uint8Array, name: string, place: number, value: number, size: 2 | 4 = 4): Uint8Array {
  const copy = bytes.slice();
  const view = new DataView(copy.buffer);
  for (let at = 0; at < copy.length - 46; at++) {
    if (view.getUint32(at, true) !== 0x02014b50) continue;
    const found = new TextDecoder().decode(copy.subarray(at + 46, at + 46 + view.getUint16(at + 28, true)));
    if (found !== name) continue;
    if (size === 4) view.setUint32(at + place, value, true);
    else view.setUint16(at + place, value, true);
    return copy;
  }
  throw new Error(`no part ${name}`);
}

const sound = zipSync(parts({ [SHEET]: sheet('<row r="1"><c r="A1"><v>5</v></c></row>') }));

test("a sound workbook passes and opens", async () => {
  expect(refusal(sound)).toBe("");
  const { file } = await readWorkbook(sound, "a");
  expect(file.sheets[0]?.cells.get("0,0")?.value).toBe(5);
});

describe("is refused with a sentence", () => {
  test.each<[string, () => Uint8Array, RegExp]>([
    ["a text file", () => strToU8("wall,length\n1,2\n".repeat(10)), /is no workbook/],
    ["an empty file", () => new Uint8Array(0), /is no workbook/],
    ["another kind of zip", () => zipSync({ "a.txt": strToU8("x") }), /zip file without a workbook/],
    ["an old or locked workbook", () => Uint8Array.of(0xd0, 0xcf, 0x11, 0xe0, ...new Array(600).fill(0)), /password/],
    ["a file over 10 MB", () => new Uint8Array(10_000_001), /10 MB/],
    [
      "a bomb: 100 MB of nothing in a small file",
      () => zipSync(parts({ [SHEET]: new Uint8Array(100_000_000) })),
      /unpacks to 100 MB/,
    ],
    ["a part that packs 200 times and more", () => zipSync(parts({ x: new Uint8Array(5_000_000) })), /unpacks to 5 MB/],
    [
      "many parts",
      () => zipSync(parts(Object.fromEntries(Array.from({ length: 2001 }, (_, i) => [`p${i}`, strToU8("x")])))),
      /parts/,
    ],
    ["a part outside", () => zipSync(parts({ "../../evil.txt": strToU8("x") })), /outside its own folder/],
    ["a part that says it is empty", () => changed(sound, SHEET, 24, 0), /says that a part is empty/],
    ["a locked part", () => changed(sound, SHEET, 8, 1, 2), /password/],
    ["sizes that stand elsewhere", () => changed(sound, SHEET, 24, 0xffffffff), /unpacks to/],
    ["two parts of one place", () => changed(sound, SHEET, 42, 0), /twice/],
    ["a list of parts that is cut off", () => sound.slice(0, sound.length - 30), /is no workbook/],
  ])("%s", (_, made, says) => {
    expect(refusal(made())).toMatch(says);
  });
});

describe("opens without harm", () => {
  test("entities are not expanded", async () => {
    const bomb =
      '<!DOCTYPE x [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;&a;&a;&a;&a;&a;&a;&a;"><!ENTITY c "&b;&b;&b;&b;&b;&b;">]>';
    const bytes = zipSync(
      parts({ [SHEET]: sheet('<row r="1"><c r="A1" t="inlineStr"><is><t>&c;</t></is></c></row>', bomb) }),
    );
    const opened = await readWorkbook(bytes, "a").catch((error: Error) => error);
    if (opened instanceof Error) expect(opened.message).toMatch(/cannot be read/);
    else expect(String(opened.file.sheets[0]?.cells.get("0,0")?.value).length).toBeLessThan(100);
  });

  test("a file that lies about its size stops at the size it gave", async () => {
    const liar = changed(zipSync(parts({ [SHEET]: new Uint8Array(3_000_000).fill(32) })), SHEET, 24, 90_000);
    await expect(readWorkbook(liar, "a")).rejects.toThrow(/cannot be read/);
  });

  test("a stray cell at the end of the grid makes no sheet of a million rows", async () => {
    const far = '<row r="1"><c r="A1"><v>1</v></c></row><row r="1048576"><c r="XFD1048576"><v>2</v></c></row>';
    const { file } = await readWorkbook(zipSync(parts({ [SHEET]: sheet(far) })), "a");
    expect([...(file.sheets[0]?.cells.keys() ?? [])]).toEqual(["0,0"]);
  });

  test("names of the language are names like others", async () => {
    const odd = strToU8(
      new TextDecoder().decode(parts()["xl/workbook.xml"] as Uint8Array).replace('name="A"', 'name="__proto__"'),
    );
    const { file } = await readWorkbook(zipSync(parts({ "xl/workbook.xml": odd, [SHEET]: sheet("") })), "a");
    expect(file.sheets[0]?.name).toBe("__proto__");
    expect(({} as { cells?: unknown }).cells).toBeUndefined();
  });
});
