import { baseShear, shearTable, wallLineShear } from "../../core/wind/base-shear.ts";
import { ROOF_SHAPES } from "../../core/wind/building.ts";
import { KD_BUILDINGS } from "../../core/wind/directionality.ts";
import type { FrameInput } from "../../core/wind/frame.ts";
import { directionalFrame, frameTable } from "../../core/wind/frame-directional.ts";
import { envelopeFrame } from "../../core/wind/frame-envelope.ts";
import { roofUplift, upliftTable } from "../../core/wind/uplift.ts";
import { type ArgumentsOf, cellFunction, tableOf } from "../declare/cell-function.ts";
import { optional } from "../declare/param.ts";
import { choice, length, quantity, text } from "../declare/scalar.ts";
import { list, table } from "../declare/table.ts";
import { edition, enclosure, exposure, level, plan, q, roofSlope, WIND_CAUTION } from "./params.ts";

const building = {
  width: plan("plan dimension across the ridge"),
  length: plan("plan dimension along the ridge"),
  eave: length("ft", { says: "height of the eave above ground", above: 0, max: 200 }),
  slope: roofSlope,
};

const options = {
  roof: optional(
    choice(ROOF_SHAPES, { says: "shape of the roof", also: { shed: "monoslope" } }),
    "gable",
    "gable roof",
  ),
  exposure: optional(exposure, undefined, "q at the mean roof height over the whole windward wall"),
  enclosure,
  level,
  edition,
};

type FrameArguments = ArgumentsOf<{ q: typeof q } & typeof building & typeof options>;

function frameInput(a: FrameArguments): FrameInput {
  return {
    qPsf: a.q,
    kd: KD_BUILDINGS,
    kzt: 1,
    roofAreaFt2: undefined,
    widthFt: a.width,
    lengthFt: a.length,
    eaveFt: a.eave,
    slopeDeg: a.slope,
    roof: a.roof,
    enclosure: a.enclosure,
    exposure: a.exposure,
    level: a.level,
    edition: a.edition,
  };
}

const DIRECTIONAL = "ASCE/SEI 7-10 section 27.4, Fig. 27.4-1; 7-16 and 7-22 section 27.3, Fig. 27.3-1";
const ASSUMPTIONS = ["A rigid, regular, rectangular building: gust-effect factor 0.85."] as const;
const LEAST =
  "The frame must also take the least load, 16 psf on walls with 8 psf on the roof in projection: WIND_BASESHEAR applies it.";

