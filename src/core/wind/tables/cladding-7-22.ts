import type { AreaCurve } from "./area-curve.ts";
import type { CladdingFigure, CladdingZone } from "./cladding-zone.ts";

// Roofs of ASCE/SEI 7-22, recovered from the pressures printed in the 2023 Florida Building Code, Residential (8th edition), Table R301.2(2), which
// is built on it: h 30 ft, Exposure B, areas of 10, 20, 50 and 100 ft2, 90 to 150 mph. Every GCp at 10 ft2 lies on a tenth; an end node past
// 100 ft2 is the round one that gives the printed fall from 10 to 100 ft2. What lies beyond 100 ft2 was not seen: the value there is kept.

const PRINT = "recovered from the pressures of the 2023 Florida Building Code, Residential, Table R301.2(2)";
const LAST_FT2 = 100;

const to = (at10: number, endFt2: number, end: number): AreaCurve => [
  [10, at10],
  [endFt2, end],
];

function recovered(figure: string, toward: AreaCurve, away: Readonly<Record<string, AreaCurve>>): CladdingFigure {
  const zones = Object.entries(away).map(([zone, curve]): [string, CladdingZone] => [zone, { toward, away: curve }]);
  return {
    figure,
    printedToFt2: LAST_FT2,
    print: PRINT,
    keptFromFt2: LAST_FT2,
    zones: Object.fromEntries(zones),
  };
}

/** Up to 7 degrees: zone 3 corner, 2 strip of 0.6 h, 1 up to 1.2 h, 1' inside. */
export const FLAT_7_22 = recovered("Fig. 30.3-2A", to(0.3, 100, 0.2), {
  "1'": [
    [100, -0.9],
    [1000, -0.4],
  ],
  "1": to(-1.7, 500, -1),
  "2": to(-2.3, 500, -1.4),
  "3": to(-3.2, 500, -1.4),
});

/** Above 7 to 20, to 27 and to 45 degrees. */
export const GABLES_7_22 = {
  to20: recovered("Fig. 30.3-2B", to(0.6, 200, 0.3), {
    "1": to(-2, 300, -0.5),
    "2": to(-2.7, 200, -1),
    "3": to(-3.6, 100, -1.8),
  }),
  to27: recovered("Fig. 30.3-2C", to(0.6, 200, 0.3), {
    "1": to(-1.5, 200, -0.8),
    "2": to(-2.5, 100, -1.2),
    "3": to(-3, 100, -1.4),
  }),
  to45: recovered("Fig. 30.3-2D", to(0.9, 200, 0.5), {
    "1": to(-1.8, 100, -0.8),
    "2": to(-2, 200, -1),
    "3": to(-2.5, 200, -1),
  }),
} as const;

/** Above 7 to 20, to 27, and at 45 degrees. */
export const HIPS_7_22 = {
  to20: recovered("Fig. 30.3-2E", to(0.7, 100, 0.3), {
    "1": to(-1.8, 200, -0.8),
    "2": to(-2.4, 200, -1.3),
    "3": to(-2.6, 200, -1.4),
  }),
  to27: recovered("Fig. 30.3-2F", to(0.7, 100, 0.3), {
    "1": to(-1.4, 100, -0.8),
    "2": to(-2, 100, -1),
    "3": to(-2, 100, -1),
  }),
  at45: recovered("Fig. 30.3-2G", to(0.7, 100, 0.3), {
    "1": to(-1.5, 100, -0.7),
    "2": to(-1.8, 100, -0.8),
    "3": to(-2.4, 100, -1),
  }),
} as const;
