import { Random } from "../../kit/random.ts";
import type { Tape } from "../../kit/tape.ts";
import { Effort } from "../engine/effort.ts";
import { COST_SCALE, inches, sizeUp } from "../engine/sixty-fourths.ts";
import { cutLines } from "./cuts.ts";
import type { Layout, Placed } from "./layout.ts";
import { type SheetModel, sheetModel } from "./model.ts";
import { type SheetSearch, searchSheets } from "./search.ts";
import type {
  NestedSheet,
  NestOptions,
  Placement,
  SheetBound,
  SheetNesting,
  SheetPart,
  SheetStock,
  Unplaced,
} from "./types.ts";

const DEFAULT_SEED = 1961;
/** Elementary steps of the usual effort. */
const USUAL_EFFORT = 64_000_000;

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
  const nesting = describe(parts, stocks, options, model, found, effort.cut);
  record(nesting, options, tape);
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
  const value = goalValue(model, stocks, options, bound);
  tape?.step("LB", `lower bound by ${method}`, value, options.goal === "sheets" ? "sheets" : "cost", "");
  return { bound: value, method };
}

function goalValue(_model: SheetModel, stocks: readonly SheetStock[], options: NestOptions, units: number): number {
  return options.goal === "cost" && stocks.some((s) => s.cost > 0) ? units / COST_SCALE : units;
}

function describe(
  parts: readonly SheetPart[],
  stocks: readonly SheetStock[],
  options: NestOptions,
  model: SheetModel,
  found: SheetSearch,
  cutShort: boolean,
): SheetNesting {
  const ids = new Names(parts, model);
  const order = (l: Layout): number => model.stocks[l.stock]!.index;
  const layouts = [...found.packing.layouts].sort(
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
  const cost = sheets.reduce((sum, s) => sum + stocks.find((k) => k.id === s.stock)!.cost, 0);
  const whole = unplaced.size === 0;
  return {
    sheets,
    count: sheets.length,
    cost: Math.round(cost * COST_SCALE) / COST_SCALE,
    bound: whole ? goalValue(model, stocks, options, found.bound) : 0,
    method: found.method,
    proven: whole && found.packing.cost === found.bound,
    unplaced: [...unplaced].map(([part, quantity]) => ({ part, quantity })) satisfies Unplaced[],
    cutShort,
  };
}

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
  const { unit, kerf, trim } = model;
  const lie = (p: Placed): { x: number; y: number; w: number; h: number } => {
    const t = model.types[p.type]!;
    return { x: p.x * unit, y: p.y * unit, w: (p.turned ? t.h : t.w) * unit, h: (p.turned ? t.w : t.h) * unit };
  };
  const placed = [...l.placed].sort((a, b) => a.x - b.x || a.y - b.y);
  const placements: Placement[] = placed.map((p) => {
    const b = lie(p);
    const part = ids.next(p.type);
    return {
      part: part.id,
      xIn: inches(b.x + trim),
      yIn: inches(b.y + trim),
      lengthIn: inches(b.w - kerf),
      widthIn: inches(b.h - kerf),
      turned: b.w !== b.h && sizeUp("The length", part.lengthIn) + kerf !== b.w,
    };
  });
  const s = model.stocks[l.stock]!;
  const w = s.w * unit;
  const h = s.h * unit;
  const cuts = cutLines(placed.map(lie), w, h).map((c) => ({
    direction: c.direction,
    atIn: inches(c.at - kerf + trim),
    fromIn: inches(c.from + trim),
    toIn: inches(c.to - kerf + trim),
    stage: c.stage,
  }));
  return { stock: stock.id, lengthIn: stock.lengthIn, widthIn: stock.widthIn, placements, cuts };
}

function record(nesting: SheetNesting, options: NestOptions, tape?: Tape): void {
  if (!tape) return;
  const unit = options.goal === "sheets" ? "sheets" : "cost";
  tape.step("LB", `lower bound by ${nesting.method}`, nesting.bound, unit, "");
  tape.step("n", "sheets in the layout", nesting.count, "sheets", "");
  tape.step("C", "cost of the sheets", nesting.cost, "cost", "");
  tape.assume(
    "Every cut runs edge to edge of the piece on the saw; sizes count in whole 1/64 in, parts rounded up, stock down",
  );
  if (!nesting.proven) tape.caution("The layout is not proven to be the least: the bound is lower");
  for (const u of nesting.unplaced) tape.caution(`The stock does not suffice for ${u.quantity} of ${u.part}`);
}
