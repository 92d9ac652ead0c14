/** What sheets and lengths have in common: options, goals and bounds. */

export interface NestOptions {
  /** width lost by each cut, inches */
  readonly kerfIn: number;
  /** width lost along each edge of each sheet (at each end of each length), inches */
  readonly trimIn: number;
  /** what is least first: the number of sheets (what one has at no cost is not counted), or their cost */
  readonly goal: "sheets" | "cost";
  /** most turns of the saw from one direction to the other, plus 1; the cut that trims a part alone on the saw is not counted */
  readonly stages?: 2 | 3;
  /** work of the search as a multiple of the usual; 1 where left out, 0 for the plain constructive start */
  readonly effort?: number;
  /** another seed gives another, equally repeatable search */
  readonly seed?: number;
  /** safety stop: the search ends early when it says true; only then can two runs differ */
  readonly expired?: () => boolean;
}

/** One of the goals, in their order; none is made worse for the sake of a later one. */
export interface Reached {
  readonly goal:
    | "count"
    | "cost"
    | "price"
    | "size of stock"
    | "longest leftover"
    | "largest leftover"
    | "patterns"
    | "turns";
  readonly value: number;
  /** nothing better exists */
  readonly proven: boolean;
}

export interface Unplaced {
  readonly part: string;
  readonly quantity: number;
}

export interface SheetBound {
  /** in the unit of the goal: sheets, or cost */
  readonly bound: number;
  /** how the bound was found */
  readonly method: "area" | "dual-feasible functions" | "column generation" | "all ways to cut" | "no parts";
}
