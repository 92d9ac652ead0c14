import { BadInput } from "../../core/kit/refusal.ts";
import { woodWeightPcf } from "../../core/wood/moisture/moist-weight.ts";
import { equilibriumMoisturePct } from "../../core/wood/moisture/moisture.ts";
import { SHRINK_DIRECTIONS, woodShrinkIn } from "../../core/wood/moisture/shrink.ts";
import { LUMBER_SHRINKAGE, SHRINKAGE, SHRINKAGE_SOURCE, type Shrinkage } from "../../core/wood/tables/shrinkage.ts";
import { preliminary, quantityOf } from "../declare/cell-function.ts";
import { optional } from "../declare/param.ts";
import { humidity, length, number, temperature } from "../declare/scalar.ts";
import { choice, text } from "../declare/word.ts";
import { familyFunction } from "./family.ts";

const moistureContent = (says: string) =>
  number({
    says: `${says}, percent of the ovendry mass`,
    min: 0,
    max: 100,
    usual: { min: 3, max: 40, ask: "is it in percent?" },
  });

const woodMoisture = familyFunction({
  name: "WOOD_MOISTURE",
  summary: "Moisture content that wood comes to in air of a temperature and humidity.",
  params: {
    temperature: temperature({
      says: "air temperature",
      min: 30,
      max: 200,
      source: "USDA FPL Wood Handbook GTR-190 Table 4-2",
    }),
    humidity: humidity({
      says: "relative humidity of the air",
      min: 5,
      max: 95,
      source: "USDA FPL Wood Handbook GTR-190 Table 4-2",
    }),
  },
  returns: quantityOf("%", "moisture content, percent of the ovendry mass"),
  sources: ["USDA FPL Wood Handbook GTR-190 (2010) eq. 4-5 and Table 4-2"],
  assumptions: ["Air that does not change for long enough: thick pieces take months."],
  cautions: [preliminary("moisture")],
  example: {
    args: { temperature: 70, humidity: 50 },
    gives: 9.2,
    within: 0.05,
    source: "USDA FPL Wood Handbook GTR-190 Table 4-2: 70 F, 50 % is 9.2 %",
  },
  refuses: [
    { args: { humidity: 100 }, says: "it must be from 5 to 95 % (USDA FPL Wood Handbook GTR-190 Table 4-2)" },
    { args: { humidity: null }, says: "Humidity is missing" },
  ],
  notFor: "Wood that is rained on, built in wet or sealed in a wall takes DEW_WOOD or a meter, not the air's balance.",
  run: (a, tape) => equilibriumMoisturePct(a.temperature, a.humidity, tape),
});

const woodWeight = familyFunction({
  name: "WOOD_WEIGHT",
  summary: "Weight of wood in pcf from its specific gravity and moisture content.",
  params: {
    gravity: number({
      says: "specific gravity, on ovendry mass and volume",
      min: 0.1,
      max: 1.2,
      usual: { min: 0.3, max: 0.75, ask: "is it a specific gravity, such as 0.50?" },
    }),
    moisture: optional(
      number({ says: "moisture content, percent of the ovendry mass", min: 0, max: 30, source: "fiber saturation" }),
      12,
      "moisture content {} %",
    ),
  },
  returns: quantityOf("pcf", "weight"),
  sources: ["NDS Supplement 3.1.3"],
  cautions: [preliminary("wood")],
  example: {
    args: { gravity: 0.5, moisture: 15 },
    gives: 33.6,
    within: 0.05,
    source: "AWC Wood Structural Design Data (1992): Douglas-fir-larch, 0.50 at 15 %, 33.6 pcf",
  },
  refuses: [
    { args: { gravity: 6 }, says: "it must be from 0.1 to 1.2" },
    { args: { gravity: null }, says: "Gravity is missing" },
  ],
  notFor: "Panels and laminated products are glued and pressed: take the weight of their report.",
  run: (a, tape) => woodWeightPcf(a.gravity, a.moisture, tape),
});

/** @throws BadInput for a wood that the table does not list */
function readWood(name: string): Shrinkage {
  const word = name.trim().toLowerCase();
  const found = SHRINKAGE.find((s) => s.wood.toLowerCase() === word || s.also.includes(word));
  if (found !== undefined) return found;
  throw new BadInput(
    `The wood "${name}" is not in the table`,
    `shrinkage is kept for ${SHRINKAGE.length} woods (${SHRINKAGE_SOURCE})`,
    `Use one of: ${SHRINKAGE.map((s) => s.wood).join(", ")}`,
  );
}

const woodShrink = familyFunction({
  name: "WOOD_SHRINK",
  summary: "Change of a size of wood as its moisture content changes, below 0 where it shrinks.",
  params: {
    size: length("in", {
      says: "size at the first moisture content",
      above: 0,
      max: 12_000,
      usual: { min: 0.25, max: 600, ask: "is it in inches?" },
    }),
    wood: text({ says: "wood, such as Douglas-fir, southern pine, spruce; thickness and width of lumber go by any" }),
    from: moistureContent("moisture content at first"),
    to: moistureContent("moisture content after"),
    direction: optional(
      choice(SHRINK_DIRECTIONS, {
        says: "direction of the size",
        means: {
          tangential: "across the grain along the rings, the largest",
          radial: "across the grain and the rings",
          thickness: "thickness of lumber of most species",
          width: "width of lumber of most species",
          along: "along the grain",
        },
      }),
      "tangential",
      "{}, the largest",
    ),
  },
  returns: quantityOf("in", "change of the size, below 0 where it shrinks"),
  sources: [SHRINKAGE_SOURCE, LUMBER_SHRINKAGE.clause, "Along the grain 0.1 to 0.2 % from green to ovendry"],
  cautions: [preliminary("wood")],
  example: {
    args: { size: 100, wood: "Douglas-fir", from: 30, to: 15, direction: "width" },
    gives: -2.8,
    within: 0.05,
    source: "USDA FPL Research Paper FPL-RP-489: lumber shrinks 2.80 % in width from green to 15 %",
  },
  refuses: [
    { args: { from: 3 }, says: "thickness and width of lumber are known from 8 to 19 %, and green" },
    { args: { wood: "6" }, says: "shrinkage is kept for 18 woods (USDA FPL Wood Handbook GTR-190 Table 4-3)" },
    { args: { to: 180 }, says: "it must be from 0 to 100" },
  ],
  notFor: "Panels and laminated lumber move less and otherwise than sawn wood: see the maker's report.",
  run: (a, tape) => woodShrinkIn(a.size, readWood(a.wood), a.from, a.to, a.direction, tape),
});

export const woodMoistureFunctions = [woodMoisture, woodWeight, woodShrink] as const;
