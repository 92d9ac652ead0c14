import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { framingShare } from "../../../src/core/enclosure/layers/framing-share.ts";
import { airAgainstCode, airLeakageCfm, naturalCfm } from "../../../src/core/enclosure/loss/air-leakage.ts";
import { groundLoss } from "../../../src/core/enclosure/loss/ground.ts";
import {
  airDensityRatio,
  heatLoss,
  lossPerDegree,
  yearlyHeatLoss,
} from "../../../src/core/enclosure/loss/heat-loss.ts";
import { thermalBridges } from "../../../src/core/enclosure/loss/thermal-bridges.ts";
import { uaAgainstCode } from "../../../src/core/enclosure/loss/ua-code.ts";
import { readZone } from "../../../src/functions/basis/glossary/zone.ts";
import { cautions, says, value, working } from "./called.ts";

const positive = (max: number) => fc.double({ min: 0.01, max, noNaN: true });

describe("HEATLOSS and HEATLOSS_YEAR", () => {
  const part = (name: string, areaFt2: number, u: number) => ({ name, areaFt2, u });

  test("areas, bridges and air add up, each by itself", () => {
    fc.assert(
      fc.property(positive(5000), positive(2), positive(500), positive(300), (area, u, bridges, cfm) => {
        const all = lossPerDegree([part("a", area, u), part("b", 2 * area, u)], bridges, cfm, 0);
        const apart =
          lossPerDegree([part("a", 3 * area, u)], 0, 0, 0) +
          lossPerDegree([], bridges, 0, 0) +
          lossPerDegree([], 0, cfm, 0);
        expect(all).toBeCloseTo(apart, 6);
        expect(lossPerDegree([], bridges, 0, 0)).toBe(bridges);
        expect(lossPerDegree([], 0, cfm, 0)).toBeCloseTo(1.08 * cfm, 9);
      }),
    );
  });

  test("goes with the difference of temperature, and by degree-days", () => {
    expect(heatLoss(10, 70, 20)).toBe(500);
    expect(heatLoss(10, 70, 90)).toBe(-200);
    expect(yearlyHeatLoss(100, 7000)).toBeCloseTo(16.8, 12);
    expect(value("HEATLOSS", [["a", 1000, 0.05]], 50, 20, 70, 10)).toBeCloseTo((50 + 20 + 54) * 60, 9);
    expect(value("HEATLOSS_YEAR", [["a", 1000, 0.05]], 50, 20, 7000)).toBeCloseTo((24 * 7000 * 124) / 1e6, 9);
  });

  test("air thins with height: 0.8 of its weight near 6,000 ft, and none is counted below its table", () => {
    // ASHRAE Handbook Fundamentals ch. 1 Table 1: 14.696 psi at sea level, 11.778 psi at 6,000 ft (from memory).
    expect(airDensityRatio(6000)).toBeCloseTo(11.778 / 14.696, 3);
    expect(airDensityRatio(0)).toBe(1);
    expect(() => airDensityRatio(20_000)).toThrow(/elevation is 20000 ft/);
    const gunnison = value("HEATLOSS_YEAR", [["a", 1000, 0.05]], 100, null, null, [
      ["Basis", "Value"],
      ["climate station", "Gunnison CO"],
    ]) as number;
    const thin = airDensityRatio(2339 / 0.3048);
    expect(gunnison).toBeCloseTo((24 * 9308 * (50 + 1.08 * thin * 100)) / 1e6, 6);
  });

  test("areas and their U stand in one row, so that a blank cannot shift them", () => {
    expect(
      says(
        "HEATLOSS",
        [
          ["a", 1000, 0.05],
          ["b", null, 0.3],
        ],
        null,
        null,
        70,
        10,
      ),
    ).toMatch(/Area in row 2/);
    expect(
      says(
        "HEATLOSS",
        [
          ["a", 1000, 0.05],
          ["b", 200, null],
        ],
        null,
        null,
        70,
        10,
      ),
    ).toMatch(/U in row 2/);
  });

  test("asks about an R for a U and about the flow of a test", () => {
    expect(cautions("HEATLOSS", [["a", 1000, 5]], null, null, 70, 10)).toMatch(/not an R-value\?/);
    expect(cautions("HEATLOSS", [["a", 1000, 0.05]], 1000, null, 70, 10)).toMatch(/test at 50 Pa\?/);
    expect(says("HEATLOSS_YEAR", [["a", 1000, 0.05]])).toMatch(/Degree days are missing/);
    expect(says("HEATLOSS", [["a", 1000, 0.05]], null, null, 70, 0)).toMatch(/Write the 0 with its unit, "0 F"/);
  });
});

