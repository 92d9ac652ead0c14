import type { LengthPart, LengthStock, NestOptions, SheetPart, SheetStock } from "../../core/cutting/index.ts";
import { BadInput, OutOfRange } from "../../core/kit/refusal.ts";
import type { Tape } from "../../core/kit/tape.ts";
import { optional } from "../declare/param.ts";
import { choice, length } from "../declare/scalar.ts";
import {
  type LengthPartRow,
  type LengthStockRow,
  MOST_PARTS,
  type SheetPartRow,
  type SheetStockRow,
} from "./tables.ts";

/** Parameters of the cutting functions but for the tables, and the tables' rows in the words of the core. */

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

export function sheetPartsOf(rows: readonly SheetPartRow[], tape: Tape | undefined): readonly SheetPart[] {
  checkTotal(rows);
  if (rows.some((r) => r.grain === undefined)) tape?.assume("Parts without a grain entry may turn.");
  return rows.map((r) => ({
    id: r.part,
    lengthIn: r.length,
    widthIn: r.width,
    quantity: r.count,
    turns: r.grain !== "along",
  }));
}

export function lengthPartsOf(rows: readonly LengthPartRow[]): readonly LengthPart[] {
  checkTotal(rows);
  return rows.map((r) => ({ id: r.part, lengthIn: r.length, quantity: r.count }));
}

export function sheetStockOf(rows: readonly SheetStockRow[], goal: Goal): readonly SheetStock[] {
  checkCosts(rows, goal);
  return named(rows).map((r) => ({
    id: r.id,
    lengthIn: r.length,
    widthIn: r.width,
    cost: r.price ?? 0,
    quantity: r.onHand ?? null,
  }));
}

export function lengthStockOf(rows: readonly LengthStockRow[], goal: Goal): readonly LengthStock[] {
  checkCosts(rows, goal);
  return named(rows).map((r) => ({ id: r.id, lengthIn: r.length, cost: r.price ?? 0, quantity: r.onHand ?? null }));
}

function checkTotal(rows: readonly { readonly count: number }[]): void {
  const total = rows.reduce((sum, r) => sum + r.count, 0);
  if (total <= MOST_PARTS) return;
  throw new OutOfRange(
    `The quantities come to ${total} parts`,
    `up to ${MOST_PARTS} are nested at once`,
    "Nest part of the list at a time, by material or by floor",
  );
}

function checkCosts(rows: readonly { readonly price: number | undefined }[], goal: Goal): void {
  if (goal !== "cost" || rows.some((r) => (r.price ?? 0) > 0)) return;
  throw new BadInput("The least cost is asked for", "no stock has a cost", "Give costs, or ask for the fewest");
}

/** Stocks of one name are told apart by their row. */
function named<R extends { readonly stock: string; readonly row: number }>(
  rows: readonly R[],
): readonly (R & { readonly id: string })[] {
  return rows.map((r) => ({
    ...r,
    id: rows.some((other) => other !== r && other.stock === r.stock) ? `${r.stock} (row ${r.row})` : r.stock,
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
