import { expect, test } from "vitest";
import type { Table } from "../../src/core/kit/tape.ts";
import { exposureCoefficient } from "../../src/core/wind/exposure-coefficient.ts";
import { positional } from "../../src/functions/declare/formula.ts";
import { functionNamed } from "../../src/functions/registry.ts";
import { explain, invoke } from "../../src/functions/run/invoke.ts";
import { rows } from "./rows.ts";

/** A function as a user types it: own arguments in their places, the site in a basis. */
function typed(name: string, args: Readonly<Record<string, unknown>>) {
  const fn = functionNamed(name);
  if (fn === undefined) throw new Error(`no ${name}`);
  const raw = positional(fn, args);
  const outcome = invoke(fn, raw);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.said));
  return { value: outcome.value as Table, steps: explain(fn, raw).steps };
}

/** The print stands on the Kz of 7-16 at 30 ft in Exposure B: put in through the topographic factor, which q is proportional to. */
const KZT = exposureCoefficient(30, "B", "frame", "7-16") / exposureCoefficient(30, "B", "cladding", "7-22");
const SLOPES: Readonly<Record<string, string>> = {
  "roof 0-7": "1:12",
  "gable 7-20": "4:12",
  "gable 20-27": "6:12",
  "gable 27-45": "10:12",
  "hip 7-20": "4:12",
  "hip 20-27": "6:12",
  "hip 45": "12:12",
  wall: "10:12",
};

// A cell under the least net pressure of 9.6 psf is the code's own, not the standard's.
const printed = rows("wind-residential-7-22.csv").filter(
  (r) => Math.abs(Number(r.printed)) > 9.6 && r.zone !== "all" && Number(r.speed_mph) % 20 === 0,
);

test.each(printed.map((r) => [`${r.class} zone ${r.zone} ${r.area_ft2} ft2 ${r.speed_mph} mph`, r] as const))(
  "speed to pressure in one formula: %s",
  (_n, row) => {
    const shape = (row.class ?? "").split(" ")[0] ?? "";
    const { value, steps } = typed("WIND_CLADDING", {
      surface: shape === "wall" ? "wall" : "roof",
      zone: row.zone,
      area: Number(row.area_ft2),
      roofSlope: SLOPES[row.class ?? ""],
      windLevel: "allowable",
      roofShape: shape === "roof" || shape === "wall" ? "gable" : shape,
      windSpeed: Number(row.speed_mph),
      exposure: "B",
      meanRoofHeight: 30,
      topographicFactor: KZT,
    });
    expect(Math.abs(Number(value[0]?.[1]) - Number(row.printed))).toBeLessThanOrEqual(0.0505);
    expect(steps.filter((s) => s.symbol === "q")).toHaveLength(1);
  },
);

test("q is the same made or given, and the schedule gives what the single formula gives", () => {
  const site = { windSpeed: 130, exposure: "C", eaveHeight: 10, buildingWidth: 40, roofSlope: "6:12" };
  const made = typed("WIND_CLADDING", { surface: "wall", zone: "5", area: 20, ...site }).value[0];
  const q = typed("WIND_PRESSURE", { ...site, purpose: "cladding" }).value as unknown as number;
  const given = typed("WIND_CLADDING", {
    surface: "wall",
    zone: "5",
    area: 20,
    roofSlope: "6:12",
    velocityPressure: q,
  });
  expect(given.value[0]).toEqual(made);
  const schedule = typed("WIND_CLADDING_SCHEDULE", { areas: [[20]], ...site }).value;
  expect(schedule.find((r) => r[0] === "wall" && r[1] === "5")?.slice(3)).toEqual(made);
});
