import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { countyZone } from "../../../src/core/enclosure/climate/county.ts";
import { stations } from "../../../src/core/enclosure/climate/stations.ts";
import { codeParts, codeSource, codeValue } from "../../../src/core/enclosure/loss/energy-code.ts";
import { codeExteriorShare } from "../../../src/core/enclosure/moisture/exterior-share.ts";
import { retarderClass, retarderRule } from "../../../src/core/enclosure/moisture/retarder.ts";
import { leastShareAboveDeck, unventedRoofR } from "../../../src/core/enclosure/moisture/unvented-roof.ts";
import { CODE_COLUMNS, CODE_EDITIONS } from "../../../src/core/enclosure/tables/energy-code.ts";
import { readZone } from "../../../src/functions/basis/glossary/zone.ts";
import { readCounty } from "../../../src/functions/enclosure/read/county.ts";
import { cautions, says, value, working } from "./called.ts";

const ZONES = ["1", "2", "3", "4", "4C", "5", "6", "7", "8"];

describe("CLIMATE_ZONE", () => {
  const zone = (county: string, state: string, code?: string) =>
    value(
      "CLIMATE_ZONE",
      county,
      state,
      ...(code === undefined
        ? []
        : [
            [
              ["Basis", ""],
              ["energy code", code],
            ],
          ]),
    );

  test("goes by the map of the code", () => {
    expect([zone("Tompkins", "NY"), zone("Tompkins", "NY", "2018"), zone("Tompkins", "NY", "2024")]).toEqual([
      "5A",
      "6A",
      "5A",
    ]);
    expect(cautions("CLIMATE_ZONE", "Tompkins", "NY")).toMatch(/6A up to the code of 2018 and in zone 5A from 2021/);
    expect(cautions("CLIMATE_ZONE", "Addison", "VT")).not.toMatch(/up to the code/);
  });

  test("reads names as people write them", () => {
    expect([zone("De Kalb", "GA"), zone("LaSalle", "IL"), zone("La Salle County", "Illinois")]).toEqual([
      "3A",
      "5A",
      "5A",
    ]);
    expect([zone("Doña Ana", "NM"), zone("Dona Ana", "New Mexico"), zone("Broomfield", "CO")]).toEqual([
      "3B",
      "3B",
      "5B",
    ]);
    expect([zone("Washington", "DC"), zone("Saint Louis", "MO"), zone("St. Louis city", "MO")]).toEqual([
      "4A",
      "4A",
      "4A",
    ]);
    expect([zone("Shannon", "SD"), zone("Oglala Lakota", "SD"), zone("Kusilvak", "AK")]).toEqual(["6A", "6A", "8"]);
    expect(says("CLIMATE_ZONE", "Adison", "VT")).toMatch(/Near names: Addison/);
    expect(says("CLIMATE_ZONE", "Addison")).toMatch(/State is missing/);
  });

  test("the number that a moved county's zone decides carries the caution", () => {
    const basis = [
      ["Basis", ""],
      ["county", "Tompkins"],
      ["state", "NY"],
    ];
    expect(cautions("R_CODE", "wood wall", basis)).toMatch(/5A from 2021/);
    expect(cautions("ROOF_UNVENTED", basis)).toMatch(/5A from 2021/);
    expect(value("ROOF_UNVENTED", basis)).toBe(20);
    expect(value("ROOF_UNVENTED", [...basis, ["residential code", "2018"]])).toBe(25);
  });

  test("no county's two zones lie more than two numbers apart", () => {
    fc.assert(
      fc.property(fc.constantFrom("NY", "OH", "AL", "WA", "AK", "TX"), (state) => {
        expect(() => readCounty("Nowhere at all", state)).toThrow(/not a county/);
      }),
    );
    const tompkins = readCounty("Tompkins", "NY");
    expect([countyZone(tompkins, "2010"), countyZone(tompkins, "2021")]).toEqual(["6A", "5A"]);
  });
});

