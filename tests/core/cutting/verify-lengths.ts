import type { NestOptions } from "../../../src/core/cutting/engine/types.ts";
import type { LengthNesting, LengthPart, LengthStock } from "../../../src/core/cutting/lengths/model/types.ts";

const SLACK = 1e-6;

/** An independent look at a cutting plan for lengths: what is wrong with it, empty when it can be sawn. */
export function lengthFaults(
  nesting: Pick<LengthNesting, "lengths" | "count" | "cost" | "unplaced">,
  parts: readonly LengthPart[],
  stocks: readonly LengthStock[],
  { kerfIn, trimIn: edgeIn }: NestOptions,
): string[] {
  const wrong: string[] = [];
  const placed = new Map<string, number>();
  const used = new Map<string, number>();
  let cost = 0;
  nesting.lengths.forEach((l, n) => {
    const stock = stocks.find((s) => s.id === l.stock)!;
    cost += stock.cost;
    used.set(l.stock, (used.get(l.stock) ?? 0) + 1);
    const trimIn = stock.trimIn ?? edgeIn;
    let at = trimIn - kerfIn;
    for (const p of l.pieces) {
      placed.set(p.part, (placed.get(p.part) ?? 0) + 1);
      if (p.atIn < at + kerfIn - SLACK) wrong.push(`length ${n}: no kerf before ${p.part}`);
      if (!parts.some((q) => q.id === p.part && Math.abs(q.lengthIn - p.lengthIn) < 1 / 64 + SLACK)) {
        wrong.push(`length ${n}: ${p.part} has a wrong length`);
      }
      at = p.atIn + p.lengthIn;
    }
    if (at > stock.lengthIn - trimIn + SLACK) wrong.push(`length ${n} is too short for its pieces`);
  });
  for (const u of nesting.unplaced) placed.set(u.part, (placed.get(u.part) ?? 0) + u.quantity);
  for (const id of new Set(parts.map((p) => p.id))) {
    const want = parts.filter((p) => p.id === id).reduce((sum, p) => sum + p.quantity, 0);
    if ((placed.get(id) ?? 0) !== want) wrong.push(`${id}: ${placed.get(id) ?? 0} of ${want}`);
  }
  for (const s of stocks) {
    if (s.quantity !== null && (used.get(s.id) ?? 0) > s.quantity) wrong.push(`more of ${s.id} than there are`);
  }
  if (nesting.count !== nesting.lengths.length) wrong.push("count");
  if (Math.abs(cost - nesting.cost) > 1e-6 * Math.max(1, cost)) wrong.push(`cost ${nesting.cost}, sum ${cost}`);
  return wrong;
}
