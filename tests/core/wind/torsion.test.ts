import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type TorsionLine, torsionCases } from "../../../src/core/wind/frame/torsion.ts";
import { cautions, says, value } from "../enclosure/called.ts";

const shear = (wind: string, designLb: number, faceFt: number) =>
  ({ wind, pressureLb: designLb, leastLb: 0, designLb, designPlf: designLb / faceFt, level: "strength" }) as const;
const SHEARS = [shear("across ridge", 1000, 40), shear("along ridge", 600, 20)];
const ends = (half: number): TorsionLine[] => [
  { name: "west", wind: "across ridge", positionFt: -half },
  { name: "east", wind: "across ridge", positionFt: half },
];
const by = (lines: readonly TorsionLine[], name: string) =>
  torsionCases(SHEARS, lines, "7-16").find((r) => r.name === name)?.lineLb;

describe("WIND_TORSION", () => {
  test("the four cases, each axis and both", () => {
    expect(
      torsionCases(SHEARS, [], "7-16").map((r) => [r.name, r.acrossLb, r.alongLb, r.momentFtLb, r.lineLb]),
    ).toEqual([
      ["1, across ridge", 1000, 0, 0, ""],
      ["1, along ridge", 0, 600, 0, ""],
      ["2, across ridge", 750, 0, 750 * 6, ""],
      ["2, along ridge", 0, 450, 450 * 3, ""],
      ["3, both", 750, 450, 0, ""],
      ["4, both", 563, expect.closeTo(337.8, 9), expect.closeTo(563 * 6 + 337.8 * 3, 9), ""],
    ]);
  });

  test("of two winds along one axis the larger counts", () => {
    const rows = torsionCases([shear("across ridge, from the low side", 900, 40), ...SHEARS], [], "7-16");
    expect(rows[0]?.acrossLb).toBe(1000);
    expect(
      torsionCases([shear("across ridge, from the high side", 1200, 40), ...SHEARS], [], "7-16")[0]?.acrossLb,
    ).toBe(1200);
  });

  test("two lines at the ends of the face take half, and 0.65 of three quarters with the moment", () => {
    expect(by(ends(20), "west: 1, across ridge")).toBeCloseTo(500, 9);
    expect(by(ends(20), "east: 2, across ridge")).toBeCloseTo(750 * 0.65, 9);
    expect(by(ends(20), "west: 2, across ridge")).toBeCloseTo(750 * 0.65, 9);
    // Case 4 adds the moment of the other axis: 337.8 x 3 over 40 ft.
    expect(by(ends(20), "east: 4, both")).toBeCloseTo(563 * 0.65 + (337.8 * 3) / 40, 9);
    expect(by(ends(20), "east: 1, along ridge")).toBeUndefined();
  });

  test("closer lines take more of the moment, and a set off the middle twists by itself", () => {
    expect(by(ends(10), "east: 2, across ridge")).toBeCloseTo(375 + 4500 / 20, 9);
    const off: TorsionLine[] = [
      { name: "a", wind: "across ridge", positionFt: 0 },
      { name: "b", wind: "across ridge", positionFt: 20 },
    ];
    // The force stands over line a: it takes all of it.
    expect(by(off, "a: 1, across ridge")).toBeCloseTo(1000, 9);
    expect(by(off, "b: 1, across ridge")).toBeCloseTo(0, 9);
  });

  test("in a case without a moment the lines sum to the force; mirrored lines take the same", () => {
    const places = fc.uniqueArray(fc.integer({ min: -20, max: 20 }), { minLength: 2, maxLength: 5 });
    fc.assert(
      fc.property(places, (at) => {
        const lines = at.map((positionFt, i): TorsionLine => ({ name: `l${i}`, wind: "across ridge", positionFt }));
        const rows = (of: readonly TorsionLine[]) => torsionCases(SHEARS, of, "7-16");
        const sum = rows(lines)
          .filter((r) => /: 1, across/.test(r.name))
          .reduce((s, r) => s + Number(r.lineLb), 0);
        expect(sum).toBeCloseTo(1000, 6);
        const mirrored = lines.map((l) => ({ ...l, positionFt: -l.positionFt }));
        rows(lines).forEach((r, i) => {
          if (r.lineLb !== "") expect(rows(mirrored)[i]?.lineLb).toBeCloseTo(r.lineLb, 6);
        });
      }),
    );
  });

  const BASIS = [
    ["Basis", ""],
    ["velocity pressure", 10],
    ["building width", 20],
    ["building length", 40],
    ["eave height", 10],
    ["roof shape", "flat"],
    ["ASCE 7 edition", "7-16"],
  ];

  test("the call: lines by their place, and what is refused", () => {
    const rows = value(
      "WIND_TORSION",
      [
        ["west", "across", -20],
        ["east", "across", 20],
      ],
      BASIS,
    ) as unknown[][];
    expect(rows.map((r) => r[0]).slice(0, 3)).toEqual([
      "1, across ridge",
      "west: 1, across ridge",
      "east: 1, across ridge",
    ]);
    expect(rows[1]?.[4]).toBeCloseTo(3200, 9);
    expect(
      says(
        "WIND_TORSION",
        [
          ["west", "across", -21],
          ["east", "across", 20],
        ],
        BASIS,
      ),
    ).toMatch(/position of west.*half of the face/);
    expect(says("WIND_TORSION", [["west", "across", 5]], BASIS)).toMatch(/lines in one place.*two lines apart/);
    expect(cautions("WIND_TORSION", BASIS)).toMatch(/Appendix D/);
    expect(cautions("WIND_TORSION", BASIS)).not.toMatch(/not in this total/);
    expect(cautions("WIND_BASESHEAR", BASIS)).toMatch(/not in this total/);
    expect(
      cautions(
        "WIND_TORSION",
        [
          ["w", "across", -9],
          ["e", "across", 9],
        ],
        BASIS,
      ),
    ).toMatch(/equal stiffness/);
  });
});
