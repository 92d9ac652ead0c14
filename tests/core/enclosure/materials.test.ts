import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  KG_M3_IN_PCF,
  KG_SM2PA_IN_PERM,
  OZ_FT2_IN_KG_M2,
  R_IP_IN_RSI,
  W_M2K_IN_BTU,
  W_MK_IN_BTU_FT,
  W_MK_IN_BTU_IN,
} from "../../../src/core/enclosure/air/si.ts";
import { sdAtM } from "../../../src/core/enclosure/layers/layer-vapor.ts";
import { materialFacts } from "../../../src/core/enclosure/layers/material-list.ts";
import { rSchedule } from "../../../src/core/enclosure/layers/r-value.ts";
import { massWall } from "../../../src/core/enclosure/loss/mass-wall.ts";
import { MATERIALS } from "../../../src/core/enclosure/tables/materials.ts";
import { convert } from "../../../src/core/units/quantity.ts";
import { findMaterial, nearMaterials } from "../../../src/functions/enclosure/read/material.ts";
import { cautions, says, value, working } from "./called.ts";
import { assemble, type LayerRow, layerOf, ofR, permOf, rOf } from "./from-text.ts";

/** What builders type for layers: a list of the trade's words, made for this test. */
const TYPED = [
  ["drywall", "5/8 drywall", "1/2 in drywall", "type x drywall", "gyp board", "exterior gypsum", "plasterboard"],
  ["plywood", "3/4 plywood", "CDX", "5/8 CDX plywood", "sheathing", "OSB", "7/16 OSB", "subfloor", "roof sheathing"],
  ["LVL", "mass plywood", "CLT", "glulam", "NLT", "LSL", "panel", "timber", "2x6", "2x4 studs", "framing lumber"],
  ["house wrap", "housewrap", "WRB", "building wrap", "self-adhered membrane", "peel and stick", "vapor barrier"],
  ["6 mil poly", "smart vapor retarder", "tar paper", "30 lb felt", "building paper", "latex paint"],
  ["air gap", "airspace", "furring", "1x4 furring", "rainscreen", "vent space"],
  ["mineral wool", "rigid mineral wool", "rock wool", "fiberglass", "R-13 batt", "batt insulation", "blown cellulose"],
  ["rigid foam", "foam board", "polyiso", "XPS", "EPS", "closed-cell foam", "open cell foam", "wood fiber insulation"],
  ["metal roofing", "standing seam", "asphalt shingles", "EPDM", "vinyl siding", "cedar siding", "fiber cement siding"],
  ["cement board", "stucco", "brick", "concrete slab", "CMU"],
].flat();

test("builders' words for layers are known", () => {
  expect(new Set(TYPED).size).toBeGreaterThanOrEqual(70);
  expect(TYPED.filter((name) => findMaterial(name) === undefined)).toEqual([]);
});

test("a name that is not known gets near names", () => {
  expect(nearMaterials("minral wool")).toContain("mineral wool board");
  expect(says("R_LAYER", "ply wod", 0.5)).toMatch(/Near names: .*plywood/);
});

test("a size or an R in the name counts where its column is blank, and is said", () => {
  expect(value("R_LAYER", "5/8 drywall")).toBeCloseTo(value("R_LAYER", "drywall", 0.625) as number, 12);
  expect(value("R_LAYER", "R-13 batt")).toBe(13);
  expect(value("R_LAYER", "5/8 drywall", 1)).toBeCloseTo(value("R_LAYER", "drywall", 1) as number, 12);
  expect(working("R_LAYER", "5/8 drywall").assumptions.join()).toMatch(/0.625 in, as its name says/);
  expect(says("R_LAYER", "2x6")).toMatch(/has no thickness/);
});

test("every material has its sources, and what is from memory or stands in says so", () => {
  for (const m of MATERIALS) {
    expect(m.heatSource, m.name).not.toBe("");
    if (m.vapor !== undefined) expect(m.vaporSource, m.name).toBeDefined();
    if (/from memory/.test(m.heatSource)) expect(m.heatCaution, m.name).toMatch(/from memory/);
    if (/from memory|no number/.test(m.vaporSource ?? ""))
      expect(m.vaporCaution, m.name).toMatch(/from memory|without a number/);
    expect(`${m.heatSource} ${m.vaporSource}`).not.toMatch(/energyplus/i);
  }
});

