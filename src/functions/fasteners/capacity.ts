import { combinedValue } from "../../core/fasteners/combined.ts";
import { lateralValue } from "../../core/fasteners/lateral.ts";
import { pullThroughValue } from "../../core/fasteners/pull-through.ts";
import { withdrawalValue } from "../../core/fasteners/withdrawal.ts";
import { quantityOf } from "../declare/cell-function.ts";
import { optional } from "../declare/param.ts";
import { length, measure } from "../declare/scalar.ts";
import { table } from "../declare/table.ts";
import { flag } from "../declare/word.ts";
import { familyFunction } from "./family.ts";
import {
  CAUTION,
  conditionsOf,
  diameter,
  force,
  grain,
  gravity,
  memberColumns,
  memberOf,
  namedTerms,
  placedTerms,
  rolesOf,
  type,
} from "./params.ts";

const members = table(memberColumns, {
  says: "members from the head: side, main, and a second side in double shear; thickness, gravity or steel, angle to the grain",
  minRows: 2,
  maxRows: 3,
});

const withdrawal = familyFunction({
  name: "FASTENER_WITHDRAWAL",
  summary: "What one lag screw, wood screw or nail holds against being pulled out, adjusted.",
  params: {
    type,
    diameter,
    gravity,
    thread: length("in", {
      says: "thread in the member that holds, without the tapered tip; of nails the length in it",
      above: 0,
      max: 24,
    }),
    grain,
  },
  placed: placedTerms,
  named: namedTerms,
  returns: quantityOf("lb", "adjusted withdrawal value of one fastener"),
  sources: [
    "NDS 2018 12.2.1 to 12.2.3, 11.3; printed values of Tables 12.2A, 11.2A and 11.2C",
    "US Forest Products Laboratory Technical Note 236 (1958): the design value of a nail is a fifth of its ultimate",
  ],
  assumptions: ["Temperatures up to 100 F."],
  cautions: [CAUTION],
  example: {
    args: { type: "lag screw", diameter: 0.5, gravity: 0.5, thread: 4, loadDuration: "live" },
    gives: 1512,
    within: 2,
    source: "NDS 2015/2018 Table 12.2A: 378 lb for each inch of thread, four inches",
  },
  refuses: [
    { args: { type: "nail" }, says: "the method holds from 0.099 to 0.375 in (NDS 12.2.3)" },
    { args: { type: "bolt" }, says: "a bolt is not held by threads in the wood: its washer bears on the face" },
    {
      args: { loadDuration: "impact" },
      says: "connections take no impact factor, CD at most 1.6 (NDS Table 11.3.1 note 1)",
    },
    { args: { gravity: 1 }, says: "it must be from 0.31 to 0.73 (NDS Tables 12.2A and 12.3.3)" },
    { args: { thread: 0.25 }, says: "at least 2 in is wanted, 4 diameters without the tip (NDS" },
    { args: { type: "nail", grain: "end", diameter: 0.162 }, says: "the standard allows none (NDS 12.2)" },
  ],
  notFor: "Proprietary screws take the figures of their evaluation report; ring-shank nails of special threads do too.",
  run: (a, tape) => withdrawalValue(a.type, a.diameter, a.gravity, a.thread, a.grain, conditionsOf(a), tape),
});

