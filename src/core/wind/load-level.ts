/** Strength level goes with 1.0 W, allowable stress level is 0.6 W. ASCE/SEI 7-10, 7-16, 7-22 sections 2.3 and 2.4. */
export const LOAD_LEVELS = ["strength", "allowable"] as const;
export type LoadLevel = (typeof LOAD_LEVELS)[number];

export const ALLOWABLE_FACTOR = 0.6;
