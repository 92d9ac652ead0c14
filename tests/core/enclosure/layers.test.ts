import { describe, expect, test } from "vitest";
import { stackR } from "../../../src/core/enclosure/layers/r-value.ts";
import { retarderClass, retarderRule } from "../../../src/core/enclosure/moisture/retarder.ts";
import { sentence } from "../../../src/core/kit/refusal.ts";
import { readZone } from "../../../src/functions/basis/glossary/zone.ts";
import type { RawArgument } from "../../../src/functions/declare/param.ts";
import { enclosureFunctions } from "../../../src/functions/enclosure/index.ts";
import { readResistance } from "../../../src/functions/enclosure/read/resistance.ts";
import { readRole } from "../../../src/functions/enclosure/read/role.ts";
import { explain, invoke } from "../../../src/functions/run/invoke.ts";
import { assemble } from "./from-text.ts";

const named = (name: string) => {
  const fn = enclosureFunctions.find((f) => f.name === name);
  if (fn === undefined) throw new Error(name);
  return fn;
};
const value = (name: string, ...args: RawArgument[]) => {
  const outcome = invoke(named(name), args);
  if (!outcome.ok) throw new Error(sentence(outcome.said));
  return outcome.value;
};
const says = (name: string, ...args: RawArgument[]) => {
  const outcome = invoke(named(name), args);
  return outcome.ok ? "" : `${outcome.code} ${sentence(outcome.said)}`;
};

