import type { Tape } from "../../core/kit/tape.ts";
import {
  type Adjusted,
  adjust,
  assumeCommon,
  type Factor,
  factorsText,
  type Member,
  showAdjusted,
  times,
} from "../../core/wood/adjust.ts";
import { VALUE_NAMES } from "../../core/wood/material.ts";
import { showSection } from "../../core/wood/section.ts";
import { beamStability } from "../../core/wood/stability.ts";
import { columnsOf } from "../declare/columns.ts";
import { optional } from "../declare/param.ts";
import { length } from "../declare/scalar.ts";
import { flag } from "../declare/word.ts";
import { familyFunction } from "./family.ts";
import { material, ownValues, woodFor } from "./material-param.ts";
import {
  CAUTION,
  designMethod,
  GRADES_FROM_MEMORY,
  loadDuration,
  NDS_SOURCE,
  useOf,
  woodService,
  woodStandard,
} from "./params.ts";
import { section } from "./section-param.ts";

const columns = columnsOf<Adjusted>(
  ["value", "", (a) => a.name],
  ["reference", "psi", (a) => a.referencePsi],
  ["factors", "", (a) => factorsText(a.factors)],
  ["adjusted", "psi", (a) => a.adjustedPsi],
);

/** Lays the beam stability factor on Fb; Fb* leaves out the flat use factor. */
function withStability(fb: Adjusted, member: Member, unbracedIn: number, tape?: Tape): Adjusted {
  const star = times(
    fb.referencePsi,
    fb.factors.filter((f) => f.symbol !== "Cfu"),
  );
  const emin = adjust("Emin", member).adjustedPsi;
  const value = beamStability(member.section, unbracedIn, star, emin, tape);
  const cl: Factor = { symbol: "CL", value, says: "beam stability", clause: "NDS 3.3.3" };
  return { ...fb, factors: [...fb.factors, cl], adjustedPsi: fb.adjustedPsi * value };
}

export const woodAdjusted = familyFunction({
  name: "WOOD_ADJUSTED",
  summary: "Design values of a wood member with every adjustment factor named.",
  params: {
    section,
    material,
    unbraced: optional(
      length("ft", { says: "length between places where the compression edge is held, ft", min: 0, max: 60 }),
      undefined,
      "compression edge held along its length, CL 1",
    ),
    repetitive: optional(
      flag({ says: "yes for three or more members at most 24 in apart under a deck that shares the load" }),
      false,
      "not a repetitive member, Cr 1",
    ),
  },
  placed: { loadDuration, woodService, values: ownValues },
  named: { designMethod, woodStandard },
  returns: columns.table("each value with its factors; the last column is what to design with"),
  sources: [NDS_SOURCE, GRADES_FROM_MEMORY],
  assumptions: [
    "An own row holds the size or volume factor already; for glued laminated timber CL is laid on it too, which is on the safe side.",
    "Wall studs: the repetitive factor for wind of the shear wall standard is not laid on, since sources disagree on it (1.5; 1.5 and 1.4; 1.5 and 1.35).",
  ],
  cautions: [CAUTION],
  example: {
    args: {
      section: "4x6",
      material: [
        ["material", "Fb", "Fv", "E"],
        ["southern pine of 2005", 1250, 175, 1_600_000],
      ],
      loadDuration: "construction",
      woodService: "wet",
    },
    gives: [
      ["Fb", 1250, "CD 1.25 CM 0.85", 1328],
      ["Fv", 175, "CD 1.25 CM 0.97", 212],
      ["E", 1_600_000, "CM 0.9", 1_440_000],
    ],
    within: 0.5,
    source: "Formwork textbook (4th ed. 2010), p 359",
  },
  refuses: [
    { args: { section: "6" }, says: "it is not read as a section" },
    {
      args: {
        material: [
          ["a", "Fb", "Fv", "E"],
          ["southern pine of 2005", 1250, 175, 1600000],
        ],
      },
      says: "its columns are material, kind, Fb, Ft, Fv, Fcp, Fc, E, Emin, G",
    },
    {
      args: {
        material: [
          ["material", "Fb", "Fv", "E"],
          ["southern pine of 2005", 1250, 175, ""],
        ],
        unbraced: 54,
      },
      says: "this check needs it and the row does not give it",
    },
    { args: { unbraced: -1 }, says: "it must be from 0 to 60 ft" },
    { args: { material: "Douglas fir-larch stud", section: "2x12" }, says: "the table holds it up to 6 in" },
    {
      args: { material: "Douglas fir-larch No. 2", section: "1.7 x 7.1" },
      says: "the values of Douglas fir-larch No. 2 go by nominal sizes",
    },
    {
      args: {
        woodService: "wet",
        material: [
          ["material", "kind", "Fb", "Fv", "E"],
          ["x", "LVL", 2600, 285, 1900000],
        ],
      },
      says: "structural composite lumber is for dry service unless its",
    },
  ],
  notFor: "Incised, fire-retardant treated, notched or hot members need factors that are not held here.",
  run(a, tape) {
    const use = useOf(a, tape);
    showSection(a.section, tape);
    const wood = woodFor(a.material, a.values, a.section, tape);
    const member = { section: a.section, wood, use, repetitive: a.repetitive };
    assumeCommon(member, tape);
    const unbracedIn = (a.unbraced ?? 0) * 12;
    const adjusted = VALUE_NAMES.filter((name) => wood.values[name] !== undefined).map((name) => {
      const plain = adjust(name, member, tape);
      const found = name === "Fb" && unbracedIn > 0 ? withStability(plain, member, unbracedIn, tape) : plain;
      showAdjusted(found, tape);
      return found;
    });
    const rows = columns.rows(adjusted);
    tape?.step("values", "value, reference, factors, adjusted", rows, "", "NDS 4.3, 5.3, 8.3");
    return rows;
  },
});
