import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { sentence } from "../../src/core/kit/refusal.ts";
import type { Table } from "../../src/core/kit/tape.ts";
import type { WallElevationPicture } from "../../src/core/takeoff/pictures.ts";
import type { RawArgument } from "../../src/functions/declare/param.ts";
import { functionNamed } from "../../src/functions/registry.ts";
import { explain, invoke, type Outcome } from "../../src/functions/run/invoke.ts";
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
    expect(bucks).toHaveLength(2);
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

describe("from columns to courses to what is left over", () => {
  const openings = [
    ["name", "width", "height", "count", "sill height", "left edge"],
    ["W1", 5, 4, 1, 3, 9],
    ["W2", 5, 4, 1, 3, 25],
    ["D1", "38 in", "82 in", 1, 0, 35],
  ];

  test("the rows of WALL_COLUMNS, with or without their header, are the columns of WALL_COURSES", () => {
    const plain = tableOfCell("WALL_COLUMNS", 48, "8 ft", openings) as (string | number)[][];
    const headed = tableOfCell("WALL_COLUMNS", 48, 96, openings, "", "", "", true) as (string | number)[][];
    expect(headed).toHaveLength(plain.length + 1);
    const courses = tableOfCell("WALL_COURSES", 48, 12, plain, "4x32", openings);
    expect(tableOfCell("WALL_COURSES", 48, 12, headed, "4x32", openings)).toEqual(courses);
    const line = [plain.map((r) => r[0] as number)];
    expect(tableOfCell("WALL_COURSES", 48, 12, line, "4x32", openings)).toEqual(courses);
    expect(Math.max(...courses.map((r) => Number(r[5])))).toBe(5);
  });

  test("what a wall leaves over is stock for smaller parts and for the next wall", () => {
    const columns = [[0, 8, 16, 24, 32, 40, 48]];
    const left = tableOfCell("WALL_OFFCUTS", 48, 12, columns, "4x32", openings) as (string | number)[][];
    expect(left.some((r) => String(r[0]).startsWith("W1 cut-out"))).toBe(true);
    const parts = [["lintel", 36, 11, 2, "along"]];
    expect(valueOfCell("SHEETS_NEST", parts, [...left, ["panel", 384, 48, 960]])).toBe(0);
    const next = tableOfCell("WALL_COURSES", 16, 4, [[0, 16]], "4x32", "", "", left);
    expect(next[0]?.[5]).toBe(0);
  });

  test("a spacing in feet without its unit is refused with both ways to write it", () => {
    expect(says("WALL_COLUMNS", 48, 8)).toMatch(/"8 ft" or 96/);
    expect(tableOfCell("WALL_COLUMNS", 48, "8 ft")).toEqual(tableOfCell("WALL_COLUMNS", 48, 96));
  });

  test("a wall that is not in the list, or twice, is named", () => {
    const walls = [["a", 16, 4]];
    expect(
      says(
        "HOUSE_COURSES",
        walls,
        [
          ["b", 0],
          ["b", 16],
        ],
        "4x32",
      ),
    ).toMatch(/wall b in row 1 of columns/);
    expect(
      says(
        "HOUSE_COURSES",
        [...walls, ["A", 8, 4]],
        [
          ["a", 0],
          ["a", 16],
        ],
        "4x32",
      ),
    ).toMatch(/twice/);
    expect(
      says(
        "HOUSE_COURSES",
        walls,
        [
          ["a", 0],
          ["a", 12],
        ],
        "4x32",
      ),
    ).toMatch(/from 0 to 12 ft/);
  });

  test("the picture of a wall has its columns, openings, joints and every piece", () => {
    const fn = functionNamed("WALL_COURSES");
    if (fn === undefined) throw new Error("WALL_COURSES");
    const working = explain(fn, [48, 12, [[0, 8, 16, 24, 32, 40, 48]], "4x32", openings]);
    const picture = working.pictures[0] as WallElevationPicture;
    expect(picture.kind).toBe("wall-elevation");
    expect(picture.pieces).toHaveLength((working.outcome.ok ? (working.outcome.value as Table) : []).length);
    expect([picture.openings.length, picture.columnsFt.length]).toEqual([3, 7]);
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
