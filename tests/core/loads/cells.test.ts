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
  const { cautions, assumptions } = explain(fn, args as never);
  return {
    value: outcome.ok ? outcome.value : sentence(outcome.said),
    table: outcome.ok ? (outcome.value as Table) : [],
    cautions: cautions.join(" "),
    assumptions: assumptions.join(" "),
  };
}

test("garages stay whole, roofs take the roof's rule by their name", () => {
  expect(call("LOAD_LIVE", "garages", 600).value).toBe(50);
  expect(call("LOAD_LIVE", "roof", 1000).value).toBe(12);
  expect(call("LOAD_LIVE", "roof", 400, null, null, "6:12").value).toBeCloseTo(14.4, 9);
  expect(call("LOAD_LIVE", "rooms", 400, null, null, "6:12").value).toMatch(/slope is given for a floor/);
  expect(call("LOAD_LIVE", 125, 5000, "interior column", 2).value).toBeCloseTo(100, 9);
  expect(call("LOAD_LIVE", "guards", 10).value).toMatch(/200 lb/);
});

const SNOW = [
  ["Basis", "Value"],
  ["ground snow", 40],
  ["roof slope", "6:12"],
  ["building width", 30],
  ["thermal factor", 1.2],
  ["winter wind", 0.4],
];

test("snow asks for Ct in 7-22, knows the roof's shape and that steep roofs hold none", () => {
  const without = SNOW.filter(([name]) => name !== "thermal factor");
  expect(call("LOAD_SNOW", without).value).toMatch(/Ct is missing.*1\.2 for a ventilated roof.*1\.17/);
  const older = call("LOAD_SNOW", [...without, ["ASCE 7 edition", "7-16"]]);
  expect(older.table.length).toBeGreaterThan(6);
  expect(older.assumptions).toMatch(/Ct 1: a heated roof.*level of the ground snow map/);
  expect(call("LOAD_SNOW", SNOW).assumptions).toMatch(/strength level/);
  const rows = (shape: string) => call("LOAD_SNOW", [...SNOW, ["roof shape", shape]]).table.map((r) => String(r[0]));
  expect(rows("gable").some((r) => r.startsWith("unbalanced"))).toBe(true);
  expect(rows("hip").some((r) => r.startsWith("unbalanced"))).toBe(true);
  expect(rows("monoslope").some((r) => r.startsWith("unbalanced"))).toBe(false);
  const steep = call("LOAD_SNOW", 40, "75 deg", SNOW).table;
  expect(steep.slice(1).map((r) => r[1])).toEqual([0, 0, 0, 0, 0]);
});

test("a drift makes the balanced load of its roof, the sloped one and not the least", () => {
  const site = [
    ["Basis", "Value"],
    ["ground snow", 25],
    ["ASCE 7 edition", "7-16"],
  ];
  const made = call("LOAD_SNOWDRIFT", 4, 40, 40, site).table;
  expect(made).toEqual(call("LOAD_SNOWDRIFT", 4, 40, 40, 17.5, site).table);
});

test("load combinations take a table with words, and name what is wrong in it", () => {
  const loads = [
    ["load", "psf"],
    ["dead", 14],
    ["snow", 35],
    ["wind", -20],
    ["wind", 12],
  ];
  const rows = call("LOAD_COMBINE", loads).table;
  expect(rows[2]).toEqual(["smallest", "7a", "0.6 D + 0.6 W case 1", 0.6 * 14 - 12]);
  expect(call("LOAD_COMBINE", loads.slice(2)).value).toMatch(/dead load is missing/);
  const strength = [
    ["Basis", ""],
    ["design method", "strength"],
    ["wind level", "allowable"],
  ];
  expect(call("LOAD_COMBINE", loads, strength).value).toMatch(/allowable level/);
});

test("dead loads read the weight in column ten or under its heading", () => {
  expect(call("LOAD_DEAD", [["panel", 3, null, null, null, null, null, null, null, "36 pcf"]]).value).toBeCloseTo(9, 9);
  const headed = [
    ["material", "weight"],
    ["own board", 2.5],
  ];
  expect(call("LOAD_DEAD", headed).value).toBe(2.5);
});
