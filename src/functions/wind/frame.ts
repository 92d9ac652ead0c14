import { internalCoefficient } from "../../core/wind/enclosure.ts";
import { type BaseShear, shearWithLines, type WallLine } from "../../core/wind/frame/base-shear.ts";
import type { FrameInput, FrameRow } from "../../core/wind/frame/frame.ts";
import { directionalFrame } from "../../core/wind/frame/frame-directional.ts";
import { envelopeFrame } from "../../core/wind/frame/frame-envelope.ts";
import { roofUplift, type Uplift } from "../../core/wind/frame/uplift.ts";
import { ifGiven, orElse } from "../basis/term.ts";
import type { ArgumentsOf } from "../declare/cell-function.ts";
import { columnsOf } from "../declare/columns.ts";
import { optional } from "../declare/param.ts";
import { length, quantity } from "../declare/scalar.ts";
import { list, table } from "../declare/table.ts";
import { choice, text } from "../declare/word.ts";
import { familyFunction } from "./family.ts";
import { heightOf, wanted, windOf } from "./made.ts";
import { BUILDING, SITE, WIND_CAUTION } from "./terms.ts";

/** Terms of the frame: the wind on it and the building. */
export const FRAME_TERMS = {
  velocityPressure: ifGiven("velocity pressure"),
  ...BUILDING,
  enclosure: orElse("enclosure"),
  windLevel: orElse("wind level"),
  ...SITE,
} as const;

type FrameArguments = ArgumentsOf<typeof FRAME_TERMS>;

const WHY = "the pressures go by it";

/** The building and its wind, as the frame calculations take them. */
export function frameInput(
  a: FrameArguments,
  use: "frame" | "low-rise",
  roofAreaFt2: number | undefined,
  tape: Parameters<typeof heightOf>[1],
): FrameInput {
  const building = {
    widthFt: wanted(a.buildingWidth, "Building width", WHY),
    lengthFt: wanted(a.buildingLength, "Building length", WHY),
    eaveFt: wanted(a.eaveHeight, "Eave height", WHY),
    slopeDeg: a.roofShape === "flat" ? (a.roofSlope ?? 0) : wanted(a.roofSlope, "Roof slope", WHY),
    roof: a.roofShape,
  };
  return {
    ...building,
    ...windOf(a, heightOf(a, tape), use, tape),
    enclosure: a.enclosure,
    exposure: a.exposure,
    level: a.windLevel,
    kzt: a.topographicFactor,
    roofAreaFt2,
  };
}

export const DIRECTIONAL = "ASCE/SEI 7-10 section 27.4, Fig. 27.4-1; 7-16 and 7-22 section 27.3, Fig. 27.3-1";
export const ASSUMPTIONS = ["A rigid, regular, rectangular building: gust-effect factor 0.85."] as const;
const LEAST =
  "The frame must also take the least load, 16 psf on walls with 8 psf on the roof in projection: WIND_BASESHEAR applies it.";

const frameColumns = columnsOf<FrameRow>(
  ["wind", "", (r) => r.wind],
  ["surface", "", (r) => r.surface],
  ["part", "", (r) => r.part],
  ["coefficient", "", (r) => r.coefficient],
  ["net with internal pressure", "psf", (r) => r.withPressurePsf],
  ["net with internal suction", "psf", (r) => r.withSuctionPsf],
);

