import {
  type LengthNesting,
  type LengthPart,
  type LengthStock,
  type NestOptions,
  nestLengths,
  nestSheets,
  type SheetNesting,
  type SheetPart,
  type SheetStock,
  type Unplaced,
} from "../../core/cutting/index.ts";
import { BadInput, OutOfRange } from "../../core/kit/refusal.ts";
import type { Tape } from "../../core/kit/tape.ts";
import { orElse } from "../basis/term.ts";
import {
  type LengthPartRow,
  type LengthStockRow,
  MOST_PARTS,
  type SheetPartRow,
  type SheetStockRow,
} from "./tables.ts";

/** The terms of a cutting problem, its rows in the words of the core, and one search for all functions that ask for it. */

export const lengthTerms = {
  kerf: orElse("kerf"),
  edgeTrim: orElse("edge trim"),
  cuttingGoal: orElse("cutting goal"),
};
export const sheetTerms = { ...lengthTerms, cuttingStages: orElse("cutting stages") };

interface Terms {
  readonly kerf: number;
  readonly edgeTrim: number;
  readonly cuttingGoal: "fewest" | "cost";
  readonly cuttingStages?: "2" | "3" | "any";
}

/** Searches kept: the answers of a workbook's cutting lists. */
const KEPT = 100;

/** Answers by problem: NEEDED, LAYOUT, BOUND, OFFCUTS and the working of one problem share one search. */
class Searches<N> {
  private readonly known = new Map<string, N>();

  find(problem: unknown, search: () => N): N {
    const key = JSON.stringify(problem);
    const found = this.known.get(key) ?? search();
    this.known.delete(key);
    this.known.set(key, found);
    if (this.known.size > KEPT) this.known.delete(this.known.keys().next().value as string);
    return found;
  }
}

const sheetSearches = new Searches<SheetNesting>();
const lengthSearches = new Searches<LengthNesting>();

export interface SheetArguments extends Terms {
  readonly parts: readonly SheetPartRow[];
  readonly stock: readonly SheetStockRow[];
}

export interface LengthArguments extends Terms {
  readonly parts: readonly LengthPartRow[];
  readonly stock: readonly LengthStockRow[];
}

/** The plan for sheets; refuses where the stock does not suffice. */
export function sheetPlan(a: SheetArguments, tape: Tape | undefined): SheetNesting {
  checkParts(a.parts, a.stock, tape);
  checkPrices(a.stock, a.cuttingGoal);
  if (a.parts.some((r) => r.grain === undefined)) tape?.assume("Parts without a grain entry may turn.");
  const parts: SheetPart[] = a.parts.map((r) => ({
    ...named(r),
    lengthIn: r.length,
    widthIn: r.width,
    quantity: r.count ?? 1,
    turns: r.grain !== "along",
  }));
  const stock: SheetStock[] = toldApart(a.stock).map((r) => ({
    id: r.id,
    lengthIn: r.length,
    widthIn: r.width,
    ...supply(r, a.edgeTrim, tape),
  }));
  const options: NestOptions = { ...optionsOf(a), ...stagesOf(a) };
  const nesting = sheetSearches.find([parts, stock, options], () => nestSheets(parts, stock, options));
  checkPlaced(
    nesting,
    nesting.sheets.flatMap((s) => s.placements),
  );
  return nesting;
}

/** The plan for lengths; refuses where the stock does not suffice. */
export function lengthPlan(a: LengthArguments, tape: Tape | undefined): LengthNesting {
  checkParts(a.parts, a.stock, tape);
  checkPrices(a.stock, a.cuttingGoal);
  const parts: LengthPart[] = a.parts.map((r) => ({ ...named(r), lengthIn: r.length, quantity: r.count ?? 1 }));
  const stock: LengthStock[] = toldApart(a.stock).map((r) => ({
    id: r.id,
    lengthIn: r.length,
    ...supply(r, a.edgeTrim, tape),
  }));
  const options = optionsOf(a);
  const nesting = lengthSearches.find([parts, stock, options], () => nestLengths(parts, stock, options));
  checkPlaced(
    nesting,
    nesting.lengths.flatMap((l) => l.pieces),
  );
  return nesting;
}

export const optionsOf = (a: Terms): NestOptions => ({
  kerfIn: a.kerf,
  trimIn: a.edgeTrim,
  goal: a.cuttingGoal === "fewest" ? "sheets" : "cost",
});

function stagesOf({ cuttingStages }: Terms): Pick<NestOptions, "stages"> {
  if (cuttingStages === "2") return { stages: 2 };
  return cuttingStages === "3" ? { stages: 3 } : {};
}

/** Between the name of a part and its mark inside the core, which knows names only. */
const MARK = "\u0001";

/** A part as the core knows it, and as sentences call it. */
const named = ({ part, mark }: { readonly part: string; readonly mark: string }) =>
  mark === "" ? { id: part } : { id: `${part}${MARK}${mark}`, name: `${part} (mark ${mark})` };

