import { expect, test } from "vitest";
import { LOAD_DURATIONS, loadDurationFactor, timeEffectFactor } from "../../../src/core/kit/load-duration.ts";
import {
  ADDING_DEAD,
  atDesignLevel,
  RESISTING_DEAD,
  windLevelFactor,
  windLevelText,
} from "../../../src/core/kit/load-level.ts";
import { BadInput } from "../../../src/core/kit/refusal.ts";
import { Tape } from "../../../src/core/kit/tape.ts";

test("CD and lambda by word (NDS Table 2.3.2 and N.3.3, from memory)", () => {
  expect(LOAD_DURATIONS.map(loadDurationFactor)).toEqual([0.9, 1, 1.15, 1.25, 1.6, 1.6, 2]);
  expect(LOAD_DURATIONS.map(timeEffectFactor)).toEqual([0.6, 0.8, 0.8, 0.8, 1, 1, 1.25]);
  expect(loadDurationFactor(1.33)).toBe(1.33);
  expect(() => timeEffectFactor(1.6)).toThrow(/load duration is given as the factor 1.6/);
});

const at = (
  method: "strength" | "allowable",
  level: "strength" | "allowable" | undefined,
  duration: Parameters<typeof loadDurationFactor>[0] | undefined,
) => atDesignLevel("The shear", 1000, "lb", { method, level, duration });

test("wind goes by 0.6, earthquake by 0.7, both ways", () => {
  expect(at("allowable", "strength", "wind")).toBe(600);
  expect(at("allowable", "strength", undefined)).toBe(600);
  expect(at("allowable", "strength", "seismic")).toBe(700);
  expect(at("strength", "allowable", "wind")).toBeCloseTo(1666.667, 3);
  expect(at("strength", "allowable", "seismic")).toBeCloseTo(1428.571, 3);
  expect(at("strength", "strength", "wind")).toBe(1000);
  expect(at("allowable", "allowable", 1.6)).toBe(1000);
});

test("a wind or seismic force without a level is refused, a gravity force is taken as it is", () => {
  for (const duration of ["wind", "seismic", undefined, 1.6] as const)
    expect(() => at("allowable", undefined, duration)).toThrow(/load level is missing/);
  for (const duration of ["snow", "live", 1.15] as const) expect(at("allowable", undefined, duration)).toBe(1000);
});

test("no single factor converts a snow load or a bare CD", () => {
  for (const duration of ["snow", 1.6, 1.59] as const)
    expect(() => at("allowable", "strength", duration)).toThrow(BadInput);
  expect(at("allowable", "allowable", "snow")).toBe(1000);
});

test("the conversion is a step", () => {
  const tape = new Tape();
  atDesignLevel("The shear", 1000, "lb", { method: "allowable", level: "strength", duration: "wind" }, tape);
  expect(tape.steps).toEqual([
    { symbol: "F", expression: "the shear 1000 times 0.6", value: 600, unit: "lb", clause: "ASCE/SEI 7 section 2.4" },
  ]);
  const other = new Tape();
  atDesignLevel("The shear", 600, "lb", { method: "strength", level: "allowable", duration: "wind" }, other);
  expect(other.steps[0]?.expression).toBe("the shear 600 divided by 0.6");
});

// ASCE/SEI 7 sections 2.3.1 and 2.4.1: 0.9 D + 1.0 W and 1.2 D + 1.0 W; 0.6 D + 0.6 W and D + 0.6 W.
test("the factors of wind and dead load at both levels", () => {
  expect([windLevelFactor("strength"), windLevelFactor("allowable")]).toEqual([1, 0.6]);
  expect([windLevelText("strength"), windLevelText("allowable")]).toEqual(["", ", times 0.6 for the allowable level"]);
  expect([RESISTING_DEAD, ADDING_DEAD]).toEqual([
    { strength: 0.9, allowable: 0.6 },
    { strength: 1.2, allowable: 1 },
  ]);
});
