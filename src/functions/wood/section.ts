import { plain } from "../../core/kit/refusal.ts";
import type { Table } from "../../core/kit/tape.ts";
import { sectionProperties, showSection } from "../../core/wood/section.ts";
import { preliminary, type Returns } from "../declare/cell-function.ts";
import { columnsOf } from "../declare/columns.ts";
import { optional } from "../declare/param.ts";
import { choice } from "../declare/word.ts";
import { familyFunction } from "./family.ts";
import { section } from "./section-param.ts";

/** Density that a section's weight is taken at, pcf. */
const DENSITY_PCF = 35;
const SQUARE_INCHES_IN_FOOT = 144;

interface Property {
  readonly property: string;
  readonly value: number;
  readonly unit: string;
}

const columns = columnsOf<Property>(
  ["property", "", (p) => p.property],
  ["value", "", (p) => p.value],
  ["unit", "", (p) => p.unit],
);
const returns: Returns<Table | number> = columns.table(
  "properties of the whole section, or one number when a property is asked for",
);

export const woodSection = familyFunction({
  name: "WOOD_SECTION",
  summary: "Area, section modulus, moments of inertia and weight of a rectangular wood section.",
  params: {
    section,
    property: optional(
      choice(["A", "I", "S", "Iy", "Sy", "J", "weight"], {
        says: "one property, for a single number",
        means: {
          A: "area, in2",
          I: "moment of inertia across the depth, in4",
          S: "section modulus across the depth, in3",
          Iy: "moment of inertia across the width, in4",
          Sy: "section modulus across the width, in3",
          J: "torsion constant, in4",
          weight: "weight, plf",
        },
      }),
      undefined,
      "",
    ),
  },
  placed: {},
  returns,
  sources: [
    "Geometry of a rectangle",
    "Dressed sizes: NDS Supplement Table 1A, PS 20, from memory; read in worked examples",
  ],
  assumptions: [
    "Plies act as one rectangle about both axes.",
    "Weight at 35 pcf, as the section tables of the trade have it: common practice, no source.",
  ],
  cautions: [preliminary("wood member")],
  example: {
    args: { section: "2x6", property: "S" },
    gives: 7.56,
    within: 0.005,
    source: "Formwork textbook (4th ed. 2010), Table 4-1: S of 2x6",
  },
  refuses: [
    { args: { section: "6" }, says: "it is not read as a section" },
    { args: { property: "tall" }, says: "it must be one of A, I, S, Iy, Sy, J, weight" },
    { args: { section: "7x7" }, says: "lumber comes in 1, 2, 3, 4, 5, 6, 8, 10, 12, 14, 16, 18, 20," },
  ],
  notFor: "I-joists, trusses and built-up sections with a gap have no rectangle: take the figures of their report.",
  run(a, tape) {
    showSection(a.section, tape);
    const p = sectionProperties(a.section);
    const rows: Property[] = [
      { property: "A", value: p.areaIn2, unit: "in2" },
      { property: "I", value: p.inertiaIn4, unit: "in4" },
      { property: "S", value: p.modulusIn3, unit: "in3" },
      { property: "Iy", value: p.weakInertiaIn4, unit: "in4" },
      { property: "Sy", value: p.weakModulusIn3, unit: "in3" },
      { property: "J", value: p.torsionIn4, unit: "in4" },
      { property: "weight", value: (p.areaIn2 / SQUARE_INCHES_IN_FOOT) * DENSITY_PCF, unit: "plf" },
    ];
    for (const row of rows) tape?.step(row.property, HOW[row.property] ?? "", row.value, row.unit, "geometry");
    const asked = rows.find((row) => row.property === a.property);
    if (asked !== undefined) {
      tape?.step(asked.property, "as asked", asked.value, asked.unit, "");
      return asked.value;
    }
    const all = columns.rows(rows);
    tape?.step("section", "property, value, unit", all, "", "geometry");
    return all;
  },
});

const HOW: Readonly<Record<string, string>> = {
  A: "b d",
  I: "b d^3 / 12",
  S: "b d^2 / 6",
  Iy: "d b^3 / 12",
  Sy: "d b^2 / 6",
  J: "a b^3 (1/3 - 0.21 b/a (1 - b^4 / (12 a^4))), each ply by itself",
  weight: `A / 144 x ${plain(DENSITY_PCF)} pcf`,
};
