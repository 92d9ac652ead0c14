import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { saturationPressurePa } from "../../../src/core/enclosure/air/saturation.ts";
import { rowsClimate, stationClimate } from "../../../src/core/enclosure/climate/climate.ts";
import { stations } from "../../../src/core/enclosure/climate/stations.ts";
import { dewMonths } from "../../../src/core/enclosure/moisture/dew-months.ts";
import { dewWood } from "../../../src/core/enclosure/moisture/dew-wood.ts";
import { monthlyAir } from "../../../src/core/enclosure/moisture/indoor.ts";
import { leastFactor, planeFactor, surfaceFactor } from "../../../src/core/enclosure/moisture/surface-factor.ts";
import { waterLimit } from "../../../src/core/enclosure/moisture/water-limit.ts";
import { equilibriumMoisturePct } from "../../../src/core/wood/moisture/moisture.ts";
import { readIndoor } from "../../../src/functions/enclosure/read/indoor.ts";
import { cautions, says, value, working } from "./called.ts";
import { assemble, CLASS_2_OF_2001, type LayerRow, layerOf } from "./from-text.ts";

const stud: LayerRow[] = [
  { row: 1, material: "drywall", thicknessIn: 0.5 },
  { row: 2, material: "fiberglass batt", thicknessIn: 5.5 },
  { row: 3, material: "osb", thicknessIn: 0.5 },
];
const sandwich = (t: number): LayerRow[] => [
  { row: 1, material: "mineral wool board", thicknessIn: 4 },
  { row: 2, material: "panel", thicknessIn: t },
];
const sheet = (rows: LayerRow[]) => rows.map((r) => [r.material, r.thicknessIn ?? null]);
const air = (indoor: string, station = "726170") => {
  const found = stations().find((s) => s.wmo === station);
  if (found === undefined) throw new Error("no station");
  return monthlyAir(stationClimate(found), readIndoor(indoor));
};

describe("limits of standing water by the layers", () => {
  test("3 % of a panel's mass, 5 % of solid wood's, never over 0.5 kg/m2", () => {
    const panel = layerOf({ row: 1, material: "plywood", thicknessIn: 0.5 });
    const lumber = layerOf({ row: 1, material: "spf", thicknessIn: 0.5 });
    expect(waterLimit([panel]).kgM2).toBeCloseTo(0.03 * 540 * 0.0127, 12);
    expect(waterLimit([lumber]).kgM2).toBeCloseTo(0.05 * 420 * 0.0127, 12);
    expect(waterLimit([panel, lumber]).kgM2).toBeCloseTo(0.03 * 540 * 0.0127, 12);
    // A wood face without thickness has no mass to go by, a board that is no wood takes none up.
    expect(waterLimit([layerOf({ row: 1, material: "plywood", thicknessIn: undefined, vapor: "1 perm" })]).kgM2).toBe(
      0.5,
    );
    expect(waterLimit([layerOf({ row: 1, material: "drywall", thicknessIn: 0.5 })])).toMatchObject({
      kgM2: 0.5,
      says: expect.stringMatching(/^0.5 kg/),
    });
    expect(waterLimit([]).kgM2).toBe(0.5);
    expect(waterLimit([layerOf({ row: 1, material: "panel", thicknessIn: 8 })]).kgM2).toBe(0.5);
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 12, noNaN: true }), (t) => {
        const limit = waterLimit([layerOf({ row: 1, material: "plywood", thicknessIn: t })]);
        expect(limit.kgM2).toBeCloseTo(Math.min(0.5, 0.03 * 540 * t * 0.0254), 9);
      }),
    );
  });

  test("DEW_MONTHS fails a panel that 0.5 kg/m2 would pass", () => {
    const year = dewMonths(assemble(stud, "wall", "winter"), air("class 2"), "zero", undefined);
    // 3 % of 650 kg/m3 x 12.7 mm is 0.248 kg/m2 = 0.812 oz/ft2.
    expect(year.verdict).toMatch(/^dries, but the peak of .* is above the limit of 0.812, 3 % of the mass of osb/);
    expect(year.peakOzFt2).toBeGreaterThan(0.812);
    const given = dewMonths(assemble(stud, "wall", "winter"), air("class 2"), "zero", 20);
    expect(given.verdict).toMatch(
      /^dries within the year, peak .* at the whole wall within the limit of 20, the limit that is given/,
    );
    expect(dewMonths(assemble(stud, "wall", "winter"), air("class 2"), "zero", 0.01).verdict).toMatch(
      /above the limit of 0.01/,
    );
  });

  test("amounts add up from month to month, and the picture is that of the rows", () => {
    fc.assert(
      fc.property(
        fc.constantFrom("class 1", "class 2", "class 3", "EN 15026", "air conditioned"),
        fc.constantFrom(...stations()),
        (indoor, s) => {
          const year = dewMonths(assemble(stud, "wall", "winter"), air(indoor, s.wmo), "zero", undefined);
          let standing = 0;
          for (const m of year.months) {
            standing += m.changeOzFt2;
            expect(m.standingOzFt2).toBeCloseTo(standing, 9);
            expect(m.where === "").toBe(m.standingOzFt2 === 0);
          }
          expect(year.peakOzFt2).toBeCloseTo(Math.max(0, ...year.months.map((m) => m.standingOzFt2)), 12);
          expect(year.endOzFt2).toBe(year.months.at(-1)?.standingOzFt2);
          if (year.peakOzFt2 === 0) expect(year.verdict).toBe("no condensation");
        },
      ),
      { numRuns: 60, seed: 5 },
    );
    const shown = working("DEW_MONTHS", sheet(stud), "Burlington VT", "class 2");
    const rows = value("DEW_MONTHS", sheet(stud), "Burlington VT", "class 2") as (string | number)[][];
    expect(rows).toHaveLength(13);
    expect(shown.pictures[0]).toMatchObject({
      months: rows.slice(0, 12).map((r) => ({ name: r[0], changeOzFt2: r[4], standingOzFt2: r[5] })),
      limitOzFt2: expect.closeTo(0.812, 3),
    });
    expect(rows[12]?.[6]).toBe(dewMonths(assemble(stud, "wall", "winter"), air("class 2"), "zero", undefined).verdict);
  });
});

