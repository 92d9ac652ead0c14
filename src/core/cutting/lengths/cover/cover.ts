import { at } from "../../engine/at.ts";
import type { Effort } from "../../engine/effort.ts";
import type { IntegerProgram, Variable } from "../../engine/integer/program.ts";
import { solveInteger } from "../../engine/integer/solve.ts";
import type { Column } from "../../engine/master.ts";
import type { LengthModel } from "../model/model.ts";
import { handedDown } from "./handed-down.ts";
import type { Values } from "./values.ts";
import { waysWithin } from "./ways.ts";

/** What the search for a better plan found. */
export interface Covering {
  readonly columns: readonly Column[] | undefined;
  /** least that a plan can cost; 0 where nothing is proven */
  readonly bound: number;
}

/**
 * Least cost of lengths that give the parts, as an integer program over the ways to cut a length. By the multipliers of
 * the linear problem each length costs at least what its parts are worth; in a plan that is better than the one there
 * is, no length exceeds that by more than the plan may exceed the linear bound. A longer part may stand for a shorter
 * one, so that only ways count to which nothing can be added and in which no part can be made longer. These are few,
 * and where all of them are gathered the answer is proven.
 * @param most what the plan may cost
 */
export function coverLengths(model: LengthModel, values: Values, most: number, effort: Effort): Covering {
  const { ways, whole } = waysWithin(model, [values], most, effort);
  const answer = solveInteger(coverProgram(model, ways), most, effort);
  const found = answer.counts?.slice(0, ways.length);
  const columns =
    found &&
    handedDown(
      model,
      found.flatMap((n, j) => new Array<Column>(n).fill(at(ways, j))),
    );
  const least = columns ? columns.reduce((sum, c) => sum + c.cost, 0) : most + model.costStep;
  return { columns, bound: answer.complete && whole ? least : 0 };
}

/**
 * The integer program of a cover: variables for the ways first, then for parts that stand for shorter ones, then for the
 * number of each stock.
 */
export function coverProgram(model: LengthModel, ways: readonly Column[]): IntegerProgram {
  const counted = model.stocks.map(
    (s, k): Variable => ({ cost: 0, most: s.limit, rows: [model.types.length + k], entries: [-1], first: true }),
  );
  return {
    totals: [...model.types.map((t) => t.need), ...model.stocks.map(() => 0)],
    variables: [
      ...ways.map((way) => variableOf(model, way)),
      ...model.types.map((_, t) => asShorter(model, t)),
      ...counted,
    ],
    costStep: model.costStep,
  };
}

/** A way to cut: its parts, and one of its stock. */
function variableOf(model: LengthModel, { types, counts, cost, stock }: Column): Variable {
  return {
    cost,
    most: at(model.stocks, stock).limit,
    rows: [...types, model.types.length + stock],
    entries: [...counts, 1],
  };
}

/**
 * A part of a type that is used as one of the next shorter type, or not at all. Each of as many lengths as there are parts may give as many that are over.
 */
function asShorter(model: LengthModel, t: number): Variable {
  const last = t === model.types.length - 1;
  return { cost: 0, most: model.total ** 2, rows: last ? [t] : [t, t + 1], entries: last ? [-1] : [-1, 1] };
}
