/** Scales and ticks: from figures to places in a drawing. */

/** A straight-line scale. */
export type Scale = (value: number) => number;

/** Takes `from[0]` to `to[0]` and `from[1]` to `to[1]`; a range of no extent goes to the middle. */
export function linear(from: readonly [number, number], to: readonly [number, number]): Scale {
  const span = from[1] - from[0];
  if (span === 0) return () => (to[0] + to[1]) / 2;
  return (value) => to[0] + ((value - from[0]) / span) * (to[1] - to[0]);
}

/** Round figures (1, 2 or 5 times a power of ten apart) that cover min to max in at most about `count` steps. */
export function ticks(min: number, max: number, count: number): readonly number[] {
  const size = Math.max(Math.abs(min), Math.abs(max), 1);
  // A range that is no more than the dust of calculation has no extent.
  const span = max - min > 1e-9 * size ? max - min : size;
  const rough = span / Math.max(1, count);
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = ([1, 2, 5, 10].find((m) => m * power >= rough * (1 - 1e-9)) ?? 10) * power;
  const first = Math.floor(min / step + 1e-9);
  const last = Math.max(Math.ceil(max / step - 1e-9), first + 1);
  const decimals = Math.max(0, -Math.floor(Math.log10(step)));
  return Array.from({ length: last - first + 1 }, (_, i) => Number(((first + i) * step).toFixed(decimals)));
}

/** A place as an attribute writes it: to a hundredth. */
export function at(value: number): number {
  return Math.round(value * 100) / 100;
}

/**
 * Moves places apart until neighbours stand at least `gap` from one another, within low to high and in the given order; places must ascend.
 * Where there is no room for the gap they are spread evenly.
 */
export function spread(places: readonly number[], gap: number, low: number, high: number): readonly number[] {
  const n = places.length;
  if (n === 0) return [];
  const room = n > 1 ? Math.min(gap, (high - low) / (n - 1)) : 0;
  const out: number[] = [];
  for (const place of places) out.push(Math.max(place, low, (out.at(-1) ?? Number.NEGATIVE_INFINITY) + room));
  let limit = high;
  for (let i = n - 1; i >= 0; i--) {
    out[i] = Math.min(out[i] ?? low, limit);
    limit = (out[i] ?? low) - room;
  }
  return out;
}