const windFrame = familyFunction({
  name: "WIND_FRAME",
  summary:
    "Net wind pressures on the main frame by surface, for wind across and along the ridge, with both internal pressures.",
  params: {
    area: optional(
      quantity("ft2", {
        says: "roof area that a member carries, which reduces the suction of -1.3",
        above: 0,
        max: 1e5,
      }),
      undefined,
      "no reduction of the roof suction of -1.3 for area",
    ),
  },
  placed: {
    velocityPressure: FRAME_TERMS.velocityPressure,
    buildingWidth: BUILDING.buildingWidth,
    buildingLength: BUILDING.buildingLength,
    eaveHeight: BUILDING.eaveHeight,
    roofSlope: BUILDING.roofSlope,
    frameMethod: orElse("frame method"),
    enclosure: FRAME_TERMS.enclosure,
    windLevel: FRAME_TERMS.windLevel,
  },
  named: { ...SITE, roofShape: BUILDING.roofShape },
  returns: frameColumns.table(
    "a row for each surface: wind direction or load case, surface, part, coefficient, net pressures, above 0 toward the surface",
  ),
  sources: [
    DIRECTIONAL,
    "ASCE/SEI 7-10 section 28.4, Fig. 28.4-1; 7-16 and 7-22 section 28.3, Fig. 28.3-1 (coefficients from memory)",
  ],
  assumptions: ASSUMPTIONS,
  cautions: [
    WIND_CAUTION,
    LEAST,
    "Torsion and wind on both axes at once are load cases of their own (WIND_TORSION); so are parapets and overhangs.",
  ],
  example: {
    args: {
      velocityPressure: 78.83,
      buildingWidth: 100,
      buildingLength: 100,
      eaveHeight: 160,
      roofShape: "flat",
      asce7Edition: "7-16",
    },
    gives: [
      ["across ridge", "windward wall", "0 to 160 ft", 0.8, 39.4, 67.8],
      ["across ridge", "leeward wall", "whole", -0.5, -47.7, -19.3],
      ["across ridge", "side walls", "whole", -0.7, -61.1, -32.7],
      ["across ridge", "roof", "0 to 80 ft from the windward edge", -1.3, -101.3, -72.9],
      ["across ridge", "roof", "80 to 100 ft from the windward edge", -0.7, -61.1, -32.7],
      ["across ridge", "roof", "other condition", -0.18, -26.3, 2.1],
      ["along ridge", "windward wall", "0 to 160 ft", 0.8, 39.4, 67.8],
      ["along ridge", "leeward wall", "whole", -0.5, -47.7, -19.3],
      ["along ridge", "side walls", "whole", -0.7, -61.1, -32.7],
      ["along ridge", "roof", "0 to 80 ft from the windward edge", -1.3, -101.3, -72.9],
      ["along ridge", "roof", "80 to 100 ft from the windward edge", -0.7, -61.1, -32.7],
      ["along ridge", "roof", "other condition", -0.18, -26.3, 2.1],
    ],
    within: 0.06,
    source:
      "exact arithmetic with the coefficients of ASCE/SEI 7-22 Fig. 27.3-1: 78.83 (0.85 Cp - 0.18), 78.83 (0.85 Cp + 0.18)",
  },
  refuses: [
    {
      args: { frameMethod: "envelope", buildingWidth: 20, buildingLength: 30, eaveHeight: 25 },
      says: "a low-rise building is no higher than it is wide",
    },
    { args: { enclosure: "open" }, says: "open buildings have net pressure coefficients CN of their own" },
    {
      args: { frameMethod: "envelope" },
      says: "the method holds from 0 to 60 ft (ASCE/SEI 7-16 26.2, low-rise building)",
    },
    { args: { roofSlope: "6:12" }, says: "a flat roof slopes up to 10 degrees here" },
    { args: { roofSlope: "70 deg", roofShape: "gable" }, says: "roofs up to 60 degrees are worked here" },
    { args: { roofSlope: 8 }, says: "it may be degrees, a rise in 12 or a share, and a slope typed as 6:12" },
    { args: { eaveHeight: 800 }, says: "it must be above 0 ft and at most 500 ft" },
  ],
  notFor:
    "Studs, panels, windows and fasteners take WIND_CLADDING; flexible, L-shaped or open buildings go to an engineer.",
  run(a, tape) {
    const envelope = a.frameMethod === "envelope";
    const input = frameInput(a, envelope ? "low-rise" : "frame", a.area, tape);
    return frameColumns.rows(envelope ? envelopeFrame(input, tape) : directionalFrame(input, tape));
  },
});

