import { expect, test } from "vitest";
import { Tape } from "../../src/core/kit/tape.ts";
import { deadLoad } from "../../src/core/loads/dead.ts";
import { rows } from "./rows.ts";

/** One unit of the source in psf, for an inch of thickness where it is a density. */
const PSF: Readonly<Record<string, number>> = { psf: 1, pcf: 1 / 12, "kg/m2": 2.20462262 / 10.7639104 };

test.each(rows("loads-dead-shell.csv").map((r) => [r.name ?? "", r] as const))("weight of %s", (name, row) => {
  const tape = new Tape();
  const thicknessIn = row.unit === "pcf" ? 1 : undefined;
  const psf = deadLoad([{ material: name, thicknessIn, weight: undefined, row: 1 }], [], 0, tape);
  const unit = PSF[row.unit ?? ""] ?? Number.NaN;
  // Held to two figures of a density, to the hundredth of a psf of a weight.
  expect(Math.abs(psf - Number(row.high) * unit)).toBeLessThanOrEqual(row.unit === "pcf" ? 0.02 : 0.005);
  expect(psf).toBeGreaterThanOrEqual(Number(row.low) * unit - 0.02);
  expect(tape.cautions.join(" ").includes("from memory")).toBe(row.source?.includes("FROM MEMORY"));
});
