import {
  heading,
  input,
  label,
  note,
  result,
  type SheetTemplate,
  spillBlock,
  type TemplateCell,
  title,
} from "./template.ts";

type Layer = readonly [material: string, thickness: number | "", vapor?: string, role?: string];

/** All insulation outboard of the membrane, under a rain screen. */
const OUTBOARD: readonly Layer[] = [
  ["plywood", 0.5],
  ["air space", 1.5],
  ["veneer panel", 1.5],
  ["self-adhered membrane", "", "0.05 perm", "air barrier"],
  ["mineral wool board", 3],
  ["mineral wool board", 3],
  ["air space", 0.75, "", "ventilated cavity"],
  ["wood siding", 0.75],
];

/** The same panel with its insulation inside: the wall that the first is compared with. */
const INBOARD: readonly Layer[] = [
  ["gypsum board", 0.5],
  ["mineral wool batt", 5.5],
  ["veneer panel", 1.5, "", "air barrier"],
  ["vapor-open membrane", ""],
  ["air space", 0.75, "", "ventilated cavity"],
  ["wood siding", 0.75],
];

const HEAD = ["Material", "Thickness", "R", "Vapor", "Role"].map((word) => heading(word));
const SPACE: readonly undefined[] = [undefined];

function cells([material, thickness, vapor = "", role = ""]: Layer): (TemplateCell | undefined)[] {
  const given = (is: string | number) => (is === "" ? undefined : input(is));
  return [input(material), given(thickness), undefined, given(vapor), given(role)];
}

const layerRows = Array.from({ length: 10 }, (_, i) => {
  const left = OUTBOARD[i];
  const right = INBOARD[i];
  return [
    ...(left === undefined ? Array(5).fill(undefined) : cells(left)),
    ...SPACE,
    ...(right === undefined ? [] : cells(right)),
  ];
});

const A = "A5:E15";
const B = "G5:K15";
const AIR = "Site!B13,Site!B14,Site!B15";
/** A line of results, the same formula for both assemblies. */
const both = (words: string, formula: (layers: string) => string, format: string | undefined, unit: string) => [
  label(words),
  result(formula(A), format),
  label(unit),
  undefined,
  undefined,
  undefined,
  label(words),
  result(formula(B), format),
  label(unit),
];

const PROFILE = ["", "0.0", "0.0", "0.0", "0", "0", "0.000", ""];
const YEAR = ["", "0.0", "0", "0", "0.000", "0.000", ""];

/** Two wall assemblies side by side, inside to outside: R and U, the code, the design day and the year. */
export const demoAssembly: SheetTemplate = {
  name: "Enclosure",
  says: "Two wall assemblies side by side: R, U, the code's figure, the dew point on the design day, and the year.",
  widths: [34, 21, 25, 23, 19, 23, 34, 12, 13, 12, 18],
  rows: [
    [title("Two walls of the same panel, inside to outside")],
    [
      note(
        "One layer a row. R or k may stay blank for the built-in materials; own figures win. Select DEW_PROFILE or DEW_MONTHS to see the picture.",
      ),
    ],
    [],
    [heading("Wall A: insulation outboard"), ...Array(5).fill(undefined), heading("Wall B: insulation inboard")],
    [...HEAD, ...SPACE, ...HEAD],
    ...layerRows,
    [],
    [
      label("Climate station"),
      input("Minneapolis"),
      undefined,
      note("one of the open stations, or point at twelve rows of your own"),
    ],
    [label("Climate zone"), input("6A")],
    [label("Indoor moisture"), input("class 2")],
    [],
    both("Total R", (l) => `=SILL.R_STACK(${l})`, "0.0", "h ft2 F/Btu"),
    both("U", (l) => `=SILL.U_FACTOR(${l})`, "0.000", "Btu/(h ft2 F)"),
    both("U that the code asks for", () => '=SILL.U_CODE("wood wall",B18)', "0.000", "Btu/(h ft2 F)"),
    both("Indoor dew point", () => "=SILL.DEW_POINT(Site!B13,Site!B14)", "0.0", "F"),
    both("First wetting layer, design day", (l) => `=SILL.DEW_LAYER(${l},${AIR})`, undefined, ""),
    [],
    [heading("R by layer, wall A"), ...Array(5).fill(undefined), heading("R by layer, wall B")],
    ...sideBySide(
      spillBlock(`=SILL.R_SCHEDULE(${A})`, ["", "0.00", "0.00", "0.00"], 13),
      spillBlock(`=SILL.R_SCHEDULE(${B})`, ["", "0.00", "0.00", "0.00"], 13),
    ),
    [heading("Through wall A on the design day")],
    ...spillBlock(`=SILL.DEW_PROFILE(${A},${AIR})`, PROFILE, 12),
    [heading("Through wall B on the design day")],
    ...spillBlock(`=SILL.DEW_PROFILE(${B},${AIR})`, PROFILE, 12),
    [heading("Wall A, a year of wetting and drying")],
    ...spillBlock(`=SILL.DEW_MONTHS(${A},B17,B19)`, YEAR, 16),
    [heading("Wall B, a year of wetting and drying")],
    ...spillBlock(`=SILL.DEW_MONTHS(${B},B17,B19)`, YEAR, 16),
  ],
};

function sideBySide(left: (TemplateCell | undefined)[][], right: (TemplateCell | undefined)[][]) {
  return left.map((row, i) => [...row, ...Array(6 - row.length).fill(undefined), ...(right[i] ?? [])]);
}
