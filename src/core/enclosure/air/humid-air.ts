import { OutOfRange, plain } from "../../kit/refusal.ts";
import type { Tape } from "../../kit/tape.ts";
import { dewPointFromPressureC, type SaturationFormula, saturationClause, saturationPressurePa } from "./saturation.ts";
import { cToF, PA_IN_INHG } from "./si.ts";

/** Refuses a relative humidity that is no share above 0 up to 1. */
function checkHumidity(name: string, rhShare: number): void {
  if (rhShare > 0 && rhShare <= 1) return;
  throw new OutOfRange(
    `${name} is ${plain(rhShare * 100)} %`,
    "relative humidity lies above 0 and up to 100 %, and perfectly dry air has no dew point",
    "Give it in percent such as 50, or as a share such as 0.5",
  );
}

/**
 * Vapor pressure of air: p = RH x p_sat(T).
 * @param tempC limits of the saturation curve
 * @param rhShare above 0 to 1
 * @returns Pa
 * @throws OutOfRange outside those limits
 * Source: ASHRAE Handbook Fundamentals ch. 1, definition of relative humidity.
 */
export function vaporPressurePa(tempC: number, rhShare: number, formula: SaturationFormula, tape?: Tape): number {
  checkHumidity("The relative humidity", rhShare);
  const saturationPa = saturationPressurePa(tempC, formula);
  tape?.step("p_sat", `saturation pressure at ${plain(cToF(tempC))} F`, saturationPa, "Pa", saturationClause(formula));
  const vaporPa = rhShare * saturationPa;
  tape?.step("p_v", `${plain(rhShare)} x p_sat`, vaporPa, "Pa", "definition of relative humidity");
  return vaporPa;
}

/** The same in inches of mercury, the pressure that a perm is defined with. */
export function vaporPressureInHg(tempC: number, rhShare: number, formula: SaturationFormula, tape?: Tape): number {
  const inHg = vaporPressurePa(tempC, rhShare, formula, tape) / PA_IN_INHG;
  tape?.step("p_v", `p_v / ${PA_IN_INHG}`, inHg, "inHg", "mercury at 0 C, NIST SP 811 (2008) B.8");
  return inHg;
}

/**
 * Dew point of air (frost point below freezing unless the curve is over water).
 * @param tempC air temperature
 * @param rhShare above 0 to 1
 * @returns F
 * @throws OutOfRange outside the saturation curve
 * Source: ASHRAE Handbook Fundamentals ch. 1 eq. 5, 6 inverted, or ISO 13788:2012 Annex E.
 */
export function dewPointF(tempC: number, rhShare: number, formula: SaturationFormula, tape?: Tape): number {
  const dewC = dewPointFromPressureC(vaporPressurePa(tempC, rhShare, formula, tape), formula);
  const dewF = cToF(dewC);
  tape?.step("T_d", "temperature at which p_sat = p_v", dewF, "F", saturationClause(formula));
  if (dewC < 0) {
    tape?.assume(
      formula === "water"
        ? "below freezing the dew point is the one over liquid water, as weather services state it"
        : "below freezing the result is the frost point, over ice",
    );
  }
  return dewF;
}

/**
 * Relative humidity of air of a known dew point.
 * @param tempC air temperature
 * @param dewC dew point, not above the air temperature
 * @returns percent
 * @throws OutOfRange for a dew point above the temperature
 * Source: definition of relative humidity; saturation curve as named.
 */
export function relativeHumidityPct(tempC: number, dewC: number, formula: SaturationFormula, tape?: Tape): number {
  if (!(dewC <= tempC)) {
    throw new OutOfRange(
      `The dew point ${plain(cToF(dewC))} F is above the air temperature ${plain(cToF(tempC))} F`,
      "air is saturated at its own temperature, so its dew point cannot be higher",
      "Give the air temperature first, then the dew point",
    );
  }
  const vaporPa = saturationPressurePa(dewC, formula);
  const saturationPa = saturationPressurePa(tempC, formula);
  tape?.step("p_v", `saturation pressure at ${plain(cToF(dewC))} F`, vaporPa, "Pa", saturationClause(formula));
  tape?.step("p_sat", `saturation pressure at ${plain(cToF(tempC))} F`, saturationPa, "Pa", saturationClause(formula));
  const percent = (100 * vaporPa) / saturationPa;
  tape?.step("RH", "100 p_v / p_sat", percent, "%", "definition of relative humidity");
  return percent;
}
