import {
  type LengthPart,
  type LengthStock,
  nestLengths,
  nestSheets,
  type SheetPart,
  type SheetStock,
} from "../../src/core/cutting/index.ts";
import { Random } from "../../src/core/kit/random.ts";
import { plant } from "../core/cutting/planted.ts";
import { faults } from "../core/cutting/verify.ts";
import { lengthFaults } from "../core/cutting/verify-lengths.ts";
import { flags, type Row, report, search, timed } from "./cutting-report.ts";

/** Invented work of a shop, made from seeds: all sizes and prices are ours. */

const chosen = (n: number): number[] =>
  Array.from({ length: n }, (_, i) => i).filter(
    (i) => i % flags.every === flags.offset && (flags.only === "" || flags.only.split(",").includes(String(i))),
  );

/** Parts of a house's interior: many sizes, some with grain. */
function shopParts(random: Random): SheetPart[] {
  const kinds = 8 + random.below(55);
  return Array.from({ length: kinds }, (_, i) => {
    const lengthIn = (20 + random.below(300)) / 4;
    const widthIn = Math.min(46, (12 + random.below(150)) / 4);
    return { id: `p${i}`, lengthIn, widthIn, quantity: 1 + random.below(10), turns: random.unit() < 0.5 };
  });
}

/** How long the longest takes: 40 lists of 8 to 62 kinds of parts. */
export function shop(): readonly Row[] {
  const stocks: SheetStock[] = [
    { id: "8x4", lengthIn: 96, widthIn: 48, cost: 42, quantity: null },
    { id: "10x4", lengthIn: 120, widthIn: 48, cost: 54, quantity: null },
  ];
  const rows = chosen(40).map((i): Row => {
    const parts = shopParts(new Random(7000 + i));
    const goal = i % 2 === 0 ? ("sheets" as const) : ("cost" as const);
    const options = { kerfIn: 0.125, trimIn: 0.25, goal, ...search() };
    const some = goal === "cost" ? stocks : stocks.slice(0, 1);
    const { found: n, ms } = timed(() => nestSheets(parts, some, options));
    const ours = goal === "cost" ? n.cost : n.count;
    return { ...n, group: goal, id: String(i), best: n.bound, ours, ms, wrong: faults(n, parts, some, options) };
  });
  return report("shop sheets: best is our own bound", rows);
}

/** Sheets of two sizes cut up at random: the plan that they came from is known. */
export function jigsaws(): readonly Row[] {
  const rows = chosen(40).map((i): Row => {
    const random = new Random(300 + i);
    const second = { l: 60 + 12 * random.below(6), w: 30 + 6 * random.below(4), cost: 0 };
    second.cost = Math.round(((42 * second.l * second.w) / (96 * 48)) * (0.85 + 0.3 * random.unit()) + 1);
    const p = plant(
      9000 + i,
      2 + random.below(9),
      [{ l: 96, w: 48, cost: 42 }, second],
      0.125,
      0.25,
      random.unit() < 0.5,
      5,
    );
    const options = { kerfIn: 0.125, trimIn: 0.25, goal: "cost" as const, ...search() };
    const { found: n, ms } = timed(() => nestSheets(p.parts, p.stocks, options));
    const wrong = faults(n, p.parts, p.stocks, options);
    return { ...n, group: "jigsaw", id: String(i), best: p.cost, ours: n.cost, ms, wrong };
  });
  report("two sheet sizes at cost, cut up at random: best is the plan they came from", rows);
  const misses = rows.filter((r) => r.ours > r.best).map((r) => (100 * (r.ours - r.best)) / r.best);
  console.log(`missed ${misses.length}, worst ${Math.max(0, ...misses).toFixed(1)} %`);
  return rows;
}

function timberParts(random: Random, longest: number): LengthPart[] {
  return Array.from({ length: 5 + random.below(11) }, (_, i) => ({
    id: `p${i}`,
    lengthIn: (8 * 14 + random.below(8 * (longest - 20))) / 8,
    quantity: 1 + random.below(20),
  }));
}

/** Parts of a frame and three to five lengths with prices of our own. */
export function timberProblem(i: number) {
  const random = new Random(500 + i);
  const stocks: LengthStock[] = [96, 120, 144, 168, 192].slice(random.below(3)).map((lengthIn) => ({
    id: `${lengthIn / 12} ft`,
    lengthIn,
    cost: Math.round(lengthIn * (7 + 2 * random.unit())) / 100,
    quantity: null,
  }));
  const longest = stocks[stocks.length - 1]!.lengthIn;
  const parts = timberParts(random, Math.min(150, longest));
  return { parts, stocks, options: { kerfIn: 0.125, trimIn: 0, goal: "cost" as const, ...search() } };
}

/** Several lengths at cost: the bound is our own. */
export function timber(): readonly Row[] {
  const rows = chosen(40).map((i): Row => {
    const { parts, stocks, options } = timberProblem(i);
    const { found: n, ms } = timed(() => nestLengths(parts, stocks, options));
    const wrong = lengthFaults(n, parts, stocks, options);
    return { ...n, group: "timber", id: String(i), best: n.bound, ours: n.cost, ms, wrong };
  });
  return report("several lengths at cost: best is our own bound", rows);
}

export function patternProblem(i: number) {
  const parts = timberParts(new Random(800 + i), 120);
  const stocks: LengthStock[] = [{ id: "bar", lengthIn: 192, cost: 1, quantity: null }];
  return { parts, stocks, options: { kerfIn: 0.125, trimIn: 0, goal: "sheets" as const, ...search() } };
}

/** What the goals after the count came to, over all instances, and of how many they are proven. */
export interface LaterGoals {
  instances: number;
  bars: number;
  patterns: number;
  patternsProven: number;
  leftovers: number;
  leftoversProven: number;
  /** the longest that it took */
  ms: number;
}

/** One length: bars, patterns and the longest single leftover. */
export function patterns(): LaterGoals {
  const all: LaterGoals = {
    instances: 0,
    bars: 0,
    patterns: 0,
    patternsProven: 0,
    leftovers: 0,
    leftoversProven: 0,
    ms: 0,
  };
  for (const i of chosen(12)) {
    const { parts, stocks, options } = patternProblem(i);
    const { found: n, ms: took } = timed(() => nestLengths(parts, stocks, options));
    const wrong = lengthFaults(n, parts, stocks, options);
    const used = new Set(n.lengths.map((l) => l.pieces.map((p) => p.lengthIn).join(" "))).size;
    const longest = Math.max(...n.lengths.map((l) => l.restIn));
    const isProven = (goal: string): boolean => n.reached.some((r) => r.goal === goal && r.proven);
    if (flags.each || wrong.length > 0) {
      console.log(
        `${i}: ${parts.length} sizes, bars ${n.count} (${n.bound}), patterns ${used}, longest rest ${longest.toFixed(2)}, ${took.toFixed(0)} ms ${wrong.join("; ")}`,
      );
    }
    all.instances++;
    all.bars += n.count;
    all.patterns += used;
    all.patternsProven += Number(isProven("patterns"));
    all.leftovers += longest;
    all.leftoversProven += Number(isProven("longest leftover"));
    all.ms = Math.max(all.ms, took);
  }
  console.log(
    `\none length: bars ${all.bars}, patterns ${all.patterns} (with this leftover the least in ${all.patternsProven} of ${all.instances}), longest leftovers ${all.leftovers.toFixed(0)} in (the most in ${all.leftoversProven}), ${all.ms.toFixed(0)} ms at most`,
  );
  return all;
}
