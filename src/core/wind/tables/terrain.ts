import type { PerEdition } from "../../kit/edition.ts";

/** Surface roughness upwind: B suburban or wooded, C open, D flat and unobstructed or water. */
export const EXPOSURES = ["B", "C", "D"] as const;
export type Exposure = (typeof EXPOSURES)[number];

export interface Terrain {
  /** power-law exponent of the 3-second gust */
  readonly alpha: number;
  /** nominal height of the boundary layer */
  readonly zgFt: number;
}

const TO_2016: Readonly<Record<Exposure, Terrain>> = {
  B: { alpha: 7, zgFt: 1200 },
  C: { alpha: 9.5, zgFt: 900 },
  D: { alpha: 11.5, zgFt: 700 },
};

/** ASCE/SEI 7-10 Table 26.9-1, 7-16 and 7-22 Table 26.11-1. */
export const TERRAIN: PerEdition<Readonly<Record<Exposure, Terrain>>> = {
  "7-10": TO_2016,
  "7-16": TO_2016,
  "7-22": {
    B: { alpha: 7.5, zgFt: 3280 },
    C: { alpha: 9.8, zgFt: 2460 },
    D: { alpha: 11.5, zgFt: 1935 },
  },
};

/** Leading factor of Kz: note 1 of ASCE/SEI 7-10 Table 27.3-1, 7-16 and 7-22 Table 26.10-1. */
export const KZ_FACTOR: PerEdition<number> = { "7-10": 2.01, "7-16": 2.01, "7-22": 2.41 };

/** Heights below this take its Kz; the printed tables end at the upper one. */
export const KZ_LOWEST_FT = 15;
export const KZ_HIGHEST_FT = 500;

/** Least Kz in Exposure B for low-rise envelope loads, and in 7-10 for components and cladding: footnote of the Kz tables. */
export const KZ_LEAST_B = 0.7;
