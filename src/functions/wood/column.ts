import type { LoadLevel } from "../../core/kit/load-level.ts";
import { plain } from "../../core/kit/refusal.ts";
import type { Tape } from "../../core/kit/tape.ts";
import { beamColumnChecks } from "../../core/wood/beam-column.ts";
import type { Bracing, Fastening } from "../../core/wood/column.ts";
import { columnAnswer } from "../../core/wood/column.ts";
import { levels } from "../../core/wood/use.ts";
import { ifGiven, orElse } from "../basis/term.ts";
import { quantityOf } from "../declare/cell-function.ts";
import { optional } from "../declare/param.ts";
import { length, quantity } from "../declare/scalar.ts";
import { familyFunction } from "./family.ts";
import { material, ownValues, woodFor } from "./material-param.ts";
import {
  CAUTION,
  checkColumns,
  deflectionLimit,
  designMethod,
  GRADES_FROM_MEMORY,
  loadDuration,
  NDS_SOURCE,
  useOf,
  woodService,
  woodStandard,
} from "./params.ts";
import { section } from "./section-param.ts";

const height = length("ft", { says: "unbraced length in the direction of the depth, ft", min: 0.5, max: 60 });
const weak = optional(
  length("ft", {
    says: "unbraced length across the plies or thickness, ft; none where sheathing holds it",
    min: 0,
    max: 60,
  }),
  undefined,
  "as the length, nothing holds it between",
);
const plyFastening = orElse("ply fastening", "none", "plies not joined: each buckles by itself");
const COLUMN_SOURCES = "Built-up columns: NDS 15.3, from memory";
const EULER = "Stability by Emin (NDS since 2005), not the older KcE with E.";

function bracingOf(lengthFt: number, weakFt: number | undefined, fastening: Fastening, tape?: Tape): Bracing {
  if (weakFt !== undefined && weakFt > lengthFt) {
    tape?.caution(`The weak direction is unbraced over ${plain(weakFt)} ft, longer than the column: is it in feet?`);
  }
  return { strongIn: lengthFt * 12, weakIn: (weakFt ?? lengthFt) * 12, fastening };
}

/** A capacity stands at the level of the design method, whatever level forces have. */
function sayLevel(what: string, method: LoadLevel, level: LoadLevel | undefined, tape?: Tape): void {
  if (level !== undefined && level !== method) {
    tape?.caution(
      `${what} is at ${method} level, and the load level says ${level}: bring combined axial loads to ${method} level by LOAD_COMBINE first.`,
    );
  }
}

export const woodColumn = familyFunction({
  name: "WOOD_COLUMN",
  summary: "Axial capacity of a wood column or stud, solid or of plies, with buckling both ways.",
  params: { section, material, length: height, weak },
  placed: { loadDuration, woodService, plyFastening, values: ownValues },
  named: { designMethod, loadLevel: ifGiven("load level"), woodStandard },
  returns: quantityOf("lb", "axial load that the column carries, at the level of the design method"),
  sources: [NDS_SOURCE, COLUMN_SOURCES, GRADES_FROM_MEMORY],
  assumptions: [
    "Hinged ends held in place (Ke 1), load through the center.",
    EULER,
    "Bearing at the ends is not checked.",
  ],
  cautions: [CAUTION],
  example: {
    args: {
      section: "1.5 x 5.5",
      material: [
        ["material", "Fc", "E", "Emin"],
        ["shore of the worksheet", 1350, 1_600_000, 580_000],
      ],
      length: 12,
      weak: 6,
      loadDuration: "snow",
    },
    gives: 1660,
    within: 5,
    source: "University course worksheet, solid wood shore (NDS 2005 form): 1.66 kip",
  },
  refuses: [
    { args: { weak: 12 }, says: "it may not exceed 50 (NDS 3.7.1.4)" },
    { args: { section: "6" }, says: "it is not read as a section" },
    {
      args: {
        material: [
          ["material", 0, "E", "Emin"],
          ["shore of the worksheet", 1350, 1600000, 580000],
        ],
      },
      says: "this check needs it and the row does not give it",
    },
    { args: { weak: 72 }, says: "it must be from 0 to 60 ft" },
    {
      args: { section: "6-1.5 x 5.5", plyFastening: "nailed" },
      says: "built-up columns have 2 to 5 plies of at least 1.5 in (NDS",
    },
    {
      args: { material: "Douglas fir-larch No. 2", section: "6x6" },
      says: "the values of generic grades hold for lumber 2 to 4 in thick",
    },
  ],
  notFor:
    "Columns with side load take WOOD_BEAMCOLUMN; braced frames, spaced columns and load off the center go to an engineer.",
  run(a, tape) {
    const use = useOf(a, tape);
    const wood = woodFor(a.material, a.values, a.section, tape);
    sayLevel("The capacity", use.method, a.loadLevel, tape);
    const member = { section: a.section, wood, use, repetitive: false };
    return columnAnswer(member, bracingOf(a.length, a.weak, a.plyFastening, tape), tape).capacityLb;
  },
});

