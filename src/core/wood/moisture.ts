import { within } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";

const CLAUSE = "USDA FPL Wood Handbook GTR-190 eq. 4-5";
/** Range of Table 4-2, which the equation was checked against. */
const RANGE = { coldF: 30, hotF: 200, dryPct: 5, wetPct: 95 } as const;

/** Coefficients of eq. 4-5 at a temperature in F: value = a + b T + c T^2. */
const W = [330, 0.452, 0.00415] as const;
const K = [0.791, 0.000463, -0.000000844] as const;
const K1 = [6.34, 0.000775, -0.0000935] as const;
const K2 = [1.09, 0.0284, -0.0000904] as const;

type Quadratic = readonly [number, number, number];
const at = ([a, b, c]: Quadratic, tempF: number): number => a + b * tempF + c * tempF ** 2;

/**
 * Moisture content that wood comes to in air that does not change:
 * M = 1800/W [K h / (1 - K h) + (K1 K h + 2 K1 K2 K^2 h^2) / (1 + K1 K h + K1 K2 K^2 h^2)].
 * @param tempF 30 to 200 F
 * @param rhPct relative humidity, 5 to 95 %
 * @returns percent of the ovendry mass
 * @throws OutOfRange outside those limits
 * Source: USDA FPL Wood Handbook GTR-190 (2010) eq. 4-5 and Table 4-2.
 */
export function equilibriumMoisturePct(tempF: number, rhPct: number, tape?: Tape): number {
  within("The temperature", tempF, RANGE.coldF, RANGE.hotF, "F", `${CLAUSE} and Table 4-2`);
  within("The relative humidity", rhPct, RANGE.dryPct, RANGE.wetPct, "%", `${CLAUSE} and Table 4-2`);
  const [w, k, k1, k2] = [at(W, tempF), at(K, tempF), at(K1, tempF), at(K2, tempF)];
  const kh = (k * rhPct) / 100;
  const first = kh / (1 - kh);
  const second = (k1 * kh + 2 * k1 * k2 * kh ** 2) / (1 + k1 * kh + k1 * k2 * kh ** 2);
  tape?.step("W", "330 + 0.452 T + 0.00415 T^2", w, "", CLAUSE);
  tape?.step("K h", "(0.791 + 0.000463 T - 0.000000844 T^2) h", kh, "", CLAUSE);
  tape?.step("K1", "6.34 + 0.000775 T - 0.0000935 T^2", k1, "", CLAUSE);
  tape?.step("K2", "1.09 + 0.0284 T - 0.0000904 T^2", k2, "", CLAUSE);
  const moisturePct = (1800 / w) * (first + second);
  tape?.step("M", "1800/W [Kh/(1-Kh) + (K1 Kh + 2 K1 K2 Kh^2)/(1 + K1 Kh + K1 K2 Kh^2)]", moisturePct, "%", CLAUSE);
  return moisturePct;
}
