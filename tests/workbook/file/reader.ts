import { Workbook } from "@cj-tech-master/excelts";
import { placeOf, type WorkbookFile } from "../../../src/workbook/file/model.ts";
import { addressText } from "../../../src/workbook/host.ts";

/** Cells that a library without any part in the writing reads otherwise than they were written, as "Sheet!A1: read, written". */
export async function readOtherwise(bytes: Uint8Array, file: WorkbookFile): Promise<string[]> {
  const book = new Workbook();
  await book.xlsx.load(bytes);
  return file.sheets.flatMap(({ name, cells }) => {
    const sheet = book.getWorksheet(name);
    return [...cells].flatMap(([key, { value }]) => {
      const { row, column } = placeOf(key);
      const read = plain(sheet?.getCell(row + 1, column + 1).value);
      return read === value ? [] : [`${addressText({ sheet: name, row, column })}: ${read}, ${value}`];
    });
  });
}

/** A cell's value in that library: bare, as the result of a formula, or as an error. */
function plain(value: unknown): unknown {
  if (value === null || value === undefined) return "";
  if (typeof value !== "object") return value;
  if ("error" in value) return value.error;
  if ("result" in value) return plain(value.result);
  return "formula" in value || "sharedFormula" in value ? "" : value;
}
