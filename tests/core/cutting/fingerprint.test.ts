import { expect, test } from "vitest";
import type { NestOptions } from "../../../src/core/cutting/engine/types.ts";
import {
  boundSheets,
  type LengthStock,
  nestLengths,
  nestSheets,
  type SheetStock,
} from "../../../src/core/cutting/index.ts";
import { Random } from "../../../src/core/kit/random.ts";
import { plant } from "./planted.ts";

/**
 * Own output, not checked against anything outside: what the searches find with little effort, with a sum over the whole
 * plan. A fault that only makes a search worse changes it. After a change that is meant, look at values and bounds, then
 * renew it: npx vitest run --config tests/vitest.config.ts tests/core/cutting/fingerprint.test.ts -u
 */

/** A number for a text. */
function sumOf(text: string): string {
  let h = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) h = Math.imul(h ^ text.charCodeAt(i), 0x01000193);
  return (h >>> 0).toString(16);
}

function randomParts(seed: number, kinds: number, longest: number, widest: number, most: number, turns: boolean) {
  const random = new Random(seed);
  return Array.from({ length: kinds }, (_, i) => ({
    id: `p${i}`,
    lengthIn: 4 + random.below(longest * 4) / 4,
    widthIn: 3 + random.below(widest * 4) / 4,
    quantity: 1 + random.below(most),
    turns: turns && random.unit() < 0.7,
  }));
}

const sheet = (lengthIn: number, widthIn: number, cost = 1, quantity: number | null = null): SheetStock => ({
  id: `${lengthIn}x${widthIn}`,
  lengthIn,
  widthIn,
  cost,
  quantity,
});
const bar = (lengthIn: number, cost = 1, quantity: number | null = null): LengthStock => ({
  id: `${lengthIn}`,
  lengthIn,
  cost,
  quantity,
});

interface SheetCase {
  readonly parts: ReturnType<typeof randomParts>;
  readonly stocks: readonly SheetStock[];
  readonly options?: Partial<NestOptions>;
}

const SHEETS: Readonly<Record<string, SheetCase>> = {
  "few large parts": { parts: randomParts(1, 14, 60, 30, 2, false), stocks: [sheet(96, 48)] },
  "few large parts that turn": { parts: randomParts(2, 14, 60, 40, 2, true), stocks: [sheet(96, 48)] },
  "many small parts": { parts: randomParts(3, 40, 24, 16, 2, false), stocks: [sheet(96, 48)] },
  "parts that repeat": { parts: randomParts(4, 6, 50, 30, 20, true), stocks: [sheet(96, 48)] },
  "a square sheet": { parts: randomParts(5, 16, 50, 50, 2, true), stocks: [sheet(60, 60)] },
  "two sizes at cost": {
    parts: randomParts(6, 12, 60, 30, 3, true),
    stocks: [sheet(96, 48, 42), sheet(120, 60, 60)],
    options: { goal: "cost" },
  },
  "leftovers and one size to buy": {
    parts: randomParts(7, 12, 50, 30, 2, false),
    stocks: [sheet(96, 48, 42), sheet(60, 30, 0, 3), sheet(40, 40, 0, 2)],
  },
  "too little stock": { parts: randomParts(8, 10, 50, 30, 2, false), stocks: [sheet(96, 48, 42, 2)] },
  "two stages": { parts: randomParts(9, 12, 50, 24, 2, true), stocks: [sheet(96, 48)], options: { stages: 2 } },
  "three stages": { parts: randomParts(9, 12, 50, 24, 2, true), stocks: [sheet(96, 48)], options: { stages: 3 } },
};

for (const [name, { parts, stocks, options }] of Object.entries(SHEETS)) {
  test(`sheets: ${name}`, () => {
    const o: NestOptions = { kerfIn: 0.125, trimIn: 0.25, goal: "sheets", effort: 0.03, ...options };
    const n = nestSheets(parts, stocks, o);
    const { bound, method } = boundSheets(parts, stocks, o);
    const goals = n.reached.map((r) => `${r.goal} ${r.value}${r.proven ? " proven" : ""}`).join(", ");
    expect(
      `${goals}; bound ${n.bound} ${n.method}, alone ${bound} ${method}; ${sumOf(JSON.stringify(n))}`,
    ).toMatchSnapshot();
  });
}

test("sheets: cut up and put together again", () => {
  const p = plant(
    21,
    5,
    [
      { l: 96, w: 48, cost: 42 },
      { l: 84, w: 36, cost: 28 },
    ],
    0.125,
    0.25,
    true,
    4,
  );
  const n = nestSheets(p.parts, p.stocks, { kerfIn: 0.125, trimIn: 0.25, goal: "cost", effort: 0.05 });
  expect(n.cost).toBeLessThanOrEqual(p.cost);
  expect(`${n.cost} of ${p.cost}; ${sumOf(JSON.stringify(n))}`).toMatchSnapshot();
});

const LENGTHS: Readonly<
  Record<
    string,
    { parts: ReturnType<typeof randomParts>; stocks: readonly LengthStock[]; options?: Partial<NestOptions> }
  >
> = {
  "one length": { parts: randomParts(31, 9, 90, 1, 9, false), stocks: [bar(192)] },
  "three parts to a bar": {
    parts: randomParts(32, 24, 18, 1, 1, false).map((p) => ({ ...p, lengthIn: 22 + p.lengthIn })),
    stocks: [bar(96)],
  },
  "several lengths at cost": {
    parts: randomParts(33, 8, 90, 1, 6, false),
    stocks: [bar(96, 7.1), bar(120, 9.3), bar(144, 11.9)],
    options: { goal: "cost" },
  },
  "several lengths, fewest": {
    parts: randomParts(34, 8, 90, 1, 4, false),
    stocks: [bar(96, 7.1), bar(144, 11.9), bar(192, 15)],
  },
  "leftovers first": { parts: randomParts(35, 8, 60, 1, 3, false), stocks: [bar(96), bar(70, 0, 3), bar(40, 0, 2)] },
  "too few": { parts: randomParts(36, 6, 60, 1, 4, false), stocks: [bar(96, 1, 4)] },
};

for (const [name, { parts, stocks, options }] of Object.entries(LENGTHS)) {
  test(`lengths: ${name}`, () => {
    const n = nestLengths(parts, stocks, { kerfIn: 0.125, trimIn: 0.5, goal: "sheets", effort: 0.004, ...options });
    const goals = n.reached.map((r) => `${r.goal} ${r.value}${r.proven ? " proven" : ""}`).join(", ");
    expect(`${goals}; bound ${n.bound} ${n.method}; ${sumOf(JSON.stringify(n))}`).toMatchSnapshot();
  });
}
