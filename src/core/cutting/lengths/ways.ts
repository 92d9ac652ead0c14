import { at } from "../engine/at.ts";
import type { Effort } from "../engine/effort.ts";
import type { Column } from "../engine/master.ts";
import type { LengthModel } from "./model.ts";
import { lengthColumn } from "./pricing.ts";
import type { Values } from "./values.ts";

/** Ways to cut one length that are gathered at most, and steps of the search for them. */
const MOST_WAYS = 1200;
const MOST_STEPS = 2_000_000;

export interface Ways {
  readonly ways: readonly Column[];
  /** these are all */
  readonly whole: boolean;
}

/**
 * The ways to cut a length that cost no more than the slack beyond the value of their parts, to which no part can be
 * added, and in which none can be replaced by a longer one; no more of each than is needed.
 */
export function waysWithin(model: LengthModel, values: Values, slack: number, effort: Effort): Ways {
  const rate = model.types.map((t, i) => at(values.parts, i) / t.size);
  const order = model.types.map((_, t) => t).sort((a, b) => at(rate, b) - at(rate, a) || a - b);
  const ways: Column[] = [];
  const counts = new Int32Array(order.length);
  const mostSteps = Math.min(MOST_STEPS, effort.remaining / 8);
  let steps = 0;
  model.stocks.forEach((s, stock) => {
    if (s.index < 0) return;
    const price = s.cost - at(values.stocks, stock);
    const add = (k: number, room: number, worth: number): void => {
      if (++steps > mostSteps || ways.length > MOST_WAYS) return;
      const t = order[k];
      if (t === undefined) {
        if (price - worth <= slack && room < s.size && isFull(model, counts, room)) {
          ways.push(lengthColumn(stock, s.cost, counts));
        }
        return;
      }
      if (price - worth - room * at(rate, t) > slack) return;
      const { size, need } = at(model.types, t);
      const value = at(values.parts, t);
      for (let n = Math.min(need, Math.floor(room / size)); n >= 0; n--) {
        counts[t] = n;
        add(k + 1, room - n * size, worth + n * value);
      }
      counts[t] = 0;
    };
    add(0, s.size, 0);
  });
  effort.spend(2 * steps + 8 * ways.length * order.length);
  return { ways, whole: steps <= mostSteps && ways.length <= MOST_WAYS };
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