describe("indoor conditions", () => {
  const one = (tempC: number, rhShare: number, indoor: Parameters<typeof monthlyAir>[1]) =>
    monthlyAir(rowsClimate(Array.from({ length: 12 }, () => ({ name: "x", tempC, rhShare }))), indoor)[0];

  test("classes fall in a straight line from their excess at 0 C to nothing at 20 C", () => {
    const excess = (tempC: number, level: 1 | 2 | 3 | 4, margin2001 = false) => {
      const m = one(tempC, 0.5, { kind: "class", level, margin2001 });
      return (m?.insidePa ?? 0) - (m?.outsidePa ?? 0);
    };
    expect([1, 2, 3, 4].map((l) => excess(0, l as 1))).toEqual([270, 540, 810, 1080].map((e) => expect.closeTo(e, 6)));
    expect(excess(-10, 2)).toBeCloseTo(540, 6);
    expect(excess(10, 2)).toBeCloseTo(270, 6);
    expect(excess(20, 2)).toBeCloseTo(0, 6);
    expect(excess(0, 2, true)).toBeCloseTo(594, 6);
    expect(one(0, 0.5, CLASS_2_OF_2001)?.insideC).toBe(20);
  });

  test("EN 15026 and air conditioning", () => {
    const en = (tempC: number, high = false) => {
      const m = one(tempC, 0.5, { kind: "EN 15026", high });
      return [m?.insideC, ((m?.insidePa ?? 0) / saturationPressurePa(m?.insideC ?? 0, "ISO 13788")) * 100];
    };
    expect(en(-10)).toEqual([20, expect.closeTo(35, 6)]);
    expect(en(20)).toEqual([25, expect.closeTo(65, 6)]);
    expect(en(5)).toEqual([20, expect.closeTo(50, 6)]);
    expect(en(15)).toEqual([22.5, expect.closeTo(60, 6)]);
    expect(en(5, true)).toEqual([20, expect.closeTo(55, 6)]);
    const cooled = one(30, 0.8, { kind: "air conditioned" });
    expect(cooled?.insideC).toBeCloseTo(23.9, 12);
    expect(cooled?.insidePa).toBeCloseTo(0.5 * saturationPressurePa(23.9, "ISO 13788"), 6);
    expect(one(0, 0.8, { kind: "air conditioned" })?.insideC).toBe(20);
    expect(one(19.9, 0.9, { kind: "air conditioned" })?.insidePa).toBeCloseTo(
      0.5 * saturationPressurePa(23.9, "ISO 13788"),
      6,
    );
  });

  test("are read by their names, a percent, or rows, and nothing else", () => {
    const first = (indoor: string | number) =>
      (value("DEW_MONTHS", sheet(stud), "Miami Intl FL", indoor) as number[][])[0]?.[3];
    expect(first(50)).toBeCloseTo(0.5 * saturationPressurePa(20, "ISO 13788"), 6);
    expect(first("50%")).toBeCloseTo(0.5 * saturationPressurePa(20, "ISO 13788"), 6);
    expect(first(0.5)).toBeCloseTo(0.5 * saturationPressurePa(20, "ISO 13788"), 6);
    expect(says("DEW_MONTHS", sheet(stud), "Miami Intl FL", "damp")).toMatch(/indoor condition "damp" is not known/);
    expect(says("DEW_MONTHS", sheet(stud), "Miami Intl FL", 150)).toMatch(/indoor humidity is 150/);
    expect(says("DEW_MONTHS", sheet(stud), "Nowhere", "class 2")).toMatch(/fits no station/);
    expect(
      says(
        "DEW_MONTHS",
        sheet(stud),
        [
          ["Jan", 20, 50],
          ["Feb", 20, 50],
        ],
        "class 2",
      ),
    ).toMatch(/2 rows of months/);
    expect(says("DEW_MONTHS", sheet(stud))).toMatch(/Climate station is missing/);
    expect(cautions("DEW_MONTHS", sheet(stud), "Miami Intl FL", "class 2")).toMatch(/from memory/);
    expect(says("DEW_MONTHS", sheet(stud), "Burlington, Vermont", "class 2")).toBe("");
    const swapped = ["Jan", "Mar", "Feb", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"].map((m) => [
      m,
      40,
      60,
    ]);
    expect(says("DEW_MONTHS", sheet(stud), swapped, "class 2")).toMatch(/Row 2 is Mar where Feb belongs/);
  });
});

