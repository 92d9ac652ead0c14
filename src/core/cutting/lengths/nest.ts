import { Random } from "../../kit/random.ts";
import type { Tape } from "../../kit/tape.ts";
import { at } from "../engine/at.ts";
import { Effort } from "../engine/effort.ts";
import { isShort } from "../engine/goal-costs.ts";
import type { Column } from "../engine/master.ts";
import { recordGoals } from "../engine/record-goals.ts";
import { COST_SCALE, inches } from "../engine/sixty-fourths.ts";
import type { NestOptions, Reached, SheetBound } from "../engine/types.ts";
import { type LengthGoals, laterGoals } from "./later/goals.ts";
import { type LengthModel, type LengthStockType, lengthModel } from "./model/model.ts";
import type { LengthNesting, LengthPart, LengthStock, NestedLength, Piece } from "./model/types.ts";
import { type LengthSearch, searchLengths } from "./search/search.ts";

const DEFAULT_SEED = 1961;
const USUAL_EFFORT = 400_000_000;
/** Effort of the later goals where the first one took all. */
const LEAST_LATER = 20_000_000;

/**
 * Cuts parts from stock lengths with the fewest pieces or at the least cost, by column generation and diving with a
 * fixed effort; deterministic.
 * @param parts lengths in inches and quantity
 * @param stocks lengths in inches, cost, and how many
 * @throws BadInput for sizes, quantities or costs that cannot be, and for parts that fit no stock, by name
 */
export function nestLengths(
  parts: readonly LengthPart[],
  stocks: readonly LengthStock[],
  options: NestOptions,
  tape?: Tape,
): LengthNesting {
  const model = lengthModel(parts, stocks, options);
  const effort = new Effort((options.effort ?? 1) * USUAL_EFFORT, options.expired);
  const found: LengthSearch =
    model.total === 0
      ? { plan: { columns: [], cost: 0 }, bound: 0, method: "no parts" }
      : searchLengths(model, effort, new Random(options.seed ?? DEFAULT_SEED), false);
  const random = new Random(options.seed ?? DEFAULT_SEED);
  // a long search leaves the later goals less, so that all together end in time
  const later = new Effort(effort.remaining + LEAST_LATER * (options.effort ?? 1), options.expired);
  const goals =
    found.plan.columns.every((c) => at(model.stocks, c.stock).index >= 0) && model.total > 0
      ? laterGoals(model, found.plan, later, random)
      : { columns: found.plan.columns, stockProven: false, leftoverProven: false, patternsProven: false };
  const nesting = describe(parts, stocks, options, model, found, goals, effort.cut || later.cut);
  if (tape) recordLengths(nesting, options, tape);
  return nesting;
}

/** A proven lower bound on what `nestLengths` can reach. Parameters and refusals as there. */
export function boundLengths(
  parts: readonly LengthPart[],
  stocks: readonly LengthStock[],
  options: NestOptions,
  tape?: Tape,
): SheetBound {
  const model = lengthModel(parts, stocks, options);
  if (model.total === 0) return { bound: 0, method: "no parts" };
  const effort = new Effort((options.effort ?? 1) * USUAL_EFFORT, options.expired);
  const { bound, method } = searchLengths(model, effort, new Random(options.seed ?? DEFAULT_SEED), true);
  const value = goalValue(stocks, options, bound);
  tape?.step("LB", `lower bound by ${method}`, value, options.goal === "sheets" ? "pieces" : "cost", "");
  return { bound: value, method };
}

const goalValue = (stocks: readonly LengthStock[], options: NestOptions, units: number): number =>
  options.goal === "cost" && stocks.some((s) => s.cost > 0) ? units / COST_SCALE : units;

