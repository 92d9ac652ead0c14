/**
 * Own output, not checked against anything outside: for small cases what one step of a search finds, as a sum over all of
 * it, and how much work it takes. A fault that makes a search slower or worse and leaves its answers valid is seen here
 * alone. After a change that is meant, look at the numbers of steps (fewer is better) and at values and bounds, then
 * renew them: npx vitest run --config tests/vitest.config.ts tests/core/cutting/steps -u
 */
import { Effort } from "../../../../src/core/cutting/engine/effort.ts";
import type { NestOptions } from "../../../../src/core/cutting/engine/types.ts";
import type { LengthStock, SheetStock } from "../../../../src/core/cutting/index.ts";
import { type LengthModel, lengthModel } from "../../../../src/core/cutting/lengths/model/model.ts";
import { type SheetModel, sheetModel } from "../../../../src/core/cutting/sheets/plan/model.ts";
import { Random } from "../../../../src/core/kit/random.ts";

/** A number for anything; numbers that are not whole to nine digits, so that rounding does not count. */
export function sumOf(value: unknown): string {
  const text = JSON.stringify(value, (_, v: unknown) => {
    if (v instanceof Map) return [...v];
    if (ArrayBuffer.isView(v)) return Array.from(v as unknown as ArrayLike<number>);
    return typeof v === "number" && !Number.isInteger(v) ? Number(v.toPrecision(9)) : v;
  });
  let h = 0x811c9dc5;
  for (let i = 0; i < (text ?? "").length; i++) h = Math.imul(h ^ text.charCodeAt(i), 0x01000193);
  return (h >>> 0).toString(16);
}

/** What a step finds with so much effort, the work it takes, and where it leaves the sequence of chance. */
export function ran(units: number, step: (effort: Effort, random: Random) => unknown): string {
  const effort = new Effort(units);
  const random = new Random(7);
  const found = step(effort, random);
  const took = Number((units - effort.remaining).toPrecision(9));
  return `${sumOf(found)} in ${took}, then ${random.bits().toString(16)}`;
}

/** One line for each case. */
export const each = <T>(cases: readonly T[], line: (one: T, i: number) => string): string =>
  cases.map((c, i) => `${i}: ${line(c, i)}`).join("\n");

const plain: NestOptions = { kerfIn: 0, trimIn: 0, goal: "sheets" };

/** Parts of whole sixty-fourths, so that the model counts in ones. */
export function someLengths(
  seed: number,
  kinds: number,
  [least, most]: readonly [number, number],
  often: number,
): { id: string; lengthIn: number; quantity: number }[] {
  const random = new Random(seed);
  return Array.from({ length: kinds }, (_, i) => ({
    id: `p${i}`,
    lengthIn: (least + random.below(most - least)) / 64,
    quantity: 1 + random.below(often),
  }));
}

export const bar = (size: number, cost = 0, quantity: number | null = null): LengthStock => ({
  id: `${size}`,
  lengthIn: size / 64,
  cost,
  quantity,
});

export const lengthsOf = (
  parts: Parameters<typeof lengthModel>[0],
  stocks: readonly LengthStock[],
  options: Partial<NestOptions> = {},
): LengthModel => lengthModel(parts, stocks, { ...plain, ...options });

/** Parts of whole sixty-fourths; `turning`: how many of a hundred may turn. */
export function someParts(
  seed: number,
  kinds: number,
  [w, h]: readonly [number, number],
  often: number,
  turning: number,
): { id: string; lengthIn: number; widthIn: number; quantity: number; turns: boolean }[] {
  const random = new Random(seed);
  return Array.from({ length: kinds }, (_, i) => ({
    id: `p${i}`,
    lengthIn: (2 + random.below(w)) / 64,
    widthIn: (2 + random.below(h)) / 64,
    quantity: 1 + random.below(often),
    turns: random.below(100) < turning,
  }));
}

export const sheet = (w: number, h: number, cost = 0, quantity: number | null = null): SheetStock => ({
  id: `${w}x${h}`,
  lengthIn: w / 64,
  widthIn: h / 64,
  cost,
  quantity,
});

export const sheetsOf = (
  parts: Parameters<typeof sheetModel>[0],
  stocks: readonly SheetStock[],
  options: Partial<NestOptions> = {},
): SheetModel => sheetModel(parts, stocks, { ...plain, ...options });

export const needsOf = (model: { types: readonly { need: number }[] }): number[] => model.types.map((t) => t.need);
export const limitsOf = (model: { stocks: readonly { limit: number }[] }): number[] => model.stocks.map((s) => s.limit);
