import { holdDownSchedule, type ScheduledWall } from "../../core/anchorage/hold-down-schedule.ts";
import { type Overturning, overturning } from "../../core/anchorage/overturning.ts";
import { ifGiven } from "../basis/term.ts";
import { columnsOf } from "../declare/columns.ts";
import { optional } from "../declare/param.ts";
import { length, quantity, whole } from "../declare/scalar.ts";
import { spill } from "../declare/spill.ts";
import { table } from "../declare/table.ts";
import { text } from "../declare/word.ts";
import { familyFunction } from "./family.ts";
import { arm, CAUTION, dead, designedOf, height, levelTerms, shearLb } from "./params.ts";

const deadFactor = {
  deadFactor: ifGiven(
    "dead factor",
    "0.6 of the dead load resists by the allowable method, 0.9 by the strength method",
  ),
};
const SOURCES = [
  "AWC ASD/LRFD Manual M14.3: chord force V h / L less w L / 2",
  "ASCE/SEI 7 sections 2.3 and 2.4: 0.6 D and 0.9 D, 0.6 W and 0.7 E",
  "WFCM Table 3.17F, from memory: T = v h",
] as const;

const pair = columnsOf<Overturning>(
  ["overturning", "ft lb", (r) => r.overturningFtLb],
  ["resisting", "ft lb", (r) => r.resistingFtLb],
  ["tension", "lb", (r) => r.tensionLb],
  ["compression", "lb", (r) => r.compressionLb],
);

const tension = familyFunction({
  name: "HOLDDOWN_TENSION",
  summary: "Tension and compression at the ends of a shear wall: its overturning less the dead load that resists.",
  params: {
    shear: shearLb,
    height,
    arm,
    dead,
    length: optional(
      length("ft", { says: "length of wall that the dead load stands on", min: 0.5, max: 500 }),
      undefined,
      "the dead load stands on a length like the arm",
    ),
    post: optional(
      quantity("lb", { says: "dead load that comes down at the hold-down", min: 0, max: 1e6 }),
      0,
      "no dead load comes down at the post",
    ),
  },
  placed: deadFactor,
  named: levelTerms,
  returns: pair.table("moments about the far end and the pair of forces, at the level of the design method"),
  oneRow: true,
  sources: SOURCES,
  cautions: [CAUTION],
  example: {
    args: { shear: 4360, height: 8, arm: 10, loadLevel: "allowable" },
    gives: [[34_880, 0, 3488, 3488]],
    within: 0.5,
    source: "WFCM Table 3.17F, from memory: 436 plf, 8 ft high, 3488 lb",
  },
  refuses: [
    { args: { loadLevel: null }, says: "the shear comes from wind or an earthquake, and its strength level is" },
    { args: { arm: 0.1 }, says: "it must be from 0.5 to 500 ft" },
  ],
  notFor: "Hold-downs of walls stacked on each other take HOLDDOWN_SCHEDULE; seismic overstrength goes to an engineer.",
  run: (a, tape) =>
    spill(
      pair,
      [
        overturning(
          {
            shearLb: a.shear,
            heightFt: a.height,
            armFt: a.arm,
            deadPlf: a.dead,
            lengthFt: a.length ?? a.arm,
            postLb: a.post,
          },
          designedOf(a),
          a.deadFactor,
          tape,
        ),
      ],
      "answer",
      "overturning, resisting, tension, compression",
      tape,
    ),
});

const shearLines = table(
  {
    line: text({ says: "name of the wall line", heads: ["wall", "name"] }),
    shear: shearLb,
    length: length("ft", {
      says: "length of the wall",
      min: 0.5,
      max: 500,
      usual: { min: 1, max: 100, ask: "is it in feet?" },
    }),
    height,
    dead,
    floor: optional(whole({ says: "floor, the lowest 1", min: 1, max: 20, heads: ["level", "story"] }), 1, "floor 1"),
    arm: optional(arm, undefined, "the length less half a foot"),
  },
  {
    says: "shear walls, one a row: line, shear lb of that floor, length ft, height ft, dead plf, floor, arm ft",
    maxRows: 200,
  },
);

