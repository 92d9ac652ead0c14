import { BadInput } from "../../core/kit/refusal.ts";
import { claddingPressure, type NetPressure } from "../../core/wind/cladding/cladding.ts";
import { SURFACES, type Surface } from "../../core/wind/cladding/cladding-figure.ts";
import { claddingSchedule, type ScheduleRow } from "../../core/wind/cladding/cladding-schedule.ts";
import { PARAPET_ZONES, type ParapetPressure, parapetPressures } from "../../core/wind/cladding/parapet.ts";
import { velocityPressure } from "../../core/wind/velocity-pressure.ts";
import { ifGiven, orElse } from "../basis/term.ts";
import { columnsOf } from "../declare/columns.ts";
import { optional } from "../declare/param.ts";
import { length, number, quantity } from "../declare/scalar.ts";
import { list, table } from "../declare/table.ts";
import { choice, text } from "../declare/word.ts";
import { familyFunction } from "./family.ts";
import { heightOf, pressureInput, windOf } from "./made.ts";
import { BUILDING, SITE, WIND_CAUTION } from "./terms.ts";

const SOURCES = [
  "ASCE/SEI 7-10 section 30.4, Figs. 30.4-1 to 30.4-5; 7-16 and 7-22 section 30.3, Figs. 30.3-1 to 30.3-5; least net pressure 30.2.2",
  "Walls and roofs of 7-22, 10 to 100 ft2: recovered from the pressures of the 2023 Florida Building Code, Residential, Table R301.2(2), its overhangs by note g",
  "Gable coefficients of 7-10, flat roofs of 7-16 and monoslopes from memory in part, as the working marks",
] as const;
const CAUTIONS = [
  WIND_CAUTION,
  "Components and cladding pressures only: the frame of the building has its own, in WIND_FRAME.",
] as const;
const ASSUMPTIONS = ["Internal pressure is taken with the sign that adds."] as const;

const area = quantity("ft2", {
  says: "effective wind area: span times the larger of tributary width and span/3",
  above: 0,
  max: 1e5,
});

const coefficientTable = table(
  {
    zone: text({ says: "zone of the figure" }),
    area: quantity("ft2", {
      says: "effective wind area",
      above: 0,
      max: 1e5,
      heads: ["effective area", "effective wind area"],
    }),
    toward: number({ says: "GCp toward the surface", min: 0, max: 5, heads: ["gcp toward", "positive"] }),
    away: number({ says: "GCp away from the surface, below 0", min: -10, max: 0, heads: ["gcp away", "negative"] }),
  },
  { says: "coefficients read from the figure: zone, area, GCp toward, GCp away", maxRows: 200 },
);
const coefficients = optional(coefficientTable, [], "coefficients from the figures held here");
const givenOf = (rows: readonly { zone: string; area: number; toward: number; away: number }[]) =>
  rows.map((c) => ({ zone: c.zone, areaFt2: c.area, toward: c.toward, away: c.away }));

/** The named terms of a function that places slope, enclosure, level and velocity pressure. */
const NAMED = {
  ...SITE,
  buildingWidth: BUILDING.buildingWidth,
  eaveHeight: BUILDING.eaveHeight,
} as const;

/** Surfaces by name; "roof" and "overhang" are of the basis's roof shape. */
const PARTS = ["roof", "overhang", "parapet", ...SURFACES] as const;

function surfaceOf(part: (typeof PARTS)[number], shape: "flat" | "gable" | "hip" | "monoslope"): Surface {
  if (part === "roof") return shape;
  if (part === "overhang") return `${shape} overhang`;
  if (part !== "parapet") return part;
  throw new BadInput(
    "A parapet takes the velocity pressure at its top",
    "the one here is at the mean roof height",
    "Use WIND_PARAPET",
  );
}

const netColumns = columnsOf<NetPressure>(["toward", "psf", (r) => r.towardPsf], ["away", "psf", (r) => r.awayPsf]);

