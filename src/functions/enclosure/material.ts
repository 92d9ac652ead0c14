import { layerPerm, layerR } from "../../core/enclosure/layers/r-value.ts";
import { preliminary, quantityOf } from "../declare/cell-function.ts";
import { optional } from "../declare/param.ts";
import { humidity, length } from "../declare/scalar.ts";
import { text } from "../declare/word.ts";
import { familyFunction } from "./family.ts";
import { ISO_6946, MATERIAL_DATA, R_UNIT, WOOD_K } from "./heat.ts";
import { readLayer } from "./read/layer.ts";

const thickness = (says: string) =>
  optional(
    length("in", {
      says,
      min: 0.001,
      max: 120,
      usual: { min: 0.001, max: 12, ask: "is it an R-value, or in millimeters?" },
    }),
    undefined,
    "",
  );

const rLayer = familyFunction({
  name: "R_LAYER",
  summary: "R-value of one layer of a generic material, or of an own conductivity.",
  params: {
    material: text({ says: "material, such as gypsum board, veneer panel, mineral wool board, OSB" }),
    thickness: thickness("thickness; blank for a membrane"),
    R: optional(
      text({ says: "own figure instead of the built-in: R 4.2/in, k 0.25, 0.036 W/mK, or R of the layer" }),
      undefined,
      "the built-in figure of the material",
    ),
  },
  returns: quantityOf(R_UNIT, "R of the layer, without air films"),
  sources: [ISO_6946, WOOD_K, MATERIAL_DATA],
  cautions: [preliminary("heat")],
  example: {
    args: { material: "extruded sample", thickness: "150 mm", R: "0.035 W/mK" },
    gives: 24.36,
    within: 0.03,
    source:
      "ASHRAE Handbook Fundamentals 2021 (SI) ch. 27 Example 1: 0.150 m of k 0.035 has R 4.29 m2 K/W, here in h ft2 F/Btu (x 5.678263)",
  },
  refuses: [
    { args: { R: null }, says: "it is none of the built-in materials and its row gives no R or conductivity" },
    { args: { R: "-1" }, says: "it is an R of the layer (0 or more), an R per inch or a conductivity above 0" },
    { args: { thickness: null }, says: "its R comes from thickness and conductivity" },
    { args: { thickness: 240 }, says: "it must be from 0.001 to 120 in" },
  ],
  notFor: "Layers beside framing, where heat goes two ways, take U_FACTOR.",
  run: ({ material, thickness: thicknessIn, R }, tape) =>
    layerR(readLayer({ row: 1, material, thicknessIn, resistance: R }, tape), tape),
});

const permLayer = familyFunction({
  name: "PERM_LAYER",
  summary: "Vapor permeance of one layer of a generic material; wood panels depend on the humidity in them.",
  params: {
    material: text({ says: "material, such as veneer panel, plywood, OSB, gypsum board" }),
    thickness: thickness("thickness; blank for a membrane"),
    humidity: optional(
      humidity({ says: "relative humidity in the layer: 25 is a dry cup, 75 a wet cup" }),
      25,
      "25 %, the mean of a dry-cup test, by which vapor retarders are classed",
    ),
  },
  returns: quantityOf("perm", "permeance of the whole layer"),
  sources: ["sd = mu d, W = delta_0 / sd with delta_0 = 2e-10 kg/(m s Pa) (ISO 13788:2012)", MATERIAL_DATA],
  cautions: [preliminary("moisture")],
  example: {
    args: { material: "plywood", thickness: 1, humidity: 50 },
    gives: 0.6881,
    within: 0.0005,
    source:
      "a US national laboratory's open data set, plywood, mu 200 at 50 % RH: 0.6881 perm-inch by the perm of 57.2135 ng/(s m2 Pa)",
  },
  refuses: [
    { args: { material: "ceramic tile", thickness: 0.25 }, says: "it is kept for its R only" },
    { args: { material: "6" }, says: "it is none of the built-in materials and its row gives no R or conductivity" },
    { args: { thickness: null }, says: "its R comes from thickness and conductivity" },
    { args: { humidity: 150 }, says: "it must be from 0 to 100 %" },
  ],
  notFor: "A membrane whose permeance its maker tested takes that figure: give it in the layer's row.",
  run: ({ material, thickness: thicknessIn, humidity: percent }, tape) =>
    layerPerm(readLayer({ row: 1, material, thicknessIn }, tape), percent / 100, tape),
});

export const enclosureMaterialFunctions = [rLayer, permLayer] as const;
