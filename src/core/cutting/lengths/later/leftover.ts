import { at } from "../../engine/at.ts";
import type { Effort } from "../../engine/effort.ts";
import type { Variable } from "../../engine/integer/program.ts";
import { solveInteger } from "../../engine/integer/solve.ts";
import { type Column, NO_STOCK } from "../../engine/master.ts";
import { coverProgram } from "../cover/cover.ts";
import { handedDown } from "../cover/handed-down.ts";
import { fallingValues, type Values, worthOf } from "../cover/values.ts";
import { waysWithin } from "../cover/ways.ts";
import type { LengthModel } from "../model/model.ts";
import { lengthColumn } from "../model/pricing.ts";

/** Shares of what the last length holds beyond the bound that are tried as goals, one after the other. */
const GOALS: readonly number[] = [0.02, 0.1, 0.3, 0.6, 1];

/** Room left on a length. */
export const roomOf = (model: LengthModel, c: Column): number =>
  at(model.stocks, c.stock).size - c.types.reduce((sum, t, k) => sum + at(model.types, t).size * at(c.counts, k), 0);

/** The longest that one length leaves over. */
export const longestRoom = (model: LengthModel, columns: readonly Column[]): number =>
  Math.max(0, ...columns.map((c) => roomOf(model, c)));

/** A plan with one long leftover, and whether none can be longer. */
export interface Kept {
  readonly columns: readonly Column[];
  readonly proven: boolean;
}

/**
 * The same stock cut so that one length leaves as much as can be, the longest stock first: a shorter one is only looked
 * at where it is longer than what is left over then.
 * @param columns a plan for just the parts
 */
export function keepOneLong(model: LengthModel, columns: readonly Column[], effort: Effort): Kept {
  let best: Kept = { columns, proven: true };
  model.stocks.forEach((s, kept) => {
    const used = s.index >= 0 && columns.some((c) => c.stock === kept);
    const longest = longestRoom(model, best.columns);
    if (!used || s.size <= longest) return;
    const found = keepOneOf(model, best.columns, kept, longest, effort);
    best = { columns: found.columns, proven: best.proven && found.proven };
  });
  return best;
}

/**
 * What one length of a stock holds is as short as can be, and all else comes from the other lengths: the integer program
 * of the cover, in which a part may also go into that length at what it takes of it.
 * @param longest leftover that there is already
 */
function keepOneOf(
  model: LengthModel,
  columns: readonly Column[],
  kept: number,
  longest: number,
  effort: Effort,
): Kept {
  const pieces = model.stocks.map((_, s) => columns.filter((c) => c.stock === s).length - Number(s === kept));
  const { size } = at(model.stocks, kept);
  const others: LengthModel = {
    ...model,
    stocks: model.stocks.map((s, i) => ({ ...s, cost: 0, limit: at(pieces, i) })),
    costStep: 1,
  };
  const material: Values = {
    parts: Float64Array.from(model.types, (t) => t.size),
    stocks: Float64Array.from(others.stocks, (s) => (s.limit > 0 ? -s.size : 0)),
  };
  const linear = linearValues(others, columns, size, effort);
  let bound = Math.max(0, ...[material, linear].map((v) => Math.ceil(worthOf(others, v) - 1e-6)));
  let holds = size - longest;
  for (const share of GOALS) {
    const room = holds - 1 - bound;
    if (room < 0 || effort.over) break;
    const most = bound + Math.floor(share * room);
    const found = effort.stage(effort.remaining * (share < 1 ? 0.4 : 1), (e) =>
      shortest(others, [linear, material], kept, most, e),
    );
    bound = Math.max(bound, found.bound);
    if (!found.columns) continue;
    holds = found.holds;
    return {
      columns: found.columns.map((c) => ({ ...c, cost: at(model.stocks, c.stock).cost })),
      proven: holds <= bound,
    };
  }
  return { columns, proven: holds <= bound };
}

/** Multipliers where a part may also go into the last length at what it takes of it. */
function linearValues(others: LengthModel, columns: readonly Column[], size: number, effort: Effort): Values {
  const singles = others.types.map(
    (t, i): Column => ({ stock: NO_STOCK, cost: t.size / size, types: [i], counts: [1] }),
  );
  const shares = fallingValues(others, [...columns.map((c) => ({ ...c, cost: 0 })), ...singles], effort);
  if (!shares) return { parts: new Float64Array(others.types.length), stocks: new Float64Array(others.stocks.length) };
  return { parts: shares.parts.map((v) => v * size), stocks: shares.stocks.map((v) => v * size) };
}

interface Shortest {
  readonly columns: readonly Column[] | undefined;
  readonly holds: number;
  /** least that the last length can hold; 0 where nothing is proven */
  readonly bound: number;
}

/** The plan in which the last length holds least, at most `most`. */
function shortest(
  others: LengthModel,
  values: readonly Values[],
  kept: number,
  most: number,
  effort: Effort,
): Shortest {
  const { ways, whole } = waysWithin(others, values, most, effort);
  const cover = coverProgram(others, ways);
  const last = others.types.map((t, i): Variable => ({ cost: t.size, most: t.need, rows: [i], entries: [1] }));
  const program = { ...cover, variables: [...cover.variables, ...last] };
  const { counts, complete } = solveInteger(program, most, effort);
  if (!counts) return { columns: undefined, holds: 0, bound: complete && whole ? most + 1 : 0 };
  const used = ways.flatMap((c, j) => new Array<Column>(at(counts, j)).fill(c));
  const rest = lengthColumn(kept, 0, counts.slice(cover.variables.length));
  const holds = rest.types.reduce((sum, t, k) => sum + at(others.types, t).size * at(rest.counts, k), 0);
  const columns = handedDown(others, [...used, rest]);
  return { columns, holds, bound: complete && whole ? holds : 0 };
}
