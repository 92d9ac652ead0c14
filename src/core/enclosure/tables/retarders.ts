/**
 * Vapor retarders of the residential code, and air-impermeable insulation of unvented roofs.
 * IRC 2018 R702.7 and Table R702.7.1; IRC 2021 R702.7 and Tables R702.7(1) to (4); IRC R806.5. The tables of 2021 were read in a state code of that base.
 */
export const RETARDER_EDITIONS = ["2018", "2021", "2024"] as const;
export type RetarderEdition = (typeof RETARDER_EDITIONS)[number];

/** Largest permeance by dry cup (ASTM E96 procedure A), perm. IRC ch. 2. */
export const CLASS_LIMITS_PERM = { I: 0.1, II: 1, III: 10 } as const;
export const CLASS_CLAUSE = "IRC 2021 R202 and Table R702.7(1) (ASTM E96 procedure A)";

export const RETARDER_CLAUSE: Readonly<Record<RetarderEdition, string>> = {
  "2018": "IRC 2018 R702.7 and Table R702.7.1",
  "2021": "IRC 2021 R702.7 and Tables R702.7(1) to (4)",
  "2024": "IRC 2024 R702.7, by the tables of 2021",
};

/** R by stud: 2x4 and 2x6. */
export interface ByStud {
  readonly "2x4": number;
  readonly "2x6": number;
}

/** Least R of continuous insulation outside with which class III may stand inside, by zone ("4C" is marine 4). Table R702.7(3). */
export const CLASS_III_R: Readonly<Record<string, ByStud>> = {
  "4C": { "2x4": 2.5, "2x6": 3.75 },
  "5": { "2x4": 5, "2x6": 7.5 },
  "6": { "2x4": 7.5, "2x6": 11.25 },
  "7": { "2x4": 10, "2x6": 15 },
  "8": { "2x4": 12.5, "2x6": 20 },
};

/** Least R of continuous insulation outside where a class II retarder stands inside. Table R702.7(4). */
export const CLASS_II_R: Readonly<Record<string, ByStud>> = {
  "3": { "2x4": 2, "2x6": 2 },
  "4": { "2x4": 3, "2x6": 5 },
  "4C": { "2x4": 3, "2x6": 5 },
  "5": { "2x4": 3, "2x6": 5 },
  "6": { "2x4": 3, "2x6": 5 },
  "7": { "2x4": 5, "2x6": 7.5 },
  "8": { "2x4": 7.5, "2x6": 10 },
};

/** Sheathings over which vented cladding lets class III stand inside. Table R702.7(3). */
export const VENTED_OVER: Readonly<Record<string, readonly string[]>> = {
  "4C": ["wood panel", "fiberboard", "gypsum"],
  "5": ["wood panel", "fiberboard", "gypsum"],
  "6": ["fiberboard", "gypsum"],
};

/** Zones that want a class I or II retarder inside, unless class III is let in. */
export const RETARDER_ZONES = ["4C", "5", "6", "7", "8"] as const;
/** Zones of the 2021 code that need no retarder. Zone 4 that is not marine is not among them: it takes class II or III. */
export const NO_RETARDER_2021 = ["1", "2", "3"] as const;

/** Classes barred from the inside by Table R702.7(2) of 2021. */
export const BARRED_2021: Readonly<Record<string, readonly ("I" | "II")[]>> = {
  "1": ["I", "II"],
  "2": ["I", "II"],
  "3": ["I"],
  "4": ["I"],
};

/** Spray foam inside the sheathing counts as continuous insulation up to this permeance at its thickness, perm. R702.7.1. */
export const FOAM_AS_CI_PERM = 1.5;
/** A variable retarder, or a class II one under continuous insulation, has more than this by wet cup, perm. Table R702.7(2) notes a and c. */
export const VARIABLE_WET_CUP_PERM = 1;

/** Least R of air-impermeable insulation in an unvented roof, IRC Table R806.5. */
export const UNVENTED_ROOF_R: Readonly<Record<string, number>> = {
  "1": 5,
  "2": 5,
  "3": 5,
  "4C": 10,
  "4": 15,
  "5": 20,
  "6": 25,
  "7": 30,
  "8": 35,
};
export const UNVENTED_ROOF_CLAUSE = "IRC Table R806.5";
/** R806.5 5.1.4: indoor 68 F, outdoor the mean of the three coldest months, underside of the deck above 45 F. */
export const DECK_RULE = { indoorF: 68, deckF: 45, months: 3, clause: "IRC R806.5 5.1.4" } as const;
