import { length } from "../../declare/scalar.ts";
import { choice } from "../../declare/word.ts";
import { defaulted, entry } from "./entry.ts";
import { sheetSides } from "./readers.ts";

/** Cutting. */
export const CUTTING_TERMS = {
  "panel size": entry({ ...sheetSides, says: "size of a panel, such as 4x32: its width is the height of a course" }, [
    "size of a panel",
  ]),
  kerf: defaulted(
    length("in", { says: "width of a saw cut", min: 0, max: 1 }),
    ["saw cut", "width of a saw cut"],
    0.125,
    "a saw cut takes {} in",
  ),
  "joint gap": defaulted(
    length("in", { says: "gap left open at each panel joint and end", min: 0, max: 2 }),
    ["gap at panel joints"],
    0.125,
    "pieces are {} in shorter than their bays",
  ),
  "least leg": defaulted(
    length("in", { says: "narrowest leg of a panel beside an opening", min: 0, max: 48 }),
    ["narrowest panel leg"],
    6,
    "no panel leg beside an opening is narrower than {} in where the columns allow it",
  ),
  "edge trim": defaulted(
    length("in", { says: "trim of each factory edge", min: 0, max: 6 }),
    ["trim of factory edges"],
    0,
    "edge trim {}",
  ),
  "cutting goal": defaulted(
    choice(["fewest", "cost"], {
      says: "what to make least",
      also: { "least cost": "cost", count: "fewest", price: "cost" },
    }),
    ["what to make least"],
    "fewest",
    "the {} sheets or lengths",
  ),
  "cutting stages": defaulted(
    choice(["2", "3", "any"], { says: "most turns of the saw, as stages of cuts" }),
    ["saw stages"],
    "any",
    "{} number of stages",
  ),
} as const;
