import { BadInput } from "../../core/kit/refusal.ts";
import { type SeismicRow, type SeismicSystem, seismicForces } from "../../core/loads/seismic.ts";
import { HIGHEST_FT, LIGHT_FRAME_R } from "../../core/loads/tables/seismic.ts";
import { ifGiven, orElse } from "../basis/term.ts";
import { preliminary } from "../declare/cell-function.ts";
import { columnsOf } from "../declare/columns.ts";
import { optional } from "../declare/param.ts";
import { length, number, quantity } from "../declare/scalar.ts";
import { spill } from "../declare/spill.ts";
import { table } from "../declare/table.ts";
import { text } from "../declare/word.ts";
import { familyFunction } from "./family.ts";

const weights = table(
  {
    level: text({ says: "name of the floor or roof", heads: ["floor", "name", "story"] }),
    weight: quantity("lb", {
      says: "dead load that shakes with it: the roof or floor and half of the walls above and below",
      above: 0,
      max: 1e8,
      usual: { min: 500, max: 2e7, ask: "is it in pounds?" },
      heads: ["weight lb", "W"],
    }),
    height: length("ft", {
      says: "height above the base",
      above: 0,
      max: HIGHEST_FT,
      source: "light-frame walls, height above the base",
      heads: ["height ft", "h"],
    }),
  },
  { says: "levels, one a row: level, weight lb, height above the base ft", maxRows: 10, unlike: true },
);

const share = (says: string, max: number, heads: readonly string[]) =>
  optional(number({ says, above: 0, max, source: "accelerations in shares of g", heads }), undefined, "");

const system = table(
  {
    system: text({ says: "what resists: light-frame wood walls, or another with its R", heads: ["name", "walls"] }),
    SDS: number({
      says: "design acceleration SDS, in g, of the site",
      above: 0,
      max: 4,
      source: "accelerations in shares of g",
      usual: { min: 0.02, max: 2.5, ask: "is it in shares of g, and not in percent?" },
      heads: ["s d s"],
    }),
    SD1: share("design acceleration SD1 at 1 s, in g", 4, ["s d1"]),
    S1: share("mapped acceleration S1 at 1 s, in g", 4, ["mapped s1"]),
    R: optional(
      number({ says: `response modification R; ${LIGHT_FRAME_R} of light-frame wood walls`, min: 1, max: 8 }),
      undefined,
      "",
    ),
  },
  { says: "one row: system, SDS, SD1, S1, R", maxRows: 1 },
);

const columns = columnsOf<SeismicRow>(
  ["level", "", (r) => r.name],
  ["weight", "lb", (r) => r.weightLb],
  ["force at strength level", "lb", (r) => r.forceLb],
  ["shear at strength level", "lb", (r) => r.shearLb],
);

function systemOf(
  rows: readonly {
    readonly system: string;
    readonly SDS: number;
    readonly SD1: number | undefined;
    readonly S1: number | undefined;
    readonly R: number | undefined;
  }[],
): SeismicSystem {
  const [row] = rows;
  if (row === undefined) {
    throw new BadInput(
      "The system is missing",
      "the force goes by the acceleration of the ground and by what resists it",
      'Give a row such as {"light-frame wood walls",1.05,0.56}: system, SDS, SD1',
    );
  }
  return { name: row.system, sds: row.SDS, sd1: row.SD1, s1: row.S1, r: row.R };
}

const loadSeismic = familyFunction({
  name: "LOAD_SEISMIC",
  summary:
    "Seismic base shear of a wood building and the force of each level, by the equivalent lateral force procedure.",
  params: { weights, system: optional(system, [], "refused: SDS is wanted") },
  placed: {
    seismicCategory: ifGiven("seismic category", "it may be D or above: the redundancy factor is cautioned against"),
  },
  named: { riskCategory: orElse("risk category"), asce7Edition: orElse("ASCE 7 edition") },
  returns: columns.table("a row for each level from the top, with its force and the shear below it"),
  sources: [
    "ASCE/SEI 7-10, 7-16, 7-22 section 12.8, its equations and factors read in permit calculations of houses (7-16)",
    "Importance factors above 1 and the greatest height from memory",
  ],
  assumptions: ["A period below 0.5 s: the force of a level goes by weight times height."],
  cautions: [preliminary("seismic load")],
  example: {
    args: { weights: [["roof", 1000, 32.5]], system: [["light-frame wood walls", 1.051, 0.562]], asce7Edition: "7-16" },
    gives: [["roof", 1000, 162, 162]],
    within: 0.5,
    source:
      "permit calculation of a house (city records, ASCE/SEI 7-16): SDS 1.051, SD1 0.562, h 32.5 ft, R 6.5: V = 0.162 W",
  },
  refuses: [
    { args: { system: [["CLT panels", 1]] }, says: "thick panels as shear walls have one by an evaluation report" },
    { args: { system: null }, says: "the force goes by the acceleration of the ground and by what resists it" },
    { args: { system: [["light-frame wood walls", 105]] }, says: "accelerations in shares of g" },
    { args: { seismicCategory: "A" }, says: "asks there for a share of the weight alone" },
    { args: { weights: [["roof", 1000, 120]] }, says: "light-frame walls, height above the base" },
  ],
  notFor: "Irregular or tall buildings, diaphragms, parts and torsion of the plan in earthquakes go to an engineer.",
  run(a, tape) {
    const levels = a.weights.map((l) => ({ name: l.level, weightLb: l.weight, heightFt: l.height }));
    const site = { category: a.seismicCategory, risk: a.riskCategory, edition: a.asce7Edition };
    return spill(
      columns,
      seismicForces(levels, systemOf(a.system), site, tape),
      "answer",
      "forces from the top down",
      tape,
    );
  },
});

export const seismicFunctions = [loadSeismic] as const;
