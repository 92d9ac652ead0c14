/** Constants of panels that bend flat, by the foot of width. */

/** Inches of width that panel values stand for. */
export const PANEL_WIDTH_IN = 12;

/** Mean shear stress of a rectangle to the one that deflection goes by (6/5). */
export const SHEAR_FORM = 1.2;

/**
 * Shear deflection of plywood: C w t^2 l^2 / (1270 (E/1.1) I), w psf, lengths in, of any number of spans.
 * Formwork textbook (4th ed. 2010) after the trade association; E/1.1 is inferred: it regenerates 59 printed pressures.
 */
export const PLYWOOD_SHEAR = { over: 1270, eShare: 1.1 } as const;

/** Added to the clear span for deflection between supports of some width, in (2 in nominal framing). */
export const ADDED_TO_CLEAR_IN = 0.25;

/** Floors that swing slower than this are felt; EN 1995-1-1 7.3.3, from memory. */
export const LIVELY_HZ = 8;

/** Standard gravity, in/s2. */
export const GRAVITY_IN_S2 = 386.09;
