import { assemble } from "../../core/enclosure/assembly.ts";
import { fToC } from "../../core/enclosure/si.ts";
import { exteriorShareOf, exteriorShareTable, leastExteriorShare } from "../../core/enclosure/exterior-share.ts";
import { vaporPressurePa } from "../../core/enclosure/humid-air.ts";
import { monthlyAir } from "../../core/enclosure/indoor.ts";
import { dewPointFromPressureC } from "../../core/enclosure/saturation.ts";
import { surfaceFactor } from "../../core/enclosure/surface-factor.ts";
import { parseZone } from "../../core/enclosure/zone.ts";
import { cellFunction, preliminary, tableOf } from "../declare/cell-function.ts";
import { optional } from "../declare/param.ts";
import { choice, humidity, text } from "../declare/scalar.ts";
import { zone } from "./code.ts";
import { airHumidity, airTemperature } from "./dew.ts";
import { insideFilm, MATERIAL_DATA, outsideFilm } from "./heat.ts";
import { layerRows, layers } from "./layers.ts";
import { climateParam, indoorParam, indoorRows, readClimate } from "./months.ts";

const surfaceFactorFunction = cellFunction({
  name: "SURFACE_FACTOR",
  family: "Enclosure",
  summary: "Temperature factor of the inside surface against the least one that keeps mold away through the year.",
  params: {
    layers: layers(),
    climate: {
      ...climateParam,
      says: "outdoor climate: a station, twelve rows of month, mean temperature and relative humidity, or one design condition",
    },
    indoor: indoorParam,
    limit: optional(
      humidity({ says: "greatest relative humidity at the surface", above: 0 }),
      80,
      "80 % at the surface, the mold criterion of ISO 13788",
    ),
    insideFilm: optional(text({ says: "air film inside, as for R_STACK" }), "ISO mold", "ISO mold check, 0.25 m2 K/W"),
    outsideFilm: optional(text({ says: "air film outside, as for R_STACK" }), "ISO", "ISO 6946, 0.04 m2 K/W"),
  },
  returns: tableOf("one row", [
    ["factor", ""],
    ["least factor", ""],
    ["month", ""],
    ["least surface temperature", "F"],
    ["verdict", ""],
  ]),
  sources: ["ISO 13788:2012 clause 5 and 4.4.1", MATERIAL_DATA],
  assumptions: ["The plane part only: corners, columns and window rims are colder and need a detailed calculation."],
  cautions: [preliminary("moisture")],
  example: {
    args: {
      layers: [["wall", null, "RSI 0.96"]],
      climate: [["winter", "-5 C", 80]],
      indoor: [["indoor", "20 C", 50]],
    },
    gives: [[0.8, 0.7, "winter", 54.68, "no mold expected on the plane part"]],
    within: 0.05,
    source:
      "DIN 4108-2: 20 C, 50 % inside and -5 C outside ask 12.6 C (54.68 F) and a factor of 0.70; R 0.25 + 0.96 + 0.04 gives 0.80 by arithmetic",
  },
  run(a, tape) {
    const assembly = assemble(layerRows(a.layers), a.insideFilm, a.outsideFilm, tape);
    const air = monthlyAir(readClimate(a.climate, true, tape), indoorRows(a.indoor), tape);
    return surfaceFactor(assembly, air, a.limit / 100, tape);
  },
});

const exteriorShare = cellFunction({
  name: "DEW_EXTERIORSHARE",
  family: "Enclosure",
  summary:
    "Least share of R outboard of the air barrier that keeps it above the dew point, this wall's share, and the code's.",
  params: {
    indoorTemperature: airTemperature("indoor air temperature"),
    indoorHumidity: airHumidity("indoor relative humidity"),
    outdoorTemperature: airTemperature("outdoor temperature, such as the mean of the coldest month"),
    layers: optional(layers("the layers, with the air barrier marked in the fifth column"), [], ""),
    zone: optional(zone, "", ""),
    stud: optional(choice(["2x4", "2x6"], { says: "stud of the code's table" }), "2x6", "2x6 in the code's table"),
    insideFilm,
    outsideFilm,
  },
  returns: tableOf("a row for the need, for the wall where layers are given, and for the code where a zone is", [
    ["what", ""],
    ["share", ""],
    ["remark", ""],
  ]),
  sources: [
    "ASHRAE Handbook Fundamentals 2021 ch. 27 (temperature by R)",
    "IRC 2021 Tables R702.7(2) and (3)",
    MATERIAL_DATA,
  ],
  cautions: [preliminary("moisture")],
  example: {
    args: { indoorTemperature: "21 C", indoorHumidity: 33.51, outdoorTemperature: "-1 C" },
    gives: [["needed by dew point", 0.24, "least share of R outboard of the air barrier"]],
    within: 0.005,
    source:
      "ASHRAE Handbook Fundamentals 2021 (SI) ch. 27 Example 7: R outward 1.14 of 4.68 is 0.24, and its face at 4.3 C allows 34 % (33.5) at 21 C",
  },
  run(a, tape) {
    const insideC = fToC(a.indoorTemperature);
    const vaporPa = vaporPressurePa(insideC, a.indoorHumidity / 100, "ISO 13788", tape);
    const dewC = dewPointFromPressureC(vaporPa, "ISO 13788");
    const least = leastExteriorShare(insideC, dewC, fToC(a.outdoorTemperature), tape);
    const rows = layerRows(a.layers);
    const own =
      rows.length === 0 ? undefined : exteriorShareOf(assemble(rows, a.insideFilm, a.outsideFilm, tape), tape);
    const code = a.zone === "" ? undefined : { zone: parseZone(a.zone), stud: a.stud };
    return exteriorShareTable(least, own, code, tape);
  },
});

export const enclosureSurfaceFunctions = [surfaceFactorFunction, exteriorShare] as const;
