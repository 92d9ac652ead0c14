import { describe, expect, test } from "vitest";
import { woodWeightPcf } from "../../src/core/wood/moisture/moist-weight.ts";
import { equilibriumMoisturePct } from "../../src/core/wood/moisture/moisture.ts";
import { type ShrinkDirection, woodShrinkIn } from "../../src/core/wood/moisture/shrink.ts";
import { SHRINKAGE, type Shrinkage } from "../../src/core/wood/tables/shrinkage.ts";
import { halfLastDigit, offAsKnown, rows } from "./rows.ts";

const close = (got: number, printed: string) =>
  expect(Math.abs(got - Number(printed))).toBeLessThanOrEqual(halfLastDigit(printed) * (1 + 1e-9));

describe("moisture content in balance with air, Wood Handbook Table 4-2", () => {
  test.each(rows("wood-moisture.csv").map((r) => [`${r.temp_F} F, ${r.rh} %`, r] as const))("%s", (_name, r) => {
    const got = equilibriumMoisturePct(Number(r.temp_F), Number(r.rh));
    if (r.disagrees === "") close(got, r.printed ?? "");
    else expect(offAsKnown(got, r, halfLastDigit(r.printed ?? ""))).toBe(true);
  });
});

describe("weight of wood", () => {
  test.each(rows("wood-weight.csv").map((r) => [r.species, r] as const))("%s", (_name, r) => {
    close(woodWeightPcf(Number(r.gravity), Number(r.moisture)), r.printed ?? "");
  });
});

test.each(rows("wood-shrink.csv").map((r) => [r.direction, r] as const))("lumber shrinks in %s", (_name, r) => {
  const any = SHRINKAGE[0] as Shrinkage;
  const changeIn = woodShrinkIn(100, any, Number(r.from), Number(r.to), r.direction as ShrinkDirection);
  if (r.disagrees === "") close(-changeIn, r.printed ?? "");
  else expect(offAsKnown(-changeIn, r, halfLastDigit(r.printed ?? ""))).toBe(true);
});

describe("shrinkage from green to ovendry, Wood Handbook Table 4-3", () => {
  const printed = rows("wood-shrinkage.csv");
  test.each(printed.map((r) => [r.wood, r] as const))("%s", (_name, r) => {
    const held = SHRINKAGE.find((s) => s.wood === r.wood) as Shrinkage;
    expect([held.radialPct, held.tangentialPct]).toEqual([Number(r.radial), Number(r.tangential)]);
    expect(held.known === "memory").toBe((r.source ?? "").includes("FROM MEMORY"));
  });
  test("no wood is held that is not listed", () => expect(SHRINKAGE.length).toBe(printed.length));
});