describe("U_CODE and R_CODE", () => {
  test("ask no less insulation where it is colder", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...CODE_EDITIONS),
        fc.constantFrom(...codeParts("U").filter((p) => p !== "SHGC")),
        fc.integer({ min: 0, max: 7 }),
        (edition, part, i) => {
          const at = (zone: string) => {
            try {
              return codeValue("U", readZone(zone), part, edition);
            } catch {
              return undefined;
            }
          };
          const [warm, cold] = [at(String(i)), at(String(i + 1))];
          if (typeof warm === "number" && typeof cold === "number") expect(cold).toBeLessThanOrEqual(warm);
        },
      ),
    );
    expect(value("U_CODE", "wood wall", "5A")).toBe(0.045);
    expect(value("R_CODE", "wall", "6A", "2018")).toBe("20+5 or 13+10");
  });

  test("no cell stands twice, and each says whether it was read", () => {
    const seen = new Set<string>();
    for (const c of CODE_COLUMNS) {
      for (const zone of Object.keys(c.byZones).flatMap((z) => z.split(" "))) {
        for (const edition of c.editions) {
          const key = [edition, c.kind, c.part, zone].join("|");
          expect(seen.has(key), key).toBe(false);
          seen.add(key);
        }
      }
    }
    expect(cautions("U_CODE", "mass wall", "5A")).toMatch(/from memory/);
    expect(cautions("R_CODE", "floor", "5A", "2015")).toMatch(/not read in this edition, but the same in prints/);
    expect(cautions("R_CODE", "floor", "5A", "2018")).not.toMatch(/This cell/);
    expect(working("R_CODE", "floor", "5A", "2015").steps.at(-1)?.clause).toMatch(/R402.1.2, not read in this edition/);
    // 63 cells of R: ceiling 4 of 9, wall 4, mass 6, floor 7, basement 3, slab 9, crawl 4 stand on both sides.
    expect(codeSource("R", "2012")).toBe(
      "IECC 2012 Table R402.1.1 (of 63 cells 37 the same in prints of an earlier and a later edition, 26 from memory)",
    );
    expect(codeSource("R", "2018")).toBe("IECC/IRC 2018 Table R402.1.2 (N1102.1.2) (read in a print)");
    expect(codeSource("U", "2024")).toBeUndefined();
    expect(says("U_CODE", "window", "5A", "2024")).toMatch(/no U table of that edition is kept.*2021/);
    expect(cautions("U_CODE", "wood wall", "5A")).not.toMatch(/from memory/);
    expect(says("R_CODE", "ceiling", "5A", "Washington 2021")).toMatch(/Use one of these editions: .*2021/);
    expect(says("U_CODE", "wood wall", "1A", "Washington 2021")).toMatch(
      /Zone 1A is not kept for wood wall.*zones 5, 4C|4C, 5/,
    );
    expect(says("U_CODE", "turret", "5A")).toMatch(/must be one of/);
    expect(says("U_CODE", "wood wall")).toMatch(/Climate zone is missing/);
    expect(says("U_CODE", "wood wall", "9Z")).toMatch(/not a climate zone/);
    expect(value("U_CODE", "wood wall", "marine 4", "Washington 2021")).toBe(0.056);
    expect(working("U_CODE", "wood wall", "4").assumptions.join()).toMatch(/taken as not marine/);
  });

  test("MASS_WALL shows both rows of a zone", () => {
    const steps = working("MASS_WALL", [["CLT", 4]], "6A", "2018").steps.map((s) => s.value);
    expect(steps).toEqual(expect.arrayContaining([0.06, 0.045, "15/20", "20+5 or 13+10"]));
  });
});

