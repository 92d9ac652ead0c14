import { asce, type Edition, renumbered } from "../kit/edition.ts";
import { within } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import { CLAUSE } from "./tables/clauses.ts";
import { type Exposure, KZ_FACTOR, KZ_HIGHEST_FT, KZ_LEAST_B, KZ_LOWEST_FT, TERRAIN } from "./tables/terrain.ts";

/** What the pressure is for: directional main frame, low-rise envelope main frame, or components and cladding. */
export const WIND_USES = ["frame", "low-rise", "cladding"] as const;
export type WindUse = (typeof WIND_USES)[number];

const TABLE_7_10: Readonly<Record<WindUse, string>> = {
  frame: "Table 27.3-1",
  "low-rise": "Table 28.3-1",
  cladding: "Table 30.3-1",
};

/** The table that Kz stands in. */
function kzTable(use: WindUse | undefined, edition: Edition): string {
  return asce(edition, renumbered(TABLE_7_10[use ?? "frame"], "Table 26.10-1"));
}

/** Whether Exposure B keeps to Kz 0.70 at least; a use that is not said takes the larger. */
function keepsLeastKz(exposure: Exposure, use: WindUse | undefined, edition: Edition): boolean {
  if (exposure !== "B") return false;
  return use === undefined || use === "low-rise" || (use === "cladding" && edition === "7-10");
}

/**
 * Velocity pressure exposure coefficient Kz (Kh at the mean roof height), by the formula under the table in every edition.
 * 7-22: the printed table departs from its own formula by -0.011 to +0.015 (Exposure B at 30 ft prints 0.70 for 0.689,
 * Exposure D prints low throughout); the formula is used so that Kz is one smooth curve.
 * @param heightFt above ground, above 0 to 500 ft; below 15 ft the value at 15 ft holds
 * @param use what the pressure is for; undefined takes the largest Kz of the uses and says so
 * @throws OutOfRange above 500 ft
 * Source: ASCE/SEI 7-10 Table 27.3-1 (28.3-1, 30.3-1) note 1, 7-16 and 7-22 Table 26.10-1 note 1.
 */
export function exposureCoefficient(
  heightFt: number,
  exposure: Exposure,
  use: WindUse | undefined,
  edition: Edition,
  tape?: Tape,
): number {
  const table = kzTable(use, edition);
  within("The height", heightFt, 0, KZ_HIGHEST_FT, "ft", table);
  const zFt = Math.max(heightFt, KZ_LOWEST_FT);
  const { alpha, zgFt } = TERRAIN[edition][exposure];
  const factor = KZ_FACTOR[edition];
  const formula = factor * (zFt / zgFt) ** (2 / alpha);
  tape?.step("z", "height, not below 15 ft", zFt, "ft", table);
  tape?.step("alpha", `Exposure ${exposure}`, alpha, "", asce(edition, CLAUSE.terrain));
  tape?.step("zg", `Exposure ${exposure}`, zgFt, "ft", asce(edition, CLAUSE.terrain));
  tape?.step("Kz", `${factor} (z/zg)^(2/alpha)`, formula, "", `${table} note 1`);
  if (edition === "7-22") {
    tape?.caution(
      "Kz is from the formula of ASCE/SEI 7-22 Table 26.10-1 note 1; the printed table differs from it by up to 0.015 (at 30 ft in Exposure B it prints 0.70, the formula gives 0.69).",
    );
  }
  if (!keepsLeastKz(exposure, use, edition)) return formula;
  const kz = Math.max(formula, KZ_LEAST_B);
  tape?.step("Kz", `not less than ${KZ_LEAST_B} in Exposure B`, kz, "", `${table} footnote`);
  if (use === undefined && kz > formula) {
    tape?.caution(
      `What the pressure is for is not said: Kz ${KZ_LEAST_B} of low-rise loads in Exposure B is taken; give purpose frame or cladding for the ${formula.toFixed(2)} of the formula where the edition lets it.`,
    );
  }
  return kz;
}
