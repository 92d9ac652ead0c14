import { length, number, quantity, share } from "../../declare/scalar.ts";
import { defaulted, entry } from "./entry.ts";

/** Lifting and hauling. */
export const LIFTING_TERMS = {
  "sling impact factor": defaulted(
    number({ says: "factor for the jerk of the hoist", min: 1, max: 3 }),
    ["dynamic factor", "hoist factor", "impact factor"],
    1.25,
    "sling impact factor {}: common practice, no source",
  ),
  "wet allowance": defaulted(
    share({ says: "weight of rain and damp as a share of the wall's own weight", max: 0.5 }),
    ["added weight of rain"],
    0,
    "wet allowance {}",
  ),
  "rigging weight": entry(
    quantity("lb", {
      says: "weight of hook block, slings and spreader",
      min: 0,
      max: 50_000,
      usual: { min: 10, max: 20_000, ask: "is it in pounds?" },
    }),
    ["hook and rigging"],
  ),
  "crane limit": defaulted(
    share({ says: "greatest share of the chart that the lift plan allows", above: 0 }),
    ["greatest share of the chart"],
    0.75,
    "lifts up to {} of the chart",
  ),
  "lift wind limit": defaulted(
    quantity("mph", {
      says: "gust at the boom tip at which lifting stops",
      above: 0,
      max: 60,
      usual: { min: 10, max: 30, ask: "is it in miles an hour?" },
    }),
    ["wind to stop lifting at"],
    20,
    "lifting stops at a gust of {} mph",
  ),
  "erection wind": entry(
    quantity("mph", {
      says: "wind speed that standing panels on braces are held for",
      above: 0,
      max: 200,
      usual: { min: 30, max: 130, ask: "is it in miles an hour?" },
    }),
    ["wind on standing panels"],
  ),
  "greatest pull": entry(share({ says: "greatest sideways pull as a share of the weight", above: 0, max: 1 }), [
    "greatest sideways pull",
  ]),
  "truck payload": entry(
    quantity("lb", {
      says: "load limit of a truck",
      above: 0,
      max: 200_000,
      usual: { min: 1000, max: 80_000, ask: "is it in pounds?" },
    }),
    ["load limit of a truck"],
  ),
  "deck length": defaulted(
    length("ft", { says: "length of the deck", above: 0, max: 120 }),
    ["length of deck"],
    48,
    "deck {} ft long",
  ),
  "deck width": defaulted(
    length("ft", { says: "width of the deck", above: 0, max: 16 }),
    ["width of deck"],
    8.5,
    "deck {} ft wide",
  ),
  "stack height": entry(length("ft", { says: "height that loads may be stacked to", above: 0, max: 14 }), [
    "height of stack",
  ]),
} as const;
