import { at } from "../at.ts";
import type { Effort } from "../effort.ts";
import type { IntegerProgram, Variable } from "./program.ts";
import type { Fraction, Relaxation } from "./relaxation.ts";

/** Largest common denominator of the multipliers of one cut. */
const MOST_PARTS = 720;
/** Multiples of the multipliers of one row that are tried. */
const MULTIPLES = [1, -1, 2, -2, 3, -3, 4, -4, 5, -5];
/** How far a value must be cut off, and how many cuts are added at a time. */
const LEAST_GAIN = 0.02;
const MOST_CUTS = 12;
/** Rows that cuts are made from at a time, those farthest from whole numbers. */
const MOST_ROWS = 16;

/** Effort for one entry of one cut. */
const ENTRY_EFFORT = 3;

interface CutRow {
  /** entry of each variable */
  readonly entries: Int32Array;
  readonly total: number;
  readonly gain: number;
}

/**
 * Cuts of R. Gomory (1958) and V. Chvatal (1973) that the solution violates: the rows times any multipliers, rounded down
 * on either side, hold for all whole numbers from 0 on. Multipliers are whole parts of a common denominator, so that
 * the rounding is exact.
 */
export function cutsOf(program: IntegerProgram, relaxation: Relaxation, effort: Effort): CutRow[] {
  const values = relaxation.values();
  const found: CutRow[] = [];
  const entries = program.variables.reduce((sum, v) => sum + v.rows.length + 4, program.totals.length);
  const off = ({ value }: Fraction): number => Math.abs(value - Math.round(value));
  const rows = relaxation.fractions().sort((a, b) => off(b) - off(a) || a.row - b.row);
  for (const { row } of rows.slice(0, MOST_ROWS)) {
    effort.spend(MULTIPLES.length * entries * ENTRY_EFFORT + MOST_PARTS * 4);
    const multipliers = relaxation.multipliers(row);
    const parts = denominatorOf(multipliers);
    const whole = Int32Array.from(multipliers, (v) => Math.round(v * parts));
    let best: CutRow | undefined;
    for (const times of MULTIPLES) {
      const cut = cutBy(program, whole, times, parts, values);
      if (cut.gain > LEAST_GAIN && (!best || cut.gain > best.gain)) best = cut;
    }
    if (best) found.push(best);
  }
  return found.sort((a, b) => b.gain - a.gain).slice(0, MOST_CUTS);
}

/** The smallest common denominator, or the largest tried where there is none. */
function denominatorOf(multipliers: Float64Array): number {
  for (let parts = 1; parts < MOST_PARTS; parts++) {
    if (multipliers.every((v) => Math.abs(v * parts - Math.round(v * parts)) < 1e-6 * parts)) return parts;
  }
  return MOST_PARTS;
}

const modulo = (a: number, n: number): number => ((a % n) + n) % n;

/** The rows, each times a whole number of parts, rounded down; gain: by how much the solution violates it, in steps of its own length. */
function cutBy(
  program: IntegerProgram,
  multipliers: Int32Array,
  times: number,
  parts: number,
  values: Float64Array,
): CutRow {
  const by = multipliers.map((v) => modulo(v * times, parts));
  const entries = Int32Array.from(program.variables, (v) =>
    Math.floor(v.rows.reduce((sum, r, k) => sum + at(by, r) * at(v.entries, k), 0) / parts),
  );
  const total = Math.floor(program.totals.reduce((sum, t, r) => sum + at(by, r) * t, 0) / parts);
  let left = 0;
  let norm = 0;
  entries.forEach((e, j) => {
    left += e * (values[j] as number);
    norm += e * e;
  });
  return { entries, total, gain: norm === 0 ? 0 : (left - total) / Math.sqrt(norm) };
}

/** The program with a row more for each cut, and a variable for what the row leaves. */
export function withCuts(program: IntegerProgram, cuts: readonly CutRow[]): IntegerProgram {
  const rows = program.totals.length;
  const variables = program.variables.map((v, j): Variable => {
    const some = cuts.flatMap((c, k) => (c.entries[j] ? [k] : []));
    if (some.length === 0) return v;
    return {
      ...v,
      rows: [...v.rows, ...some.map((k) => rows + k)],
      entries: [...v.entries, ...some.map((k) => at(at(cuts, k).entries, j))],
    };
  });
  return {
    ...program,
    totals: [...program.totals, ...cuts.map((c) => c.total)],
    variables: [
      ...variables,
      ...cuts.map((_, k): Variable => ({ cost: 0, most: Number.POSITIVE_INFINITY, rows: [rows + k], entries: [1] })),
    ],
  };
}
