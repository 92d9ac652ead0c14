import { Random } from "../../kit/random.ts";
import type { Tape } from "../../kit/tape.ts";
import { Effort } from "../engine/effort.ts";
import { byText, isShort } from "../engine/goal-costs.ts";
import { recordGoals } from "../engine/record-goals.ts";
import { COST_SCALE, inches, sizeUp } from "../engine/sixty-fourths.ts";
import type { NestOptions, Reached, SheetBound, Unplaced } from "../engine/types.ts";
import { laterGoals, type SheetGoals } from "./later/goals.ts";
import { leastKinds } from "./later/kinds.ts";
import { isLargest } from "./later/leftover.ts";
import { kindOf } from "./plan/alike.ts";
import type { Box } from "./plan/cuts.ts";
import type { Layout } from "./plan/layout.ts";
import { type SheetModel, type StockType, sheetModel } from "./plan/model.ts";
import { boxesOf, roomOf, sawnLayout } from "./plan/sawn.ts";
import type { NestedSheet, Placement, Rest, SheetNesting, SheetPart, SheetStock } from "./plan/types.ts";
import { type SheetSearch, searchSheets } from "./search/search.ts";

const DEFAULT_SEED = 1961;
/** Elementary steps of the usual effort. */
const USUAL_EFFORT = 68_000_000;
/** The same where parts may turn on sheets of one size: there are more ways to lay them, and no sets of sheets to choose from. */
const TURNING_EFFORT = 78_000_000;

/**
 * Cuts parts from sheets by edge-to-edge (guillotine) cuts in any number of stages, with the fewest sheets or at the
 * least cost. Preprocessing: kerf by inflation of part and sheet. Search: constructive start, column generation, and a
 * goal-driven search with a fixed effort; deterministic.
 * @param parts sizes in inches, quantity, and whether each may turn
 * @param stocks sizes in inches, cost, and how many; leftovers at cost 0
 * @throws BadInput for sizes, quantities or costs that cannot be, and for parts that fit no stock, by name
 */
export function nestSheets(
  parts: readonly SheetPart[],
  stocks: readonly SheetStock[],
  options: NestOptions,
  tape?: Tape,
): SheetNesting {
  const model = sheetModel(parts, stocks, options);
  const effort = new Effort(unitsFor(model, options), options.expired);
  const found: SheetSearch =
    model.total === 0
      ? { packing: { layouts: [], cost: 0 }, bound: 0, method: "no parts" }
      : searchSheets(model, effort, new Random(options.seed ?? DEFAULT_SEED), false);
  const later = new Effort(unitsFor(model, options), options.expired);
  const whole = found.packing.layouts.every((l) => (model.stocks[l.stock]?.index ?? -1) >= 0);
  const goals = whole
    ? laterGoals(model, found.packing, later, new Random(options.seed ?? DEFAULT_SEED))
    : { layouts: found.packing.layouts, stockProven: false };
  const nesting = describe(parts, stocks, options, model, found, goals, effort.cut || later.cut);
  if (tape) recordSheets(nesting, options, tape);
  return nesting;
}

/**
 * A proven lower bound on what `nestSheets` can reach: no cutting plan of these parts needs less.
 * Parameters and refusals as there.
 */
export function boundSheets(
  parts: readonly SheetPart[],
  stocks: readonly SheetStock[],
  options: NestOptions,
  tape?: Tape,
): SheetBound {
  const model = sheetModel(parts, stocks, options);
  if (model.total === 0) return { bound: 0, method: "no parts" };
  const effort = new Effort(unitsFor(model, options), options.expired);
  const { bound, method } = searchSheets(model, effort, new Random(options.seed ?? DEFAULT_SEED), true);
  const value = goalValue(stocks, options, bound);
  tape?.step("LB", `lower bound by ${method}`, value, options.goal === "sheets" ? "sheets" : "cost", "");
  return { bound: value, method };
}

