import type { Random } from "../../../kit/random.ts";
import { at } from "../../engine/at.ts";
import type { Effort } from "../../engine/effort.ts";
import type { Column } from "../../engine/master.ts";
import type { LengthModel } from "../model/model.ts";
import { lengthColumn } from "../model/pricing.ts";
import { completeLengths } from "./completion.ts";
import { longestThatFits, partSets } from "./sets.ts";

/** Lengths that are not filled with the others: what the others leave over must go into these at the end. */
const OPEN = 2;
/** Moves without a smaller pool before some lengths are emptied. */
const PATIENCE = 30;
/** Lengths emptied at one time. */
const EMPTIED = 5;
/** Steps of the search for the parts that fill an emptied length best. */
const FILL_STEPS = 500;
/** Steps of the search for a way to cut the pool from the open lengths. */
const CLOSE_STEPS = 20_000;

/** Lengths kept for the linear problem, for each type of part. */
const HARVEST = 5;

/** A length with the types of its parts, the room left, and until which move each type may not come back. */
interface Bar {
  parts: number[];
  room: number;
  readonly barred: Map<number, number>;
}

interface Move {
  readonly bar: Bar;
  readonly out: readonly number[];
  readonly into: readonly number[];
}

/**
 * Looks for a plan with a given number of lengths of the one stock there is: all but two are kept as full as can be, the
 * other parts wait in a pool. Each move takes up to two parts out of a length and puts up to three of the pool in, the
 * move that makes the pool smallest, even where it grows; what went out stays out for some moves. The plan is found
 * when the pool can be cut from two lengths (after M. Buljubasic, M. Vasquez, Comput. Oper. Res. 76 (2016) 12-21, pages from memory).
 */
export class LengthExchange {
  readonly #model: LengthModel;
  readonly #random: Random;
  readonly #size: number;
  readonly #sizes: Int32Array;
  /** lengths filled on the way, by their parts */
  readonly harvest = new Map<string, Column>();
  #bars: Bar[] = [];
  #pool: number[] = [];
  #open = OPEN;
  #moves = 0;
  /** shortest pool since the last start, and the move that made it */
  #least = 0;
  #since = 0;

  constructor(model: LengthModel, random: Random) {
    this.#model = model;
    this.#random = random;
    this.#size = at(model.stocks, 0).size;
    this.#sizes = Int32Array.from(model.types, (t) => t.size);
  }

  /**
   * Keeps the fullest lengths of a plan; the parts of the others make the pool.
   * @param from a plan with too many lengths
   * @param goal lengths that may be used
   */
  start(from: readonly Column[], goal: number): void {
    this.#open = Math.min(OPEN, goal);
    const bars = from.map((c): Bar => {
      const parts = c.types.flatMap((t, k) => new Array<number>(at(c.counts, k)).fill(t));
      return { parts, room: this.#size - this.#length(parts), barred: new Map() };
    });
    bars.sort((a, b) => a.room - b.room);
    this.#bars = bars.slice(0, goal - this.#open);
    this.#pool = bars.slice(goal - this.#open).flatMap((b) => b.parts);
    this.#moves = 0;
    this.#restart();
  }

  #restart(): void {
    this.#least = Number.POSITIVE_INFINITY;
    this.#since = this.#moves;
  }

