import fc from "fast-check";
import { expect, test } from "vitest";
import { sunDriven } from "../../../src/core/enclosure/moisture/sun-driven.ts";
import { cautions, says, working } from "./called.ts";

const WALL = [
  ["gypsum board", 0.5],
  ["plywood", 3.75],
  ["mineral wool board", 6],
];
const VENTED = [...WALL, ["ventilated cavity", 0.75, null, null, "ventilated cavity"]];
const zoneRow = (zone: string) => [
  ["Basis", ""],
  ["climate zone", zone],
];

test("how tight the inside may be goes by zone: open in the south, no class I in the middle, a warning in the north", () => {
  const text = (number: number, regime: "A" | "B" | "C" | "") => sunDriven({ number, regime });
  for (const n of [1, 2, 3]) expect(text(n, "A")).toMatch(/most of the year.*nothing tighter than class III/);
  for (const n of [4, 5]) expect(text(n, "A")).toMatch(/warm months.*no class I stand inside/);
  for (const n of [6, 7, 8]) expect(text(n, "")).toMatch(/warmest weeks.*outer face gets wet/);
  for (const n of [2, 4, 6]) expect(text(n, "B")).toMatch(/after rain or watering/);
  expect(text(4, "C")).toMatch(/^Zone 4C: in the warm months/);
});

test("each zone has a sentence that names it and says that it has no source", () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 8 }), fc.constantFrom("A", "B", "C", ""), (number, regime) => {
      const text = sunDriven({ number, regime: regime as "A" });
      expect(text).toContain(`Zone ${number}${regime}:`);
      expect(text).toContain("common practice, no source");
    }),
  );
});

test("DEW_LAYER and DEW_PROFILE caution by the zone, whichever side is warm", () => {
  for (const name of ["DEW_LAYER", "DEW_PROFILE"]) {
    expect(cautions(name, WALL, 70, 40, 20, null, zoneRow("2A"))).toMatch(/Zone 2A: for most of the year/);
    expect(cautions(name, WALL, 70, 40, 20, null)).not.toMatch(/sun on a/);
    expect(cautions(name, WALL, 75, 50, 95, 70)).toMatch(/driven inward.*A row Climate zone says more/);
    // 74 F and 90 % hold more vapor than 75 F and 50 %, though it is cooler out.
    expect(cautions(name, WALL, 75, 50, 74, 90)).toMatch(/driven inward/);
    expect(cautions(name, WALL, 75, 50, 74, 45)).not.toMatch(/driven inward/);
  }
  const county = [
    ["Basis", ""],
    ["county", "Tompkins"],
    ["state", "NY"],
  ];
  expect(cautions("DEW_LAYER", WALL, 70, 40, 20, null, county)).toMatch(/Zone 5A: in the warm months/);
});

test("a ventilated cavity takes the caution away, and the working says so", () => {
  const { cautions: warned, assumptions } = working("DEW_LAYER", VENTED, 70, 40, 20, null, zoneRow("2A"));
  expect(warned.join()).not.toMatch(/the sun on a/);
  expect(assumptions.join()).toMatch(/leaves by the ventilated cavity/);
});

test("DEW_MONTHS and DEW_WOOD go by the zone of the station; rows of months have none", () => {
  const months = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"].map((m) => [
    m,
    60,
    50,
  ]);
  for (const name of ["DEW_MONTHS", "DEW_WOOD"]) {
    expect(cautions(name, WALL, "Miami FL", "air conditioned")).toMatch(/Zone 1A: for most of the year/);
    expect(cautions(name, WALL, "Burlington VT", "class 2")).toMatch(/Zone 5A: in the warm months/);
    expect(cautions(name, VENTED, "Burlington VT", "class 2")).not.toMatch(/the sun on a/);
    expect(cautions(name, WALL, months, "45%")).not.toMatch(/the sun on a/);
  }
});

test("RETARDER_RULE cautions by its zone unless the cladding is vented", () => {
  expect(cautions("RETARDER_RULE", 0, "wood panel", "4A")).toMatch(/Zone 4A: in the warm months/);
  expect(cautions("RETARDER_RULE", 0, "wood panel", "4A", null, "vented")).not.toMatch(/the sun on a/);
});

test("DEW_LAYER looks from outside in where it is warmer outdoors: polyethylene inside gathers water on its outer face", () => {
  const poly = [
    ["gypsum board", 0.5],
    ["polyethylene sheet", null],
    ["fiberglass batt", 3.5],
    ["plywood", 0.5],
  ];
  const wet = working("DEW_LAYER", poly, 70, 50, 95, 80).outcome;
  expect(wet).toMatchObject({
    ok: true,
    value: expect.stringMatching(/^row 2, .*polyethylene.*fiberglass batt: water$/),
  });
  expect(says("DEW_LAYER", poly, 70, 50, 95)).toMatch(/Outdoor humidity is missing/);
});
