/**
 * Thermal resistance of the air films at surfaces.
 * ASHRAE Handbook Fundamentals 2021, ch. 26, Table 10, h ft2 F/Btu. ISO 6946:2017 Table 7 (2007: Table 1), m2 K/W.
 */
export const HEAT_FLOWS = ["horizontal", "up", "down", "45 up", "45 down"] as const;
export type HeatFlow = (typeof HEAT_FLOWS)[number];

/** Emittances of the surface that Table 10 lists: an ordinary surface, bright metal paper, bright foil. */
export const FILM_EMITTANCES = [0.9, 0.2, 0.05] as const;
export type FilmEmittance = (typeof FILM_EMITTANCES)[number];

export const ASHRAE_STILL_AIR_R_IP: Readonly<Record<HeatFlow, Readonly<Record<FilmEmittance, number>>>> = {
  up: { 0.9: 0.61, 0.2: 1.1, 0.05: 1.32 },
  "45 up": { 0.9: 0.62, 0.2: 1.14, 0.05: 1.37 },
  horizontal: { 0.9: 0.68, 0.2: 1.35, 0.05: 1.7 },
  "45 down": { 0.9: 0.76, 0.2: 1.67, 0.05: 2.22 },
  down: { 0.9: 0.92, 0.2: 2.7, 0.05: 4.55 },
};

/** Moving outdoor air: 15 mph in winter, 7.5 mph in summer. */
export const ASHRAE_OUTDOOR_R_IP = { winter: 0.17, summer: 0.25 } as const;

/** The directions of ISO 6946; heat flow within 30 degrees of horizontal counts as horizontal. */
export const ISO_FLOWS = ["up", "horizontal", "down"] as const;
export const ISO_RSI_M2KW = { up: 0.1, horizontal: 0.13, down: 0.17 } as const;
export const ISO_RSE_M2KW = 0.04;
/** ISO 13788:2012 and DIN 4108-3: reduced inside film for mold and condensation checks of opaque parts. */
export const ISO_RSI_MOLD_M2KW = 0.25;

export const ASHRAE_FILM_CLAUSE = "ASHRAE Handbook Fundamentals 2021 ch. 26 Table 10";
export const ISO_FILM_CLAUSE = "ISO 6946:2017 Table 7";
export const ISO_MOLD_FILM_CLAUSE = "ISO 13788:2012 4.4.1 (= DIN 4108-3)";

/** A film given by hand is no larger than this: the largest of Table 10 is 4.55. */
export const GREATEST_FILM_R_IP = 5;

/** Direction that the films of ISO 6946 know for each of Table 10; a slope heated from above counts as downward. */
export const ISO_FLOW: Readonly<Record<HeatFlow, (typeof ISO_FLOWS)[number]>> = {
  up: "up",
  "45 up": "up",
  horizontal: "horizontal",
  "45 down": "down",
  down: "down",
};
