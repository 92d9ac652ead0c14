import { describe, expect, test } from "vitest";
import { lateralValue } from "../../../src/core/fasteners/lateral.ts";
import { cell } from "../called.ts";

const wind = [
  ["Basis", "Value", "Unit"],
  ["load duration", "wind", null],
  ["load level", "strength", null],
];
const members = [
  ["side", 1.5, 0.5],
  ["main", 2, 0.5],
];
const dry = { duration: "wind", service: "dry", method: "allowable", edition: "2018" } as const;
const wood = (name: string, thicknessIn: number) =>
  ({ name, thicknessIn, material: { kind: "wood", gravity: 0.5 }, angleDeg: 0 }) as const;

describe("members of a lateral connection", () => {
  const base = { type: "nail", diameterIn: 0.162, second: undefined, gapIn: 0, grain: "side", rounded: true } as const;
  const want = lateralValue({ ...base, side: wood("side", 1.5), main: wood("main", 2) }, dry);

  test("the main member is the last of two, or the one that is called so", () => {
    expect(cell("FASTENER_LATERAL", "nail", 0.162, members, wind)).toBe(want);
    expect(cell("FASTENER_LATERAL", "common nail", 0.162, [...members].reverse(), wind)).toBe(want);
    expect(
      cell(
        "FASTENER_LATERAL",
        "nail",
        0.162,
        [
          ["furring", 1.5, 0.5],
          ["stud", 2, 0.5],
        ],
        wind,
      ),
    ).toBe(want);
  });

  test("three go side, main, second side", () => {
    const bolt = {
      ...base,
      type: "bolt",
      diameterIn: 0.5,
      side: wood("side", 1.5),
      main: wood("main", 2),
      second: wood("far", 1.5),
    } as const;
    expect(cell("FASTENER_LATERAL", "bolt", "1/2", [...members, ["second side", 1.5, 0.5]], wind)).toBe(
      lateralValue(bolt, dry),
    );
    expect(
      cell(
        "FASTENER_LATERAL",
        "bolt",
        0.5,
        [
          ["side", 1.5, 0.5],
          ["far side", 1.5, 0.5],
          ["main", 2, 0.5],
        ],
        wind,
      ),
    ).toMatch(/main does not stand between its sides/);
    expect(
      cell(
        "FASTENER_LATERAL",
        "bolt",
        0.5,
        [
          ["main", 1.5, 0.5],
          ["main", 2, 0.5],
        ],
        wind,
      ),
    ).toMatch(/Two members are called main/);
  });

  test("steel and panels by their words, other words refused with what there is", () => {
    const steel = [
      ["strap", 0.075, "Steel"],
      ["main", 2, 0.5],
    ];
    expect(cell("FASTENER_LATERAL", "lag", 0.25, steel, wind)).toBeCloseTo(1.6 * 152.84, 0);
    expect(
      cell(
        "FASTENER_LATERAL",
        "nail",
        0.131,
        [
          ["sheathing", 0.5, "osb"],
          ["main", 2, 0.5],
        ],
        wind,
      ),
    ).toBeGreaterThan(50);
    expect(
      cell(
        "FASTENER_LATERAL",
        "nail",
        0.162,
        [
          ["side", 1.5, "oak"],
          ["main", 2, 0.5],
        ],
        wind,
      ),
    ).toMatch(/Gravity in row 1 of members is "oak".*steel, OSB, plywood/);
    expect(
      cell(
        "FASTENER_LATERAL",
        "nail",
        0.162,
        [
          ["side", 1.5, 50],
          ["main", 2, 0.5],
        ],
        wind,
      ),
    ).toMatch(/specific gravity is 50/);
  });
});

test("what is mistyped is said", () => {
  for (const [args, says] of [
    [["FASTENER_WITHDRAWAL", "lag", 0.375, 0.5, 3], /Load duration is missing/],
    [["FASTENER_WITHDRAWAL", "lag", 0.375, 0.5, 0.25, wind], /thread is in inches/],
    [["FASTENER_WITHDRAWAL", "lag", 0.375, 50, 3, wind], /Gravity is 50/],
    [["FASTENER_LATERAL", "nail", 0.162, members, null, null, null, "impact"], /no impact factor/],
    [["FASTENER_GROUP", 1000, 5, 4, members, 0.5], /side has no width.*width \(in\) and E \(psi\)/],
    [
      [
        "FASTENER_GROUP",
        1000,
        5,
        4,
        [
          ["member", "thickness", "gravity", "width"],
          ["side", 1.5, 0.5, 5.5],
          ["main", 3.5, 0.5, 5.5],
        ],
        0.5,
      ],
      /side has no E/,
    ],
    [["FASTENER_SPACING", 300, 15], /every 0.6 in.*least spacing is 1 in/],
    [["FURRING_FASTENERS", 6, 11, "1/4 lag", null, 16], /Insulation is 6 in/],
    [
      [
        "FURRING_FASTENERS",
        2,
        11,
        "1/4 lag",
        null,
        null,
        [
          ["Basis", "Value"],
          ["furring spacing", 16],
          ["IRC", "2024"],
        ],
      ],
      /residential code is 2024/,
    ],
  ] as const) {
    const [name, ...rest] = args;
    expect(cell(name, ...rest)).toMatch(says);
  }
});

test("a row without a diameter is of thin fasteners; steel brings its own modulus", () => {
  expect(cell("FASTENER_GROUP", 1000, 5, 4, members)).toBe(5000);
  const table = (e: number | null) => [
    ["member", "thickness", "gravity or steel", "width", "E"],
    ["side", 0.25, "steel", 3.5, e],
    ["main", 3.5, 0.5, 5.5, 1_600_000],
  ];
  const plated = cell("FASTENER_GROUP", 1000, 5, 4, table(null), 0.5);
  expect(plated).toBe(cell("FASTENER_GROUP", 1000, 5, 4, table(30_000_000), 0.5));
  expect(plated).toBeLessThan(5000);
  const both = [...table(null), ["second side", 0.25, "steel", 3.5, null]];
  expect(cell("FASTENER_GROUP", 1000, 5, 4, both, 0.5)).not.toBe(plated);
});

test("a table that asks for a design says so in its place", () => {
  expect(cell("FURRING_FASTENERS", 3.5, 25, "1/4 in. lag screw", null, 24)).toEqual([
    ["1/4 lag screw", 1.5, "design", "Table R703.15.2: 1/4 lag screw, furring 24 in, 25 psf: design required"],
  ]);
});
