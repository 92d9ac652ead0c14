import { recalled } from "../../kit/known.ts";
/** Limits and rules of rigging, lifting and hauling, each with its source. */

/** Angle of a sling leg from the level. Below `preferred` a leg gets a caution, below `least` it is refused. */
export const LEG_ANGLE = {
  preferredDeg: 45,
  leastDeg: 30,
  source: "US Navy rigging manuals NAVEDTRA 14080 and 14081: keep above 45 degrees, never under 30",
} as const;

/** Legs that a rigid load is counted on, however many there are. */
export const RIGID_LEGS = {
  count: 2,
  source: "US Navy rigging manuals NAVEDTRA 14080 and 14081: two legs can carry practically the whole of a rigid load",
} as const;

/** Share of a chart's capacity above which a lift is planned as a critical one. */
export const CRITICAL_LIFT = { share: 0.75, source: "OSHA 29 CFR 1926.751, definition of a critical lift" } as const;

/** Gust at which work with cranes is stopped, looked at again and logged. */
export const WIND_STOP = { speedMph: 20, source: "US Army Corps of Engineers EM 385-1-1, 16.I.01" } as const;

/** Pressure of the wind in psf for each (mph)^2; the same as 0.613 v^2 N/m2 with v in m/s. */
export const WIND_PRESSURE = {
  psfPerMph2: 0.00256,
  source: "ASCE/SEI 7 Eq. 26.10-1 without its factors; 0.613 v^2 N/m2 in a trade journal on wind and lifting",
} as const;

/** Drag coefficient of a panel that hangs broadside to the wind. */
export const PANEL_DRAG = {
  value: 1.2,
  source: "a long rectangle, handbook range 1.1 to 1.2, from memory; other pages give 2.0 for a box, 2.4 unknown",
} as const;

/** Gust-effect factor of a stiff structure. */
export const GUST_FACTOR = { value: 0.85, source: "ASCE/SEI 7 26.11.1" } as const;

/** Height of the wind's pull on a wall that stands on the ground, as a share of the wall's height. */
export const WIND_HEIGHT_SHARE = {
  value: 0.55,
  source: recalled("ASCE/SEI 7 Figure 29.3-1 note, s/h = 1"),
} as const;

/**
 * Net force coefficient of a solid freestanding wall that stands on the ground (s/h = 1), cases A and B, by length over height; straight lines
 * between. Up to the first and from the last row on it stays as it is.
 */
export const FREESTANDING_WALL = {
  rows: [
    { ratio: 0.05, coefficient: 1.8 },
    { ratio: 0.1, coefficient: 1.7 },
    { ratio: 0.2, coefficient: 1.65 },
    { ratio: 0.5, coefficient: 1.55 },
    { ratio: 1, coefficient: 1.45 },
    { ratio: 2, coefficient: 1.4 },
    { ratio: 4, coefficient: 1.35 },
    { ratio: 5, coefficient: 1.35 },
    { ratio: 10, coefficient: 1.3 },
    { ratio: 45, coefficient: 1.3 },
  ],
  source: recalled("ASCE/SEI 7 Figure 29.3-1, s/h = 1, cases A and B"),
} as const;

/** Weight limits on the Interstate System. */
export const ROAD = {
  grossLb: 80_000,
  singleAxleLb: 20_000,
  tandemLb: 34_000,
  /** axles up to so far apart are a tandem */
  tandemFt: 8,
  /** two tandems whose outer axles are so far apart may carry the full tandem weight each */
  tandemsApartFt: 36,
  source: "23 USC 127(a), 23 CFR 658.17",
} as const;

/** The federal bridge formula W = 500 (L N/(N - 1) + 12 N + 36), to the nearest 500 lb. */
export const BRIDGE = { perStepLb: 500, perAxle: 12, fixed: 36, source: "23 USC 127(a)" } as const;
