import type { Reached, SheetBound, Unplaced } from "../../engine/types.ts";

/** Sheets in, layouts out: the types of two-dimensional cutting. Sizes in inches; a sheet's length runs along x. */

export interface SheetPart {
  /** name of the part, as it comes back in the layout */
  readonly id: string;
  /** what sentences call it, where that is not its id */
  readonly name?: string;
  /** along the grain where the grain counts */
  readonly lengthIn: number;
  readonly widthIn: number;
  readonly quantity: number;
  /** true: the part may be turned by 90 degrees; false: its length runs along the length of the sheet */
  readonly turns: boolean;
}

export interface SheetStock {
  readonly id: string;
  readonly lengthIn: number;
  readonly widthIn: number;
  /** price of one sheet, any currency; 0 where it is not known, and for a leftover that is there anyway */
  readonly cost: number;
  /** how many there are; null: as many as needed */
  readonly quantity: number | null;
  /** width lost along each edge of this stock; that of the options where left out */
  readonly trimIn?: number;
}

export interface Placement {
  readonly part: string;
  /** lower left corner from the lower left corner of the untrimmed sheet */
  readonly xIn: number;
  readonly yIn: number;
  /** extent along x and along y as laid: exchanged when turned */
  readonly lengthIn: number;
  readonly widthIn: number;
  readonly turned: boolean;
  /** number of the cut that sets it free, from 1; 0 where it is the whole sheet */
  readonly cut: number;
  /** stage of that cut */
  readonly stage: number;
}

/** What a sheet leaves over. */
export interface Rest {
  readonly xIn: number;
  readonly yIn: number;
  readonly lengthIn: number;
  readonly widthIn: number;
}

/** One saw cut, edge to edge of the piece that is on the saw. */
export interface Cut {
  /** "across": a line at one x; "along": a line at one y */
  readonly direction: "across" | "along";
  /** near edge of the kerf */
  readonly atIn: number;
  /** where the cut starts and ends along its line */
  readonly fromIn: number;
  readonly toIn: number;
  /** 1 for the cuts of the whole sheet, 2 for those of the pieces they give where the saw turns, and so on */
  readonly stage: number;
}

export interface NestedSheet {
  readonly stock: string;
  readonly lengthIn: number;
  readonly widthIn: number;
  /** in the order in which the saw sets them free */
  readonly placements: readonly Placement[];
  /** in the order of the saw */
  readonly cuts: readonly Cut[];
  /** what is left over, the largest first */
  readonly rests: readonly Rest[];
  /** how often a piece is turned on the saw */
  readonly turns: number;
}

export interface SheetNesting extends SheetBound {
  readonly sheets: readonly NestedSheet[];
  /** sheets used, stock at no cost included */
  readonly count: number;
  /** cost of the sheets used */
  readonly cost: number;
  /** what the first goal counts of the sheets used */
  readonly value: number;
  /** what was reached of each goal */
  readonly reached: readonly Reached[];
  /** true only when what was reached equals the bound: no better answer exists */
  readonly proven: boolean;
  /** parts that the plan found does not cut from limited stock; the bound is then 0 */
  readonly unplaced: readonly Unplaced[];
  /** parts are left over and it is proven that no plan cuts them all */
  readonly short: boolean;
  /** true when the safety stop ended the search, so that another run may differ */
  readonly cutShort: boolean;
}
