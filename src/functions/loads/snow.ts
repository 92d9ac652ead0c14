import { plain } from "../../core/kit/refusal.ts";
import { stepDrift } from "../../core/loads/snow-drift.ts";
import { balancedSnow } from "../../core/loads/snow-roof.ts";
import { unbalancedSnow } from "../../core/loads/snow-unbalanced.ts";
import { RISK_CATEGORIES, ROOF_SURFACES } from "../../core/loads/tables/snow.ts";
import { cellFunction, preliminary, tableOf } from "../declare/cell-function.ts";
import { optional } from "../declare/param.ts";
import { choice, flag, length, number, quantity, slope } from "../declare/scalar.ts";
import { edition } from "../wind/params.ts";

const CAUTION = preliminary("snow");

const ground = quantity("psf", {
  says: "ground snow load; in 7-22 at strength level from the map of the risk category",
  min: 0,
  max: 500,
  usual: { min: 0, max: 300, ask: "is it the ground snow load in psf?" },
});
const category = optional(
  choice(RISK_CATEGORIES, { says: "risk category", also: { "1": "I", "2": "II", "3": "III", "4": "IV" } }),
  "II",
  "risk category II",
);
const winterWind = optional(
  number({ says: "winter wind parameter W2 of the 7-22 map, for drifts", min: 0.05, max: 1 }),
  undefined,
  "",
);

const loadSnow = cellFunction({
  name: "LOAD_SNOW",
  family: "Loads",
  summary: "Snow load of a roof: flat, sloped, minimum, rain on snow, and the unbalanced loads of a gable.",
  params: {
    ground,
    slope: slope({
      says: "slope of the roof",
      max: 70,
      source: "ASCE/SEI 7-16 section 7.4: steeper roofs hold no snow",
    }),
    width: optional(
      length("ft", {
        says: "level width from eave to ridge; gives rain on snow and the unbalanced loads",
        above: 0,
        max: 500,
      }),
      undefined,
      "no rain on snow and no unbalanced loads",
    ),
    exposureFactor: optional(number({ says: "exposure factor Ce", min: 0.7, max: 1.3 }), 1, "exposure factor Ce 1.0"),
    thermalFactor: optional(
      number({ says: "thermal factor Ct: 1.0 heated, 1.1 cold ventilated roof, 1.2 unheated", min: 0.85, max: 1.3 }),
      1,
      "thermal factor Ct 1.0",
    ),
    surface: optional(
      choice(ROOF_SURFACES, {
        says: "roof surface",
        means: {
          other: "snow may be held",
          slippery: "unobstructed and slippery, with the insulation that section 7.4 asks for",
        },
      }),
      "other",
      "surface that may hold the snow",
    ),
    category,
    simpleRafters: optional(
      flag({ says: "TRUE where simple rafters or trusses span from eave to ridge" }),
      true,
      "simple members from eave to ridge",
    ),
    winterWind,
    edition,
  },
  returns: tableOf("a row for each load: the balanced design load first", [
    ["load", ""],
    ["snow", "psf"],
    ["over", ""],
  ]),
  sources: ["ASCE/SEI 7-10, 7-16, 7-22 sections 7.3, 7.4, 7.6, 7.10 (parts from memory, as the working marks)"],
  cautions: [
    CAUTION,
    "Drifts, sliding snow, valleys and partial loads come on top; LOAD_SNOWDRIFT gives the drift at a step.",
  ],
  example: {
    args: { ground: 25, slope: "0 deg", edition: "7-16" },
    gives: [
      ["balanced, design", 20, "whole roof"],
      ["flat roof pf", 17.5, "whole roof"],
      ["sloped ps", 17.5, "whole roof"],
      ["minimum pm", 20, "whole roof"],
      ["rain on snow", 0, "whole roof"],
    ],
    within: 0.005,
    source:
      "Public engineering-firm article: 7-16, pg 25 psf, factors 1, prints pf 17.5 psf; pm is 20 psf by section 7.3.4",
  },
  run(a, tape) {
    const site = {
      groundPsf: a.ground,
      ce: a.exposureFactor,
      ct: a.thermalFactor,
      category: a.category,
      winterWind: a.winterWind,
      edition: a.edition,
    };
    const b = balancedSnow(site, a.slope, a.surface, a.width, tape);
    const whole = "whole roof";
    const rows: (readonly [string, number, string])[] = [
      ["balanced, design", b.designPsf, whole],
      ["flat roof pf", b.flatPsf, whole],
      ["sloped ps", b.slopedPsf, whole],
      ["minimum pm", b.leastPsf, whole],
      ["rain on snow", b.rainPsf, whole],
    ];
    if (a.width !== undefined) {
      const parts = unbalancedSnow(site, b.slopedPsf, a.slope, a.width, a.simpleRafters, tape);
      for (const { side, psf, widthFt } of parts) {
        const over = widthFt === undefined ? "whole slope" : `${plain(Number(widthFt.toFixed(2)))} ft from the ridge`;
        rows.push([`unbalanced, ${side}`, psf, over]);
      }
    }
    tape?.step("snow", "load, psf, over", rows, "psf", `ASCE/SEI ${a.edition} chapter 7`);
    return rows;
  },
});

const loadSnowDrift = cellFunction({
  name: "LOAD_SNOWDRIFT",
  family: "Loads",
  summary: "Snow drift on a lower roof beside a step or wall.",
  params: {
    ground,
    balanced: quantity("psf", { says: "balanced snow load of the lower roof, from LOAD_SNOW", min: 0, max: 500 }),
    step: length("ft", { says: "height of the step", above: 0, max: 200 }),
    upper: length("ft", { says: "length of the upper roof away from the step", above: 0, max: 2000 }),
    lower: length("ft", { says: "length of the lower roof away from the step", above: 0, max: 2000 }),
    category,
    winterWind,
    edition,
  },
  returns: tableOf(
    "one row: drift at the wall, drift with balanced snow, width of the drift, its height, side it comes from",
    [
      ["drift at the wall", "psf"],
      ["drift and balanced snow", "psf"],
      ["width", "ft"],
      ["height", "ft"],
      ["from", ""],
    ],
  ),
  sources: ["ASCE/SEI 7-10, 7-16, 7-22 section 7.7, Eq. 7.7-1; 7-22 drift height from memory"],
  cautions: [
    CAUTION,
    "The drift falls to nothing over its width. Intersecting drifts and parapets are cases of their own.",
  ],
  example: {
    args: { ground: 25, balanced: 17.5, step: 4, upper: 40, lower: 40, edition: "7-16" },
    gives: [[35.8, 53.3, 8.31, 2.08, "leeward"]],
    within: 0.05,
    source:
      "Public engineering-firm article, one roof step: 7-16, lu 40 ft, prints hd 2.08 ft, pd 35.8 psf, total 53.3 psf; width 4 hd",
  },
  run(a, tape) {
    const d = stepDrift(
      {
        groundPsf: a.ground,
        balancedPsf: a.balanced,
        stepFt: a.step,
        upperFt: a.upper,
        lowerFt: a.lower,
        category: a.category,
        winterWind: a.winterWind,
        edition: a.edition,
      },
      tape,
    );
    const rows = [[d.peakPsf, d.totalPsf, d.widthFt, d.heightFt, d.from]];
    tape?.step(
      "drift",
      "at the wall psf, with balanced psf, width ft, height ft, from",
      rows,
      "psf",
      `ASCE/SEI ${a.edition} 7.7.1`,
    );
    return rows;
  },
});

export const snowFunctions = [loadSnow, loadSnowDrift] as const;
