import { describe, expect, test } from "vitest";
import type { Cell, Table } from "../../../src/core/kit/tape.ts";
import { cell } from "../called.ts";

const basis = (...rows: readonly (readonly [string, string | number])[]) => [["Basis", "Value"], ...rows];
const strength = basis(["load level", "strength"]);
const body = (table: Cell | Table) => (table as Table).slice(1);

describe("the level of forces", () => {
  const walls = [["A", 3000, 8, 9, null, 1, 7.5]];

  test("is asked, and wind goes by 0.6, earthquake by 0.7", () => {
    expect(cell("HOLDDOWN_TENSION", 3000, 9, 7.5)).toMatch(/load level is missing/i);
    expect(cell("HOLDDOWN_TENSION", 3000, 9, 7.5, strength)).toEqual([[16_200, 0, 2160, 2160]]);
    const quake = basis(["load level", "strength"], ["load duration", "seismic"]);
    expect((cell("HOLDDOWN_TENSION", 3000, 9, 7.5, quake) as Table)[0]?.[2]).toBeCloseTo(2520, 9);
    expect(body(cell("HOLDDOWN_SCHEDULE", walls, strength))[0]?.[3]).toBeCloseTo(2160, 9);
    expect(cell("HOLDDOWN_SCHEDULE", walls)).toMatch(/load level is missing/i);
    const design = basis(["load level", "strength"], ["design method", "strength"]);
    expect(cell("HOLDDOWN_TENSION", 3000, 9, 7.5, 100, design)).toEqual([
      [27_000, expect.closeTo((0.9 * 100 * 7.5 ** 2) / 2, 9), expect.closeTo(3262.5, 6), expect.closeTo(4050, 6)],
    ]);
  });

  test("the dead load stands on the arm unless a length is given; none is nothing", () => {
    const lengths = cell("HOLDDOWN_TENSION", 3000, 9, 7.5, 200, 8, 1000, strength) as Table;
    expect(lengths[0]?.[1]).toBeCloseTo(0.6 * (6400 + 7500), 9);
    expect(cell("HOLDDOWN_TENSION", 3000, 9, 7.5, "none", strength)).toEqual([[16_200, 0, 2160, 2160]]);
    const factor = basis(["load level", "strength"], ["dead factor", 0.5]);
    expect((cell("HOLDDOWN_TENSION", 3000, 9, 7.5, 200, 8, factor) as Table)[0]?.[1]).toBeCloseTo(3200, 9);
  });
});

test("a schedule with headings, floors and sizes", () => {
  const walls = [
    ["line", "floor", "shear", "length", "height", "dead", "arm"],
    ["A", 1, 3000, 8, 9, 200, 7.5],
    ["A", 2, 3000, 8, 9, 200, 7.5],
  ];
  const sizes = [
    ["H1", 1700],
    ["H2", 4000],
  ];
  expect(cell("HOLDDOWN_SCHEDULE", walls, sizes, strength)).toEqual([
    ["line", "floor", "unit, plf", "tension, lb", "compression, lb", "size", "ratio"],
    ["A", 1, 225, expect.closeTo(3296, 6), expect.closeTo(6026.667, 3), "H2", expect.closeTo(0.824, 6)],
    ["A", 2, 225, expect.closeTo(1648, 6), expect.closeTo(3013.333, 3), "H1", expect.closeTo(0.96941, 5)],
  ]);
});

test("unit shear: blanks and zeros are no pieces", () => {
  expect(cell("SHEARWALL_UNIT", 1800, [[8], [null], [-6], [0], [10]])).toEqual([
    ["segment", "length, ft", "shear, lb", "unit, plf", "drag, lb"],
    ["wall 1", 8, 800, 100, 200],
    ["gap 1", 6, 0, 0, -250],
    ["wall 2", 10, 1000, 100, 0],
  ]);
});

describe("wall with openings", () => {
  const window = [["window", 3, 4, 1, 3, 6]];

  test("of one wall, level on top", () => {
    expect(cell("SHEARWALL_OPENINGS", [["north", 24, 9]], window)).toBeCloseTo(0.96, 9);
    expect(cell("SHEARWALL_OPENINGS", [["north", 24, 9, 4]], window)).toMatch(/wall north has a rise/);
    expect(
      cell(
        "SHEARWALL_OPENINGS",
        [
          ["north", 24, 9],
          ["south", 24, 9],
        ],
        window,
      ),
    ).toMatch(/one wall is wanted/);
    expect(cell("SHEARWALL_OPENINGS", [["north", 24, 9]], window, basis(["SDPWS", "2021"]))).toMatch(/2021.*not held/);
  });
});

describe("sill bolts and anchors", () => {
  test("a sill by its nominal size", () => {
    const at = (sill: string | number) => cell("ANCHOR_SILL", 300, "5/8", sill, 0.5, "wind", strength);
    expect(at("2x6")).toEqual(at(1.5));
    expect(at("3 x 6")).toEqual(at(2.5));
    expect(at("2x6")).not.toEqual(at("3x6"));
    expect(at("9x6")).toMatch(/not a length/);
  });

  test("mistypes", () => {
    expect(cell("ANCHOR_SILL", 300, 5, 1.5, 0.5, "wind", strength)).toMatch(/Bolt is 5 in/);
    expect(cell("ANCHOR_SILL", 300, 0.625, 1.5, 0.5, "wind")).toMatch(/load level is missing/i);
    expect(cell("ANCHOR_BOND", 3000, "5/8", 0.67, 4)).toMatch(/Depth is 0.67 in/);
    expect(cell("ANCHOR_SCHEDULE", [["north", 250, 20, 100]], [["own", 1000, 1200]])).toMatch(/load level is missing/i);
  });

  test("an anchor with its least spacing, edge and plate; none that holds leaves its cells empty", () => {
    const lines = [["north", 250, 20, 100]];
    const anchors = [
      ["anchor", "shear", "tension", "least spacing", "least edge", "plate"],
      ["own", 1000, 1200, 8, 1.75, 9],
    ];
    expect(body(cell("ANCHOR_SCHEDULE", lines, anchors, strength))).toEqual([
      ["north", "own", 72, 4, expect.closeTo(0.9, 9), expect.closeTo(0.3, 9), expect.closeTo(1, 9)],
    ]);
    expect(body(cell("ANCHOR_SCHEDULE", lines, [["weak", 10, 10, 12]], strength))).toEqual([
      ["north", "none of the list", "", "", "", "", ""],
    ]);
  });

  test("a bonded rod takes concrete, bond stress and category from the basis", () => {
    const site = basis(
      ["concrete strength", 3000],
      ["seismic category", "D"],
      ["characteristic bond stress", 1100],
      ["ACI 318", "318-14"],
    );
    const rows = body(cell("ANCHOR_BOND", 3000, "5/8", 8, 4, 8, site));
    expect(rows.map((r) => r[0])).toEqual(["bond", "breakout", "steel"]);
    expect(rows[1]?.[1]).toBeCloseTo(0.75 * 0.65 * 17 * Math.sqrt(3000) * 8 ** 1.5 * ((16 * 8) / 576) * 0.8, 6);
  });
});
