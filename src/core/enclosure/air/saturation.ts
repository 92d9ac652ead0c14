import { OutOfRange, plain, within } from "../../kit/refusal.ts";

/**
 * Which curve of saturation pressure is used.
 * - `ASHRAE`: Hyland-Wexler equations, over ice below the triple point.
 * - `ISO 13788`: the simpler forms of that standard, over ice below 0 C.
 * - `water`: the ISO form over liquid water at all temperatures, as weather services state dew points below freezing.
 */
export const SATURATION_FORMULAS = ["ASHRAE", "ISO 13788", "water"] as const;
export type SaturationFormula = (typeof SATURATION_FORMULAS)[number];

const KELVIN_AT_0C = 273.15;
/** The ice and water branches meet here, so the curve has no step. */
const TRIPLE_POINT_C = 0.01;

interface HylandWexler {
  /** coefficients of T^-1, 1, T, T^2, T^3, T^4 and ln T; T in K, ln of Pa */
  readonly c: readonly [number, number, number, number, number, number, number];
}
/** ASHRAE Handbook Fundamentals, ch. 1, eq. 5: saturation over ice, -100 to 0 C. */
const ICE: HylandWexler = {
  c: [-5.6745359e3, 6.3925247, -9.677843e-3, 6.2215701e-7, 2.0747825e-9, -9.484024e-13, 4.1635019],
};
/** ASHRAE Handbook Fundamentals, ch. 1, eq. 6: saturation over liquid water, 0 to 200 C. */
const WATER: HylandWexler = {
  c: [-5.8002206e3, 1.3914993, -4.8640239e-2, 4.1764768e-5, -1.4452093e-8, 0, 6.5459673],
};

function lnPressure({ c }: HylandWexler, kelvin: number): number {
  const polynomial = c[1] + kelvin * (c[2] + kelvin * (c[3] + kelvin * (c[4] + kelvin * c[5])));
  return c[0] / kelvin + polynomial + c[6] * Math.log(kelvin);
}

function lnPressureSlope({ c }: HylandWexler, kelvin: number): number {
  const polynomial = c[2] + kelvin * (2 * c[3] + kelvin * (3 * c[4] + kelvin * 4 * c[5]));
  return -c[0] / (kelvin * kelvin) + polynomial + c[6] / kelvin;
}

/** ISO 13788:2012 Annex E: p = 610.5 exp(a t / (b + t)), t in C, p in Pa. */
const ISO_AT_0C_PA = 610.5;
const ISO_WATER = { a: 17.269, b: 237.3 };
const ISO_ICE = { a: 21.875, b: 265.5 };

interface Limits {
  readonly minC: number;
  readonly maxC: number;
  readonly clause: string;
}
const LIMITS: Readonly<Record<SaturationFormula, Limits>> = {
  ASHRAE: { minC: -100, maxC: 200, clause: "ASHRAE Handbook Fundamentals ch. 1 eq. 5 and 6" },
  // The standard states none. At -60 C the form is 5 % under the ASHRAE equations; it is not used below.
  "ISO 13788": { minC: -60, maxC: 100, clause: "ISO 13788:2012 Annex E, kept to the temperatures of buildings" },
  water: { minC: -60, maxC: 100, clause: "ISO 13788:2012 Annex E, over water, kept to the temperatures of buildings" },
};

/** Clause that a working names for a curve. */
export function saturationClause(formula: SaturationFormula): string {
  return LIMITS[formula].clause;
}

/**
 * Pressure of water vapour in saturated air.
 * @param tempC -100 to 200 C (ASHRAE), -60 to 100 C (the other two)
 * @returns Pa
 * @throws OutOfRange outside those temperatures
 * Source: ASHRAE Handbook Fundamentals ch. 1 eq. 5, 6; ISO 13788:2012 Annex E (= DIN 4108-3 eq. C.15, C.16).
 */
export function saturationPressurePa(tempC: number, formula: SaturationFormula): number {
  const { minC, maxC, clause } = LIMITS[formula];
  within("The temperature", tempC, minC, maxC, "C", clause);
  if (formula === "ASHRAE") {
    return Math.exp(lnPressure(tempC <= TRIPLE_POINT_C ? ICE : WATER, tempC + KELVIN_AT_0C));
  }
  const { a, b } = tempC < 0 && formula === "ISO 13788" ? ISO_ICE : ISO_WATER;
  return ISO_AT_0C_PA * Math.exp((a * tempC) / (b + tempC));
}

const endsOf = (formula: SaturationFormula) => ({
  lowest: saturationPressurePa(LIMITS[formula].minC, formula),
  highest: saturationPressurePa(LIMITS[formula].maxC, formula),
});
/** Pressures at the ends of each curve, which every dew point is held against. */
const ENDS = { ASHRAE: endsOf("ASHRAE"), "ISO 13788": endsOf("ISO 13788"), water: endsOf("water") };
const TRIPLE_POINT_PA = saturationPressurePa(TRIPLE_POINT_C, "ASHRAE");

/**
 * Temperature at which air of a vapour pressure is saturated: its dew point, or frost point where the curve is over ice.
 * @param vapourPa above 0 Pa
 * @returns C
 * @throws OutOfRange where the dew point lies outside the curve
 * Source: inverse of the same equations; ISO 13788:2012 Annex E gives its own in closed form, the ASHRAE one is solved.
 */
export function dewPointFromPressureC(vapourPa: number, formula: SaturationFormula): number {
  const { lowest, highest } = ENDS[formula];
  // The margin lets saturated air at either end have its own temperature as dew point, whatever the rounding.
  if (!(vapourPa >= lowest * (1 - 1e-12) && vapourPa <= highest * (1 + 1e-12))) {
    const { minC, maxC, clause } = LIMITS[formula];
    throw new OutOfRange(
      `The vapor pressure is ${plain(vapourPa)} Pa`,
      `dew points are computed from ${plain(minC)} to ${plain(maxC)} C, ${plain(lowest)} to ${plain(highest)} Pa (${clause})`,
      "Check the temperature and the relative humidity",
    );
  }
  const isoDewPointC = isoInverse(vapourPa, formula === "water");
  return formula === "ASHRAE" ? hylandWexlerInverse(vapourPa, isoDewPointC) : isoDewPointC;
}

function isoInverse(vapourPa: number, overWater: boolean): number {
  const x = Math.log(vapourPa / ISO_AT_0C_PA);
  const { a, b } = x < 0 && !overWater ? ISO_ICE : ISO_WATER;
  return (b * x) / (a - x);
}

/** Newton's error falls with its square, times the bend of ln p over T (under 0.02 per K): after a step this small it is below the last digit. */
const LAST_STEP_K = 1e-6;
const MOST_STEPS = 8;

/** Newton on ln p, from the ISO value: ln p is nearly straight in T, so two steps reach the last digit at the temperatures of buildings. */
function hylandWexlerInverse(vapourPa: number, startC: number): number {
  const branch = vapourPa <= TRIPLE_POINT_PA ? ICE : WATER;
  const target = Math.log(vapourPa);
  let kelvin = startC + KELVIN_AT_0C;
  for (let i = 0; i < MOST_STEPS; i++) {
    const step = (lnPressure(branch, kelvin) - target) / lnPressureSlope(branch, kelvin);
    kelvin -= step;
    if (Math.abs(step) < LAST_STEP_K) break;
  }
  return kelvin - KELVIN_AT_0C;
}
