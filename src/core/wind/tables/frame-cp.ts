/**
 * External pressure coefficients Cp of the main frame, directional procedure: walls, gable, hip, monoslope and flat roofs.
 * ASCE/SEI 7-10 Fig. 27.4-1, 7-16 and 7-22 Fig. 27.3-1. Read in a page-scan of 7-22; cells that the scan lacked are from memory and stand in
 * the roof pressures printed in ASCE/SEI 7-16 Table 27.5-2, which these reproduce.
 */

/** [L/B, Cp] of the leeward wall, straight between. */
export const LEEWARD_WALL_CP = [
  [1, -0.5],
  [2, -0.3],
  [4, -0.2],
] as const;
export const WINDWARD_WALL_CP = 0.8;
export const SIDE_WALL_CP = -0.7;

/** Slopes, degrees, of the columns for wind normal to the ridge. */
export const ROOF_DEGREES = [10, 15, 20, 25, 30, 35, 45, 60] as const;
/** h/L of the rows; less takes the first, more the last. */
export const ROOF_H_OVER_L = [0.25, 0.5, 1] as const;

/** A 0 is there for interpolation only. */
export const WINDWARD_ROOF_SUCTION_CP = [
  [-0.7, -0.5, -0.3, -0.2, -0.2, 0, 0, 0],
  [-0.9, -0.7, -0.4, -0.3, -0.2, -0.2, 0, 0],
  [-1.3, -1, -0.7, -0.5, -0.3, -0.2, 0, 0],
] as const;

/** At 60 degrees and above Cp is 0.01 theta, up to 0.8. */
export const WINDWARD_ROOF_PRESSURE_CP = [
  [-0.18, 0, 0.2, 0.3, 0.3, 0.4, 0.4, 0.6],
  [-0.18, -0.18, 0, 0.2, 0.2, 0.3, 0.4, 0.6],
  [-0.18, -0.18, -0.18, 0, 0.2, 0.2, 0.3, 0.6],
] as const;

/** Columns at 10, 15 and from 20 degrees up. */
export const LEEWARD_ROOF_CP = [
  [-0.3, -0.5, -0.6],
  [-0.5, -0.5, -0.6],
  [-0.7, -0.6, -0.6],
] as const;
export const LEEWARD_ROOF_DEGREES = [10, 15, 20] as const;

/** Roofs under 10 degrees, and wind along the ridge: strips by distance from the windward edge, at h/L up to 0.5 and from 1. */
export const PARALLEL_ROOF_CP = [
  { fromH: 0, toH: 0.5, low: -0.9, high: -1.3 },
  { fromH: 0.5, toH: 1, low: -0.9, high: -0.7 },
  { fromH: 1, toH: 2, low: -0.5, high: -0.7 },
  { fromH: 2, toH: undefined, low: -0.3, high: -0.7 },
] as const;

/** The other condition for the same strips. */
export const PARALLEL_ROOF_OTHER_CP = -0.18;

/** [area ft2, factor] on the -1.3 of the first strip, straight between. */
export const STRIP_AREA_FACTOR = [
  [100, 1],
  [250, 0.9],
  [1000, 0.8],
] as const;

/** Gust-effect factor of a rigid building. */
export const GUST_FACTOR = 0.85;

/** Least load of the frame, strength level, on the vertical projection: walls and roof together. ASCE/SEI 7-10 27.4.7, 7-16 and 7-22 27.1.5. */
export const LEAST_WALL_PSF = 16;
export const LEAST_ROOF_PSF = 8;
