import type { Table, Tape } from "../../core/kit/tape.ts";
import type { Columns } from "../declare/columns.ts";

/** Typed rows as the cells of a result, written as the last step of the working. */
export function shown<R>(
  columns: Columns<R>,
  rows: readonly R[],
  tape: Tape | undefined,
  says: { readonly symbol: string; readonly rule: string; readonly unit?: string; readonly clause?: string },
): Table {
  const cells = columns.rows(rows);
  tape?.step(says.symbol, says.rule, cells, says.unit ?? "", says.clause ?? "");
  return cells;
}
