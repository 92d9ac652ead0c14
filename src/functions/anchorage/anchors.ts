import { anchorSchedule, type ScheduledAnchor } from "../../core/anchorage/anchor-schedule.ts";
import { type AnchorCheck, bondedRod } from "../../core/anchorage/bond.ts";
import { type SillSpacing, sillBolts } from "../../core/anchorage/sill-anchors.ts";
import { ifGiven, needed, orElse } from "../basis/term.ts";
import { columnsOf } from "../declare/columns.ts";
import { optional } from "../declare/param.ts";
import { length, quantity } from "../declare/scalar.ts";
import { spill } from "../declare/spill.ts";
import { table } from "../declare/table.ts";
import { text } from "../declare/word.ts";
import { gravity } from "../fasteners/params.ts";
import { familyFunction } from "./family.ts";
import { CAUTION, designedOf, levelTerms, shearPlf } from "./params.ts";

const sill = columnsOf<SillSpacing>(["spacing", "in", (r) => r.spacingIn], ["capacity", "lb", (r) => r.capacityLb]);

const thickness = length("in", { says: "thickness of the sill, or its nominal size such as 2x6", min: 0.75, max: 6 });

/** Sawn plates up to 4x are half an inch less than their nominal thickness. */
const sillThickness: typeof thickness = {
  ...thickness,
  read(raw, at, notes) {
    const cell = Array.isArray(raw) && raw.length === 1 && raw[0]?.length === 1 ? raw[0][0] : raw;
    const nominal = typeof cell === "string" ? /^\s*([234])\s*[x\u00d7]\s*\d+\s*$/i.exec(cell)?.[1] : undefined;
    if (nominal === undefined) return thickness.read(raw, at, notes);
    const actual = Number(nominal) - 0.5;
    return { value: actual, shown: `${String(cell).trim()}, ${actual} in thick` };
  },
};

const anchorSill = familyFunction({
  name: "ANCHOR_SILL",
  summary:
    "Spacing of cast-in sill bolts by the shear along the wall, and what one carries by the yield modes of the wood.",
  params: {
    shear: shearPlf("shear along the sill", 0.1),
    bolt: length("in", { says: "diameter of the bolt", min: 0.5, max: 1, source: "IRC R403.1.6, NDS 12.3.1" }),
    sill: sillThickness,
    gravity: optional(gravity, 0.42, "specific gravity of the sill {}: spruce-pine-fir, the lightest usual"),
  },
  placed: { loadDuration: needed("load duration"), concreteStrength: orElse("concrete strength") },
  named: {
    designMethod: levelTerms.designMethod,
    loadLevel: levelTerms.loadLevel,
    woodStandard: orElse("wood standard"),
  },
  returns: sill.table("spacing down to the inch, at most 6 ft, and the adjusted value of one bolt"),
  oneRow: true,
  sources: [
    "NDS 2018 12.3.1 and Table 12E, values of the table from memory",
    "IRC R403.1.6: spacing, ends and number, read in two adoptions",
  ],
  cautions: [CAUTION],
  example: {
    args: { shear: 155, bolt: 0.625, sill: 1.5, gravity: 0.5, loadDuration: "live" },
    gives: [[71, 930]],
    within: 5,
    source: "NDS 2018 Table 12E, from memory: 930 lb along the grain, printed to 10 lb",
  },
  refuses: [
    { args: { shear: 9000 }, says: "the least spacing is 2.5 in" },
    { args: { loadDuration: "wind" }, says: "the shear comes from wind or an earthquake, and its strength level is" },
    {
      args: { loadLevel: "strength" },
      says: "only wind and seismic forces go from one level to the other by one factor",
    },
    {
      args: { loadDuration: "impact" },
      says: "connections take no impact factor, CD at most 1.6 (NDS Table 11.3.1 note 1)",
    },
    { args: { sill: 18 }, says: "it must be from 0.75 to 6 in" },
  ],
  notFor: "Uplift beside shear takes ANCHOR_SCHEDULE; bolts near a concrete edge or in blocks go to an engineer.",
  run: (a, tape) =>
    spill(
      sill,
      [
        sillBolts(
          { shearPlf: a.shear, boltIn: a.bolt, sillIn: a.sill, gravity: a.gravity, concretePsi: a.concreteStrength },
          { duration: a.loadDuration, service: "dry", method: a.designMethod, edition: a.woodStandard },
          a.loadLevel,
          tape,
        ),
      ],
      "answer",
      "spacing, capacity",
      tape,
    ),
});