describe("THERMAL_BRIDGES", () => {
  test("is linear in length and count, and adds up", () => {
    fc.assert(
      fc.property(
        positive(1),
        positive(200),
        positive(1),
        fc.integer({ min: 1, max: 500 }),
        (psi, lengthFt, chi, count) => {
          const line = { row: 1, name: "a", line: { psi, lengthFt, source: "x" }, points: undefined };
          const dots = { row: 2, name: "b", line: undefined, points: { chi, count } };
          expect(thermalBridges([line])).toBeCloseTo(psi * lengthFt, 9);
          expect(thermalBridges([dots])).toBeCloseTo(chi * count, 9);
          expect(thermalBridges([line, dots])).toBeCloseTo(thermalBridges([line]) + thermalBridges([dots]), 9);
        },
      ),
    );
  });

  test("takes built-in figures by the words of builders, and own ones with a unit", () => {
    // 0.32 W/(m K) is 0.32 / 1.730735 Btu/(h ft F).
    expect(value("THERMAL_BRIDGES", [["slab edge", null, 100]])).toBeCloseTo((0.32 / 1.730735) * 100, 3);
    expect(value("THERMAL_BRIDGES", [["sill", "0.5 W/mK", 100]])).toBeCloseTo((0.5 / 1.730735) * 100, 3);
    expect(value("THERMAL_BRIDGES", [["screws", null, null, 0.01, 200]])).toBeCloseTo(2, 12);
    expect(value("THERMAL_BRIDGES", [["both", 0.1, 10, 0.01, 200]])).toBeCloseTo(3, 12);
    expect(says("THERMAL_BRIDGES", [["balcony", null, 10]])).toMatch(/neither psi nor chi.*lintel, jamb/);
    expect(says("THERMAL_BRIDGES", [["jamb"]])).toMatch(/has no length/);
    expect(says("THERMAL_BRIDGES", [["screws", null, null, 0.01]])).toMatch(/has no count/);
    expect(says("THERMAL_BRIDGES", [["x", 3, 10]])).toMatch(/Psi in row 1/);
  });
});