/** Name and mark of a part as the core gives it back. */
export function nameOf(part: string): { readonly part: string; readonly mark: string } {
  const [name, mark] = part.split(MARK);
  return { part: name ?? "", mark: mark ?? "" };
}

/** What sentences call a part that the core gives back. */
function called(id: string): string {
  const { part, mark } = nameOf(id);
  return named({ part, mark }).name ?? part;
}

interface SupplyRow {
  readonly price: number | undefined;
  readonly onHand: number | undefined;
  readonly trim: number | undefined;
}

/** Price, number and trim of a stock row: what is on hand without a price costs nothing and has no factory edge. */
function supply(r: SupplyRow, edgeTrim: number, tape: Tape | undefined) {
  const leftover = r.onHand !== undefined && (r.price ?? 0) === 0;
  if (leftover) {
    tape?.assume("What is on hand without a price costs nothing, is not counted as bought, and has no edges trimmed.");
  }
  const trimIn = r.trim !== undefined && r.trim > 0 ? r.trim : leftover ? 0 : edgeTrim;
  return { cost: r.price ?? 0, quantity: r.onHand ?? null, trimIn };
}

interface PartRow {
  readonly part: string;
  readonly length: number;
  readonly count: number | undefined;
}

/** Parts no longer than this beside longer stock may have been meant in feet. */
const SHORT_PARTS_IN = 16;
const LONG_STOCK_IN = 72;

/** What is asked of the parts and the stock before the search. */
export function asksOf(
  a: { readonly parts: readonly PartRow[]; readonly stock: readonly { readonly length: number }[] },
  tape: Tape,
): void {
  checkParts(a.parts, a.stock, tape);
}

/** Refuses too many parts, and rows that were written without their names; says where feet may be meant. */
function checkParts(rows: readonly PartRow[], stock: readonly { readonly length: number }[], tape?: Tape): void {
  const total = rows.reduce((sum, r) => sum + (r.count ?? 1), 0);
  if (total > MOST_PARTS) {
    throw new OutOfRange(
      `The quantities come to ${total} parts`,
      `up to ${MOST_PARTS} are nested at once`,
      "Nest part of the list at a time, by material or by floor",
    );
  }
  const [first] = rows;
  if (first !== undefined && rows.every((r) => Number.isFinite(Number(r.part)) && r.count === undefined)) {
    throw new BadInput(
      `The part in row 1 is named ${first.part} and has no count`,
      "the first column is the name of the part, and without it every number is taken for the one before it",
      "Put a name in front, or fill in how many there are",
    );
  }
  const longest = Math.max(...rows.map((r) => r.length));
  if (longest <= SHORT_PARTS_IN && stock.some((s) => s.length >= LONG_STOCK_IN)) {
    tape?.caution(
      `No part is longer than ${SHORT_PARTS_IN} in: a bare number is in inches. Where feet are meant, write 8 ft.`,
    );
  }
}

function checkPrices(rows: readonly SupplyRow[], goal: Terms["cuttingGoal"]): void {
  if (goal !== "cost" || rows.some((r) => (r.price ?? 0) > 0)) return;
  throw new BadInput("The least cost is asked for", "no stock has a price", "Give prices, or ask for the fewest");
}

/** Stocks of one name are told apart by their row. */
function toldApart<R extends { readonly stock: string; readonly row: number }>(
  rows: readonly R[],
): readonly (R & { readonly id: string })[] {
  return rows.map((r) => ({
    ...r,
    id: rows.some((other) => other !== r && other.stock === r.stock) ? `${r.stock} (row ${r.row})` : r.stock,
  }));
}

/** Refuses a plan that leaves parts over, and says whether that is proven or only what was found. */
function checkPlaced(
  { unplaced, short }: { readonly unplaced: readonly Unplaced[]; readonly short: boolean },
  placed: readonly { readonly part: string }[],
): void {
  if (unplaced.length === 0) return;
  const left = unplaced.map((u) => `${u.quantity} of ${called(u.part)}`).join(", ");
  const names = [...new Set(placed.map((p) => p.part))];
  const cut = names.map((n) => `${placed.filter((p) => p.part === n).length} of ${called(n)}`).join(", ");
  const could = cut === "" ? "nothing could be cut" : `${cut} could be cut`;
  if (short) {
    throw new OutOfRange(
      `The stock does not hold all parts: ${left} left over, ${could}`,
      "no plan cuts all parts from the numbers on hand",
      "Add stock, or leave the number on hand blank for one that can be bought",
    );
  }
  throw new OutOfRange(
    `No plan was found within the effort: ${left} left to cut, ${could}`,
    "the search ends after a fixed effort, and it is not proven that the numbers on hand are too few",
    "Add a little stock, or look for a plan by hand from what could be cut",
  );
}
