import { expect, test } from "vitest";
import { normalShare } from "../../src/core/cost/normal.ts";
import { marginOfMarkup, markupOfMargin, priceByMargin, priceByMarkup } from "../../src/core/cost/price.ts";
import { rangeMoments } from "../../src/core/cost/range.ts";
import { halfLastDigit, rows } from "./rows.ts";

type Row = Readonly<Record<string, string>>;

function expectRow(row: Row, got: number): void {
  const { printed = "", disagrees = "" } = row;
  const miss = Math.abs(got - Number(printed));
  if (disagrees === "") expect(miss).toBeLessThanOrEqual(halfLastDigit(printed) * (1 + 1e-9));
  else {
    expect(miss).toBeGreaterThan(halfLastDigit(printed));
    expect(miss).toBeLessThanOrEqual(Number(disagrees));
  }
}

const PRICES: Readonly<Record<string, (cost: number, share: number) => number>> = {
  "markup of margin": (_cost, share) => markupOfMargin(share) * 100,
  "margin of markup": (_cost, share) => marginOfMarkup(share) * 100,
  "price by margin": (cost, share) => priceByMargin(cost, share),
  "price by markup": (cost, share) => priceByMarkup(cost, share),
};

test.each(rows("cost-price.csv").map((r) => [`${r.quantity} ${r.cost} ${r.share}: ${r.source}`, r] as const))(
  "%s",
  (_name, row) => {
    expectRow(row, PRICES[row.quantity ?? ""]?.(Number(row.cost), Number(row.share)) ?? Number.NaN);
  },
);

test.each(
  rows("cost-range.csv").map(
    (r) => [`${r.quantity} ${r.activity} ${r.low} ${r.likely} ${r.high}: ${r.source}`, r] as const,
  ),
)("%s", (_name, row) => {
  const [low, likely, high] = [Number(row.low), Number(row.likely), Number(row.high)];
  if (row.quantity === "normal share") expectRow(row, normalShare((likely - low) / Math.sqrt(high)));
  else {
    const moments = rangeMoments({ low, likely, high }, "beta");
    expectRow(row, row.quantity === "mean" ? moments.mean : moments.deviation);
  }
});
