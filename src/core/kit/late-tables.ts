/** Large tables that most workbooks never ask for: whoever runs the calculations loads them when a call first needs one. */
export type LateTable = "climate stations" | "county zones";

/**
 * Says that a calculation needs a table that has not been provided yet. It is no refusal: with the table provided, the same call gives its answer.
 */
export class NeedsTable extends Error {
  override readonly name = "NeedsTable";
  readonly table: LateTable;

  constructor(table: LateTable) {
    super(`The table of ${table} is not loaded`);
    this.table = table;
  }
}

const provided = new Map<LateTable, string>();

/** Hands over the text of a table. */
export function provideTable(table: LateTable, text: string): void {
  provided.set(table, text);
}

/**
 * The text of a table.
 * @throws NeedsTable while it has not been provided
 */
export function lateTable(table: LateTable): string {
  const text = provided.get(table);
  if (text === undefined) throw new NeedsTable(table);
  return text;
}