const unitsFor = ({ types, stocks }: SheetModel, { effort = 1 }: NestOptions): number =>
  effort * (stocks.length === 1 && types.some((t) => t.turns) ? TURNING_EFFORT : USUAL_EFFORT);

function goalValue(stocks: readonly SheetStock[], options: NestOptions, units: number): number {
  return options.goal === "cost" && stocks.some((s) => s.cost > 0) ? units / COST_SCALE : units;
}

function describe(
  parts: readonly SheetPart[],
  stocks: readonly SheetStock[],
  options: NestOptions,
  model: SheetModel,
  found: SheetSearch,
  goals: SheetGoals,
  cutShort: boolean,
): SheetNesting {
  const names = new Names(parts, model);
  const stockOf = (l: Layout): StockType | undefined => model.stocks[l.stock];
  const isReal = (l: Layout): boolean => (stockOf(l)?.index ?? -1) >= 0;
  const layouts = goals.layouts
    .filter((l) => l.placed.length > 0)
    .sort((a, b) => a.stock - b.stock || roomOf(model, a) - roomOf(model, b) || byText(signature(a), signature(b)));
  const real = layouts.filter(isReal);
  const sheets = runs(real).flatMap((run) => alikeSheetsOf(run, stocks, model, names));
  const unplaced = new Map<string, number>();
  for (const p of layouts.filter((l) => !isReal(l)).flatMap((l) => l.placed)) {
    for (const { id } of names.take(p.type, 1)) unplaced.set(id, 1 + (unplaced.get(id) ?? 0));
  }
  const total = (of: (s: StockType) => number): number => real.reduce((sum, l) => sum + of(stockOf(l) ?? NO_STOCK), 0);
  const price = total((s) => s.price) / COST_SCALE;
  const value = goalValue(
    stocks,
    options,
    total((s) => s.cost),
  );
  const fits = unplaced.size === 0;
  const proven = fits && found.packing.cost === found.bound;
  return {
    sheets,
    count: sheets.length,
    cost: price,
    value,
    bound: fits ? goalValue(stocks, options, found.bound) : 0,
    method: found.method,
    proven,
    reached: reachedOf(model, real, sheets, {
      options,
      value,
      price,
      proven,
      stockProven: proven && goals.stockProven,
    }),
    short: !fits && isShort(model.stocks, found.bound),
    unplaced: [...unplaced].map(([part, quantity]) => ({ part, quantity })) satisfies Unplaced[],
    cutShort,
  };
}

const NO_STOCK: StockType = { w: 0, h: 0, cost: 0, price: 0, trim: 0, limit: 0, index: -1 };

/** What was reached of each goal, in their order. */
function reachedOf(
  model: SheetModel,
  layouts: readonly Layout[],
  sheets: readonly NestedSheet[],
  of: { options: NestOptions; value: number; price: number; proven: boolean; stockProven: boolean },
): Reached[] {
  const { options, value, price, proven, stockProven } = of;
  const kinds = new Set(layouts.map(kindOf)).size;
  const turns = sheets.reduce((sum, s) => sum + s.turns, 0);
  return [
    { goal: options.goal === "cost" ? "cost" : "count", value, proven },
    ...(options.goal === "cost" ? [] : [{ goal: "price" as const, value: price, proven: stockProven }]),
    { goal: "size of stock", value: sheets.reduce((sum, s) => sum + s.lengthIn * s.widthIn, 0), proven: stockProven },
    {
      goal: "largest leftover",
      value: Math.max(0, ...sheets.map(largestLeftover)),
      proven: isLargest(model, layouts),
    },
    { goal: "patterns", value: kinds, proven: kinds <= 1 || kinds <= leastKinds(model, sheets.length) },
    { goal: "turns", value: turns, proven: turns === 0 },
  ];
}

const largestLeftover = ({ rests: [first] }: NestedSheet): number => (first ? first.lengthIn * first.widthIn : 0);

