import { fixingsU } from "../../core/enclosure/fixings.ts";
import { framedWall } from "../../core/enclosure/framed.ts";
import { U_METHODS, uFactor } from "../../core/enclosure/u-factor.ts";
import { cellFunction, preliminary, quantityOf } from "../declare/cell-function.ts";
import { optional } from "../declare/param.ts";
import { choice, length, number, share, text, whole } from "../declare/scalar.ts";
import { table } from "../declare/table.ts";
import { ASHRAE_HEAT, ISO_6946, insideFilm, MATERIAL_DATA, outsideFilm, WOOD_K } from "./heat.ts";
import { layerRows, layers } from "./layers.ts";

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

export const enclosureUFunctions = [uFactorFunction] as const;