describe("RETARDER_CLASS and RETARDER_RULE", () => {
  const wall = { stud: "2x6", outsideR: 0, ventedCladding: false, sheathing: "wood panel" } as const;
  const allowed = (zone: string, w: Parameters<typeof retarderRule>[1], edition: "2018" | "2021" | "2024" = "2021") =>
    Object.fromEntries(retarderRule(readZone(zone), w, edition).map((r) => [r.cls, r.allowed]));

  test("a class never grows tighter as a permeance rises", () => {
    const order = ["I", "II", "III", "none"];
    fc.assert(
      fc.property(fc.double({ min: 0, max: 50, noNaN: true }), fc.double({ min: 0, max: 50, noNaN: true }), (a, b) => {
        const [lo, hi] = [Math.min(a, b), Math.max(a, b)];
        expect(order.indexOf(retarderClass(lo))).toBeLessThanOrEqual(order.indexOf(retarderClass(hi)));
      }),
    );
    expect(() => retarderClass(-1)).toThrow(/permeance is -1/);
  });

  test("more insulation outside never bars class III", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...ZONES),
        fc.double({ min: 0, max: 30, noNaN: true }),
        fc.double({ min: 0, max: 30, noNaN: true }),
        (zone, a, b) => {
          const [lo, hi] = [Math.min(a, b), Math.max(a, b)];
          if (allowed(zone, { ...wall, outsideR: lo }).III)
            expect(allowed(zone, { ...wall, outsideR: hi }).III).toBe(true);
        },
      ),
    );
  });

  test("class II with insulation outside goes by Table R702.7(4), in zones 3 and 4 too", () => {
    expect([2, 1.9].map((outsideR) => allowed("3A", { ...wall, outsideR }).II)).toEqual([true, false]);
    expect([5, 4.9].map((outsideR) => allowed("4A", { ...wall, outsideR }).II)).toEqual([true, false]);
    expect([3, 2.9].map((outsideR) => allowed("5A", { ...wall, stud: "2x4", outsideR }).II)).toEqual([true, false]);
    expect([10, 9.9].map((outsideR) => allowed("8", { ...wall, outsideR }).II)).toEqual([true, false]);
    expect(allowed("2A", { ...wall, outsideR: 20 }).II).toBe(false);
    expect(allowed("5A", { ...wall, outsideR: 1 }, "2018").II).toBe(true);
    expect(allowed("4A", wall, "2018").none).toBe(true);
  });

  test("a variable retarder stands in every zone, and the notes are said", () => {
    for (const zone of ZONES) expect(allowed(zone, wall).variable).toBe(true);
    expect(Object.keys(allowed("5A", wall, "2018"))).not.toContain("variable");
    expect(cautions("RETARDER_RULE", null, null, "5A")).toMatch(/both faces of a wall needs an approved design/);
    expect(cautions("RETARDER_RULE", null, null, "5A")).toMatch(
      /PERM_LAYER and RETARDER_CLASS give its class by its thickness/,
    );
    expect(cautions("RETARDER_RULE", null, null, "5A", null, null, "2024")).toMatch(/R702.7\(5\)/);
    expect(working("RETARDER_RULE", 5, null, "5A").assumptions.join()).toMatch(/1.5 perm at its thickness/);
    expect(says("RETARDER_RULE", null, null, "0A")).toMatch(/Zone 0 is not in the table/);
    expect(cautions("RETARDER_RULE", null, null, "4A")).not.toMatch(/from memory/);
    expect(value("RETARDER_RULE", 7.5, null, "5A")).toContainEqual(["III", "allowed", "R-7.5 outside, R-7.5 wanted"]);
  });

  test("the share that the code's table implies is ci over ci and cavity", () => {
    expect(codeExteriorShare(readZone("5"), "2x4")?.share).toBeCloseTo(5 / 18, 12);
    expect(codeExteriorShare(readZone("marine 4"), "2x6")?.share).toBeCloseTo(3.75 / 23.75, 12);
    expect(codeExteriorShare(readZone("3"), "2x6")).toBeUndefined();
    const rows = (zone: string) =>
      value(
        "DEW_OUTSIDESHARE",
        [
          ["panel", 1.5],
          ["air line", null, 0.1, null, "air barrier"],
          ["mineral wool board", 2],
        ],
        70,
        40,
        20,
        null,
        [
          ["Basis", ""],
          ["climate zone", zone],
        ],
      ) as unknown[][];
    expect(rows("5A")[2]).toEqual([
      "code, zone 5A, 2x6",
      expect.closeTo(7.5 / 27.5, 12),
      expect.stringMatching(/^met by this wall/),
    ]);
    expect(rows("3A")[2]?.[2]).toBe("no row in the table: no least R there");
  });
});

describe("ROOF_UNVENTED", () => {
  test("asks no less where it is colder, and the deck's rule rises with the cold", () => {
    fc.assert(
      fc.property(fc.constantFrom(...ZONES.filter((z) => z !== "4C")), fc.nat(7), (zone, up) => {
        const i = ZONES.indexOf(zone);
        const colder = ZONES[Math.min(i + up, ZONES.length - 1)] as string;
        if (colder === "4C") return;
        expect(unventedRoofR(readZone(colder))).toBeGreaterThanOrEqual(unventedRoofR(readZone(zone)));
      }),
    );
    const burlington = stations().find((s) => s.wmo === "726170");
    if (burlington === undefined) throw new Error("no Burlington");
    // The three coldest months of the print: -7.2, -5.6 and -1.5 C, mean -4.77 C = 23.42 F; (45 - 23.42) / (68 - 23.42).
    expect(leastShareAboveDeck(burlington)).toBeCloseTo((45 - 23.42) / (68 - 23.42), 3);
    const steps = working("ROOF_UNVENTED", "6A", null, [
      ["Basis", ""],
      ["climate station", "Burlington VT"],
    ]).steps;
    expect(steps.map((s) => s.symbol)).toEqual(["T_o", "R_out/R_T", "R"]);
    expect(says("ROOF_UNVENTED", "0A")).toMatch(/begins with zone 1/);
    expect(working("ROOF_UNVENTED", "2B").assumptions.join()).toMatch(/tile roofs/);
    expect(working("ROOF_UNVENTED", "2A").assumptions.join()).not.toMatch(/tile roofs/);
    expect(working("ROOF_UNVENTED", "5A").assumptions.join()).toMatch(/class II retarder itself/);
    expect(working("ROOF_UNVENTED", "4A").assumptions.join()).not.toMatch(/class II retarder itself/);
  });
});
