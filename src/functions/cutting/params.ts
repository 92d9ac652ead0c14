import type { LengthPart, LengthStock, NestOptions, SheetPart, SheetStock } from "../../core/cutting/index.ts";
import { BadInput, OutOfRange } from "../../core/kit/refusal.ts";
import type { Tape } from "../../core/kit/tape.ts";
import { optional } from "../declare/param.ts";
import { choice, length, number, text, whole } from "../declare/scalar.ts";
import { type RowOf, table } from "../declare/table.ts";

/** Parameters of the cutting functions, and their rows in the words of the core. */

/** Parts in one search: beyond this a host would wait too long. */
const MOST_PARTS = 3000;

const name = text({ says: "name of the part", heads: ["part", "item"] });
const partLength = length("in", { says: "length of the part, along the grain", min: 0.25, max: 1200 });
const quantity = optional(
  whole({ says: "how many", min: 1, max: MOST_PARTS, heads: ["count", "qty", "number"] }),
  1,
  "one",
);
const stockName = text({ says: "name of the stock", heads: ["stock", "sheet", "panel"] });
const stockLength = length("in", { says: "length of the stock, along the grain", min: 1, max: 1200 });
const cost = optional(
  number({ says: "cost of one; blank or 0 for a leftover that is there anyway", min: 0, max: 1e6, heads: ["price"] }),
  0,
  "no cost",
);
const available = optional(
  whole({
    says: "how many there are; blank for any number",
    min: 1,
    max: 100_000,
    heads: ["available", "count", "quantity", "qty"],
  }),
  undefined,
  "",
);

const SHEET_PARTS = {
  name,
  length: partLength,
  width: length("in", { says: "width of the part, across the grain", min: 0.25, max: 1200 }),
  quantity,
  grain: optional(
    choice(["along", "free"], {
      says: "whether the part's length must run along the sheet's, or the part may turn",
      also: { l: "along", length: "along", yes: "along", fixed: "along", none: "free", no: "free", any: "free" },
    }),
    undefined,
    "may turn",
  ),
};
const SHEET_STOCK = {
  name: stockName,
  length: stockLength,
  width: length("in", { says: "width of the stock, across the grain", min: 1, max: 1200 }),
  cost,
  number: available,
};
const LENGTH_PARTS = { name, length: { ...partLength, says: "length of the part" }, quantity };
const LENGTH_STOCK = {
  name: stockName,
  length: { ...stockLength, says: "length of the stock" },
  cost,
  number: available,
};

export const sheetParts = table(SHEET_PARTS, {
  says: "parts: name | length | width | quantity | grain (along or free); sizes in in",
  maxRows: 300,
});
export const sheetStock = table(SHEET_STOCK, {
  says: "stock sheets: name | length | width | cost | number available; sizes in in",
  maxRows: 200,
});
export const lengthParts = table(LENGTH_PARTS, {
  says: "parts: name | length | quantity; lengths in in, as BUCKS gives them",
  maxRows: 300,
});
export const lengthStock = table(LENGTH_STOCK, {
  says: "stock lengths: name | length | cost | number available; lengths in in",
  maxRows: 50,
});

export const kerf = optional(
  length("in", { says: "width of a saw cut", min: 0, max: 1 }),
  0.125,
  "a saw cut takes 1/8 in",
);
export const trim = optional(
  length("in", { says: "trimmed off each edge of a sheet, or each end of a length", min: 0, max: 24 }),
  0,
  "nothing is trimmed off the edges",
);

export const goal = (pieces: "sheets" | "lengths") =>
  optional(
    choice(["fewest", "cost"], {
      says: `what is made least: the number of ${pieces} to buy, or their cost`,
      also: { sheets: "fewest", lengths: "fewest", pieces: "fewest", number: "fewest", "least cost": "cost" },
    }),
    "fewest",
    `the fewest ${pieces}; leftovers at no cost are not counted`,
  );

export type Goal = "fewest" | "cost";

