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

const KERF_NONE = "none";

/** The rows of a table result without its headings. */
const rowsOf = (name: string, ...args: RawArgument[]): Table => tableOfCell(name, ...args).slice(1);

describe("sheets", () => {
  test("layout rows are the parts; needed, bound and the sheets of all types agree where proven", () => {
    const parts = [
      ["shelf", 47.5, 22.5, 7, "along"],
      ["side", 30, 24, 9, "free"],
    ];
    const count = valueOfCell("SHEETS_NEEDED", parts, PLY);
    const rows = rowsOf("SHEETS_LAYOUT", parts, PLY);
    const alike = new Map(rows.map((r) => [r[0], Number(r[1])]));
    expect([...alike.values()].reduce((sum, n) => sum + n, 0)).toBe(count);
    const cut = (name: string) => rows.filter((r) => r[5] === name).reduce((sum, r) => sum + Number(r[1]), 0);
    expect([cut("shelf"), cut("side")]).toEqual([7, 9]);
    expect(rows.filter((r) => r[5] === "shelf").every((r) => r[10] === "no")).toBe(true);
    expect(valueOfCell("SHEETS_BOUND", parts, PLY)).toBeLessThanOrEqual(count);
    for (const r of rows) {
      expect(Number(r[6]) + Number(r[8])).toBeLessThanOrEqual(96);
      expect(Number(r[7]) + Number(r[9])).toBeLessThanOrEqual(48);
    }
  });

  test("parts stand in the order of the saw: the cut that frees a part never comes before that of the part above", () => {
    const rows = rowsOf("SHEETS_LAYOUT", [["a", 30, 20, 4]], PLY);
    const cuts = rows.map((r) => Number(r[3]));
    expect(cuts).toEqual([...cuts].sort((a, b) => a - b));
    expect(rows.every((r) => Number(r[4]) >= 1)).toBe(true);
  });

  test("grain in the words people use; a part that may not turn does not", () => {
    const tall = (grain: string) => [["tall", 40, 90, 1, grain]];
    expect(valueOfCell("SHEETS_NEEDED", tall("free"), PLY)).toBe(1);
    expect(valueOfCell("SHEETS_NEEDED", tall(""), PLY)).toBe(1);
    expect(says("SHEETS_NEEDED", tall("along"), PLY)).toMatch(/tall/);
    expect(says("SHEETS_NEEDED", tall("L"), PLY)).toMatch(/tall/);
  });

  test("what is on hand costs nothing unless a price says so, with and without prices of the others", () => {
    const parts = [["box", 48, 24, 5, "along"]];
    const onHand = ["cut-out", 48, 24, "", 1];
    expect(valueOfCell("SHEETS_NEEDED", parts, PLY, KERF_NONE)).toBe(2);
    expect(valueOfCell("SHEETS_NEEDED", parts, [...PLY, onHand], KERF_NONE)).toBe(1);
    expect(valueOfCell("SHEETS_NEEDED", parts, [["plywood", 96, 48, "", ""], onHand], KERF_NONE)).toBe(1);
    expect(valueOfCell("SHEETS_NEEDED", parts, [...PLY, onHand], KERF_NONE, "", "cost")).toBe(42);
    expect(valueOfCell("SHEETS_NEEDED", parts, [...PLY, ["cut-out", 48, 24, 5, 1]], KERF_NONE, "", "cost")).toBe(47);
    expect(says("SHEETS_NEEDED", parts, [...PLY, ["cut-out", 48, 24, ""]], KERF_NONE)).toMatch(/cut-out/);
  });

  test("at the same count the price decides, then the size of the stock", () => {
    const parts = [["shelf", 48, 24]];
    const stock = [
      ["4 x 10", 120, 48, 54],
      ["4 x 8", 96, 48, 42],
    ];
    expect(rowsOf("SHEETS_LAYOUT", parts, stock)[0]?.[2]).toBe("4 x 8");
    const plain = stock.map(([name, l, w]) => [name as string, l as number, w as number]);
    expect(rowsOf("SHEETS_LAYOUT", parts, plain)[0]?.[2]).toBe("4 x 8");
    const dear = [stock[0]!, ["4 x 8", 96, 48, 60]];
    expect(rowsOf("SHEETS_LAYOUT", parts, dear)[0]?.[2]).toBe("4 x 10");
  });

  test("what is left over is stock for the next list, and none where nothing is", () => {
    const left = tableOfCell("SHEETS_OFFCUTS", [["top", 60, 48, 1, "along"]], PLY, KERF_NONE);
    expect(left[1]).toEqual(["plywood offcut 1", 36, 48, "", 1, ""]);
    const next = [...(left as (string | number)[][]), ["plywood", 96, 48, 42, "", ""]];
    expect(valueOfCell("SHEETS_NEEDED", [["shelf", 36, 24, 2, "along"]], next, KERF_NONE)).toBe(0);
    const full = rowsOf("SHEETS_OFFCUTS", [["top", 96, 48, 1, "along"]], PLY, KERF_NONE);
    expect(full).toEqual([["none", 0, 0, "", 0, ""]]);
    const after = [...(full as (string | number)[][]), ["plywood", 96, 48, 42, "", ""]];
    expect(valueOfCell("SHEETS_NEEDED", [["shelf", 36, 24, 2]], after)).toBe(1);
  });

  test("the trim of a stock row wins over the edge trim; a leftover has none", () => {
    const parts = [["top", 96, 48, 1, "along"]];
    const stock = (trim: string | number) => [["plywood", 96.5, 48.5, 42, "", trim]];
    expect(valueOfCell("SHEETS_NEEDED", parts, stock(""))).toBe(1);
    expect(says("SHEETS_NEEDED", parts, stock(""), "", 0.5)).toMatch(/fits no stock/);
    expect(valueOfCell("SHEETS_NEEDED", parts, stock(0.25), "", 0.5)).toBe(1);
    expect(valueOfCell("SHEETS_NEEDED", parts, [["left", 96, 48, "", 1]], "", 0.5)).toBe(1);
  });

  test("a limit of stages may take more sheets and never fewer", () => {
    const parts = [
      ["a", 60, 30, 1, "along"],
      ["b", 36, 40, 1, "along"],
      ["c", 60, 18, 1, "along"],
      ["d", 36, 8, 1, "along"],
    ];
    const count = (stages: string | number) => valueOfCell("SHEETS_NEEDED", parts, PLY, KERF_NONE, "", "", stages);
    expect(count("any")).toBe(1);
    expect(count(2)).toBe(1);
    const tight = [
      ["a", 60, 48, 1, "along"],
      ["b", 36, 24, 1, "along"],
      ["c", 18, 24, 2, "along"],
    ];
    const of = (stages: string) => valueOfCell("SHEETS_NEEDED", tight, PLY, KERF_NONE, "", "", stages);
    expect([of("any"), of("3"), of("2")]).toEqual([1, 1, 2]);
    const rows = rowsOf("SHEETS_LAYOUT", tight, PLY, KERF_NONE, "", "", "3");
    expect(Math.max(...rows.map((r) => Number(r[4])))).toBeLessThanOrEqual(3);
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
    expect(valueOfCell("SHEETS_NEEDED", parts, stock, KERF_NONE)).toBe(2);
    const names = rowsOf("SHEETS_LAYOUT", parts, stock, KERF_NONE).map((r) => r[2]);
    expect([...new Set(names)]).toEqual(["plywood (row 1)", "plywood (row 2)"]);
  });

  test("limits of the search and of the stock are said, with what could be cut", () => {
    const many = [
      ["a", 20, 20, 3000],
      ["b", 20, 20, 1],
    ];
    expect(says("SHEETS_NEEDED", many, PLY)).toMatch(/3001 parts/);
    const short = says("SHEETS_NEEDED", [["a", 40, 40, 10]], [["s", 96, 48, 10, 2]]);
    expect(short).toMatch(/does not hold all parts: 6 of a left over, 4 of a could be cut/);
    expect(says("SHEETS_NEEDED", [["a", 40, 40]], [["s", 96, 48]], "", "", "cost")).toMatch(/no stock has a price/);
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
        const count = valueOfCell("SHEETS_NEEDED", named, PLY, 0.125);
        expect(count).toBeGreaterThanOrEqual(valueOfCell("SHEETS_BOUND", named, PLY, 0.125));
        expect(valueOfCell("SHEETS_NEEDED", [...named].reverse(), PLY, 0.125)).toBe(count);
        expect(valueOfCell("SHEETS_NEEDED", named, PLY, KERF_NONE)).toBeLessThanOrEqual(count);
        const more = [...named, ["more", 90, 40, 1, "free"]];
        expect(valueOfCell("SHEETS_NEEDED", more, PLY, 0.125)).toBeGreaterThanOrEqual(count);
      }),
      { numRuns: 6, seed: 3 },
    );
  });

  test("one search for a problem, whatever is asked of it", () => {
    const parts = Array.from({ length: 24 }, (_, i) => [`p${i}`, 20 + 2.375 * i, 40 - 1.25 * i, 2]);
    const took = (name: string): number => {
      const start = process.cpuUsage().user;
      call(name, parts, PLY);
      return process.cpuUsage().user - start;
    };
    const first = took("SHEETS_NEEDED");
    for (const name of ["SHEETS_LAYOUT", "SHEETS_BOUND", "SHEETS_OFFCUTS"]) {
      expect(took(name)).toBeLessThan(first / 3 + 20_000);
    }
  });
});

