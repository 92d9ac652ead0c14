import { BadInput } from "../../core/kit/refusal.ts";
import { deadLoad } from "../../core/loads/dead.ts";
import { floorLive, liveUse, roofLive } from "../../core/loads/live.ts";
import { KLL } from "../../core/loads/tables/live.ts";
import { tributaryLoad } from "../../core/loads/tributary.ts";
import { orElse } from "../basis/term.ts";
import { preliminary, quantityOf } from "../declare/cell-function.ts";
import { optional } from "../declare/param.ts";
import { length, number, quantity, slope, whole } from "../declare/scalar.ts";
import { table } from "../declare/table.ts";
import { choice, text } from "../declare/word.ts";
import { layers } from "../enclosure/layers.ts";
import { familyFunction } from "./family.ts";

const CAUTION = preliminary("load");
const flatRoof = optional(slope({ says: "slope of the roof", max: 80 }), 0, "level");

const psf = (says: string) => quantity("psf", { says, above: 0, max: 1000, heads: ["weight", "load"] });

const weightTable = table(
  {
    material: text({ says: "name of the part", heads: ["layer", "part", "name"] }),
    psf: optional(psf("weight of the whole part"), undefined, ""),
    psfPerInch: optional(
      number({ says: "weight for each inch of thickness, psf", above: 0, max: 100, heads: ["psf per inch", "psf/in"] }),
      undefined,
      "",
    ),
  },
  { says: "an office's own weights, looked up before the built-in ones", maxRows: 1000 },
);

const loadDead = familyFunction({
  name: "LOAD_DEAD",
  summary: "Dead load of the parts of a roof, floor or wall, from own figures, own weights or a published table.",
  params: {
    layers: layers("the parts, one row each: material, thickness, and the weight in column 10 or under its heading"),
    slope: flatRoof,
    weights: optional(weightTable, [], "built-in weights only"),
  },
  returns: quantityOf("psf", "dead load; of a sloped roof on the level"),
  sources: [
    "HUD Residential Structural Design Guide (2000) Table 3.2",
    "ASCE/SEI 7 Table C3-1 (7-16: C3.1-1a), part of it from memory as the working marks",
  ],
  cautions: [
    CAUTION,
    "Typical weights: moisture, fasteners and local products differ. For uplift count only what is surely there.",
  ],
  example: {
    args: {
      layers: [
        ["asphalt shingles", null],
        ["gypsum sheathing", 0.5],
        ["gypsum board", 0.5],
      ],
    },
    gives: 6.2,
    within: 1e-9,
    source: "ASCE 7 Table C3-1: 2 + 2 + 4 x 0.55 psf",
  },
  refuses: [
    {
      args: {
        layers: [
          ["thatch", ""],
          ["gypsum board", 0.5],
        ],
      },
      says: "it is not among the own or built-in weights",
    },
    {
      args: {
        layers: [
          ["asphalt shingles", ""],
          ["gypsum sheathing", ""],
          ["gypsum board", 0.5],
        ],
      },
      says: "its weight is 4 psf for each inch",
    },
    {
      args: {
        layers: [
          ["asphalt shingles", "", "", "", "", "", "", "", "", -1],
          ["gypsum sheathing", 0.5],
          ["gypsum board", 0.5],
        ],
      },
      says: "it is psf as a number, or a density such as 35 pcf",
    },
    {
      args: {
        layers: [
          ["asphalt shingles", "", "", "", "", "", "", "", "", 100000],
          ["gypsum sheathing", 0.5],
          ["gypsum board", 0.5],
        ],
      },
      says: "the method holds from 0 to 1000 psf (a part of a building)",
    },
    { args: { slope: 8 }, says: "it may be degrees, a rise in 12 or a share, and a slope typed as 6:12" },
    {
      args: {
        layers: [
          ["asphalt shingles", -1],
          ["gypsum sheathing", 0.5],
          ["gypsum board", 0.5],
        ],
      },
      says: "it must be from 0 to 120 in",
    },
    {
      args: { layers: [["own", "", "", "", "", "", "", "", "", "35 pcf"]] },
      says: "35 pcf makes a weight only with a thickness",
    },
    {
      args: { layers: [["own", 1, "", "", "", "", "", "", "", "2000 pcf"]] },
      says: "the method holds from 0 to 1000 pcf (a part of a building)",
    },
  ],
  notFor:
    "The weight of a wall to be lifted, net of its windows, takes LIFT_WEIGHT; equipment is weighed by its maker.",
  run: (a, tape) =>
    deadLoad(
      a.layers.map((l) => ({ material: l.material, thicknessIn: l.thickness, weight: l.weight, row: l.row })),
      a.weights.map((w) => ({ material: w.material, psf: w.psf, psfPerIn: w.psfPerInch })),
      a.slope,
      tape,
    ),
});

