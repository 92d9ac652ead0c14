import type { Effort } from "../engine/effort.ts";
import { solveInteger, type Variable } from "../engine/integer.ts";
import type { Column } from "../engine/master.ts";
import type { LengthModel } from "./model.ts";
import { lengthColumn } from "./pricing.ts";

/** Ways to cut one length that are gathered at most, and steps of the search for them. */
const MOST_WAYS = 1200;
const GATHER_STEPS = 2_000_000;
/** How much less of the slack is taken when there are too many ways. */
const NARROWER = 0.6;
/** Slack for sums of multipliers, as a share of the dearest stock. */
const SMALL = 1e-9;

/** Multipliers of the linear problem: what a part of each type is worth, and what a length of limited stock saves (0 or less). */
export interface Values {
  readonly parts: Float64Array;
  readonly stocks: Float64Array;
}

/** What the search for a better plan found. */
export interface Covering {
  readonly columns: readonly Column[] | undefined;
  /** least that a plan can cost; 0 where nothing is proven */
  readonly bound: number;
}

/**
 * Least cost of lengths that give just the parts, as an integer program over the ways to cut a length. By the
 * multipliers of the linear problem each length costs at least what its parts are worth; in a plan that is better than
 * the one there is, no length exceeds that by more than the plan may exceed the linear bound. These ways are few, and
 * where all of them are gathered the answer is proven.
 * @param most what the plan may cost
 */
export function coverLengths(model: LengthModel, values: Values, most: number, effort: Effort): Covering {
  const linear = linearBound(model, values);
  const small = SMALL * Math.max(...model.stocks.map((s) => s.cost));
  let slack = most - linear + small;
  if (slack < 0) return { columns: undefined, bound: most + model.costStep };
  let gathered = gather(model, values, slack, effort);
  while (!gathered.whole && slack > small && !effort.over) {
    slack *= NARROWER;
    gathered = gather(model, values, slack, effort);
  }
  const { ways } = gathered;
  const limited = model.stocks.flatMap((s, i) => (s.index >= 0 && s.limit < model.total ? [i] : []));
  const variables = [
    ...ways.map((way): Variable => variableOf(model, way, limited)),
    ...limited.map((s, k) => ({ cost: 0, most: model.stocks[s]!.limit, rows: [model.types.length + k], entries: [1] })),
  ];
  const totals = [...model.types.map((t) => t.need), ...limited.map((s) => model.stocks[s]!.limit)];
  const answer = solveInteger({ totals, variables, costStep: model.costStep }, most, effort);
  const columns = answer.counts && ways.flatMap((way, j) => new Array<Column>(answer.counts![j]!).fill(way));
  const least = columns ? columns.reduce((sum, c) => sum + c.cost, 0) : most + model.costStep;
  return { columns, bound: answer.complete && gathered.whole ? least : 0 };
}

function variableOf(model: LengthModel, way: Column, limited: readonly number[]): Variable {
  const { types, counts, cost, stock } = way;
  const most = Math.min(
    model.stocks[stock]!.limit,
    ...types.map((t, k) => Math.floor(model.types[t]!.need / counts[k]!)),
  );
  const row = limited.indexOf(stock);
  if (row < 0) return { cost, most, rows: types, entries: counts };
  return { cost, most, rows: [...types, model.types.length + row], entries: [...counts, 1] };
}

const linearBound = (model: LengthModel, values: Values): number =>
  model.types.reduce((sum, t, i) => sum + t.need * values.parts[i]!, 0) +
  model.stocks.reduce((sum, s, i) => sum + (values.stocks[i]! < 0 ? s.limit * values.stocks[i]! : 0), 0);

/** The ways to cut a length that cost no more than the slack beyond the value of their parts; whole: all of them. */
function gather(
  model: LengthModel,
  values: Values,
  slack: number,
  effort: Effort,
): { readonly ways: readonly Column[]; readonly whole: boolean } {
  const rate = (t: number): number => values.parts[t]! / model.types[t]!.size;
  const order = model.types.map((_, t) => t).sort((a, b) => rate(b) - rate(a) || a - b);
  const ways: Column[] = [];
  const counts = new Int32Array(order.length);
  const mostSteps = Math.min(GATHER_STEPS, effort.remaining / 8);
  let steps = 0;
  model.stocks.forEach((s, stock) => {
    if (s.index < 0) return;
    const price = s.cost - values.stocks[stock]!;
    const add = (k: number, room: number, worth: number): void => {
      if (++steps > mostSteps || ways.length > MOST_WAYS) return;
      const t = order[k];
      if (t === undefined) {
        if (price - worth <= slack && room < s.size) ways.push(lengthColumn(stock, s.cost, counts));
        return;
      }
      if (price - worth - room * rate(t) > slack) return;
      const { size, need } = model.types[t]!;
      for (let n = Math.min(need, Math.floor(room / size)); n >= 0; n--) {
        counts[t] = n;
        add(k + 1, room - n * size, worth + n * values.parts[t]!);
      }
      counts[t] = 0;
    };
    add(0, s.size, 0);
  });
  effort.spend(2 * steps);
  return { ways, whole: steps <= mostSteps && ways.length <= MOST_WAYS };
}
