import type { Table, Tape } from "../../core/kit/tape.ts";
import type { Columns } from "./columns.ts";

/** Rows as the sheet gets them, written down as the last step of the working. */
export function spill<R>(columns: Columns<R>, rows: readonly R[], symbol: string, says: string, tape?: Tape): Table {
  const table = columns.rows(rows);
  tape?.step(symbol, says, table, "", "");
  return table;
}
