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
  checkTotal(a.parts);
  checkPrices(a.stock, a.cuttingGoal);
  if (a.parts.some((r) => r.grain === undefined)) tape?.assume("Parts without a grain entry may turn.");
  const parts: SheetPart[] = a.parts.map((r) => ({
    id: marked(r),
    lengthIn: r.length,
    widthIn: r.width,
    quantity: r.count,
    turns: r.grain !== "along",
  }));
  const stock: SheetStock[] = named(a.stock).map((r) => ({
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
  checkTotal(a.parts);
  checkPrices(a.stock, a.cuttingGoal);
  const parts: LengthPart[] = a.parts.map((r) => ({ id: marked(r), lengthIn: r.length, quantity: r.count }));
  const stock: LengthStock[] = named(a.stock).map((r) => ({
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

const marked = (r: { readonly part: string; readonly mark: string }): string =>
  r.mark === "" ? r.part : `${r.part}${MARK}${r.mark}`;

/** Name and mark of a part as the core gives it back. */
export function nameOf(part: string): { readonly part: string; readonly mark: string } {
  const [name, mark] = part.split(MARK);
  return { part: name ?? "", mark: mark ?? "" };
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

function checkTotal(rows: readonly { readonly count: number }[]): void {
  const total = rows.reduce((sum, r) => sum + r.count, 0);
  if (total <= MOST_PARTS) return;
  throw new OutOfRange(
    `The quantities come to ${total} parts`,
    `up to ${MOST_PARTS} are nested at once`,
    "Nest part of the list at a time, by material or by floor",
  );
}

function checkPrices(rows: readonly SupplyRow[], goal: Terms["cuttingGoal"]): void {
  if (goal !== "cost" || rows.some((r) => (r.price ?? 0) > 0)) return;
  throw new BadInput("The least cost is asked for", "no stock has a price", "Give prices, or ask for the fewest");
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

/** Refuses a plan that leaves parts over, and says whether that is proven or only what was found. */
function checkPlaced(
  { unplaced, short }: { readonly unplaced: readonly Unplaced[]; readonly short: boolean },
  placed: readonly { readonly part: string }[],
): void {
  if (unplaced.length === 0) return;
  const left = unplaced.map((u) => `${u.quantity} of ${nameOf(u.part).part}`).join(", ");
  const names = [...new Set(placed.map((p) => p.part))];
  const cut = names.map((n) => `${placed.filter((p) => p.part === n).length} of ${nameOf(n).part}`).join(", ");
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
