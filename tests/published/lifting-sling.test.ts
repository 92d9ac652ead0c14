import { expect, test } from "vitest";
import { liftSling } from "../../src/core/lifting/sling.ts";
import { halfLastDigit, rows } from "./rows.ts";

type Row = Readonly<Record<string, string>>;

/** A leg of two alike that stands at an angle, or by its rise and length. */
function twoLegs(row: Row, weightLb: number) {
  const angle = (Number(row.angle_deg) * Math.PI) / 180;
  const byLength = row.leg !== "";
  const riseFt = byLength ? Number(row.rise) : 10 * Math.sin(angle);
  const reachFt = byLength ? Math.sqrt(Number(row.leg) ** 2 - riseFt ** 2) : 10 * Math.cos(angle);
  // Legs that stand plumb are 2 ft apart and so long that the angle is 90 degrees to the last digit.
  const apart = reachFt < 1e-9 ? 1e-2 : reachFt;
  const rise = reachFt < 1e-9 ? 1e4 : riseFt;
  const picks = [-1, 1].map((side) => ({ pick: `leg ${side}`, xFt: side * apart, yFt: 0, zFt: 0 }));
  return liftSling(weightLb, picks, rise, { xFt: 0, yFt: 0 }, 1).leastRatingLb;
}

function answer(row: Row): number {
  const weightLb = Number(row.weight_lb);
  if (row.quantity === "tension factor") return twoLegs(row, weightLb);
  // A sling rated for `weight_lb` holds that over the tension of a leg with a share of 1.
  if (row.quantity === "capacity") return weightLb / twoLegs(row, 2);
  return twoLegs(row, weightLb);
}

test.each(
  rows("lifting-sling.csv").map(
    (r) => [`${r.quantity} ${r.angle_deg} ${r.weight_lb} ${r.status}: ${r.source}`, r] as const,
  ),
)("%s", (_name, row) => {
  const { printed = "", disagrees = "" } = row;
  if (row.quantity === "refused") {
    expect(() => answer(row)).toThrow("are not used");
    return;
  }
  const miss = Math.abs(answer(row) - Number(printed));
  if (disagrees === "") expect(miss).toBeLessThanOrEqual(halfLastDigit(printed) * (1 + 1e-9));
  else {
    expect(miss).toBeGreaterThan(halfLastDigit(printed));
    expect(miss).toBeLessThanOrEqual(Number(disagrees));
  }
});