describe("conversions", () => {
  test("agree with the table of units", () => {
    expect(R_IP_IN_RSI).toBeCloseTo(convert(1, "RSI", "R"), 9);
    expect(W_M2K_IN_BTU).toBeCloseTo(convert(1, "Btu/h ft2 F", "W/m2K"), 9);
    expect(W_MK_IN_BTU_IN).toBeCloseTo(convert(1, "Btu in/h ft2 F", "W/mK"), 9);
    expect(W_MK_IN_BTU_FT).toBeCloseTo(convert(1, "Btu/h ft F", "W/mK"), 9);
    expect(KG_SM2PA_IN_PERM * 1e12).toBeCloseTo(convert(1, "perm", "ng/sm2Pa"), 6);
    expect(KG_M3_IN_PCF).toBeCloseTo(convert(1, "pcf", "kg/m3"), 9);
    // NIST SP 811 B.8: one ounce per square foot is 0.3051517 kg/m2.
    expect(1 / OZ_FT2_IN_KG_M2).toBeCloseTo(0.3051517, 6);
  });
});

describe("R_LAYER, PERM_LAYER and R_SCHEDULE", () => {
  const solid = MATERIALS.filter((m) => m.heat.kind === "k" || m.heat.kind === "wood").map((m) => m.name);
  const inches = fc.double({ min: 0.05, max: 10, noNaN: true });

  test("R goes with thickness, permeance against it", () => {
    fc.assert(
      fc.property(fc.constantFrom(...solid), inches, (material, t) => {
        const one = rOf({ row: 1, material, thicknessIn: t });
        expect(rOf({ row: 1, material, thicknessIn: 2 * t })).toBeCloseTo(2 * one, 8);
        const m = findMaterial(material);
        if (m?.vapor?.kind !== "mu") return;
        const perm = permOf({ row: 1, material, thicknessIn: t }, 0.25);
        expect(permOf({ row: 1, material, thicknessIn: 2 * t }, 0.25)).toBeCloseTo(perm / 2, 6);
        expect(permOf({ row: 1, material, thicknessIn: t }, 0.8)).toBeGreaterThanOrEqual(perm - 1e-9);
      }),
    );
  });

  test("own vapor figures are read in every form", () => {
    const sd = (vapor: string, thicknessIn: number | undefined, wet?: string) => {
      const layer = layerOf({ row: 1, material: "x", thicknessIn, resistance: "1", vapor, vaporWet: wet });
      return (rh: number) => sdAtM(layer.sd ?? [], rh);
    };
    expect(sd("sd 2 m", undefined)(0.5)).toBe(2);
    expect(sd("sd 10 ft", undefined)(0.5)).toBeCloseTo(3.048, 12);
    expect(sd("mu 100", 2)(0.5)).toBeCloseTo(5.08, 12);
    expect(sd("1 perm", undefined)(0.5)).toBeCloseTo(3.496, 3);
    expect(sd("2 perm-in", 2)(0.5)).toBeCloseTo(3.496, 3);
    expect(sd("0.5", undefined, "5")(0.25)).toBeCloseTo(10 * sd("0.5", undefined, "5")(0.75), 9);
    expect(says("PERM_LAYER", "carpet")).toMatch(/No vapor figure is known/);
    expect(says("DEW_LAYER", [["x", null, 1, "mu 5"]], 70, 40, 20)).toMatch(
      /vapor figure mu 5 in row 1 is per thickness/,
    );
  });

  test("a ventilated cavity drops what lies outside it, with a row that says so", () => {
    const rows: LayerRow[] = [
      { row: 1, material: "panel", thicknessIn: 1.5 },
      { row: 2, material: "air gap", thicknessIn: 0.75, role: "vented" },
      { row: 3, material: "cedar siding", thicknessIn: 0.75 },
    ];
    const schedule = rSchedule(assemble(rows, "wall", "winter"));
    expect(schedule.map((r) => r.name)).toEqual([
      "inside film",
      "panel",
      "air gap (not counted: ventilated)",
      "cedar siding (not counted: ventilated)",
      "outside film",
    ]);
    expect(schedule.at(-1)?.totalIp).toBeCloseTo(0.68 + 1.5 / 0.9712 + 0.68, 3);
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0.1, max: 30, noNaN: true }), { minLength: 1, maxLength: 9 }), (rs) => {
        const own = rSchedule(assemble(ofR(rs), "none", "none"));
        expect(own.at(-1)?.totalIp).toBeCloseTo(
          rs.reduce((a, b) => a + b, 0),
          8,
        );
        own.slice(1).forEach((r, i) => {
          expect(r.totalIp - (own[i]?.totalIp ?? 0)).toBeCloseTo(r.rIp, 9);
        });
      }),
    );
    expect(value("R_SCHEDULE", [["panel", 1.5]])).toHaveLength(3);
  });

  test("a thickness that looks like an R, and an own R far off, are asked about", () => {
    expect(cautions("R_LAYER", "fiberglass batt", 13)).toMatch(/is it an R-value/);
    expect(cautions("R_LAYER", "fiberglass batt", 3.5, "R-38")).toMatch(
      /R of 38 by its own figure.*3.5 in of glass fiber batt has 12.9/,
    );
    expect(cautions("R_LAYER", "fiberglass batt", 3.5, "R-25")).not.toMatch(/own figure/);
    expect(cautions("R_LAYER", "fiberglass batt", 3.5, "R-6")).toMatch(/own figure/);
    expect(cautions("R_LAYER", "fiberglass batt", 3.5, "R-13")).not.toMatch(/own figure/);
    expect(says("R_LAYER", "x", 500)).toMatch(/thickness is 500 in|must be/);
  });
});

