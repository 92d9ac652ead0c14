/** Room for a label inside an area. */

import type { Point } from "./hatch.ts";

export type Span = readonly [from: number, to: number];

/** From where to where an area without dents reaches at a height, or undefined where it is not at that height. */
export function spanAt(corners: readonly Point[], y: number): Span | undefined {
  const xs: number[] = [];
  corners.forEach(([x, at], i) => {
    const [nextX, nextAt] = corners[(i + 1) % corners.length] ?? [x, at];
    if (at === y) xs.push(x);
    if (at < y !== nextAt < y) xs.push(x + ((y - at) / (nextAt - at)) * (nextX - x));
  });
  return xs.length === 0 ? undefined : [Math.min(...xs), Math.max(...xs)];
}

/** The widest stretch of a span that nothing blocks. */
export function widestFree(span: Span, blocks: readonly Span[]): Span {
  let best: Span = [span[0], span[0]];
  let from = span[0];
  const end: Span = [span[1], span[1]];
  for (const [a, b] of [...blocks].sort((p, q) => p[0] - q[0]).concat([end])) {
    const to = Math.min(a, span[1]);
    if (to - from > best[1] - best[0]) best = [from, to];
    from = Math.max(from, b);
  }
  return best;
}

/** The middle of the corners. */
export function middleOf(corners: readonly Point[]): Point {
  const xs = corners.map(([x]) => x);
  const ys = corners.map(([, y]) => y);
  const mean = (values: readonly number[]) => values.reduce((sum, v) => sum + v, 0) / Math.max(1, values.length);
  return [mean(xs), mean(ys)];
}
