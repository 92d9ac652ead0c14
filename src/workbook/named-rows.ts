import type { Cell, Table } from "../core/kit/tape.ts";
import { addressText, columnLetters, parseAddress } from "./host.ts";
import type { CellAddress } from "./ledger.ts";

/** The name of the range that holds the basis, and the worksheet that is made for it. */
export const BASIS_NAME = "Basis";
export const SITE_SHEET = "Site basis";
/** Name, value and unit; what stands beside them is a note, outside the named range. */
export const BASIS_COLUMNS = 3;

/** A unit is no longer than this; a longer text behind a value is a note. */
const LONGEST_UNIT = 16;

/** What the cells before and behind a value say of it. */
export function besideOf(before: unknown, behind: unknown): { readonly label: string; readonly unit: string } {
  return {
    label: typeof before === "string" ? before : "",
    unit: typeof behind === "string" && behind.length <= LONGEST_UNIT ? behind : "",
  };
}

/** A rectangle of cells. */
export interface CellRange {
  readonly first: CellAddress;
  readonly rows: number;
  readonly columns: number;
}

/** What must be written so that a range holds other rows: cells that differ, and rows below the range. */
export interface RowChanges {
  readonly cells: readonly { readonly row: number; readonly column: number; readonly value: Cell }[];
  readonly added: Table;
}

/** Cells that hold what they should already, a formula among them, are left alone. Columns that the range has not are written in new rows only. */
export function changesOf(before: Table, after: Table): RowChanges {
  const cells = before.flatMap((line, row) =>
    line.flatMap((held, column) => {
      const value = after[row]?.[column];
      return value === undefined || value === held ? [] : [{ row, column, value }];
    }),
  );
  return { cells, added: after.slice(before.length) };
}

/** `'Site basis'!$A$1:$C$9`, or one cell without the colon, as a name keeps it. */
export function rangeText({ first, rows, columns }: CellRange): string {
  const corner = (row: number, column: number) => `$${columnLetters(column)}$${row + 1}`;
  const sheet = addressText({ ...first, row: 0, column: 0 }).replace(/A1$/, "");
  const end = corner(first.row + rows - 1, first.column + columns - 1);
  return rows === 1 && columns === 1 ? `${sheet}${end}` : `${sheet}${corner(first.row, first.column)}:${end}`;
}

/** Reads `Site!$A$3:$C$9` or one cell with its sheet; undefined for anything else, such as a constant. */
export function parseRange(text: string): CellRange | undefined {
  const [start = "", end] = text.replace(/^=/, "").split(/:(?=[^:!']*$)/);
  const first = parseAddress(start);
  const last = end === undefined ? first : parseAddress(`x!${end}`);
  if (first === undefined || last === undefined) return undefined;
  return { first, rows: last.row - first.row + 1, columns: last.column - first.column + 1 };
}
