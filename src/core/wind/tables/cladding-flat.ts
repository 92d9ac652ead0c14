import type { AreaCurve } from "./area-curve.ts";
import type { CladdingFigure } from "./cladding-zone.ts";

const TOWARD: AreaCurve = [
  [10, 0.3],
  [100, 0.2],
];

/**
 * Roofs up to 7 degrees, ASCE/SEI 7-02 to 7-10: zone 1 field, 2 edge strip of width a, 3 corner. Read in a public repository of a
 * university; the pressures of the 2018 residential code table agree.
 */
export const FLAT_7_10: CladdingFigure = {
  figure: "Fig. 30.4-2A",
  printedToFt2: 100_000,
  zones: {
    "1": {
      toward: TOWARD,
      away: [
        [10, -1],
        [100, -0.9],
      ],
    },
    "2": {
      toward: TOWARD,
      away: [
        [10, -1.8],
        [100, -1.1],
      ],
    },
    "3": {
      toward: TOWARD,
      away: [
        [10, -2.8],
        [100, -1.1],
      ],
    },
  },
};

const OVERHANG_EDGE: AreaCurve = [
  [10, -1.7],
  [100, -1.6],
  [500, -1.1],
];

/** Overhangs of roofs up to 7 degrees, ASCE/SEI 7-10, upper and lower face together. From memory. */
export const FLAT_OVERHANG_7_10: CladdingFigure = {
  figure: "Fig. 30.4-2A",
  printedToFt2: 0,
  zones: {
    "1": { away: OVERHANG_EDGE },
    "2": { away: OVERHANG_EDGE },
    "3": {
      away: [
        [10, -2.8],
        [100, -0.8],
      ],
    },
  },
};

/**
 * Roofs up to 7 degrees, ASCE/SEI 7-16: zone 3 corner, 2 strip of 0.6 h, 1 up to 1.2 h, 1' inside. From memory; of the node values only the
 * -2.3 of zone 2 was read in print (one other print has -2.1 there). The print of 7-22 agrees from 10 to 100 ft2.
 */
export const FLAT_7_16: CladdingFigure = {
  figure: "Fig. 30.3-2A",
  printedToFt2: 0,
  zones: {
    "1'": {
      toward: TOWARD,
      away: [
        [100, -0.9],
        [1000, -0.4],
      ],
    },
    "1": {
      toward: TOWARD,
      away: [
        [10, -1.7],
        [500, -1],
      ],
    },
    "2": {
      toward: TOWARD,
      away: [
        [10, -2.3],
        [500, -1.4],
      ],
    },
    "3": {
      toward: TOWARD,
      away: [
        [10, -3.2],
        [500, -1.4],
      ],
    },
  },
};
