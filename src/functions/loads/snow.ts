import { type Drift, type StepSite, stepDrift } from "../../core/loads/snow-drift.ts";
import { type RoofSnow, snowOnRoof } from "../../core/loads/snow-on-roof.ts";
import { flatRoofSnow } from "../../core/loads/snow-roof.ts";
import { eaveToRidgeFt } from "../../core/wind/building.ts";
import { ifGiven, needed, orElse } from "../basis/term.ts";
import { preliminary } from "../declare/cell-function.ts";
import { columnsOf } from "../declare/columns.ts";
import { optional } from "../declare/param.ts";
import { length, quantity } from "../declare/scalar.ts";
import { familyFunction } from "./family.ts";

const CAUTION = preliminary("snow");

const columns = columnsOf<RoofSnow>(
  ["load", "", (r) => r.load],
  ["snow", "psf", (r) => r.psf],
  ["over", "", (r) => r.over],
);

const loadSnow = familyFunction({
  name: "LOAD_SNOW",
  summary: "Snow load of a roof: flat, sloped, minimum, rain on snow, and the unbalanced loads of a gable or hip.",
  params: {},
  placed: {
    groundSnow: needed("ground snow"),
    roofSlope: needed("roof slope"),
    width: optional(
      length("ft", {
        says: "level width from eave to ridge; gives rain on snow and the unbalanced loads",
        above: 0,
        max: 500,
      }),
      undefined,
      "",
    ),
    roofSurface: orElse("roof surface"),
    snowExposureFactor: orElse("snow exposure factor"),
    thermalFactor: ifGiven("thermal factor"),
  },
  named: {
    roofShape: orElse("roof shape"),
    buildingWidth: ifGiven("building width"),
    riskCategory: orElse("risk category"),
    simpleRafters: orElse("simple rafters"),
    winterWind: ifGiven("winter wind"),
    asce7Edition: orElse("ASCE 7 edition"),
  },
  returns: columns.table(
    "a row for each load, the balanced design load first; in 7-22 at strength level, before at the level of the ground snow map",
  ),
  sources: ["ASCE/SEI 7-10, 7-16, 7-22 sections 7.3, 7.4, 7.6, 7.10 (parts from memory, as the working marks)"],
  cautions: [
    CAUTION,
    "Drifts, sliding snow, valleys and partial loads come on top; LOAD_SNOWDRIFT gives the drift at a step.",
  ],
  example: {
    args: { groundSnow: 25, roofSlope: "0 deg", roofShape: "flat", asce7Edition: "7-16" },
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
  refuses: [
    { args: { asce7Edition: "7-22" }, says: "ASCE/SEI 7-22 Table 7.3-3 goes by the roof's R and the ground snow;" },
    { args: { roofSlope: 8 }, says: "it may be degrees, a rise in 12 or a share, and a slope typed as 6:12" },
    { args: { groundSnow: 2500 }, says: "it must be from 0 to 500 psf" },
  ],
  notFor: "Drifts take LOAD_SNOWDRIFT; valleys, sliding snow, curved roofs and ponding go to an engineer.",
  run: (a, tape) =>
    columns.rows(
      snowOnRoof(
        {
          groundPsf: a.groundSnow,
          ce: a.snowExposureFactor,
          ct: a.thermalFactor,
          category: a.riskCategory,
          winterWind: a.winterWind,
          edition: a.asce7Edition,
          slopeDeg: a.roofSlope,
          roof: a.roofShape,
          surface: a.roofSurface,
          eaveToRidgeFt: a.width ?? eaveToRidgeFt(a.buildingWidth, a.roofShape),
          simpleRafters: a.simpleRafters,
        },
        tape,
      ),
    ),
});

const driftColumns = columnsOf<Drift>(
  ["drift at the wall", "psf", (r) => r.peakPsf],
  ["drift and balanced snow", "psf", (r) => r.totalPsf],
  ["width", "ft", (r) => r.widthFt],
  ["height", "ft", (r) => r.heightFt],
  ["from", "", (r) => r.from],
);

const roofLength = (says: string) =>
  length("ft", { says, above: 0, max: 2000, usual: { min: 4, max: 300, ask: "is it in feet?" } });

const loadSnowDrift = familyFunction({
  name: "LOAD_SNOWDRIFT",
  summary: "Snow drift on a lower roof beside a step or wall.",
  params: {
    step: length("ft", {
      says: "height of the step",
      above: 0,
      max: 200,
      usual: { min: 0.5, max: 40, ask: "is it in feet?" },
    }),
    upper: roofLength("length of the upper roof away from the step"),
    lower: roofLength("length of the lower roof away from the step"),
    balanced: optional(
      quantity("psf", { says: "sloped load ps of the lower roof, the third row of LOAD_SNOW", min: 0, max: 500 }),
      undefined,
      "a flat lower roof: ps = pf",
    ),
  },
  placed: { groundSnow: needed("ground snow") },
  named: {
    snowExposureFactor: orElse("snow exposure factor"),
    thermalFactor: ifGiven("thermal factor"),
    riskCategory: orElse("risk category"),
    winterWind: ifGiven("winter wind"),
    asce7Edition: orElse("ASCE 7 edition"),
  },
  returns: driftColumns.table(
    "one row: drift at the wall, drift with balanced snow, width of the drift, its height, side it comes from; at the level of the edition's snow",
  ),
  oneRow: true,
  sources: ["ASCE/SEI 7-10, 7-16, 7-22 section 7.7, Eq. 7.7-1; 7-22 drift height from memory"],
  cautions: [
    CAUTION,
    "The drift falls to nothing over its width. Intersecting drifts and parapets are cases of their own.",
  ],
  example: {
    args: { step: 4, upper: 40, lower: 40, groundSnow: 25, asce7Edition: "7-16" },
    gives: [[35.8, 53.3, 8.31, 2.08, "leeward"]],
    within: 0.05,
    source:
      "Public engineering-firm article, one roof step: 7-16, lu 40 ft, prints hd 2.08 ft, pd 35.8 psf, total 53.3 psf; width 4 hd",
  },
  refuses: [
    { args: { asce7Edition: "7-22" }, says: "ASCE/SEI 7-22 Table 7.3-3 goes by the roof's R and the ground snow;" },
    {
      args: { asce7Edition: "7-22", thermalFactor: 1.3 },
      says: "the drift height of ASCE/SEI 7-22 Eq. 7.6-1 goes by W2 of its map",
    },
    { args: { step: 400 }, says: "it must be above 0 ft and at most 200 ft" },
  ],
  notFor: "Drifts behind rooftop units, crossing drifts and roofs that slope toward the step go to an engineer.",
  run(a, tape) {
    const site = {
      groundPsf: a.groundSnow,
      ce: a.snowExposureFactor,
      ct: a.thermalFactor,
      category: a.riskCategory,
      winterWind: a.winterWind,
      edition: a.asce7Edition,
    };
    const step: StepSite = {
      ...site,
      balancedPsf: a.balanced ?? flatRoofSnow(site, tape),
      stepFt: a.step,
      upperFt: a.upper,
      lowerFt: a.lower,
    };
    const rows = driftColumns.rows([stepDrift(step, tape)]);
    const cells = "at the wall psf, with balanced psf, width ft, height ft, from";
    tape?.step("drift", cells, rows, "psf", `ASCE/SEI ${a.asce7Edition} 7.7.1`);
    return rows;
  },
});

export const snowFunctions = [loadSnow, loadSnowDrift] as const;
