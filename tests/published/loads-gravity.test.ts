import { expect, test } from "vitest";
import { deadLoad } from "../../src/core/loads/dead.ts";
import { liveUse } from "../../src/core/loads/live.ts";
import { KLL } from "../../src/core/loads/tables/live.ts";
import { halfLastDigit, rows } from "./rows.ts";

test.each(rows("loads-live.csv").map((r) => [`${r.quantity} ${r.printed_name}`, r] as const))("%s", (_n, row) => {
  const held = row.quantity === "KLL" ? KLL[row.name ?? ""] : liveUse(row.name ?? "", "2021").psf;
  expect(held).toBe(Number(row.printed));
});

test.each(rows("loads-dead.csv").map((r) => [`${r.name} ${r.thickness_in}`, r] as const))("weight of %s", (_n, row) => {
  const thicknessIn = row.thickness_in === "" ? undefined : Number(row.thickness_in);
  const psf = deadLoad([{ material: row.name ?? "", thicknessIn, weight: undefined, row: 1 }], [], 0);
  expect(Math.abs(psf - Number(row.printed))).toBeLessThanOrEqual(halfLastDigit(row.printed ?? "") * 1e-6);
});
