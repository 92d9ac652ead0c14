/** Reference design values of generic grades of visually graded lumber 2 to 4 in thick. */

export const GRADES = ["select structural", "No. 1", "No. 2", "No. 3", "stud"] as const;
export type Grade = (typeof GRADES)[number];

export const SPECIES = ["Douglas fir-larch", "hem-fir", "spruce-pine-fir", "southern pine"] as const;
export type Species = (typeof SPECIES)[number];

/** psi, dry, normal load duration. */
export interface GradeRow {
  readonly species: Species;
  readonly grade: Grade;
  /** nominal width that the values hold for, in; undefined for every width, with the size factor laid on */
  readonly widthIn?: number;
  readonly fbPsi: number;
  readonly ftPsi: number;
  readonly fcPsi: number;
  readonly ePsi: number;
  readonly eminPsi: number;
}

/** Values that a species has in all its grades. */
export interface SpeciesRow {
  readonly fvPsi: number;
  readonly fcpPsi: number;
  readonly gravity: number;
}

/**
 * Nothing here was read in the Supplement itself. Bending and E of select structural to No. 3 are confirmed by the
 * ceiling joist spans printed in IRC 2018 Table R802.5.1(2); the gravities were read in the trade association's wood
 * design data. All the rest is from memory.
 */
export const GRADES_SOURCE =
  "NDS Supplement 2018 Tables 4A, 4B, from memory; Fb and E agree with spans printed in IRC 2018 Table R802.5.1(2)";

export const SPECIES_VALUES: Readonly<Record<Species, SpeciesRow>> = {
  "Douglas fir-larch": { fvPsi: 180, fcpPsi: 625, gravity: 0.5 },
  "hem-fir": { fvPsi: 150, fcpPsi: 405, gravity: 0.43 },
  "spruce-pine-fir": { fvPsi: 135, fcpPsi: 425, gravity: 0.42 },
  "southern pine": { fvPsi: 175, fcpPsi: 565, gravity: 0.55 },
};

type Numbers = readonly [fb: number, ft: number, fc: number, e: number, emin: number];

function every(species: Species, rows: readonly (readonly [Grade, Numbers])[]): GradeRow[] {
  return rows.map(([grade, values]) => row(species, grade, values));
}

/** Southern pine: the size effect stands in the values, so there is a row for each width. */
function byWidth(grade: Grade, e: number, emin: number, rows: readonly (readonly number[])[]): GradeRow[] {
  return rows.map(([widthIn = 0, fb = 0, ft = 0, fc = 0]) => ({
    ...row("southern pine", grade, [fb, ft, fc, e, emin]),
    widthIn,
  }));
}

function row(species: Species, grade: Grade, [fbPsi, ftPsi, fcPsi, ePsi, eminPsi]: Numbers): GradeRow {
  return { species, grade, fbPsi, ftPsi, fcPsi, ePsi, eminPsi };
}

export const GRADE_ROWS: readonly GradeRow[] = [
  ...every("Douglas fir-larch", [
    ["select structural", [1500, 1000, 1700, 1.9e6, 690_000]],
    ["No. 1", [1000, 675, 1500, 1.7e6, 620_000]],
    ["No. 2", [900, 575, 1350, 1.6e6, 580_000]],
    ["No. 3", [525, 325, 775, 1.4e6, 510_000]],
    ["stud", [700, 450, 850, 1.4e6, 510_000]],
  ]),
  ...every("hem-fir", [
    ["select structural", [1400, 925, 1500, 1.6e6, 580_000]],
    ["No. 1", [975, 625, 1350, 1.5e6, 550_000]],
    ["No. 2", [850, 525, 1300, 1.3e6, 470_000]],
    ["No. 3", [500, 300, 725, 1.2e6, 440_000]],
    ["stud", [675, 400, 800, 1.2e6, 440_000]],
  ]),
  ...every("spruce-pine-fir", [
    ["select structural", [1250, 700, 1400, 1.5e6, 550_000]],
    ["No. 1", [875, 450, 1150, 1.4e6, 510_000]],
    ["No. 2", [875, 450, 1150, 1.4e6, 510_000]],
    ["No. 3", [500, 250, 650, 1.2e6, 440_000]],
    ["stud", [675, 350, 725, 1.2e6, 440_000]],
  ]),
  ...byWidth("select structural", 1.8e6, 660_000, [
    [4, 2350, 1650, 1900],
    [6, 2100, 1450, 1800],
    [8, 1950, 1350, 1700],
    [10, 1700, 1150, 1650],
    [12, 1600, 1100, 1650],
  ]),
  ...byWidth("No. 1", 1.6e6, 580_000, [
    [4, 1500, 1000, 1650],
    [6, 1350, 875, 1550],
    [8, 1250, 800, 1500],
    [10, 1050, 700, 1450],
    [12, 1000, 650, 1400],
  ]),
  ...byWidth("No. 2", 1.4e6, 510_000, [
    [4, 1100, 675, 1450],
    [6, 1000, 600, 1400],
    [8, 925, 550, 1350],
    [10, 800, 475, 1300],
    [12, 750, 450, 1250],
  ]),
  ...byWidth("No. 3", 1.3e6, 470_000, [
    [4, 650, 400, 850],
    [6, 575, 350, 800],
    [8, 525, 325, 775],
    [10, 475, 275, 750],
    [12, 450, 250, 725],
  ]),
  ...byWidth("stud", 1.3e6, 470_000, [
    [4, 650, 400, 850],
    [6, 575, 350, 800],
  ]),
];
