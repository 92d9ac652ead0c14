import { measure, number, share } from "../../declare/scalar.ts";
import { choice } from "../../declare/word.ts";
import { defaulted, entry } from "./entry.ts";

/** Labor. */
export const LABOR_TERMS = {
  "crew size": entry(number({ says: "workers in the crew", min: 0.25, max: 200 }), ["workers in a crew"]),
  "crew wage": entry(
    measure("$/h", {
      says: "mean wage of a worker, without burden",
      above: 0,
      max: 1000,
      usual: { min: 8, max: 200, ask: "is it dollars an hour for one worker?" },
    }),
    ["mean wage"],
  ),
  "labor burden": defaulted(
    share({ says: "taxes, insurance and benefits as a share of wages", max: 2 }),
    ["burden share"],
    0,
    "labor burden {}",
  ),
  "productive hours": entry(
    measure("h", {
      says: "productive hours a day",
      min: 0.5,
      max: 24,
      usual: { min: 3, max: 12, ask: "is it hours a day?" },
    }),
    ["productive hours a day"],
  ),
  "weather days": defaulted(
    share({ says: "share of days lost to weather", max: 0.9 }),
    ["share of days lost to weather"],
    0,
    "weather days {}",
  ),
  pace: defaulted(
    number({
      says: "output an hour against the rate's own; 0.8 is a fifth less",
      min: 0.05,
      max: 5,
      usual: { min: 0.4, max: 1.6, ask: "is it a factor near 1?" },
    }),
    ["pace factor"],
    1,
    "pace {}: the rates as they stand",
  ),
  "learning rate": entry(
    share({
      says: "learning: 0.9 means each doubling takes 90 % of the hours",
      above: 0.5,
      max: 1,
      usual: { min: 0.7, max: 1, ask: "is it the share that a doubling takes?" },
    }),
    ["learning curve", "learning share"],
  ),
  "learning curve kind": defaulted(
    choice(["unit", "average"], {
      says: "what the learning curve gives",
      means: { unit: "hours of the n-th unit", average: "average hours of n units" },
    }),
    ["curve by"],
    "unit",
    "{} curve",
  ),
} as const;
