import type { AreaCurve } from "./area-curve.ts";
import type { CladdingFigure } from "./cladding-zone.ts";

const TOWARD: AreaCurve = [
  [10, 1],
  [500, 0.7],
];

/**
 * Walls of buildings up to 60 ft: zone 4 field, zone 5 within a of a corner.
 * ASCE/SEI 7-10 Fig. 30.4-1, 7-16 and 7-22 Fig. 30.3-1. The nodes give the wall pressures printed in the 2023 Florida Building Code,
 * Residential, Table R301.2(2), to the digit; that print ends at 100 ft2, the ends at 500 ft2 are from memory.
 */
export const WALLS: Omit<CladdingFigure, "figure"> = {
  printedToFt2: 100,
  print: "gives the wall pressures printed in the 2023 Florida Building Code, Residential, Table R301.2(2)",
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
