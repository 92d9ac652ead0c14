import { at } from "../../engine/at.ts";
import type { Effort } from "../../engine/effort.ts";
import type { Column } from "../../engine/master.ts";
import type { LengthModel } from "../model/model.ts";
import { lengthColumn } from "../model/pricing.ts";
import { type Values, worthOf } from "./values.ts";

/** Ways to cut one length that are gathered at most, and steps of the search for them. */
const MOST_WAYS = 1200;
const MOST_STEPS = 1_500_000;
/** How much less than its worth a length may waste when there are too many ways, and how often it is made less. */
const NARROWER = 0.5;
const TRIES = 12;
/** Effort of one step. */
const STEP_EFFORT = 6;
/** Slack for sums of multipliers, as a share of the dearest stock or the worth. */
const SMALL = 1e-9;

export interface Ways {
  readonly ways: readonly Column[];
  /** these are all that a plan within the goal may hold */
  readonly whole: boolean;
}

/**
 * The ways to cut a length that a plan within a goal may hold: each costs more than its parts are worth by no more than
 * the plan may exceed the bound of the multipliers. Of these only the ones to which no part can be added, and in which
 * none can be replaced by a longer one; no more of each than is needed. Where they are too many, those nearest to their
 * worth.
 * @param values multipliers; each set of them holds
 */
export function waysWithin(model: LengthModel, values: readonly Values[], most: number, effort: Effort): Ways {
  const slacks = values.map((v) => {
    const worth = worthOf(model, v);
    return most - worth + SMALL * (1 + Math.abs(worth));
  });
  if (slacks.some((s) => s < 0)) return { ways: [], whole: true };
  for (let n = 0, share = 1; n < TRIES && !effort.over; n++, share *= NARROWER) {
    const found = gather(
      model,
      values,
      slacks.map((s) => s * share),
      effort,
    );
    if (found) return { ways: found, whole: n === 0 };
  }
  return { ways: [], whole: false };
}

/** The ways within the slacks; undefined where they are too many. */
function gather(
  model: LengthModel,
  values: readonly Values[],
  slacks: readonly number[],
  effort: Effort,
): Column[] | undefined {
  const first = at(values, 0);
  const rate = model.types.map((t, i) => at(first.parts, i) / t.size);
  const order = Int32Array.from(model.types.map((_, t) => t).sort((a, b) => at(rate, b) - at(rate, a) || a - b));
  const rates = Float64Array.from(order, (t) => at(rate, t));
  const sizes = Int32Array.from(order, (t) => at(model.types, t).size);
  const needs = Int32Array.from(order, (t) => at(model.types, t).need);
  const worths = Float64Array.from(order, (t) => at(first.parts, t));
  const ways: Column[] = [];
  const counts = new Int32Array(order.length);
  const mostSteps = Math.min(MOST_STEPS, effort.remaining / (2 * STEP_EFFORT));
  let steps = 0;
  let ends = 0;
  const within = (stock: number, k: number): boolean => {
    const { parts, stocks } = at(values, k);
    const worth = counts.reduce((sum, n, t) => sum + n * at(parts, t), 0);
    return at(model.stocks, stock).cost - at(stocks, stock) - worth <= at(slacks, k);
  };
  model.stocks.forEach((s, stock) => {
    if (s.index < 0 || s.limit === 0) return;
    const price = s.cost - at(first.stocks, stock) - at(slacks, 0);
    const add = (k: number, room: number, worth: number): void => {
      if (++steps > mostSteps || ways.length > MOST_WAYS) return;
      if (k === order.length) {
        if (price > worth || room === s.size) return;
        ends++;
        if (!isFull(model, counts, room)) return;
        if (slacks.every((_, i) => i === 0 || within(stock, i))) ways.push(lengthColumn(stock, s.cost, counts));
        return;
      }
      if (price - worth > room * (rates[k] as number)) return;
      const t = order[k] as number;
      const size = sizes[k] as number;
      const value = worths[k] as number;
      for (let n = Math.min(needs[k] as number, Math.floor(room / size)); n >= 0; n--) {
        counts[t] = n;
        add(k + 1, room - n * size, worth + n * value);
      }
      counts[t] = 0;
    };
    add(0, s.size, 0);
  });
  effort.spend(STEP_EFFORT * steps + 3 * ends * order.length);
  return steps <= mostSteps && ways.length <= MOST_WAYS ? ways : undefined;
}

/** Whether no part can be added and none replaced by a longer one. */
function isFull(model: LengthModel, counts: Int32Array, room: number): boolean {
  /** shortest type, of those longer than the one at hand, of which one more may be cut */
  let longer = Number.POSITIVE_INFINITY;
  return model.types.every(({ size, need }, t) => {
    const n = at(counts, t);
    if (n > 0 && longer - size <= room) return false;
    if (n === need) return true;
    longer = size;
    return size > room;
  });
}
