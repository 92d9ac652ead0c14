import { CellValueType, type ICellData, type Nullable, type Univer } from "@univerjs/core";
import { AFTER_CELL_EDIT, SheetInterceptorService } from "@univerjs/sheets";

/** Comes before the engine's own reading of numbers, dates and times, whose handler has none. */
const BEFORE_NUMBERS = 100;

/** A foot or inch mark beside a digit; a fraction with or without whole inches; two numbers with a colon or a hyphen between them. */
const TEXTS = [
  /\d\s*['"\u2019\u201d\u2032\u2033]/,
  /^\s*-?\d+(?:[\s-]+\d+)?\s*\/\s*\d+\s*$/,
  /^\s*-?\d+(?:\.\d+)?\s*:\s*\d+(?:\.\d+)?\s*$/,
  /^\s*\d+\s*-\s*\d+(?:\s+\d+\/\d+)?\s*$/,
];

/**
 * Whether what was typed is a builder's notation that a spreadsheet would make something else of: 12'6 the number 126, 1/2 a date, 6:12 a time of day,
 * 7-16 a date. Dates with a year, times with seconds or AM stay what they are.
 */
export function staysText(typed: string): boolean {
  return TEXTS.some((notation) => notation.test(typed));
}

/** Keeps such texts as texts where they are typed into a cell. */
export function keepNotation(univer: Univer): void {
  const { writeCellInterceptor } = univer.__getInjector().get(SheetInterceptorService);
  writeCellInterceptor.intercept(AFTER_CELL_EDIT, {
    priority: BEFORE_NUMBERS,
    handler: (cell, _, next) => next(asText(cell)),
  });
}

function asText(cell: Nullable<ICellData>): Nullable<ICellData> {
  if (!cell || cell.f) return cell;
  const typed = cell.p?.body?.dataStream.replace(/\r?\n$/, "") ?? cell.v;
  if (typeof typed !== "string" || !staysText(typed)) return cell;
  return { ...cell, p: null, v: typed, t: CellValueType.FORCE_STRING };
}