  /** Goes on from where it stands; the columns, or undefined when the effort is spent. */
  search(effort: Effort): Column[] | undefined {
    for (; !effort.over; this.#moves++) {
      const left = this.#length(this.#pool);
      if (left <= this.#open * this.#size) {
        const rest = this.#close(effort);
        if (rest) return [...this.#bars.map((b) => this.#column(b.parts)), ...rest];
      }
      if (this.#bars.length === 0) return undefined;
      if (left < this.#least) {
        this.#least = left;
        this.#since = this.#moves;
      } else if (this.#moves - this.#since > PATIENCE) {
        this.#keep();
        this.#empty(effort);
        this.#restart();
      }
      this.#move(effort);
    }
    return undefined;
  }

  #length(parts: readonly number[]): number {
    return parts.reduce((sum, t) => sum + (this.#sizes[t] as number), 0);
  }

  #column(parts: readonly number[]): Column {
    const counts = new Int32Array(this.#sizes.length);
    for (const t of parts) counts[t] = (counts[t] as number) + 1;
    return lengthColumn(0, at(this.#model.stocks, 0).cost, counts);
  }

  #close(effort: Effort): Column[] | undefined {
    const needs = new Array<number>(this.#sizes.length).fill(0);
    for (const t of this.#pool) needs[t] = at(needs, t) + 1;
    return completeLengths(this.#model, needs, this.#open, effort, CLOSE_STEPS);
  }

  #move(effort: Effort): void {
    const best = this.#bestMove(effort);
    if (!best) {
      for (const b of this.#bars) b.barred.clear();
      return;
    }
    const { bar, out, into } = best;
    for (const t of out) {
      bar.parts.splice(bar.parts.indexOf(t), 1);
      this.#pool.push(t);
      bar.barred.set(t, this.#moves + 3 + this.#random.below(10));
    }
    for (const t of into) {
      bar.parts.push(t);
      this.#pool.splice(this.#pool.indexOf(t), 1);
    }
    bar.room += this.#length(out) - this.#length(into);
  }

  /** The move that takes most from the pool, one at random of those that take as much. */
  #bestMove(effort: Effort): Move | undefined {
    const sizes = this.#sizes;
    const moves = this.#moves;
    const sets = partSets(this.#pool, sizes, this.#size);
    const { sums, types } = sets;
    let steps = 40 * sums.length;
    let most = Number.NEGATIVE_INFINITY;
    let ties = 0;
    let foundBar: Bar | undefined;
    let foundFirst = -1;
    let foundSecond = -1;
    let foundSet = 0;
    /** Whether a set holds what would go out for it, or what went out not long ago. */
    const blocked = (bar: Bar, first: number, second: number, set: number): boolean => {
      for (let k = 3 * set; k < 3 * set + 3; k++) {
        const t = types[k] as number;
        if (t < 0) return false;
        if (t === first || t === second || (bar.barred.get(t) ?? 0) > moves) return true;
      }
      return false;
    };
    const tryOut = (bar: Bar, first: number, second: number): void => {
      const out = (first < 0 ? 0 : (sizes[first] as number)) + (second < 0 ? 0 : (sizes[second] as number));
      steps += 16;
      for (let set = longestThatFits(sets, bar.room + out); set >= 0 && (sums[set] as number) - out >= most; set--) {
        steps += 2;
        if (set === 0 && first < 0) return;
        if (blocked(bar, first, second, set)) continue;
        if ((sums[set] as number) - out > most) {
          most = (sums[set] as number) - out;
          ties = 0;
        }
        if (this.#random.below(++ties) === 0) {
          foundBar = bar;
          foundFirst = first;
          foundSecond = second;
          foundSet = set;
        }
      }
    };
    for (const bar of this.#bars) {
      const { parts } = bar;
      tryOut(bar, -1, -1);
      for (let i = 0; i < parts.length; i++) {
        tryOut(bar, at(parts, i), -1);
        for (let j = i + 1; j < parts.length; j++) tryOut(bar, at(parts, i), at(parts, j));
      }
    }
    effort.spend(steps);
    if (!foundBar) return undefined;
    return {
      bar: foundBar,
      out: [foundFirst, foundSecond].filter((t) => t >= 0),
      into: [...types.subarray(3 * foundSet, 3 * foundSet + 3)].filter((t) => t >= 0),
    };
  }

  /** Lengths filled on the way are good columns: the linear problem then needs few of its own. */
  #keep(): void {
    for (const b of this.#bars) {
      if (this.harvest.size >= HARVEST * this.#sizes.length) return;
      const key = [...b.parts].sort((x, y) => x - y).join();
      if (!this.harvest.has(key)) this.harvest.set(key, this.#column(b.parts));
    }
  }

  /** Empties the length with most room and some others, and fills them again one by one. */
  #empty(effort: Effort): void {
    const bars = this.#bars;
    const random = this.#random;
    const some = new Set([bars.reduce((most, b) => (b.room > most.room ? b : most))]);
    for (let n = 1; n < EMPTIED; n++) some.add(at(bars, random.below(bars.length)));
    for (const b of some) {
      this.#pool.push(...b.parts);
      b.parts = [];
      b.room = this.#size;
    }
    for (const b of some) this.#fill(b, effort);
  }

  /** Starts with any part of the pool and adds those that leave the least room. */
  #fill(bar: Bar, effort: Effort): void {
    const pool = this.#pool;
    const sizes = this.#sizes;
    if (pool.length === 0) return;
    const first = at(pool.splice(this.#random.below(pool.length), 1), 0);
    pool.sort((a, b) => a - b);
    const chosen: number[] = [];
    let best: number[] = [];
    let least = this.#size;
    let steps = 0;
    const add = (from: number, room: number): boolean => {
      if (room < least) {
        least = room;
        best = [...chosen];
      }
      if (room === 0) return true;
      for (let i = from; i < pool.length; i++) {
        const s = sizes[at(pool, i)] as number;
        if (s > room || (i > from && pool[i - 1] === pool[i])) continue;
        if (++steps > FILL_STEPS) return true;
        chosen.push(i);
        const done = add(i + 1, room - s);
        chosen.pop();
        if (done) return true;
      }
      return false;
    };
    add(0, this.#size - (sizes[first] as number));
    effort.spend(steps * 4);
    bar.parts = [first, ...best.map((i) => at(pool, i))];
    bar.room = least;
    this.#pool = pool.filter((_, i) => !best.includes(i));
  }
}
