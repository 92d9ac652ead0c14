import { saturationPressurePa } from "../../../src/core/enclosure/air/saturation.ts";

/** A second way to solve condensation, for checking: the obstacle problem by projected relaxation. No code is shared with the taut string. */

const DELTA = 2e-10;

export interface TestWall {
  readonly r: readonly number[];
  readonly sd: readonly number[];
  readonly rsi: number;
  readonly rse: number;
}

export interface TestMonth {
  readonly seconds: number;
  readonly ti: number;
  readonly pi: number;
  readonly te: number;
  readonly pe: number;
}

export function saturationAtNodes(wall: TestWall, ti: number, te: number): number[] {
  const total = wall.rsi + wall.rse + wall.r.reduce((a, b) => a + b, 0);
  let sum = wall.rsi;
  const out = [saturationPressurePa(ti + ((te - ti) * sum) / total, "ISO 13788")];
  for (const r of wall.r) {
    sum += r;
    out.push(saturationPressurePa(ti + ((te - ti) * sum) / total, "ISO 13788"));
  }
  return out;
}

/** Pressures that carry the least flow energy under p <= psat, with p = psat at wet nodes; and the water that each node gathers. */
export function relax(
  wall: TestWall,
  m: TestMonth,
  wet: ReadonlySet<number>,
): { p: number[]; gain: Map<number, number> } {
  const limit = saturationAtNodes(wall, m.ti, m.te);
  const last = wall.sd.length;
  const g = wall.sd.map((sd) => 1 / sd);
  const p = limit.map((s, i) => Math.min(s, m.pi + ((m.pe - m.pi) * i) / last));
  p[0] = Math.min(m.pi, limit[0] as number);
  p[last] = Math.min(m.pe, limit[last] as number);
  for (const n of wet) p[n] = limit[n] as number;
  for (let sweep = 0, change = 1; sweep < 200000 && change > 1e-11; sweep++) {
    change = 0;
    for (let j = 1; j < last; j++) {
      if (wet.has(j)) continue;
      const [a, b] = [g[j - 1] as number, g[j] as number];
      const free = (a * (p[j - 1] as number) + b * (p[j + 1] as number)) / (a + b);
      const old = p[j] as number;
      const next = Math.min(limit[j] as number, old + 1.6 * (free - old));
      change = Math.max(change, Math.abs(next - old));
      p[j] = next;
    }
  }
  const gain = new Map<number, number>();
  for (let j = 1; j < last; j++) {
    const net =
      DELTA *
      ((g[j - 1] as number) * ((p[j - 1] as number) - (p[j] as number)) -
        (g[j] as number) * ((p[j] as number) - (p[j + 1] as number)));
    if (wet.has(j) || ((p[j] as number) >= (limit[j] as number) - 1e-9 && net > 1e-17)) gain.set(j, net);
  }
  return { p, gain };
}

/** A year from a given first month. Returns the standing water by node after each month. */
export function relaxYear(
  wall: TestWall,
  months: readonly TestMonth[],
  start: number,
  split: boolean,
): Map<number, number>[] {
  let water = new Map<number, number>();
  const out: Map<number, number>[] = [];
  for (let i = 0; i < 12; i++) {
    const m = months[(start + i) % 12] as TestMonth;
    let left = m.seconds;
    for (let part = 0; left > 0 && part < 500; part++) {
      const { gain } = relax(wall, m, new Set(water.keys()));
      let dt = left;
      if (split) for (const [n, g] of gain) if (g < 0) dt = Math.min(dt, (water.get(n) ?? 0) / -g);
      const next = new Map<number, number>();
      for (const [n, g] of gain) {
        const amount = (water.get(n) ?? 0) + g * dt;
        if (amount > 1e-12) next.set(n, amount);
      }
      water = next;
      left -= dt;
    }
    out.push(water);
  }
  return out;
}
