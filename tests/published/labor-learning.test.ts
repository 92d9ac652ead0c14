import { expect, test } from "vitest";
import { type CurveKind, curveSlope, learningHours, unitHours } from "../../src/core/labor/learning.ts";
import { halfLastDigit, rows } from "./rows.ts";

type Row = Readonly<Record<string, string>>;

function answer(row: Row): number {
  const { kind = "", quantity = "" } = row;
  const [rate, first, count] = [Number(row.rate), Number(row.first), Number(row.count)];
  const total = (n: number) => learningHours(first, n, rate, kind as CurveKind);
  if (quantity.startsWith("unit")) return unitHours(first, count, curveSlope(rate), kind as CurveKind);
  if (quantity === "cumulative average") return total(count) / count;
  if (quantity.startsWith("total")) return total(count);
  const increment = total(count) - total(count / 2);
  return quantity === "increment average" ? increment / (count / 2) : increment;
}

test.each(
  rows("labor-learning.csv").map(
    (r) => [`${r.kind} ${r.rate}, ${r.count}: ${r.quantity} (${r.status}) ${r.source}`, r] as const,
  ),
)("%s", (_name, row) => {
  const { printed = "", disagrees = "" } = row;
  const miss = Math.abs(answer(row) - Number(printed));
  if (disagrees === "") expect(miss).toBeLessThanOrEqual(halfLastDigit(printed) * (1 + 1e-9));
  else {
    expect(miss).toBeGreaterThan(halfLastDigit(printed));
    expect(miss).toBeLessThanOrEqual(Number(disagrees));
  }
});
