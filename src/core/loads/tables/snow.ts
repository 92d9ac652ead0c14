/** Risk categories of buildings: II is the ordinary one. */
export const RISK_CATEGORIES = ["I", "II", "III", "IV"] as const;
export type RiskCategory = (typeof RISK_CATEGORIES)[number];

/** Snow importance factor. ASCE/SEI 7-10 and 7-16 Table 1.5-2, from memory; 7-22 has none. */
export const SNOW_IMPORTANCE: Readonly<Record<RiskCategory, number>> = { I: 0.8, II: 1, III: 1.1, IV: 1.2 };

/** Ground snow load up to which the minimum load of low-slope roofs grows, psf. 7-10 and 7-16 section 7.3.4. */
export const LEAST_SNOW_UP_TO_PSF = 20;
/** Most that the minimum load can be in 7-22, psf. 7-22 section 7.3.3; values from memory. */
export const LEAST_SNOW_MOST_PSF: Readonly<Record<RiskCategory, number>> = { I: 25, II: 30, III: 35, IV: 40 };

export const ROOF_SURFACES = ["other", "slippery"] as const;
export type RoofSurface = (typeof ROOF_SURFACES)[number];

/** Slope up to which Cs is 1, degrees, for Ct up to 1.0, up to 1.1, and above. ASCE/SEI 7-10 Fig. 7-2, 7-16 and 7-22 Fig. 7.4-1. */
export const CS_BREAK_DEGREES: Readonly<Record<RoofSurface, readonly [warm: number, cold: number, unheated: number]>> =
  {
    slippery: [5, 10, 15],
    other: [30, 37.5, 45],
  };
/** Slope from which no snow stays. */
export const NO_SNOW_DEGREES = 70;

/** Slope under which gable, hip and monoslope roofs take the minimum load, degrees. */
export const LOW_SLOPE_DEGREES = 15;

/** Slopes between which gable and hip roofs take unbalanced loads: 1/2 on 12 and 7 on 12. */
export const UNBALANCED_FROM_DEGREES = (Math.atan(0.5 / 12) * 180) / Math.PI;
export const UNBALANCED_TO_DEGREES = (Math.atan(7 / 12) * 180) / Math.PI;
/** Eave to ridge, up to which a simple rafter takes the uniform unbalanced load, ft. */
export const SIMPLE_RAFTER_FT = 20;

/** Rain on snow, psf: 5 to 7-16, 8 from 7-22. */
export const RAIN_ON_SNOW_PSF = { "7-10": 5, "7-16": 5, "7-22": 8 } as const;

/** Shortest fetch of a drift, ft. */
export const SHORTEST_FETCH_FT = 20;
export const HEAVIEST_SNOW_PCF = 30;