const lines = table(
  {
    line: text({ says: "name of the wall line", heads: ["wall", "name"] }),
    shear: shearPlf("shear along the sill, of wind or earthquake", 0),
    length: length("ft", {
      says: "length of the sill",
      min: 1,
      max: 1000,
      usual: { min: 1, max: 150, ask: "is it in feet?" },
    }),
    uplift: optional(
      quantity("plf", {
        says: "uplift on the sill",
        min: 0,
        max: 1e4,
        usual: { min: 1, max: 3000, ask: "is it in plf?" },
      }),
      0,
      "no uplift",
    ),
  },
  { says: "sills, one a row: line, shear plf, length ft, uplift plf", maxRows: 200, unlike: true },
);

const carried = (what: string) =>
  quantity("lb", {
    says: `${what} that one carries, from its evaluation report`,
    above: 0,
    max: 1e6,
    usual: { min: 50, max: 40_000, ask: "is it in pounds?" },
  });

const anchors = table(
  {
    anchor: text({ says: "name of the anchor", heads: ["name"] }),
    shear: carried("shear"),
    tension: carried("tension"),
    leastSpacing: optional(
      length("in", { says: "least spacing of the report", above: 0, max: 72, heads: ["spacing", "least spacing"] }),
      undefined,
      "no least spacing",
    ),
    leastEdge: optional(
      length("in", {
        says: "least distance to the edge of the report",
        above: 0,
        max: 48,
        heads: ["edge", "least edge"],
      }),
      undefined,
      "no least edge distance",
    ),
    plate: optional(
      quantity("in2", { says: "area of the plate that spreads the pull on the wood", above: 0, max: 400 }),
      undefined,
      "no spread plate",
    ),
  },
  {
    says: "the office's own anchors from evaluation reports: anchor, shear lb, tension lb, least spacing in, least edge in, plate in2",
    maxRows: 50,
  },
);

const scheduled = columnsOf<ScheduledAnchor>(
  ["line", "", (r) => r.line],
  ["anchor", "", (r) => r.anchor],
  ["spacing", "in", (r) => r.spacingIn ?? ""],
  ["count", "", (r) => r.count ?? ""],
  ["shear ratio", "", (r) => r.shearRatio ?? ""],
  ["tension ratio", "", (r) => r.tensionRatio ?? ""],
  ["combined", "", (r) => r.combined ?? ""],
);

const schedule = familyFunction({
  name: "ANCHOR_SCHEDULE",
  summary: "Sill anchors of all wall lines for shear and uplift together, by capacities that the office gives.",
  params: { lines, anchors },
  placed: { loadLevel: levelTerms.loadLevel },
  named: { designMethod: levelTerms.designMethod, loadDuration: levelTerms.loadDuration },
  returns: scheduled.table(
    "a row for each line: the first anchor of the list that holds, its spacing and number, and how far it is used",
  ),
  sources: [
    "ACI 318-19 17.8, from memory: shear and tension together",
    "IRC R403.1.6: greatest spacing, ends and number, read in two adoptions",
  ],
  assumptions: ["No anchor is built in: capacities are the office's own, from evaluation reports."],
  cautions: [CAUTION],
  example: {
    args: {
      lines: [["north", 100, 20, 100]],
      anchors: [["own anchor", 1000, 1000]],
      loadLevel: "allowable",
    },
    gives: [["north", "own anchor", 72, 4, 0.6, 0.6, 1]],
    within: 1e-9,
    source: "exact arithmetic: 100 plf x 6 ft = 600 lb each way, (0.6 + 0.6) / 1.2 = 1",
  },
  refuses: [
    { args: { loadLevel: null }, says: "the shear comes from wind or an earthquake, and its strength level is" },
    { args: { lines: [["north", -1, 20, 100]] }, says: "it must be from 0 to 10000 plf" },
  ],
  notFor:
    "Where the anchors' report has no figure for the edge and the concrete at hand, ask its maker or an engineer.",
  run: (a, tape) =>
    spill(
      scheduled,
      anchorSchedule(
        a.lines.map((r) => ({ line: r.line, shearPlf: r.shear, lengthFt: r.length, upliftPlf: r.uplift })),
        a.anchors.map((r) => ({
          anchor: r.anchor,
          shearLb: r.shear,
          tensionLb: r.tension,
          leastSpacingIn: r.leastSpacing,
          leastEdgeIn: r.leastEdge,
          plateIn2: r.plate,
        })),
        designedOf(a),
        tape,
      ),
      "answer",
      "line, anchor, spacing, count, shear ratio, tension ratio, combined",
      tape,
    ),
});