const loadLive = familyFunction({
  name: "LOAD_LIVE",
  summary: "Live load of a floor or roof member, reduced for its tributary area.",
  params: {
    occupancy: text({
      says: "use: sleeping rooms, rooms, stairs, decks, balconies, garages, habitable attics, roof; or psf of a floor, or roof with its psf (roof 25)",
    }),
    area: quantity("ft2", {
      says: "tributary area of the member",
      above: 0,
      max: 1e6,
      usual: { min: 5, max: 20_000, ask: "is it in square feet?" },
    }),
    member: optional(
      choice(Object.keys(KLL), { says: "member of a floor, for its live load element factor KLL" }),
      "other",
      "live load element factor KLL 1, which holds for any member",
    ),
    floors: optional(whole({ says: "floors that the member carries", min: 1, max: 100 }), 1, "one floor"),
    slope: optional(slope({ says: "slope of a roof", max: 80 }), undefined, ""),
  },
  placed: {},
  named: { asce7Edition: orElse("ASCE 7 edition"), residentialCode: orElse("residential code") },
  returns: quantityOf("psf", "reduced live load"),
  sources: [
    "ASCE/SEI 7-10, 7-16, 7-22 Eqs. 4.7-1 and 4.8-1; KLL read in the New York City Building Code Table 1607.11.1",
    "Residential code Table R301.5, 2018 to 2024, read in a city's print; decks and balconies from memory",
  ],
  cautions: [CAUTION, "Some uses may not be reduced (assembly, one-way slabs): see section 4.7 of the edition."],
  example: {
    args: { occupancy: "40", area: 450, member: "interior column" },
    gives: 24.142135623730951,
    within: 1e-9,
    source: "exact arithmetic: 40 (0.25 + 15/sqrt(1800))",
  },
  refuses: [
    { args: { occupancy: "-1" }, says: "it is a number of psf, roof, or one of attics without storage, attics" },
    { args: { slope: "none" }, says: "it reduces roof live loads only" },
    { args: { slope: 8 }, says: "it may be degrees, a rise in 12 or a share, and a slope typed as 6:12" },
    { args: { area: -1 }, says: "it must be above 0 ft2 and at most 1000000 ft2" },
    { args: { occupancy: "2000" }, says: "the method holds from 0 to 1000 psf (a load of buildings)" },
    { args: { occupancy: "guards" }, says: "guards and handrails take 200 lb in any direction at their top" },
  ],
  notFor: "Storage, vehicles, guards and concentrated loads follow the code's own clauses and are not reduced here.",
  run(a, tape) {
    const use = liveUse(a.occupancy, a.residentialCode, tape);
    if (use.rule === "roof") {
      if (a.slope === undefined) tape?.assume("A level roof: no reduction for slope.");
      return roofLive(use.psf, a.area, a.slope ?? 0, a.asce7Edition, tape);
    }
    if (a.slope !== undefined) {
      throw new BadInput(
        "A slope is given for a floor",
        "it reduces roof live loads only",
        "Leave it out, or give the occupancy roof",
      );
    }
    const member = { kll: KLL[a.member] ?? 1, areaFt2: a.area, floors: a.floors };
    return floorLive(use, member, a.asce7Edition, tape);
  },
});

const loadTributary = familyFunction({
  name: "LOAD_TRIBUTARY",
  summary: "Line load on a beam or wall from a uniform load and the spans that rest on it.",
  params: {
    load: quantity("psf", {
      says: "uniform load, uplift below 0",
      min: -1000,
      max: 1000,
      usual: { min: 2, max: 300, eitherSign: true, ask: "is it in psf?" },
    }),
    span: length("ft", {
      says: "span on one side",
      above: 0,
      max: 500,
      usual: { min: 0.5, max: 80, ask: "is it in feet?" },
    }),
    other: optional(
      length("ft", {
        says: "span on the other side",
        min: 0,
        max: 500,
        usual: { min: 0, max: 80, ask: "is it in feet?" },
      }),
      0,
      "an outer support",
    ),
    overhang: optional(
      length("ft", {
        says: "overhang beyond an outer support",
        min: 0,
        max: 100,
        usual: { min: 0, max: 10, ask: "is it in feet?" },
      }),
      0,
      "no overhang",
    ),
  },
  returns: quantityOf("plf", "line load on the support"),
  sources: ["Statics of simple spans"],
  assumptions: ["Simple spans: a continuous member puts more on its inner supports."],
  cautions: [CAUTION],
  example: {
    args: { load: 30, span: 20, overhang: 2 },
    gives: 363,
    within: 1e-9,
    source: "exact arithmetic: 30 x 22^2 / (2 x 20)",
  },
  refuses: [
    { args: { span: 0.2 }, says: "the far support would be lifted" },
    { args: { other: 50 }, says: "an overhang lies beyond an outer support" },
    { args: { span: 2000 }, says: "it must be above 0 ft and at most 500 ft" },
  ],
  notFor: "A beam continuous over supports, or one with point loads, takes WOOD_CHECK or an engineer.",
  run(a, tape) {
    if (a.other > 0 && a.overhang > 0) {
      throw new BadInput(
        "An overhang and a span on the other side are both given",
        "an overhang lies beyond an outer support",
        "Leave one of the two out",
      );
    }
    if (a.overhang > a.span) {
      throw new BadInput(
        "The overhang is longer than the span behind it",
        "the far support would be lifted",
        "Check the two, or leave the member to the engineer",
      );
    }
    if (a.other > 0)
      tape?.caution("If the member runs over this support without a joint, up to a quarter more comes on it.");
    return tributaryLoad(a.load, a.span, a.other, a.overhang, tape);
  },
});

export const gravityFunctions = [loadDead, loadLive, loadTributary] as const;
