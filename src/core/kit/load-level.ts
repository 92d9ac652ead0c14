/** Strength level goes with load factor 1.0 on wind and seismic loads, allowable (stress design) level with 0.6 W and 0.7 E. */
export const LOAD_LEVELS = ["strength", "allowable"] as const;
export type LoadLevel = (typeof LOAD_LEVELS)[number];

/** What the allowable level takes of a load at strength level. ASCE/SEI 7-10, 7-16, 7-22 section 2.4. */
export const ALLOWABLE_WIND = 0.6;
export const ALLOWABLE_SEISMIC = 0.7;

/** Factor on a wind load at strength level. */
export function windLevelFactor(level: LoadLevel): number {
  return level === "allowable" ? ALLOWABLE_WIND : 1;
}

/** The factor in an expression: ", times 0.6 for the allowable level", nothing at strength level. */
export function windLevelText(level: LoadLevel): string {
  return level === "allowable" ? `, times ${ALLOWABLE_WIND} for the allowable level` : "";
}
