import { expect, test } from "vitest";
import { type CladdingInput, claddingPressure } from "../../src/core/wind/cladding/cladding.ts";
import { rows } from "./rows.ts";
import { expectPrinted } from "./wind-known.ts";

/** Both tables stand on Kz rounded to 0.70. */
const q = (speedMph: number) => 0.00256 * 0.7 * 0.85 * speedMph ** 2;

const WALL: Omit<CladdingInput, "qPsf" | "zone" | "areaFt2" | "level"> = {
  surface: "wall",
  kd: 0.85,
  slopeDeg: undefined,
  enclosure: "enclosed",
  heightFt: 30,
  given: [],
  edition: "7-10",
};

// Far above the least net pressure the result is proportional to q, so the printed low pressures are tested too.
const SCALE = 100;

test.each(
  rows("wind-pnet30-walls.csv").map(
    (r) => [`${r.zone} ${r.direction} ${r.area_ft2} ft2 ${r.speed_mph} mph`, r] as const,
  ),
)("strength %s", (_n, row) => {
  for (const edition of ["7-10", "7-16"] as const) {
    const net = claddingPressure({
      ...WALL,
      qPsf: SCALE * q(Number(row.speed_mph)),
      zone: row.zone ?? "",
      areaFt2: Number(row.area_ft2),
      level: "strength",
      edition,
    });
    expectPrinted((row.direction === "toward" ? net.towardPsf : net.awayPsf) / SCALE, row);
  }
});

test.each(
  rows("wind-irc-walls.csv").map((r) => [`${r.zone} ${r.direction} ${r.area_ft2} ft2 ${r.speed_mph} mph`, r] as const),
)("allowable %s", (_n, row) => {
  const net = claddingPressure({
    ...WALL,
    qPsf: q(Number(row.speed_mph)),
    zone: row.zone ?? "",
    areaFt2: Number(row.area_ft2),
    level: "allowable",
  });
  expectPrinted(row.direction === "toward" ? net.towardPsf : net.awayPsf, row);
});

test("a municipal garage-door handout, q(30 ft, B, 90 mph), 112 ft2: its suction lies between the zones, its pressure above ours", () => {
  // Municipal handout after a door trade association's data sheet: 12.4 psf toward, -13.8 away. Our 12.27 is what GCp 1.0 to 0.7 over
  // 10 to 500 ft2 gives; the print is 0.13 more than that, which no rounding of ours explains.
  const door = { ...WALL, qPsf: SCALE * 12.34, areaFt2: 112, level: "strength" } as const;
  const zone4 = claddingPressure({ ...door, zone: "4" });
  const zone5 = claddingPressure({ ...door, zone: "5" });
  expect(12.4 - zone4.towardPsf / SCALE).toBeGreaterThan(0.05);
  expect(12.4 - zone4.towardPsf / SCALE).toBeLessThanOrEqual(0.135);
  expect(zone4.awayPsf / SCALE).toBeGreaterThan(-13.8);
  expect(zone5.awayPsf / SCALE).toBeLessThan(-13.8);
});
