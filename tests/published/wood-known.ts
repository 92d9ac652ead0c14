import { expect } from "vitest";
import type { Duration } from "../../src/core/kit/load-duration.ts";
import type { Member } from "../../src/core/wood/adjust.ts";
import type { ValueName, Wood, WoodKind } from "../../src/core/wood/material.ts";
import type { Section } from "../../src/core/wood/section.ts";
import type { Use } from "../../src/core/wood/use.ts";
import { halfLastDigit, type Row } from "./rows.ts";

export function actual(breadthIn: number, depthIn: number, plies = 1): Section {
  return { name: `${breadthIn} x ${depthIn}`, plies, plyIn: breadthIn, depthIn, nominal: undefined };
}

export function own(values: Partial<Record<ValueName, number>>, kind: WoodKind = "sawn"): Wood {
  return { material: "own", kind, values, gravity: undefined, sized: true, grade: undefined, source: "given" };
}

export function asd(duration: Duration, wet = false): Use {
  return { method: "allowable", duration, wet, edition: "2018" };
}

export function member(section: Section, wood: Wood, use: Use, repetitive = false): Member {
  return { section, wood, use, repetitive };
}

/** Emin for which 0.822 Emin is the older 0.3 E. */
export const oldForm = (e: number) => (0.3 * e) / 0.822;

/**
 * Within half of the last printed digit; where the source cut its digits, less than one digit above; where print and
 * formula disagree, outside the half digit and inside the miss that the row states.
 */
export function expectPrint(got: number, row: Row): void {
  const printed = row.printed ?? "";
  const half = halfLastDigit(printed) * (1 + 1e-6);
  const miss = got - Number(printed);
  if (row.disagrees !== undefined && row.disagrees !== "") {
    expect(Math.abs(miss)).toBeGreaterThan(half);
    expect(Math.abs(miss)).toBeLessThanOrEqual(Number(row.disagrees));
  } else if (row.cut === "yes") {
    expect(miss).toBeGreaterThanOrEqual(0);
    expect(miss).toBeLessThan(2 * half);
  } else expect(Math.abs(miss)).toBeLessThanOrEqual(half);
}
