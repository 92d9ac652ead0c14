import { vaporPressurePa } from "../../core/enclosure/air/humid-air.ts";
import { dewPointFromPressureC } from "../../core/enclosure/air/saturation.ts";
import {
  exteriorShareOf,
  exteriorShareRows,
  leastExteriorShare,
  type ShareRow,
} from "../../core/enclosure/moisture/exterior-share.ts";
import { type SurfaceFactor, surfaceFactor } from "../../core/enclosure/moisture/surface-factor.ts";
import { orElse } from "../basis/term.ts";
import { preliminary } from "../declare/cell-function.ts";
import { columnsOf } from "../declare/columns.ts";
import { optional } from "../declare/param.ts";
import { text } from "../declare/word.ts";
import { familyFunction } from "./family.ts";
import { MATERIAL_DATA } from "./heat.ts";
import { layerRows, layers } from "./layers.ts";
import { readAssembly } from "./read/layer.ts";
import { shown } from "./shown.ts";
import { AIR_PLACES, bothSides } from "./terms/air-terms.ts";
import { airOfYear, CLIMATE_PLACES } from "./terms/climate-terms.ts";
import { climateZone, countyTerms, zoneIfGiven } from "./terms/zone-terms.ts";

const factorColumns = columnsOf<SurfaceFactor>(
  ["factor", "", (r) => r.factor],
  ["least factor", "", (r) => r.leastFactor],
  ["month", "", (r) => r.month],
  ["least surface temperature", "F", (r) => r.leastF ?? ""],
  ["verdict", "", (r) => r.verdict],
);

const temperatureFactor = familyFunction({
  name: "TEMPERATURE_FACTOR",
  summary:
    "How warm the inside surface stays, as a share of the way from outdoors to indoors, against mold through the year.",
  params: { layers: layers() },
  placed: {
    ...CLIMATE_PLACES,
    surfaceHumidityLimit: orElse("surface humidity limit"),
    insideFilm: optional(
      text({ says: "air film inside, as for R_STACK" }),
      "ISO mold",
      "that of the ISO mold check, 0.25 m2 K/W, for walls, roofs and floors alike",
    ),
    outsideFilm: optional(text({ says: "air film outside, as for R_STACK" }), "ISO", "ISO 6946, 0.04 m2 K/W"),
  },
  oneRow: true,
  returns: factorColumns.table("one row"),
  sources: ["ISO 13788:2012 clause 5 and 4.4.1", MATERIAL_DATA],
  assumptions: ["The plane part only: corners, columns and window rims are colder and need a detailed calculation."],
  cautions: [preliminary("moisture")],
  example: {
    args: {
      layers: [["plain part", null, "RSI 0.96"]],
      climateStation: [["winter", "-5 C", 80]],
      indoorMoisture: [["indoor", "20 C", 50]],
    },
    gives: [[0.8, 0.7, "winter", 54.68, "no mold expected on the plane part"]],
    within: 0.05,
    source:
      "DIN 4108-2: 20 C, 50 % inside and -5 C outside ask 12.6 C (54.68 F) and a factor of 0.70; R 0.25 + 0.96 + 0.04 gives 0.80 by arithmetic",
  },
  refuses: [
    { args: { layers: [["x", 1, "none"]], insideFilm: "none", outsideFilm: "none" }, says: "there is no wall" },
    { args: { surfaceHumidityLimit: 10 }, says: "no surface can be warm enough (ISO 13788:2012 clause 5)" },
    { args: { insideFilm: "6" }, says: "the method holds from 0 to 5 h ft2 F/Btu (ASHRAE Handbook" },
    { args: { insideFilm: "-1" }, says: "an air film is an R or one of a few words" },
    { args: { surfaceHumidityLimit: -1 }, says: "it must be above 0 % and at most 100 %" },
  ],
  notFor: "Corners, columns and window rims are colder than the plane part: they need a two-dimensional calculation.",
  run(a, tape) {
    const assembly = readAssembly(layerRows(a.layers), a.insideFilm, a.outsideFilm, tape);
    const factor = surfaceFactor(assembly, airOfYear(a, true, tape), a.surfaceHumidityLimit / 100, tape);
    const says = {
      symbol: "factor",
      rule: "of the wall against the least of the year",
      clause: "ISO 13788:2012 clause 5",
    };
    return shown(factorColumns, [factor], tape, says);
  },
});

