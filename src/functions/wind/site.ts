import { effectiveArea } from "../../core/wind/cladding/effective-area.ts";
import { inDebrisRegion } from "../../core/wind/debris-region.ts";
import { edgeWidth } from "../../core/wind/edge.ts";
import { exposureCoefficient, WIND_USES } from "../../core/wind/exposure-coefficient.ts";
import { KZ_HIGHEST_FT } from "../../core/wind/tables/terrain.ts";
import { HILL_SHAPES } from "../../core/wind/tables/topography.ts";
import { topographicFactor } from "../../core/wind/topographic-factor.ts";
import { velocityPressure } from "../../core/wind/velocity-pressure.ts";
import { needed, orElse } from "../basis/term.ts";
import { quantityOf } from "../declare/cell-function.ts";
import { columnsOf } from "../declare/columns.ts";
import { optional } from "../declare/param.ts";
import { length, number } from "../declare/scalar.ts";
import { choice, flag } from "../declare/word.ts";
import { familyFunction } from "./family.ts";
import { heightWanted, pressureInput } from "./made.ts";
import { BUILDING, SITE, WIND_CAUTION } from "./terms.ts";

const KZ_SOURCE = "ASCE/SEI 7-10 Tables 27.3-1, 28.3-1, 30.3-1; 7-16 and 7-22 Table 26.10-1, note 1";

const purpose = optional(
  choice(WIND_USES, {
    says: "what the pressure is for; sets the least Kz in Exposure B",
    also: { "main frame": "frame", mwfrs: "frame", directional: "frame", envelope: "low-rise", "c&c": "cladding" },
    means: {
      frame: "main wind-force resisting system, directional procedure",
      "low-rise": "main wind-force resisting system, low-rise envelope procedure",
      cladding: "components and cladding",
    },
  }),
  undefined,
  "",
);

const windKz = familyFunction({
  name: "WIND_KZ",
  summary: "Velocity pressure exposure coefficient Kz at a height, or Kh at the mean roof height.",
  params: {
    height: length("ft", {
      says: "height above ground",
      above: 0,
      max: KZ_HIGHEST_FT,
      source: "the Kz tables of ASCE/SEI 7 end there",
    }),
  },
  placed: { exposure: needed("exposure"), purpose },
  named: { asce7Edition: SITE.asce7Edition },
  returns: quantityOf("", "Kz"),
  sources: [KZ_SOURCE],
  assumptions: [
    "Kz follows the formula under the table, not the rounded table values between which one may interpolate.",
  ],
  cautions: [WIND_CAUTION],
  example: {
    args: { height: 50, exposure: "B", asce7Edition: "7-22" },
    gives: 0.79,
    within: 0.005,
    source: "ASCE/SEI 7-22 Table 26.10-1, 50 ft, Exposure B",
  },
  refuses: [
    { args: { exposure: null }, says: "stands neither in the call nor in the basis" },
    { args: { height: 600 }, says: "it must be above 0 ft and at most 500 ft (the Kz tables of ASCE/SEI 7 end there)" },
    { args: { height: null }, says: "Height is missing" },
  ],
  notFor: "A height in a speed-up over a hill needs WIND_TOPOGRAPHY beside it, and Kz of 7-05 and earlier is not held.",
  run: (a, tape) => exposureCoefficient(a.height, a.exposure, a.purpose, a.asce7Edition, tape),
});

const windPressure = familyFunction({
  name: "WIND_PRESSURE",
  summary: "Velocity pressure of the wind at the mean roof height, or at any height.",
  params: {},
  placed: {
    windSpeed: needed("wind speed"),
    meanRoofHeight: SITE.meanRoofHeight,
    exposure: needed("exposure"),
    purpose,
    topographicFactor: SITE.topographicFactor,
    directionalityFactor: SITE.directionalityFactor,
  },
  named: { groundElevation: SITE.groundElevation, asce7Edition: SITE.asce7Edition, ...BUILDING },
  returns: quantityOf("psf", "velocity pressure q, at the level of the speed; in 7-22 without Kd"),
  sources: ["ASCE/SEI 7-10 Eqs. 27.3-1, 28.3-1, 30.3-1; 7-16 and 7-22 Eq. 26.10-1", KZ_SOURCE],
  cautions: [
    WIND_CAUTION,
    "The speed must come from the map of the same edition and risk category; local amendments may ask for more.",
  ],
  example: {
    args: { windSpeed: 200, meanRoofHeight: 160, exposure: "C", asce7Edition: "7-16" },
    gives: 121.68,
    within: 0.07,
    source:
      "ASCE/SEI 7-16 Table 27.5-2, h 160 ft, Exposure C, 200 mph: zone 5 prints -94.3 psf = q (0.85 x -0.7 - 0.18)",
  },
  refuses: [
    { args: { roofSlope: 8 }, says: "it may be degrees, a rise in 12 or a share, and a slope typed as 6:12" },
    {
      args: { meanRoofHeight: 800 },
      says: "it must be above 0 ft and at most 500 ft (the Kz tables of ASCE/SEI 7 end there)",
    },
  ],
  notFor:
    "This is the pressure of the moving air, not the load on a wall: WIND_CLADDING and WIND_FRAME have the coefficients.",
  run: (a, tape) => velocityPressure(pressureInput(a, heightWanted(a, tape), a.purpose), tape),
});