describe("a range of layers", () => {
  test("name and thickness are enough", () => {
    expect(
      value("R_STACK", [
        ["gypsum board", 0.5],
        ["mineral wool board", 4],
      ]),
    ).toBeCloseTo(17.326, 3);
  });

  test("a header row may reorder the columns and give conductivity, mu and sd columns of their own", () => {
    const plain = value("R_STACK", [["board", 2, "k 0.25", "mu 50"]]);
    expect(
      value("R_STACK", [
        ["conductivity", "Layer", "Thickness, in", "mu"],
        [0.25, "board", 2, 50],
      ]),
    ).toBe(plain);
  });

  test("blank cells are blank, whether a host hands over null, nothing or 0", () => {
    const full = value("R_STACK", [["panel", 1.5]]);
    for (const blank of [null, 0, ""]) {
      expect(
        value("R_STACK", [
          ["panel", 1.5, blank, blank, blank],
          [blank, blank, blank, blank, blank],
          ["wrb", blank, blank, blank, blank],
        ]),
      ).toBe(full);
    }
  });

  test("an own figure wins over the built-in one", () => {
    expect(value("R_STACK", [["gypsum board", 0.5, 2]], "none", "none")).toBe(2);
    expect(value("R_STACK", [["gypsum board", 2, "R 4.2/in"]], "none", "none")).toBeCloseTo(8.4, 12);
  });

  test("a row that cannot be read is named", () => {
    const bad: RawArgument = [
      ["gypsum board", 0.5],
      ["panel", 1.5],
      [null, null],
      ["mineral woll bord", 4],
    ];
    expect(says("R_STACK", bad)).toMatch(/^#VALUE!.*"mineral woll bord" in row 4.*Near names: mineral wool board/);
    expect(says("R_STACK", [["gypsum board", -1]])).toMatch(/row 1 .*-1 in/);
    expect(says("R_STACK", [["gypsum board", null]])).toMatch(/row 1 has no thickness/);
    expect(says("R_STACK", [["panel", 1.5, "thick"]])).toMatch(/R "thick" in row 1 cannot be read/);
    expect(says("R_STACK", [["panel", 1.5, null, "wet"]])).toMatch(/vapor figure "wet" in row 1/);
    expect(says("R_STACK", [["panel", 1.5, null, null, "sheathing"]])).toMatch(/role "sheathing" in row 1/);
    expect(says("R_STACK", [["panel", { error: "#DIV/0!" }]])).toMatch(/row 1 .*#DIV\/0!/);
    expect(says("R_STACK", [[null, null]])).toMatch(/no row that holds anything/);
    expect(says("DEW_LAYER", [["carpet", null]], 70, 40, "0 F")).toMatch(/carpet in row 1 has no vapor figure/);
    expect(
      says(
        "R_STACK",
        Array.from({ length: 100_000 }, () => ["panel", 1]),
      ),
    ).toMatch(/more than 100 rows/);
  });

  test("an R or a conductivity is read in the ways builders write it", () => {
    const r = (text: string) => readResistance(text, "row 1");
    for (const text of ["13", "R13", "R-13", "r 13"]) expect(r(text)).toEqual({ kind: "R", rIp: 13 });
    expect((r("13 h ft2 F/Btu") as { rIp: number }).rIp).toBeCloseTo(13, 12);
    for (const text of ["k 0.25", "k=.25", "0.25 Btu in/h ft2 F", "R 4/in", "4 per inch"]) {
      expect(r(text).kind).toBe("k");
      expect((r(text) as { kBtuIn: number }).kBtuIn).toBeCloseTo(0.25, 12);
    }
    expect((r("RSI 1") as { rIp: number }).rIp).toBeCloseTo(5.678263, 6);
    expect((r("0.1442279 W/mK") as { kBtuIn: number }).kBtuIn).toBeCloseTo(1, 6);
    expect(r("G 0.5 M 10")).toEqual({ kind: "wood", specificGravity: 0.5, moisturePct: 10 });
    expect(value("R_LAYER", "x", 1, "G 0.5")).toBeCloseTo(1 / 0.9712, 4);
    expect(r("none")).toEqual({ kind: "R", rIp: 0 });
    for (const bad of ["-3", "k 0", "R", "12 apples", ""]) expect(() => r(bad)).toThrow(/cannot be read/);
    expect(says("R_LAYER", "x", 1, "G 0.1")).toMatch(/specific gravity/);
  });
});

describe("the ventilated cavity of ISO 6946 6.9", () => {
  const wall = (role: string | undefined) =>
    stackR(
      assemble(
        [
          { row: 1, material: "panel", thicknessIn: 1.5 },
          { row: 2, material: "air space", thicknessIn: 1, role },
          { row: 3, material: "wood siding", thicknessIn: 1 },
        ],
        "wall",
        "winter",
      ),
    );

  test("drops what lies outside a well ventilated cavity and takes the film of still air", () => {
    const panel = 1.5 / 0.971199;
    expect(wall("ventilated cavity")).toBeCloseTo(0.68 + panel + 0.68, 4);
    expect(wall("ventilated cavity 1500 mm2/m")).toBeCloseTo(0.68 + panel + 0.68, 4);
  });

  test("is still air up to 500 mm2/m, and in between a straight line", () => {
    const still = wall(undefined);
    const open = wall("ventilated cavity");
    expect(wall("ventilated cavity 500 mm2/m")).toBe(still);
    expect(wall("ventilated cavity 1000 mm2/m")).toBeCloseTo((still + open) / 2, 10);
    // 0.709 in2/ft is 1500 mm2/m.
    expect(readRole("vented 0.7087 in2/ft", "row 2")).toEqual({
      kind: "ventilated cavity",
      openingMm2M: expect.closeTo(1500, 0),
    });
  });
});

test("openings of a roof go by its area, as the trade writes them", () => {
  const opening = (text: string) => readRole(`ventilated cavity ${text}`, "row 2");
  const of = (mm2: number) => ({ kind: "ventilated cavity", openingMm2M: expect.closeTo(mm2, 6) });
  expect(opening("1/300")).toEqual(of(1e6 / 300));
  expect(opening("1/150")).toEqual(of(1e6 / 150));
  expect(opening("2 in2/ft2")).toEqual(of((2 * 25.4 ** 2) / 0.3048 ** 2));
  expect(opening("800 mm2/m2")).toEqual(of(800));
  expect(() => opening("1/0")).toThrow(/role/);
  // 1/300 is 3333 mm2 per m2: well ventilated, so that cavity and roofing drop out.
  const roof = [
    ["panel", 3],
    ["mineral wool board", 8],
    ["air gap", 1.5, null, null, "ventilated cavity 1/300"],
    ["standing seam"],
  ];
  expect(value("R_STACK", roof, "roof")).toBeCloseTo(0.61 + 3 / 0.9712 + 8 / 0.2496 + 0.61, 1);
});

describe("dew point at a face", () => {
  const studWall: RawArgument = [
    ["gypsum board", 0.5],
    ["glass fiber batt", 5.5],
    ["osb", 0.5],
  ];

  test("ice behind the sheathing of a stud wall in the cold, by diffusion and by air", () => {
    expect(value("DEW_LAYER", studWall, 70, 40, "0 F")).toBe("row 2, glass fiber batt | osb: ice");
    expect(value("DEW_LAYER", studWall, 70, 40, "0 F", null, "air")).toBe("row 2, glass fiber batt | osb: ice");
    expect(value("DEW_LAYER", studWall, 70, 40, 40, null, "air")).toBe("row 2, glass fiber batt | osb: water");
  });

  test("indoor air goes no further than the air barrier", () => {
    const outsulated: RawArgument = [
      ["panel", 1.5, null, null, null],
      ["wrb", null, null, null, "air barrier"],
      ["mineral wool board", 6, null, null, null],
    ];
    expect(value("DEW_LAYER", outsulated, 70, 40, "0 F", null, "air")).toBe("none");
    const working = explain(named("DEW_LAYER"), [studWall, 70, 40, "0 F", null, "air"]);
    expect(working.cautions.join()).toContain("No layer is marked as the air barrier");
  });

  test("the pictures say in words what they show", () => {
    const profile = explain(named("DEW_PROFILE"), [studWall, 70, 40, "0 F"]);
    expect(profile.pictures[0]?.kind).toBe("wall-section");
    expect(profile.pictures[0]?.alt).toContain("Wet at: glass fiber batt | osb");
    const year = explain(named("DEW_MONTHS"), [studWall, "Burlington VT", [["heated", 70, 40]]]);
    expect(year.pictures[0]?.kind).toBe("wetting-year");
    expect(year.pictures[0]?.alt).toContain("above the limit");
  });
});

describe("vapor retarders", () => {
  test("classes end at 0.1, 1 and 10 perm", () => {
    expect([0, 0.1, 0.11, 1, 1.01, 10, 10.1].map((p) => retarderClass(p))).toEqual([
      "I",
      "I",
      "II",
      "II",
      "III",
      "III",
      "none",
    ]);
  });

  test("class III wants insulation or vented cladding in the cold, and class I is barred in the south from 2021", () => {
    const wall = { stud: "2x4", outsideR: 0, ventedCladding: false, sheathing: "wood panel" } as const;
    const allowed = (zone: string, w: Parameters<typeof retarderRule>[1], edition: "2018" | "2021") =>
      Object.fromEntries(retarderRule(readZone(zone), w, edition).map((r) => [r.cls, r.allowed]));
    expect(allowed("6A", wall, "2021")).toEqual({ I: true, II: true, variable: true, III: false, none: false });
    expect(allowed("6A", { ...wall, outsideR: 7.5 }, "2021")).toMatchObject({ II: true, III: true, none: false });
    expect(allowed("6A", { ...wall, ventedCladding: true }, "2021").III).toBe(false);
    expect(allowed("6A", { ...wall, ventedCladding: true, sheathing: "gypsum" }, "2021").III).toBe(true);
    expect(allowed("5A", { ...wall, ventedCladding: true }, "2021").III).toBe(true);
    expect(allowed("2A", wall, "2021")).toEqual({ I: false, II: false, variable: true, III: true, none: true });
    expect(allowed("3A", wall, "2021")).toEqual({ I: false, II: true, variable: true, III: true, none: true });
    // Zone 4 that is not marine is not among the exceptions: a class II or III retarder is wanted there.
    expect(allowed("4A", wall, "2021")).toEqual({ I: false, II: true, variable: true, III: true, none: false });
    expect(allowed("2A", wall, "2018")).toEqual({ I: true, II: true, III: true, none: true });
  });
});
