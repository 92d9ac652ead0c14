import { BadInput, plain } from "../../kit/refusal.ts";

/** The engine counts in whole sixty-fourths of an inch. */
export const PER_INCH = 64;
/** Slack for numbers that are whole sixty-fourths but for the arithmetic that made them. */
const EPSILON = 1e-6;
/** Longest dimension taken, inches: 1000 ft, far above any stock and small enough for exact areas. */
const MAX_IN = 12_000;

function checked(name: string, inches: number, min: number): number {
  if (!(inches >= min && inches <= MAX_IN)) {
    throw new BadInput(
      `${name} is ${plain(inches)} in`,
      `it must be from ${plain(min)} to ${MAX_IN} in`,
      "Give the size in inches",
    );
  }
  return inches * PER_INCH;
}

/** A size that must fit: rounded up to the next sixty-fourth. */
export const sizeUp = (name: string, inches: number, minIn = 1 / PER_INCH): number =>
  Math.ceil(checked(name, inches, minIn) - EPSILON);

/** A size that is there to cut from: rounded down. */
export const sizeDown = (name: string, inches: number): number =>
  Math.floor(checked(name, inches, 1 / PER_INCH) + EPSILON);

export const inches = (sixtyFourths: number): number => sixtyFourths / PER_INCH;

export function gcd(a: number, b: number): number {
  let x = a;
  let y = b;
  while (y > 0) [x, y] = [y, x % y];
  return x;
}

/** A quantity of parts or of stock: a whole number. */
export function wholeCount(name: string, value: number, min: number): number {
  if (!Number.isInteger(value) || value < min || value > 100_000) {
    throw new BadInput(
      `${name} is ${plain(value)}`,
      `a quantity is a whole number from ${min} to 100000`,
      "Correct the quantity",
    );
  }
  return value;
}

/** Costs are compared in whole ten-thousandths of the currency, so that sums are exact. */
export const COST_SCALE = 10_000;

export function costUnits(name: string, cost: number): number {
  if (!(cost >= 0 && cost <= 1e7)) {
    throw new BadInput(`${name} is ${plain(cost)}`, "a cost is a number from 0 to 10 million", "Correct the cost");
  }
  return Math.round(cost * COST_SCALE);
}
