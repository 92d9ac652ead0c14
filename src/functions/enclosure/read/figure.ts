import { Refusal } from "../../../core/kit/refusal.ts";
import { parseQuantity } from "../../../core/units/quantity.ts";

/** A plain number, with an exponent where people write one. */
export const NUMBER = String.raw`(\d+\.?\d*(?:e[-+]?\d+)?|\.\d+(?:e[-+]?\d+)?)`;

const DIGIT = /\p{N}/u;

/** A number with a unit that measures the same as `unit`, or undefined. */
export function quantityIn(text: string, unit: string): number | undefined {
  // Most texts here are words such as "wall", and a refusal takes longer to make than the R of a wall.
  if (!DIGIT.test(text)) return undefined;
  try {
    return parseQuantity(text, unit);
  } catch (refusal) {
    if (refusal instanceof Refusal) return undefined;
    throw refusal;
  }
}
