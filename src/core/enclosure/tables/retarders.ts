/**
 * Vapor retarders of the residential code, and air-impermeable insulation of unvented roofs.
 * IRC 2018 R702.7 and Table R702.7.1; IRC 2021 R702.7 and Tables R702.7(1) to (4); IRC R806.5.
 */
export const RETARDER_EDITIONS = ["2018", "2021"] as const;
export type RetarderEdition = (typeof RETARDER_EDITIONS)[number];

/** Largest permeance by dry cup (ASTM E96 procedure A), perm. IRC ch. 2. */
export const CLASS_LIMITS_PERM = { I: 0.1, II: 1, III: 10 } as const;
export const CLASS_CLAUSE = "IRC 2021 R202 (ASTM E96 procedure A)";

export const RETARDER_CLAUSE: Readonly<Record<RetarderEdition, string>> = {
  "2018": "IRC 2018 R702.7 and Table R702.7.1",
  "2021": "IRC 2021 R702.7 and Tables R702.7(1) to (3)",
};

/** Least R of continuous insulation outside with which class III may stand inside, by zone ("4C" is marine 4) and stud. */
export const CLASS_III_R: Readonly<Record<string, { readonly "2x4": number; readonly "2x6": number }>> = {
  "4C": { "2x4": 2.5, "2x6": 3.75 },
  "5": { "2x4": 5, "2x6": 7.5 },
  "6": { "2x4": 7.5, "2x6": 11.25 },
  "7": { "2x4": 10, "2x6": 15 },
  "8": { "2x4": 12.5, "2x6": 20 },
};

/** Sheathings over which vented cladding lets class III stand inside. */
export const VENTED_OVER: Readonly<Record<string, readonly string[]>> = {
  "4C": ["wood panel", "fiberboard", "gypsum"],
  "5": ["wood panel", "fiberboard", "gypsum"],
  "6": ["fiberboard", "gypsum"],
};

/** Zones that want a class I or II retarder inside, unless class III is let in. */
export const RETARDER_ZONES = ["4C", "5", "6", "7", "8"] as const;

/** IRC 2021: classes barred from the inside, by zone. Zone 4 (not marine) class I is from memory. */
export const BARRED_2021: Readonly<Record<string, readonly ("I" | "II")[]>> = {
  "1": ["I", "II"],
  "2": ["I", "II"],
  "3": ["I"],
  "4": ["I"],
};

/** Least R of air-impermeable insulation in an unvented roof, IRC Table R806.5. Zones 6 and 7 found in print, the others from memory. */
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
export const UNVENTED_ROOF_FOUND = ["6", "7"] as const;
