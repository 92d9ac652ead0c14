/** Value at x on straight lines between nodes in rising x; level beyond the ends. */
export function between(nodes: readonly (readonly [x: number, y: number])[], x: number): number {
  let [x0, y0] = nodes[0] ?? [0, 0];
  if (x <= x0) return y0;
  for (const [x1, y1] of nodes) {
    if (x <= x1) return x1 === x0 ? y1 : y0 + ((y1 - y0) * (x - x0)) / (x1 - x0);
    x0 = x1;
    y0 = y1;
  }
  return y0;
}

/** Pairs of columns and values as nodes. */
export function nodesOf(xs: readonly number[], ys: readonly number[]): (readonly [number, number])[] {
  return xs.map((x, i) => [x, ys[i] ?? 0] as const);
}
