import { assemble } from "../core/enclosure/assembly.ts";
import { INSIDE_FILM_SAYS, OUTSIDE_FILM_SAYS } from "../core/enclosure/films.ts";
import { fixingsU } from "../core/enclosure/fixings.ts";
import { framedWall } from "../core/enclosure/framed.ts";
import { layerPerm, layerR, rSchedule, stackR } from "../core/enclosure/r-value.ts";
import { U_METHODS, uFactor } from "../core/enclosure/u-factor.ts";
import { cellFunction, preliminary, quantityOf, tableOf } from "./declare.ts";
import { layerRows, layers } from "./enclosure-layers.ts";
import { optional } from "./param.ts";
import { choice, humidity, length, number, share, text, whole } from "./params/scalar.ts";
import { table } from "./params/table.ts";

export const ISO_6946 =
  "ISO 6946:2017 6.7 (series, upper and lower limit), Table 7 (films), 6.9 and Annex D (air layers)";
export const ASHRAE_HEAT =
  "ASHRAE Handbook Fundamentals 2021 ch. 25 and 27 (series, parallel path, isothermal planes), ch. 26 Table 10 (films)";
const WOOD_K = "USDA FPL Wood Handbook GTR-190 (2010) eq. 4-15 (solid wood)";
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
  "winter wind of 15 mph, R 0.17 (ASHRAE Handbook Fundamentals 2021 ch. 26 Table 10)",
);

const rLayer = cellFunction({
  name: "R_LAYER",
  family: "Enclosure",
  summary: "R-value of one layer of a generic material, or of an own conductivity.",
  params: {
    material: text({ says: "material, such as gypsum board, veneer panel, mineral wool board, OSB" }),
    thickness: optional(length("in", { says: "thickness; blank for a membrane", min: 0, max: 120 }), undefined, ""),
    R: optional(
      text({ says: "own figure instead of the built-in: R 4.2/in, k 0.25, 0.036 W/mK, or R of the layer" }),
      undefined,
      "the built-in figure of the material",
    ),
  },
  returns: quantityOf(R_UNIT, "R of the layer, without air films"),
  sources: [ISO_6946, WOOD_K, MATERIAL_DATA],
  cautions: [preliminary("heat")],
  example: {
    args: { material: "foam", thickness: "150 mm", R: "0.035 W/mK" },
    gives: 24.36,
    within: 0.03,
    source:
      "ASHRAE Handbook Fundamentals 2021 (SI) ch. 27 Example 1: 0.150 m of k 0.035 has R 4.29 m2 K/W, here in h ft2 F/Btu (x 5.678263)",
  },
  run: ({ material, thickness, R }, tape) => layerR({ row: 1, material, thicknessIn: thickness, resistance: R }, tape),
});

const permLayer = cellFunction({
  name: "PERM_LAYER",
  family: "Enclosure",
  summary: "Vapor permeance of one layer of a generic material; wood panels depend on the humidity in them.",
  params: {
    material: text({ says: "material, such as veneer panel, plywood, OSB, gypsum board" }),
    thickness: optional(length("in", { says: "thickness; blank for a membrane", min: 0, max: 120 }), undefined, ""),
    humidity: optional(
      humidity({ says: "relative humidity in the layer: 25 is a dry cup, 75 a wet cup" }),
      25,
      "25 %, the mean of a dry-cup test, by which vapor retarders are classed",
    ),
  },
  returns: quantityOf("perm", "permeance of the whole layer"),
  sources: ["sd = mu d, W = delta_0 / sd with delta_0 = 2e-10 kg/(m s Pa) (ISO 13788:2012)", MATERIAL_DATA],
  cautions: [preliminary("moisture")],
  example: {
    args: { material: "plywood", thickness: 1, humidity: 50 },
    gives: 0.6881,
    within: 0.0005,
    source:
      "EnergyPlus open data set, plywood, mu 200 at 50 % RH: 0.6881 perm-inch by the perm of 57.2135 ng/(s m2 Pa)",
  },
  run: (a, tape) => layerPerm({ row: 1, material: a.material, thicknessIn: a.thickness }, a.humidity / 100, tape),
});

const rStack = cellFunction({
  name: "R_STACK",
  family: "Enclosure",
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
  run: (a, tape) => stackR(assemble(layerRows(a.layers), a.insideFilm, a.outsideFilm, tape), tape),
});

