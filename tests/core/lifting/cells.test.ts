import { describe, expect, test } from "vitest";
import type { Table } from "../../../src/core/kit/tape.ts";
import { cautions, refusal, tableOf, working } from "../called.ts";

/** The demo's lifts and hauls, as typed into cells; expected figures by hand. */

const BASIS = [
  ["Basis", "Value", "Unit"],
  ["Impact factor", 1.1, null],
  ["Rigging weight", 600, "lb"],
  ["Crane limit", "75%", null],
  ["Truck payload", 46_000, "lb"],
  ["Stack height", 8.5, "ft"],
  ["Wet allowance", "5%", null],
  ["Exposure", "C", null],
  ["Erection wind", 60, "mph"],
];
const CHART = [
  ["radius ft", "capacity lb"],
  [20, 17_400],
  [25, 13_800],
  [30, 11_400],
  [35, 9700],
  [40, 8300],
  [45, 7000],
  [50, 5900],
  [60, 4400],
].slice(1);

describe("the demo's lifts by a basis", () => {
  test("two legs over 24 ft, 16 ft high: sin = 0.8, T = W / 1.6, rating with 1.1", () => {
    const picks = [
      ["left", "-12'-0\"", 0],
      ["right", "12'-0\"", 0],
    ];
    expect(tableOf("LIFT_SLING", 4800, picks, 16, BASIS).slice(1)).toEqual([
      ["left", expect.closeTo(3000, 6), expect.closeTo(53.1301, 4)],
      ["right", expect.closeTo(3000, 6), expect.closeTo(53.1301, 4)],
      ["least rating", expect.closeTo(3300, 6), ""],
    ]);
  });

  test("the hook's place is a list of two", () => {
    const off = cautions(
      "LIFT_SLING",
      4800,
      [
        ["a", -12, 0],
        ["b", 12, 0],
      ],
      16,
      [[2, 0]],
      1,
    );
    expect(off).toContain("hangs tilted by 7.12502 deg");
    expect(
      refusal(
        "LIFT_SLING",
        4800,
        [
          ["a", -12, 0],
          ["b", 12, 0],
        ],
        16,
        [[2, 0, 1]],
      ),
    ).toContain("from 2 to 2");
  });

  test("the crane at 38 ft reads the row of 40 ft, 600 lb of rigging on top", () => {
    expect(tableOf("LIFT_CRANE", 4900, 38, CHART, BASIS)).toEqual([[8300, 40, 5500, 5500 / 8300, "within the limit"]]);
    expect(refusal("LIFT_CRANE", 4900, 38, CHART)).toContain("Rigging weight is missing");
    expect(tableOf("LIFT_CRANE", 4900, 38, CHART, "none")[0]?.[2]).toBe(4900);
  });

  test("walls on braces for 60 mph: six braces, 7 ft up, 45 degrees", () => {
    const [row = []] = tableOf("LIFT_BRACE", "47'-9\"", "9'-10 1/2\"", 6, 7, BASIS);
    const wind = 0.00256 * 2.41 * (15 / 2460) ** (2 / 9.8) * 0.85 * 3600 * 0.85 * 1.35 * 47.75 * 9.875;
    expect(row[0]).toBeCloseTo(wind, 4);
    expect(row[1]).toBeCloseTo(((wind * 0.55 * 9.875) / 7 / 6) * Math.SQRT2, 4);
    expect(refusal("LIFT_BRACE", 47.75, 9.875, 6, 7)).toContain("Erection wind is missing");
  });

  test("the wind on a wall by its length over its height, straight lines between the rows (ASCE/SEI 7 Figure 29.3-1, from memory)", () => {
    const wind = (length: number) => tableOf("LIFT_BRACE", length, 10, 2, 7, BASIS)[0]?.[0] as number;
    const square = wind(10) / 10;
    for (const [ratio, coefficient] of [
      [0.1, 1.7],
      [0.15, 1.675],
      [0.2, 1.65],
      [0.35, 1.6],
      [0.5, 1.55],
      [0.75, 1.5],
      [1.5, 1.425],
      [2, 1.4],
      [3, 1.375],
      [4, 1.35],
      [4.5, 1.35],
      [5, 1.35],
      [7.5, 1.325],
      [10, 1.3],
      [20, 1.3],
    ] as const) {
      expect(((wind(10 * ratio) / (10 * ratio)) * 1.45) / square).toBeCloseTo(coefficient, 9);
    }
  });

  test("that the rise is measured from the lowest pick is said where they do not lie level", () => {
    const said = (...heights: readonly number[]) =>
      working(
        "LIFT_SLING",
        4800,
        heights.map((z, i) => [`${i}`, i === 0 ? -12 : 12, 0, z]),
        16,
        BASIS,
      ).assumptions.join();
    expect(said(0, 1)).toContain("measured from the lowest pick");
    expect(said(0, 0)).not.toContain("measured from the lowest pick");
  });

  test("two trucks", () => {
    const pieces = [
      ["panel pack of 8", 4608, 32, 4, 12, 4],
      ["mineral wool pallet", 896, 8, 4, 48, 7],
    ];
    const rows = tableOf("TRUCK_LOADS", pieces, BASIS);
    expect(rows).toHaveLength(12);
    expect(rows[1]?.slice(0, 4)).toEqual([1, 1, "panel pack of 8", 4608]);
    expect(refusal("TRUCK_LOADS", [["a", 100, 8, 4]], BASIS)).toContain("has no thickness");
    expect(refusal("TRUCK_LOADS", [["a", 100, 0, 4, 5]], BASIS)).toContain("has no length");
    expect(refusal("TRUCK_LOADS", [["a", 100, 8, null, 5]], BASIS)).toContain("has no width");
    expect(refusal("TRUCK_LOADS", pieces)).toContain("Truck payload is missing");
  });

  test("a panel's check with its values: 12 M / S over Fb", () => {
    const values = [
      ["S", 4.5, 1.1],
      ["Fb", 1600, 500],
    ];
    const rows = tableOf("LIFT_PICKS", 32, 8.7, 2, 1.1, values);
    expect(rows.at(-1)).toEqual([
      "bending ratio",
      "",
      expect.closeTo((12 * 0.0214466 * 8.7 * 1.1 * 32 ** 2) / 4.5 / 1600, 4),
    ]);
    expect(refusal("LIFT_PICKS", 32, 8.7, 2, 1.1, [["S", 4.5, 1.1]])).toContain("Fb along the grain is missing");
    expect(refusal("LIFT_PICKS", 32, 8.7, 2, 1.1, [["Fb", 1600, 500]])).toContain("S along the grain is missing");
  });

  test("the wind: the plan's greatest pull from a basis", () => {
    const [row = []] = tableOf("LIFT_WIND", 472, 4900, [
      ["Basis", "Value"],
      ["Greatest pull", "5%"],
    ]);
    expect(row[0]).toBeCloseTo(245, 6);
    expect(row[2]).toBeCloseTo(Math.sqrt(245 / (0.00256 * 1.2 * 472)), 6);
    expect(row[3]).toBe("greatest pull");
  });
});

