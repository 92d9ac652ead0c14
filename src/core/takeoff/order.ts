import { wholePacks } from "./packs.ts";

/** One line of an order: what, how much of it with waste, and in whole packs. */
export interface OrderLine {
  readonly item: string;
  /** with waste */
  readonly quantity: number;
  readonly unit: string;
  /** whole packs, or loose pieces where nothing is packed */
  readonly packs: number;
  /** what one pack is: "roll 9 x 100 ft" */
  readonly pack: string;
}

/**
 * Rolls or lengths for pieces that are not joined: used up one after the other, a piece that no longer fits starts the next one.
 * @param piecesFt each at most `packFt`, in the order in which they are cut
 */
export function cutInTurn(piecesFt: readonly number[], packFt: number): number {
  let packs = 0;
  let leftFt = 0;
  for (const piece of piecesFt) {
    if (piece > leftFt * (1 + 1e-9) + 1e-9) {
      packs++;
      leftFt = packFt;
    }
    leftFt = Math.max(0, leftFt - piece);
  }
  return packs;
}

/** Rolls or lengths when pieces are cut longest first, each from the first one that still holds it. */
export function cutLongestFirst(piecesFt: readonly number[], packFt: number): number {
  const left: number[] = [];
  for (const piece of [...piecesFt].sort((a, b) => b - a)) {
    const at = left.findIndex((ft) => piece <= ft * (1 + 1e-9) + 1e-9);
    if (at < 0) left.push(packFt - piece);
    else left[at] = (left[at] ?? 0) - piece;
  }
  return left.length;
}

/**
 * Packs by the cut pieces, and at least by the total with waste.
 * @param cut packs that the pieces take without waste
 */
export function packsOfPieces(cut: number, totalFt: number, waste: number, packFt: number): number {
  return Math.max(cut, wholePacks(totalFt * (1 + waste), packFt));
}