const checks = columnsOf<AnchorCheck>(
  ["check", "", (r) => r.check],
  ["capacity", "lb", (r) => r.capacityLb],
  ["ratio", "", (r) => r.ratio],
);

const anchorBond = familyFunction({
  name: "ANCHOR_BOND",
  summary: "An adhesive anchor rod in tension at strength level: steel, concrete breakout and bond, the worst first.",
  params: {
    tension: quantity("lb", {
      says: "tension at strength level",
      min: 1,
      max: 1e6,
      usual: { min: 50, max: 40_000, ask: "is it in pounds?" },
    }),
    rod: length("in", { says: "nominal diameter of the threaded rod", min: 0.375, max: 1.25 }),
    depth: length("in", { says: "embedment depth", min: 1.5, max: 25, source: "ACI 318: 4 to 20 rod diameters" }),
    edge: length("in", {
      says: "distance from the rod to the nearest edge",
      min: 1.5,
      max: 240,
      source: "cover, ACI 318",
    }),
    spacing: optional(
      length("in", { says: "spacing to the rods on both sides, along the edge", min: 2, max: 1200 }),
      undefined,
      "a rod that stands alone",
    ),
  },
  placed: {
    concreteStrength: orElse("concrete strength"),
    bondStress: ifGiven("bond stress", "the standard's least bond stress, outdoors"),
    concreteState: orElse("concrete state"),
    seismicCategory: ifGiven("seismic category", "seismic design category A or B"),
  },
  named: {
    concreteStandard: orElse("concrete standard"),
    loadLevel: ifGiven("load level", "the tension is at strength level"),
  },
  returns: checks.table("design strengths and the share of each that the tension takes, the worst first"),
  sources: [
    "ACI 318-14 17.4.5 on bond, read on a code page; chapter 17 of ACI 318-19 and 318-14 otherwise from memory",
    "No printed example without a product was found: the checks are of the formulas and of the area drawn",
  ],
  assumptions: ["Everything is at strength level: a tension of 0.6 W must be brought back to W first."],
  cautions: [CAUTION],
  example: {
    args: { tension: 1000, rod: 0.625, depth: 8, edge: 100 },
    gives: [
      ["bond", 2042.04, 0.48971],
      ["steel", 9831, 0.1017],
      ["breakout", 12_501.87, 0.08],
    ],
    within: 1,
    source:
      "exact arithmetic on the formulas, from memory: 0.65 x 200 pi 0.625 x 8; 0.75 x 0.226 x 58000; 0.65 x 17 x 50 x 8^1.5",
  },
  refuses: [
    { args: { depth: 16 }, says: "the method holds from 2.5 to 12.5 in (4 to 20 rod diameters, ACI 318-19)" },
    { args: { rod: 1.125 }, says: "threaded rods are held for 0.375, 0.5, 0.625, 0.75, 0.875, 1, 1.25 in" },
    { args: { spacing: 2 }, says: "the method holds from 3.75 to 1200 in (6 rod diameters, ACI 318-19 17.9)" },
    {
      args: { concreteStrength: 9000 },
      says: "the method holds from 2500 to 8000 psi (post-installed anchors, ACI 318 17.3.1)",
    },
    { args: { edge: 1 }, says: "it must be from 1.5 to 240 in (cover, ACI 318)" },
  ],
  notFor: "Shear, groups, thin members and seismic detailing go to an engineer or to the makers' own design.",
  run: (a, tape) => {
    if (a.loadLevel === "allowable") {
      tape?.caution(
        "The basis says allowable level, and the tension here is read at strength level: bring it there first, 0.6 W back to W.",
      );
    }
    return spill(
      checks,
      bondedRod(
        {
          tensionLb: a.tension,
          diameterIn: a.rod,
          depthIn: a.depth,
          edgeIn: a.edge,
          spacingIn: a.spacing,
          concretePsi: a.concreteStrength,
          bondPsi: a.bondStress,
          state: a.concreteState,
          seismicCategory: a.seismicCategory,
          standard: a.concreteStandard,
        },
        tape,
      ),
      "answer",
      "check, capacity, ratio",
      tape,
    );
  },
});

export const anchorFunctions = [anchorSill, schedule, anchorBond] as const;
