import type { Reached, SheetBound, Unplaced } from "../../engine/types.ts";

/** Lengths in, cutting plan out: the types of one-dimensional cutting. Sizes in inches. */

export interface LengthPart {
  readonly id: string;
  /** what sentences call it, where that is not its id */
  readonly name?: string;
  readonly lengthIn: number;
  readonly quantity: number;
}

export interface LengthStock {
  readonly id: string;
  readonly lengthIn: number;
  /** price of one; 0 where it is not known, and for what is there anyway */
  readonly cost: number;
  /** how many there are; null: as many as needed */
  readonly quantity: number | null;
  /** length lost at each end of this stock; that of the options where left out */
  readonly trimIn?: number;
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
  /** what the first goal counts of the lengths used */
  readonly value: number;
  /** what was reached of each goal */
  readonly reached: readonly Reached[];
  /** true only when what was reached equals the bound */
  readonly proven: boolean;
  /** parts that the plan found does not cut from limited stock; the bound is then 0 */
  readonly unplaced: readonly Unplaced[];
  /** parts are left over and it is proven that no plan cuts them all */
  readonly short: boolean;
  readonly cutShort: boolean;
}