describe("weight of walls", () => {
  const SOUTH = [["south", "47'-9\"", "9'-10 1/2\"", null, null]];
  const OPENINGS = [
    ["window S1", "4'-0\"", "4'-6\"", 5, "2'-9\"", null, "south"],
    ["door S", "3'-4\"", "6'-11\"", 1, 0, "18'-4\"", "south"],
  ];
  const heads = ["material", "thickness", "R", "vapor", "role", "weight"];
  const LAYERS = [
    heads,
    ["veneer panel", "1 1/2", 1.8, "1 perm", null, 4.5],
    ["self-adhered membrane", null, 0, "0.05 perm", "air barrier", 0.3],
    ["mineral wool board", 3, 12.6, null, null, 1.75],
    ["mineral wool board", 3, 12.6, null, null, 1.75],
    ["air space", "3/4", null, null, "ventilated cavity", 0.4],
  ];

  test("the south wall of the demo: 358.476 ft2 at 8.7 psf and 5 % of rain, windows 8 psf, columns and plates", () => {
    const added = [
      ["windows", 144, null, null, null, 5],
      ["columns", "49.4 lb", null, null, null, 7],
    ];
    const rows = tableOf("LIFT_WEIGHT", SOUTH, LAYERS, OPENINGS, added, BASIS);
    // 47.75 x 9.875 - 5 x 18 - 3.3333 x 6.9167
    const net = 47.75 * 9.875 - 90 - (10 / 3) * (83 / 12);
    expect(rows.slice(1)).toEqual([
      ["south", expect.closeTo(net, 6), expect.closeTo(9.135, 9), expect.closeTo(net * 9.135, 4)],
      ["windows", 0, 0, 720],
      ["columns", 0, 0, expect.closeTo(345.8, 9)],
      ["total", expect.closeTo(net, 6), expect.anything(), expect.closeTo(net * 9.135 + 1065.8, 4)],
    ]);
  });

  test("a density with its thickness, a built-in weight, none, and an air space without a figure", () => {
    const weight = (layer: readonly unknown[]) => tableOf("LIFT_WEIGHT", [["a", 10, 10]], [heads, layer])[1]?.[2];
    expect(weight(["my panel", 1.5, null, null, null, "36 pcf"])).toBeCloseTo(4.5, 9);
    expect(weight(["my board", 3, null, null, null, "2 psf"])).toBe(2);
    expect(weight(["gypsum board", 0.5, null, null, null, null])).toBeCloseTo(2.2, 9);
    const air = working(
      "LIFT_WEIGHT",
      [["a", 10, 10]],
      [heads, ["x", 1, null, null, null, 1], ["air space", 0.75, null, null, null, null]],
    );
    expect(air.assumptions.join()).toContain("The air space in row 3 of layers weighs nothing");
    expect(air.outcome.ok && (air.outcome.value as Table)[1]?.[2]).toBe(1);
    const none = tableOf(
      "LIFT_WEIGHT",
      [["a", 10, 10]],
      [heads, ["x", 1, null, null, null, 1], ["paint", null, null, null, null, "none"]],
    );
    expect(none[1]?.[2]).toBe(1);
  });

  test("what cannot be weighed says so", () => {
    const says = (layer: readonly unknown[]) => refusal("LIFT_WEIGHT", [["a", 10, 10]], [heads, layer]);
    expect(says(["my panel", null, null, null, null, "36 pcf"])).toContain("no thickness");
    expect(says(["my panel", 1, null, null, null, "heavy"])).toContain("such as 35 pcf");
    expect(says(["my panel", 1, null, null, null, null])).toContain("has no weight");
  });
});

