import { expect, test } from "vitest";
import { sentence } from "../../../src/core/kit/refusal.ts";
import type { Table } from "../../../src/core/kit/tape.ts";
import { functionNamed } from "../../../src/functions/registry.ts";
import { explain, invoke } from "../../../src/functions/run/invoke.ts";

// What a builder types into cells, and what the cell then says.

function call(name: string, ...args: unknown[]) {
  const fn = functionNamed(name);
  if (fn === undefined) throw new Error(`no ${name}`);
  const outcome = invoke(fn, args as never);
  const { cautions, assumptions, steps } = explain(fn, args as never);
  return {
    value: outcome.ok ? outcome.value : sentence(outcome.said),
    table: outcome.ok ? (outcome.value as Table) : [],
    cautions: cautions.join(" "),
    assumptions: assumptions.join(" "),
    steps,
  };
}

const SITE: readonly (readonly [string, string | number])[] = [
  ["Basis", "Value"],
  ["wind speed", 120],
  ["exposure", "C"],
  ["building width", 40],
  ["building length", 60],
  ["eave height", 10],
  ["roof slope", "6:12"],
];
const changed = (term: string, value: string | number) => [...SITE.filter(([t]) => t !== term), [term, value]];

test("q and the mean roof height are made, shown as steps, and a height given besides is held against them", () => {
  const made = call("WIND_CLADDING", "wall", 5, 32, SITE);
  expect(made.steps.find((s) => s.symbol === "h")?.value).toBe(15);
  expect(made.steps.some((s) => s.symbol === "q")).toBe(true);
  expect(call("WIND_CLADDING", "wall", 5, 32, [...SITE, ["mean roof height", 15.4]]).cautions).not.toMatch(/make 15/);
  expect(call("WIND_CLADDING", "wall", 5, 32, [...SITE, ["mean roof height", 20]]).cautions).toMatch(/make 15\.0 ft/);
  expect(call("WIND_EDGE", SITE).value).toBe(4);
  expect(call("WIND_EDGE", changed("roof slope", "1:12")).steps.find((s) => s.symbol === "h")?.value).toBe(10);
});

test("a bare q says of which edition it is taken, and is held against the site where that is known", () => {
  const bare = (q: number, ...more: (readonly [string, string | number])[]) =>
    call("WIND_CLADDING", "wall", 5, 32, "6:12", null, null, q, null, [
      ["Basis", ""],
      ["enclosure", "enclosed"],
      ...more,
    ]);
  expect(bare(25).cautions).toMatch(/7-22, without Kd/);
  expect(bare(25, ["ASCE 7 edition", "7-16"]).cautions).toMatch(/7-16, with Kd/);
  const q = call("WIND_PRESSURE", SITE).value as number;
  const beside = (given: number) => call("WIND_CLADDING", "wall", 5, 32, null, null, null, given, null, SITE).cautions;
  expect(beside(q)).not.toMatch(/velocity pressure given/);
  expect(beside(q * 1.019)).not.toMatch(/velocity pressure given/);
  expect(beside(q * 0.85)).toMatch(/is it of the same edition/);
});

test("what is missing is asked for by its term", () => {
  const without = (term: string) => SITE.filter(([t]) => t !== term);
  expect(call("WIND_CLADDING", "wall", 5, 32, without("wind speed")).value).toMatch(/Wind speed is missing/);
  expect(call("WIND_CLADDING", "wall", 5, 32, without("exposure")).value).toMatch(/Exposure is missing/);
  expect(call("WIND_CLADDING", "wall", 5, 32, without("eave height")).value).toMatch(/Mean roof height is missing/);
  expect(call("WIND_FRAME", null, without("building length")).value).toMatch(/Building length is missing/);
  expect(call("WIND_FRAME", null, without("roof slope")).value).toMatch(/missing/);
  expect(call("WIND_CLADDING", "parapet", 5, 32, SITE).value).toMatch(/WIND_PARAPET/);
});