const windTopography = familyFunction({
  name: "WIND_TOPOGRAPHY",
  summary: "Topographic factor Kzt of a building on or near a hill, ridge or escarpment.",
  params: {
    shape: choice(HILL_SHAPES, {
      says: "form of the ground",
      means: {
        ridge: "two-dimensional ridge",
        escarpment: "two-dimensional escarpment, level ground behind its crest",
        hill: "three-dimensional axisymmetrical hill",
      },
    }),
    hill: length("ft", {
      says: "height of the hill above the terrain upwind",
      above: 0,
      max: 10000,
      usual: { min: 10, max: 1000, ask: "is it in feet?" },
    }),
    halfLength: length("ft", {
      says: "distance upwind of the crest to where the ground is at half the height",
      above: 0,
      max: 100000,
      usual: { min: 10, max: 2000, ask: "is it the length in feet, not the slope?" },
    }),
    distance: length("ft", {
      says: "distance from the crest to the building, level",
      min: 0,
      max: 100000,
      usual: { min: 0, max: 4000, ask: "is it in feet?" },
    }),
    side: optional(
      choice(["upwind", "downwind"], { says: "side of the crest that the building is on, seen with the wind" }),
      "downwind",
      "downwind of the crest",
    ),
  },
  placed: { meanRoofHeight: needed("mean roof height"), exposure: needed("exposure") },
  named: { asce7Edition: SITE.asce7Edition },
  returns: quantityOf("", "topographic factor Kzt"),
  sources: ["ASCE/SEI 7-10, 7-16, 7-22 section 26.8, Eq. 26.8-1, Fig. 26.8-1"],
  cautions: [WIND_CAUTION],
  example: {
    args: {
      shape: "escarpment",
      hill: 100,
      halfLength: 200,
      distance: 400,
      meanRoofHeight: 40,
      exposure: "C",
      asce7Edition: "7-22",
    },
    gives: 1.2795,
    within: 0.009,
    source: "ASCE/SEI 7-22 Fig. 26.8-1 printed multipliers: K1 0.43, K2 0.50, K3 0.61, each to half its last digit",
  },
  refuses: [
    { args: { hill: 100000 }, says: "it must be above 0 ft and at most 10000 ft" },
    { args: { hill: null }, says: "Hill is missing" },
  ],
  notFor: "Hills that ASCE 7 does not draw, such as a canyon or a row of ridges, need a wind tunnel or a specialist.",
  run: (a, tape) =>
    topographicFactor(
      {
        shape: a.shape,
        hillFt: a.hill,
        halfLengthFt: a.halfLength,
        distanceFt: a.distance,
        side: a.side,
        heightFt: a.meanRoofHeight,
        exposure: a.exposure,
        edition: a.asce7Edition,
      },
      tape,
    ),
});

const windEdge = familyFunction({
  name: "WIND_EDGE",
  summary: "Width a of the edge zones of walls and roofs for components and cladding.",
  params: {},
  placed: {
    buildingWidth: needed("building width"),
    buildingLength: needed("building length"),
    meanRoofHeight: SITE.meanRoofHeight,
  },
  named: {
    eaveHeight: BUILDING.eaveHeight,
    roofSlope: BUILDING.roofSlope,
    roofShape: BUILDING.roofShape,
    asce7Edition: SITE.asce7Edition,
  },
  returns: quantityOf("ft", "width a of the edge zone"),
  sources: ["ASCE/SEI 7-10 Fig. 30.4-1, 7-16 and 7-22 Fig. 30.3-1, notation a"],
  cautions: [WIND_CAUTION],
  example: {
    args: { buildingWidth: 48, buildingLength: 80, meanRoofHeight: 20 },
    gives: 4.8,
    within: 1e-12,
    source: "exact arithmetic: 0.1 x 48, below 0.4 x 20 and above 3 ft",
  },
  refuses: [
    { args: { meanRoofHeight: 100 }, says: "the method holds from 0 to 60 ft (ASCE/SEI 7-22 Fig. 30.3-1, notation a)" },
    { args: { buildingWidth: 48000 }, says: "the spreadsheet makes such a number of what it takes for a date, 1/2" },
    { args: { roofSlope: 8 }, says: "it may be degrees, a rise in 12 or a share, and a slope typed as 6:12" },
    { args: { buildingLength: 8000 }, says: "it must be above 0 ft and at most 5000 ft" },
  ],
  notFor: "Parapets, overhangs and canopies have zones of their own width: see the figures of ASCE 7 chapter 30.",
  run: (a, tape) => edgeWidth(a.buildingWidth, a.buildingLength, heightWanted(a, tape), a.asce7Edition, tape),
});

