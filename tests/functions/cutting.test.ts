import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { sentence } from "../../src/core/kit/refusal.ts";
import type { Table } from "../../src/core/kit/tape.ts";
import type { RawArgument } from "../../src/functions/declare/param.ts";
import { functionNamed } from "../../src/functions/registry.ts";
import { invoke, type Outcome } from "../../src/functions/run/invoke.ts";
import { expectSound } from "./sound.ts";

function call(name: string, ...args: RawArgument[]): Outcome {
  const fn = functionNamed(name);
  if (fn === undefined) throw new Error(`no function ${name}`);
  return invoke(fn, args);
}

function valueOfCell(name: string, ...args: RawArgument[]): number {
  const outcome = call(name, ...args);
  expect(outcome, outcome.ok ? "" : sentence(outcome.said)).toMatchObject({ ok: true });
  return outcome.ok ? (outcome.value as number) : Number.NaN;
}

function tableOfCell(name: string, ...args: RawArgument[]): Table {
  const outcome = call(name, ...args);
  expect(outcome, outcome.ok ? "" : sentence(outcome.said)).toMatchObject({ ok: true });
  return outcome.ok ? (outcome.value as Table) : [];
}

function says(name: string, ...args: RawArgument[]): string {
  const outcome = call(name, ...args);
  expect(outcome.ok).toBe(false);
  return outcome.ok ? "" : sentence(outcome.said);
}

const PLY = [["plywood", 96, 48, 42]];

describe("sheets", () => {
  test("layout rows are the parts; nest, bound and highest sheet number agree where proven", () => {
    const parts = [
      ["shelf", 47.5, 22.5, 7, "along"],
      ["side", 30, 24, 9, "free"],
    ];
    const count = valueOfCell("SHEETS_NEST", parts, PLY);
    const rows = tableOfCell("SHEETS_LAYOUT", parts, PLY);
    expect(rows).toHaveLength(16);
    expect(Math.max(...rows.map((r) => Number(r[0])))).toBe(count);
    expect(rows.filter((r) => r[1] === "shelf").every((r) => r[6] === false)).toBe(true);
    expect(valueOfCell("SHEETS_BOUND", parts, PLY)).toBeLessThanOrEqual(count);
    for (const r of rows) {
      expect(Number(r[2]) + Number(r[4])).toBeLessThanOrEqual(96);
      expect(Number(r[3]) + Number(r[5])).toBeLessThanOrEqual(48);
    }
  });

  test("grain in the words people use; a part that may not turn does not", () => {
    const tall = (grain: string) => [["tall", 40, 90, 1, grain]];
    expect(valueOfCell("SHEETS_NEST", tall("free"), PLY)).toBe(1);
    expect(valueOfCell("SHEETS_NEST", tall(""), PLY)).toBe(1);
    expect(says("SHEETS_NEST", tall("along"), PLY)).toMatch(/tall/);
    expect(says("SHEETS_NEST", tall("L"), PLY)).toMatch(/tall/);
  });

  test("leftovers at no cost are used and not counted", () => {
    const parts = [["box", 48, 24, 5, "along"]];
    const stock = [
      ["plywood", 96, 48, 42],
      ["cut-out", 48, 24, 0, 1],
    ];
    expect(valueOfCell("SHEETS_NEST", parts, PLY, "none")).toBe(2);
    expect(valueOfCell("SHEETS_NEST", parts, stock, "none")).toBe(1);
    expect(valueOfCell("SHEETS_NEST", parts, stock, "none", 0, "cost")).toBe(42);
    expect(says("SHEETS_NEST", parts, [...PLY, ["cut-out", 48, 24, 0]], "none")).toMatch(/cut-out/);
  });

  test("sizes as text, a header row, stocks of one name", () => {
    const parts = [
      ["part", "length", "width", "quantity"],
      ["shelf", "4'", "24 in", 8],
    ];
    const stock = [
      ["plywood", "8 ft", "4 ft", 42, 1],
      ["plywood", "8 ft", "4 ft", 42, 1],
    ];
    expect(valueOfCell("SHEETS_NEST", parts, stock, "none")).toBe(2);
    const names = tableOfCell("SHEETS_LAYOUT", parts, stock, "none").map((r) => r[7]);
    expect([...new Set(names)]).toEqual(["plywood (row 1)", "plywood (row 2)"]);
  });

  test("limits of the search and of the stock are said", () => {
    expect(
      says(
        "SHEETS_NEST",
        [
          ["a", 20, 20, 3000],
          ["b", 20, 20, 1],
        ],
        PLY,
      ),
    ).toMatch(/3001 parts/);
    expect(says("SHEETS_NEST", [["a", 40, 40, 10]], [["s", 96, 48, 10, 2]])).toMatch(/6 of a/);
    expect(says("SHEETS_NEST", [["a", 40, 40]], [["s", 96, 48]], "none", 0, "cost")).toMatch(/no stock has a cost/);
  });

  test("never fewer than the bound; the order of rows does not matter; a part more is not a sheet fewer; a wider cut neither", () => {
    const size = fc.integer({ min: 40, max: 380 }).map((n) => n / 4);
    const part = fc.tuple(
      fc.constant("p"),
      size,
      size.map((n) => n / 2),
      fc.integer({ min: 1, max: 4 }),
    );
    fc.assert(
      fc.property(fc.array(part, { minLength: 1, maxLength: 5 }), (parts) => {
        const named = parts.map(([, ...sizes], i) => [`p${i}`, ...sizes, "free"]);
        const count = valueOfCell("SHEETS_NEST", named, PLY, 0.125);
        expect(count).toBeGreaterThanOrEqual(valueOfCell("SHEETS_BOUND", named, PLY, 0.125));
        expect(valueOfCell("SHEETS_NEST", [...named].reverse(), PLY, 0.125)).toBe(count);
        expect(valueOfCell("SHEETS_NEST", named, PLY, "none")).toBeLessThanOrEqual(count);
        expect(valueOfCell("SHEETS_NEST", [...named, ["more", 90, 40, 1, "free"]], PLY, 0.125)).toBeGreaterThanOrEqual(
          count,
        );
      }),
      { numRuns: 6, seed: 3 },
    );
  });
});

