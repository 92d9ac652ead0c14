import { BadInput, OutOfRange, plain } from "../../kit/refusal.ts";
import type { Tape } from "../../kit/tape.ts";

export const U_METHODS = ["parallel", "isothermal", "combined"] as const;
export type UMethod = (typeof U_METHODS)[number];

const PARALLEL = "ASHRAE Handbook Fundamentals 2021 ch. 25 (parallel path) = ISO 6946:2017 6.7.2.3";
const ISOTHERMAL = "ASHRAE Handbook Fundamentals 2021 ch. 25 (isothermal planes) = ISO 6946:2017 6.7.2.4";
const COMBINED = "ISO 6946:2017 6.7.2";
/** Above this ratio of the two limits the combined method does not hold. */
const GREATEST_RATIO = 1.5;

/** A part of the area with the R of each of its layers; all paths have the same number of layers, films included. */
export interface HeatPath {
  readonly name: string;
  /** part of the area, above 0 to 1; all together 1 */
  readonly share: number;
  readonly rIp: readonly number[];
}

/** The two limits of the R of a wall of unlike parts, and what ISO 6946 makes of them. */
export interface RLimits {
  readonly upper: number;
  readonly lower: number;
  readonly combined: number;
  /** largest relative error of the combined value */
  readonly error: number;
}

/**
 * Upper and lower limit of R. Upper: heat flows straight through each part (parallel path). Lower: each layer levels out sideways (isothermal planes).
 * @throws BadInput where shares do not add up to 1 or the paths have unlike numbers of layers
 * Source: ISO 6946:2017 6.7.2.3 and 6.7.2.4; ASHRAE Handbook Fundamentals 2021 ch. 25.
 */
export function rLimits(paths: readonly HeatPath[]): RLimits {
  checkPaths(paths);
  const upper = 1 / paths.reduce((u, p) => u + p.share / p.rIp.reduce((a, b) => a + b, 0), 0);
  let lower = 0;
  for (let j = 0; j < (paths[0]?.rIp.length ?? 0); j++) {
    const first = paths[0]?.rIp[j] ?? 0;
    const alike = paths.every((p) => p.rIp[j] === first);
    lower += alike ? first : 1 / paths.reduce((u, p) => u + p.share / (p.rIp[j] ?? 0), 0);
  }
  const combined = (upper + lower) / 2;
  return { upper, lower, combined, error: (upper - lower) / (2 * combined) };
}

function checkPaths(paths: readonly HeatPath[]): void {
  const total = paths.reduce((sum, p) => sum + p.share, 0);
  if (Math.abs(total - 1) > 1e-9 || paths.some((p) => !(p.share > 0))) {
    throw new BadInput(
      `The area shares add up to ${plain(total)}`,
      "the shares of all parts make the whole area, each above 0",
      "Check the framing share",
    );
  }
  const count = paths[0]?.rIp.length;
  if (paths.some((p) => p.rIp.length !== count || !(p.rIp.reduce((a, b) => a + b, 0) > 0))) {
    throw new BadInput(
      "The parts of the wall have unlike numbers of layers",
      "layer by layer the parts lie side by side",
      "Give the framing as many rows as the layers",
    );
  }
}

/**
 * U-factor of an assembly of one or more parts side by side.
 * @param method parallel path, isothermal planes, or the mean of both limits (ISO 6946 combined method)
 * @param correction what point fixings add for a given total R, Btu/(h ft2 F)
 * @returns Btu/(h ft2 F)
 * @throws OutOfRange for the combined method where the limits differ by more than 1.5
 * Source: ASHRAE Handbook Fundamentals 2021 ch. 25 and 27; ISO 6946:2017 6.7.2.
 */
export function uFactor(
  paths: readonly HeatPath[],
  method: UMethod,
  correction: (rTotalIp: number) => number,
  tape?: Tape,
): number {
  const limits = rLimits(paths);
  for (const p of paths) {
    const r = p.rIp.reduce((a, b) => a + b, 0);
    tape?.step(`R ${p.name}`, `${plain(p.share * 100)} % of the area, air to air`, r, "h ft2 F/Btu", PARALLEL);
  }
  if (paths.length > 1) {
    if (method !== "isothermal") tape?.step("R_upper", "1 / sum(f_i / R_i)", limits.upper, "h ft2 F/Btu", PARALLEL);
    if (method !== "parallel")
      tape?.step("R_lower", "sum of 1 / sum(f_i / R_ij)", limits.lower, "h ft2 F/Btu", ISOTHERMAL);
  }
  const rIp = { parallel: limits.upper, isothermal: limits.lower, combined: limits.combined }[method];
  if (method === "combined" && paths.length > 1) combinedSteps(limits, tape);
  const added = correction(rIp);
  const u = 1 / rIp + added;
  const clause = { parallel: PARALLEL, isothermal: ISOTHERMAL, combined: COMBINED }[method];
  tape?.step("U", added === 0 ? "1 / R" : "1 / R + dU_f", u, "Btu/(h ft2 F)", clause);
  return u;
}

function combinedSteps(limits: RLimits, tape: Tape | undefined): void {
  const ratio = limits.upper / limits.lower;
  if (ratio > GREATEST_RATIO) {
    throw new OutOfRange(
      `The upper limit of R is ${plain(ratio)} times the lower`,
      `the combined method holds up to a ratio of ${GREATEST_RATIO} (${COMBINED})`,
      "Use a detailed calculation, or the parallel-path method for wood framing",
    );
  }
  tape?.step("R_T", "(R_upper + R_lower) / 2", limits.combined, "h ft2 F/Btu", COMBINED);
  tape?.step("e", "(R_upper - R_lower) / (2 R_T), largest relative error", limits.error, "", COMBINED);
}
