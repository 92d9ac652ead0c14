import { BadInput, OutOfRange, plain } from "../../core/kit/refusal.ts";
import type { Tape } from "../../core/kit/tape.ts";
import { gradeWood, VALUE_NAMES, type ValueName, WOOD_KINDS, type Wood } from "../../core/wood/material.ts";
import type { Section } from "../../core/wood/section.ts";
import { GRADES, type Grade, SPECIES, type Species } from "../../core/wood/tables/grades.ts";
import { oneCell } from "../declare/cell.ts";
import { optional, type Param } from "../declare/param.ts";
import { isRange } from "../declare/raw.ts";
import { quantity, number as ratio } from "../declare/scalar.ts";
import { type ExampleRows, type RowOf, table } from "../declare/table.ts";
import { choice, text } from "../declare/word.ts";

const stress = (says: string, max: number) =>
  optional(quantity("psi", { says: `${says}, psi`, above: 20, max }), undefined, "");
const modulus = (says: string) =>
  optional(
    quantity("psi", { says: `${says} in psi, as 1600000 (not in million psi)`, above: 50_000, max: 5_000_000 }),
    undefined,
    "",
  );

const COLUMNS = {
  material: text({ says: "name of the material", heads: ["name", "grade"] }),
  kind: optional(
    choice(WOOD_KINDS, { says: "kind: sets c of columns and the repetitive factor", also: { lumber: "sawn" } }),
    "sawn",
    "",
  ),
  Fb: stress("bending", 8000),
  Ft: stress("tension along the grain", 8000),
  Fv: stress("shear along the grain", 1500),
  Fcp: stress("compression across the grain", 3000),
  Fc: stress("compression along the grain", 8000),
  E: modulus("modulus of elasticity"),
  Emin: modulus("modulus for stability"),
  G: optional(ratio({ says: "specific gravity", above: 0.2, max: 1.3 }), undefined, ""),
} as const;

export type ValuesRow = RowOf<typeof COLUMNS>;

const valuesTable = table(COLUMNS, { says: "rows as WOOD_VALUES gives them", maxRows: 500 });
const oneRow = table(COLUMNS, { says: "one row as WOOD_VALUES gives it", maxRows: 1 });

/** An office's own materials, looked up by name. */
export const ownValues = optional(valuesTable, [], "generic grades only");

/** A material as an argument: a name, or one row of values. */
export type MaterialArgument = { readonly name: string } | { readonly row: ValuesRow };

/** A generic grade by name, or one row of values (a range). */
export const material: Param<MaterialArgument, string | ExampleRows> = {
  ...oneRow,
  says: "material: a grade such as Douglas fir-larch No. 2, a name of the values, or one row of values",
  read(raw, at, notes) {
    const wide = isRange(raw) && (raw.length > 1 || (raw[0]?.length ?? 0) > 1);
    if (!wide) {
      const name = String(oneCell(raw, at, "a grade such as Douglas fir-larch No. 2")).trim();
      return { value: { name }, shown: name };
    }
    const { value } = oneRow.read(raw, at, notes);
    const row = value[0] as ValuesRow;
    return { value: { row }, shown: `${row.material}, own row` };
  },
};

function woodOf(row: ValuesRow, source: string): Wood {
  const values: Partial<Record<ValueName, number>> = {};
  for (const name of VALUE_NAMES) if (row[name] !== undefined) values[name] = row[name];
  checkRow(row);
  return { material: row.material, kind: row.kind, values, gravity: row.G, sized: true, grade: undefined, source };
}

function checkRow(row: ValuesRow): void {
  if (VALUE_NAMES.every((name) => row[name] === undefined)) {
    throw new BadInput(
      `The row ${row.material} holds no value`,
      `values stand in columns ${VALUE_NAMES.join(", ")}, in psi`,
      "Fill in those that the member needs",
    );
  }
  if (row.E !== undefined && row.Emin !== undefined && row.Emin >= row.E) {
    throw new BadInput(
      `Emin of ${row.material} is ${plain(row.Emin)} psi and E is ${plain(row.E)} psi`,
      "Emin is the lower of the two",
      "See whether the two columns changed places",
    );
  }
}

const key = (name: string) => name.trim().toLowerCase().replace(/\s+/g, " ");

/** Treatments and conditions whose factors are not held, as words of a generic grade. */
const SPECIAL: readonly (readonly [RegExp, string])[] = [
  [
    /treated|incis|preserv|retardant|\b(frt|pt|acq|cca)\b/,
    "incised and treated lumber takes factors of its treatment (NDS 4.3.8; fire retardants by the maker's report)",
  ],
  [/\bhot\b|over 100/, "members over 100 F take the temperature factor Ct (NDS 2.3.3)"],
  [/notch|drill|taper|finger/, "notched, drilled and tapered members have rules of their own (NDS 3.2.3, 3.4.3)"],
];

/**
 * The wood that an argument names: an own row, a row of the office's values by name, or a generic grade.
 * @throws BadInput for a name that neither holds; OutOfRange for treated or hot members by a generic name
 */
