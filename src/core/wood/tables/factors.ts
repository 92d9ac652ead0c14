import { recalled } from "../../kit/known.ts";
import type { Grade } from "./grades.ts";

/**
 * Adjustment factors of the NDS. From memory of NDS 2015, 2018 and 2024 and their Supplements; the size factors of
 * bending and the repetitive factor are confirmed by printed ceiling joist spans, 0.85, 0.97 and 1.15 were read in worked examples.
 */
export const FACTORS_SOURCE = recalled("NDS Supplement Table 4A adjustment factors");

/** Size factors of one nominal width: bending where the ply is 2 or 3 in thick, where it is 4 in, tension, compression. */
export interface SizeFactors {
  readonly widthIn: number;
  readonly bending: number;
  readonly bendingThick: number;
  readonly tension: number;
  readonly compression: number;
}

const size = (widthIn: number, bending: number, bendingThick: number, tension: number, compression: number) => ({
  widthIn,
  bending,
  bendingThick,
  tension,
  compression,
});

/** Of select structural to No. 3; the last row holds for every larger width. */
const SIZE_FACTORS: readonly SizeFactors[] = [
  size(2, 1.5, 1.5, 1.5, 1.15),
  size(3, 1.5, 1.5, 1.5, 1.15),
  size(4, 1.5, 1.5, 1.5, 1.15),
  size(5, 1.4, 1.4, 1.4, 1.1),
  size(6, 1.3, 1.3, 1.3, 1.1),
  size(8, 1.2, 1.3, 1.2, 1.05),
  size(10, 1.1, 1.2, 1.1, 1),
  size(12, 1, 1.1, 1, 1),
  size(14, 0.9, 1, 0.9, 0.9),
];

/** Of stud grade, which from 8 in wide on takes the values of No. 3. */
const STUD_SIZE_FACTORS: readonly SizeFactors[] = [
  size(2, 1.1, 1.1, 1.1, 1.05),
  size(3, 1.1, 1.1, 1.1, 1.05),
  size(4, 1.1, 1.1, 1.1, 1.05),
  size(5, 1, 1, 1, 1),
  size(6, 1, 1, 1, 1),
];

export function sizeRows(grade: Grade): readonly SizeFactors[] {
  return grade === "stud" ? STUD_SIZE_FACTORS : SIZE_FACTORS;
}

/** Flat use: factor by the nominal width of the wide face, for plies of 2 or 3 in and of 4 in. */
export const FLAT_USE: readonly (readonly [widthIn: number, thin: number, thick: number])[] = [
  [2, 1, 1],
  [4, 1.1, 1],
  [5, 1.1, 1.05],
  [6, 1.15, 1.05],
  [8, 1.15, 1.05],
  [10, 1.2, 1.1],
];

/** Wet service factors: one for each value. */
export interface WetFactors {
  readonly Fb: number;
  readonly Ft: number;
  readonly Fv: number;
  readonly Fcp: number;
  readonly Fc: number;
  readonly E: number;
  readonly Emin: number;
  readonly source: string;
}

/** Sawn lumber 2 to 4 in thick, over 19 % moisture. */
export const WET_LUMBER: WetFactors = {
  Fb: 0.85,
  Ft: 1,
  Fv: 0.97,
  Fcp: 0.67,
  Fc: 0.8,
  E: 0.9,
  Emin: 0.9,
  source: "NDS Supplement Table 4A, from memory; 0.85, 0.97 and 0.9 read in a worked example",
};

/** Bending and compression below these values (with the size factor, psi) take no wet service factor. */
export const WET_FREE = { Fb: 1150, Fc: 750 } as const;

/** Sawn timbers 5 in and thicker. */
export const WET_TIMBER: WetFactors = {
  Fb: 1,
  Ft: 1,
  Fv: 1,
  Fcp: 0.67,
  Fc: 0.91,
  E: 1,
  Emin: 1,
  source: recalled("NDS Supplement Table 4D"),
};

/** Glued laminated timber, 16 % moisture and more. */
export const WET_GLULAM: WetFactors = {
  Fb: 0.8,
  Ft: 0.8,
  Fv: 0.875,
  Fcp: 0.53,
  Fc: 0.73,
  E: 0.833,
  Emin: 0.833,
  source: recalled("NDS Supplement Table 5A"),
};

/** Thickness: dimension lumber from, its thicker class from, timbers from (nominal in; and actual in). */
export const TIMBER = { lumberFrom: 2, thickLumber: 4, from: 5, actualFrom: 4.5 } as const;

/** Repetitive members: at most this far apart, in, three or more with a deck that shares the load. */
export const REPETITIVE_MOST_IN = 24;
export const REPETITIVE_SAWN = 1.15;
export const REPETITIVE_COMPOSITE = 1.04;

/** E to Emin (NDS Appendix D): 1.03 E (1 - 1.645 COV) / 1.66. */
export const EMIN = { adjust: 1.03, fractile: 1.645, safety: 1.66, covSawn: 0.25, covMade: 0.1 } as const;

/** Beam stability (NDS 3.3.3). */
export const BEAM_STABILITY = { euler: 1.2, sum: 1.9, ratio: 0.95, mostSlenderness: 50 } as const;

/** Effective length of a beam, load not listed (NDS Table 3.3.3): up to each lu/d, le = by lu + plus d. */
export const BEAM_LENGTHS: readonly { readonly upTo: number; readonly by: number; readonly plus: number }[] = [
  { upTo: 7, by: 2.06, plus: 0 },
  { upTo: 14.3, by: 1.63, plus: 3 },
  { upTo: Number.POSITIVE_INFINITY, by: 1.84, plus: 0 },
];

/** Column stability (NDS 3.7.1). */
export const COLUMN_STABILITY = { euler: 0.822, sawn: 0.8, made: 0.9, mostSlenderness: 50 } as const;

/** Built-up columns (NDS 15.3): factor on the stability about the fastened axis, and the plies that it holds for. */
export const BUILT_UP = { nailed: 0.6, bolted: 0.75, leastPlies: 2, mostPlies: 5, leastPlyIn: 1.5 } as const;

/** Bearing (NDS 3.10.4): (lb + 0.375) / lb under 6 in long, 3 in or more from the end. */
export const BEARING = { add: 0.375, under: 6, fromEnd: 3 } as const;

/** Greatest span of joists and rafters in the span tables of the residential code, ft. */
export const MOST_SPAN_FT = 26;