describe("lengths", () => {
  test("bucks feed the stock nest", () => {
    const bucks = tableOfCell("BUCKS", [["W1", 3, 4, 2, 3]]) as (string | number)[][];
    expect(bucks).toHaveLength(3);
    // Four of 36 and four of 45 in: two pairs of each, or 36 + 45, in a 96 in length.
    expect(valueOfCell("STOCK_NEST", bucks, [["8 ft", 96]])).toBe(4);
    const rows = tableOfCell("STOCK_LAYOUT", bucks, [["8 ft", 96]]);
    expect(rows).toHaveLength(8);
  });

  test("least cost and fewest lengths are two goals", () => {
    const parts = [["a", 90, 2]];
    const stock = [
      ["8 ft", 96, 5],
      ["16 ft", 192, 14],
    ];
    expect(valueOfCell("STOCK_NEST", parts, stock)).toBe(1);
    expect(valueOfCell("STOCK_NEST", parts, stock, 0.125, 0, "cost")).toBe(10);
  });

  test("two 16 ft pieces come out of 32 ft only when each is short by the joint gap", () => {
    const stock = [["32 ft", 384]];
    expect(valueOfCell("STOCK_NEST", [["a", 192, 2]], stock, 0.125)).toBe(2);
    expect(valueOfCell("STOCK_NEST", [["a", 191.875, 2]], stock, 0.125)).toBe(1);
  });
});

test("searches: any parts and stock give a value or a sentence", () => {
  const cell = fc.oneof(
    fc.integer({ min: -2, max: 120 }),
    fc.constantFrom("a", "along", "free", "4'", "48 in", "", null),
    fc.double(),
  );
  const range = fc.array(fc.array(cell, { minLength: 3, maxLength: 5 }), { minLength: 1, maxLength: 3 });
  fc.assert(
    fc.property(
      range,
      range,
      fc.constantFrom("SHEETS_NEST", "SHEETS_LAYOUT", "SHEETS_BOUND", "STOCK_NEST"),
      (p, s, f) => {
        expectSound(call(f, p, s), `${f}(${JSON.stringify([p, s])})`);
        expectSound(
          call(
            f,
            p.map((r) => ["part", ...r.slice(1)]),
            s.map((r) => ["stock", ...r.slice(1)]),
          ),
          f,
        );
      },
    ),
    { numRuns: 60, seed: 11 },
  );
});
