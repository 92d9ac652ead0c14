import { plain } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import { type BoxSize, boxesFor } from "./boxes.ts";
import type { OrderLine } from "./order.ts";

/** Rows of screws alike: an edge, a field support, a furring strip. */
export interface ScrewRow {
  readonly name: string;
  readonly lengthFt: number;
  readonly spacingIn: number;
  /** parallel rows on each piece, and pieces alike */
  readonly rows: number;
  readonly count: number;
}

/**
 * Screws in one row: one at each end distance, and between them at the spacing or closer.
 * @param endIn distance of the first and last screw from the ends
 */
export function screwsInRow(lengthFt: number, spacingIn: number, endIn: number): number {
  const between = Math.max(0, lengthFt * 12 - 2 * endIn);
  return Math.ceil(between / spacingIn - 1e-9) + 1;
}

/** Screws for all rows with waste, in boxes. */
export function screws(
  rows: readonly ScrewRow[],
  endIn: number,
  boxes: readonly BoxSize[],
  waste: number,
  tape?: Tape,
): readonly OrderLine[] {
  let total = 0;
  for (const r of rows) {
    const each = screwsInRow(r.lengthFt, r.spacingIn, endIn);
    const all = each * r.rows * r.count;
    total += all;
    tape?.step(
      "n",
      `${r.name}: ((${plain(r.lengthFt * 12)} - 2 x ${plain(endIn)}) / ${plain(r.spacingIn)}, rounded up, + 1) x ${r.rows} x ${r.count}`,
      all,
      "screws",
      "",
    );
  }
  const wanted = Math.ceil(total * (1 + waste) - 1e-9 * total);
  tape?.step("N", `sum x (1 + waste ${waste}), rounded up`, wanted, "screws", "");
  return boxesFor(wanted, boxes)
    .filter(({ boxes: n }) => n > 0)
    .map(({ size, boxes: n }) => ({
      item: "screws",
      quantity: n * size,
      unit: "screws",
      packs: n,
      pack: `box of ${size}`,
    }));
}
