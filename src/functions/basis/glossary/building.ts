import { ROOF_SHAPES } from "../../../core/wind/building.ts";
import { length, quantity, slope, whole } from "../../declare/scalar.ts";
import { choice } from "../../declare/word.ts";
import { defaulted, entry } from "./entry.ts";

const PLAN = { above: 0, max: 5000 } as const;
const WIDTH = { ...PLAN, usual: { min: 8, max: 200, ask: "is it in feet?" } } as const;
const LENGTH = { ...PLAN, usual: { min: 8, max: 400, ask: "is it in feet?" } } as const;

/** Building. */
export const BUILDING_TERMS = {
  "building width": entry(length("ft", { says: "plan dimension across the ridge", ...WIDTH }), [
    "width across the ridge",
  ]),
  "building length": entry(length("ft", { says: "plan dimension along the ridge", ...LENGTH }), [
    "length along the ridge",
  ]),
  "eave height": entry(
    length("ft", {
      says: "height of the eave above the ground",
      above: 0,
      max: 500,
      usual: { min: 6, max: 60, ask: "is it in feet?" },
    }),
    ["height of the eave"],
  ),
  "roof shape": defaulted(
    choice(ROOF_SHAPES, { says: "shape of the roof", also: { shed: "monoslope", "single slope": "monoslope" } }),
    ["roof form"],
    "gable",
    "roof shape {}",
  ),
  "roof slope": entry(slope({ says: "slope of the roof", max: 80 }), ["roof pitch", "pitch", "slope"]),
  "roof overhang": defaulted(
    length("ft", {
      says: "overhang of the roof beyond the wall",
      min: 0,
      max: 20,
      usual: { min: 0, max: 6, ask: "is it in feet?" },
    }),
    ["eave overhang", "overhang"],
    0,
    "roof overhang {}",
  ),
  stories: defaulted(
    whole({ says: "stories above grade", min: 1, max: 4 }),
    ["storeys", "number of stories"],
    1,
    "stories: {}",
  ),
  "house volume": entry(
    quantity("ft3", {
      says: "heated volume",
      above: 0,
      max: 1e7,
      usual: { min: 1000, max: 500_000, ask: "is it in cubic feet?" },
    }),
    ["heated volume"],
  ),
} as const;
