/** Layouts inside the engine: model units, types by number. */

export interface Placed {
  readonly type: number;
  readonly x: number;
  readonly y: number;
  readonly turned: boolean;
}

export interface Layout {
  /** number of the stock in the model */
  readonly stock: number;
  readonly placed: readonly Placed[];
}

/** A set of layouts that holds all parts, and what the goal counts for it. */
export interface Packing {
  readonly layouts: readonly Layout[];
  readonly cost: number;
}
