import { test } from "vitest";
import type { Exposure } from "../../src/core/wind/tables/terrain.ts";
import type { HillShape } from "../../src/core/wind/tables/topography.ts";
import { type HillSite, speedUp } from "../../src/core/wind/topographic-factor.ts";
import { rows } from "./rows.ts";
import { expectPrinted } from "./wind-known.ts";

/** Half the length of every hill here, ft. */
const LH = 1000;

/** The site of a row: the ratio of the row in its place, the rest at the crest. */
function site(multiplier: string, shape: string, exposure: string, ratio: number): HillSite {
  const words: Readonly<Record<string, HillShape>> = { axisym: "hill", "escarpment downwind": "escarpment" };
  return {
    shape: words[shape] ?? (shape === "all other cases" ? "ridge" : (shape as HillShape)),
    hillFt: multiplier === "K1" ? ratio * LH : 0.5 * LH,
    halfLengthFt: LH,
    distanceFt: multiplier === "K2" ? ratio * LH : 0,
    side: "downwind",
    heightFt: multiplier === "K3" ? ratio * LH : 0,
    exposure: exposure === "-" ? "C" : (exposure as Exposure),
    edition: "7-22",
  };
}

test.each(
  rows("wind-topography.csv").map((r) => [`${r.multiplier} ${r.shape} ${r.exposure} at ${r.ratio}`, r] as const),
)("%s", (_n, row) => {
  const { k1, k2, k3 } = speedUp(site(row.multiplier ?? "", row.shape ?? "", row.exposure ?? "", Number(row.ratio)));
  expectPrinted({ K1: k1, K2: k2, K3: k3 }[row.multiplier ?? ""] ?? Number.NaN, row);
});
