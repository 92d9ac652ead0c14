import { plain } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import { PANEL_DRAG, WIND_PRESSURE, WIND_STOP } from "./tables/rules.ts";

export interface LiftWind {
  /** sideways pull at the wind to stop at */
  readonly pullLb: number;
  /** how far the load then hangs off the plumb line */
  readonly leanDeg: number;
  readonly stopAtMph: number;
  /** which limit rules, in words */
  readonly rule: string;
}

/** Sideways pull of a gust on a hanging panel, broadside to it. */
export function windPullLb(areaFt2: number, speedMph: number): number {
  return WIND_PRESSURE.psfPerMph2 * speedMph ** 2 * areaFt2 * PANEL_DRAG.value;
}

/**
 * The wind at which to stop lifting a panel, and its sideways pull then.
 * @param areaFt2 sail of the panel: its gross face, openings that are closed included
 * @param weightLb above 0
 * @param limitMph gust at the boom's tip at which lifting stops by rule, plan or maker
 * @param greatestPull share of the weight that the plan lets the wind pull sideways; undefined computes no limit
 * Source: 0.00256 V2 A with a drag coefficient (tables/rules.ts); the lean is statics.
 */
export function liftWind(
  areaFt2: number,
  weightLb: number,
  limitMph: number,
  greatestPull: number | undefined,
  tape?: Tape,
): LiftWind {
  tape?.step("Cd", "panel broadside to the wind", PANEL_DRAG.value, "", PANEL_DRAG.source);
  tape?.step("V_limit", "gust read at the tip of the boom", limitMph, "mph", limitSource(limitMph));
  if (limitMph > WIND_STOP.speedMph) {
    tape?.caution(
      `Above ${WIND_STOP.speedMph} mph crane work is stopped, looked at again and logged (${WIND_STOP.source}).`,
    );
  }
  const computedMph = greatestPull === undefined ? undefined : pullLimitMph(areaFt2, weightLb, greatestPull, tape);
  const byPull = computedMph !== undefined && computedMph < limitMph;
  const stopAtMph = byPull ? computedMph : limitMph;
  tape?.step("V", "lowest of the limits", stopAtMph, "mph", "");
  const pullLb = windPullLb(areaFt2, stopAtMph);
  tape?.step(
    "F",
    `${WIND_PRESSURE.psfPerMph2} V^2 A Cd, A = ${plain(areaFt2)} ft2`,
    pullLb,
    "lb",
    WIND_PRESSURE.source,
  );
  const leanDeg = (Math.atan(pullLb / weightLb) * 180) / Math.PI;
  tape?.step("lean", `atan(F / W), W = ${plain(weightLb)} lb`, leanDeg, "deg", "statics");
  return { pullLb, leanDeg, stopAtMph, rule: byPull ? "greatest pull" : ruleOf(limitMph) };
}

function pullLimitMph(areaFt2: number, weightLb: number, greatestPull: number, tape: Tape | undefined): number {
  const speedMph = Math.sqrt((greatestPull * weightLb) / windPullLb(areaFt2, 1));
  tape?.step(
    "V_pull",
    `pull = ${plain(greatestPull)} W: sqrt(${plain(greatestPull)} W / (${WIND_PRESSURE.psfPerMph2} A Cd))`,
    speedMph,
    "mph",
    "the plan's greatest pull",
  );
  return speedMph;
}

function ruleOf(limitMph: number): string {
  return limitMph === WIND_STOP.speedMph ? "published limit" : "limit given";
}

function limitSource(limitMph: number): string {
  return limitMph === WIND_STOP.speedMph ? WIND_STOP.source : "given";
}
