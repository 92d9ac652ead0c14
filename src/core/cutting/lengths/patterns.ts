import type { Random } from "../../kit/random.ts";
import type { Effort } from "../engine/effort.ts";
import type { Column } from "../engine/master.ts";
import type { LengthModel } from "./model.ts";
import { lengthColumn } from "./pricing.ts";

/** Steps of one search for two or three patterns that do the work of one more. */
const STEPS = 4000;
/** Steps of the search for patterns that can be cut a number of times, and how many are kept. */
const FILL_STEPS = 3000;
const MOST_FILLS = 60;

/** A way to cut that is used a number of times. */
export interface Pattern {
  readonly stock: number;
  readonly counts: readonly number[];
  readonly times: number;
}

/** The plan as patterns, each once. */
export function patternsOf(model: LengthModel, columns: readonly Column[]): Pattern[] {
  const found = new Map<string, { stock: number; counts: number[]; times: number }>();
  for (const c of columns) {
    const counts = model.types.map(() => 0);
    c.types.forEach((t, k) => {
      counts[t] = c.counts[k]!;
    });
    const key = `${c.stock}:${counts}`;
    const known = found.get(key);
    if (known) known.times++;
    else found.set(key, { stock: c.stock, counts, times: 1 });
  }
  return [...found.values()];
}

export const columnsOf = (model: LengthModel, patterns: readonly Pattern[]): Column[] =>
  patterns.flatMap((p) =>
    new Array<Column>(p.times).fill(lengthColumn(p.stock, model.stocks[p.stock]!.cost, p.counts)),
  );

/**
 * Fewer patterns for the same lengths and parts: any three patterns of one stock are replaced by two where two can do
 * their work, any two by one, any four by three; then whole sets of patterns are drawn by chance, those first that can
 * be cut many times (after R. Haessler, Oper. Res. 23 (1975) 483-493, from memory; merging: H. Foerster, G. Waescher,
 * Int. J. Prod. Res. 38 (2000) 1657-1676, from memory).
 * @param keep room that one length must leave
 */
export function fewerPatterns(
  model: LengthModel,
  patterns: readonly Pattern[],
  keep: number,
  random: Random,
  effort: Effort,
): readonly Pattern[] {
  let best = merged(model, patterns, keep, effort);
  const stocks = [...new Set(best.map((p) => p.stock))];
  while (!effort.over) {
    const stock = stocks[random.below(stocks.length)]!;
    const own = best.filter((p) => p.stock === stock);
    if (own.length < 3) {
      if (stocks.every((s) => best.filter((p) => p.stock === s).length < 3)) break;
      effort.spend(1000);
      continue;
    }
    // some of the patterns of a stock at a time: a few can be drawn anew more often than all
    const some = own.length <= 4 || random.unit() < 0.4 ? own : chosen(own, 4 + random.below(own.length - 3), random);
    const others = best.filter((p) => !some.includes(p));
    const drawn = draw(model, some, keeps(model, others, keep) ? 0 : keep, random, effort);
    if (!drawn) continue;
    const next = merged(model, [...others, ...drawn], keep, effort);
    if (next.length < best.length || (next.length === best.length && random.unit() < 0.3)) best = next;
  }
  return best;
}

function chosen<T>(all: readonly T[], n: number, random: Random): T[] {
  const left = [...all];
  const some: T[] = [];
  while (some.length < n) some.push(...left.splice(random.below(left.length), 1));
  return some;
}

/** Whether one length leaves so much room. */
const keeps = (model: LengthModel, patterns: readonly Pattern[], keep: number): boolean =>
  keep <= 0 || patterns.some((p) => roomIn(model, p) >= keep);

const roomIn = (model: LengthModel, p: Pattern): number =>
  model.stocks[p.stock]!.size - p.counts.reduce((sum, n, t) => sum + n * model.types[t]!.size, 0);

/** Merges as long as there is one pattern less. */
function merged(model: LengthModel, patterns: readonly Pattern[], keep: number, effort: Effort): Pattern[] {
  let now = [...patterns];
  for (let into = 1; into <= 3 && !effort.over; into++) {
    const next = mergeOnce(model, now, into, keep, effort);
    if (!next) continue;
    now = next;
    into = 0;
  }
  return now;
}

/** Replaces `into` + 1 patterns of one stock by `into`. */
function mergeOnce(
  model: LengthModel,
  patterns: Pattern[],
  into: number,
  keep: number,
  effort: Effort,
): Pattern[] | undefined {
  const take = (from: number, some: readonly Pattern[]): Pattern[] | undefined => {
    if (some.length === into + 1) {
      const made = split(model, some[0]!.stock, demandOf(some), timesOf(some), into, effort);
      const next = made && [...patterns.filter((p) => !some.includes(p)), ...made];
      return next && keeps(model, next, keep) ? next : undefined;
    }
    for (let i = from; i < patterns.length && !effort.over; i++) {
      if (some.length > 0 && patterns[i]!.stock !== some[0]!.stock) continue;
      const made = take(i + 1, [...some, patterns[i]!]);
      if (made) return made;
    }
    return undefined;
  };
  return take(0, []);
}

const timesOf = (some: readonly Pattern[]): number => some.reduce((sum, p) => sum + p.times, 0);

const demandOf = (some: readonly Pattern[]): number[] =>
  some[0]!.counts.map((_, t) => some.reduce((sum, p) => sum + p.times * p.counts[t]!, 0));

