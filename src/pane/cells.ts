import { addressText, columnLetters } from "../hosts/host.ts";
import type { CellAddress } from "../hosts/ledger.ts";

/** Cells that stand one below the other, as one place to go to. */
export interface CellRun {
  readonly first: CellAddress;
  readonly count: number;
  /** `Wall!B4` or `Wall!B4:B9` */
  readonly text: string;
}

/** Gathers cells into runs down a column: sheet by sheet, column by column. Sheets keep the order in which they come. */
export function runs(cells: readonly CellAddress[]): CellRun[] {
  const sheets = [...new Set(cells.map((c) => c.sheet))];
  const order = new Map(sheets.map((sheet, i) => [sheet, i]));
  const sorted = [...cells].sort(
    (a, b) => (order.get(a.sheet) ?? 0) - (order.get(b.sheet) ?? 0) || a.column - b.column || a.row - b.row,
  );
  const out: { first: CellAddress; count: number }[] = [];
  for (const cell of sorted) {
    const last = out.at(-1);
    if (last !== undefined && last.first.sheet === cell.sheet && last.first.column === cell.column) {
      const gap = cell.row - last.first.row - last.count;
      if (gap === -1) continue;
      if (gap === 0) {
        last.count++;
        continue;
      }
    }
    out.push({ first: cell, count: 1 });
  }
  return out.map(({ first, count }) => ({ first, count, text: runText(first, count) }));
}

function runText(first: CellAddress, count: number): string {
  const end = count === 1 ? "" : `:${columnLetters(first.column)}${first.row + count}`;
  return addressText(first) + end;
}
