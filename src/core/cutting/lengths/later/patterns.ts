import type { Random } from "../../../kit/random.ts";
import { at } from "../../engine/at.ts";
import type { Effort } from "../../engine/effort.ts";
import type { Column } from "../../engine/master.ts";
import type { LengthModel } from "../model/model.ts";
import { lengthColumn } from "../model/pricing.ts";
import { Demand } from "./demand.ts";
import { type Bars, drawnPartition, partitions } from "./partitions.ts";
import { type Blank, shareOut } from "./share-out.ts";

/** Shares of the effort for a first look by chance, and for going through all numbers of times. */
const LOOK = 0.3;
const THROUGH = 0.4;
/** More patterns than this can be cut too many numbers of times to go through them all. */
const MOST_THROUGH = 13;
/** Patterns that are drawn anew together at most, unless it is all of them, and the share of the draws in which it is all. */
const MOST_TOGETHER = 8;
const ALL_TOGETHER = 0.3;
/** Numbers of times tried for patterns drawn together, and steps of the search for their parts. */
const TRIES = 30;
const STEPS = 2000;
/** Shares of the tries for as many patterns as before, and of those found that are taken, so that others come together. */
const AS_MANY = 0.15;
const TAKEN = 0.5;
/** Effort of one step of the search for the parts, and of its start. */
const STEP_EFFORT = 22;
const START_EFFORT = 2000;

/** A way to cut that is used a number of times. */
export interface Pattern {
  readonly stock: number;
  readonly counts: readonly number[];
  readonly times: number;
}

/** Patterns, and whether fewer cannot cut the same lengths. */
export interface Fewest {
  readonly patterns: readonly Pattern[];
  readonly proven: boolean;
}

/** The plan as patterns, each once. */
export function patternsOf(model: LengthModel, columns: readonly Column[]): Pattern[] {
  const found = new Map<string, { stock: number; counts: number[]; times: number }>();
  for (const c of columns) {
    const counts = model.types.map((_, t) => c.counts[c.types.indexOf(t)] ?? 0);
    const key = `${c.stock}:${counts}`;
    const known = found.get(key);
    if (known) known.times++;
    else found.set(key, { stock: c.stock, counts, times: 1 });
  }
  return [...found.values()];
}

export const columnsOf = (model: LengthModel, patterns: readonly Pattern[]): Column[] =>
  patterns.flatMap((p) =>
    new Array<Column>(p.times).fill(lengthColumn(p.stock, at(model.stocks, p.stock).cost, p.counts)),
  );

/**
 * Fewer patterns for the same lengths and parts. The numbers of times that the patterns are cut are chosen first, then
 * the parts are shared out to them. Some patterns at a time are drawn anew by chance, one less than before; where there
 * are not too many, all numbers of times of all patterns are gone through, which proves that fewer do not do.
 * @param keep room that one length must leave
 */
export function fewerPatterns(
  model: LengthModel,
  patterns: readonly Pattern[],
  keep: number,
  random: Random,
  effort: Effort,
): Fewest {
  const { remaining } = effort;
  let best = effort.stage(remaining * LOOK, (e) => drawnAnew(model, patterns, keep, random, e));
  const proven = effort.stage(remaining * THROUGH, (e) => {
    while (best.length <= MOST_THROUGH) {
      const { made, none } = goneThrough(model, best, keep, e);
      if (!made) return none;
      best = made;
    }
    return false;
  });
  if (!proven) best = drawnAnew(model, best, keep, random, effort);
  return { patterns: best, proven };
}

/** Draws some of the patterns anew as long as there is effort. */
function drawnAnew(
  model: LengthModel,
  patterns: readonly Pattern[],
  keep: number,
  random: Random,
  effort: Effort,
): readonly Pattern[] {
  let now = patterns;
  let best = patterns;
  while (!effort.over && now.length > 1) {
    const n = now.length;
    const few = random.unit() < ALL_TOGETHER ? n : Math.min(n, 2 + random.below(Math.min(n - 1, MOST_TOGETHER - 1)));
    const [some, others] = parted(now, few, random);
    const made = together(model, some, others.some((p) => roomIn(model, p) >= keep) ? 0 : keep, random, effort);
    if (made) now = merged([...others, ...made]);
    if (now.length < best.length) best = now;
  }
  return best;
}

/** So many of all by chance, and the others. */
function parted<T>(all: readonly T[], few: number, random: Random): [T[], T[]] {
  const others = [...all];
  const some: T[] = [];
  while (some.length < few) some.push(...others.splice(random.below(others.length), 1));
  return [some, others];
}