export function options(a: { readonly kerf: number; readonly trim: number; readonly goal: Goal }): NestOptions {
  return { kerfIn: a.kerf, trimIn: a.trim, goal: a.goal === "fewest" ? "sheets" : "cost" };
}

export function sheetPartsOf(rows: readonly RowOf<typeof SHEET_PARTS>[], tape: Tape | undefined): readonly SheetPart[] {
  checkTotal(rows);
  if (rows.some((r) => r.grain === undefined)) tape?.assume("Parts without a grain entry may turn.");
  return rows.map((r) => ({
    id: r.name,
    lengthIn: r.length,
    widthIn: r.width,
    quantity: r.quantity,
    turns: r.grain !== "along",
  }));
}

export function lengthPartsOf(rows: readonly RowOf<typeof LENGTH_PARTS>[]): readonly LengthPart[] {
  checkTotal(rows);
  return rows.map((r) => ({ id: r.name, lengthIn: r.length, quantity: r.quantity }));
}

export function sheetStockOf(rows: readonly RowOf<typeof SHEET_STOCK>[], goal: Goal): readonly SheetStock[] {
  checkCosts(rows, goal);
  return named(rows).map((r) => ({
    id: r.id,
    lengthIn: r.length,
    widthIn: r.width,
    cost: r.cost,
    quantity: r.number ?? null,
  }));
}

export function lengthStockOf(rows: readonly RowOf<typeof LENGTH_STOCK>[], goal: Goal): readonly LengthStock[] {
  checkCosts(rows, goal);
  return named(rows).map((r) => ({ id: r.id, lengthIn: r.length, cost: r.cost, quantity: r.number ?? null }));
}

function checkTotal(rows: readonly { readonly quantity: number }[]): void {
  const total = rows.reduce((sum, r) => sum + r.quantity, 0);
  if (total <= MOST_PARTS) return;
  throw new OutOfRange(
    `The quantities come to ${total} parts`,
    `up to ${MOST_PARTS} are nested at once`,
    "Nest part of the list at a time, by material or by floor",
  );
}

function checkCosts(rows: readonly { readonly cost: number }[], goal: Goal): void {
  if (goal !== "cost" || rows.some((r) => r.cost > 0)) return;
  throw new BadInput("The least cost is asked for", "no stock has a cost", "Give costs, or ask for the fewest");
}

/** Stocks of one name are told apart by their row. */
function named<R extends { readonly name: string; readonly row: number }>(
  rows: readonly R[],
): readonly (R & { readonly id: string })[] {
  return rows.map((r) => ({
    ...r,
    id: rows.some((other) => other !== r && other.name === r.name) ? `${r.name} (row ${r.row})` : r.name,
  }));
}

/** Refuses a nesting that leaves parts over because the stock is limited. */
export function checkPlaced(unplaced: readonly { readonly part: string; readonly quantity: number }[]): void {
  if (unplaced.length === 0) return;
  const list = unplaced.map((u) => `${u.quantity} of ${u.part}`).join(", ");
  throw new OutOfRange(
    `The stock does not hold ${list}`,
    "the numbers available are used up",
    "Add stock, or leave the number available blank for one that can be bought",
  );
}

/** What the goal counts of what is used: cost, or pieces of stock that costs something (all of it where none does). */
export function goalValue(
  used: readonly { readonly stock: string }[],
  cost: number,
  stock: readonly { readonly id: string; readonly cost: number }[],
  goal: Goal,
): number {
  if (goal === "cost") return cost;
  if (stock.every((s) => s.cost === 0)) return used.length;
  const free = new Set(stock.filter((s) => s.cost === 0).map((s) => s.id));
  return used.filter((s) => !free.has(s.stock)).length;
}

type RowsIn<P> = P extends { read(...args: never[]): { readonly value: infer T } } ? T : never;

/** What every cutting function is given, for its own kind of parts and stock. */
export interface CuttingArguments<Parts, Stock> {
  readonly parts: RowsIn<Parts>;
  readonly stock: RowsIn<Stock>;
  readonly kerf: number;
  readonly trim: number;
  readonly goal: Goal;
}