const lateral = familyFunction({
  name: "FASTENER_LATERAL",
  summary:
    "What one fastener carries across its axis, by the least of its yield modes, adjusted; the mode in words and drawn.",
  params: {
    type,
    diameter,
    members,
    gap: optional(
      length("in", { says: "gap or insulation between neighboring members", min: 0, max: 12 }),
      0,
      "no gap between the members",
    ),
    grain,
    rounded: optional(
      flag({ says: "whether bearing strengths are rounded to 50 psi as in the printed tables" }),
      true,
      "bearing strengths rounded to 50 psi as in the printed tables",
    ),
  },
  placed: placedTerms,
  named: namedTerms,
  returns: quantityOf("lb", "adjusted lateral value of one fastener"),
  sources: [
    "NDS 2018 12.3, 11.3, Tables 12.3.1A and B; printed values of Tables 12K and 11J; bending yield and root diameters from memory",
    "AWC Technical Report 12, general dowel equations, for a gap between the members",
  ],
  assumptions: [
    "Full diameters of end, edge and spacing: the geometry and group action factors are not in the value.",
    "Lag and wood screws with threads in the shear plane: the root diameter bends, the nominal one bears.",
    "Bending yield strength by the class of the nominal diameter, as the printed lag values have it; for wood screws that is the lower of two readings.",
    "The yield equations go by the real penetration; the older short cut of penetration over 10 diameters is not used.",
  ],
  cautions: [CAUTION],
  example: {
    args: {
      type: "lag screw",
      diameter: 0.25,
      members: [
        ["side", 2.5, 0.5],
        ["main", 2, 0.5],
      ],
      loadDuration: "live",
    },
    gives: 150,
    within: 5,
    source: "Formwork textbook (4th ed. 2010) Table 4-26, after NDS 2005 Table 11J, printed to 10 lb",
  },
  refuses: [
    { args: { diameter: 0.09 }, says: "the root diameter is known for 0.25, 0.3125, 0.375, 0.4375, 0.5," },
    { args: { type: "wood screw" }, says: "the root diameter is known for 0.138 (No. 6), 0.151 (No. 7), 0.164" },
    {
      args: { loadDuration: "impact" },
      says: "connections take no impact factor, CD at most 1.6 (NDS Table 11.3.1 note 1)",
    },
    { args: { diameter: 3 }, says: "it must be from 0.09 to 1.25 in (the wood standard's tables)" },
    {
      args: {
        members: [
          ["side", 2.5, 0.5],
          ["main", 2, 0.25],
        ],
      },
      says: "the method holds from 0.31 to 0.73 (NDS Tables 12.2A, 12.3.3)",
    },
    { args: { type: "bolt", diameter: 1.25 }, says: "the method holds from 0.25 to 1 in (NDS 12.3.1)" },
    {
      args: {
        members: [
          ["side", 2.5, 0.5],
          ["main", 1, 0.5],
        ],
        diameter: 0.5,
      },
      says: "at least 2 in is wanted, 4 diameters without the tip (NDS",
    },
    {
      args: {
        members: [
          ["side", 2.5, 0.5],
          ["main", 2, 0.5],
          ["side", 2.5, 0.5],
        ],
        grain: "end",
      },
      says: "it is the end of a wood member in which the fastener ends, in",
    },
    {
      args: {
        members: [
          ["side", 0.5, "OSB"],
          ["main", 2, 0.5],
        ],
        diameter: 0.5,
      },
      says: "its bearing strength is held for fasteners under 0.25 in (NDS",
    },
    { args: { type: "nail", diameter: 0.3 }, says: "the method holds from 0.099 to 0.273 in (NDS Appendix I)" },
  ],
  notFor:
    "Proprietary screws, split rings, shear plates and nail plates take their reports; fire and cyclic load go to an engineer.",
  run(a, tape) {
    const { side, main, second } = rolesOf(a.members);
    return lateralValue(
      {
        type: a.type,
        diameterIn: a.diameter,
        side: memberOf(side),
        main: memberOf(main),
        second: second === undefined ? undefined : memberOf(second),
        gapIn: a.gap,
        grain: a.grain,
        rounded: a.rounded,
      },
      conditionsOf(a),
      tape,
    );
  },
});

const pullThrough = familyFunction({
  name: "FASTENER_PULLTHROUGH",
  summary: "What one round head holds before it pulls through the member under it, adjusted.",
  params: {
    head: length("in", { says: "diameter of the head", min: 0.2, max: 2 }),
    thickness: length("in", { says: "net thickness of the member under the head", min: 0.1, max: 12 }),
    gravity,
  },
  placed: placedTerms,
  named: namedTerms,
  returns: quantityOf("lb", "adjusted pull-through value of one head"),
  sources: ["NDS 2018 12.2.5, from memory; no printed value was found"],
  assumptions: ["Temperatures up to 100 F."],
  cautions: [CAUTION],
  example: {
    args: { head: 0.375, thickness: 0.75, gravity: 0.42, loadDuration: "live" },
    gives: 107.545,
    within: 0.001,
    source: "exact arithmetic on the equation, from memory: 690 pi 0.375 x 0.42^2 x 0.75",
  },
  refuses: [
    { args: { woodStandard: "2015" }, says: "head pull-through came into the standard in 2018" },
    {
      args: { loadDuration: "impact" },
      says: "connections take no impact factor, CD at most 1.6 (NDS Table 11.3.1 note 1)",
    },
    { args: { head: 4.5 }, says: "it must be from 0.2 to 2 in" },
  ],
  notFor: "Washers, flange heads and foam under the head are not in the equation: take a tested figure.",
  run: (a, tape) => pullThroughValue(a.head, a.thickness, a.gravity, conditionsOf(a), tape),
});

const combined = familyFunction({
  name: "FASTENER_COMBINED",
  summary: "What one fastener carries at an angle between lateral load and withdrawal.",
  params: {
    type,
    withdrawal: force("adjusted withdrawal value of one fastener"),
    lateral: force("adjusted lateral value of one fastener"),
    angle: measure("deg", {
      says: "angle of the load from the face of the wood: 0 lateral, 90 withdrawal",
      min: 0,
      max: 90,
    }),
  },
  returns: quantityOf("lb", "adjusted value of one fastener at the angle"),
  sources: ["NDS 2018 12.4.1 and 12.4.2, from memory; no printed value was found"],
  cautions: [CAUTION],
  example: {
    args: { type: "lag screw", withdrawal: 300, lateral: 150, angle: 45 },
    gives: 200,
    within: 1e-9,
    source: "exact arithmetic on the equation, from memory: 300 x 150 / (300/2 + 150/2)",
  },
  refuses: [
    { args: { type: "bolt" }, says: "the standard combines lateral and withdrawal loads for lag screws," },
    { args: { angle: 135 }, says: "it must be from 0 to 90 deg" },
  ],
  notFor:
    "Two loads that come at different times need no combining, and proprietary screws have the equation of their report.",
  run: (a, tape) => combinedValue(a.type, a.withdrawal, a.lateral, a.angle, tape),
});

export const capacityFunctions = [withdrawal, lateral, pullThrough, combined] as const;
