import { fixingsU } from "../../core/enclosure/layers/fixings.ts";
import { framedWall, UNBROKEN } from "../../core/enclosure/layers/framed.ts";
import { uFactor } from "../../core/enclosure/layers/u-factor.ts";
import { ifGiven, orElse } from "../basis/term.ts";
import { preliminary, quantityOf } from "../declare/cell-function.ts";
import { optional } from "../declare/param.ts";
import { length, number, quantity, whole } from "../declare/scalar.ts";
import { type RowOf, table } from "../declare/table.ts";
import { text } from "../declare/word.ts";
import { familyFunction } from "./family.ts";
import { ASHRAE_HEAT, ISO_6946, insideFilm, MATERIAL_DATA, outsideFilm, WOOD_K } from "./heat.ts";
import { layerRows, layers } from "./layers.ts";
import { readInsideFilm, readOutsideFilm } from "./read/film.ts";
import { fixingConductivity } from "./read/fixing.ts";
import { type LayerRow, readLayer } from "./read/layer.ts";

const fixingColumns = {
  fixing: text({
    says: "name that says its material: steel screw, stainless screw, fiberglass tie, plastic, wood dowel",
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
  conductivity: optional(
    quantity("W/mK", { says: "own conductivity, W/(m K)", above: 0, max: 500, heads: ["k", "lambda"] }),
    undefined,
    "",
  ),
};
const fixingsParam = table(fixingColumns, {
  says: "point fixings through insulation, one row for each kind and layer",
  maxRows: 50,
});

function fixingOf(f: RowOf<typeof fixingColumns>) {
  return {
    row: f.row,
    name: f.fixing,
    conductivityWmK: f.conductivity ?? fixingConductivity(f.fixing, `row ${f.row} of fixings`),
    diameterIn: f.diameter,
    perFt2: f.perArea,
    layerRow: f.layerRow,
    depthIn: f.depth,
  };
}

/** Word for a framing row whose layer goes through unbroken. */
const readFraming = (row: LayerRow) => (row.material.trim().toLowerCase() === UNBROKEN ? UNBROKEN : readLayer(row));

const uFactorFunction = familyFunction({
  name: "U_FACTOR",
  summary:
    "U-factor of a wall, roof or floor with framing: parallel path, isothermal planes or the ISO 6946 combined method.",
  params: {
    layers: layers("the layers where there is no framing, from inside to outside"),
    framing: optional(
      layers(
        'the framing beside the layers: as many rows ("same" where a layer goes on unbroken), or one row that replaces the only layer of its thickness',
      ),
      [],
      "no framing rows",
    ),
    fixings: optional(fixingsParam, [], "no screws or ties cross the insulation"),
    insideFilm,
    outsideFilm,
  },
  placed: {
    framingShare: ifGiven("framing share"),
    framingMethod: orElse("framing method"),
  },
  returns: quantityOf("Btu/(h ft2 F)", "heat that passes per area and degree"),
  sources: [ISO_6946, ASHRAE_HEAT, WOOD_K, MATERIAL_DATA],
  cautions: [preliminary("heat")],
  example: {
    args: {
      layers: [
        ["gypsum", null, 0.56],
        ["cavity", 3.5, 13],
        ["sheathing and siding", null, 0.64],
      ],
      framing: [["framing member", 3.5, 4.38]],
      framingShare: 0.25,
    },
    gives: 0.089,
    within: 0.0005,
    source: "ANSI/ASHRAE/IES 90.1 Table A3.4, wood-framed wall 16 in on center, R-13: U 0.089 (value from memory)",
  },
  refuses: [
    {
      args: {
        framingMethod: "combined",
        framingShare: 0.5,
        layers: [
          ["foam", 4, 20],
          ["board", 4, 1],
        ],
        framing: [
          ["wood", 4, 1],
          ["more foam", 4, 20],
        ],
      },
      says: "the combined method holds up to a ratio of 1.5",
    },
    { args: { framing: [["steel stud", 3.5, 0.1]] }, says: "not for metal across insulation" },
    {
      args: {
        layers: [
          ["gypsum", null, 0.56],
          ["cavity", 3.5, 13],
          ["air space", 1, "", "", "ventilated cavity 0.5 in2/ft"],
        ],
      },
      says: "interpolated for R_STACK, not part by part",
    },
    {
      args: { fixings: [["steel screw", 0.25, 1, 2, 50]] },
      says: "its length inside the layer is above 0 and no more than the thickness",
    },
    { args: { fixings: [["steel screw", 0.25, 1, 1]] }, says: "that layer has no thickness" },
    { args: { insideFilm: "6" }, says: "the method holds from 0 to 5 h ft2 F/Btu (ASHRAE Handbook" },
    { args: { insideFilm: "-1" }, says: "an air film is an R or one of a few words" },
    { args: { framingShare: null }, says: "framing rows are given, and how much of the wall they take stands nowhere" },
    {
      args: { framing: [["framing member", 3.5, 0]] },
      says: "it is none of the built-in materials and its row gives no R or conductivity",
    },
    { args: { framingShare: 250 }, says: "it must be from 0 to 0.9" },
    {
      args: { layers: [["x", 1, "none"]], insideFilm: "none", outsideFilm: "none", framing: null, framingShare: null },
      says: "layer by layer the parts lie side by side",
    },
    {
      args: {
        layers: [
          ["brick", 4],
          ["air space", 1, "", "", "ventilated cavity 0.01 in2/ft"],
          ["brick", 4],
        ],
      },
      says: "framing rows lie beside the layers one by one, or one row",
    },
  ],
  notFor: "Steel framing, windows and slabs on grade have other methods: the energy code's tables or HEATLOSS_GROUND.",
  run(a, tape) {
    const framing = layerRows(a.framing).map(readFraming);
    const inside = readInsideFilm(a.insideFilm);
    const rows = layerRows(a.layers).map((row) => readLayer(row, tape));
    const outside = readOutsideFilm(a.outsideFilm, inside);
    const wall = framedWall(rows, framing, a.framingShare ?? 0, inside, outside, tape);
    const fixings = a.fixings.map(fixingOf);
    return uFactor(wall.paths, a.framingMethod, (rIp) => fixingsU(wall.clear, fixings, rIp, tape), tape);
  },
});

export const enclosureUFunctions = [uFactorFunction] as const;