const windCladding = familyFunction({
  name: "WIND_CLADDING",
  summary: "Net pressures toward and away from a wall, roof, overhang or soffit zone, for components and cladding.",
  params: {
    surface: choice(PARTS, {
      says: "part of the building",
      also: { walls: "wall", "flat roof": "flat", "gable roof": "gable", "hip roof": "hip", shed: "monoslope" },
    }),
    zone: text({ says: "zone of the figure: 4 or 5 on walls; 1, 2, 3, 1', 2', 3' on roofs" }),
    area,
  },
  placed: {
    roofSlope: ifGiven("roof slope", "walls under a roof steeper than 10 degrees, no reduction; a flat roof"),
    enclosure: orElse("enclosure"),
    windLevel: orElse("wind level"),
    velocityPressure: ifGiven("velocity pressure"),
    coefficients,
  },
  named: { ...NAMED, roofShape: BUILDING.roofShape },
  returns: netColumns.table("one row: pressure toward the surface, pressure away from it"),
  oneRow: true,
  sources: SOURCES,
  assumptions: ASSUMPTIONS,
  cautions: CAUTIONS,
  example: {
    args: {
      surface: "gable",
      zone: "1",
      area: 50,
      roofSlope: "4:12",
      velocityPressure: 30.31,
      windLevel: "allowable",
      asce7Edition: "7-22",
    },
    gives: [[9.6, -22.7]],
    within: 0.05,
    source:
      "2023 Florida Building Code, Residential, Table R301.2(2), gable roof 7 to 20 degrees, zone 1, 50 ft2, 130 mph: q = 0.00256 x 0.7006 x 130^2",
  },
  refuses: [
    { args: { coefficients: [["1", 10, 2, -1]] }, says: "figures of a gable roof hold 0 to 1.5 toward" },
    { args: { surface: "wall" }, says: "ASCE/SEI 7-22 Fig. 30.3-1 has zones 4, 5" },
    { args: { surface: "flat" }, says: "its figures end at 7 degrees (ASCE/SEI 7-22 30.3)" },
    { args: { enclosure: "open" }, says: "open buildings have net pressure coefficients CN of their own" },
    { args: { surface: "parapet" }, says: "the one here is at the mean roof height" },
    { args: { roofSlope: 8 }, says: "it may be degrees, a rise in 12 or a share, and a slope typed as 6:12" },
    { args: { windSpeed: 30 }, says: "it must be from 40 to 300 mph" },
    {
      args: { enclosure: "partially open", asce7Edition: "7-10" },
      says: "ASCE/SEI 7-10 has no such class: it knows enclosed, partially",
    },
    {
      args: { coefficients: [["9", 10, 1, -1]] },
      says: "zones of a gable roof are 1, 1', 2, 2', 2e, 2n, 2r, 3, 3', 3e,",
    },
    {
      args: { surface: "roof", zone: "1", roofSlope: "15 deg", roofShape: "gable", asce7Edition: "7-16" },
      says: "no public print of ASCE/SEI 7-16 Fig. 30.3-2B was found to take",
    },
    { args: { coefficients: [["2", 10, 1, -1]] }, says: "they hold 2" },
    {
      args: {
        coefficients: [
          ["1", 100, 1, -1],
          ["1", 500, 0.8, -0.9],
        ],
      },
      says: "a smaller area has more suction",
    },
  ],
  notFor:
    "The main frame, shear walls and hold-downs take WIND_FRAME and WIND_BASESHEAR; open buildings, domes and heights above 60 ft go to an engineer.",
  run(a, tape) {
    const heightFt = heightOf(a, tape);
    const net = claddingPressure(
      {
        ...windOf(a, heightFt, "cladding", tape),
        surface: surfaceOf(a.surface, a.roofShape),
        zone: a.zone,
        areaFt2: a.area,
        slopeDeg: a.roofSlope,
        enclosure: a.enclosure,
        level: a.windLevel,
        heightFt,
        given: givenOf(a.coefficients),
      },
      tape,
    );
    return netColumns.rows([net]);
  },
});

const USUAL_AREAS_FT2 = [10, 20, 50, 100] as const;

const scheduleColumns = columnsOf<ScheduleRow>(
  ["surface", "", (r) => r.surface],
  ["zone", "", (r) => r.zone],
  ["effective area", "ft2", (r) => r.areaFt2],
  ["toward", "psf", (r) => r.towardPsf],
  ["away", "psf", (r) => r.awayPsf],
);

const windCladdingSchedule = familyFunction({
  name: "WIND_CLADDING_SCHEDULE",
  summary: "Net cladding pressures of every wall and roof zone by effective wind area, ready to print.",
  params: {
    areas: optional(
      list(quantity("ft2", { says: "effective wind area", above: 0, max: 1e5 }), {
        says: "effective wind areas, one or a range",
        max: 30,
      }),
      USUAL_AREAS_FT2,
      "effective wind areas 10, 20, 50 and 100 ft2",
    ),
  },
  placed: {
    roofShape: BUILDING.roofShape,
    roofSlope: BUILDING.roofSlope,
    enclosure: orElse("enclosure"),
    windLevel: orElse("wind level"),
    velocityPressure: ifGiven("velocity pressure"),
    coefficients,
  },
  named: { ...NAMED, buildingLength: BUILDING.buildingLength },
  returns: scheduleColumns.table("a row for each zone and area"),
  sources: SOURCES,
  assumptions: ASSUMPTIONS,
  cautions: CAUTIONS,
  example: {
    args: {
      areas: [[50]],
      roofShape: "gable",
      roofSlope: "4:12",
      velocityPressure: 30.31,
      windLevel: "allowable",
      asce7Edition: "7-22",
    },
    gives: [
      ["wall", "4", 50, 16.3, -17.9],
      ["wall", "5", 50, 16.3, -20.6],
      ["gable", "1", 50, 9.6, -22.7],
      ["gable", "2", 50, 9.6, -30.4],
      ["gable", "3", 50, 9.6, -39],
    ],
    within: 0.05,
    source:
      "2023 Florida Building Code, Residential, Table R301.2(2), walls and gable roof 7 to 20 degrees, 50 ft2, 130 mph: q = 0.00256 x 0.7006 x 130^2",
  },
  refuses: [
    { args: { roofShape: "flat" }, says: "its figures end at 7 degrees (ASCE/SEI 7-22 30.3)" },
    { args: { enclosure: "open" }, says: "open buildings have net pressure coefficients CN of their own" },
    { args: { meanRoofHeight: 500 }, says: "the method holds from 0 to 60 ft (ASCE/SEI 7-22 chapter 30, 30.3)" },
    {
      args: { asce7Edition: "7-16" },
      says: "no public print of ASCE/SEI 7-16 Fig. 30.3-2B was found to take them from",
    },
    { args: { roofSlope: 8 }, says: "it may be degrees, a rise in 12 or a share, and a slope typed as 6:12" },
    { args: { windSpeed: 30 }, says: "it must be from 40 to 300 mph" },
  ],
  notFor:
    "A single cell takes WIND_CLADDING; the main frame takes WIND_FRAME, and open buildings and domes go to an engineer.",
  run(a, tape) {
    const heightFt = heightOf(a, tape);
    const rows = claddingSchedule(
      {
        ...windOf(a, heightFt, "cladding", tape),
        roof: a.roofShape,
        slopeDeg: a.roofSlope,
        areasFt2: a.areas,
        widthFt: a.buildingWidth,
        lengthFt: a.buildingLength,
        heightFt,
        enclosure: a.enclosure,
        level: a.windLevel,
        given: givenOf(a.coefficients),
      },
      tape,
    );
    return scheduleColumns.rows(rows);
  },
});

