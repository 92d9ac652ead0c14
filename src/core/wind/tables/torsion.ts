import { renumbered } from "../../kit/edition.ts";

/**
 * Shares of the whole wind force in the four load cases of the frame: 2 and 4 with a torsional moment, 3 and 4 on both axes at once. 0.563 is printed for
 * 0.75 x 0.75. Read in a public copy of the figure of 7-10; its number in 7-16 and 7-22 from memory.
 */
export const TORSION_CASES = [
  { number: 1, share: 1, twist: false, both: false },
  { number: 2, share: 0.75, twist: true, both: false },
  { number: 3, share: 0.75, twist: false, both: true },
  { number: 4, share: 0.563, twist: true, both: true },
] as const;
export type TorsionCase = (typeof TORSION_CASES)[number];

/** Eccentricity as a share of the length of the face. Read in the same figure. */
export const ECCENTRICITY_SHARE = 0.15;

export const TORSION_FIGURE = renumbered("Fig. 27.4-8", "Fig. 27.3-8");
