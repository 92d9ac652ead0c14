import type { AreaCurve } from "./area-curve.ts";
import type { CladdingFigure } from "./cladding-zone.ts";

// Monoslope roofs, ASCE/SEI 7-10 Fig. 30.4-5A and B, 7-16 Fig. 30.3-5A and B. From memory.
// Zone 1 field, 2 edges, 3 corners; a prime marks the high side of the shallow figure.

const TOWARD_3_TO_10: AreaCurve = [
  [10, 0.3],
  [100, 0.2],
];

export const MONOSLOPE_3_TO_10: Omit<CladdingFigure, "figure"> = {
  printedToFt2: 0,
  zones: {
    "1": { toward: TOWARD_3_TO_10, away: [[10, -1.1]] },
    "2": {
      toward: TOWARD_3_TO_10,
      away: [
        [10, -1.3],
        [100, -1.2],
      ],
    },
    "2'": {
      toward: TOWARD_3_TO_10,
      away: [
        [10, -1.6],
        [100, -1.5],
      ],
    },
    "3": {
      toward: TOWARD_3_TO_10,
      away: [
        [10, -1.8],
        [100, -1.2],
      ],
    },
    "3'": {
      toward: TOWARD_3_TO_10,
      away: [
        [10, -2.6],
        [100, -1.6],
      ],
    },
  },
};

const TOWARD_10_TO_30: AreaCurve = [
  [10, 0.4],
  [100, 0.3],
];

export const MONOSLOPE_10_TO_30: Omit<CladdingFigure, "figure"> = {
  printedToFt2: 0,
  zones: {
    "1": {
      toward: TOWARD_10_TO_30,
      away: [
        [10, -1.3],
        [100, -1.1],
      ],
    },
    "2": {
      toward: TOWARD_10_TO_30,
      away: [
        [10, -1.6],
        [100, -1.2],
      ],
    },
    "3": {
      toward: TOWARD_10_TO_30,
      away: [
        [10, -2.9],
        [100, -2],
      ],
    },
  },
};
