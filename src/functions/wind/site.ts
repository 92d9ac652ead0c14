import { inDebrisRegion } from "../../core/wind/debris-region.ts";
import { KD_BUILDINGS } from "../../core/wind/directionality.ts";
import { edgeWidth } from "../../core/wind/edge.ts";
import { exposureCoefficient } from "../../core/wind/exposure-coefficient.ts";
import { KZ_HIGHEST_FT } from "../../core/wind/tables/terrain.ts";
import { HILL_SHAPES } from "../../core/wind/tables/topography.ts";
import { topographicFactor } from "../../core/wind/topographic-factor.ts";
import { velocityPressure } from "../../core/wind/velocity-pressure.ts";
import { cellFunction, quantityOf, textOf } from "../declare/cell-function.ts";
import { optional } from "../declare/param.ts";
import { choice, flag, length, number } from "../declare/scalar.ts";
import { edition, exposure, height, plan, speed, use, WIND_CAUTION } from "./params.ts";

const KZ_SOURCE = "ASCE/SEI 7-10 Tables 27.3-1, 28.3-1, 30.3-1; 7-16 and 7-22 Table 26.10-1, note 1";
const heightAbove = height("height above ground", KZ_HIGHEST_FT, "the Kz tables of ASCE/SEI 7 end there");

const windKz = cellFunction({
  name: "WIND_KZ",
  family: "Wind",
  summary: "Velocity pressure exposure coefficient Kz at a height, or Kh at the mean roof height.",
  params: { height: heightAbove, exposure, edition, use },
  returns: quantityOf("", "Kz"),
  sources: [KZ_SOURCE],
  assumptions: [
    "Kz follows the formula under the table, not the rounded table values between which one may interpolate.",
  ],
  cautions: [WIND_CAUTION],
  example: {
    args: { height: 50, exposure: "B", edition: "7-22" },
    gives: 0.79,
    within: 0.005,
    source: "ASCE/SEI 7-22 Table 26.10-1, 50 ft, Exposure B",
  },
  run: (a, tape) => exposureCoefficient(a.height, a.exposure, a.use, a.edition, tape),
});

const windPressure = cellFunction({
  name: "WIND_PRESSURE",
  family: "Wind",
  summary: "Velocity pressure of the wind at a height.",
  params: {
    speed,
    height: heightAbove,
    exposure,
    kzt: optional(
      number({ says: "topographic factor Kzt, from WIND_TOPOGRAPHY", min: 1, max: 3.2 }),
      1,
      "topographic factor 1, flat site",
    ),
    kd: optional(
      number({
        says: "directionality factor Kd",
        min: 0.85,
        max: 1,
        source: "ASCE/SEI 7-16 Table 26.6-1",
      }),
      KD_BUILDINGS,
      "directionality factor 0.85, buildings",
    ),
    elevation: optional(
      length("ft", { says: "ground above sea level", min: -1500, max: 15000 }),
      0,
      "sea level, ground elevation factor 1",
    ),
    edition,
    use,
  },
  returns: quantityOf("psf", "velocity pressure q, at the level of the speed; in 7-22 without Kd"),
  sources: ["ASCE/SEI 7-10 Eqs. 27.3-1, 28.3-1, 30.3-1; 7-16 and 7-22 Eq. 26.10-1", KZ_SOURCE],
  cautions: [
    WIND_CAUTION,
    "The speed must come from the map of the same edition and risk category; local amendments may ask for more.",
  ],
  example: {
    args: { speed: 200, height: 160, exposure: "C", edition: "7-16" },
    gives: 121.68,
    within: 0.07,
    source:
      "ASCE/SEI 7-16 Table 27.5-2, h 160 ft, Exposure C, 200 mph: zone 5 prints -94.3 psf = q (0.85 x -0.7 - 0.18)",
  },
  run: (a, tape) =>
    velocityPressure(
      {
        speedMph: a.speed,
        heightFt: a.height,
        exposure: a.exposure,
        kzt: a.kzt,
        kd: a.kd,
        elevationFt: a.elevation,
        use: a.use,
        edition: a.edition,
      },
      tape,
    ),
});