describe("HEATLOSS_GROUND", () => {
  const slab = { kind: "slab", perimeterFt: 100, areaFt2: undefined, insulation: "R-10 2 ft vertical" } as const;

  test("goes with the edge and the difference of temperature", () => {
    fc.assert(
      fc.property(positive(1000), fc.integer({ min: 1, max: 80 }), (perimeterFt, dT) => {
        const one = groundLoss({ ...slab, perimeterFt }, 70, 70 - dT).btuH;
        expect(one).toBeCloseTo(0.54 * perimeterFt * dT, 6);
        expect(groundLoss({ ...slab, perimeterFt: 2 * perimeterFt }, 70, 70 - dT).btuH).toBeCloseTo(2 * one, 6);
      }),
    );
  });

  test("reads insulation as builders write it, and refuses what is not printed", () => {
    for (const text of ["R-10 2 ft vertical", "r10, vertical, 24 in", "R10 vertical 2'"]) {
      expect(value("HEATLOSS_GROUND", "slab", 100, null, text, 70, 20)).toEqual([[2700, 0.54]]);
    }
    expect(value("HEATLOSS_GROUND", "slab on grade", 100, null, null, 70, 20)).toEqual([
      [expect.closeTo(3650, 9), 0.73],
    ]);
    expect(says("HEATLOSS_GROUND", "slab", 100, null, "R-12 2 ft vertical", 70, 20)).toMatch(
      /not in the table for a slab/,
    );
    expect(says("HEATLOSS_GROUND", "basement", 100, null, "R-19 interior", 70, 20)).toMatch(/basement has no area/);
    expect(says("HEATLOSS_GROUND", "basement", 100, 900, "R-19 interior", 70, 20)).toMatch(/9 ft below grade/);
    expect(says("HEATLOSS_GROUND", "basement", 100, 100, "R-19 interior", 70, 20)).toMatch(/1 ft below grade/);
    // 5 ft deep takes the row of 3.5 ft, whose U is the larger.
    const deep = groundLoss({ kind: "basement", perimeterFt: 100, areaFt2: 500, insulation: "R-19 interior" }, 1, 0);
    expect(deep.btuH).toBeCloseTo(0.041 * 500 + 64, 9);
    expect(says("HEATLOSS_GROUND", "basement", 100, 700, "R-7 interior", 70, 20)).toMatch(/not in the table/);
  });

  test("a crawl space goes by the floor's area and the difference of temperature, and by nothing else", () => {
    const crawl = { kind: "crawl space", perimeterFt: 400, insulation: "R-19 perimeter" } as const;
    fc.assert(
      fc.property(positive(5000), fc.integer({ min: 1, max: 80 }), (areaFt2, dT) => {
        const one = groundLoss({ ...crawl, areaFt2 }, 70, 70 - dT).btuH;
        expect(one).toBeCloseTo(0.075 * areaFt2 * dT, 6);
        expect(groundLoss({ ...crawl, areaFt2, perimeterFt: 500 }, 70, 70 - dT).btuH).toBe(one);
        const open = groundLoss({ ...crawl, kind: "open crawl space", insulation: "R-19 floor", areaFt2 }, 70, 70 - dT);
        expect(open.btuH).toBeCloseTo(0.062 * areaFt2 * dT, 6);
      }),
    );
  });

  test("a crawl space: its words, its assumptions, and what it refuses", () => {
    expect(value("HEATLOSS_GROUND", "crawlspace", 130, 1000, "R19 perimeter", 70, 20)).toEqual([
      [expect.closeTo(3750, 9), ""],
    ]);
    expect(value("HEATLOSS_GROUND", "piers", 130, 1000, "r-30, joists", 70, 20)).toEqual([
      [expect.closeTo(2000, 9), ""],
    ]);
    expect(working("HEATLOSS_GROUND", "crawl", 130, 1000, "R-19 edge", 70, 20).assumptions.join()).toMatch(
      /heated plenum/,
    );
    expect(working("HEATLOSS_GROUND", "exposed floor", 130, 1000, "R-19 floor", 70, 20).steps[0]?.clause).toMatch(
      /exposed floors/,
    );
    expect(says("HEATLOSS_GROUND", "crawl space", 130, 1000, "R-19 floor", 70, 20)).toMatch(
      /Use one of: R-11 perimeter/,
    );
    expect(says("HEATLOSS_GROUND", "crawl space", 130, null, "R-19 perimeter", 70, 20)).toMatch(/area of the floor/);
    // A circle of 130 ft has 1,345 ft2.
    expect(says("HEATLOSS_GROUND", "crawl space", 130, 1350, "R-19 perimeter", 70, 20)).toMatch(
      /even a round one.*1345/,
    );
    expect(says("HEATLOSS_GROUND", "crawl space", 130, 1344, "R-19 perimeter", 70, 20)).toBe("");
  });
});

