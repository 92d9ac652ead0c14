import { expect, test } from "vitest";
import { type BeadSection, beadCoverageFt, beadSectionIn2 } from "../../src/core/takeoff/bead.ts";
import { halfLastDigit, rows } from "./rows.ts";

function sectionOf(widthIn: string, depthIn: string): BeadSection {
  // Without a bead size the row is about the volume: a section of 1 in2 fills V / 12 ft.
  if (widthIn === "") return { kind: "joint", widthIn: 1, depthIn: 1 };
  if (depthIn === "") return { kind: "round", diameterIn: Number(widthIn) };
  return { kind: "joint", widthIn: Number(widthIn), depthIn: Number(depthIn) };
}

test.each(
  rows("takeoff-sealant.csv").map((r) => [`${r.flOz} fl oz, ${r.widthIn} x ${r.depthIn} in: ${r.source}`, r] as const),
)("%s", (_name, row) => {
  const { flOz = "", widthIn = "", depthIn = "", printed = "", disagrees = "" } = row;
  const section = sectionOf(widthIn, depthIn);
  const coverageFt = beadCoverageFt(Number(flOz), section);
  const got = row.unit === "in3" ? coverageFt * 12 * beadSectionIn2(section) : coverageFt;
  const miss = got - Number(printed) - Number(disagrees || 0);
  expect(Math.abs(miss)).toBeLessThanOrEqual(halfLastDigit(disagrees || printed) * (1 + 1e-9));
});
