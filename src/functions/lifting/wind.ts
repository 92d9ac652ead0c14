import { type BraceForces, liftBrace } from "../../core/lifting/brace.ts";
import { type LiftWind, liftWind } from "../../core/lifting/wind.ts";
import { ifGiven, needed, orElse } from "../basis/term.ts";
import { columnsOf } from "../declare/columns.ts";
import { optional } from "../declare/param.ts";
import { length, quantity, whole } from "../declare/scalar.ts";
import { spill } from "../declare/spill.ts";
import { familyFunction } from "./family.ts";
import { LIFT_CAUTIONS } from "./words.ts";

const windColumns = columnsOf<LiftWind>(
  ["pull", "lb", (w) => w.pullLb],
  ["lean", "deg", (w) => w.leanDeg],
  ["stop at", "mph", (w) => w.stopAtMph],
  ["rule", "", (w) => w.rule],
);

export const windOnLift = familyFunction({
  name: "LIFT_WIND",
  summary: "Sideways pull of the wind on a hanging panel, its lean, and the wind to stop lifting at.",
  params: {
    area: quantity("ft2", {
      says: "area of the panel's face",
      above: 0,
      max: 20_000,
      usual: { min: 8, max: 1500, ask: "is it in square feet?" },
    }),
    weight: quantity("lb", {
      says: "static weight of the panel",
      above: 0,
      max: 500_000,
      usual: { min: 50, max: 40_000, ask: "is it in pounds?" },
    }),
  },
  placed: { liftWindLimit: orElse("lift wind limit") },
  named: { greatestPull: ifGiven("greatest pull", "no greatest pull: only the limit given or published holds") },
  returns: windColumns.table("pull and lean at the wind to stop at, that wind, and the limit that rules"),
  oneRow: true,
  sources: [
    "US Army Corps of Engineers EM 385-1-1, 16.I.01: above 20 mph crane work stops and is looked at again",
    "0.00256 V2 psf: ASCE/SEI 7 Eq. 26.10-1 without factors, 0.613 v2 N/m2 in a trade journal; drag coefficient 1.2 from memory",
  ],
  assumptions: [
    "The wind is a gust read at the tip of the boom, on the panel's face broadside.",
    "Construction rules set no one wind limit (OSHA letter of 1985); manuals' drag coefficients run from 1.2 to 2.4.",
  ],
  cautions: [...LIFT_CAUTIONS, "The crane maker's wind limit for large sails rules where it is lower."],
  example: {
    args: { area: 200, weight: 2000, liftWindLimit: 20 },
    gives: [[245.76, 7.0056, 20, "published limit"]],
    within: 5e-4,
    source: "exact arithmetic: 0.00256 x 20^2 x 200 x 1.2; atan(245.76 / 2000)",
  },
  refuses: [
    { args: { area: 200000 }, says: "it must be above 0 ft2 and at most 20000 ft2" },
    { args: { area: null }, says: "Area is missing" },
  ],
  notFor: "Gusty sites, building corners and lifts above the crane maker's wind limit are stopped, not calculated.",
  run(a, tape) {
    const wind = liftWind(a.area, a.weight, a.liftWindLimit, a.greatestPull, tape);
    return spill(windColumns, [wind], "wind", "pull, lean, stop at, rule", tape);
  },
});

const braceColumns = columnsOf<BraceForces>(
  ["wind", "lb", (f) => f.windLb],
  ["each brace", "lb", (f) => f.eachBraceLb],
  ["foot", "lb", (f) => f.footLb],
  ["uplift", "lb", (f) => f.upliftLb],
);

export const brace = familyFunction({
  name: "LIFT_BRACE",
  summary: "Wind on a wall that stands on braces before floors and roof hold it: force on brace, foot and anchor.",
  params: {
    length: length("ft", { says: "length of the wall", min: 1, max: 300 }),
    height: length("ft", {
      says: "height of the wall, its mean under a slope",
      min: 2,
      max: 60,
      usual: { min: 4, max: 30, ask: "is it in feet?" },
    }),
    braces: whole({
      says: "braces along the wall",
      min: 1,
      max: 200,
      usual: { min: 2, max: 200, ask: "does one brace hold it?" },
    }),
    attach: length("ft", { says: "height at which the braces hold the wall", min: 1, max: 60 }),
    angle: optional(
      quantity("deg", { says: "angle of the braces from the level", min: 15, max: 75 }),
      45,
      "braces at {} deg from the level",
    ),
  },
  placed: { erectionWind: needed("erection wind") },
  named: { exposure: orElse("exposure", "C", "exposure {}: open terrain") },
  returns: braceColumns.table(
    "wind on the wall, force along each brace, level force at the whole foot, upward force at the anchor of each brace",
  ),
  oneRow: true,
  sources: [
    "ASCE/SEI 7 29.3, solid freestanding wall, case A; Figure 29.3-1 from memory",
    "Moments about the foot of the wall",
  ],
  assumptions: [
    "Flat ground at sea level; the whole face counts, openings too; the wall's own weight is not counted; braces alike, held at both ends.",
  ],
  cautions: [
    ...LIFT_CAUTIONS,
    "Brace, its ends, the anchor in the slab and the wall's foot each carry their force, either way, at strength level.",
  ],
  example: {
    args: { length: 40, height: 10, braces: 5, attach: 8, erectionWind: 60, exposure: "C" },
    gives: [[3060.4, 595.1, 956.4, 420.8]],
    within: 0.05,
    source:
      "exact arithmetic on ASCE/SEI 7 29.3 with Kz 0.8512, Kd 0.85, G 0.85, Cf 1.35 from memory, wind at 0.55 of the height",
  },
  refuses: [
    { args: { height: 3 }, says: "the wall is 3 ft high" },
    { args: { height: 1 }, says: "it must be from 2 to 60 ft" },
  ],
  notFor: "Walls above 20 ft, braces on soft ground and tilt-up concrete go to an engineer.",
  run(a, tape) {
    const wall = { lengthFt: a.length, heightFt: a.height, braces: a.braces, attachFt: a.attach, angleDeg: a.angle };
    const forces = liftBrace(wall, a.erectionWind, a.exposure, tape);
    return spill(braceColumns, [forces], "forces", "wind, each brace, foot, uplift", tape);
  },
});
