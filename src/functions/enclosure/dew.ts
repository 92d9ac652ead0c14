import { DEW_METHODS, dewLayer, dewProfile, type FaceRow } from "../../core/enclosure/moisture/dew-profile.ts";
import { preliminary, textOf } from "../declare/cell-function.ts";
import { columnsOf } from "../declare/columns.ts";
import { optional } from "../declare/param.ts";
import { choice } from "../declare/word.ts";
import { curve } from "./air.ts";
import { familyFunction } from "./family.ts";
import { insideFilm, MATERIAL_DATA, outsideFilm } from "./heat.ts";
import { layerRows, layers } from "./layers.ts";
import { readAssembly } from "./read/layer.ts";
import { shown } from "./shown.ts";
import { AIR_PLACES, bothSides, cautionInward, SUN_TERMS } from "./terms/air-terms.ts";

export const ISO_13788 = "ISO 13788:2012 clause 6 (interstitial condensation) and Annex E (saturation pressure)";

const profileFormula = optional(curve, "ISO 13788", "saturation pressure by ISO 13788, over ice below freezing");

export const STEADY = [
  "Steady state: heat and vapor flow in one direction by conduction and diffusion; no sun, rain, stored moisture or moving air.",
  "Vapor permeability of still air 2e-10 kg/(m s Pa) (ISO 13788:2012).",
];

const faces = columnsOf<FaceRow>(
  ["face", "", (r) => r.name],
  ["temperature", "F", (r) => r.temperatureF],
  ["dew point", "F", (r) => r.dewPointF],
  ["above dew point", "F", (r) => r.marginF],
  ["vapor", "Pa", (r) => r.vaporPa],
  ["saturation", "Pa", (r) => r.saturationPa],
  ["wetting", "oz/(ft2 day)", (r) => r.wettingOzFt2Day],
  ["wet or dry", "", (r) => r.state],
);

const dewProfileFunction = familyFunction({
  name: "DEW_PROFILE",
  summary: "Temperature, dew point, vapor pressure and margin at each face of a wall or roof, and where water gathers.",
  params: { layers: layers() },
  placed: { ...AIR_PLACES, insideFilm, outsideFilm, formula: profileFormula },
  named: SUN_TERMS,
  returns: faces.table("a row for each face from inside to outside"),
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
  refuses: [
    { args: { outdoorTemperature: -100 }, says: "the method holds from -60 to 100 C (ISO 13788:2012 Annex E, kept to" },
    { args: { insideFilm: "-1" }, says: "an air film is an R or one of a few words" },
    { args: { outdoorHumidity: null }, says: "80 % stands in for it in winter only, below 50 F" },
    { args: { indoorHumidity: 150 }, says: "it must be from 0 to 100 %" },
    {
      args: { layers: [["sheet", null, null, "mu 100"]] },
      says: "mu and perm-inch belong to a material, not to a sheet",
    },
    { args: { layers: [["gypsum board", 0.5, null, null, "ventilated cavity"]] }, says: "every sd is 0" },
  ],
  notFor:
    "Walls that get wet by rain, leaks or moving air need a transient simulation: this is diffusion in steady state.",
  run(a, tape) {
    const assembly = readAssembly(layerRows(a.layers), a.insideFilm, a.outsideFilm, tape);
    cautionInward(a, assembly, tape);
    const rows = dewProfile(assembly, { ...bothSides(a), curve: a.formula }, tape);
    const rule = "theta_n = theta_i - (theta_i - theta_e) R_n / R_T; p along sd, nowhere above saturation";
    return shown(faces, rows, tape, { symbol: "profile", rule, clause: "ISO 13788:2012 6.4" });
  },
});

const dewLayerFunction = familyFunction({
  name: "DEW_LAYER",
  summary: 'The first face, from the warmer side, that falls below the dew point, or "none".',
  params: { layers: layers() },
  placed: {
    ...AIR_PLACES,
    method: optional(
      choice(DEW_METHODS, {
        says: "how vapor reaches a face",
        means: {
          diffusion: "by diffusion through the layers (ISO 13788)",
          air: "with air of the warmer side, which reaches every face up to the air barrier",
        },
      }),
      "diffusion",
      "vapor moves by diffusion only",
    ),
    insideFilm,
    outsideFilm,
  },
  named: SUN_TERMS,
  returns: textOf('the row and face with "water" or "ice", or "none"'),
  sources: [ISO_13788, MATERIAL_DATA],
  assumptions: STEADY,
  cautions: [preliminary("moisture")],
  example: {
    args: {
      layers: [
        ["chipboard inside", "19 mm", "0.150 m2K/W", "sd 0.95 m"],
        ["retarder sheet", null, null, "sd 2 m"],
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
  refuses: [
    {
      args: { layers: [["cavity", 1, "", "", "ventilated cavity"]], method: "air" },
      says: "from a ventilated cavity outward nothing counts",
    },
    { args: { outdoorTemperature: -100 }, says: "the method holds from -60 to 100 C (ISO 13788:2012 Annex E, kept to" },
    { args: { insideFilm: "-1" }, says: "an air film is an R or one of a few words" },
    { args: { indoorHumidity: "none" }, says: "relative humidity lies above 0 and up to 100 %, and perfectly dry air" },
    { args: { indoorHumidity: 150 }, says: "it must be from 0 to 100 %" },
    {
      args: { layers: [["none", 0, "none", "sd 1 m"]], insideFilm: "none", outsideFilm: "none" },
      says: "no layer and no film resists heat",
    },
    {
      args: { method: "air", indoorTemperature: 70, outdoorTemperature: 70 },
      says: "air that moves through a wall cools only towards a colder side",
    },
  ],
  notFor:
    "Walls that get wet by rain, leaks or moving air need a transient simulation: this is diffusion in steady state.",
  run(a, tape) {
    const assembly = readAssembly(layerRows(a.layers), a.insideFilm, a.outsideFilm, tape);
    cautionInward(a, assembly, tape);
    return dewLayer(assembly, { ...bothSides(a), curve: "ISO 13788" }, a.method, tape);
  },
});

export const enclosureDewFunctions = [dewLayerFunction, dewProfileFunction] as const;
