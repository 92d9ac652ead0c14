import { type GroupMember, rowValue } from "../../core/fasteners/group.ts";
import { spacingIn } from "../../core/fasteners/spacing.ts";
import { STEEL_E_PSI } from "../../core/fasteners/tables/fasteners.ts";
import { BadInput } from "../../core/kit/refusal.ts";
import { quantityOf } from "../declare/cell-function.ts";
import { optional, type Usual } from "../declare/param.ts";
import { length, quantity, whole } from "../declare/scalar.ts";
import { table } from "../declare/table.ts";
import { familyFunction } from "./family.ts";
import { CAUTION, diameter, force, type MemberRow, memberColumns, rolesOf } from "./params.ts";

/** Rows of fasteners: group action and spacing. */

const members = table(
  {
    ...memberColumns,
    width: optional(
      length("in", {
        says: "width of the member across the row",
        min: 0.1,
        max: 60,
        usual: { min: 0.75, max: 60, ask: "is it in inches?" },
      }),
      undefined,
      "asked where group action counts",
    ),
    E: optional(
      quantity("psi", { says: "modulus of elasticity along the row", min: 100_000, max: 4e7, heads: ["e", "modulus"] }),
      undefined,
      "steel has its own; asked for wood where group action counts",
    ),
  },
  {
    says: "members of the row: member, thickness, gravity or steel, angle, width in, E psi",
    minRows: 2,
    maxRows: 3,
  },
);

interface GroupRow extends MemberRow {
  readonly width: number | undefined;
  readonly E: number | undefined;
}

function stiffness(row: GroupRow): GroupMember {
  const steel = row.gravity.kind === "steel";
  const psi = row.E ?? (steel ? STEEL_E_PSI : undefined);
  if (row.width === undefined || psi === undefined) {
    throw new BadInput(
      `${row.member} has no ${row.width === undefined ? "width" : "E"}`,
      "how a row shares its load goes by the stiffness of its members, E x thickness x width",
      "Fill in the columns width (in) and E (psi) of members",
    );
  }
  return { name: row.member, steel, stiffnessLb: psi * row.thickness * row.width };
}

/** Where the diameter is left out the fasteners are nails or thin screws, for which the stiffness of members does not count. */
const THIN_IN = 0.24;
const WHOLE: GroupMember = { name: "", steel: false, stiffnessLb: 1 };

const group = familyFunction({
  name: "FASTENER_GROUP",
  summary: "What a row of fasteners carries: its number times one of them, times the group action factor.",
  params: {
    capacity: force("adjusted value of one fastener"),
    count: whole({ says: "fasteners in the row, along the load", min: 1, max: 30 }),
    spacing: length("in", {
      says: "spacing in the row, center to center",
      above: 0,
      max: 60,
      usual: { min: 0.75, max: 60, ask: "is it in inches?" },
    }),
    members,
    diameter: optional(diameter, undefined, "nails or screws under 1/4 in: no group action"),
  },
  returns: quantityOf("lb", "adjusted value of the row"),
  sources: ["NDS 2018 11.3.6, equation 11.3-1, from memory; Tables 11.3.6A and C as remembered"],
  assumptions: [
    "One row; where rows stand side by side each carries by itself, and the narrower share of the width counts.",
  ],
  cautions: [CAUTION],
  example: {
    args: {
      capacity: 1000,
      count: 5,
      spacing: 4,
      members: [
        ["side", 1, 0.5, null, 5, 1_400_000],
        ["main", 2, 0.5, null, 5, 1_400_000],
      ],
      diameter: 1,
    },
    gives: 3750,
    within: 25,
    source: "NDS 2015/2018 Table 11.3.6A, from memory: As/Am 0.5, As 5 in2, five in a row, Cg 0.75",
  },
  refuses: [
    {
      args: {
        members: [
          ["side", 1, 0.5, "", 5, 0],
          ["main", 2, 0.5, "", 5, 1400000],
        ],
      },
      says: "how a row shares its load goes by the stiffness of its members, E x",
    },
    {
      args: {
        members: [
          ["side", 1, "2x", "", 5, 1400000],
          ["main", 2, 0.5, "", 5, 1400000],
        ],
      },
      says: "a specific gravity such as 0.5 is wanted, or steel, OSB, plywood,",
    },
    {
      args: {
        members: [
          ["side", 1, 0.5, "", 5, 1400000],
          ["main", 2, 0.5, "", 5, 1400000],
          ["main", 2, 0.5, "", 5, 1400000],
        ],
      },
      says: "members go from the head: side, main, and the second side in double shear",
    },
    { args: { count: 60 }, says: "it must be from 1 to 30" },
    { args: { spacing: 1 }, says: "at least 3 in is wanted, 3 diameters (NDS Table 12.5.1B)" },
  ],
  notFor:
    "Splitting and row tear-out of large bolts near an end are checks of their own (NDS appendix E), not held here.",
  run(a, tape) {
    const { side, main, second } = rolesOf(a.members);
    const row = { count: a.count, spacingIn: a.spacing };
    if (a.diameter === undefined)
      return rowValue(a.capacity, { ...row, diameterIn: THIN_IN, main: WHOLE, sides: [WHOLE] }, tape);
    const sides = [side, ...(second === undefined ? [] : [second])].map(stiffness);
    return rowValue(a.capacity, { ...row, diameterIn: a.diameter, main: stiffness(main), sides }, tape);
  },
});

const inches = (says: string, usual?: Usual) =>
  length("in", { says, min: 0.5, max: 144, ...(usual === undefined ? {} : { usual }) });

const spacing = familyFunction({
  name: "FASTENER_SPACING",
  summary: "Spacing of fasteners along a line load, down to the whole inch and inside the least and greatest.",
  params: {
    demand: quantity("plf", {
      says: "load along the line",
      min: 0.1,
      max: 1e5,
      usual: { min: 5, max: 10_000, ask: "is it in plf?" },
    }),
    capacity: force("adjusted value of one fastener, of the load's level"),
    rows: optional(whole({ says: "rows side by side", min: 1, max: 20 }), 1, "{} row"),
    least: optional(inches("least spacing"), 1, "least spacing {} in"),
    most: optional(
      inches("greatest spacing", { min: 4, max: 72, ask: "is it in inches?" }),
      24,
      "greatest spacing {} in",
    ),
  },
  returns: quantityOf("in", "spacing"),
  sources: ["Statics; whole inches and the greatest spacing are common practice, no source"],
  cautions: [
    CAUTION,
    "Least spacings, ends and edges of the wood standard and of the fastener's report hold beside this.",
  ],
  example: {
    args: { demand: 150, capacity: 386, most: 36 },
    gives: 30,
    within: 0,
    source:
      "Wisconsin SPS 320-325 deck appendix Table 6 (2015): 1/2 in lag screws, 6 ft joists under 50 psf; the capacity is inferred from the same rows",
  },
  refuses: [
    { args: { least: 72 }, says: "the greatest is 36 in" },
    { args: { demand: 15000 }, says: "the least spacing is 1 in" },
    { args: { most: 180 }, says: "it must be from 0.5 to 144 in" },
  ],
  notFor: "Patterns in several widths, corners and diaphragm edges are laid out on a drawing, not by an even spacing.",
  run: (a, tape) => spacingIn(a.demand, a.capacity, { rows: a.rows, leastIn: a.least, mostIn: a.most }, tape),
});

export const rowFunctions = [group, spacing] as const;
