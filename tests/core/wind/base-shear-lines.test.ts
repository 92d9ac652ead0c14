import { expect, test } from "vitest";
import { BadInput } from "../../../src/core/kit/refusal.ts";
import { wallLineShear } from "../../../src/core/wind/base-shear.ts";

// Exact arithmetic on a face of 40 ft with 6400 lb: 160 plf.
const TOTALS = [
  { wind: "across ridge", pressureLb: 4420, leastLb: 6400, designLb: 6400, designPlf: 160, level: "strength" as const },
  { wind: "along ridge", pressureLb: 1870, leastLb: 3200, designLb: 3200, designPlf: 160, level: "strength" as const },
];

test("a wall line takes its width of the face; lines that carry the whole face take the whole force", () => {
  const lines = [10, 20, 10].map((tributaryFt, i) => ({
    name: `line ${i + 1}`,
    wind: "across ridge" as const,
    tributaryFt,
  }));
  const rows = wallLineShear(TOTALS, lines).slice(2);
  expect(rows.map((r) => r.designLb)).toEqual([1600, 3200, 1600]);
  expect(rows.reduce((sum, r) => sum + r.pressureLb, 0)).toBeCloseTo(4420, 9);
});

test("a line wider than the face is refused by name", () => {
  const line = { name: "east", wind: "along ridge" as const, tributaryFt: 21 };
  expect(() => wallLineShear(TOTALS, [line])).toThrow(BadInput);
  expect(() => wallLineShear(TOTALS, [line])).toThrow(/east.*20 ft/);
});
