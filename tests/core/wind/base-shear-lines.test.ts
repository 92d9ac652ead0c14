import fc from "fast-check";
import { expect, test } from "vitest";
import { BadInput } from "../../../src/core/kit/refusal.ts";
import { shearWithLines, wallLineShear } from "../../../src/core/wind/frame/base-shear.ts";

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

test("lines that share a face carry what it meets, whatever the building", () => {
  const feet = (min: number, max: number) => fc.double({ min, max, noNaN: true });
  fc.assert(
    fc.property(
      feet(16, 80),
      feet(16, 120),
      feet(8, 30),
      feet(0, 45),
      feet(0.1, 0.9),
      fc.constantFrom("strength" as const, "allowable" as const),
      (widthFt, lengthFt, eaveFt, slopeDeg, part, level) => {
        const building = { widthFt, lengthFt, eaveFt, slopeDeg, roof: "gable", enclosure: "enclosed" } as const;
        const wind = { qPsf: 20, kd: 0.85, kzt: 1, edition: "7-22", exposure: "C", roofAreaFt2: undefined } as const;
        const line = (name: string, share: number) =>
          ({ name, wind: "across ridge", tributaryFt: share * lengthFt }) as const;
        const rows = shearWithLines({ ...building, ...wind, level }, [line("a", part), line("b", 1 - part)]);
        const [across, , a, b] = rows;
        expect(((a?.designLb ?? 0) + (b?.designLb ?? 0)) / (across?.designLb ?? 1)).toBeCloseTo(1, 9);
        expect(rows.every((r) => r.level === level && r.designLb >= r.leastLb)).toBe(true);
      },
    ),
  );
});
