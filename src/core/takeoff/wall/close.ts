/** Comparing lengths that went through feet, inches and sums: what differs by rounding alone is alike. */

/** Room for the rounding of feet and inches, ft; also of areas, and of whole numbers of parts. */
const CLOSE = 1e-6;

/** Whether one is more than the other, beyond rounding. */
export function exceeds(one: number, other: number): boolean {
  return one > other + CLOSE;
}

/** Whether a place lies between two others, on neither of them. */
export function isBetween(at: number, from: number, to: number): boolean {
  return exceeds(at, from) && exceeds(to, at);
}

/** The whole number at or below, where rounding does not take one off. */
export function wholeBelow(value: number): number {
  return Math.floor(value + CLOSE);
}

/** The whole number at or above, where rounding does not add one. */
export function wholeAbove(value: number): number {
  return Math.ceil(value - CLOSE);
}