const capacities = table(
  {
    size: text({ says: "name of the hold-down", heads: ["hold-down", "holddown", "name"] }),
    capacity: quantity("lb", {
      says: "what it carries, for the design method",
      above: 0,
      max: 1e6,
      usual: { min: 200, max: 40_000, ask: "is it in pounds?" },
    }),
  },
  { says: "the office's own range of hold-downs: size, capacity lb", maxRows: 200 },
);

const schedule = columnsOf<ScheduledWall>(
  ["line", "", (r) => r.line],
  ["floor", "", (r) => r.floor],
  ["unit", "plf", (r) => r.unitPlf],
  ["tension", "lb", (r) => r.tensionLb],
  ["compression", "lb", (r) => r.compressionLb],
  ["size", "", (r) => r.size],
  ["ratio", "", (r) => r.ratio],
);

const holdDowns = familyFunction({
  name: "HOLDDOWN_SCHEDULE",
  summary:
    "Hold-downs of all shear walls, floors stacked on each other, each with the next size of the office's own range.",
  params: {
    shearLines,
    capacities: optional(capacities, [], "no range of hold-downs: sizes are not chosen"),
  },
  placed: deadFactor,
  named: levelTerms,
  returns: schedule.table(
    "a row for each wall: forces at the level of the design method with what comes from above, and the size",
  ),
  sources: SOURCES,
  assumptions: ["No hold-down is built in: the range is the office's own, from reports."],
  cautions: [CAUTION],
  example: {
    args: {
      shearLines: [
        ["A", 4360, 10, 8, null, 1, 10],
        ["B", 4360, 10, 10, null, 1, 10],
      ],
      capacities: [
        ["small", 4000],
        ["large", 4360],
      ],
      loadLevel: "allowable",
    },
    gives: [
      ["A", 1, 436, 3488, 3488, "small", 0.872],
      ["B", 1, 436, 4360, 4360, "large", 1],
    ],
    within: 0.5,
    source: "WFCM Table 3.17F, from memory: 436 plf, 8 and 10 ft high, 3488 and 4360 lb",
  },
  refuses: [
    { args: { loadLevel: null }, says: "the shear comes from wind or an earthquake, and its strength level is" },
    {
      args: {
        shearLines: [
          ["A", 4360, 3, 8, "", 1, 10],
          ["B", 4360, 10, 10, "", 1, 10],
        ],
      },
      says: "the wall is 3 ft long",
    },
    {
      args: {
        shearLines: [
          ["A", 4360, 10, 8, "", 1, 10],
          ["B", 4360, 10, 10, "", 1, 10],
          ["A", 4360, 10, 8, "", 1, 10],
        ],
      },
      says: "walls of one line stand on each other, one a floor",
    },
    {
      args: { loadDuration: "snow", loadLevel: "strength" },
      says: "only wind and seismic forces go from one level to the other by one factor",
    },
    { args: { deadFactor: 2 }, says: "it must be above 0 and at most 1" },
  ],
  notFor: "Rod systems that run through floors, and their shrinkage take-up, follow their maker's report.",
  run: (a, tape) =>
    spill(
      schedule,
      holdDownSchedule(
        a.shearLines.map((r) => ({
          line: r.line,
          shearLb: r.shear,
          lengthFt: r.length,
          heightFt: r.height,
          deadPlf: r.dead,
          floor: r.floor,
          armFt: r.arm,
        })),
        a.capacities.map((c) => ({ size: c.size, capacityLb: c.capacity })),
        designedOf(a),
        a.deadFactor,
        tape,
      ),
      "answer",
      "line, floor, unit shear, tension, compression, size, ratio",
      tape,
    ),
});

export const holdDownFunctions = [tension, holdDowns] as const;
