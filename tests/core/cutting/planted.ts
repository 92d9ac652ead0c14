import type { SheetPart, SheetStock } from "../../../src/core/cutting/sheets/plan/types.ts";
import { Random } from "../../../src/core/kit/random.ts";

/** Parts that are known to come out of so many sheets, because they were cut from them. */
export interface Planted {
  readonly parts: SheetPart[];
  readonly stocks: SheetStock[];
  readonly cost: number;
  readonly sheets: number;
}

/** Cuts `sheets` sheets of random stock at random, edge to edge, with a kerf and a trim; in whole eighths of an inch. */
export function plant(
  seed: number,
  sheets: number,
  sizes: readonly { l: number; w: number; cost: number }[],
  kerf: number,
  trim: number,
  turns: boolean,
  deepest = 3,
): Planted {
  const random = new Random(seed);
  const parts: SheetPart[] = [];
  let cost = 0;
  const cut = (l: number, w: number, depth: number): void => {
    const across = random.unit() < 0.5;
    const span = across ? l : w;
    const at = (1 + random.below(Math.max(1, Math.floor((span - kerf) * 8) - 1))) / 8;
    if (depth === 0 || span - at - kerf < 0.125 || random.unit() < 0.1) {
      parts.push({ id: `p${parts.length}`, lengthIn: l, widthIn: w, quantity: 1, turns: turns && random.unit() < 0.7 });
    } else if (across) {
      cut(at, w, depth - 1);
      cut(l - at - kerf, w, depth - 1);
    } else {
      cut(l, at, depth - 1);
      cut(l, w - at - kerf, depth - 1);
    }
  };
  for (let s = 0; s < sheets; s++) {
    const stock = sizes[random.below(sizes.length)]!;
    cost += stock.cost;
    cut(stock.l - 2 * trim, stock.w - 2 * trim, 1 + random.below(deepest));
  }
  const stocks = sizes.map((s, i) => ({ id: `s${i}`, lengthIn: s.l, widthIn: s.w, cost: s.cost, quantity: null }));
  return { parts, stocks, cost, sheets };
}