export function woodFor(argument: MaterialArgument, own: readonly ValuesRow[], section: Section, tape?: Tape): Wood {
  if ("row" in argument) {
    sameName(argument.row.material, tape);
    return given(woodOf(argument.row, "given in the row"), tape);
  }
  const mine = own.filter((row) => key(row.material) === key(argument.name));
  if (mine.length > 1) {
    throw new BadInput(
      `${argument.name} stands ${mine.length} times in the values`,
      "a name has one row",
      "Clear one of them, or point at the row itself",
    );
  }
  if (mine[0] !== undefined) return given(woodOf(mine[0], "own values"), tape);
  const { species, grade } = gradeNamed(argument.name, own);
  const wood = gradeWood(species, grade, section, tape);
  tape?.step("material", `${wood.material}: reference values`, wood.material, "", wood.source);
  return wood;
}

function given(wood: Wood, tape?: Tape): Wood {
  tape?.step(
    "material",
    `${wood.material}, ${wood.kind}: values as given, size factor in them`,
    wood.material,
    "",
    wood.source,
  );
  return wood;
}

/** A row that is named like a generic grade may be one without its size factor. */
function sameName(name: string, tape?: Tape): void {
  if (parseGrade(name) === undefined) return;
  tape?.caution(
    `The row ${name} is taken as own values that hold the size factor; to have it laid on, give the name alone.`,
  );
}

function gradeNamed(name: string, own: readonly ValuesRow[]): { species: Species; grade: Grade } {
  const special = SPECIAL.find(([words]) => words.test(key(name)));
  if (special !== undefined) {
    throw new OutOfRange(
      `The material is "${name.slice(0, 60)}"`,
      `${special[1]}, which are not held here`,
      "Give a row of your own values with these factors in",
    );
  }
  const found = parseGrade(name);
  if (found !== undefined) return found;
  if (/\b(lvl|psl|lsl|clt|glulam|glu-lam|veneer|\d\.\de)\b/.test(key(name))) {
    throw new BadInput(
      `The material "${name.slice(0, 60)}" has no generic values`,
      "structural composite and glued laminated lumber are designed by the evaluation report of the product",
      "Point at one row of values (material, kind, Fb ...), or add the name to your values",
    );
  }
  const mine = own.length === 0 ? "" : `, or a name of your values such as ${own[0]?.material}`;
  throw new BadInput(
    `The material "${name.slice(0, 60)}" is not known`,
    `generic grades are a species (${SPECIES.join(", ")}) and a grade (${GRADES.join(", ")})`,
    `Write both, as Douglas fir-larch No. 2${mine}, or point at one row of values`,
  );
}

const SPECIES_WORDS: Readonly<Record<string, Species>> = {
  "douglas fir-larch": "Douglas fir-larch",
  "douglas fir larch": "Douglas fir-larch",
  "douglas fir": "Douglas fir-larch",
  "doug fir-larch": "Douglas fir-larch",
  "doug fir": "Douglas fir-larch",
  "df-l": "Douglas fir-larch",
  dfl: "Douglas fir-larch",
  df: "Douglas fir-larch",
  "hem-fir": "hem-fir",
  "hem fir": "hem-fir",
  hf: "hem-fir",
  "spruce-pine-fir": "spruce-pine-fir",
  "spruce pine fir": "spruce-pine-fir",
  "s-p-f": "spruce-pine-fir",
  spf: "spruce-pine-fir",
  "southern pine": "southern pine",
  "southern yellow pine": "southern pine",
  syp: "southern pine",
  sp: "southern pine",
};

const GRADE_WORDS: ReadonlyMap<string, Grade> = new Map<string, Grade>([
  ["select structural", "select structural"],
  ["sel str", "select structural"],
  ["ss", "select structural"],
  ["no. 1", "No. 1"],
  ["no. 2", "No. 2"],
  ["no. 3", "No. 3"],
  ["no. 1/no. 2", "No. 2"],
  ["stud", "stud"],
  ["stud grade", "stud"],
]);

/** A name in lower case with grades as "no. 2". */
function tidied(name: string): string {
  return key(name)
    .replace(/[,;:]/g, " ")
    .replace(/(?:#|\bno\.?|\bnumber)\s*(?=\d)/g, "no. ")
    .replace(/\s+/g, " ")
    .trim();
}

/** Short names of species and grades written out, for looking rows up. */
export function writtenOut(name: string): string {
  const tidy = tidied(name).replace(/\bss\b/g, "select structural");
  const short = Object.entries(SPECIES_WORDS).find(([word]) => tidy === word || tidy.startsWith(`${word} `));
  return short === undefined ? tidy : `${short[1].toLowerCase()}${tidy.slice(short[0].length)}`;
}

/** Reads a generic grade: species, then grade. */
export function parseGrade(name: string): { species: Species; grade: Grade } | undefined {
  const tidy = tidied(name).replace(/ \d+ in wide$/, "");
  for (const [word, species] of Object.entries(SPECIES_WORDS)) {
    if (!tidy.startsWith(`${word} `)) continue;
    const grade = GRADE_WORDS.get(tidy.slice(word.length + 1).trim());
    if (grade !== undefined) return { species, grade };
  }
  return undefined;
}
