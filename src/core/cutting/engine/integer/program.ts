/** A variable of an integer program: what one costs, at most how many, and its entries. */
export interface Variable {
  readonly cost: number;
  readonly most: number;
  readonly rows: readonly number[];
  readonly entries: readonly number[];
  /** the search decides on these before all others */
  readonly first?: boolean;
}

/** Least cost of whole numbers of the variables so that the entries, whole numbers, of each row add up to its total exactly. */
export interface IntegerProgram {
  readonly totals: readonly number[];
  readonly variables: readonly Variable[];
  /** every total of the cost is a multiple of this */
  readonly costStep: number;
}

export interface IntegerAnswer {
  /** how many of each variable; undefined where there is nothing within the goal */
  readonly counts: readonly number[] | undefined;
  /** false when the effort ended the search: there may be something better */
  readonly complete: boolean;
}
