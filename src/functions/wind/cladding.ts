import { claddingPressure } from "../../core/wind/cladding.ts";
import { SURFACES } from "../../core/wind/cladding-figure.ts";
import { claddingSchedule, SCHEDULE_ROOFS } from "../../core/wind/cladding-schedule.ts";
import { KD_BUILDINGS } from "../../core/wind/directionality.ts";
import { cellFunction, tableOf } from "../declare/cell-function.ts";
import { optional } from "../declare/param.ts";
import { choice, number, quantity, slope, text } from "../declare/scalar.ts";
import { list, table } from "../declare/table.ts";
import { edition, enclosure, height, level, plan, q, roofSlope, WIND_CAUTION } from "./params.ts";

const SOURCES = [
  "ASCE/SEI 7-10 section 30.4, Figs. 30.4-1 to 30.4-5; 7-16 and 7-22 section 30.3, Figs. 30.3-1 to 30.3-5; least net pressure 30.2.2",
  "Wall, overhang and monoslope coefficients, gable coefficients of 7-10 and flat-roof coefficients of 7-16 from memory, as the working marks",
] as const;
const CAUTIONS = [
  WIND_CAUTION,
  "Components and cladding pressures only: the frame of the building has its own, in WIND_FRAME.",
] as const;

const area = quantity("ft2", {
  says: "effective wind area: span times the larger of tributary width and span/3",
  above: 0,
  max: 1e5,
});
const meanRoofHeight = optional(
  height("mean roof height, held against the 60 ft limit", 500, "the Kz tables of ASCE/SEI 7 end there"),
  undefined,
  "mean roof height up to 60 ft",
);
const gcp = (says: string, min: number, max: number) => optional(number({ says, min, max }), undefined, "");

const windCladding = cellFunction({
  name: "WIND_CLADDING",
  family: "Wind",
  summary: "Net pressures toward and away from a wall, roof or overhang zone, for components and cladding.",
  params: {
    q,
    surface: choice(SURFACES, {
      says: "part of the building",
      also: {
        walls: "wall",
        roof: "flat",
        "flat roof": "flat",
        "gable roof": "gable",
        "hip roof": "hip",
        shed: "monoslope",
      },
    }),
    zone: text({ says: "zone of the figure: 4 or 5 on walls; 1, 2, 3, 1', 2', 3' on roofs" }),
    area,
    slope: optional(
      slope({ says: "slope of the roof; on walls up to 10 degrees reduces GCp by 10 percent", max: 80 }),
      undefined,
      "walls under a roof steeper than 10 degrees, no reduction; a flat roof",
    ),
    enclosure,
    level,
    edition,
    height: meanRoofHeight,
    gcpAway: gcp("GCp away from the surface, below 0, read from the figure; used instead of the one held here", -10, 0),
    gcpToward: gcp("GCp toward the surface, read from the figure; goes with gcpAway", 0, 5),
  },
  returns: tableOf("one row: pressure toward the surface, pressure away from it", [
    ["toward", "psf"],
    ["away", "psf"],
  ]),
  sources: SOURCES,
  assumptions: ["Internal pressure is taken with the sign that adds."],
  cautions: CAUTIONS,
  example: {
    args: { q: 49.35, surface: "gable", zone: "1", area: 20, slope: "20 deg", level: "allowable", edition: "7-10" },
    gives: [[18.4, -31.1]],
    within: 0.05,
    source:
      "IRC 2018 Table R301.2(2), roof above 7 to 27 degrees, zone 1, 20 ft2, 180 mph: q = 0.00256 x 0.70 x 0.85 x 180^2",
  },
  run(a, tape) {
    const net = claddingPressure(
      {
        qPsf: a.q,
        kd: KD_BUILDINGS,
        surface: a.surface,
        zone: a.zone,
        areaFt2: a.area,
        slopeDeg: a.slope,
        enclosure: a.enclosure,
        level: a.level,
        heightFt: a.height,
        given:
          a.gcpAway === undefined ? [] : [{ zone: a.zone, areaFt2: a.area, toward: a.gcpToward ?? 0, away: a.gcpAway }],
        edition: a.edition,
      },
      tape,
    );
    return [[net.towardPsf, net.awayPsf]];
  },
});

const USUAL_AREAS_FT2 = [10, 20, 50, 100] as const;

const coefficientTable = table(
  {
    zone: text({ says: "roof zone of the figure" }),
    area: quantity("ft2", { says: "effective wind area", above: 0, max: 1e5 }),
    toward: number({ says: "GCp toward the surface", min: 0, max: 5, heads: ["gcp toward", "positive"] }),
    away: number({ says: "GCp away from the surface, below 0", min: -10, max: 0, heads: ["gcp away", "negative"] }),
  },
  { says: "roof coefficients read from the figure: zone, area, GCp toward, GCp away", maxRows: 200 },
);

const windCladdingSchedule = cellFunction({
  name: "WIND_CLADDING_SCHEDULE",
  family: "Wind",
  summary: "Net cladding pressures of every wall and roof zone by effective wind area, ready to print.",
  params: {
    q,
    roof: choice(SCHEDULE_ROOFS, {
      says: "shape of the roof; none for the walls alone",
      also: { shed: "monoslope", walls: "none" },
    }),
    slope: roofSlope,
    areas: optional(
      list(quantity("ft2", { says: "effective wind area", above: 0, max: 1e5 }), {
        says: "effective wind areas, one or a range",
        max: 30,
      }),
      USUAL_AREAS_FT2,
      "effective wind areas 10, 20, 50 and 100 ft2",
    ),
    width: optional(plan("plan dimension across the ridge, for the edge width and the picture"), undefined, ""),
    length: optional(plan("plan dimension along the ridge"), undefined, ""),
    height: meanRoofHeight,
    enclosure,
    level,
    coefficients: optional(coefficientTable, [], "roof coefficients from the figures held here"),
    edition,
  },
  returns: tableOf("a row for each zone and area", [
    ["surface", ""],
    ["zone", ""],
    ["effective area", "ft2"],
    ["toward", "psf"],
    ["away", "psf"],
  ]),
  sources: SOURCES,
  assumptions: ["Internal pressure is taken with the sign that adds."],
  cautions: CAUTIONS,
  example: {
    args: { q: 35.84, roof: "none", slope: "30 deg", areas: [[10]], level: "allowable", edition: "7-10" },
    gives: [
      ["wall", "4", 10, 25.4, -27.5],
      ["wall", "5", 10, 25.4, -34],
    ],
    within: 0.05,
    source: "exact arithmetic: 0.6 x 35.84 x (1.0 + 0.18), (-1.1 - 0.18), (-1.4 - 0.18)",
  },
  run: (a, tape) =>
    claddingSchedule(
      {
        qPsf: a.q,
        kd: KD_BUILDINGS,
        roof: a.roof,
        slopeDeg: a.slope,
        areasFt2: a.areas,
        widthFt: a.width,
        lengthFt: a.length,
        heightFt: a.height,
        enclosure: a.enclosure,
        level: a.level,
        given: a.coefficients.map((c) => ({ zone: c.zone, areaFt2: c.area, toward: c.toward, away: c.away })),
        edition: a.edition,
      },
      tape,
    ).map((r) => [r.surface, r.zone, r.areaFt2, r.towardPsf, r.awayPsf]),
});

export const windCladdingFunctions = [windCladding, windCladdingSchedule] as const;
