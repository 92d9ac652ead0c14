import { assemble } from "../../core/enclosure/assembly.ts";
import { fToC } from "../../core/enclosure/si.ts";
import { DEW_METHODS, dewLayer, dewProfile } from "../../core/enclosure/dew-profile.ts";
import { SATURATION_FORMULAS, type SaturationFormula } from "../../core/enclosure/saturation.ts";
import { cellFunction, preliminary, tableOf, textOf } from "../declare/cell-function.ts";
import { optional } from "../declare/param.ts";
import { choice, humidity, temperature } from "../declare/scalar.ts";
import { insideFilm, MATERIAL_DATA, outsideFilm } from "./heat.ts";
import { layerRows, layers } from "./layers.ts";

export const ISO_13788 = "ISO 13788:2012 clause 6 (interstitial condensation) and Annex E (saturation pressure)";
const HUMIDITY_SOURCE = "relative humidity is above 0 and at most 100 %";

export const airTemperature = (says: string) =>
  temperature({ says, min: -58, max: 212, source: "temperatures of buildings, -58 to 212 F" });
export const airHumidity = (says: string) => humidity({ says, above: 0, source: HUMIDITY_SOURCE });

export const curve = choice(SATURATION_FORMULAS, {
  says: "curve of saturation pressure",
  also: { iso: "ISO 13788", "hyland-wexler": "ASHRAE", "over water": "water" },
  means: {
    ASHRAE: "Hyland-Wexler equations, over ice below freezing",
    "ISO 13788": "the form of that standard, over ice below freezing",
    water: "over liquid water also below freezing, as weather services state dew points",
  },
});
const profileFormula = optional(curve, "ISO 13788", "saturation pressure by ISO 13788, over ice below freezing");

const airParams = {
  layers: layers(),
  indoorTemperature: airTemperature("indoor air temperature"),
  indoorHumidity: airHumidity("indoor relative humidity"),
  outdoorTemperature: airTemperature("outdoor air temperature"),
  outdoorHumidity: optional(airHumidity("outdoor relative humidity"), 80, "80 %, the winter condition of DIN 4108-3"),
};

interface AirArguments {
  readonly indoorTemperature: number;
  readonly indoorHumidity: number;
  readonly outdoorTemperature: number;
  readonly outdoorHumidity: number;
  readonly formula: SaturationFormula;
}

const bothSides = (a: AirArguments) => ({
  insideC: fToC(a.indoorTemperature),
  insideRh: a.indoorHumidity / 100,
  outsideC: fToC(a.outdoorTemperature),
  outsideRh: a.outdoorHumidity / 100,
  curve: a.formula,
});

export const STEADY = [
  "Steady state: heat and vapor flow in one direction by conduction and diffusion; no sun, rain, stored moisture or moving air.",
  "Vapor permeability of still air 2e-10 kg/(m s Pa) (ISO 13788:2012).",
];

const dewProfileFunction = cellFunction({
  name: "DEW_PROFILE",
  family: "Enclosure",
  summary: "Temperature, dew point, vapor pressure and margin at each face of a wall or roof, and where water gathers.",
  params: { ...airParams, insideFilm, outsideFilm, formula: profileFormula },
  returns: tableOf("a row for each face from inside to outside", [
    ["face", ""],
    ["temperature", "F"],
    ["dew point", "F"],
    ["margin", "F"],
    ["vapor pressure", "Pa"],
    ["saturation pressure", "Pa"],
    ["wetting", "oz/(ft2 day)"],
    ["state", ""],
  ]),
  sources: [ISO_13788, MATERIAL_DATA],
  assumptions: STEADY,
  cautions: [preliminary("moisture")],
  example: {
    args: {
      layers: [["concrete", "180 mm", "0.086 m2K/W", "sd 12.6 m"]],
      indoorTemperature: "20 C",
      indoorHumidity: 50,
      outdoorTemperature: "20 C",
      outdoorHumidity: 50,
    },
    gives: [
      ["inside surface", 68, 48.68, 19.32, 1168.5, 2337, 0, "dry"],
      ["outside surface (concrete)", 68, 48.68, 19.32, 1168.5, 2337, 0, "dry"],
    ],
    within: 0.5,
    source:
      "DIN 4108-3 Table A.3 and dew point sheets: 20 C, 50 % is 2337 Pa x 0.5 with a dew point of 9.27 C (48.68 F), the same on both sides",
  },
  run: (a, tape) => dewProfile(assemble(layerRows(a.layers), a.insideFilm, a.outsideFilm, tape), bothSides(a), tape),
});

const dewLayerFunction = cellFunction({
  name: "DEW_LAYER",
  family: "Enclosure",
  summary: 'The first face from inside that falls below the dew point, or "none".',
  params: {
    ...airParams,
    method: optional(
      choice(DEW_METHODS, {
        says: "how vapor reaches a face",
        means: {
          diffusion: "by diffusion through the layers (ISO 13788)",
          air: "with indoor air, which reaches every face up to the air barrier",
        },
      }),
      "diffusion",
      "vapor moves by diffusion only",
    ),
    insideFilm,
    outsideFilm,
    formula: profileFormula,
  },
  returns: textOf('the row and face with "water" or "ice", or "none"'),
  sources: [ISO_13788, MATERIAL_DATA],
  assumptions: STEADY,
  cautions: [preliminary("moisture")],
  example: {
    args: {
      layers: [
        ["chipboard inside", "19 mm", "0.150 m2K/W", "sd 0.95 m"],
        ["vapor retarder", null, null, "sd 2 m"],
        ["mineral wool", "160 mm", "4.0 m2K/W", "sd 0.16 m"],
        ["chipboard outside", "19 mm", "0.150 m2K/W", "sd 1.90 m"],
      ],
      indoorTemperature: "20 C",
      indoorHumidity: 50,
      outdoorTemperature: "-5 C",
      outdoorHumidity: 80,
      insideFilm: "ISO mold",
      outsideFilm: "ISO",
    },
    gives: "row 3, mineral wool | chipboard outside: ice",
    within: 0,
    source:
      "textbook of building physics, Table 13.5 (DIN 4108-3, one condensation plane): water forms at the outer face of the mineral wool, -4.0 C",
  },
  run: (a, tape) =>
    dewLayer(assemble(layerRows(a.layers), a.insideFilm, a.outsideFilm, tape), bothSides(a), a.method, tape),
});

export const enclosureDewFunctions = [dewLayerFunction, dewProfileFunction] as const;
