import type { BeamLoad, BeamSolution } from "./beam.ts";

/** A value and the place where it stands. */
export interface Extreme {
  readonly atIn: number;
  readonly value: number;
}

/** Stretches between the breaks: inside each, the load is uniform. */
function pieces(solution: BeamSolution): [number, number][] {
  const b = solution.breaksIn;
  return b.slice(1).map((to, i) => [b[i] as number, to]);
}

/** Places where the moment can be greatest: the breaks, and where the shear passes through 0 between them. */
function momentPlaces(solution: BeamSolution): number[] {
  const places = [...solution.breaksIn];
  for (const [from, to] of pieces(solution)) {
    const start = solution.shearLb(from, "right");
    const end = solution.shearLb(to, "left");
    if (start * end < 0) places.push(from + ((to - from) * start) / (start - end));
  }
  return places;
}

function greatest(places: readonly number[], of: (x: number) => number): Extreme {
  let best: Extreme = { atIn: 0, value: 0 };
  for (const atIn of places) {
    const value = of(atIn);
    if (Math.abs(value) > Math.abs(best.value)) best = { atIn, value };
  }
  return best;
}

/** The moment of the largest size, lb in, sagging positive. */
export function greatestMoment(solution: BeamSolution): Extreme {
  return greatest(momentPlaces(solution), solution.momentLbIn);
}

/** The largest sagging moment (0 where there is none), lb in. */
export function greatestSagging(solution: BeamSolution): Extreme {
  return greatest(momentPlaces(solution), (x) => Math.max(0, solution.momentLbIn(x)));
}

/** The largest hogging moment, as a number of 0 or below, lb in. */
export function greatestHogging(solution: BeamSolution): Extreme {
  return greatest(momentPlaces(solution), (x) => Math.min(0, solution.momentLbIn(x)));
}

/**
 * The shear of the largest size, lb.
 * @param leaveOutIn distance from each support within which the shear of a uniform load is left out (the depth of a
 * wood member, NDS 3.4.3.1); a support with a point load that near, or near its neighbor, keeps its whole shear; 0 leaves out none
 */
export function greatestShear(solution: BeamSolution, leaveOutIn = 0): Extreme {
  const { supportsIn, loads, lengthIn } = solution.beam;
  let best: Extreme = { atIn: 0, value: 0 };
  const take = (atIn: number, side: "left" | "right") => {
    const value = solution.shearLb(atIn, side);
    if (Math.abs(value) > Math.abs(best.value)) best = { atIn, value };
  };
  const left = [0, ...supportsIn];
  const right = [...supportsIn, lengthIn];
  left.forEach((from, i) => {
    const to = right[i] as number;
    if (to <= from) return;
    const keep = (at: number) => (supportsIn.includes(at) && !pointNear(loads, at, leaveOutIn) ? leaveOutIn : 0);
    const [a, b] = [keep(from), keep(to)];
    const whole = a + b >= to - from;
    const [start, end] = whole ? [from, to] : [from + a, to - b];
    // A point load right at the depth still counts: the shear beside it, on the side of the support.
    take(start, start > from ? "left" : "right");
    take(end, end < to ? "right" : "left");
    for (const x of solution.breaksIn) {
      if (x <= start || x >= end) continue;
      take(x, "left");
      take(x, "right");
    }
  });
  return best;
}

function pointNear(loads: readonly BeamLoad[], supportIn: number, withinIn: number): boolean {
  return loads.some((l) => l.kind === "point" && l.lb !== 0 && Math.abs(l.atIn - supportIn) < withinIn);
}

/** Parts of a stretch that are looked through for a turn of the elastic line; a stretch of uniform load has three at most. */
const PARTS = 24;

/** The deflection of the largest size, in, downward positive. */
export function greatestDeflection(solution: BeamSolution): Extreme {
  const places = [...solution.breaksIn];
  for (const [from, to] of pieces(solution)) {
    const at = (i: number) => from + ((to - from) * i) / PARTS;
    const y = Array.from({ length: PARTS + 1 }, (_, i) => solution.deflectionIn(at(i)));
    for (let i = 1; i < PARTS; i++) {
      const rise = (y[i] as number) - (y[i - 1] as number);
      const next = (y[i + 1] as number) - (y[i] as number);
      if (rise * next <= 0) places.push(turn(solution, at(i - 1), at(i + 1)));
    }
  }
  return greatest(places, solution.deflectionIn);
}

const GOLDEN = (Math.sqrt(5) - 1) / 2;

/** Where the deflection is of the largest size between two places, by golden sections. */
function turn(solution: BeamSolution, fromIn: number, toIn: number): number {
  const sign = Math.sign(solution.deflectionIn((fromIn + toIn) / 2));
  const size = (x: number) => sign * solution.deflectionIn(x);
  let [a, b] = [fromIn, toIn];
  for (let i = 0; i < 60; i++) {
    const c = b - GOLDEN * (b - a);
    const d = a + GOLDEN * (b - a);
    if (size(c) > size(d)) b = d;
    else a = c;
  }
  return (a + b) / 2;
}
