import { rSchedule, type ScheduleRow, stackR } from "../../core/enclosure/layers/r-value.ts";
import { preliminary, quantityOf } from "../declare/cell-function.ts";
import { columnsOf } from "../declare/columns.ts";
import { optional } from "../declare/param.ts";
import { text } from "../declare/word.ts";
import { familyFunction } from "./family.ts";
import { layerRows, layers } from "./layers.ts";
import { INSIDE_FILM_SAYS, OUTSIDE_FILM_SAYS } from "./read/film.ts";
import { readAssembly } from "./read/layer.ts";
import { shown } from "./shown.ts";

export const ISO_6946 =
  "ISO 6946:2017 6.7 (series, upper and lower limit), Table 7 (films), 6.9 and Annex D (air layers)";
export const ASHRAE_HEAT =
  "ASHRAE Handbook Fundamentals 2021 ch. 25 and 27 (series, parallel path, isothermal planes), ch. 26 Table 10 (films)";
export const WOOD_K = "USDA FPL Wood Handbook GTR-190 (2010) eq. 4-15 (solid wood)";
export const MATERIAL_DATA = "Built-in materials: the source of each figure is in the working";
export const R_UNIT = "h ft2 F/Btu";

export const insideFilm = optional(
  text({ says: INSIDE_FILM_SAYS }),
  "wall",
  "still air at a wall, R 0.68 (ASHRAE Handbook Fundamentals 2021 ch. 26 Table 10)",
);
export const outsideFilm = optional(
  text({ says: OUTSIDE_FILM_SAYS }),
  "winter",
  "wind of 15 mph, R 0.17, where no ventilated cavity takes its place (ASHRAE Handbook Fundamentals 2021 ch. 26 Table 10)",
);

const rStack = familyFunction({
  name: "R_STACK",
  summary: "Total R of a stack of layers from air to air, films included; layers outside a ventilated cavity drop out.",
  params: { layers: layers(), insideFilm, outsideFilm },
  returns: quantityOf(R_UNIT, "total R, air to air"),
  sources: [ISO_6946, ASHRAE_HEAT, WOOD_K, MATERIAL_DATA],
  cautions: [preliminary("heat")],
  example: {
    args: {
      layers: [
        ["brick", null, "0.132 m2K/W"],
        ["cavity", null, "0.180 m2K/W"],
        ["sheathing", null, "0.069 m2K/W"],
        ["insulation", null, "3.500 m2K/W"],
        ["plasterboard", null, "0.060 m2K/W"],
      ],
      insideFilm: "ISO wall",
      outsideFilm: "ISO",
    },
    gives: 23.343,
    within: 0.003,
    source:
      "Scottish Building Standards Annex 6.B.2 (ISO 6946): path through the insulation 4.111 m2 K/W, here in h ft2 F/Btu (x 5.678263)",
  },
  refuses: [
    { args: { insideFilm: "6" }, says: "the method holds from 0 to 5 h ft2 F/Btu (ASHRAE Handbook" },
    { args: { insideFilm: "-1" }, says: "an air film is an R or one of a few words" },
    {
      args: { layers: [["x", 1, "none"]], insideFilm: "none", outsideFilm: "none" },
      says: "no layer and no film resists heat",
    },
    {
      args: { layers: [["own wood", 1, "G 0.9 M 12"]] },
      says: "the method holds from 0.3 to 0.8 (USDA FPL Wood Handbook",
    },
    {
      args: { layers: [["own wood", 1, "G 0.5 M 40"]] },
      says: "the method holds from 0 to 25 % (USDA FPL Wood Handbook GTR-190",
    },
    { args: { layers: [["air space", 40]] }, says: "the method holds from 0.001 to 0.3 m (ISO 6946:2017 Annex D" },
  ],
  notFor: "Walls with studs or columns in the insulation take U_FACTOR: this is the way through the insulation alone.",
  run: (a, tape) => stackR(readAssembly(layerRows(a.layers), a.insideFilm, a.outsideFilm, tape), tape),
});

const schedule = columnsOf<ScheduleRow>(
  ["layer", "", (r) => r.name],
  ["thickness", "in", (r) => r.thicknessIn ?? ""],
  ["R", R_UNIT, (r) => r.rIp],
  ["running total", R_UNIT, (r) => r.totalIp],
);

const rScheduleFunction = familyFunction({
  name: "R_SCHEDULE",
  summary: "R of each layer from inside to outside with the running total, films included.",
  params: { layers: layers(), insideFilm, outsideFilm },
  placed: {},
  returns: schedule.table("a row for each film and layer"),
  sources: [ISO_6946, ASHRAE_HEAT, WOOD_K, MATERIAL_DATA],
  cautions: [preliminary("heat")],
  example: {
    args: {
      layers: [
        ["gypsum", null, 0.56],
        ["siding and sheathing", null, 0.64],
      ],
      insideFilm: "wall",
      outsideFilm: "winter",
    },
    gives: [
      ["inside film", "", 0.68, 0.68],
      ["gypsum", 0, 0.56, 1.24],
      ["siding and sheathing", 0, 0.64, 1.88],
      ["outside film", "", 0.17, 2.05],
    ],
    within: 1e-9,
    source: "exact arithmetic with the films of ASHRAE Handbook Fundamentals 2021 ch. 26 Table 10 (0.68, 0.17)",
  },
  refuses: [
    { args: { insideFilm: "6" }, says: "the method holds from 0 to 5 h ft2 F/Btu (ASHRAE Handbook" },
    { args: { insideFilm: "-1" }, says: "an air film is an R or one of a few words" },
    {
      args: {
        layers: [
          ["gypsum", "", 0],
          ["siding and sheathing", "", 0.64],
        ],
      },
      says: "its R comes from thickness and conductivity",
    },
    {
      args: {
        layers: [
          ["gypsum", "", 0.56],
          ["siding and sheathing", "", 0],
        ],
      },
      says: "it is none of the built-in materials and its row gives no R or conductivity",
    },
    {
      args: {
        layers: [
          ["gypsum", -1, 0.56],
          ["siding and sheathing", "", 0.64],
        ],
      },
      says: "it must be from 0 to 120 in",
    },
  ],
  notFor: "Walls with studs or columns in the insulation take U_FACTOR: this is the way through the insulation alone.",
  run(a, tape) {
    const assembly = readAssembly(layerRows(a.layers), a.insideFilm, a.outsideFilm, tape);
    const says = {
      symbol: "R",
      rule: "each layer, then the running total",
      unit: R_UNIT,
      clause: "ISO 6946:2017 6.7.1",
    };
    return shown(schedule, rSchedule(assembly, tape), tape, says);
  },
});

export const enclosureHeatFunctions = [rStack, rScheduleFunction] as const;