const windTopography = cellFunction({
  name: "WIND_TOPOGRAPHY",
  family: "Wind",
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
    hill: length("ft", { says: "height of the hill above the terrain upwind", above: 0, max: 10000 }),
    halfLength: length("ft", {
      says: "distance upwind of the crest to where the ground is at half the height",
      above: 0,
      max: 100000,
    }),
    distance: length("ft", { says: "distance from the crest to the building, level", min: 0, max: 100000 }),
    height: height("height above the ground at the building", KZ_HIGHEST_FT, "as for Kz"),
    exposure,
    side: optional(
      choice(["upwind", "downwind"], { says: "side of the crest that the building is on, seen with the wind" }),
      "downwind",
      "downwind of the crest",
    ),
    edition,
  },
  returns: quantityOf("", "topographic factor Kzt"),
  sources: ["ASCE/SEI 7-10, 7-16, 7-22 section 26.8, Eq. 26.8-1, Fig. 26.8-1"],
  cautions: [WIND_CAUTION],
  example: {
    args: { shape: "escarpment", hill: 100, halfLength: 200, distance: 400, height: 40, exposure: "C" },
    gives: 1.2795,
    within: 0.009,
    source: "ASCE/SEI 7-22 Fig. 26.8-1 printed multipliers: K1 0.43, K2 0.50, K3 0.61, each to half its last digit",
  },
  run: (a, tape) =>
    topographicFactor(
      {
        shape: a.shape,
        hillFt: a.hill,
        halfLengthFt: a.halfLength,
        distanceFt: a.distance,
        side: a.side,
        heightFt: a.height,
        exposure: a.exposure,
        edition: a.edition,
      },
      tape,
    ),
});

const windEdge = cellFunction({
  name: "WIND_EDGE",
  family: "Wind",
  summary: "Width a of the edge zones of walls and roofs for components and cladding.",
  params: {
    width: plan("one plan dimension of the building"),
    length: plan("the other plan dimension"),
    height: height("mean roof height; eave height for roofs up to 10 degrees", 60, "ASCE/SEI 7-16 Fig. 30.3-1"),
    edition,
  },
  returns: quantityOf("ft", "width a of the edge zone"),
  sources: ["ASCE/SEI 7-10 Fig. 30.4-1, 7-16 and 7-22 Fig. 30.3-1, notation a"],
  cautions: [WIND_CAUTION],
  example: {
    args: { width: 48, length: 80, height: 20 },
    gives: 4.8,
    within: 1e-12,
    source: "exact arithmetic: 0.1 x 48, below 0.4 x 20 and above 3 ft",
  },
  run: (a, tape) => edgeWidth(a.width, a.length, a.height, a.edition, tape),
});

const windDebris = cellFunction({
  name: "WIND_DEBRIS",
  family: "Wind",
  summary: "Whether a site lies in a wind-borne debris region, where openings need protection.",
  params: {
    speed,
    coast: number({ says: "distance from the coastal mean high water line, in miles", min: 0, max: 5000 }),
    exposureD: optional(
      flag({ says: "TRUE where Exposure D lies upwind at the water line" }),
      true,
      "Exposure D upwind at the water line",
    ),
    hurricaneProne: optional(
      flag({ says: "TRUE in a hurricane-prone region" }),
      true,
      "the site is in a hurricane-prone region",
    ),
    edition,
  },
  returns: textOf("yes or no"),
  sources: ["ASCE/SEI 7-10 section 26.10.3.1, 7-16 and 7-22 section 26.12.3.1"],
  cautions: [
    WIND_CAUTION,
    "Risk category II and III (other than health care) go by the map of their own category, III health care and IV by theirs; the building department may draw the region itself.",
  ],
  example: {
    args: { speed: 130, coast: 0.5 },
    gives: "yes",
    within: 0,
    source: "ASCE/SEI 7-22 section 26.12.3.1: within 1 mile of mean high water at 130 mph or more",
  },
  run(a, tape) {
    const inside = inDebrisRegion(a.speed, a.coast, a.exposureD, a.hurricaneProne, a.edition, tape);
    const answer = inside ? "yes" : "no";
    tape?.step("debris region", "hurricane-prone and one of the two rules", answer, "", `ASCE/SEI ${a.edition}`);
    return answer;
  },
});

export const windSiteFunctions = [windKz, windPressure, windTopography, windEdge, windDebris] as const;
