import type { Exposure } from "./terrain.ts";

export const HILL_SHAPES = ["ridge", "escarpment", "hill"] as const;
export type HillShape = (typeof HILL_SHAPES)[number];

export interface HillFigures {
  /** K1 / (H/Lh) */
  readonly k1Slope: Readonly<Record<Exposure, number>>;
  /** decay with height */
  readonly gamma: number;
  /** reach upwind and downwind of the crest, in Lh */
  readonly mu: { readonly upwind: number; readonly downwind: number };
}

/** Parameters of the speed-up over hills. ASCE/SEI 7-10, 7-16, 7-22 Fig. 26.8-1. "hill" is the three-dimensional axisymmetrical hill. */
export const HILLS: Readonly<Record<HillShape, HillFigures>> = {
  ridge: { k1Slope: { B: 1.3, C: 1.45, D: 1.55 }, gamma: 3, mu: { upwind: 1.5, downwind: 1.5 } },
  escarpment: { k1Slope: { B: 0.75, C: 0.85, D: 0.95 }, gamma: 2.5, mu: { upwind: 1.5, downwind: 4 } },
  hill: { k1Slope: { B: 0.95, C: 1.05, D: 1.15 }, gamma: 4, mu: { upwind: 1.5, downwind: 1.5 } },
};

/** Above this H/Lh K1 takes it, and Lh becomes 2 H in K2 and K3. */
export const STEEPEST_HILL = 0.5;
/** Hills flatter than this, or lower than these heights, give no speed-up (26.8.1, from memory). */
export const FLATTEST_HILL = 0.2;
export const LOWEST_HILL_FT: Readonly<Record<Exposure, number>> = { B: 60, C: 15, D: 15 };
