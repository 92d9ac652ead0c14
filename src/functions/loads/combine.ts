import { combine, combinedTable } from "../../core/loads/combine.ts";
import { METHODS } from "../../core/loads/tables/combinations.ts";
import { cellFunction, preliminary, tableOf } from "../declare/cell-function.ts";
import { optional } from "../declare/param.ts";
import { choice, number } from "../declare/scalar.ts";
import { edition } from "../wind/params.ts";

const load = (says: string) => number({ says, min: -1e9, max: 1e9 });
const none = (says: string, word: string) => optional(load(says), 0, `no ${word}`);

const loadCombine = cellFunction({
  name: "LOAD_COMBINE",
  family: "Loads",
  summary: "Load combinations of a member, with the largest and smallest named.",
  params: {
    dead: load("dead load D, in any one unit for all loads"),
    live: none("floor live load L", "floor live load"),
    roof: none("roof live load Lr", "roof live load"),
    snow: none("snow load S, at the level of the edition", "snow load"),
    wind: none("wind load W at strength level, uplift below 0", "wind load"),
    seismic: none("seismic load E at strength level", "seismic load"),
    method: optional(
      choice(METHODS, {
        says: "design method",
        also: { lrfd: "strength", asd: "allowable" },
        means: { strength: "factored loads, section 2.3", allowable: "allowable stress design, section 2.4" },
      }),
      "allowable",
      "allowable stress design",
    ),
    liveFactor: optional(
      number({
        says: "factor of a live load that accompanies others (strength): 0.5, or 1 for garages, assembly, above 100 psf",
        min: 0.5,
        max: 1,
      }),
      0.5,
      "factor 0.5 on a live load that accompanies others",
    ),
    edition,
  },
  returns: tableOf("largest, smallest, then every combination", [
    ["which", ""],
    ["number", ""],
    ["combination", ""],
    ["value", "as given"],
  ]),
  sources: [
    "ASCE/SEI 7-10 and 7-16 sections 2.3 and 2.4, read in the New York City Building Code 1605.2 and 1605.3.1",
    "ASCE/SEI 7-22 section 2.4.1 as quoted in a trade magazine; its section 2.3 and seismic combinations from memory",
  ],
  assumptions: ["No fluid, soil, rain, ice, flood or tornado load."],
  cautions: [
    preliminary("load"),
    "Wind and seismic load act either way: run the opposite sign as well where it can govern.",
  ],
  example: {
    args: { dead: 10, roof: 20, wind: -40 },
    gives: [
      ["largest", "3", "D + Lr", 30],
      ["smallest", "7", "0.6 D + 0.6 W", -18],
      ["", "1", "D", 10],
      ["", "3", "D + Lr", 30],
      ["", "4", "D + 0.75 Lr", 25],
      ["", "5", "D + 0.6 W", -14],
      ["", "6a", "D + 0.45 W + 0.75 Lr", 7],
      ["", "6a", "D + 0.45 W", -8],
      ["", "7", "0.6 D + 0.6 W", -18],
      ["", "8", "0.6 D", 6],
    ],
    within: 1e-9,
    source: "exact arithmetic on the allowable stress combinations of ASCE/SEI 7-16 section 2.4.1",
  },
  run(a, tape) {
    const loads = { D: a.dead, L: a.live, Lr: a.roof, S: a.snow, W: a.wind, E: a.seismic };
    const rows = combinedTable(combine(loads, a.method, a.liveFactor, a.edition, tape));
    tape?.step(
      "combinations",
      "which, number, combination, value",
      rows,
      "",
      `ASCE/SEI ${a.edition} ${a.method === "strength" ? "2.3" : "2.4"}`,
    );
    return rows;
  },
});

export const combineFunctions = [loadCombine] as const;