const parapetColumns = columnsOf<ParapetPressure>(
  ["case", "", (r) => r.load],
  ["toward", "psf", (r) => r.towardPsf],
  ["away", "psf", (r) => r.awayPsf],
);

const windParapet = familyFunction({
  name: "WIND_PARAPET",
  summary: "Net wind pressures on a parapet, for the frame and for components and cladding.",
  params: {
    top: length("ft", {
      says: "height of the top of the parapet above the ground",
      above: 0,
      max: 100,
      usual: { min: 6, max: 70, ask: "is it the height above the ground, in feet?" },
    }),
    area,
    zone: optional(
      choice(PARAPET_ZONES, {
        says: "wall zone in front",
        also: { corner: "5", edge: "4", middle: "4" },
        means: { "4": "along the wall, roof edge zone 2 behind", "5": "at a corner, roof corner zone 3 behind" },
      }),
      "5",
      "a corner: wall zone {}",
    ),
  },
  placed: { roofShape: BUILDING.roofShape, windLevel: orElse("wind level") },
  named: { ...SITE, roofSlope: BUILDING.roofSlope },
  returns: parapetColumns.table(
    "a row for each case: net of both faces, toward the roof above 0, away from it below 0",
  ),
  sources: [
    "Frame: ASCE/SEI 7-10 section 27.4.5, 7-16 and 7-22 section 27.3.4, GCpn 1.5 and -1.0",
    "Cladding: ASCE/SEI 7-10 section 30.9, 7-16 and 7-22 section 30.8, load cases A and B, from memory",
  ],
  cautions: CAUTIONS,
  example: {
    args: { top: 30, area: 10, roofShape: "flat", windSpeed: 120, exposure: "C", asce7Edition: "7-22" },
    gives: [
      ["frame, windward", 46.1, 0],
      ["frame, leeward", 0, -30.7],
      ["cladding, windward", 129, 0],
      ["cladding, leeward", 0, -73.7],
    ],
    within: 0.05,
    source:
      "exact arithmetic: Kz 2.41 (30/2460)^(2/9.8) = 0.9805, qp = 0.00256 x 0.9805 x 120^2 = 36.145, times Kd 0.85 times 1.5, -1.0, 1.0 + 3.2, 1.0 + 1.4",
  },
  refuses: [
    { args: { roofShape: "hip" }, says: "its coefficients go by slope" },
    { args: { roofSlope: "6:12" }, says: "its figures end at 7 degrees (ASCE/SEI 7-22 30.3)" },
    { args: { roofSlope: 8 }, says: "it may be degrees, a rise in 12 or a share, and a slope typed as 6:12" },
    { args: { top: 150 }, says: "it must be above 0 ft and at most 100 ft" },
  ],
  notFor: "A solid fence or a sign standing free of the roof is another chapter of ASCE 7, which is not held here.",
  run(a, tape) {
    const site = pressureInput(a, a.top, "cladding");
    const rows = parapetPressures(
      {
        qPsf: velocityPressure(site, tape),
        kd: site.kd,
        edition: site.edition,
        areaFt2: a.area,
        zone: a.zone,
        roof: a.roofShape,
        slopeDeg: a.roofSlope,
        level: a.windLevel,
      },
      tape,
    );
    return parapetColumns.rows(rows);
  },
});

export const windCladdingFunctions = [windCladding, windCladdingSchedule, windParapet] as const;