describe("air", () => {
  test("AIR_LEAKAGE scales with volume, and by the power law with pressure", () => {
    fc.assert(
      fc.property(positive(20), positive(1e5), fc.double({ min: 0.5, max: 1, noNaN: true }), (ach, volume, n) => {
        expect(airLeakageCfm(ach, volume, 50, n)).toBeCloseTo((ach * volume) / 60, 6);
        expect(airLeakageCfm(ach, 2 * volume, 50, n)).toBeCloseTo((2 * ach * volume) / 60, 6);
        expect(airLeakageCfm(ach, volume, 75, n)).toBeGreaterThan(airLeakageCfm(ach, volume, 50, n));
      }),
    );
    // (75/50)^0.65 = 1.302 and (4/50)^0.65 = 0.194 (public unit conversion).
    expect(airLeakageCfm(3, 20_000, 75, 0.65) / 1000).toBeCloseTo(1.302, 3);
    expect(airLeakageCfm(3, 20_000, 4, 0.65) / 1000).toBeCloseTo(0.194, 3);
    expect(() => airLeakageCfm(3, 20_000, 50, 0.4)).toThrow(/flow exponent/);
    expect(() => airLeakageCfm(3, 20_000, 0.05, 0.65)).toThrow(/pressure/);
    expect(cautions("AIR_LEAKAGE", 3, 20_000)).toMatch(/not the natural one that HEATLOSS takes/);
  });

  test("AIR_NATURAL falls with shelter, rises with stories, and twenty ignores both", () => {
    const zone = readZone("5A");
    const at = (stories: number, shielding: "open" | "normal" | "heavy") =>
      naturalCfm(3, 20_000, "factor", { stories, shielding, zone });
    fc.assert(
      fc.property(positive(20), positive(1e5), (ach, volume) => {
        const house = { stories: 1, shielding: "normal", zone } as const;
        const one = naturalCfm(ach, volume, "factor", house);
        expect(one).toBeCloseTo((ach / 18.5) * (volume / 60), 6);
        expect(naturalCfm(ach, 2 * volume, "factor", house)).toBeCloseTo(2 * one, 6);
        expect(naturalCfm(ach, volume, "twenty", house)).toBeCloseTo((ach / 20) * (volume / 60), 6);
        expect(naturalCfm(ach, volume, "factor", { ...house, zone: undefined })).toBeCloseTo(
          (ach / 20) * (volume / 60),
          6,
        );
      }),
    );
    expect([at(1, "heavy"), at(1, "normal"), at(1, "open")]).toEqual([
      expect.closeTo(1000 / (18.5 * 1.2), 6),
      expect.closeTo(1000 / 18.5, 6),
      expect.closeTo(1000 / (18.5 * 0.9), 6),
    ]);
    expect([at(1.5, "normal"), at(2, "normal"), at(3, "normal")]).toEqual([
      expect.closeTo(1000 / (18.5 * 0.9), 6),
      expect.closeTo(1000 / (18.5 * 0.8), 6),
      expect.closeTo(1000 / (18.5 * 0.7), 6),
    ]);
    expect(() => at(4, "normal")).toThrow(/4 stories/);
    const n = (z: string) =>
      1000 / naturalCfm(3, 20_000, "factor", { stories: 1, shielding: "normal", zone: readZone(z) });
    expect(["0", "1", "2", "3", "4", "5", "6", "7", "8"].map((z) => Number(n(z).toFixed(6)))).toEqual([
      24.5, 24.5, 24.5, 21.5, 18.5, 18.5, 15.5, 15.5, 15.5,
    ]);
    expect(cautions("AIR_NATURAL", 3, 20_000)).toMatch(/from half to twice the true rate/);
  });

  test("AIR_CODE holds a result against the limit of its zone and edition", () => {
    const verdict = (ach: number, zone: string, edition: "2018" | "2021" | "2024" | "New York 2025") =>
      airAgainstCode(ach, undefined, readZone(zone), edition);
    fc.assert(
      fc.property(positive(10), (ach) => {
        expect(verdict(ach, "5A", "2021").verdict).toBe(ach <= 3 ? "met" : "not met");
      }),
    );
    expect(verdict(5, "2A", "2021")).toEqual({ limit: 5, found: 5, verdict: "met" });
    expect(verdict(3.1, "3A", "2021").verdict).toBe("not met");
    expect(verdict(2.5, "6A", "New York 2025").limit).toBe(2.5);
    expect(verdict(2.5, "4A", "2024").limit).toBe(3);
    expect(says("AIR_CODE", 3)).toMatch(/Climate zone is missing/);
    const shown = value("AIR_CODE", 3, 20_000, [
      ["Basis", ""],
      ["county", "Tompkins"],
      ["state", "NY"],
    ]);
    expect(shown).toEqual([[3, 3, "met"]]);
  });
});

