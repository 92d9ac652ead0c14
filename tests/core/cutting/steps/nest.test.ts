import { expect, test } from "vitest";
import type { NestOptions } from "../../../../src/core/cutting/engine/types.ts";
import {
  boundLengths,
  boundSheets,
  type LengthStock,
  lengthsPicture,
  nestLengths,
  nestSheets,
  type SheetStock,
  sheetsPicture,
} from "../../../../src/core/cutting/index.ts";
import { Tape } from "../../../../src/core/kit/tape.ts";
import { bar, each, sheet, someLengths, someParts, sumOf } from "./ran.ts";

const options = (more: Partial<NestOptions>): NestOptions => ({
  kerfIn: 1 / 64,
  trimIn: 1 / 64,
  goal: "sheets",
  effort: 0.0005,
  ...more,
});
/** Names that are no order of the sizes, and two parts of one size. */
const named = <T extends { id: string }>(parts: readonly T[]): T[] =>
  [...parts, ...parts.slice(0, 2)].map((p, i) => ({ ...p, id: `${(i * 7) % 5}-${i}` }));
const said = (n: { reached: readonly { goal: string; value: number; proven: boolean }[] }): string =>
  n.reached.map((r) => `${r.goal} ${r.value}${r.proven ? "!" : ""}`).join(", ");

const LENGTHS: readonly (readonly [stocks: readonly LengthStock[], more: Partial<NestOptions>])[] = [
  [[bar(100)], {}],
  [[bar(100)], { goal: "cost" }],
  [[bar(100, 3.5)], { goal: "cost", kerfIn: 0 }],
  [[bar(96, 7.1), bar(120, 9.3), bar(144, 11.9)], { goal: "cost", trimIn: 0 }],
  [[bar(96, 7.1), bar(120, 9.3, 2), { ...bar(144, 11.9), trimIn: 9 / 64 }], {}],
  [[bar(96, 7), bar(70, 0, 2), bar(64, 0, 1)], {}],
  [[bar(70, 0, 2), bar(96, 0, 9)], {}],
  [[bar(96, 7, 3), bar(70, 4, 1)], { seed: 5 }],
  [[bar(96, 7, 1)], { goal: "cost" }],
];

for (const seed of [1, 2, 3])
  test(`lengths ${seed}`, () => {
    const lines = each(LENGTHS, ([stocks, more], i) => {
      const parts = named(someLengths(10 * seed + i, 5 + i, [9, 60], 3));
      const o = options(more);
      const tape = new Tape();
      const n = nestLengths(parts, stocks, o, tape);
      const { bound, method } = boundLengths(parts, stocks, o, tape);
      return `${said(n)}; ${n.cost} ${n.bound} ${n.method}, alone ${bound} ${method}; short ${n.short}, ${sumOf([n, lengthsPicture(n), tape])}`;
    });
    expect(lines).toMatchSnapshot();
  });

const SHEETS: readonly (readonly [stocks: readonly SheetStock[], more: Partial<NestOptions>])[] = [
  [[sheet(96, 48)], {}],
  [[sheet(96, 48)], { goal: "cost", stages: 3 }],
  [[sheet(96, 48, 3.5)], { goal: "cost", kerfIn: 0 }],
  [[sheet(96, 48, 42), sheet(120, 60, 60)], { goal: "cost", trimIn: 0 }],
  [[sheet(96, 48, 42), sheet(120, 60, 60, 1), { ...sheet(64, 50, 29), trimIn: 3 / 64 }], {}],
  [[sheet(96, 48, 42), sheet(62, 50, 0, 2)], {}],
  [[sheet(64, 54, 0, 1), sheet(96, 60, 0, 9)], {}],
  [[sheet(96, 60, 7, 2), sheet(70, 50, 4, 1)], { seed: 5, stages: 2 }],
  [[sheet(66, 66, 7, 1)], { goal: "cost" }],
];

for (const seed of [1, 2, 3])
  test(`sheets ${seed}`, () => {
    const lines = each(SHEETS, ([stocks, more], i) => {
      const parts = named(someParts(10 * seed + i, 4 + i, [52, 36], 3, 15 * i));
      const o = options({ ...more, effort: 0.002 });
      const tape = new Tape();
      const n = nestSheets(parts, stocks, o, tape);
      const { bound, method } = boundSheets(parts, stocks, o, tape);
      return `${said(n)}; ${n.cost} ${n.bound} ${n.method}, alone ${bound} ${method}; short ${n.short}, ${sumOf([n, sheetsPicture(n), tape])}`;
    });
    expect(lines).toMatchSnapshot();
  });
