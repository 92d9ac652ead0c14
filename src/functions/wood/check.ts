import { ALIKE } from "../../core/wood/beam/spans.ts";
import { beamChecks } from "../../core/wood/member-check.ts";
import { ifGiven } from "../basis/term.ts";
import { optional } from "../declare/param.ts";
import { length } from "../declare/scalar.ts";
import { familyFunction } from "./family.ts";
import { levelLoads, loads } from "./loads-param.ts";
import { material, ownValues, woodFor } from "./material-param.ts";
import {
  CAUTION,
  checkColumns,
  deflectionLimit,
  designMethod,
  GRADES_FROM_MEMORY,
  loadDuration,
  NDS_SOURCE,
  spans,
  useOf,
  woodService,
  woodStandard,
} from "./params.ts";
import { section } from "./section-param.ts";

export const woodCheck = familyFunction({
  name: "WOOD_CHECK",
  summary: "Bending, shear, bearing and deflection of a beam, header, rafter or girt of one, two or three spans.",
  params: {
    section,
    material,
    span: length("ft", { says: "span, center to center of the supports, ft", above: 0.5, max: 60 }),
    loads,
    spans,
    bearing: optional(
      length("in", { says: "length of each bearing along the member, in", above: 0.25, max: 24 }),
      undefined,
      "bearing not checked",
    ),
  },
  placed: { loadDuration, deflectionLimit, woodService, values: ownValues },
  named: { designMethod, loadLevel: ifGiven("load level"), woodStandard },
  returns: checkColumns.table("a row a check, the worst first; up to a ratio of 1 it is enough"),
  sources: [NDS_SOURCE, GRADES_FROM_MEMORY, "Statics and elastic line of beams, exact"],
  assumptions: [
    "The compression edge is held along its length (CL 1) and the member is not repetitive (Cr 1); WOOD_ADJUSTED has both.",
    "The depth within which shear is left out (NDS 3.4.3.1) is counted from the center line of the support; textbooks that count from its face, or take 5/8 of the reduced load in several spans, come out less.",
  ],
  cautions: [CAUTION],
  example: {
    args: {
      section: "4x6",
      material: [
        ["material", "Fb", "Fv", "E"],
        ["form beam", 1000, 135, 1_600_000],
      ],
      span: 6,
      loads: 450,
      loadDuration: "construction",
      deflectionLimit: "L/240",
    },
    gives: [
      ["bending", 1377.1, 1250, "psi", 1.1017, "NDS 3.3.1"],
      ["deflection", 0.169, 0.3, "in", 0.563, "L/240"],
      ["shear", 89.1, 168.8, "psi", 0.528, "NDS 3.4"],
    ],
    within: 0.06,
    source:
      "Formwork textbook (4th ed. 2010), Ex. 5-6: shear stress 89.1 and 168.8 psi; bending and deflection by exact arithmetic",
  },
  refuses: [
    { args: { bearing: 24 }, says: "this check needs it and the row does not give it" },
    { args: { loadDuration: "wind" }, says: "the load comes from wind or an earthquake, and its strength level is" },
    {
      args: { loadLevel: "strength" },
      says: "only wind and seismic forces go from one level to the other by one factor",
    },
    { args: { section: "6" }, says: "it is not read as a section" },
    { args: { span: 72 }, says: "it must be above 0.5 ft and at most 60 ft" },
    { args: { loads: [["p", 900, 30]] }, says: "the beam goes from 0 to 72 in" },
  ],
  notFor: "Cantilevers, notches, holes, curved beams and more than three spans go to an engineer.",
  run(a, tape) {
    const use = useOf(a, tape);
    const wood = woodFor(a.material, a.values, a.section, tape);
    if (a.spans > 1 && "plf" in a.loads) tape?.caution(ALIKE);
    const spanIn = a.span * 12;
    const { design, deflection } = levelLoads(a.loads, spanIn * a.spans, use, a.loadLevel, tape);
    const checks = beamChecks(
      { section: a.section, wood, use, repetitive: false },
      {
        spanIn,
        spans: a.spans,
        loads: design,
        deflectionLoads: deflection,
        deflectionOver: a.deflectionLimit,
        bearingIn: a.bearing,
        unbracedIn: 0,
      },
      tape,
    );
    const rows = checkColumns.rows(checks);
    tape?.step("checks", "check, demand, capacity, unit, ratio, clause", rows, "", "");
    return rows;
  },
});
