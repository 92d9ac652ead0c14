import type { Random } from "../../../kit/random.ts";
import { at } from "../../engine/at.ts";
import type { Effort } from "../../engine/effort.ts";
import type { Layout, Placed } from "../plan/layout.ts";
import type { SheetModel } from "../plan/model.ts";

/** Steps of filled or wasted area that are compared with each other, to one sheet. */
const BUCKETS_PER_SHEET = 24;
/** Ways to go on from one state. */
const BRANCHES = 10;
const FIRST_WIDTH = 8;
const MOST_WIDTH = 4096;
/** Most weight of unwieldy parts done against waste, drawn anew for each beam. */
const MOST_BIAS = 0.3;

/** Work of one state, in steps of the other searches: what it takes by itself, and for each type of part. */
const STATE_STEPS = 40;
const STEPS_PER_TYPE = 4;

/** A partly cut plan: what is still to be placed and the free rectangles, the next to serve last. */
interface State {
  readonly left: Uint16Array;
  readonly free: readonly number[];
  readonly sheet: number;
  readonly parts: number;
  readonly waste: number;
  readonly filled: number;
  /** sum of squared areas placed: says how much of the unwieldy is done */
  readonly bulk: number;
  readonly before: State | undefined;
  readonly placed: Placed & { sheet: number };
}

/** Place, width and height. */
type Rectangle = readonly [x: number, y: number, w: number, h: number];

/** A step not yet taken. */
interface Move {
  readonly from: State;
  readonly type: number;
  readonly turned: boolean;
  /** first cut across: the strip beside the part keeps the full height */
  readonly across: boolean;
  readonly guide: number;
}

/**
 * Beam search for a plan that puts all parts on the given sheets: free rectangles are served one after the other, each
 * by a part and a way to cut the rest; of the plans that have used up about as much area the few with the least waste
 * go on, those with the large parts done preferred. What wastes more than the sheets can spare is dropped.
 */
export class BeamSearch {
  readonly #model: SheetModel;
  readonly #w: Int32Array;
  readonly #h: Int32Array;
  readonly #turns: Int32Array;
  readonly #area: Float64Array;
  readonly #largest: number;
  /** plans kept at one stage of the next beam */
  width = FIRST_WIDTH;
  #plan: readonly number[] = [];
  #spare = 0;
  #bias = 0;
  /** whether the present beam has left out anything */
  narrow = false;

  constructor(model: SheetModel) {
    this.#model = model;
    this.#w = Int32Array.from(model.types, (t) => t.w);
    this.#h = Int32Array.from(model.types, (t) => t.h);
    this.#turns = Int32Array.from(model.types, (t) => Number(t.turns));
    this.#area = Float64Array.from(model.types, (t) => t.area);
    this.#largest = Math.max(...this.#area);
  }