const windFrame = cellFunction({
  name: "WIND_FRAME",
  family: "Wind",
  summary:
    "Net wind pressures on the main frame by surface, for wind across and along the ridge, with both internal pressures.",
  params: {
    q,
    ...building,
    method: optional(
      choice(["directional", "envelope"], {
        says: "procedure",
        also: { "low-rise": "envelope" },
        means: {
          directional: "by surface and wind direction, any height",
          envelope: "low-rise buildings, load cases A and B with end zones",
        },
      }),
      "directional",
      "directional procedure",
    ),
    ...options,
  },
  returns: tableOf(
    "a row for each surface: wind direction or load case, surface, part, coefficient, net pressures, above 0 toward the surface",
    [
      ["wind", ""],
      ["surface", ""],
      ["part", ""],
      ["coefficient", ""],
      ["net with internal pressure", "psf"],
      ["net with internal suction", "psf"],
    ],
  ),
  sources: [
    DIRECTIONAL,
    "ASCE/SEI 7-10 section 28.4, Fig. 28.4-1; 7-16 and 7-22 section 28.3, Fig. 28.3-1 (coefficients from memory)",
  ],
  assumptions: ASSUMPTIONS,
  cautions: [
    WIND_CAUTION,
    LEAST,
    "Torsion and wind on both axes at once are load cases of their own; so are parapets and overhangs.",
  ],
  example: {
    args: { q: 78.83, width: 100, length: 100, eave: 160, slope: "0 deg", roof: "flat", edition: "7-16" },
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
  run(a, tape) {
    const input = frameInput(a);
    return frameTable(a.method === "envelope" ? envelopeFrame(input, tape) : directionalFrame(input, tape));
  },
});

const wallLines = table(
  {
    line: text({ says: "name of the wall line", heads: ["wall line", "name", "wall"] }),
    wind: choice(["across ridge", "along ridge"], {
      says: "wind that the line resists",
      also: { across: "across ridge", along: "along ridge" },
    }),
    tributary: length("ft", {
      says: "width of the face that the line carries",
      above: 0,
      max: 5000,
      heads: ["tributary width", "width"],
    }),
  },
  { says: "wall lines: name | across ridge or along ridge | width of the face that the line carries", maxRows: 200 },
);

const windBaseShear = cellFunction({
  name: "WIND_BASESHEAR",
  family: "Wind",
  summary: "Total sideways wind force on a building across and along the ridge, not less than the least load.",
  params: { q, ...building, ...options, lines: optional(wallLines, [], "no wall lines") },
  returns: tableOf("a row for each wind direction, then a row for each wall line", [
    ["wind", ""],
    ["from pressures", "lb"],
    ["least", "lb"],
    ["design", "lb"],
    ["design per foot of the face", "plf"],
  ]),
  sources: [DIRECTIONAL, "Least load: ASCE/SEI 7-10 section 27.4.7, 7-16 and 7-22 section 27.1.5"],
  assumptions: [...ASSUMPTIONS, "The whole height counts, the part that goes straight into the foundation with it."],
  cautions: [WIND_CAUTION, "Torsion and wind on both axes at once may load a single wall line more."],
  example: {
    args: { q: 10, width: 20, length: 40, eave: 10, slope: "0 deg", roof: "flat", edition: "7-16" },
    gives: [
      ["across ridge", 4420, 6400, 6400, 160],
      ["along ridge", 1870, 3200, 3200, 160],
    ],
    within: 0.01,
    source: "exact arithmetic: 10 x 0.85 x (0.8 + 0.5) x 400 and (0.8 + 0.3) x 200; least 16 x 400 and 16 x 200",
  },
  run(a, tape) {
    const lines = a.lines.map((l) => ({ name: l.line, wind: l.wind, tributaryFt: l.tributary }));
    return shearTable(wallLineShear(baseShear(frameInput(a), tape), lines, tape));
  },
});

const windUplift = cellFunction({
  name: "WIND_UPLIFT",
  family: "Wind",
  summary: "Net wind uplift of the roof at each wall line, after the dead load that may be counted.",
  params: {
    q,
    ...building,
    dead: quantity("psf", {
      says: "weight of roof and ceiling that is always there, on the level",
      min: 0,
      max: 200,
      usual: { min: 0, max: 40, ask: "only weight that is surely there may be counted; is it so heavy?" },
    }),
    tributary: list(length("ft", { says: "width of roof on the level that a wall line carries", above: 0, max: 500 }), {
      says: "width of roof on the level that each wall line carries, with its overhang: one or a range",
      max: 200,
    }),
    overhang: optional(
      length("ft", { says: "overhang beyond the wall line, level", min: 0, max: 20 }),
      0,
      "no overhang",
    ),
    ...options,
  },
  returns: tableOf("a row for each wall line", [
    ["tributary width", "ft"],
    ["wind", "plf"],
    ["dead counted", "plf"],
    ["net uplift", "plf"],
  ]),
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
      q: 20,
      width: 40,
      length: 60,
      eave: 10,
      slope: "5 deg",
      dead: 10,
      tributary: [[20]],
      level: "allowable",
      edition: "7-16",
    },
    gives: [[20, 226.8, 120, 106.8]],
    within: 1e-9,
    source: "exact arithmetic: 0.6 x 20 x (0.85 x 0.9 + 0.18) x 20 - 0.6 x 10 x 20",
  },
  run: (a, tape) =>
    upliftTable(
      roofUplift({ ...frameInput(a), deadPsf: a.dead, tributariesFt: a.tributary, overhangFt: a.overhang }, tape),
    ),
});

export const windFrameFunctions = [windFrame, windBaseShear, windUplift] as const;
