import { within } from "../../kit/refusal.ts";
import type { Tape } from "../../kit/tape.ts";

const CLAUSE = "USDA FPL Wood Handbook GTR-190 eq. 4-5";
/** Range of Table 4-2, which the equation was checked against. */
const RANGE = { coldF: 30, hotF: 200, dryPct: 5, wetPct: 95 } as const;

/** Coefficients of eq. 4-5 at a temperature in C: value = a + b T + c T^2. */
const W = [349, 1.29, 0.0135] as const;
const K = [0.805, 0.000736, -0.00000273] as const;
const K1 = [6.27, -0.00938, -0.000303] as const;
const K2 = [1.91, 0.0407, -0.000293] as const;

type Quadratic = readonly [number, number, number];
const at = ([a, b, c]: Quadratic, tempC: number): number => a + b * tempC + c * tempC ** 2;

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
  const tempC = ((tempF - 32) * 5) / 9;
  const [w, k, k1, k2] = [at(W, tempC), at(K, tempC), at(K1, tempC), at(K2, tempC)];
  const kh = (k * rhPct) / 100;
  const first = kh / (1 - kh);
  const second = (k1 * kh + 2 * k1 * k2 * kh ** 2) / (1 + k1 * kh + k1 * k2 * kh ** 2);
  tape?.step("W", "349 + 1.29 T + 0.0135 T^2, T in C", w, "", CLAUSE);
  tape?.step("K h", "(0.805 + 0.000736 T - 0.00000273 T^2) h", kh, "", CLAUSE);
  tape?.step("K1", "6.27 - 0.00938 T - 0.000303 T^2", k1, "", CLAUSE);
  tape?.step("K2", "1.91 + 0.0407 T - 0.000293 T^2", k2, "", CLAUSE);
  const moisturePct = (1800 / w) * (first + second);
  tape?.step("M", "1800/W [Kh/(1-Kh) + (K1 Kh + 2 K1 K2 Kh^2)/(1 + K1 Kh + K1 K2 Kh^2)]", moisturePct, "%", CLAUSE);
  return moisturePct;
}
