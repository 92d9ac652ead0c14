import type { Tape } from "../kit/tape.ts";

/**
 * Line load on a support from a uniform load: half of the span on each side, and an overhang with its lever over the span behind it.
 * @param loadPsf uniform load
 * @param spanFt span on one side; the overhang lies on the other side of the support, or beyond the second span
 * @param otherFt span on the other side, 0 at an outer wall
 * @param overhangFt overhang beyond an outer support
 * @returns plf
 * Source: statics of simple spans.
 */
export function tributaryLoad(
  loadPsf: number,
  spanFt: number,
  otherFt: number,
  overhangFt: number,
  tape?: Tape,
): number {
  const statics = "statics of simple spans";
  const halves = spanFt / 2 + otherFt / 2;
  tape?.step("halves", "span/2 + other/2", halves, "ft", statics);
  const widthFt = halves + overhangFt + overhangFt ** 2 / (2 * spanFt);
  tape?.step("width", "halves + overhang + overhang^2 / (2 span)", widthFt, "ft", statics);
  const plf = loadPsf * widthFt;
  tape?.step("line load", "load x width", plf, "plf", statics);
  return plf;
}
