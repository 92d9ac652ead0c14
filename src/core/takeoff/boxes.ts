import { OutOfRange } from "../kit/refusal.ts";

/** A box that the supplier sells. */
export interface BoxSize {
  readonly name: string;
  /** pieces in it */
  readonly size: number;
  /** price of one box, where prices decide */
  readonly price: number | undefined;
}

export interface Boxes {
  readonly box: BoxSize;
  readonly boxes: number;
}

const MOST_PIECES = 1_000_000;

/**
 * Boxes that hold at least the wanted number: the cheapest where every box has a price, else the fewest pieces over, then the fewest boxes.
 * Exact, by dynamic programming over the number still wanted.
 * @param wanted whole, 0 or more
 * @returns boxes of each size, in the order given
 * @throws OutOfRange for more than a million pieces
 */
export function boxesFor(wanted: number, sizes: readonly BoxSize[]): readonly Boxes[] {
  if (wanted > MOST_PIECES) {
    throw new OutOfRange(
      `${wanted} screws are wanted`,
      `boxes are worked out for up to ${MOST_PIECES}`,
      "Split the order",
    );
  }
  const priced = sizes.every((s) => s.price !== undefined);
  // Worth of an answer: price, or pieces; boxes break ties.
  const worth = sizes.map((s) => (priced ? (s.price ?? 0) : s.size));
  const cost = new Float64Array(wanted + 1);
  const count = new Int32Array(wanted + 1);
  const pick = new Int16Array(wanted + 1);
  for (let n = 1; n <= wanted; n++) {
    let best = Number.POSITIVE_INFINITY;
    let fewest = 0;
    sizes.forEach(({ size }, i) => {
      const rest = Math.max(0, n - size);
      const c = (cost[rest] ?? 0) + (worth[i] ?? 0);
      const k = (count[rest] ?? 0) + 1;
      if (c < best - 1e-9 || (c < best + 1e-9 && k < fewest)) {
        best = c;
        fewest = k;
        pick[n] = i;
      }
    });
    cost[n] = best;
    count[n] = fewest;
  }
  const boxes = sizes.map(() => 0);
  for (let n = wanted; n > 0; n = Math.max(0, n - (sizes[pick[n] ?? 0]?.size ?? n))) {
    const i = pick[n] ?? 0;
    boxes[i] = (boxes[i] ?? 0) + 1;
  }
  return sizes.map((box, i) => ({ box, boxes: boxes[i] ?? 0 }));
}