const signature = (l: Layout): string => l.placed.map((p) => `${p.type},${p.x},${p.y},${p.turned}`).join(" ");

/** Layouts that are alike, one after the other, together. */
function runs(layouts: readonly Layout[]): Layout[][] {
  const all: Layout[][] = [];
  let last = "";
  for (const l of layouts) {
    const key = `${l.stock}:${signature(l)}`;
    if (key === last) all[all.length - 1]?.push(l);
    else all.push([l]);
    last = key;
  }
  return all;
}

/** Hands out the named parts of each type, the same name to sheets that are alike where there are enough. */
class Names {
  readonly #queues: { readonly part: SheetPart; left: number }[][];

  constructor(parts: readonly SheetPart[], model: SheetModel) {
    this.#queues = model.types.map((t) =>
      t.members.flatMap((m) => {
        const part = parts[m.part];
        return part === undefined ? [] : [{ part, left: m.quantity }];
      }),
    );
  }

  /** So many parts of a type. */
  take(type: number, count: number): SheetPart[] {
    const queue = this.#queues[type] ?? [];
    const enough = queue.filter((q) => q.left >= count).sort((a, b) => a.left - b.left)[0];
    const taken: SheetPart[] = [];
    for (const q of enough === undefined ? queue : [enough]) {
      for (; q.left > 0 && taken.length < count; q.left--) taken.push(q.part);
    }
    return taken;
  }
}

/** Sheets that are laid alike, with the names of their parts, their cuts and what they leave. */
function alikeSheetsOf(
  run: readonly Layout[],
  stocks: readonly SheetStock[],
  model: SheetModel,
  names: Names,
): NestedSheet[] {
  const { kerf } = model;
  const [l] = run;
  const s = l && model.stocks[l.stock];
  const stock = s && stocks[s.index];
  if (!l || !s || !stock) return [];
  const boxes = boxesOf(model, l);
  const plan = sawnLayout(model, l);
  const place = (b: Box): Rest => ({
    xIn: inches(b.x + s.trim),
    yIn: inches(b.y + s.trim),
    lengthIn: inches(b.w - kerf),
    widthIn: inches(b.h - kerf),
  });
  const placed = plan.freed.flatMap(({ box, cut, stage }) => {
    const [b, p] = [boxes[box], l.placed[box]];
    return b && p ? [{ b, cut, stage, parts: names.take(p.type, run.length) }] : [];
  });
  const cuts = plan.lines.map((c) => ({
    direction: c.direction,
    atIn: inches(c.at - kerf + s.trim),
    fromIn: inches(c.from + s.trim),
    toIn: inches(c.to - kerf + s.trim),
    stage: c.stage,
  }));
  const rests = plan.rests.filter((r) => r.w > kerf && r.h > kerf).map(place);
  return run.map((_, k) => ({
    stock: stock.id,
    lengthIn: stock.lengthIn,
    widthIn: stock.widthIn,
    placements: placed.flatMap(({ b, cut, stage, parts }): Placement[] => {
      const part = parts[k];
      if (part === undefined) return [];
      const turned = b.w !== b.h && sizeUp("The length", part.lengthIn) + kerf !== b.w;
      return [{ part: part.id, ...place(b), turned, cut, stage }];
    }),
    cuts,
    rests,
    turns: plan.turns,
  }));
}

/** The working of a plan: bound, goals, what is taken as given. */
export function recordSheets(nesting: SheetNesting, options: NestOptions, tape: Tape): void {
  tape.step("LB", `lower bound by ${nesting.method}`, nesting.bound, options.goal === "sheets" ? "sheets" : "cost", "");
  recordGoals(nesting, tape);
  tape.assume(
    "Every cut runs edge to edge of the piece on the saw; sizes count in whole 1/64 in, parts rounded up, stock down",
  );
  if (!nesting.proven) tape.caution("The layout is not proven to be the least: the bound is lower");
}
