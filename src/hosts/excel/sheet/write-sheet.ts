import type { Cell, Table } from "../../../core/kit/tape.ts";
import { reportLook, reportRuns } from "../../../workbook/report.ts";
import { LOOKS } from "./looks.ts";
import { setUpPrint, setWidths } from "./print.ts";
import { runInExcel, wholeOrNothing } from "./run.ts";

/** Excel on the web takes at most 5 MB at once. */
const ROWS_AT_ONCE = 2000;
const LONGEST_NAME = 31;

/** Marks a worksheet as one that the add-in wrote, so that the next one may take its place; no other is ever written over. */
const MARK = "sillwork-report";

/**
 * Makes a worksheet, or fills the one of this name anew where the add-in wrote it; see `Host.writeSheet`. A sheet of the user's own with that name stays,
 * and the new one gets a number.
 */
export async function writeSheet(name: string, rows: Table): Promise<string> {
  const wanted = sheetName(name);
  const isThere = await runInExcel(async (context) => (await reportNamed(context, wanted)) !== undefined);
  if (isThere) {
    await runInExcel(async (context) => {
      const sheet = context.workbook.worksheets.getItem(wanted);
      sheet.getRange().clear();
      await fill(sheet, rows);
    });
    return wanted;
  }
  const free = await runInExcel((context) => freeName(context, wanted));
  await wholeOrNothing(
    (context) => {
      const sheet = context.workbook.worksheets.add(free);
      sheet.customProperties.add(MARK, wanted);
      return fill(sheet, rows);
    },
    (context) => takeOutSheet(context, free),
    `Delete the worksheet ${free} if it is there: it is not whole.`,
  );
  return free;
}

async function fill(sheet: Excel.Worksheet, rows: Table): Promise<void> {
  const width = Math.max(0, ...rows.map((row) => row.length));
  for (let start = 0; start < rows.length && width > 0; start += ROWS_AT_ONCE) {
    const block = rows.slice(start, start + ROWS_AT_ONCE);
    sheet.getRangeByIndexes(start, 0, block.length, width).values = block.map((row) =>
      Array.from({ length: width }, (_, i) => asEntered(row[i] ?? "")),
    );
    await sheet.context.sync();
  }
  if (width > 0) dress(sheet, rows, width);
  sheet.activate();
  await sheet.context.sync();
}

function dress(sheet: Excel.Worksheet, rows: Table, width: number): void {
  const { roles, widths } = reportLook(rows);
  setWidths(sheet, widths);
  for (const { role, start, count } of reportRuns(roles)) {
    const { format } = sheet.getRangeByIndexes(start, 0, count, width);
    if (role === "row") {
      format.wrapText = true;
      format.verticalAlignment = "Top";
      format.autofitRows();
    } else if (role !== "sentence") {
      const { bold, size, fill } = LOOKS[role];
      if (bold !== undefined) format.font.bold = bold;
      if (size !== undefined) format.font.size = size;
      if (fill !== undefined) format.fill.color = fill;
    }
  }
  setUpPrint(sheet);
}

/** Deletes a worksheet that was just made, where it is there. */
export async function takeOutSheet(context: Excel.RequestContext, name: string): Promise<void> {
  const sheet = context.workbook.worksheets.getItemOrNullObject(name);
  await context.sync();
  if (sheet.isNullObject) return;
  sheet.delete();
  await context.sync();
}

/** The worksheet that the add-in wrote under this name before, if it is still there. */
async function reportNamed(context: Excel.RequestContext, name: string): Promise<Excel.Worksheet | undefined> {
  const sheet = context.workbook.worksheets.getItemOrNullObject(name);
  await context.sync();
  if (sheet.isNullObject) return undefined;
  const mark = sheet.customProperties.getItemOrNullObject(MARK);
  await context.sync();
  return mark.isNullObject ? undefined : sheet;
}

/** A name that no worksheet has: the one asked for, else with a number. */
export async function freeName(context: Excel.RequestContext, asked: string): Promise<string> {
  const { worksheets } = context.workbook;
  worksheets.load("items/name");
  await context.sync();
  const taken = new Set(worksheets.items.map(({ name }) => name.toLowerCase()));
  for (let number = 1; ; number++) {
    const end = number === 1 ? "" : ` (${number})`;
    const name = `${sheetName(asked).slice(0, LONGEST_NAME - end.length)}${end}`;
    if (!taken.has(name.toLowerCase())) return name;
  }
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
