import { BadInput } from "../../core/kit/refusal.ts";
import { capital } from "../declare/cell.ts";
import type { Param } from "../declare/param.ts";
import { optional } from "../declare/param.ts";
import { isBlank, isRange, type Raw, type RawArgument } from "../declare/raw.ts";
import { length, number, whole } from "../declare/scalar.ts";
import { type ExampleRows, type RowOf, type TableOptions, table } from "../declare/table.ts";
import { choice, text } from "../declare/word.ts";

/**
 * The parts table and the stock table, read in one place: src/functions/cutting/tables.ts. SHEETS_* and STOCK_* take
 * them, and the courses of walls take `offcutStock`; what SHEETS_OFFCUTS, STOCK_OFFCUTS and WALL_OFFCUTS give are rows
 * of the stock table, also when nothing is left over.
 */

/** Parts in one search: beyond this a host would wait too long. */
export const MOST_PARTS = 3000;

/** Name in a result row that says there is nothing to list; such a row is read as blank. */
export const NONE = "none";

const part = text({ says: "name of the part", heads: ["part", "item", "name"] });
const partLength = length("in", { says: "length of the part, along the grain", min: 0.25, max: 1200 });
const count = optional(
  whole({ says: "how many", min: 1, max: MOST_PARTS, heads: ["count", "qty", "quantity", "number"] }),
  undefined,
  "one",
);
const mark = optional(text({ says: "mark that is written on the part" }), "", "");
const stockName = notANumber(text({ says: "name of the stock", heads: ["stock", "sheet", "panel", "offcut", "name"] }));
const stockLength = length("in", {
  says: "length of the stock, along the grain",
  min: 1,
  max: 1200,
  usual: { min: 1, max: 800, ask: "is it in inches?" },
});
const price = optional(
  number({
    says: "price of one; blank where it is there already and costs nothing",
    min: 0,
    max: 1e6,
    heads: ["price", "cost"],
  }),
  undefined,
  "",
);
const onHand = optional(
  whole({
    says: "how many there are; blank for any number",
    min: 1,
    max: 100_000,
    heads: ["number on hand", "on hand", "number", "available", "count", "quantity", "qty"],
  }),
  undefined,
  "",
);
const stockTrim = optional(
  length("in", {
    says: "trimmed off each edge; blank for the edge trim of bought stock and for nothing on leftovers",
    min: 0,
    max: 24,
  }),
  undefined,
  "",
);

const SHEET_PARTS = {
  part,
  length: partLength,
  width: length("in", { says: "width of the part, across the grain", min: 0.25, max: 1200 }),
  count,
  grain: optional(
    choice(["along", "free"], {
      says: "whether the part's length must run along the sheet's, or the part may turn",
      also: { l: "along", length: "along", yes: "along", fixed: "along", none: "free", no: "free", any: "free" },
    }),
    undefined,
    "may turn",
  ),
  mark,
};
const SHEET_STOCK = {
  stock: stockName,
  length: stockLength,
  width: length("in", {
    says: "width of the stock, across the grain",
    min: 1,
    max: 1200,
    usual: { min: 1, max: 160, ask: "is it in inches?" },
  }),
  price,
  onHand,
  trim: stockTrim,
};
const LENGTH_PARTS = {
  part,
  length: { ...partLength, says: "length of the part" },
  count,
  mark,
  // Known by its heading alone: parts that other functions give have it, and lengths have none.
  width: optional(text({ says: "not looked at: lengths have no width" }), "", ""),
};
const LENGTH_STOCK = {
  stock: stockName,
  length: { ...stockLength, says: "length of the stock" },
  price,
  onHand,
  trim: stockTrim,
};

export type SheetPartRow = RowOf<typeof SHEET_PARTS>;
export type SheetStockRow = RowOf<typeof SHEET_STOCK>;
export type LengthPartRow = RowOf<typeof LENGTH_PARTS>;
export type LengthStockRow = RowOf<typeof LENGTH_STOCK>;

export const sheetParts = table(SHEET_PARTS, {
  says: "parts: part | length | width | count | grain (along or free) | mark; sizes in in",
  maxRows: 300,
  unlike: true,
});
export const lengthParts = table(LENGTH_PARTS, {
  says: "parts: part | length | count | mark; lengths in in, as BUCKS gives them",
  maxRows: 300,
  unlike: true,
});

const sheetStockTable = (o: Partial<TableOptions>): Param<readonly SheetStockRow[], ExampleRows> =>
  withoutNone(
    table(SHEET_STOCK, {
      says: "stock sheets: stock | length | width | price | number on hand | trim; sizes in in; leftovers are stock: write them above the new sheets, or VSTACK(leftovers, stock) with all six columns in both",
      maxRows: 200,
      ...o,
    }),
  );

export const sheetStock = sheetStockTable({});

/** Leftovers to cut from where there may be none: rows of the stock table, as WALL_OFFCUTS and SHEETS_OFFCUTS give them. */
export const offcutStock = sheetStockTable({
  says: "offcuts on hand: stock | length | width | price | number on hand | trim; sizes in in",
  minRows: 0,
});

export const lengthStock = withoutNone(
  table(LENGTH_STOCK, {
    says: "stock lengths: stock | length | price | number on hand | trim; lengths in in; leftovers are stock: write them above the new lengths, or VSTACK(leftovers, stock) with all five columns in both",
    maxRows: 50,
  }),
);

/** A name that is no number: a row without its name would take every number for the one before it. */
function notANumber<E>(param: Param<string, E>): Param<string, E> {
  return {
    ...param,
    read(raw, at, notes) {
      const cell = isRange(raw) ? raw[0]?.[0] : raw;
      if (!Number.isFinite(cell)) return param.read(raw, at, notes);
      throw new BadInput(
        `${capital(at)} is ${cell}`,
        "the first column is the name of the stock, not a number",
        'Put a name in front, such as "8 ft"',
      );
    },
  };
}

/** A table in which a row that says there is nothing left over counts as blank. */
function withoutNone<T, E>(param: Param<T, E>): Param<T, E> {
  const read = (raw: RawArgument): RawArgument =>
    isRange(raw) ? raw.map((row) => (saysNone(row) ? row.map(() => null) : row)) : raw;
  return { ...param, read: (raw, at, notes) => param.read(read(raw), at, notes) };
}

function saysNone(row: readonly Raw[]): boolean {
  const filled = row.filter((cell) => !isBlank(cell) && cell !== 0);
  const [only] = filled;
  return filled.length === 1 && typeof only === "string" && only.trim().toLowerCase() === NONE;
}