const rScheduleFunction = cellFunction({
  name: "R_SCHEDULE",
  family: "Enclosure",
  summary: "R of each layer from inside to outside with the running total, films included.",
  params: { layers: layers(), insideFilm, outsideFilm },
  returns: tableOf("a row for each film and layer", [
    ["layer", ""],
    ["thickness", "in"],
    ["R", R_UNIT],
    ["running total", R_UNIT],
  ]),
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
  run: (a, tape) => rSchedule(assemble(layerRows(a.layers), a.insideFilm, a.outsideFilm, tape), tape),
});

const fixingsParam = table(
  {
    fixing: text({
      says: 'name, such as steel screw; "stainless" takes that steel',
      heads: ["name", "fastener", "screw"],
    }),
    diameter: length("in", { says: "shank diameter", above: 0, max: 2, heads: ["dia", "d"] }),
    perArea: number({ says: "number per ft2", above: 0, max: 100, heads: ["per ft2", "number", "n"] }),
    layerRow: whole({
      says: "row of the layer that it crosses",
      min: 1,
      max: 100,
      heads: ["layer", "layer row", "row"],
    }),
    depth: optional(
      length("in", { says: "length inside that layer; blank where it crosses it fully", above: 0, max: 120 }),
      undefined,
      "",
    ),
  },
  { says: "point fixings through insulation, one row for each kind and layer", maxRows: 50 },
);

const uFactorFunction = cellFunction({
  name: "U_FACTOR",
  family: "Enclosure",
  summary:
    "U-factor of a wall, roof or floor with framing: parallel path, isothermal planes or the ISO 6946 combined method.",
  params: {
    layers: layers("the layers where there is no framing, from inside to outside"),
    framingShare: optional(share({ says: "part of the area that is framing", max: 0.99 }), 0, "no framing"),
    framingLayers: optional(
      layers(
        'the framing beside the layers: as many rows ("same" where a layer goes on unbroken), or one row that replaces the only layer of its thickness',
      ),
      [],
      "no framing rows",
    ),
    method: optional(
      choice(U_METHODS, {
        says: "how the parts are put together",
        also: {
          "parallel path": "parallel",
          "isothermal planes": "isothermal",
          "iso 6946": "combined",
          iso: "combined",
        },
        means: {
          parallel: "heat flows straight through each part: the largest R, usual for wood framing",
          isothermal: "each layer levels out sideways: the smallest R",
          combined: "the mean of both limits of R (ISO 6946), up to a ratio of 1.5",
        },
      }),
      "parallel",
      "parallel path, the usual method for wood framing",
    ),
    insideFilm,
    outsideFilm,
    fixings: optional(fixingsParam, [], "no screws or ties cross the insulation"),
  },
  returns: quantityOf("Btu/(h ft2 F)", "heat that passes per area and degree"),
  sources: [ISO_6946, ASHRAE_HEAT, WOOD_K, MATERIAL_DATA],
  cautions: [preliminary("heat")],
  example: {
    args: {
      layers: [
        ["gypsum", null, 0.56],
        ["cavity insulation", 3.5, 13],
        ["sheathing and siding", null, 0.64],
      ],
      framingShare: 0.25,
      framingLayers: [["wood", 3.5, 4.38]],
    },
    gives: 0.089,
    within: 0.0005,
    source: "ANSI/ASHRAE/IES 90.1 Table A3.4, wood-framed wall 16 in on center, R-13: U 0.089 (value from memory)",
  },
  run(a, tape) {
    const framing = layerRows(a.framingLayers);
    const wall = framedWall(layerRows(a.layers), framing, a.framingShare, a.insideFilm, a.outsideFilm, tape);
    const fixings = a.fixings.map((f) => ({
      row: f.row,
      name: f.fixing,
      diameterIn: f.diameter,
      perFt2: f.perArea,
      layerRow: f.layerRow,
      depthIn: f.depth,
    }));
    return uFactor(wall.paths, a.method, (rIp) => fixingsU(wall.clear, fixings, rIp, tape), tape);
  },
});

export const enclosureHeatFunctions = [rLayer, permLayer, rStack, rScheduleFunction, uFactorFunction] as const;