/** So many patterns for just the demand, cut so often together; undefined where none were found within the steps. */
function split(
  model: LengthModel,
  stock: number,
  demand: readonly number[],
  times: number,
  into: number,
  effort: Effort,
): Pattern[] | undefined {
  const { size } = model.stocks[stock]!;
  const used = demand.flatMap((n, t) => (n > 0 ? [t] : []));
  let steps = 0;
  const numbers = (left: number, n: number, most: number): number[][] => {
    if (n === 1) return left <= most ? [[left]] : [];
    const found: number[][] = [];
    for (let first = Math.min(most, left - n + 1); first * n >= left; first--) {
      for (const rest of numbers(left - first, n - 1, first)) found.push([first, ...rest]);
    }
    return found;
  };
  for (const often of numbers(times, into, times)) {
    const counts = often.map(() => demand.map(() => 0));
    const rooms = often.map(() => size);
    /** Shares the parts of type `k` out to the patterns from `p` on. */
    const share = (k: number, p: number, left: number): boolean => {
      if (++steps > STEPS) return false;
      const t = used[k];
      if (t === undefined) return true;
      const length = model.types[t]!.size;
      const n = often[p]!;
      if (p === often.length - 1) {
        const each = left / n;
        if (!Number.isInteger(each) || each * length > rooms[p]!) return false;
        counts[p]![t] = each;
        rooms[p]! -= each * length;
        if (share(k + 1, 0, used[k + 1] === undefined ? 0 : demand[used[k + 1]!]!)) return true;
        rooms[p]! += each * length;
        counts[p]![t] = 0;
        return false;
      }
      for (let each = Math.min(Math.floor(left / n), Math.floor(rooms[p]! / length)); each >= 0; each--) {
        counts[p]![t] = each;
        rooms[p]! -= each * length;
        if (share(k, p + 1, left - each * n)) return true;
        rooms[p]! += each * length;
      }
      counts[p]![t] = 0;
      return false;
    };
    const found = share(0, 0, demand[used[0]!]!);
    if (found) {
      effort.spend(4 * steps);
      return often.map((n, p) => ({ stock, counts: counts[p]!, times: n }));
    }
    if (steps > STEPS) break;
  }
  effort.spend(4 * steps + 300);
  return undefined;
}

/** Other patterns for the same lengths, drawn one after the other, the one that leaves room first; the last two by search. */
function draw(
  model: LengthModel,
  some: readonly Pattern[],
  keep: number,
  random: Random,
  effort: Effort,
): Pattern[] | undefined {
  const { stock } = some[0]!;
  const left = demandOf(some);
  let times = timesOf(some);
  const made: Pattern[] = [];
  while (made.length < some.length) {
    if (times === 0) return made;
    const roomy = keep > 0 && made.length === 0;
    const last = roomy
      ? undefined
      : split(model, stock, left, times, made.length < some.length - 1 && random.unit() < 0.7 ? 2 : 1, effort);
    if (last) return [...made, ...last];
    if (effort.over) return undefined;
    const next = roomy
      ? oftenCut(model, stock, left, 1, keep, random, effort)
      : oftenCut(model, stock, left, times, 0, random, effort);
    if (!next) return undefined;
    made.push(next);
    times -= next.times;
    next.counts.forEach((n, t) => {
      left[t]! -= n * next.times;
    });
  }
  return times === 0 ? made : undefined;
}

/**
 * A pattern that can be cut many times without wasting more than the lengths left can spare.
 * @param keep room that it must leave
 */
function oftenCut(
  model: LengthModel,
  stock: number,
  left: readonly number[],
  times: number,
  keep: number,
  random: Random,
  effort: Effort,
): Pattern | undefined {
  const { size } = model.stocks[stock]!;
  const most = keep > 0 ? size : times * size - left.reduce((sum, n, t) => sum + n * model.types[t]!.size, 0);
  for (let n = 1 + Math.floor(times * (0.1 + 0.9 * random.unit())); n >= 1; n = Math.floor(n * 0.7)) {
    const fills: number[][] = [];
    const counts = left.map(() => 0);
    const types = left.flatMap((k, t) => (k >= n ? [t] : []));
    for (let i = types.length - 1; i > 0; i--) {
      const j = random.below(i + 1);
      [types[i], types[j]] = [types[j]!, types[i]!];
    }
    let steps = 0;
    const fill = (k: number, room: number): void => {
      if (++steps > FILL_STEPS || fills.length >= MOST_FILLS) return;
      if ((keep + room) * n <= most) fills.push([...counts]);
      for (let i = k; i < types.length; i++) {
        const t = types[i]!;
        if (model.types[t]!.size > room || (counts[t]! + 1) * n > left[t]!) continue;
        counts[t]!++;
        fill(i, room - model.types[t]!.size);
        counts[t]!--;
      }
    };
    fill(0, size - keep);
    effort.spend(4 * steps);
    const full = fills.filter((f) => f.some((c) => c > 0));
    if (full.length > 0) {
      const best = full[random.below(full.length)]!;
      const fit = Math.min(times, ...best.flatMap((c, t) => (c > 0 ? [Math.floor(left[t]! / c)] : [])));
      const room = size - best.reduce((sum, c, t) => sum + c * model.types[t]!.size, 0);
      const often = room > 0 ? Math.min(fit, Math.floor(most / room)) : fit;
      return { stock, counts: best, times: Math.max(1, random.unit() < 0.7 ? often : Math.min(n, often)) };
    }
    if (n === 1) break;
  }
  return undefined;
}
