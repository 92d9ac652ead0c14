import type { Cell, Table } from "../../core/kit/tape.ts";

/** Excel on the web takes at most 5 MB at once. */
const ROWS_AT_ONCE = 2000;
const LONGEST_NAME = 31;

/** Makes or replaces a worksheet; see `Host.writeSheet`. The sheet stays in its place when it is there already. */
export async function writeSheet(context: Excel.RequestContext, name: string, rows: Table): Promise<string> {
  const allowed = sheetName(name);
  const { worksheets } = context.workbook;
  const existing = worksheets.getItemOrNullObject(allowed);
  await context.sync();
  const sheet = existing.isNullObject ? worksheets.add(allowed) : existing;
  if (!existing.isNullObject) sheet.getRange().clear();

  const width = Math.max(0, ...rows.map((row) => row.length));
  for (let start = 0; start < rows.length && width > 0; start += ROWS_AT_ONCE) {
    const block = rows.slice(start, start + ROWS_AT_ONCE);
    sheet.getRangeByIndexes(start, 0, block.length, width).values = block.map((row) =>
      Array.from({ length: width }, (_, i) => asEntered(row[i] ?? "")),
    );
    await context.sync();
  }
  sheet.activate();
  await context.sync();
  return allowed;
}

/**
 * A value as one would type it. Every text gets the apostrophe that makes Excel keep it as text: it is no formula when it begins with = + - @,
 * no date when it is 7-16, no number when it is 1/2.
 */
export function asEntered(cell: Cell): Cell {
  return typeof cell === "string" && cell !== "" ? `'${cell}` : cell;
}

/** A name that Excel takes for a worksheet. */
export function sheetName(name: string): string {
  const cleaned = name
    .replace(/[\\/?*[\]:]/g, " ")
    .replace(/\s+/g, " ")
    .trim()
    .slice(0, LONGEST_NAME)
    .replace(/^'+|'+$/g, "")
    .trim();
  return cleaned === "" || /^history$/i.test(cleaned) ? "Sillwork" : cleaned;
}
