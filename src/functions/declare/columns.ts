import type { Cell, Table } from "../../core/kit/tape.ts";
import { type Returns, tableOf } from "./cell-function.ts";

type Column<R> = readonly [name: string, unit: string, cell: (row: R) => Cell];

/** Typed rows of the core as a table of the sheet: each column says where its cell comes from. */
export interface Columns<R> {
  /** the declaration of the result */
  table(says: string): Returns<Table>;
  rows(rows: readonly R[]): Table;
}

/** Columns as [name, unit, cell of a row]. */
export function columnsOf<R>(...columns: readonly [Column<R>, ...Column<R>[]]): Columns<R> {
  const [first, ...rest] = columns.map(([name, unit]) => [name, unit] as const);
  const rowsOf = (rows: readonly R[]): Table => rows.map((row) => columns.map(([, , cell]) => cell(row)));
  return {
    table: (says) => tableOf(says, [first as readonly [string, string], ...rest]),
    rows: rowsOf,
  };
}