describe("DEW_WOOD", () => {
  test("a layer in one air has that air's moisture", () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 30 }), fc.double({ min: 0.2, max: 0.9, noNaN: true }), (tempC, rh) => {
        const months = rowsClimate(Array.from({ length: 12 }, () => ({ name: "x", tempC, rhShare: rh })));
        const rows = dewWood(
          assemble([{ row: 1, material: "plywood", thicknessIn: 0.5 }], "wall", "winter"),
          monthlyAir(months, [{ tempC, rhShare: rh }]),
          "zero",
        );
        expect(rows).toHaveLength(12);
        const emc = equilibriumMoisturePct((tempC * 9) / 5 + 32, rh * 100);
        for (const r of rows) {
          expect(r.moisturePct).toBeCloseTo(emc, 6);
          const mold = rh > 0.8 && tempC >= 5;
          expect(r.verdict).toBe(
            emc >= 20
              ? "20 % or more: decay is possible"
              : mold
                ? "above 80 % at a face: mold is possible"
                : "dry enough",
          );
        }
      }),
    );
  });

  test("lists each wood layer, wetter inside a cold wall than in a warm one", () => {
    const rows = value("DEW_WOOD", sheet(stud), "Burlington VT", "class 2") as (string | number)[][];
    expect(rows).toHaveLength(12);
    expect(new Set(rows.map((r) => r[0]))).toEqual(new Set(["row 3, osb"]));
    const peak = (layers: LayerRow[]) =>
      Math.max(
        ...(value("DEW_WOOD", sheet(layers), "Burlington VT", "class 2") as number[][]).map((r) => r[2] as number),
      );
    expect(peak(sandwich(1.5))).toBeGreaterThan(peak([...sandwich(1.5)].reverse()));
    expect(Math.max(...rows.map((r) => r[2] as number))).toBeGreaterThan(20);
    expect(says("DEW_WOOD", [["drywall", 0.5]], "Burlington VT", "class 2")).toMatch(/No layer is of wood/);
    expect(working("DEW_WOOD", sheet(stud), "Burlington VT", "class 2").assumptions.join()).toMatch(
      /thick wood lags behind/,
    );
  });
});

describe("TEMPERATURE_FACTOR", () => {
  test("rises with R, and asks more where the room is damper", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.5, max: 60, noNaN: true }),
        fc.double({ min: 0.25, max: 0.7, noNaN: true }),
        (r, rh) => {
          const of = (x: number) =>
            planeFactor(
              assemble([{ row: 1, material: "x", thicknessIn: undefined, resistance: String(x) }], "ISO mold", "ISO"),
            );
          expect(of(r + 1)).toBeGreaterThan(of(r));
          const month = (share: number) => ({
            name: "Jan",
            seconds: 1,
            insideC: 20,
            insidePa: share * 2337,
            outsideC: -5,
            outsidePa: 321,
          });
          expect(leastFactor(month(rh + 0.05), 0.8)?.factor ?? 0).toBeGreaterThanOrEqual(
            leastFactor(month(rh), 0.8)?.factor ?? 0,
          );
        },
      ),
    );
  });

  test("takes the worst month, and refuses a room whose own air is above the limit in any season", () => {
    const wallOf = assemble([{ row: 1, material: "x", thicknessIn: undefined, resistance: "2" }], "ISO mold", "ISO");
    const winter = { name: "Jan", seconds: 1, insideC: 20, insidePa: 1168, outsideC: -5, outsidePa: 321 };
    const mild = { ...winter, name: "Oct", outsideC: 10 };
    expect(surfaceFactor(wallOf, [mild, winter], 0.8)).toMatchObject({ month: "Jan", verdict: "mold risk" });
    const summer = { name: "Jul", seconds: 1, insideC: 20, insidePa: 2200, outsideC: 28, outsidePa: 2500 };
    expect(() => surfaceFactor(wallOf, [winter, summer], 0.8)).toThrow(/In Jul the indoor air itself/);
    expect(surfaceFactor(wallOf, [{ ...summer, insidePa: 1000 }], 0.8)).toMatchObject({
      month: "",
      verdict: "no mold expected on the plane part",
    });
    expect(value("TEMPERATURE_FACTOR", sheet(stud), "Burlington VT", "class 2")).toHaveLength(1);
  });
});