test("roof and overhang stand for the basis's shape", () => {
  const hip = changed("roof shape", "hip");
  expect(call("WIND_CLADDING", "roof", 2, 20, hip).table).toEqual(call("WIND_CLADDING", "hip", 2, 20, SITE).table);
  expect(call("WIND_CLADDING", "overhang", 2, 20, SITE).table).toEqual(
    call("WIND_CLADDING", "gable overhang", 2, 20, SITE).table,
  );
});

test("Kd of the basis reaches the pressures of 7-22 and q of 7-16", () => {
  const away = (...more: (readonly [string, string | number])[]) =>
    Number(call("WIND_CLADDING", "gable", 3, 10, [...SITE, ...more]).table[0]?.[1]);
  expect(away(["directionality factor", 0.9]) / away()).toBeCloseTo(0.9 / 0.85, 9);
  const force = (...more: (readonly [string, string | number])[]) =>
    Number(call("WIND_BASESHEAR", null, [...SITE, ["ASCE 7 edition", "7-16"], ...more]).table[1]?.[1]);
  expect(force(["directionality factor", 0.9]) / force()).toBeCloseTo(0.9 / 0.85, 9);
});

test("forces name their level, and an open building has none", () => {
  expect(call("WIND_BASESHEAR", null, SITE).table[1]?.at(-1)).toBe("strength");
  expect(call("WIND_UPLIFT", 10, 20, [...SITE, ["wind level", "allowable"]]).table[1]?.at(-1)).toBe("allowable");
  expect(call("WIND_BASESHEAR", null, [...SITE, ["enclosure", "open"]]).value).toMatch(/open/);
});

test("hips lift more than gables of the same house by their ends", () => {
  const wind = (shape: string) => Number(call("WIND_UPLIFT", 10, 20, [...SITE, ["roof shape", shape]]).table[1]?.[1]);
  expect(wind("hip")).toBeGreaterThanOrEqual(wind("gable"));
});

test("a roof figure that is not held asks for its table of zones, and takes it", () => {
  const older = changed("ASCE 7 edition", "7-16");
  expect(call("WIND_CLADDING_SCHEDULE", older).value).toMatch(/coefficients: zone, area, toward, away/);
  const zones = [
    ["zone", "area", "toward", "away"],
    ["2n", 10, 0.5, -2.5],
    ["2n", 100, 0.3, -1.5],
  ];
  const rows = call("WIND_CLADDING_SCHEDULE", null, null, null, null, null, null, zones, older).table;
  expect(rows.filter((r) => r[1] === "2n")).toHaveLength(4);
  const low = call("WIND_CLADDING_SCHEDULE", changed("roof slope", "2 deg"));
  expect(low.table.filter((r) => r[0] === "gable").map((r) => r[1])).toContain("1'");
});

test("a parapet's frame pressures are 1.5 and -1.0 of q at its top with Kd, its cladding sums hold the least", () => {
  const rows = call("WIND_PARAPET", 20, 10, changed("roof slope", "1 deg")).table.slice(1);
  const q = call("WIND_PRESSURE", null, 20, null, "cladding", SITE).value as number;
  expect(rows.map((r) => r.slice(1))).toEqual([
    [expect.closeTo(1.5 * 0.85 * q, 9), 0],
    [0, expect.closeTo(-0.85 * q, 9)],
    [expect.closeTo((1 + 3.2) * 0.85 * q, 9), 0],
    [0, expect.closeTo(-(1 + 1.4) * 0.85 * q, 9)],
  ]);
  const edge = call("WIND_PARAPET", 20, 10, "edge", changed("roof slope", "1 deg")).table.slice(1);
  expect(edge[2]?.[1]).toBeCloseTo((1 + 2.3) * 0.85 * q, 9);
  expect(edge[3]?.[2]).toBeCloseTo(-(1 + 1.1) * 0.85 * q, 9);
  const light = call("WIND_PARAPET", 20, 10, "edge", [
    ...changed("roof slope", "1 deg").filter(([t]) => t !== "wind speed"),
    ["wind speed", 40],
    ["wind level", "allowable"],
  ]);
  expect(light.table.at(-1)?.[2]).toBeCloseTo(-9.6, 9);
});