describe("UA_CODE", () => {
  test("the total is the sum, and trades one part against another", () => {
    const zone = readZone("4C");
    fc.assert(
      fc.property(positive(3000), positive(500), fc.double({ min: 0.01, max: 0.2, noNaN: true }), (wall, glass, u) => {
        const rows = uaAgainstCode(
          [
            { name: "w", areaFt2: wall, u, codePart: "wood wall", shgc: undefined },
            { name: "g", areaFt2: glass, u: 0.3, codePart: "window", shgc: undefined },
          ],
          zone,
          "Washington 2021",
        );
        const total = rows.at(-1);
        expect(total?.ua).toBeCloseTo(wall * u + glass * 0.3, 9);
        expect(total?.codeUa).toBeCloseTo(wall * 0.056 + glass * 0.3, 9);
        expect((total?.u ?? 0) * (total?.areaFt2 ?? 0)).toBeCloseTo(Number(total?.ua), 9);
        expect(total?.verdict.startsWith("met")).toBe((total?.ua ?? 0) <= (total?.codeUa ?? 0));
        expect(rows[0]?.verdict).toBe(u <= 0.056 ? "within the code's U" : "above the code's U");
      }),
    );
  });

  test("finds the code's part by the part's own words, and refuses what has no number", () => {
    const rows = value(
      "UA_CODE",
      [
        ["north wall", 100, 0.05],
        ["door", 20, 0.4],
        ["roof", 100, 0.02],
      ],
      "5A",
    ) as unknown[][];
    expect(rows.map((r) => r[4])).toEqual([0.045, 0.3, 0.024, expect.anything()]);
    const steps = working(
      "UA_CODE",
      [
        ["east window", 100, 0.3],
        ["west window", 300, 0.26],
      ],
      "5A",
    ).steps;
    expect(steps.find((s) => s.symbol === "U window")?.value).toBeCloseTo(0.27, 12);
    expect(says("UA_CODE", [["turret", 100, 0.05]], "5A")).toMatch(/code part of turret in row 1/);
    expect(says("UA_CODE", [["window", 100, 0.5]], "1A", "2018")).toMatch(/U of window is "NR"/);
  });

  const HEADS = ["part", "area", "U", "SHGC"];
  const windows = (east: number | null, west: number | null) => [
    HEADS,
    ["wall", 1000, 0.05, null],
    ["east window", 100, 0.3, east],
    ["west window", 300, 0.26, west],
  ];

  test("windows are held to the code by their means weighted by area, U and SHGC side by side", () => {
    // IECC 2018 zone 4: U 0.32, SHGC 0.40. Means: (30 + 78) / 400 and (30 + 132) / 400.
    const rows = value("UA_CODE", windows(0.3, 0.44), "4A", "2018") as unknown[][];
    expect(rows.map((r) => r[0])).toEqual(["wall", "east window", "west window", "window, mean by area", "total"]);
    expect(rows[3]).toEqual([
      "window, mean by area",
      400,
      expect.closeTo(0.27, 12),
      "",
      0.32,
      "",
      "within the code's U; above the code's SHGC",
      expect.closeTo(0.405, 12),
      0.4,
    ]);
    expect(rows.at(-1)?.[6]).toMatch(/^met, .* under the code; SHGC not met$/);
    // The row of means is no part of the sum.
    expect(rows.at(-1)?.[3]).toBeCloseTo(50 + 30 + 78, 9);
    const met = value("UA_CODE", windows(0.3, 0.43), "4A", "2018") as unknown[][];
    expect(met[3]?.[6]).toBe("within the code's U; within the code's SHGC");
    expect(met.at(-1)?.[6]).toMatch(/under the code$/);
  });

  test("the mean of SHGC lies between the least and the greatest, and does not move with the scale of the areas", () => {
    const part = (areaFt2: number, shgc: number) => ({ name: "w", areaFt2, u: 0.3, codePart: "window", shgc });
    const share = fc.double({ min: 0.05, max: 0.9, noNaN: true });
    fc.assert(
      fc.property(positive(500), positive(500), share, share, positive(10), (a, b, x, y, scale) => {
        const mean = (k: number) =>
          Number(uaAgainstCode([part(k * a, x), part(k * b, y)], readZone("5A"), "2018").at(-2)?.shgc);
        expect(mean(1)).toBeGreaterThanOrEqual(Math.min(x, y) - 1e-12);
        expect(mean(1)).toBeLessThanOrEqual(Math.max(x, y) + 1e-12);
        expect(mean(scale)).toBeCloseTo(mean(1), 9);
      }),
    );
  });

  test("SHGC: none asked in the north, one lacking is refused, an edition without it is said", () => {
    expect((value("UA_CODE", windows(0.5, 0.5), "6A", "2018") as unknown[][])[3]?.[6]).toMatch(/no SHGC is asked/);
    expect(says("UA_CODE", windows(0.3, null), "4A", "2018")).toMatch(/west window has no SHGC/);
    expect(cautions("UA_CODE", windows(0.3, 0.3), "4C", "Washington 2021")).toMatch(/SHGC of .* is not kept/);
    expect(says("UA_CODE", windows(30, 40), "4A", "2018")).toMatch(/SHGC/);
    const one = value("UA_CODE", [HEADS, ["window", 10, 0.3, 0.2]], "4A", "2018") as unknown[][];
    expect(one).toHaveLength(3);
    expect(
      says(
        "UA_CODE",
        [
          ["east window", 0, 0.3],
          ["west window", 0, 0.3],
        ],
        "4A",
        "2018",
      ),
    ).toMatch(/have no area/);
  });
});

