import { OutOfRange, plain } from "../../kit/refusal.ts";
import type { Tape } from "../../kit/tape.ts";
import { dewPointFromPressureC } from "../air/saturation.ts";
import { cToF } from "../air/si.ts";
import type { Assembly } from "../layers/assembly.ts";
import { totalRIp } from "../layers/r-value.ts";
import type { MonthAir } from "./wetting-year.ts";

const CLAUSE = "ISO 13788:2012 clause 5";

/** Temperature factor of the inside surface of a plane part: f_Rsi = (R_T - R_si) / R_T. Source: ISO 13788:2012 3.1. */
export function planeFactor(assembly: Assembly): number {
  const total = totalRIp(assembly);
  if (!(total > 0)) throw new OutOfRange("The total R is 0", "there is no wall", "Give the layers");
  return (total - assembly.inside.rIp) / total;
}

/** The least factor with which a surface keeps below a relative humidity in a month, or undefined where any surface does. */
export function leastFactor(month: MonthAir, rhLimit: number): { factor: number; surfaceC: number } | undefined {
  const surfaceC = dewPointFromPressureC(month.insidePa / rhLimit, "ISO 13788");
  // Where it is as warm outside, the surface is no colder than the room, and only the room's own air can pass the limit.
  if (month.insideC <= month.outsideC) {
    return surfaceC > month.insideC ? { factor: Number.POSITIVE_INFINITY, surfaceC } : undefined;
  }
  if (surfaceC <= month.outsideC) return undefined;
  return { factor: (surfaceC - month.outsideC) / (month.insideC - month.outsideC), surfaceC };
}

/** The factor of a plane part beside the least one of the year. */
export interface SurfaceFactor {
  readonly factor: number;
  readonly leastFactor: number;
  /** the month that asks for it, "" where none does */
  readonly month: string;
  /** surface temperature that keeps the limit in that month */
  readonly leastF: number | undefined;
  readonly verdict: string;
}

/**
 * Temperature factor of the inside surface against the least one that keeps mold away: the surface stays below 80 % relative humidity
 * (or another limit) in the mean of each month.
 * @param rhLimit share, above 0 to 1
 * @throws OutOfRange where the limit is met by no surface (the air itself is above it)
 * Source: ISO 13788:2012 clause 5.
 */
export function surfaceFactor(
  assembly: Assembly,
  air: readonly MonthAir[],
  rhLimit: number,
  tape?: Tape,
): SurfaceFactor {
  const factor = planeFactor(assembly);
  const total = totalRIp(assembly);
  tape?.step(
    "R_si",
    `film inside: ${assembly.inside.says}`,
    assembly.inside.rIp,
    "h ft2 F/Btu",
    assembly.inside.clause,
  );
  tape?.step("R_T", "total R of the plane part", total, "h ft2 F/Btu", "ISO 6946:2017 6.7.1");
  tape?.step("f_Rsi", "(R_T - R_si) / R_T", factor, "", CLAUSE);
  let least = { factor: 0, surfaceC: 0, name: "" };
  for (const month of air) {
    const found = leastFactor(month, rhLimit);
    if (found === undefined) continue;
    const rule = `(T_si - T_e) / (T_i - T_e), T_si ${plain(cToF(found.surfaceC))} F has ${plain(rhLimit * 100)} %`;
    tape?.step(`f_Rsi,min ${month.name}`, rule, found.factor, "", CLAUSE);
    if (found.factor > least.factor) least = { ...found, name: month.name };
  }
  if (least.factor > 1) {
    throw new OutOfRange(
      `In ${least.name} the indoor air itself is above ${plain(rhLimit * 100)} % relative humidity`,
      "no surface can be warm enough (ISO 13788:2012 clause 5)",
      "Lower the indoor humidity",
    );
  }
  const enough = least.name === "" || factor >= least.factor;
  return {
    factor,
    leastFactor: least.factor,
    month: least.name,
    leastF: least.name === "" ? undefined : cToF(least.surfaceC),
    verdict: enough ? "no mold expected on the plane part" : "mold risk",
  };
}
