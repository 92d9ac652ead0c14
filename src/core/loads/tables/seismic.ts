import type { RiskCategory } from "./snow.ts";

/**
 * Response modification R of systems of walls. Read in permit calculations of three houses to ASCE/SEI 7-16: "light-frame (wood) walls sheathed with wood
 * structural panels rated for shear resistance", R 6.5. That of thick panels as shear walls is not held: their R is asked.
 */
export const LIGHT_FRAME_R = 6.5;
export const LIGHT_FRAME_WORDS: readonly string[] = [
  "light-frame wood walls",
  "light frame wood walls",
  "wood structural panel walls",
  "plywood walls",
  "osb walls",
  "stud walls",
];

/** Approximate period Ta = Ct hn^x, s with hn in ft, of other systems. Table 12.8-2, read in the same calculations. */
export const PERIOD = { ct: 0.02, exponent: 0.75 } as const;
/** Least response coefficient: 0.044 SDS Ie, not below 0.01, and 0.5 S1 / (R / Ie) where S1 is 0.6 or more. Eq. 12.8-5, 12.8-6, read there. */
export const LEAST_CS = { perSds: 0.044, ever: 0.01, perS1: 0.5, fromS1: 0.6 } as const;
/** Greatest height of light-frame walls in categories D to F, ft. Table 12.2-1, from memory; the period then stays below 0.5 s. */
export const HIGHEST_FT = 65;

/** Seismic importance factor Ie. Table 1.5-2; 1 of categories I and II read there, the others from memory. */
export const SEISMIC_IMPORTANCE: Readonly<Record<RiskCategory, number>> = { I: 1, II: 1, III: 1.25, IV: 1.5 };

export type SeismicCategory = "A" | "B" | "C" | "D" | "E" | "F";
