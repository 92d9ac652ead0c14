import { type Box, type CutPlan, cutPlan } from "./cuts.ts";
import type { Layout } from "./layout.ts";
import type { SheetModel } from "./model.ts";

/** The boxes of the parts of a layout, sixty-fourths of an inch, each with its kerf. */
export function boxesOf(model: SheetModel, l: Layout): Box[] {
  const { types, unit } = model;
  return l.placed.flatMap((p) => {
    const t = types[p.type];
    if (t === undefined) return [];
    const [w, h] = p.turned ? [t.h, t.w] : [t.w, t.h];
    return [{ x: p.x * unit, y: p.y * unit, w: w * unit, h: h * unit }];
  });
}

/** A layout in the order of the saw. */
export function sawnLayout(model: SheetModel, l: Layout): CutPlan {
  const s = model.stocks[l.stock];
  return cutPlan(boxesOf(model, l), (s?.w ?? 0) * model.unit, (s?.h ?? 0) * model.unit, model.stages);
}

/** Area of the largest leftover of a plan, its kerf taken off. */
export function leftoverOf({ rests: [first] }: CutPlan, kerf: number): number {
  return first === undefined ? 0 : Math.max(0, first.w - kerf) * Math.max(0, first.h - kerf);
}

/** What the parts of a layout leave of its sheet, in units of the model. */
export function roomOf(model: SheetModel, l: Layout): number {
  const s = model.stocks[l.stock];
  const filled = l.placed.reduce((sum, p) => sum + (model.types[p.type]?.area ?? 0), 0);
  return (s?.w ?? 0) * (s?.h ?? 0) - filled;
}