const roomIn = (model: LengthModel, p: Pattern): number =>
  at(model.stocks, p.stock).size - p.counts.reduce((sum, n, t) => sum + n * at(model.types, t).size, 0);

/** Equal patterns once. */
function merged(patterns: readonly Pattern[]): Pattern[] {
  const all = new Map<string, Pattern>();
  for (const p of patterns) {
    const key = `${p.stock}:${p.counts}`;
    all.set(key, { ...p, times: p.times + (all.get(key)?.times ?? 0) });
  }
  return [...all.values()];
}

/** Other patterns for the work of some, one less or now and then as many. */
function together(
  model: LengthModel,
  some: readonly Pattern[],
  keep: number,
  random: Random,
  effort: Effort,
): Pattern[] | undefined {
  const demand = demandOf(model, some);
  const bars = barsOf(some);
  for (let n = 0; n < TRIES && !effort.over; n++) {
    const asMany = random.unit() < AS_MANY;
    const blanks = drawnPartition(bars, asMany ? some.length : some.length - 1, random);
    if (!blanks) return undefined;
    const lowest = blanks.reduce((least, b, i) => (b.times < at(blanks, least).times ? i : least), 0);
    const kept = keep === 0 ? undefined : random.unit() < 0.5 ? lowest : random.below(blanks.length);
    const made = filled(model, demand, blanks, kept, keep, STEPS, effort).patterns;
    if (made && (!asMany || random.unit() < TAKEN)) return made;
  }
  return undefined;
}

const demandOf = (model: LengthModel, some: readonly Pattern[]): Demand =>
  new Demand(
    model,
    model.types.map((_, t) => some.reduce((sum, p) => sum + p.times * at(p.counts, t), 0)),
  );

function barsOf(some: readonly Pattern[]): Bars {
  const bars = new Map<number, number>();
  for (const p of some) bars.set(p.stock, p.times + (bars.get(p.stock) ?? 0));
  return bars;
}

interface Filled {
  readonly patterns: Pattern[] | undefined;
  /** nothing was found, and nothing was left out */
  readonly none: boolean;
}

/**
 * Patterns for a demand that are cut given numbers of times.
 * @param kept the one that leaves the room to keep
 */
function filled(
  model: LengthModel,
  demand: Demand,
  times: readonly { readonly stock: number; readonly times: number }[],
  kept: number | undefined,
  keep: number,
  steps: number,
  effort: Effort,
): Filled {
  const before = demand.steps;
  const blanks = times.map(
    (b, i): Blank => ({ times: b.times, room: at(model.stocks, b.stock).size - (i === kept ? keep : 0) }),
  );
  const shared = blanks.some((b) => b.room < 0) ? undefined : shareOut(demand, blanks, steps);
  effort.spend(START_EFFORT + STEP_EFFORT * (shared?.steps ?? 0) + demand.steps - before);
  const { counts, none } = shared ?? { counts: undefined, none: true };
  if (!counts) return { patterns: undefined, none };
  const kinds = demand.types.length;
  const patterns = times.map(({ stock, times: often }, p): Pattern => {
    const own = model.types.map((_, t) => {
      const k = demand.types.indexOf(t);
      return k < 0 ? 0 : at(counts, p * kinds + k);
    });
    return { stock, counts: own, times: often };
  });
  return { patterns, none: false };
}

/** One pattern less, by all numbers of times one after the other; none: there is no such plan. */
function goneThrough(
  model: LengthModel,
  patterns: readonly Pattern[],
  keep: number,
  effort: Effort,
): { readonly made: Pattern[] | undefined; readonly none: boolean } {
  const demand = demandOf(model, patterns);
  for (const times of partitions(barsOf(patterns), patterns.length - 1)) {
    for (const kept of keep === 0 ? [undefined] : differentOnes(times)) {
      if (effort.over) return { made: undefined, none: false };
      const steps = effort.remaining / STEP_EFFORT;
      const found = filled(model, demand, times, kept, keep, steps, effort);
      if (found.patterns) return { made: merged(found.patterns), none: false };
      if (!found.none) return { made: undefined, none: false };
    }
  }
  return { made: undefined, none: true };
}

/** Places of which no two have the same stock and times. */
const differentOnes = (all: readonly { readonly stock: number; readonly times: number }[]): number[] =>
  all.flatMap((b, i) => (all.findIndex((a) => a.stock === b.stock && a.times === b.times) === i ? [i] : []));
