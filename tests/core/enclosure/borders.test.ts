import { describe, expect, test } from "vitest";
import { saturationPressurePa } from "../../../src/core/enclosure/air/saturation.ts";
import { type ClimateRow, rowsClimate } from "../../../src/core/enclosure/climate/climate.ts";
import { counties } from "../../../src/core/enclosure/climate/county.ts";
import { type HeatPath, uFactor } from "../../../src/core/enclosure/layers/u-factor.ts";
import { groundLoss } from "../../../src/core/enclosure/loss/ground.ts";
import { dewLayer } from "../../../src/core/enclosure/moisture/dew-profile.ts";
import { dewWood } from "../../../src/core/enclosure/moisture/dew-wood.ts";
import { monthlyAir } from "../../../src/core/enclosure/moisture/indoor.ts";
import { Tape } from "../../../src/core/kit/tape.ts";
import { assemble, layerOf, rOf } from "./from-text.ts";

/** What happens just on a limit. */

describe("the ground", () => {
  const basement = (depthFt: number) =>
    groundLoss({ kind: "basement", perimeterFt: 1, areaFt2: depthFt, insulation: "R-19 interior" }, 1, 0);

  test("a depth of the table, off by a billionth of a foot, takes its row; one farther off the row before, or none", () => {
    // Rows of 2, 3.5 and 7 ft have U 0.043, 0.041 and 0.037 and F 0.69, 0.64 and 0.57.
    expect([2, 3.5, 7].map((d) => basement(d).fFactor)).toEqual([0.69, 0.64, 0.57]);
    expect([3.5 - 1e-9, 7 - 1e-9].map((d) => basement(d).fFactor)).toEqual([0.64, 0.57]);
    expect([3.5 - 1.05e-9, 7 - 1.05e-9].map((d) => basement(d).fFactor)).toEqual([0.69, 0.64]);
    expect(basement(7 + 1e-9).fFactor).toBe(0.57);
    expect(() => basement(7 + 1.05e-9)).toThrow("from 2 to 7 ft");
    expect(() => basement(2 - 1.05e-9)).toThrow("from 2 to 7 ft");
  });

  test("a round floor has the area of its edge", () => {
    const floor = (areaFt2: number) => () =>
      groundLoss({ kind: "crawl space", perimeterFt: 100, areaFt2, insulation: "R-19 perimeter" }, 1, 0);
    const round = 100 ** 2 / (4 * Math.PI);
    expect(floor(round)).not.toThrow(/longer edge/);
    expect(floor(round * 1.001)).toThrow(/longer edge/);
  });
});

test("the combined method holds where the upper limit of R is just 1.5 times the lower", () => {
  // Halves of R 0 + 5 and 6 + 4, times 0.375: upper 2 x 5 x 10 / 15 = 6.667, lower 2 x 5 x 4 / 9 = 4.444.
  const halves = (last: number): HeatPath[] => [
    { name: "a", share: 0.5, rIp: [0, 5 * 0.375] },
    { name: "b", share: 0.5, rIp: [6 * 0.375, last * 0.375] },
  ];
  expect(uFactor(halves(4), "combined", () => 0)).toBeCloseTo(2 / ((20 / 3 + 40 / 9) * 0.375), 9);
  expect(() => uFactor(halves(3.99), "combined", () => 0)).toThrow("ratio of 1.5");
});

test("an own R twice the built-in one, or half of it, is not asked about; more is", () => {
  const known = rOf({ row: 1, material: "xps", thicknessIn: 1 });
  const asked = (r: number) => {
    const tape = new Tape();
    layerOf({ row: 1, material: "xps", thicknessIn: 1, resistance: String(r) }, tape);
    return tape.cautions.filter((c) => c.includes("by its own figure")).length;
  };
  expect([known * 2, known / 2, known * 2.001, known / 2.001].map(asked)).toEqual([0, 0, 1, 1]);
});

test("indoor air of 100 % is at saturation, not above it", () => {
  const year = rowsClimate(Array.from({ length: 12 }, (): ClimateRow => ({ name: "x", tempC: 5, rhShare: 0.5 })));
  const said = (rhShare: number) => {
    const tape = new Tape();
    monthlyAir(year, [{ tempC: 20, rhShare }], tape);
    return tape.cautions.join();
  };
  expect(said(1)).not.toContain("above saturation");
  expect(said(1.001)).toContain("above saturation");
});

test("wood at a face of just 80 % is dry enough", () => {
  const board = assemble([{ row: 1, material: "plywood", thicknessIn: 0.5 }], "none", "none");
  const verdict = (tempC: number) => {
    const pa = 0.8 * saturationPressurePa(tempC, "ISO 13788");
    const month = { name: "x", seconds: 1, insideC: tempC, insidePa: pa, outsideC: tempC, outsidePa: pa };
    return dewWood(board, Array(12).fill(month), "zero")[0]?.verdict;
  };
  // Of these temperatures the quotient comes back as 0.8 to the last bit.
  const exact = [10, 12, 15, 18, 20, 22, 25, 30].filter((c) => {
    const most = saturationPressurePa(c, "ISO 13788");
    return (0.8 * most) / most === 0.8;
  });
  expect(exact.length).toBeGreaterThan(2);
  for (const c of exact) expect(verdict(c), `${c} C`).toBe("dry enough");
});

test("at 0 C it is water that forms, just below it ice", () => {
  const wall = assemble(
    [
      { row: 1, material: "a", thicknessIn: undefined, resistance: "2", vapor: "sd 0.1" },
      { row: 2, material: "b", thicknessIn: undefined, resistance: "2", vapor: "sd 10" },
    ],
    "none",
    "none",
  );
  const air = (outsideC: number) =>
    ({ insideC: 20, insideRh: 0.5, outsideC, outsideRh: 0.8, curve: "ISO 13788" }) as const;
  for (const method of ["air", "diffusion"] as const) {
    expect(dewLayer(wall, air(-20), method), method).toMatch(/: water$/);
    expect(dewLayer(wall, air(-20.1), method), method).toMatch(/: ice$/);
  }
});

test("every county has a zone of the code on both maps, and a state of two letters; some of each map are moved", () => {
  const all = counties();
  expect(all.length).toBeGreaterThan(3000);
  for (const { name, state, zone } of all) {
    expect(`${state} ${zone["2010"]} ${zone["2021"]}`, name).toMatch(
      /^[A-Z]{2} (1A|[2-5][ABC]|6[AB]|[78]) (0A|[1-5][ABC]|6[AB]|[78])$/,
    );
    expect(name.length).toBeGreaterThan(2);
  }
  expect(all.some(({ zone }) => zone["2010"] !== zone["2021"])).toBe(true);
});
