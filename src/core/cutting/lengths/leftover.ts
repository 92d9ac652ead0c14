import type { Effort } from "../engine/effort.ts";
import type { Variable } from "../engine/integer/program.ts";
import { solveInteger } from "../engine/integer/solve.ts";
import type { Column } from "../engine/master.ts";
import type { LengthModel } from "./model.ts";
import { lengthColumn } from "./pricing.ts";

/** Ways to cut that are gathered at most, and steps of the search for them. */
const MOST_WAYS = 900;
const GATHER_STEPS = 1_000_000;
/** How much less waste of a length is allowed when there are too many ways. */
const NARROWER = 0.5;
/** Shares of the waste that may be saved which are tried as goals, one after the other. */
const GOALS: readonly number[] = [0.01, 0.06, 0.2, 0.5, 1];

/** Room left on a length. */
export const roomOf = (model: LengthModel, c: Column): number =>
  model.stocks[c.stock]!.size - c.types.reduce((sum, t, k) => sum + model.types[t]!.size * c.counts[k]!, 0);

/** The longest that one length leaves over. */
export const longestRoom = (model: LengthModel, columns: readonly Column[]): number =>
  Math.max(0, ...columns.map((c) => roomOf(model, c)));

/**
 * The same stock cut so that one length leaves as much as can be: all others waste the least together. An integer
 * program over the ways to cut with little waste; what they do not take is left for the last length.
 * @param columns a plan for just the parts
 * @returns a plan with a longer leftover, or the same
 */
export function keepOneLong(model: LengthModel, columns: readonly Column[], effort: Effort): readonly Column[] {
  const pieces = model.stocks.map((_, s) => columns.filter((c) => c.stock === s).length);
  const last = model.stocks.findIndex((s, i) => s.index >= 0 && pieces[i]! > 0);
  if (last < 0 || columns.length < 2) return columns;
  pieces[last]!--;
  const spare = columns.reduce((sum, c) => sum + roomOf(model, c), 0);
  let best = columns;
  for (const share of GOALS) {
    const saved = spare - longestRoom(model, best) - 1;
    const most = Math.floor(share * saved);
    if (saved < 0 || effort.over) break;
    const found = effort.stage(effort.remaining * (share < 1 ? 0.3 : 1), (e) =>
      leastWaste(model, best, pieces, most, e),
    );
    if (!found) continue;
    best = [...found, theRest(model, last, found)];
    break;
  }
  return best;
}

/**
 * So many lengths of each stock with the least waste, at most `most`, by ways to cut that waste little and those of the
 * present plan.
 */
function leastWaste(
  model: LengthModel,
  plan: readonly Column[],
  pieces: readonly number[],
  most: number,
  effort: Effort,
): Column[] | undefined {
  let each = most;
  let ways = gather(model, pieces, each, effort);
  while (ways.length > MOST_WAYS && each > 0 && !effort.over) {
    each = Math.floor(each * NARROWER);
    ways = gather(model, pieces, each, effort);
  }
  if (ways.length > MOST_WAYS) ways = ways.slice(0, MOST_WAYS);
  ways = withPlan(ways, plan);
  const types = model.types.length;
  const stocks = pieces.flatMap((n, s) => (n > 0 ? [s] : []));
  const variables = [
    ...ways.map(
      (c): Variable => ({
        cost: roomOf(model, c),
        most: Math.min(pieces[c.stock]!, ...c.types.map((t, k) => Math.floor(model.types[t]!.need / c.counts[k]!))),
        rows: [...c.types, types + stocks.indexOf(c.stock)],
        entries: [...c.counts, 1],
      }),
    ),
    ...model.types.map((t, i): Variable => ({ cost: 0, most: t.need, rows: [i], entries: [1] })),
  ];
  const totals = [...model.types.map((t) => t.need), ...stocks.map((s) => pieces[s]!)];
  const { counts } = solveInteger({ totals, variables, costStep: 1 }, most, effort);
  return counts && ways.flatMap((c, j) => new Array<Column>(counts[j]!).fill(c));
}

function withPlan(ways: readonly Column[], plan: readonly Column[]): Column[] {
  const all = new Map<string, Column>();
  for (const c of [...ways, ...plan]) all.set(`${c.stock}:${c.types}:${c.counts}`, c);
  return [...all.values()];
}

/** Ways to cut a length that leave at most `most` room. */
function gather(model: LengthModel, pieces: readonly number[], most: number, effort: Effort): Column[] {
  const ways: Column[] = [];
  const counts = new Int32Array(model.types.length);
  const mostSteps = Math.min(GATHER_STEPS, effort.remaining / 8);
  let steps = 0;
  pieces.forEach((n, stock) => {
    if (n === 0) return;
    const { size, cost } = model.stocks[stock]!;
    const add = (t: number, room: number): void => {
      if (++steps > mostSteps || ways.length > MOST_WAYS) return;
      if (room <= most) ways.push(lengthColumn(stock, cost, counts));
      for (let k = t; k < model.types.length; k++) {
        const type = model.types[k]!;
        if (type.size > room || counts[k]! >= type.need) continue;
        counts[k]!++;
        add(k, room - type.size);
        counts[k]!--;
      }
    };
    add(0, size);
  });
  effort.spend(2 * steps);
  return ways;
}

function theRest(model: LengthModel, stock: number, columns: readonly Column[]): Column {
  const left = Int32Array.from(model.types, (t) => t.need);
  for (const c of columns) {
    c.types.forEach((t, k) => {
      left[t]! -= c.counts[k]!;
    });
  }
  return lengthColumn(stock, model.stocks[stock]!.cost, left);
}
