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

/**
 * Screws for all rows with waste, in boxes, the largest first. The lines share what is needed: the last box holds what the others leave.
 * @param boxes sizes that the supplier sells
 */
export function screws(
  rows: readonly ScrewRow[],
  endIn: number,
  boxes: readonly BoxSize[],
  waste: number,
  tape?: Tape,
): readonly OrderLine[] {
  const total = rows.reduce((sum, r) => sum + rowScrews(r, endIn, tape), 0);
  const wanted = Math.ceil(total * (1 + waste) - 1e-9 * total);
  tape?.step("N", `sum x (1 + waste ${waste}), rounded up`, wanted, "screws", "");
  let left = wanted;
  return boxesFor(wanted, boxes)
    .filter(({ boxes: n }) => n > 0)
    .sort((a, b) => b.box.size - a.box.size)
    .map(({ box, boxes: n }) => {
      const quantity = Math.min(left, n * box.size);
      left -= quantity;
      tape?.step("n_b", `${box.name}: ${n} x ${box.size} for ${quantity} screws`, n, "boxes", "");
      return { item: "screws", quantity, unit: "screws", packs: n, pack: box.name };
    });
}

function rowScrews(r: ScrewRow, endIn: number, tape?: Tape): number {
  const all = screwsInRow(r.lengthFt, r.spacingIn, endIn) * r.rows * r.count;
  const gaps = `(${plain(r.lengthFt * 12)} - 2 x ${plain(endIn)}) / ${plain(r.spacingIn)}`;
  tape?.step("n", `${r.name}: (${gaps}, rounded up, + 1) x ${r.rows} x ${r.count}`, all, "screws", "");
  return all;
}
