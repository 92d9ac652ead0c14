import { plain } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";

/** Whether each doubling lowers the hours of the unit itself or the mean of all so far. */
export const CURVE_KINDS = ["unit", "average"] as const;
export type CurveKind = (typeof CURVE_KINDS)[number];

/** Slope of the curve: how the logarithm of the hours falls with that of the count. */
export function curveSlope(rate: number): number {
  return Math.log2(rate);
}

/**
 * Hours of a number of units by a learning curve.
 * Unit curve: unit x takes first x^b. Average curve: the mean of x units is first x^b. b = log2(rate).
 * @param firstHours hours of the first unit
 * @param count whole, 1 or more
 * @param rate share of the hours after each doubling, above 0 to 1
 * @returns hours of all units together
 * Source: unit curve by operations texts, average curve by managerial accounting texts; both are called "80 % curve" and differ much.
 */
export function learningHours(firstHours: number, count: number, rate: number, kind: CurveKind, tape?: Tape): number {
  const b = curveSlope(rate);
  tape?.step("b", `log2(${plain(rate)})`, b, "", `${kind} curve`);
  tape?.step("t_last", `hours of unit ${count}`, unitHours(firstHours, count, b, kind), "h", `${kind} curve`);
  const hours = kind === "unit" ? firstHours * sumOfPowers(count, b) : firstHours * count ** (1 + b);
  const says =
    kind === "unit"
      ? `${plain(firstHours)} h x sum of x^b, x from 1 to ${count}`
      : `${plain(firstHours)} h x ${count}^(1 + b)`;
  tape?.step("t", says, hours, "h", `${kind} curve`);
  return hours;
}

/** Hours of one unit, by its number. */
export function unitHours(firstHours: number, number: number, b: number, kind: CurveKind): number {
  if (kind === "unit") return firstHours * number ** b;
  const before = number === 1 ? 0 : (number - 1) ** (1 + b);
  return firstHours * (number ** (1 + b) - before);
}

function sumOfPowers(count: number, b: number): number {
  let sum = 0;
  for (let x = 1; x <= count; x++) sum += x ** b;
  return sum;
}