/** What names a wall line, and the wind that it resists. */
export const WALL_LINE = {
  line: text({ says: "name of the wall line", heads: ["wall line", "name", "wall"] }),
  wind: choice(["across ridge", "along ridge"], {
    says: "wind that the line resists",
    also: { across: "across ridge", along: "along ridge" },
  }),
};

const wallLines = table(
  {
    ...WALL_LINE,
    tributary: length("ft", {
      says: "width of the face that the line carries",
      above: 0,
      max: 5000,
      heads: ["tributary width", "width"],
    }),
  },
  { says: "wall lines: name | across ridge or along ridge | width of the face that the line carries", maxRows: 200 },
);

const shearColumns = columnsOf<BaseShear>(
  ["wind", "", (r) => r.wind],
  ["from pressures", "lb", (r) => r.pressureLb],
  ["least", "lb", (r) => r.leastLb],
  ["design", "lb", (r) => r.designLb],
  ["design per foot of the face", "plf", (r) => r.designPlf],
  ["level", "", (r) => r.level],
);

const windBaseShear = familyFunction({
  name: "WIND_BASESHEAR",
  summary: "Total sideways wind force on a building across and along the ridge, not less than the least load.",
  params: { lines: optional(wallLines, [], "no wall lines") },
  placed: {
    velocityPressure: FRAME_TERMS.velocityPressure,
    buildingWidth: BUILDING.buildingWidth,
    buildingLength: BUILDING.buildingLength,
    eaveHeight: BUILDING.eaveHeight,
    roofSlope: BUILDING.roofSlope,
    windLevel: FRAME_TERMS.windLevel,
  },
  named: { ...SITE, roofShape: BUILDING.roofShape, enclosure: FRAME_TERMS.enclosure },
  returns: shearColumns.table("a row for each wind direction, then a row for each wall line"),
  sources: [DIRECTIONAL, "Least load: ASCE/SEI 7-10 section 27.4.7, 7-16 and 7-22 section 27.1.5"],
  assumptions: [...ASSUMPTIONS, "The whole height counts, the part that goes straight into the foundation with it."],
  cautions: [WIND_CAUTION, "Torsion and wind on both axes at once may load a single wall line more: WIND_TORSION."],
  example: {
    args: {
      velocityPressure: 10,
      buildingWidth: 20,
      buildingLength: 40,
      eaveHeight: 10,
      roofShape: "flat",
      asce7Edition: "7-16",
    },
    gives: [
      ["across ridge", 4420, 6400, 6400, 160, "strength"],
      ["along ridge", 1870, 3200, 3200, 160, "strength"],
    ],
    within: 0.01,
    source: "exact arithmetic: 10 x 0.85 x (0.8 + 0.5) x 400 and (0.8 + 0.3) x 200; least 16 x 400 and 16 x 200",
  },
  refuses: [
    { args: { enclosure: "open" }, says: "open buildings have net pressure coefficients CN of their own" },
    { args: { roofSlope: "6:12" }, says: "a flat roof slopes up to 10 degrees here" },
    { args: { roofSlope: 8 }, says: "it may be degrees, a rise in 12 or a share, and a slope typed as 6:12" },
    { args: { eaveHeight: 1000 }, says: "it must be above 0 ft and at most 500 ft" },
    { args: { lines: [["1", "across ridge", 2000]] }, says: "the face that the wind across ridge meets is 40 ft long" },
  ],
  notFor:
    "Torsion and both axes at once take WIND_TORSION; the seismic force, which may be larger, takes LOAD_SEISMIC.",
  run(a, tape) {
    const input = frameInput(a, "frame", undefined, tape);
    internalCoefficient(a.enclosure, a.asce7Edition);
    const lines = a.lines.map((l): WallLine => ({ name: l.line, wind: l.wind, tributaryFt: l.tributary }));
    return shearColumns.rows(shearWithLines(input, lines, tape));
  },
});