  /**
   * Tries wider and wider beams until one reaches the end, leaves nothing out, or the effort is spent; goes on there when called again.
   * @param plan stock of each sheet, in the order they are filled
   * @param beams how many are tried
   */
  reach(
    plan: readonly number[],
    random: Random,
    effort: Effort,
    beams = Number.POSITIVE_INFINITY,
  ): Layout[] | undefined {
    const model = this.#model;
    const room = plan.reduce((sum, s) => sum + at(model.stocks, s).w * at(model.stocks, s).h, 0);
    this.#plan = plan;
    this.#spare = room - model.types.reduce((sum, t) => sum + t.need * t.area, 0);
    this.narrow = false;
    if (this.#spare < 0) return undefined;
    for (let n = 0; n < beams && !effort.over; n++) {
      this.#bias = random.unit() * MOST_BIAS;
      const end = this.#run(this.width, room / plan.length / BUCKETS_PER_SHEET, effort);
      if (end) return this.#layouts(end);
      // what has seen every plan finds no other when it is wider
      if (!this.narrow) return undefined;
      if (!effort.over) this.width = Math.min(MOST_WIDTH, Math.ceil(this.width * 1.6));
    }
    return undefined;
  }

  #run(width: number, step: number, effort: Effort): State | undefined {
    const model = this.#model;
    const plan = this.#plan;
    this.narrow = false;
    effort.spend(STATE_STEPS + STEPS_PER_TYPE * this.#w.length);
    const buckets: (Move[] | undefined)[] = [];
    const first = at(model.stocks, at(plan, 0));
    const root: State = {
      left: Uint16Array.from(model.types, (t) => t.need),
      free: [0, 0, first.w, first.h],
      sheet: 0,
      parts: model.total,
      waste: 0,
      filled: 0,
      bulk: 0,
      before: undefined,
      placed: { type: -1, x: 0, y: 0, turned: false, sheet: -1 },
    };
    this.#expand(root, 0, step, buckets);
    for (let b = 1; b < buckets.length; b++) {
      const moves = buckets[b];
      buckets[b] = undefined;
      if (!moves) continue;
      moves.sort((p, q) => p.guide - q.guide);
      const seen = new Set<number>();
      let kept = 0;
      for (const move of moves) {
        if (kept >= width || effort.over) {
          this.narrow = true;
          break;
        }
        const state = this.#take(move);
        effort.spend(STATE_STEPS + STEPS_PER_TYPE * this.#w.length);
        if (!state) continue;
        if (state.parts === 0) return state;
        const key = this.#signature(state);
        if (seen.has(key)) continue;
        seen.add(key);
        kept++;
        this.#expand(state, b, step, buckets);
      }
      if (effort.over) return undefined;
    }
    return undefined;
  }

  /** All parts and cuts for the next free rectangle; the best few go into the buckets of what they use up. */
  #expand(state: State, bucket: number, step: number, buckets: (Move[] | undefined)[]): void {
    const w = this.#w;
    const h = this.#h;
    const area = this.#area;
    const n = state.free.length;
    const rw = state.free[n - 2] as number;
    const rh = state.free[n - 1] as number;
    const { left } = state;
    let leastW = Number.POSITIVE_INFINITY;
    let leastH = Number.POSITIVE_INFINITY;
    for (let t = 0; t < left.length; t++) {
      if (left[t] === 0) continue;
      const turns = (this.#turns[t] as number) === 1;
      const a = turns && (h[t] as number) < (w[t] as number) ? (h[t] as number) : (w[t] as number);
      const b = turns && (w[t] as number) < (h[t] as number) ? (w[t] as number) : (h[t] as number);
      if (a < leastW) leastW = a;
      if (b < leastH) leastH = b;
    }
    const best: Move[] = [];
    for (let t = 0; t < left.length; t++) {
      if (left[t] === 0) continue;
      for (let turn = 0; turn <= (this.#turns[t] as number); turn++) {
        const dw = rw - (turn ? (h[t] as number) : (w[t] as number));
        const dh = rh - (turn ? (w[t] as number) : (h[t] as number));
        if (dw < 0 || dh < 0) continue;
        const bulk = (this.#bias * (area[t] as number) * (area[t] as number)) / this.#largest;
        const base = state.waste - this.#bias * state.bulk - bulk;
        for (let cut = 0; cut < 2; cut++) {
          if (cut === 1 && (dw === 0 || dh === 0)) break;
          const across = cut === 0;
          let lost = 0;
          if (dw > 0 && dw < leastW) lost += dw * (across ? rh : rh - dh);
          if (dh > 0 && dh < leastH) lost += dh * (across ? rw - dw : rw);
          if (state.waste + lost > this.#spare) continue;
          const guide = base + lost;
          if (best.length === BRANCHES) this.narrow = true;
          if (best.length === BRANCHES && guide >= at(best, BRANCHES - 1).guide) continue;
          let place = best.length;
          while (place > 0 && at(best, place - 1).guide > guide) place--;
          best.splice(place, 0, { from: state, type: t, turned: turn === 1, across, guide });
          if (best.length > BRANCHES) best.pop();
        }
      }
    }
    for (const move of best) {
      const used = state.filled + (area[move.type] as number) + state.waste;
      const b = Math.max(bucket + 1, Math.floor(used / step));
      const list = buckets[b];
      if (list) list.push(move);
      else buckets[b] = [move];
    }
  }

  /** Does a step, and gives up the free rectangles that no part left fits; undefined when too much is wasted. */
  #take(move: Move): State | undefined {
    const w = this.#w;
    const h = this.#h;
    const model = this.#model;
    const plan = this.#plan;
    const { from, type, turned, across } = move;
    const n = from.free.length;
    const x = from.free[n - 4] as number;
    const y = from.free[n - 3] as number;
    const rw = from.free[n - 2] as number;
    const rh = from.free[n - 1] as number;
    const pw = turned ? (h[type] as number) : (w[type] as number);
    const ph = turned ? (w[type] as number) : (h[type] as number);
    const left = from.left.slice();
    left[type] = (left[type] ?? 0) - 1;
    const parts = from.parts - 1;
    const beside: Rectangle = across ? [x + pw, y, rw - pw, rh] : [x + pw, y, rw - pw, ph];
    const above: Rectangle = across ? [x, y + ph, pw, rh - ph] : [x, y + ph, rw, rh - ph];
    const free: number[] = [];
    for (let i = 0; i < n - 4; i++) free.push(from.free[i] as number);
    const sides = beside[2] * beside[3] < above[2] * above[3] ? [above, beside] : [beside, above];
    for (const side of sides) if (side[2] > 0 && side[3] > 0) free.push(...side);
    let { waste, sheet } = from;
    while (parts > 0) {
      if (free.length === 0) {
        sheet++;
        if (sheet >= plan.length) return undefined;
        const s = at(model.stocks, at(plan, sheet));
        free.push(0, 0, s.w, s.h);
      }
      const fw = free[free.length - 2] as number;
      const fh = free[free.length - 1] as number;
      if (this.#anyFits(left, fw, fh)) break;
      waste += fw * fh;
      if (waste > this.#spare) return undefined;
      free.length -= 4;
    }
    return {
      left,
      free,
      sheet,
      parts,
      waste,
      filled: from.filled + (this.#area[type] as number),
      bulk: from.bulk + ((this.#area[type] as number) * (this.#area[type] as number)) / this.#largest,
      before: from,
      placed: { type, x, y, turned, sheet: from.sheet },
    };
  }

  /** States of one signature have the same parts left and the same free sizes; a rare clash only drops a state. */
  #signature(state: State): number {
    const { left, free } = state;
    let a = state.sheet;
    let b = 0;
    for (let t = 0; t < left.length; t++) a = Math.imul(a ^ (left[t] ?? 0), 0x5bd1e995) + t;
    for (let i = 2; i < free.length; i += 4) {
      b = Math.imul(b ^ (free[i] as number), 0x01000193) ^ (b >>> 15);
      b = Math.imul(b ^ (free[i + 1] as number), 0x5bd1e995) ^ (b >>> 13);
    }
    return (a >>> 0) * 2097152 + (b >>> 11);
  }

  #anyFits(left: Uint16Array, rw: number, rh: number): boolean {
    const w = this.#w;
    const h = this.#h;
    for (let t = 0; t < left.length; t++) {
      if (left[t] === 0) continue;
      if ((w[t] as number) <= rw && (h[t] as number) <= rh) return true;
      if ((h[t] as number) <= rw && (w[t] as number) <= rh && (this.#turns[t] as number) === 1) return true;
    }
    return false;
  }

  #layouts(end: State): Layout[] {
    const placed: Placed[][] = this.#plan.map(() => []);
    for (let s: State | undefined = end; s && s.placed.sheet >= 0; s = s.before) {
      const { type, x, y, turned, sheet } = s.placed;
      at(placed, sheet).push({ type, x, y, turned });
    }
    return this.#plan
      .map((stock, i) => ({ stock, placed: at(placed, i).reverse() }))
      .filter((l) => l.placed.length > 0);
  }
}
