import type { AreaCurve } from "./area-curve.ts";
import type { CladdingFigure } from "./cladding-zone.ts";

// ASCE/SEI 7-10 gable and hip roofs: zone 1 field, 2 strips of width a along eave, rake and ridge, 3 corners.

const TOWARD_7_TO_27: AreaCurve = [
  [10, 0.5],
  [100, 0.3],
];

/**
 * Above 7 to 27 degrees. From memory; zones 1 and 2 and the toward curve give the pressures of the 2018 residential code table, zone 3 at 10 ft2
 * those of an engineer's sheet in a county permit archive.
 */
export const GABLE_7_TO_27_7_10: CladdingFigure = {
  figure: "Fig. 30.4-2B",
  printedToFt2: 100_000,
  print: "gives the pressures of the 2018 residential code table",
  zones: {
    "1": {
      toward: TOWARD_7_TO_27,
      away: [
        [10, -0.9],
        [100, -0.8],
      ],
    },
    "2": {
      toward: TOWARD_7_TO_27,
      away: [
        [10, -1.7],
        [100, -1.2],
      ],
    },
    "3": {
      printedToFt2: 10,
      toward: TOWARD_7_TO_27,
      away: [
        [10, -2.6],
        [100, -2],
      ],
    },
  },
};

const TOWARD_27_TO_45: AreaCurve = [
  [10, 0.9],
  [100, 0.8],
];
const EDGE_27_TO_45: AreaCurve = [
  [10, -1.2],
  [100, -1],
];

/** Above 27 to 45 degrees. From memory; at 10 ft2 the suctions are those of an engineer's sheet in a county permit archive. */
export const GABLE_27_TO_45_7_10: CladdingFigure = {
  figure: "Fig. 30.4-2C",
  printedToFt2: 10,
  print: "gives the suctions of an engineer's sheet in a county permit archive",
  zones: {
    "1": {
      toward: TOWARD_27_TO_45,
      away: [
        [10, -1],
        [100, -0.8],
      ],
    },
    "2": { toward: TOWARD_27_TO_45, away: EDGE_27_TO_45 },
    "3": { toward: TOWARD_27_TO_45, away: EDGE_27_TO_45 },
  },
};

/** Overhangs above 7 to 27 degrees, upper and lower face together. From memory. */
export const GABLE_OVERHANG_7_TO_27_7_10: CladdingFigure = {
  figure: "Fig. 30.4-2B",
  printedToFt2: 0,
  zones: {
    "2": { away: [[10, -2.2]] },
    "3": {
      away: [
        [10, -3.7],
        [100, -2.5],
      ],
    },
  },
};

const OVERHANG_27_TO_45: AreaCurve = [
  [10, -2],
  [100, -1.8],
];

/** Overhangs above 27 to 45 degrees, upper and lower face together. From memory. */
export const GABLE_OVERHANG_27_TO_45_7_10: CladdingFigure = {
  figure: "Fig. 30.4-2C",
  printedToFt2: 0,
  zones: { "2": { away: OVERHANG_27_TO_45 }, "3": { away: OVERHANG_27_TO_45 } },
};