test("materials by the wood equation: k = G (0.1941 + 0.004064 x 12) + 0.01864 at 12 % moisture", () => {
  for (const [name, gravity] of [
    ["panel", 0.5],
    ["CLT", 0.42],
    ["glulam", 0.5],
    ["LSL", 0.5],
  ] as const) {
    const kWmK = gravity * (0.1941 + 0.004064 * 12) + 0.01864;
    expect(rOf({ row: 1, material: name, thicknessIn: 1 })).toBeCloseTo((0.0254 / kWmK) * 5.678263, 5);
  }
});

describe("MATERIALS", () => {
  test("gives the figures that the layers calculate with", () => {
    fc.assert(
      fc.property(fc.constantFrom(...MATERIALS), (m) => {
        const facts = materialFacts(m);
        if (facts.rPerIn !== undefined) {
          expect(rOf({ row: 1, material: m.name, thicknessIn: 1 })).toBeCloseTo(facts.rPerIn, 9);
          expect(facts.rPerIn * (facts.kBtuIn ?? 0)).toBeCloseTo(1, 12);
        }
        if (facts.permIn !== undefined) {
          expect(permOf({ row: 1, material: m.name, thicknessIn: 1, resistance: "1" }, 0.25)).toBeCloseTo(
            facts.permIn,
            9,
          );
        }
        expect(facts.source.length).toBeGreaterThan(10);
      }),
    );
    const rows = value("MATERIALS") as unknown[][];
    expect(rows).toHaveLength(MATERIALS.length);
    expect((value("MATERIALS", "foam") as unknown[][]).length).toBeGreaterThan(3);
    expect(value("MATERIALS", "concrete")).toEqual([
      [
        "concrete",
        expect.closeTo(0.074, 3),
        expect.closeTo(13.52, 2),
        expect.anything(),
        expect.anything(),
        expect.closeTo(139.8, 1),
        "by thickness",
        expect.stringContaining("2200 kg/m3"),
      ],
    ]);
    expect((value("MATERIALS", "wrb") as unknown[][])[0]?.[6]).toMatch(/sheet, no R; 35 perm whatever the thickness/);
    expect(says("MATERIALS", "unobtainium")).toMatch(/No material is called/);
  });
});

describe("MASS_WALL", () => {
  const layers = (...rows: LayerRow[]) => assemble(rows, "wall", "winter").layers;

  test("heat capacity adds up, and 6 decides", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.2, max: 12, noNaN: true }), (t) => {
        const one = massWall(layers({ row: 1, material: "panel", thicknessIn: t }));
        // 500 kg/m3 is 31.21 pcf; 0.29 Btu/(lb F) is that of plywood.
        expect(one.heatCapacity).toBeCloseTo((31.2139 * 0.29 * t) / 12, 3);
        expect(one.mass).toBe(one.heatCapacity >= 6 ? "yes" : "no");
        const two = massWall(
          layers({ row: 1, material: "panel", thicknessIn: t }, { row: 2, material: "drywall", thicknessIn: 1 }),
        );
        expect(two.heatCapacity).toBeCloseTo(one.heatCapacity + (39.954 * 0.26) / 12, 3);
      }),
    );
  });

  test("a wall of a named kind counts whatever its heat capacity; a panel is a question", () => {
    expect(massWall(layers({ row: 1, material: "CLT", thicknessIn: 3 }))).toMatchObject({
      mass: "yes",
      clause: expect.stringContaining("cross-laminated timber"),
    });
    expect(massWall(layers({ row: 1, material: "CMU", thicknessIn: 2 })).mass).toBe("yes");
    expect(massWall(layers({ row: 1, material: "brick", thicknessIn: 1 })).mass).toBe("no");
    expect(cautions("MASS_WALL", [["panel", 3.5]])).toMatch(/ask the official/);
    expect(massWall(layers({ row: 1, material: "air gap", thicknessIn: 1 })).heatCapacity).toBe(0);
    expect(says("MASS_WALL", [["mystery board", 1, 2]])).toMatch(/density of the mystery board in row 1/);
    expect(working("MASS_WALL", [["panel", 3.5]], "5A", "2021").steps.map((s) => s.value)).toEqual(
      expect.arrayContaining([0.082, 0.045]),
    );
  });
});