test("a density without its unit is asked about", () => {
  const heavy = (weight: unknown) =>
    cautions("LIFT_WEIGHT", [["a", 10, 10]], [["panel", 1.5, null, null, null, null, null, null, null, weight]]);
  expect(heavy(36)).toContain("panel in row 1 of layers weighs 36 psf: is it a density in pcf?");
  expect(heavy("36 pcf")).not.toContain("is it a density");
});

describe("places of pieces", () => {
  test("a blank place among others counts as 0 and is said; an axis that nobody gives is assumed", () => {
    const said = working("LIFT_CENTROID", [
      ["piece", "weight", "x", "y"],
      ["a", 10, 4, null],
      ["b", 10, null, 2],
    ]);
    expect(said.outcome.ok && said.outcome.value).toEqual([[20, 2, 1, 0]]);
    expect(said.cautions.join()).toContain("A blank x counts as 0: row 3.");
    expect(said.cautions.join()).toContain("A blank y counts as 0: row 2.");
    expect(said.assumptions.join()).toContain("No z is given");
  });

  test("headings may name and reorder the columns", () => {
    const pieces = [
      ["name", "count", "weight", "z"],
      ["a", 3, 10, 2],
    ];
    expect(tableOf("LIFT_CENTROID", pieces)).toEqual([[30, 0, 0, 2]]);
  });
});
