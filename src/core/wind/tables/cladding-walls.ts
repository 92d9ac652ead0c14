import type { AreaCurve } from "../area-curve.ts";
import type { CladdingFigure } from "../cladding-figure.ts";

const TOWARD: AreaCurve = [
  [10, 1],
  [500, 0.7],
];

/**
 * Walls of buildings up to 60 ft: zone 4 field, zone 5 within a of a corner.
 * ASCE/SEI 7-10 Fig. 30.4-1, 7-16 and 7-22 Fig. 30.3-1. The node values are from memory; they give the pressures of the
 * simplified tables for h 30 ft, Exposure B (ASCE/SEI 7-10 Fig. 30.5-1, residential code wall rows) to the printed digit.
 */
export const WALLS: Omit<CladdingFigure, "figure"> = {
  basis: "checked",
  zones: {
    "4": {
      toward: TOWARD,
      away: [
        [10, -1.1],
        [500, -0.8],
      ],
    },
    "5": {
      toward: TOWARD,
      away: [
        [10, -1.4],
        [500, -0.8],
      ],
    },
  },
};

/** Wall GCp may be reduced to this share where the roof slopes no more than this: note 5 of the wall figure, from memory. */
export const LOW_SLOPE_WALL_FACTOR = 0.9;
export const LOW_SLOPE_WALL_DEGREES = 10;
