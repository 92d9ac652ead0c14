import { BadInput } from "../../kit/refusal.ts";
import { solveLinear } from "./linear.ts";

/** A load across a beam; downward is positive. */
export type BeamLoad =
  | { readonly kind: "point"; readonly atIn: number; readonly lb: number }
  | { readonly kind: "uniform"; readonly fromIn: number; readonly toIn: number; readonly lbPerIn: number };

/** A straight beam of one stiffness on supports that neither sink nor hold its slope; its ends may hang over. */
export interface Beam {
  readonly lengthIn: number;
  /** from the left end, rising; two at least */
  readonly supportsIn: readonly number[];
  /** E I, lb in2 */
  readonly bendingStiffness: number;
  /** G times the shear area, lb; left out where shear does not count in the deflection */
  readonly shearStiffness?: number;
  readonly loads: readonly BeamLoad[];
}

/** Which side of a jump a shear is taken on. */
export type Side = "left" | "right";

/** The answer of a beam as functions of the distance from its left end. */
export interface BeamSolution {
  readonly beam: Beam;
  /** of each support, upward positive */
  readonly reactionsLb: readonly number[];
  /** ends, supports and edges of loads, rising, each once */
  readonly breaksIn: readonly number[];
  shearLb(xIn: number, side: Side): number;
  /** sagging positive */
  momentLbIn(xIn: number): number;
  /** downward positive */
  deflectionIn(xIn: number): number;
}

/** A force at a place, acting up on the beam where positive. */
interface Term {
  readonly xIn: number;
  readonly lb: number;
}

/** Macaulay's bracket: the distance past `at`, to a power, nothing before it. */
function past(xIn: number, atIn: number, power: number): number {
  return xIn > atIn ? (xIn - atIn) ** power : 0;
}

/** Moment at x of the loads left of x, sagging positive without the reactions: never above 0 under downward loads. */
function loadMoment(loads: readonly BeamLoad[], xIn: number): number {
  let sum = 0;
  for (const load of loads) {
    if (load.kind === "point") sum -= load.lb * past(xIn, load.atIn, 1);
    else sum -= (load.lbPerIn / 2) * (past(xIn, load.fromIn, 2) - past(xIn, load.toIn, 2));
  }
  return sum;
}

/** Twice integrated moment of the loads. */
function loadBend(loads: readonly BeamLoad[], xIn: number): number {
  let sum = 0;
  for (const load of loads) {
    if (load.kind === "point") sum -= (load.lb / 6) * past(xIn, load.atIn, 3);
    else sum -= (load.lbPerIn / 24) * (past(xIn, load.fromIn, 4) - past(xIn, load.toIn, 4));
  }
  return sum;
}

function loadShear(loads: readonly BeamLoad[], xIn: number, side: Side): number {
  let sum = 0;
  for (const load of loads) {
    if (load.kind === "uniform") sum -= load.lbPerIn * (past(xIn, load.fromIn, 1) - past(xIn, load.toIn, 1));
    else if (load.atIn < xIn || (load.atIn === xIn && side === "right")) sum -= load.lb;
  }
  return sum;
}

/** Downward force of all loads. */
function totalLoad(loads: readonly BeamLoad[]): number {
  let sum = 0;
  for (const load of loads) sum += load.kind === "point" ? load.lb : load.lbPerIn * (load.toIn - load.fromIn);
  return sum;
}

/**
 * Exact answer of a beam by Macaulay's brackets: reactions and the two constants of the elastic line from
 * equilibrium and from no deflection at the supports. Shear deflection, where a shear stiffness is given, enters the
 * same conditions, so that the reactions of continuous beams are those of a shear-flexible beam (Timoshenko).
 * @throws BadInput for a load off the beam
 * Source: statics and the elastic line of a beam.
 */
export function solveBeam(beam: Beam): BeamSolution {
  checkPlaces(beam);
  const { lengthIn: length, supportsIn: supports, loads, bendingStiffness: ei, shearStiffness: ga } = beam;
  // Shear flexibility as a share of the beam's own scale, 0 where shear does not count.
  const flex = ga === undefined ? 0 : ei / (ga * length ** 2);
  const rows: number[][] = [];
  const rights: number[] = [];
  rows.push([...supports.map(() => 1), 0, 0]);
  rights.push(totalLoad(loads));
  rows.push([...supports.map((s) => (length - s) / length), 0, 0]);
  rights.push(-loadMoment(loads, length) / length);
  for (const at of supports) {
    const row = supports.map((s) => -past(at, s, 3) / (6 * length ** 3) + (flex * past(at, s, 1)) / length);
    rows.push([...row, at / length, 1]);
    rights.push(loadBend(loads, at) / length ** 3 - (flex * loadMoment(loads, at)) / length);
  }
  const found = solveLinear(rows, rights);
  const reactionsLb = found.slice(0, supports.length);
  const slope = found[supports.length] ?? 0;
  const start = found[supports.length + 1] ?? 0;
  const forces: Term[] = supports.map((xIn, i) => ({ xIn, lb: reactionsLb[i] ?? 0 }));
  const momentLbIn = (x: number) => forces.reduce((m, f) => m + f.lb * past(x, f.xIn, 1), loadMoment(loads, x));
  return {
    beam,
    reactionsLb,
    breaksIn: breaks(beam),
    shearLb: (x, side) =>
      forces.reduce(
        (v, f) => (f.xIn < x || (f.xIn === x && side === "right") ? v + f.lb : v),
        loadShear(loads, x, side),
      ),
    momentLbIn,
    deflectionIn(x) {
      const bend = forces.reduce((b, f) => b + (f.lb / 6) * past(x, f.xIn, 3), loadBend(loads, x));
      const line = slope * length ** 2 * x + start * length ** 3;
      return (line - bend) / ei + (ga === undefined ? 0 : momentLbIn(x) / ga);
    },
  };
}

function checkPlaces(beam: Beam): void {
  const off = (x: number) => !(x >= 0 && x <= beam.lengthIn);
  for (const load of beam.loads) {
    const ends = load.kind === "point" ? [load.atIn, load.atIn] : [load.fromIn, load.toIn];
    if (ends.some(off) || (load.kind === "uniform" && load.toIn <= load.fromIn)) {
      throw new BadInput(
        `A load stands from ${ends[0]} to ${ends[1]} in`,
        `the beam goes from 0 to ${beam.lengthIn} in`,
        "Give its place from the left end of the whole beam",
      );
    }
  }
}

function breaks(beam: Beam): number[] {
  const all = [0, beam.lengthIn, ...beam.supportsIn];
  for (const load of beam.loads) {
    if (load.kind === "point") all.push(load.atIn);
    else all.push(load.fromIn, load.toIn);
  }
  return [...new Set(all)].sort((a, b) => a - b);
}
