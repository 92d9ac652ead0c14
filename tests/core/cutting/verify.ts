import type { NestOptions } from "../../../src/core/cutting/engine/types.ts";
import type { NestedSheet, SheetNesting, SheetPart, SheetStock } from "../../../src/core/cutting/sheets/plan/types.ts";

/**
 * An independent look at a sheet layout: shares no code with the engine. Gives the list of what is wrong, empty when
 * the layout can be sawn. Works in inches with a slack far below the sixty-fourth.
 */
const SLACK = 1e-6;

interface Rect {
  x0: number;
  y0: number;
  x1: number;
  y1: number;
}

export function faults(
  nesting: Pick<SheetNesting, "sheets" | "count" | "cost" | "unplaced">,
  parts: readonly SheetPart[],
  stocks: readonly SheetStock[],
  options: NestOptions,
): string[] {
  const wrong: string[] = [];
  const byId = new Map<string, SheetPart[]>();
  for (const p of parts) byId.set(p.id, [...(byId.get(p.id) ?? []), p]);
  const placed = new Map<string, number>();
  const used = new Map<string, number>();
  nesting.sheets.forEach((sheet, n) => {
    const stock = stocks.find((s) => s.id === sheet.stock);
    if (!stock) {
      wrong.push(`sheet ${n}: no stock ${sheet.stock}`);
      return;
    }
    used.set(sheet.stock, (used.get(sheet.stock) ?? 0) + 1);
    if (sheet.placements.length === 0) wrong.push(`sheet ${n} is empty`);
    for (const p of sheet.placements) {
      placed.set(p.part, (placed.get(p.part) ?? 0) + 1);
      const asked = byId.get(p.part);
      const same = (l: number, w: number): boolean =>
        Math.abs(l - p.lengthIn) < 1 / 64 + SLACK && Math.abs(w - p.widthIn) < 1 / 64 + SLACK;
      const upright = asked?.some((a) => same(a.lengthIn, a.widthIn)) ?? false;
      const turned = asked?.some((a) => a.turns && same(a.widthIn, a.lengthIn)) ?? false;
      if (p.turned ? !turned : !upright) wrong.push(`sheet ${n}: ${p.part} has a wrong size or may not turn`);
    }
    wrong.push(...sheetFaults(sheet, stock, options).map((w) => `sheet ${n}: ${w}`));
  });
  for (const u of nesting.unplaced) placed.set(u.part, (placed.get(u.part) ?? 0) + u.quantity);
  for (const [id, list] of byId) {
    const want = list.reduce((sum, p) => sum + p.quantity, 0);
    if ((placed.get(id) ?? 0) !== want) wrong.push(`${id}: ${placed.get(id) ?? 0} of ${want}`);
  }
  for (const id of placed.keys()) if (!byId.has(id)) wrong.push(`${id} was not asked for`);
  for (const s of stocks) {
    if (s.quantity !== null && (used.get(s.id) ?? 0) > s.quantity) wrong.push(`more of ${s.id} than there are`);
  }
  if (nesting.count !== nesting.sheets.length) wrong.push("count");
  const cost = nesting.sheets.reduce((sum, s) => sum + stocks.find((k) => k.id === s.stock)!.cost, 0);
  if (Math.abs(cost - nesting.cost) > 1e-6 * Math.max(1, cost)) wrong.push(`cost ${nesting.cost}, sum ${cost}`);
  return wrong;
}

function sheetFaults(sheet: NestedSheet, stock: SheetStock, { kerfIn, trimIn: edgeIn }: NestOptions): string[] {
  const trimIn = stock.trimIn ?? edgeIn;
  const rects = sheet.placements.map((p) => ({
    x0: p.xIn,
    y0: p.yIn,
    x1: p.xIn + p.lengthIn,
    y1: p.yIn + p.widthIn,
  }));
  const wrong: string[] = [];
  for (const r of rects) {
    const inside =
      r.x0 >= trimIn - SLACK &&
      r.y0 >= trimIn - SLACK &&
      r.x1 <= stock.lengthIn - trimIn + SLACK &&
      r.y1 <= stock.widthIn - trimIn + SLACK;
    if (!inside) wrong.push("a part lies outside the trimmed sheet");
  }
  for (let i = 0; i < rects.length; i++) {
    for (let j = i + 1; j < rects.length; j++) {
      const a = rects[i]!;
      const b = rects[j]!;
      if (a.x0 < b.x1 - SLACK && b.x0 < a.x1 - SLACK && a.y0 < b.y1 - SLACK && b.y0 < a.y1 - SLACK) {
        wrong.push("two parts overlap");
      }
    }
  }
  if (!separable(rects, kerfIn)) wrong.push("no edge-to-edge cut separates the parts");
  return wrong;
}

/** Can saw cuts of the kerf's width, each right through the piece, single out every part? */
function separable(rects: readonly Rect[], kerf: number): boolean {
  if (rects.length <= 1) return true;
  for (const [lo, hi] of [
    ["x0", "x1"],
    ["y0", "y1"],
  ] as const) {
    const sorted = [...rects].sort((a, b) => a[lo] - b[lo]);
    let reach = sorted[0]![hi];
    for (let i = 1; i < sorted.length; i++) {
      if (sorted[i]![lo] >= reach + kerf - SLACK) {
        return separable(sorted.slice(0, i), kerf) && separable(sorted.slice(i), kerf);
      }
      reach = Math.max(reach, sorted[i]![hi]);
    }
  }
  return false;
}
