import { expect, test } from "vitest";
import { type BeadSection, beadCoverageFt, beadSectionIn2 } from "../../src/core/takeoff/bead.ts";
import { rows } from "./rows.ts";

function sectionOf(widthIn: string, depthIn: string): BeadSection {
  // Without a bead size the row is about the volume: a section of 1 in2 fills V / 12 ft.
  if (widthIn === "") return { kind: "joint", widthIn: 1, depthIn: 1 };
  if (depthIn === "") return { kind: "round", diameterIn: Number(widthIn) };
  return { kind: "joint", widthIn: Number(widthIn), depthIn: Number(depthIn) };
}

test.each(
  rows("takeoff-sealant.csv").map((r) => [`${r.flOz} fl oz, ${r.widthIn} x ${r.depthIn} in: ${r.source}`, r] as const),
)("%s", (_name, row) => {
  const { flOz = "", widthIn = "", depthIn = "", printed = "", within = "", disagrees = "" } = row;
  const section = sectionOf(widthIn, depthIn);
  const coverageFt = beadCoverageFt(Number(flOz), section);
  const volumeIn3 = coverageFt * 12 * beadSectionIn2(section);
  if (disagrees === "yes") {
    const neededIn3 = Number(printed) * 12 * beadSectionIn2(section);
    expect(neededIn3, "the printed run would need more sealant than the cartridge holds").toBeGreaterThan(
      volumeIn3 * 1.9,
    );
    return;
  }
  const got = row.unit === "in3" ? volumeIn3 : coverageFt;
  expect(Math.abs(got - Number(printed))).toBeLessThanOrEqual(Number(within) * (1 + 1e-9));
});
