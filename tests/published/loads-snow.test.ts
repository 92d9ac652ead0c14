import { expect, test } from "vitest";
import { Tape } from "../../src/core/kit/tape.ts";
import { type StepSite, snowDensity, stepDrift } from "../../src/core/loads/snow-drift.ts";
import { flatRoofSnow, slopeFactor } from "../../src/core/loads/snow-roof.ts";
import type { RoofSurface } from "../../src/core/loads/tables/snow.ts";
import { halfLastDigit, type Row, rows } from "./rows.ts";

const snow = rows("loads-snow.csv");
const close = (value: number, row: Row) =>
  expect(Math.abs(value - Number(row.printed)), `${value} against ${row.printed}`).toBeLessThanOrEqual(
    halfLastDigit(row.printed ?? "") * (1 + 1e-9),
  );

test.each(snow.filter((r) => r.quantity === "break").map((r) => [`${r.surface} Ct ${r.ct}`, r] as const))(
  "Cs is 1 up to the break, then straight to 0 at 70 degrees: %s",
  (_n, row) => {
    const cs = (slope: number) => slopeFactor(slope, row.surface as RoofSurface, Number(row.ct));
    expect(cs(Number(row.printed))).toBe(1);
    expect(cs((Number(row.printed) + 70) / 2)).toBeCloseTo(0.5, 12);
    expect(cs(70)).toBe(0);
  },
);

const ARTICLE: StepSite = {
  groundPsf: 25,
  balancedPsf: 17.5,
  stepFt: 4,
  upperFt: 40,
  lowerFt: 40,
  category: "II",
  winterWind: undefined,
  edition: "7-16",
};

const ANSWERS: Readonly<Record<string, () => number>> = {
  "pf 7-16, pg=25": () => flatRoofSnow({ groundPsf: 25, ce: 1, ct: 1, category: "II", edition: "7-16" }),
  "gamma 7-16": () => snowDensity(25, "7-16"),
  "hd 7-16": () => stepDrift(ARTICLE).heightFt,
  "pd=gamma*hd 7-16": () => stepDrift(ARTICLE).peakPsf,
  "pf+pd 7-16": () => stepDrift(ARTICLE).totalPsf,
  // The step caps this one: it holds pf, gamma and the cap against the print, not the drift equation of 7-22.
  "total peak 7-22, pg=63, W2=0.45": () => {
    const balancedPsf = flatRoofSnow({ groundPsf: 63, ce: 1, ct: 1, category: "II", edition: "7-22" });
    return stepDrift({ ...ARTICLE, groundPsf: 63, balancedPsf, winterWind: 0.45, edition: "7-22" }).totalPsf;
  },
};

test.each(snow.filter((r) => r.quantity !== "break").map((r) => [r.quantity ?? "", r] as const))(
  "drift article: %s",
  (quantity, row) => {
    const answer = ANSWERS[quantity];
    expect(answer, "every row has its answer").toBeDefined();
    if (answer !== undefined) close(answer(), row);
  },
);

const WORKSHEET_SYMBOLS = ["gamma", "hb", "hc", "hd", "pd"];

test.each(rows("loads-snow-drift.csv").map((r, i) => [r.quantity ?? "", WORKSHEET_SYMBOLS[i] ?? "", r] as const))(
  "drift worksheet: %s",
  (_n, symbol, row) => {
    // A windward drift only: a short upper roof leaves the lower roof's fetch to govern.
    const tape = new Tape();
    stepDrift(
      { ...ARTICLE, groundPsf: 20, balancedPsf: 20, upperFt: 1, lowerFt: 35, category: "II", edition: "7-10" },
      tape,
    );
    const step = tape.steps.findLast((s) => s.symbol === (symbol === "hd" ? "hd windward" : symbol));
    // The worksheet's windward drift; the leeward one over the least fetch of 20 ft is higher or lower as it comes.
    if (symbol === "pd") close(snowDensity(20, "7-10") * Number(windward(tape)), row);
    else close(Number(step?.value), row);
  },
);

function windward(tape: Tape): number {
  return Number(tape.steps.findLast((s) => s.symbol === "hd windward")?.value);
}
