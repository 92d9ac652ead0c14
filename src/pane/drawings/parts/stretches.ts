import type { Point } from "./hatch.ts";
import type { Span } from "./room.ts";

/**
 * Cuts a length that is too long to be read in one drawing into stretches of about the same length.
 * @param breaks where it may be cut, ascending
 */
export function stretchesOf(length: number, breaks: readonly number[], most: number): readonly Span[] {
  const count = Math.ceil(length / most - 1e-9);
  const inner = breaks.filter((b) => b > 0 && b < length);
  const ends = [0];
  for (let i = 1; i < count && inner.length > 0; i++) {
    const wanted = (length * i) / count;
    const nearest = inner.reduce((best, b) => (Math.abs(b - wanted) < Math.abs(best - wanted) ? b : best));
    if (nearest > (ends.at(-1) ?? 0)) ends.push(nearest);
  }
  return [...ends, length].slice(1).map((to, i): Span => [ends[i] ?? 0, to]);
}

/** What of an area lies between two places of x. */
export function clipped(corners: readonly Point[], [from, to]: Span): readonly Point[] {
  return beyond(beyond(corners, from, 1), to, -1);
}

/** What of an area lies to the right (1) or to the left (-1) of a place. */
function beyond(corners: readonly Point[], x: number, side: 1 | -1): readonly Point[] {
  return corners.flatMap((a, i) => {
    const b = corners[(i + 1) % corners.length] ?? a;
    const [inA, inB] = [(a[0] - x) * side >= 0, (b[0] - x) * side >= 0];
    const kept = inA ? [a] : [];
    if (inA === inB) return kept;
    return [...kept, [x, a[1] + ((x - a[0]) / (b[0] - a[0])) * (b[1] - a[1])] as const];
  });
}
