import type { Effort } from "./effort.ts";
import type { Column, Master } from "./master.ts";

/** What one pricing found: columns worth more than the threshold, and a proven limit on the value of any column. */
export interface Priced {
  readonly columns: readonly Column[];
  readonly most: number;
}

/** A question to a pricer. */
export interface PriceRequest {
  /** what one part of each type is worth, whole numbers */
  readonly values: Float64Array;
  readonly stock: number;
  /** columns worth no more than this are of no use */
  readonly threshold: number;
  /** where no column is worth more than this, the goal of the bound is met: no closer look is needed */
  readonly enough: number;
  readonly needs: ArrayLike<number>;
  readonly effort: Effort;
}

/** Finds the most valuable way to cut one piece of a stock; values are whole numbers, so that `most` is exact. */
export interface Pricer {
  price(request: PriceRequest): Priced;
}

/** A cutting problem as the column generation sees it. */
export interface CuttingProblem {
  readonly needs: readonly number[];
  readonly costs: readonly number[];
  readonly limits: readonly number[];
  /** whether the limit can ever bind */
  readonly limited: readonly boolean[];
  /** stocks that must not be priced: the stand-in for what limited stock cannot hold */
  readonly standIn: readonly boolean[];
  readonly costStep: number;
}

/** What the models of sheets and of lengths have in common. */
interface CuttingModel {
  readonly types: readonly { readonly need: number }[];
  readonly stocks: readonly { readonly cost: number; readonly limit: number; readonly index: number }[];
  readonly total: number;
  readonly costStep: number;
}

/** The problem of a model; a stock with an index below 0 is the stand-in. */
export function cuttingProblem(model: CuttingModel): CuttingProblem {
  return {
    needs: model.types.map((t) => t.need),
    costs: model.stocks.map((s) => s.cost),
    limits: model.stocks.map((s) => s.limit),
    limited: model.stocks.map((s) => s.limit < model.total),
    standIn: model.stocks.map((s) => s.index < 0),
    costStep: model.costStep,
  };
}

/** Cuts what is still needed within a cost, or gives up. */
export type Finish = (
  needs: readonly number[],
  limits: readonly number[],
  cost: number,
  effort: Effort,
) => Column[] | undefined;

/** The linear problem as a dive sees it. */
export interface Generation {
  readonly master: Master;
  run(
    needs: ArrayLike<number>,
    limits: ArrayLike<number>,
    whole: boolean,
    enough: number,
    effort: Effort,
    goal?: number,
  ): boolean;
  stepUp(cost: number): number;
}
