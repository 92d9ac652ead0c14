import type { LengthNesting, SheetNesting } from "../../core/cutting/index.ts";
import type { Cell, Table } from "../../core/kit/tape.ts";
import { NONE } from "./tables.ts";

/** Leftovers smaller than this, either way, are not listed. */
export const LEAST_LEFTOVER_IN = 6;
/** Rows of the result: fewer than the stock tables take, so that bought stock can stand below them. */
const MOST_ROWS = 40;

interface Leftover {
  readonly stock: string;
  readonly sizes: readonly number[];
}

/** What the sheets leave over, as rows of the stock table, the largest first. */
export const sheetLeftovers = ({ sheets }: SheetNesting): Table =>
  rowsOf(
    sheets.flatMap((s) => s.rests.map((r) => ({ stock: s.stock, sizes: [r.lengthIn, r.widthIn] }))),
    2,
  );

/** What the lengths leave over, as rows of the stock table, the longest first. */
export const lengthLeftovers = ({ lengths }: LengthNesting): Table =>
  rowsOf(
    lengths.map((l) => ({ stock: l.stock, sizes: [l.restIn] })),
    1,
  );

/** Equal ones in one row; price and trim stay blank: what is left over costs nothing and has no factory edge. */
function rowsOf(all: readonly Leftover[], sizes: 1 | 2): Table {
  const groups = new Map<string, { of: Leftover; count: number }>();
  for (const of of all) {
    if (of.sizes.some((s) => s < LEAST_LEFTOVER_IN)) continue;
    const key = `${of.stock}:${of.sizes}`;
    const group = groups.get(key);
    if (group) group.count++;
    else groups.set(key, { of, count: 1 });
  }
  const area = (l: Leftover): number => l.sizes.reduce((product, s) => product * s, 1);
  const rows = [...groups.values()]
    .sort((a, b) => area(b.of) - area(a.of))
    .slice(0, MOST_ROWS)
    .map(({ of, count }, i): Cell[] => [`${of.stock} offcut ${i + 1}`, ...of.sizes, "", count, ""]);
  if (rows.length > 0) return rows;
  return [[NONE, ...new Array<number>(sizes).fill(0), "", 0, ""]];
}