const upliftColumns = columnsOf<Uplift>(
  ["tributary width", "ft", (r) => r.tributaryFt],
  ["wind", "plf", (r) => r.windPlf],
  ["dead counted (0.9 D or 0.6 D)", "plf", (r) => r.deadPlf],
  ["net uplift", "plf", (r) => r.netPlf],
  ["level", "", (r) => r.level],
);

const windUplift = familyFunction({
  name: "WIND_UPLIFT",
  summary: "Net wind uplift of the roof at each wall line, after the dead load that may be counted.",
  params: {
    dead: quantity("psf", {
      says: "weight of roof and ceiling that is always there, on the level",
      min: 0,
      max: 200,
      usual: { min: 2, max: 40, ask: "is it what is surely there, in psf?" },
    }),
    tributary: list(
      length("ft", {
        says: "width of roof on the level that a wall line carries",
        above: 0,
        max: 500,
        usual: { min: 1, max: 60, ask: "is it in feet?" },
      }),
      {
        says: "width of roof on the level that each wall line carries, with its overhang: one or a range",
        max: 200,
      },
    ),
  },
  placed: {
    roofOverhang: orElse("roof overhang"),
    windLevel: FRAME_TERMS.windLevel,
    velocityPressure: FRAME_TERMS.velocityPressure,
  },
  named: { ...SITE, ...BUILDING, enclosure: FRAME_TERMS.enclosure },
  returns: upliftColumns.table("a row for each wall line"),
  sources: [
    DIRECTIONAL,
    "Overhangs: ASCE/SEI 7-10 section 27.4.4, 7-16 and 7-22 section 27.3.3; dead load: sections 2.3 and 2.4 (0.9 D or 0.6 D)",
  ],
  assumptions: [...ASSUMPTIONS, "The largest roof suction is taken over the whole tributary width."],
  cautions: [
    WIND_CAUTION,
    "Frame pressures: single connectors in edge zones may be governed by WIND_CLADDING. ASCE 7 sets no least uplift.",
  ],
  example: {
    args: {
      dead: 10,
      tributary: [[20]],
      windLevel: "allowable",
      velocityPressure: 20,
      buildingWidth: 40,
      buildingLength: 60,
      eaveHeight: 10,
      roofSlope: "5 deg",
      asce7Edition: "7-16",
    },
    gives: [[20, 226.8, 120, 106.8, "allowable"]],
    within: 1e-9,
    source: "exact arithmetic: 0.6 x 20 x (0.85 x 0.9 + 0.18) x 20 - 0.6 x 10 x 20",
  },
  refuses: [
    { args: { enclosure: "open" }, says: "open buildings have net pressure coefficients CN of their own" },
    { args: { buildingWidth: 40000 }, says: "the spreadsheet makes such a number of what it takes for a date, 1/2" },
    { args: { roofSlope: "70 deg" }, says: "roofs up to 60 degrees are worked here" },
    {
      args: { roofShape: "hip", buildingWidth: 80 },
      says: "length runs along the ridge, and hips of one slope meet in a ridge",
    },
    { args: { roofSlope: 8 }, says: "it may be degrees, a rise in 12 or a share, and a slope typed as 6:12" },
    { args: { eaveHeight: 1000 }, says: "it must be above 0 ft and at most 500 ft" },
  ],
  notFor:
    "Rafter clips in edge zones and roof panel screws take WIND_CLADDING; overturning of shear walls takes HOLDDOWN_TENSION.",
  run(a, tape) {
    const input = frameInput(a, "frame", undefined, tape);
    const uplift = { ...input, deadPsf: a.dead, tributariesFt: a.tributary, overhangFt: a.roofOverhang };
    return upliftColumns.rows(roofUplift(uplift, tape));
  },
});

export const windFrameFunctions = [windFrame, windBaseShear, windUplift] as const;
