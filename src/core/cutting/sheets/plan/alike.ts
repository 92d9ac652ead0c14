import type { Layout } from "./layout.ts";

/** Sheets of one stock with the same parts are laid alike: the saw is set once for all of them. */
export function alikeLayouts(layouts: readonly Layout[]): Layout[] {
  const first = new Map<string, Layout>();
  return layouts.map((l) => {
    const key = kindOf(l);
    const known = first.get(key);
    if (!known) first.set(key, l);
    return known ?? l;
  });
}

/** Stock and parts of a sheet as one text. */
export const kindOf = (l: Layout): string => `${l.stock}:${l.placed.map((p) => p.type).sort((a, b) => a - b)}`;
