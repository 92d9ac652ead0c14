import { expect, test } from "vitest";
import { type CladdingInput, claddingPressure } from "../../src/core/wind/cladding/cladding.ts";
import type { Surface } from "../../src/core/wind/cladding/cladding-figure.ts";
import { exposureCoefficient } from "../../src/core/wind/exposure-coefficient.ts";
import { rows } from "./rows.ts";

/** Surface, zones and the slopes at both ends of a class of the table. */
const CLASSES: Readonly<Record<string, { surface: Surface; zones: string[]; slopes: number[] }>> = {
  "roof 0-7": { surface: "flat", zones: ["1'", "1", "2", "3"], slopes: [0, 7] },
  "gable 7-20": { surface: "gable", zones: ["1", "2", "3"], slopes: [7.01, 20] },
  "gable 20-27": { surface: "gable", zones: ["1", "2", "3"], slopes: [20.01, 27] },
  "gable 27-45": { surface: "gable", zones: ["1", "2", "3"], slopes: [27.01, 45] },
  "hip 7-20": { surface: "hip", zones: ["1", "2", "3"], slopes: [7.01, 20] },
  "hip 20-27": { surface: "hip", zones: ["1", "2", "3"], slopes: [20.01, 27] },
  "hip 45": { surface: "hip", zones: ["1", "2", "3"], slopes: [45] },
  wall: { surface: "wall", zones: ["4", "5"], slopes: [20] },
};

/** The table stands on the Kz of 7-16 at 30 ft in Exposure B. */
const KZ = exposureCoefficient(30, "B", "frame", "7-16");
/** Far above the least net pressure the result is proportional to q, so the printed low pressures are tested too. */
const SCALE = 100;

const input = (speedMph: number): Omit<CladdingInput, "surface" | "zone" | "areaFt2" | "slopeDeg"> => ({
  qPsf: SCALE * 0.00256 * KZ * speedMph ** 2,
  kd: 0.85,
  enclosure: "enclosed",
  level: "allowable",
  heightFt: 30,
  given: [],
  edition: "7-22",
});

const printed = rows("wind-residential-7-22.csv");

test.each(
  printed.map((r) => [`${r.class} zone ${r.zone} ${r.direction} ${r.area_ft2} ft2 ${r.speed_mph} mph`, r] as const),
)("7-22 %s", (_n, row) => {
  const { surface, zones, slopes } = CLASSES[row.class ?? ""] as (typeof CLASSES)[string];
  for (const zone of row.zone === "all" ? zones : [row.zone ?? ""]) {
    for (const slopeDeg of slopes) {
      const areaFt2 = Number(row.area_ft2);
      const net = claddingPressure({ ...input(Number(row.speed_mph)), surface, zone, areaFt2, slopeDeg });
      const found = (row.direction === "toward" ? net.towardPsf : net.awayPsf) / SCALE;
      expect(Math.abs(found - Number(row.printed)), `${found} against ${row.printed}`).toBeLessThanOrEqual(0.0505);
    }
  }
});

test("an overhang is the roof zone and the wall zone beside it, as note g of the table adds them", () => {
  for (const [surface, slopeDeg] of [
    ["flat", 5],
    ["gable", 15],
    ["hip", 35],
  ] as const) {
    for (const zone of ["1", "2", "3"]) {
      const at = { ...input(120), zone, areaFt2: 20, slopeDeg };
      const roof = claddingPressure({ ...at, surface });
      const wall = claddingPressure({ ...at, surface: "wall", zone: "4", slopeDeg: undefined });
      const overhang = claddingPressure({ ...at, surface: `${surface} overhang` });
      expect(overhang.awayPsf).toBeCloseTo(roof.awayPsf - wall.towardPsf, 9);
    }
  }
});
