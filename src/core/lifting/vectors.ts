/** Vectors in ft or without a unit, and the small sets of equations of statics. */

export type Vector = readonly [x: number, y: number, z: number];

export const ORIGIN: Vector = [0, 0, 0];

export const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const minus = (a: Vector, b: Vector): Vector => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
export const times = (a: Vector, k: number): Vector => [a[0] * k, a[1] * k, a[2] * k];
export const size = (a: Vector): number => Math.sqrt(dot(a, a));
export const unit = (a: Vector): Vector => times(a, 1 / size(a));
export const cross = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

/** Directions whose volume is smaller than this lie in one plane. */
const FLAT = 1e-9;

/**
 * Parts of a sum along three directions (Cramer's rule).
 * @returns undefined where the directions lie in one plane
 */
export function partsAlong(sum: Vector, [a, b, c]: readonly [Vector, Vector, Vector]): readonly number[] | undefined {
  const volume = dot(a, cross(b, c));
  if (Math.abs(volume) < FLAT) return undefined;
  return [dot(sum, cross(b, c)) / volume, dot(a, cross(sum, c)) / volume, dot(a, cross(b, sum)) / volume];
}
