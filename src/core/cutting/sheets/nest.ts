import { Random } from "../../kit/random.ts";
import type { Tape } from "../../kit/tape.ts";
import { Effort } from "../engine/effort.ts";
import { isShort } from "../engine/goal-costs.ts";
import { recordGoals } from "../engine/record-goals.ts";
import { COST_SCALE, inches, sizeUp } from "../engine/sixty-fourths.ts";
import type { NestOptions, SheetBound, Unplaced } from "../engine/types.ts";
import { laterGoals, type SheetGoals } from "./goals.ts";
import { kindOf } from "./plan/alike.ts";
import { type Box, cutPlan } from "./plan/cuts.ts";
import type { Layout } from "./plan/layout.ts";
import { type SheetModel, sheetModel } from "./plan/model.ts";
import type { NestedSheet, Placement, Rest, SheetNesting, SheetPart, SheetStock } from "./plan/types.ts";
import { type SheetSearch, searchSheets } from "./search.ts";

const DEFAULT_SEED = 1961;
/** Elementary steps of the usual effort. */
const USUAL_EFFORT = 76_000_000;

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
  const effort = new Effort((options.effort ?? 1) * USUAL_EFFORT, options.expired);
  const found: SheetSearch =
    model.total === 0
      ? { packing: { layouts: [], cost: 0 }, bound: 0, method: "no parts" }
      : searchSheets(model, effort, new Random(options.seed ?? DEFAULT_SEED), false);
  const later = new Effort((options.effort ?? 1) * USUAL_EFFORT, options.expired);
  const whole = found.packing.layouts.every((l) => model.stocks[l.stock]!.index >= 0);
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
  const effort = new Effort((options.effort ?? 1) * USUAL_EFFORT, options.expired);
  const { bound, method } = searchSheets(model, effort, new Random(options.seed ?? DEFAULT_SEED), true);
  const value = goalValue(stocks, options, bound);
  tape?.step("LB", `lower bound by ${method}`, value, options.goal === "sheets" ? "sheets" : "cost", "");
  return { bound: value, method };
}

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
  const ids = new Names(parts, model);
  const order = (l: Layout): number => model.stocks[l.stock]!.index;
  const layouts = goals.layouts
    .filter((l) => l.placed.length > 0)
    .sort(
      (a, b) => a.stock - b.stock || filled(model, b) - filled(model, a) || signature(a).localeCompare(signature(b)),
    );
  const sheets: NestedSheet[] = [];
  const unplaced = new Map<string, number>();
  for (const l of layouts) {
    if (order(l) >= 0) sheets.push(sheet(stocks[order(l)]!, l, model, ids));
    else {
      for (const p of l.placed) {
        const { id } = ids.next(p.type);
        unplaced.set(id, 1 + (unplaced.get(id) ?? 0));
      }
    }
  }
  const used = layouts.map((l) => model.stocks[l.stock]!).filter((s) => s.index >= 0);
  const price = used.reduce((sum, s) => sum + s.price, 0) / COST_SCALE;
  const fits = unplaced.size === 0;
  const proven = fits && found.packing.cost === found.bound;
  const value = goalValue(
    stocks,
    options,
    used.reduce((sum, s) => sum + s.cost, 0),
  );
  const kinds = new Set(layouts.map(kindOf)).size;
  const best = proven && goals.stockProven;
  return {
    sheets,
    count: sheets.length,
    cost: price,
    value,
    bound: fits ? goalValue(stocks, options, found.bound) : 0,
    method: found.method,
    proven,
    reached: [
      { goal: options.goal === "cost" ? "cost" : "count", value, proven },
      ...(options.goal === "cost" ? [] : [{ goal: "price" as const, value: price, proven: best }]),
      { goal: "size of stock", value: sheets.reduce((sum, s) => sum + s.lengthIn * s.widthIn, 0), proven: best },
      { goal: "largest leftover", value: Math.max(0, ...sheets.map(largestLeftover)), proven: false },
      { goal: "patterns", value: kinds, proven: kinds <= 1 },
      { goal: "turns", value: sheets.reduce((sum, s) => sum + s.turns, 0), proven: false },
    ],
    short: !fits && isShort(model.stocks, found.bound),
    unplaced: [...unplaced].map(([part, quantity]) => ({ part, quantity })) satisfies Unplaced[],
    cutShort,
  };
}

const largestLeftover = ({ rests: [first] }: NestedSheet): number => (first ? first.lengthIn * first.widthIn : 0);

const filled = (model: SheetModel, l: Layout): number =>
  l.placed.reduce((sum, p) => sum + model.types[p.type]!.area, 0);

const signature = (l: Layout): string => l.placed.map((p) => `${p.type},${p.x},${p.y}`).join(" ");

/** Hands out the named parts of each type in their fixed order. */
class Names {
  private readonly queues: { part: SheetPart; left: number }[][];

  constructor(parts: readonly SheetPart[], model: SheetModel) {
    this.queues = model.types.map((t) => t.members.map((m) => ({ part: parts[m.part]!, left: m.quantity })));
  }

  next(type: number): SheetPart {
    const queue = this.queues[type]!;
    while (queue[0]!.left === 0) queue.shift();
    queue[0]!.left--;
    return queue[0]!.part;
  }
}

function sheet(stock: SheetStock, l: Layout, model: SheetModel, ids: Names): NestedSheet {
  const { unit, kerf } = model;
  const s = model.stocks[l.stock]!;
  const boxes = l.placed.map((p) => {
    const t = model.types[p.type]!;
    return { x: p.x * unit, y: p.y * unit, w: (p.turned ? t.h : t.w) * unit, h: (p.turned ? t.w : t.h) * unit };
  });
  const plan = cutPlan(boxes, s.w * unit, s.h * unit, model.stages);
  const place = (b: Box): Rest => ({
    xIn: inches(b.x + s.trim),
    yIn: inches(b.y + s.trim),
    lengthIn: inches(b.w - kerf),
    widthIn: inches(b.h - kerf),
  });
  const placements: Placement[] = plan.freed.map(({ box, cut, stage }) => {
    const b = boxes[box]!;
    const part = ids.next(l.placed[box]!.type);
    const turned = b.w !== b.h && sizeUp("The length", part.lengthIn) + kerf !== b.w;
    return { part: part.id, ...place(b), turned, cut, stage };
  });
  const cuts = plan.lines.map((c) => ({
    direction: c.direction,
    atIn: inches(c.at - kerf + s.trim),
    fromIn: inches(c.from + s.trim),
    toIn: inches(c.to - kerf + s.trim),
    stage: c.stage,
  }));
  const rests = plan.rests.filter((r) => r.w > kerf && r.h > kerf).map(place);
  return {
    stock: stock.id,
    lengthIn: stock.lengthIn,
    widthIn: stock.widthIn,
    placements,
    cuts,
    rests,
    turns: plan.turns,
  };
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
