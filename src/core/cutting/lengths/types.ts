import type { SheetBound, Unplaced } from "../sheets/types.ts";

/** Lengths in, cutting plan out: the types of one-dimensional cutting. Sizes in inches. */

export interface LengthPart {
  readonly id: string;
  readonly lengthIn: number;
  readonly quantity: number;
}

export interface LengthStock {
  readonly id: string;
  readonly lengthIn: number;
  readonly cost: number;
  /** how many there are; null: as many as needed */
  readonly quantity: number | null;
}

export interface Piece {
  readonly part: string;
  /** near end of the piece from the end of the untrimmed stock */
  readonly atIn: number;
  readonly lengthIn: number;
}

export interface NestedLength {
  readonly stock: string;
  readonly lengthIn: number;
  readonly pieces: readonly Piece[];
  /** what is left after the last piece, its kerf and the far trim; 0 where the last cut takes it */
  readonly restIn: number;
}

export interface LengthNesting extends SheetBound {
  readonly lengths: readonly NestedLength[];
  readonly count: number;
  readonly cost: number;
  /** true only when what was reached equals the bound */
  readonly proven: boolean;
  /** parts for which the limited stock did not suffice; the bound is then 0 */
  readonly unplaced: readonly Unplaced[];
  readonly cutShort: boolean;
}
