import type { SheetTemplate, TemplateCell } from "../../../templates/kit/template.ts";
import { LOOKS } from "../sheet/looks.ts";
import { setUpPrint, setWidths } from "../sheet/print.ts";
import { asEntered } from "../sheet/write-sheet.ts";
import { boxesOf } from "./boxes.ts";

/** A request carries at most 5 MB to Excel on the web; a part of a sheet stays well below, in characters. */
const CHARACTERS_AT_ONCE = 1_000_000;
/** Formats and validations of cells in one request. */
const BOXES_AT_ONCE = 400;
/** Longest list of words that a validation takes. */
const LONGEST_LIST = 255;

/** Fills a worksheet that was just made: values and formulas, number formats, looks, notes and choices, widths, print set-up. */
export async function writeCells(sheet: Excel.Worksheet, template: SheetTemplate): Promise<void> {
  const width = Math.max(1, ...template.rows.map((row) => row.length));
  for (const part of partsOf(template.rows)) {
    const range = sheet.getRangeByIndexes(part.start, 0, part.rows.length, width);
    // Texts go in while the cells are of the general format; one that is to stay text gets that format after.
    range.formulas = filled(part.rows, width, (cell) => (isFormula(cell) ? String(cell.is) : asEntered(cell.is)), "");
    range.numberFormat = filled(part.rows, width, formatOf, "General");
    await sheet.context.sync();
  }
  await dressed(sheet, template.rows);
  setWidths(sheet, template.widths);
  setUpPrint(sheet);
  await sheet.context.sync();
}

type Rows = SheetTemplate["rows"];

function partsOf(rows: Rows): { start: number; rows: Rows }[] {
  const parts: { start: number; rows: Rows[number][] }[] = [];
  let size = Number.POSITIVE_INFINITY;
  rows.forEach((row, start) => {
    const length = row.reduce((sum, cell) => sum + String(cell?.is ?? "").length + 20, 0);
    if (size + length > CHARACTERS_AT_ONCE) {
      parts.push({ start, rows: [] });
      size = 0;
    }
    size += length;
    parts.at(-1)?.rows.push(row);
  });
  return parts;
}

function filled<T>(rows: Rows, width: number, read: (cell: TemplateCell) => T, empty: T): T[][] {
  return rows.map((row) =>
    Array.from({ length: width }, (_, c) => {
      const cell = row[c];
      return cell === undefined ? empty : read(cell);
    }),
  );
}

function isFormula({ is }: TemplateCell): boolean {
  return typeof is === "string" && is.startsWith("=");
}

/** Text that is typed over an input must stay text: 6:12 would become a time of day. */
function formatOf({ is, role, format }: TemplateCell): string {
  return format ?? (role === "input" && typeof is === "string" && is !== "" ? "@" : "General");
}

async function dressed(sheet: Excel.Worksheet, rows: Rows): Promise<void> {
  let waiting = 0;
  const next = async (): Promise<void> => {
    if (++waiting % BOXES_AT_ONCE === 0) await sheet.context.sync();
  };
  for (const box of boxesOf(rows, ({ role }) => (role === undefined || role === "label" ? undefined : role))) {
    const { format } = sheet.getRangeByIndexes(box.row, box.column, box.rows, box.columns);
    const look = LOOKS[box.of];
    if (look.bold) format.font.bold = true;
    if (look.italic) format.font.italic = true;
    if (look.size !== undefined) format.font.size = look.size;
    if (look.color !== undefined) format.font.color = look.color;
    if (look.fill !== undefined) format.fill.color = look.fill;
    await next();
  }
  for (const box of boxesOf(rows, validationOf)) {
    const { dataValidation } = sheet.getRangeByIndexes(box.row, box.column, box.rows, box.columns);
    const { rule, prompt, errorAlert } = box.of;
    dataValidation.rule = rule;
    dataValidation.ignoreBlanks = true;
    if (prompt !== undefined) dataValidation.prompt = prompt;
    if (errorAlert !== undefined) dataValidation.errorAlert = errorAlert;
    await next();
  }
}

interface Validation {
  readonly rule: Excel.DataValidationRule;
  readonly prompt?: Excel.DataValidationPrompt;
  readonly errorAlert?: Excel.DataValidationErrorAlert;
}

/** The words to choose from, and what shows while the cell is selected. Other spellings are read as well: a warning, no bar. */
function validationOf({ choices, hint }: TemplateCell): Validation | undefined {
  if (choices === undefined && hint === undefined) return undefined;
  const shown = hint === undefined ? {} : { prompt: { title: "", message: hint, showPrompt: true } };
  const source = choices?.join(",") ?? "";
  if (source === "" || source.length > LONGEST_LIST) {
    return { rule: { textLength: { formula1: 0, operator: "GreaterThanOrEqualTo" } }, ...shown };
  }
  const errorAlert = { title: "", message: `One of: ${source}`.slice(0, LONGEST_LIST), showAlert: true } as const;
  return {
    rule: { list: { inCellDropDown: true, source } },
    ...shown,
    errorAlert: { ...errorAlert, style: "Warning" },
  };
}