describe("FRAMING_SHARE", () => {
  const wall = (lengthFt: number, heightFt: number, riseFt = 0) => ({ name: "w", lengthFt, heightFt, riseFt });
  const post = (count: number, lengthFt?: number) => ({ row: 1, name: "post", widthIn: 6, count, lengthFt });

  test("goes with the count, and against the wall's area", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 20 }), fc.double({ min: 30, max: 100, noNaN: true }), (count, lengthFt) => {
        const one = framingShare([wall(lengthFt, 10)], [post(count)], []);
        expect(one).toBeCloseTo((count * 0.5) / lengthFt, 9);
        expect(framingShare([wall(lengthFt, 10), wall(lengthFt, 10)], [post(count)], [])).toBeCloseTo(one / 2, 9);
        expect(framingShare([wall(lengthFt, 10)], [post(count)], [{ name: "o", areaFt2: 5 * lengthFt }])).toBeCloseTo(
          2 * one,
          9,
        );
      }),
    );
    // A gable adds half of length x rise.
    expect(framingShare([wall(40, 10, 10)], [post(6, 10)], [])).toBeCloseTo(30 / 600, 12);
  });

  test("refuses members over the whole wall, openings without a wall, and a length it cannot know", () => {
    expect(() => framingShare([wall(10, 10)], [post(20)], [])).toThrow(/cover 100 ft2/);
    expect(() => framingShare([wall(10, 10)], [post(1)], [{ name: "o", areaFt2: 100 }])).toThrow(/leave nothing/);
    expect(() => framingShare([wall(10, 10), wall(10, 12)], [post(1)], [])).toThrow(/unlike height/);
    expect(value("FRAMING_SHARE", [["a", 40, 10]], [["post", 6, 6]], [["door", 4, 10, 2]])).toBeCloseTo(30 / 320, 12);
  });
});