function describe(
  parts: readonly LengthPart[],
  stocks: readonly LengthStock[],
  options: NestOptions,
  model: LengthModel,
  found: LengthSearch,
  goals: LengthGoals,
  cutShort: boolean,
): LengthNesting {
  const queues = model.types.map((t) => t.members.map((m) => ({ id: at(parts, m.part).id, left: m.quantity })));
  const left = model.types.map((t) => t.need);
  const columns = [...goals.columns].sort(
    (a, b) => a.stock - b.stock || compareLists(a.types, b.types) || compareLists(b.counts, a.counts),
  );
  const lengths: NestedLength[] = [];
  const unplaced = new Map<string, number>();
  for (const c of columns) {
    const ids: { id: string; size: number }[] = [];
    c.types.forEach((t, k) => {
      for (let n = 0; n < at(c.counts, k) && at(left, t) > 0; n++) {
        left[t] = at(left, t) - 1;
        const queue = at(queues, t);
        while (at(queue, 0).left === 0) queue.shift();
        at(queue, 0).left--;
        ids.push({ id: at(queue, 0).id, size: at(model.types, t).size });
      }
    });
    const s = at(model.stocks, c.stock);
    if (ids.length === 0) continue;
    if (s.index < 0) for (const { id } of ids) unplaced.set(id, 1 + (unplaced.get(id) ?? 0));
    else lengths.push(lay(ids, at(stocks, s.index), s, model));
  }
  const whole = unplaced.size === 0;
  const proven = whole && found.plan.cost === found.bound;
  const units = columns.reduce(
    (sum, c) => sum + (at(model.stocks, c.stock).index < 0 ? 0 : at(model.stocks, c.stock).cost),
    0,
  );
  const value = goalValue(stocks, options, units);
  return {
    lengths,
    count: lengths.length,
    cost: columns.reduce((sum, c) => sum + at(model.stocks, c.stock).price, 0) / COST_SCALE,
    value,
    reached: reached(lengths, value, options, proven, goals, columns, model),
    bound: whole ? goalValue(stocks, options, found.bound) : 0,
    method: found.method,
    proven,
    short: !whole && isShort(model.stocks, found.bound),
    unplaced: [...unplaced].map(([part, quantity]) => ({ part, quantity })),
    cutShort,
  };
}

function reached(
  lengths: readonly NestedLength[],
  value: number,
  options: NestOptions,
  proven: boolean,
  goals: LengthGoals,
  columns: readonly Column[],
  model: LengthModel,
): Reached[] {
  const price = columns.reduce((sum, c) => sum + at(model.stocks, c.stock).price, 0) / COST_SCALE;
  const best = proven && goals.stockProven;
  // of several stocks others may be as good for the goals before and leave more
  const single = best && model.stocks.filter((s) => s.index >= 0).length === 1;
  const leftover = single && goals.leftoverProven;
  const patterns = new Set(columns.map((c) => `${c.stock}:${c.types}:${c.counts}`)).size;
  return [
    { goal: options.goal === "cost" ? "cost" : "count", value, proven },
    ...(options.goal === "cost" ? [] : [{ goal: "price" as const, value: price, proven: best }]),
    { goal: "size of stock", value: lengths.reduce((sum, l) => sum + l.lengthIn, 0), proven: best },
    { goal: "longest leftover", value: Math.max(0, ...lengths.map((l) => l.restIn)), proven: leftover },
    { goal: "patterns", value: patterns, proven: patterns <= 1 || (leftover && goals.patternsProven) },
  ];
}

function compareLists(a: readonly number[], b: readonly number[]): number {
  for (let i = 0; i < a.length && i < b.length; i++) if (a[i] !== b[i]) return at(a, i) - at(b, i);
  return a.length - b.length;
}

function lay(
  ids: readonly { id: string; size: number }[],
  stock: LengthStock,
  { size, trim }: LengthStockType,
  model: LengthModel,
): NestedLength {
  let at = 0;
  const pieces: Piece[] = ids.map((p) => {
    const piece = {
      part: p.id,
      atIn: inches(at * model.unit + trim),
      lengthIn: inches(p.size * model.unit - model.kerf),
    };
    at += p.size;
    return piece;
  });
  return {
    stock: stock.id,
    lengthIn: stock.lengthIn,
    pieces,
    restIn: inches(Math.max(0, (size - at) * model.unit - model.kerf)),
  };
}

/** The working of a plan: bound, goals, what is taken as given. */
export function recordLengths(nesting: LengthNesting, options: NestOptions, tape: Tape): void {
  tape.step("LB", `lower bound by ${nesting.method}`, nesting.bound, options.goal === "sheets" ? "pieces" : "cost", "");
  recordGoals(nesting, tape);
  tape.assume("Lengths count in whole 1/64 in, parts rounded up, stock down; one kerf between any two pieces");
  if (!nesting.proven) tape.caution("The plan is not proven to be the least: the bound is lower");
}