const shareColumns = columnsOf<ShareRow>(
  ["what", "", (r) => r.what],
  ["share", "", (r) => r.share],
  ["remark", "", (r) => r.remark],
);

const outsideShare = familyFunction({
  name: "DEW_OUTSIDESHARE",
  summary:
    "Least share of R outboard of the air barrier that keeps it above the dew point, this wall's share, and the code's.",
  params: { layers: layers("the layers, with the air barrier marked in the role column") },
  placed: AIR_PLACES,
  named: { climateZone, ...countyTerms, codeStud: orElse("code stud") },
  returns: shareColumns.table("a row for the need, for this wall, and for the code where a zone is given"),
  sources: [
    "ASHRAE Handbook Fundamentals 2021 ch. 27 (temperature by R)",
    "IRC 2021 Tables R702.7(2) and (3)",
    MATERIAL_DATA,
  ],
  cautions: [preliminary("moisture")],
  example: {
    args: {
      layers: [
        ["inboard", null, "RSI 3.42"],
        ["outboard", null, "RSI 1.107", null, "air barrier"],
      ],
      indoorTemperature: "21 C",
      indoorHumidity: 33.4,
      outdoorTemperature: "-1 C",
    },
    gives: [
      ["needed by dew point", 0.24, "least share of R outboard of the air barrier"],
      ["this wall", 0.24, "enough"],
    ],
    within: 0.005,
    source:
      "ASHRAE Handbook Fundamentals 2021 (SI) ch. 27 Example 7: R outward 1.14 of 4.68 is 0.24, and its face at 4.3 C allows 34 % (33.5) at 21 C; the films 0.12 and 0.03 are those of 0.68 and 0.17",
  },
  refuses: [
    { args: { indoorTemperature: 20 }, says: "the rule is for the heating season" },
    { args: { outdoorTemperature: -100 }, says: "the method holds from -60 to 100 C (ISO 13788:2012 Annex E, kept to" },
    { args: { layers: [["inboard", "", "RSI 3.42"]] }, says: "the share is counted from its inner face outward" },
    { args: { indoorHumidity: 167 }, says: "it must be from 0 to 100 %" },
  ],
  notFor: "Walls with foam inboard, vented cavities in the insulation or moist rooms such as pools take DEW_MONTHS.",
  run(a, tape) {
    const { insideC, insideRh, outsideC, outsideRh } = bothSides(a);
    const dewC = dewPointFromPressureC(vaporPressurePa(insideC, insideRh, "ISO 13788", tape), "ISO 13788");
    const least = leastExteriorShare(insideC, dewC, outsideC, tape);
    if (vaporPressurePa(outsideC, outsideRh, "ISO 13788") > vaporPressurePa(insideC, insideRh, "ISO 13788")) {
      tape?.caution(
        "The outdoor air holds more vapor than the indoor air: the rule, which is for winter, says little here.",
      );
    }
    const own = exteriorShareOf(readAssembly(layerRows(a.layers), "wall", "winter", tape), tape);
    const zone = zoneIfGiven(a, "2021", tape);
    const rows = exteriorShareRows(least, own, zone === undefined ? undefined : { zone, stud: a.codeStud }, tape);
    return shown(shareColumns, rows, tape, { symbol: "shares", rule: "needed, built, and implied by the code" });
  },
});

export const enclosureSurfaceFunctions = [temperatureFactor, outsideShare] as const;
