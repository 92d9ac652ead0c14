import { addressText, columnLetters } from "../../workbook/host.ts";
import type { CellAddress } from "../../workbook/ledger.ts";

/** Cells that stand one below the other, as one place to go to. */
export interface CellRun {
  readonly first: CellAddress;
  readonly count: number;
  /** `Wall!B4` or `Wall!B4:B9` */
  readonly text: string;
}

/** Gathers cells into runs down a column: sheet by sheet, column by column. Sheets keep the order in which they come. */
export function runs(cells: readonly CellAddress[]): CellRun[] {
  // Thousands of cells come in the order of the ledger, so that the rows of a column are in order already.
  const sheets = new Map<string, Map<number, CellAddress[]>>();
  for (const cell of cells) {
    const columns = sheets.get(cell.sheet) ?? new Map<number, CellAddress[]>();
    sheets.set(cell.sheet, columns);
    const column = columns.get(cell.column);
    if (column === undefined) columns.set(cell.column, [cell]);
    else column.push(cell);
  }
  return [...sheets.values()].flatMap((columns) =>
    [...columns].sort(([a], [b]) => a - b).flatMap(([, column]) => downColumn(column.sort((a, b) => a.row - b.row))),
  );
}

function downColumn(column: readonly CellAddress[]): CellRun[] {
  const out: { first: CellAddress; count: number }[] = [];
  for (const cell of column) {
    const last = out.at(-1);
    const gap = last === undefined ? 1 : cell.row - last.first.row - last.count;
    if (last === undefined || gap > 0) out.push({ first: cell, count: 1 });
    else if (gap === 0) last.count++;
  }
  return out.map(({ first, count }) => ({ first, count, text: runText(first, count) }));
}

function runText(first: CellAddress, count: number): string {
  const end = count === 1 ? "" : `:${columnLetters(first.column)}${first.row + count}`;
  return addressText(first) + end;
}
