import type { Random } from "../../../kit/random.ts";
import type { Effort } from "../../engine/effort.ts";
import type { Layout } from "../plan/layout.ts";
import type { PartType, SheetModel } from "../plan/model.ts";
import { leftoverOf, roomOf, sawnLayout } from "../plan/sawn.ts";
import { GoalSearch } from "../search/goal-search.ts";
import { Relay } from "./relay.ts";
import { onSameSheets } from "./same-sheets.ts";

/** Share of the effort for moving parts off the emptiest sheet one by one. */
const MOVING = 0.15;
/** Widths of a leftover that are tried on one stock in one direction, and the share of the effort of each. */
const WIDTHS = 6;
const EACH = 0.1;
/** Work of one of them by itself, for each part. */
const STRIP_STEPS = 800;
/** Widths nearer to each other than this share of the sheet are one. */
const CLOSE = 0.01;

/** The largest leftover of a layout, square sixty-fourths. */
export const largestRest = (model: SheetModel, l: Layout): number => leftoverOf(sawnLayout(model, l), model.kerf);

/** The largest leftover of all. */
export const largestOf = (model: SheetModel, layouts: readonly Layout[]): number =>
  Math.max(0, ...layouts.map((l) => largestRest(model, l)));

/**
 * Whether no leftover can be larger: it is all that the parts leave of the sheets, or a sheet with one part alone leaves
 * no more.
 */
export function isLargest(model: SheetModel, layouts: readonly Layout[]): boolean {
  const free = layouts.reduce((sum, l) => sum + roomOf(model, l), 0);
  const sizes = model.types.flatMap((t) => (t.turns ? [t, { w: t.h, h: t.w }] : [t]));
  const beside = model.stocks.flatMap((s) => {
    if (s.index < 0) return [];
    return sizes.map((t) => (t.w <= s.w && t.h <= s.h ? Math.max((s.w - t.w) * s.h, s.w * (s.h - t.h)) : 0));
  });
  const most = Math.min(free, Math.max(0, ...beside)) * model.unit ** 2;
  return layouts.some((l) => {
    const [first] = sawnLayout(model, l).rests;
    return most === 0 || (first !== undefined && first.w * first.h >= most);
  });
}

/**
 * The same sheets with one large leftover. Parts of the sheet with the most room go to the others as long as there is a
 * way to lay them; then a leftover as wide as can be is looked for as if it were one more part.
 */
export function keepOneLarge(
  model: SheetModel,
  layouts: readonly Layout[],
  random: Random,
  effort: Effort,
): readonly Layout[] {
  const moved = effort.stage(effort.remaining * MOVING, (e) => emptied(model, layouts, random, e));
  return widened(model, moved, random, effort);
}

/** The sheet with the most room, without the parts that the others take. */
function emptied(model: SheetModel, layouts: readonly Layout[], random: Random, effort: Effort): readonly Layout[] {
  const now = [...layouts];
  const last = emptiest(model, now);
  const relay = new Relay(model, random, effort);
  const area = (p: { readonly type: number }): number => model.types[p.type]?.area ?? 0;
  const rest = (l: Layout): number => largestRest(model, l);
  for (const moved of [...(now[last]?.placed ?? [])].sort((a, b) => area(b) - area(a))) {
    const from = now[last];
    if (from === undefined || from.placed.length === 1) break;
    const left = from.placed.map((p) => p.type);
    left.splice(left.indexOf(moved.type), 1);
    for (let i = 0; i < now.length && !effort.over; i++) {
      const l = now[i];
      if (l === undefined || i === last || roomOf(model, l) < area(moved)) continue;
      const fuller = relay.any(l.stock, [...l.placed.map((p) => p.type), moved.type]);
      const emptier = fuller && relay.best(from.stock, left, rest);
      if (!fuller || !emptier) continue;
      now[i] = fuller;
      now[last] = emptier;
      break;
    }
  }
  const end = now[last];
  if (end !== undefined) {
    const types = end.placed.map((p) => p.type);
    const better = relay.best(end.stock, types, rest);
    if (better && rest(better) > rest(end)) now[last] = better;
  }
  return largestOf(model, now) > largestOf(model, layouts) ? now : layouts;
}

/** The sheet with the most free area. */
function emptiest(model: SheetModel, layouts: readonly Layout[]): number {
  const rooms = layouts.map((l) => roomOf(model, l));
  return rooms.indexOf(Math.max(...rooms));
}

/** Wider and wider leftovers, each a strip of a sheet from edge to edge, as one more part among the others. */
function widened(model: SheetModel, layouts: readonly Layout[], random: Random, effort: Effort): readonly Layout[] {
  const { kerf, unit } = model;
  const free = layouts.reduce((sum, l) => sum + roomOf(model, l), 0);
  const each = effort.remaining * EACH;
  let best = layouts;
  let most = largestOf(model, layouts);
  for (const stock of new Set(layouts.map((l) => l.stock))) {
    const s = model.stocks[stock];
    if (s === undefined) continue;
    for (const [w, h] of [
      [0, s.h],
      [s.w, 0],
    ] as const) {
      const edge = Math.max(w, h);
      const span = w === 0 ? s.w : s.h;
      const widthFor = (area: number): number => (area / (edge * unit - kerf) + kerf) / unit;
      let low = widthFor(most);
      let high = Math.min(span, free / edge);
      for (let n = 0; n < WIDTHS && high - low > CLOSE * span && !effort.over; n++) {
        const width = Math.floor(n === 0 ? high : (low + high) / 2);
        const strip = { w: w || width, h: h || width };
        effort.spend(STRIP_STEPS * model.total);
        const found = effort.stage(each, (e) => withStrip(model, best, strip, random, e));
        const reached = found ? largestOf(model, found) : 0;
        if (!found || reached <= most) {
          high = width;
          continue;
        }
        best = found;
        most = reached;
        low = widthFor(most);
      }
    }
  }
  return best;
}

/** The parts on the same sheets, with a strip kept free; undefined where no way was found. */
function withStrip(
  model: SheetModel,
  layouts: readonly Layout[],
  { w, h }: { w: number; h: number },
  random: Random,
  effort: Effort,
): readonly Layout[] | undefined {
  const strip: PartType = { w, h, turns: false, need: 1, area: w * h, members: [] };
  const type = model.types.length;
  const problem = onSameSheets(model, [...model.types, strip], layouts);
  const alone = { stock: problem.stocks.length - 1, placed: [{ type, x: 0, y: 0, turned: false }] };
  const found = new GoalSearch(problem, random).improve({ layouts: [...layouts, alone], cost: 1 }, 0, effort);
  if (found.cost > 0) return undefined;
  return found.layouts
    .map((l) => ({ ...l, placed: l.placed.filter((p) => p.type !== type) }))
    .filter((l) => l.placed.length > 0);
}
