import { recalled } from "../kit/known.ts";
import { BadInput, OutOfRange, plain } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import { nominalOf, type Section } from "./section.ts";
import { EMIN, TIMBER } from "./tables/factors.ts";
import { GRADE_ROWS, GRADES_SOURCE, type Grade, type GradeRow, SPECIES_VALUES, type Species } from "./tables/grades.ts";

export const WOOD_KINDS = ["sawn", "LVL", "PSL", "LSL", "glulam"] as const;
export type WoodKind = (typeof WOOD_KINDS)[number];

/** The design values that factors adjust. */
export const VALUE_NAMES = ["Fb", "Ft", "Fv", "Fcp", "Fc", "E", "Emin"] as const;
export type ValueName = (typeof VALUE_NAMES)[number];

/** A material's reference design values, psi; one that is not known is left out. */
export interface Wood {
  readonly material: string;
  readonly kind: WoodKind;
  readonly values: Readonly<Partial<Record<ValueName, number>>>;
  readonly gravity: number | undefined;
  /** the size factor stands in the values: an own row, or southern pine */
  readonly sized: boolean;
  /** of a generic grade, for the factors that depend on it */
  readonly grade: Grade | undefined;
  readonly source: string;
}

/** A row of a catalog: the values, and the name it is listed under. */
export type WoodRow = Wood & { readonly widthIn: number | undefined };

const MEMORY_CAUTION =
  "The values of generic grades are from memory of the NDS Supplement: compare them with the grade stamp and the printed table, or give your own row.";

function woodOf(row: GradeRow): Wood {
  const { fvPsi, fcpPsi, gravity } = SPECIES_VALUES[row.species];
  return {
    material: `${row.species} ${row.grade}`,
    kind: "sawn",
    values: {
      Fb: row.fbPsi,
      Ft: row.ftPsi,
      Fv: fvPsi,
      Fcp: fcpPsi,
      Fc: row.fcPsi,
      E: row.ePsi,
      Emin: row.eminPsi,
    },
    gravity,
    sized: row.widthIn !== undefined,
    grade: row.grade,
    source: GRADES_SOURCE,
  };
}

/** All generic grades, in the order of the tables. */
export function genericRows(): WoodRow[] {
  return GRADE_ROWS.map((row) => ({ ...woodOf(row), widthIn: row.widthIn }));
}

/**
 * The values of a generic grade for a section.
 * @throws BadInput for actual inches that no nominal size has; OutOfRange for timbers, boards and widths that the table does not hold
 * Source: NDS Supplement 2018 Tables 4A, 4B, from memory.
 */
export function gradeWood(species: Species, grade: Grade, section: Section, tape?: Tape): Wood {
  const name = `${species} ${grade}`;
  const wide = wideNominal(section, name);
  const rows = GRADE_ROWS.filter((r) => r.species === species && r.grade === grade);
  const row = rows.find((r) => r.widthIn === undefined) ?? rows.find((r) => (r.widthIn ?? 0) >= wide);
  if (row === undefined || (grade === "stud" && wide > STUD_MOST)) {
    throw new OutOfRange(
      `${name} is asked for a width of ${plain(wide)} in`,
      `the table holds it up to ${plain(grade === "stud" ? STUD_MOST : (rows.at(-1)?.widthIn ?? 0))} in`,
      "Choose another grade, or give a row of your own values",
    );
  }
  tape?.caution(MEMORY_CAUTION);
  return woodOf(row);
}

const STUD_MOST = 6;

/** Larger nominal size of a ply of dimension lumber. */
function wideNominal(section: Section, name: string): number {
  const nominal = nominalOf(section);
  if (nominal === undefined) {
    throw new BadInput(
      `${section.name} is not the actual size of a nominal one`,
      `the values of ${name} go by nominal sizes`,
      "Write the nominal size, such as 2x10, or give a row of your own values",
    );
  }
  const thick = Math.min(nominal.first, nominal.second);
  if (thick < TIMBER.lumberFrom || thick >= TIMBER.from) {
    throw new OutOfRange(
      `${section.name} is ${plain(thick)} in thick`,
      `the values of generic grades hold for lumber 2 to 4 in thick (${GRADES_SOURCE.split(",")[0]})`,
      "Give a row of your own values for timbers and boards",
    );
  }
  return Math.max(nominal.first, nominal.second);
}

/**
 * One design value of a material, psi. Emin that is not given is made from E.
 * @throws BadInput naming the value that is missing
 * Source of Emin: NDS Appendix D, Eq. D-4.
 */
export function referenceValue(wood: Wood, name: ValueName, tape?: Tape): number {
  const value = wood.values[name];
  if (value !== undefined) return value;
  const e = wood.values.E;
  if (name === "Emin" && e !== undefined) {
    const cov = wood.kind === "sawn" ? EMIN.covSawn : EMIN.covMade;
    const made = (EMIN.adjust * e * (1 - EMIN.fractile * cov)) / EMIN.safety;
    tape?.step("Emin", `1.03 E (1 - 1.645 x ${plain(cov)}) / 1.66`, made, "psi", recalled("NDS Appendix D, Eq. D-4"));
    return made;
  }
  throw new BadInput(
    `${name} of ${wood.material} is missing`,
    "this check needs it and the row does not give it",
    `Add a column ${name} in psi to the row of values`,
  );
}
