/**
 * Dressed (actual) sizes of sawn lumber by nominal size, in. The widths of 2 to 4 in lumber, and what is taken off
 * timbers, by PS 20 and NDS Supplement Table 1A, from memory; worked examples read in print use 1.5, 2.5 and 3.5 by
 * 3.5, 5.5, 7.25, 9.25 and 11.25 in.
 */
export const DRESSED_SOURCE = "NDS Supplement Table 1A, PS 20: dressed sizes, from memory; read in worked examples";

/** Thickness or width under 5 in nominal, in. */
export const DRESSED_SMALL: Readonly<Record<number, number>> = { 1: 0.75, 2: 1.5, 3: 2.5, 4: 3.5 };

/** Taken off a nominal width of 5 to 7 in. */
export const OFF_MIDDLE = 0.5;
/** Taken off a nominal width of 8 in and more, where the piece is under 5 in thick. */
export const OFF_WIDE = 0.75;
/** Taken off both sizes of a timber (5 in and thicker). */
export const OFF_TIMBER = 0.5;
/** Least nominal thickness of a timber, in. */
export const TIMBER_FROM = 5;
/** Least nominal width from which OFF_WIDE is taken, in. */
export const WIDE_FROM = 8;
/** Nominal sizes that lumber is sold in, in. */
export const NOMINAL_SIZES: readonly number[] = [1, 2, 3, 4, 5, 6, 8, 10, 12, 14, 16, 18, 20, 22, 24];