const windArea = familyFunction({
  name: "WIND_AREA",
  summary:
    "Effective wind area of a component: its span times its tributary width, or a third of the span if that is wider.",
  params: {
    span: length("ft", {
      says: "span of the component",
      above: 0,
      max: 200,
      usual: { min: 0.5, max: 60, ask: "is it in feet?" },
    }),
    width: length("ft", {
      says: "width that the component carries",
      above: 0,
      max: 200,
      usual: { min: 0.1, max: 15, ask: "is it in feet?" },
    }),
  },
  returns: quantityOf("ft2", "effective wind area"),
  sources: ["ASCE/SEI 7-10, 7-16, 7-22 section 26.2, effective wind area"],
  cautions: [WIND_CAUTION],
  example: {
    args: { span: 9, width: 2 },
    gives: 27,
    within: 0,
    source: "exact arithmetic: 9 x 9/3, the third of the span being wider than 2 ft",
  },
  refuses: [
    { args: { span: 900 }, says: "it must be above 0 ft and at most 200 ft" },
    { args: { span: null }, says: "Span is missing" },
  ],
  notFor: "The main frame goes by its own tributary areas: this area is for components, cladding and their fasteners.",
  run: (a, tape) => effectiveArea(a.span, a.width, tape),
});

const debrisColumns = columnsOf<{ inside: string; why: string }>(
  ["debris region", "", (r) => r.inside],
  ["why", "", (r) => r.why],
);

const windDebris = familyFunction({
  name: "WIND_DEBRIS",
  summary: "Whether a site lies in a wind-borne debris region, where openings need protection.",
  params: {
    coast: number({
      says: "distance from the coastal mean high water line, in miles",
      min: 0,
      max: 5000,
      usual: { min: 0, max: 1000, ask: "is it in miles?" },
    }),
    exposureD: optional(
      flag({ says: "whether Exposure D lies upwind at the water line" }),
      true,
      "Exposure D upwind at the water line",
    ),
  },
  placed: { windSpeed: needed("wind speed"), hurricaneRegion: orElse("hurricane region") },
  named: { asce7Edition: SITE.asce7Edition },
  returns: debrisColumns.table("one row: yes or no, and the rule that decides"),
  oneRow: true,
  sources: [
    "ASCE/SEI 7-10 section 26.10.3.1 (from memory), 7-16 and 7-22 section 26.12.3.1, read in a page-scan of 7-22",
  ],
  cautions: [
    WIND_CAUTION,
    "Risk category II and III (other than health care) go by the map of their own category, III health care and IV by theirs; the building department may draw the region itself.",
  ],
  example: {
    args: { coast: 0.5, windSpeed: 130, asce7Edition: "7-22" },
    gives: [["yes", "within 1 mile of mean high water with Exposure D upwind, at 130 mph or more"]],
    within: 0,
    source: "ASCE/SEI 7-22 section 26.12.3.1: within 1 mile of mean high water at 130 mph or more",
  },
  refuses: [
    { args: { windSpeed: 13 }, says: "it must be from 40 to 300 mph" },
    { args: { coast: null }, says: "Coast is missing" },
  ],
  notFor:
    "Where the building department has drawn the debris region itself, its map decides and not the distance to the coast.",
  run(a, tape) {
    const region = inDebrisRegion(a.windSpeed, a.coast, a.exposureD, a.hurricaneRegion, a.asce7Edition, tape);
    return debrisColumns.rows([{ inside: region.inside ? "yes" : "no", why: region.why }]);
  },
});

export const windSiteFunctions = [windKz, windPressure, windTopography, windEdge, windArea, windDebris] as const;