export const woodBeamColumn = familyFunction({
  name: "WOOD_BEAMCOLUMN",
  summary:
    "A column or stud under axial load and wind together: compression, bending, shear, both combined, deflection.",
  params: {
    section,
    material,
    length: height,
    axial: quantity("lb", {
      says: "axial load at the level of the design method, lb",
      min: 0,
      max: 500_000,
      usual: { min: 50, max: 100_000, ask: "is it the axial load in lb?" },
    }),
    lateral: quantity("plf", {
      says: "load along the depth of the section, plf, either way",
      min: -5000,
      max: 5000,
      usual: { min: 2, max: 1000, eitherSign: true, ask: "is it the load in plf, and not the pressure?" },
    }),
    weak,
  },
  placed: { loadDuration, deflectionLimit, plyFastening, values: ownValues },
  named: { woodService, designMethod, loadLevel: ifGiven("load level"), woodStandard },
  returns: checkColumns.table("a row a check, the worst first; up to a ratio of 1 it is enough"),
  sources: [NDS_SOURCE, COLUMN_SOURCES, GRADES_FROM_MEMORY],
  assumptions: [
    "Hinged ends held in place (Ke 1), axial load through the center, lateral load along the depth only.",
    EULER,
    "Cr 1: the wall stud factor of the shear wall standard is not laid on, since sources disagree on it.",
    "Deflection goes by the whole lateral load at service level; the reduced wind that a note of the code allows (0.42 W) is not used.",
    "The edge in compression is held as often as the weak direction is.",
  ],
  cautions: [CAUTION],
  example: {
    args: {
      section: "2-1.5 x 5.5",
      material: [
        ["material", "Fb", "Fv", "Fc", "E", "Emin"],
        ["stud with Cr 1.15", 776.25, 135, 725, 1_200_000, 440_000],
      ],
      length: 19.25,
      axial: 430.67,
      lateral: 20,
      weak: "none",
      loadDuration: "wind",
      deflectionLimit: "L/180",
      loadLevel: "allowable",
    },
    gives: [
      ["deflection", 1.24, 1.28, "in", 0.965, "L/180"],
      ["combined", 0.7, 1, "", 0.7, "NDS Eq. 3.9-3"],
      ["bending", 735, 1242, "psi", 0.592, "NDS 3.3.1"],
      ["compression", 26.1, 197, "psi", 0.133, "NDS 3.7.1"],
      ["shear", 16.7, 216, "psi", 0.077, "NDS 3.4"],
    ],
    within: 0.06,
    source:
      "Engineering-office calculation sheet in a city permit file, 2021 (inputs of the stud inferred): combined 0.70, deflection 1.24 of 1.28 in; the rest exact arithmetic",
  },
  refuses: [
    { args: { weak: 60 }, says: "it may not exceed 50 (NDS 3.7.1.4)" },
    { args: { axial: 43067 }, says: "the critical stress in the plane of bending is 205.034 psi: the" },
    { args: { section: "6" }, says: "it is not read as a section" },
    { args: { loadLevel: null }, says: "the lateral load comes from wind or an earthquake, and its strength" },
    { args: { length: 231 }, says: "it must be from 0.5 to 60 ft" },
  ],
  notFor: "Bending about both axes, load off the center and frames that sway go to an engineer.",
  run(a, tape) {
    const use = useOf(a, tape);
    const wood = woodFor(a.material, a.values, a.section, tape);
    sayLevel("The axial load", use.method, a.loadLevel, tape);
    const lateral = levels("The lateral load", Math.abs(a.lateral), "plf", use, a.loadLevel, tape);
    const checks = beamColumnChecks(
      { section: a.section, wood, use, repetitive: false },
      {
        lengthIn: a.length * 12,
        bracing: bracingOf(a.length, a.weak, a.plyFastening, tape),
        axialLb: a.axial,
        lateralLbPerIn: lateral.design / 12,
        serviceLbPerIn: lateral.service / 12,
        deflectionOver: a.deflectionLimit,
      },
      tape,
    );
    const rows = checkColumns.rows(checks);
    tape?.step("checks", "check, demand, capacity, unit, ratio, clause", rows, "", "");
    return rows;
  },
});