describe("lengths", () => {
  test("bucks feed the stock", () => {
    const bucks = tableOfCell("BUCKS", [["W1", 3, 4, 2, 3]]) as (string | number)[][];
    // Four of 36 and four of 45 in: two pairs of each, or 36 + 45, in a 96 in length.
    expect(valueOfCell("STOCK_NEEDED", bucks, [["8 ft", 96]])).toBe(4);
    const rows = rowsOf("STOCK_LAYOUT", bucks, [["8 ft", 96]]);
    expect(rows.reduce((sum, r) => sum + Number(r[1]), 0)).toBe(8);
  });

  test("least cost and fewest lengths are two goals", () => {
    const parts = [["a", 90, 2]];
    const stock = [
      ["8 ft", 96, 5],
      ["16 ft", 192, 14],
    ];
    expect(valueOfCell("STOCK_NEEDED", parts, stock)).toBe(1);
    expect(valueOfCell("STOCK_NEEDED", parts, stock, 0.125, "", "cost")).toBe(10);
  });

  test("at the same count the cheaper, then the shorter length is cut", () => {
    const stock = (short: string | number, long: string | number) => [
      ["8", 96, short],
      ["16", 192, long],
    ];
    const of = (rows: RawArgument) => rowsOf("STOCK_LAYOUT", [["a", 90, 1]], rows)[0]?.[2];
    expect(of(stock(10, 19))).toBe("8");
    expect(of(stock(19, 10))).toBe("16");
    expect(of(stock("", ""))).toBe("8");
  });

  test("the rest stands once a bar; leftovers are stock rows", () => {
    const rows = rowsOf("STOCK_LAYOUT", [["a", 30, 4]], [["8 ft", 96]]);
    expect(rows.map((r) => r[7])).toEqual(["", "", 5.625, 65.875]);
    const left = rowsOf("STOCK_OFFCUTS", [["a", 30, 4]], [["8 ft", 96]]);
    expect(left).toEqual([["8 ft offcut 1", 65.875, "", 1, ""]]);
    const next = [...(left as (string | number)[][]), ["8 ft", 96, "", "", ""]];
    expect(valueOfCell("STOCK_NEEDED", [["b", 60, 1]], next)).toBe(0);
  });

  test("two 16 ft pieces come out of 32 ft only when each is short by the joint gap", () => {
    const stock = [["32 ft", 384]];
    expect(valueOfCell("STOCK_NEEDED", [["a", 192, 2]], stock, 0.125)).toBe(2);
    expect(valueOfCell("STOCK_NEEDED", [["a", 191.875, 2]], stock, 0.125)).toBe(1);
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
      fc.constantFrom(
        "SHEETS_NEEDED",
        "SHEETS_LAYOUT",
        "SHEETS_BOUND",
        "SHEETS_OFFCUTS",
        "STOCK_NEEDED",
        "STOCK_OFFCUTS",
      ),
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
