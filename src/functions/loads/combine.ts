import { type CombinedRow, combine, combinedRows } from "../../core/loads/combine.ts";
import { LOADS } from "../../core/loads/tables/combinations.ts";
import { orElse } from "../basis/term.ts";
import { preliminary } from "../declare/cell-function.ts";
import { columnsOf } from "../declare/columns.ts";
import { number } from "../declare/scalar.ts";
import { table } from "../declare/table.ts";
import { choice } from "../declare/word.ts";
import { familyFunction } from "./family.ts";

const loadTable = table(
  {
    load: choice(LOADS, {
      says: "load by its symbol or word",
      also: {
        dead: "D",
        "dead load": "D",
        live: "L",
        "live load": "L",
        "floor live": "L",
        roof: "Lr",
        "roof live": "Lr",
        "roof live load": "Lr",
        snow: "S",
        rain: "R",
        wind: "W",
        seismic: "E",
        earthquake: "E",
        earth: "H",
        soil: "H",
      },
      means: {
        D: "dead",
        L: "floor live",
        Lr: "roof live",
        S: "snow, at the level of the edition",
        R: "rain",
        W: "wind, uplift below 0",
        E: "seismic, strength level",
        H: "lateral earth pressure",
      },
    }),
    value: number({
      says: "the load, in any one unit for all",
      min: -1e9,
      max: 1e9,
      heads: ["amount", "psf", "plf", "lb"],
    }),
  },
  { says: "loads, one a row: load, value; several rows of one load are cases", maxRows: 40 },
);

const columns = columnsOf<CombinedRow>(
  ["which", "", (r) => r.which],
  ["number", "", (r) => r.number],
  ["combination", "", (r) => r.text],
  ["value", "as given", (r) => r.value],
);

const loadCombine = familyFunction({
  name: "LOAD_COMBINE",
  summary: "Load combinations of a member, with the largest and smallest named.",
  params: { loads: loadTable },
  placed: { designMethod: orElse("design method"), liveLoadFactor: orElse("live load factor") },
  named: { windLevel: orElse("wind level"), asce7Edition: orElse("ASCE 7 edition") },
  returns: columns.table("largest, smallest, then every combination"),
  sources: [
    "ASCE/SEI 7-10 and 7-16 sections 2.3 and 2.4, read in the New York City Building Code 1605.2 and 1605.3.1; their numbers from memory",
    "ASCE/SEI 7-22 section 2.4.1 3a, 4a, 6a as quoted in a trade magazine; the rest of its combinations from memory",
  ],
  assumptions: ["No fluid, ice, flood or tornado load."],
  cautions: [
    preliminary("load"),
    "Wind and seismic load act either way: give the opposite sign as a second row where it can govern.",
  ],
  example: {
    args: {
      loads: [
        ["D", 10],
        ["Lr", 20],
        ["W", -40],
      ],
      asce7Edition: "7-16",
    },
    gives: [
      ["largest", "3", "D + Lr", 30],
      ["smallest", "7", "0.6 D + 0.6 W", -18],
      ["", "1", "D", 10],
      ["", "3", "D + Lr", 30],
      ["", "4", "D + 0.75 Lr", 25],
      ["", "5", "D + 0.6 W", -14],
      ["", "6", "D + 0.45 W + 0.75 Lr", 7],
      ["", "6", "D + 0.45 W", -8],
      ["", "7", "0.6 D + 0.6 W", -18],
      ["", "10", "0.6 D", 6],
    ],
    within: 1e-9,
    source: "exact arithmetic on the allowable stress combinations of ASCE/SEI 7-16 section 2.4.1",
  },
  refuses: [
    {
      args: {
        loads: [
          ["Lr", 20],
          ["W", -40],
        ],
      },
      says: "every combination holds one dead load",
    },
    { args: { liveLoadFactor: 0.1 }, says: "it must be from 0.5 to 1" },
    {
      args: { designMethod: "strength", windLevel: "allowable" },
      says: "strength combinations take wind at strength level, factor 1.0",
    },
  ],
  notFor: "Seismic combinations with overstrength, and fluid, ice, flood or tornado load, go to an engineer.",
  run(a, tape) {
    const input = {
      loads: a.loads,
      method: a.designMethod,
      liveFactor: a.liveLoadFactor,
      windLevel: a.windLevel,
      edition: a.asce7Edition,
    };
    const rows = columns.rows(combinedRows(combine(input, tape)));
    const clause = `ASCE/SEI ${a.asce7Edition} ${a.designMethod === "strength" ? "2.3" : "2.4"}`;
    tape?.step("combinations", "which, number, combination, value", rows, "", clause);
    return rows;
  },
});

export const combineFunctions = [loadCombine] as const;
