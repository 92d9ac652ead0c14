import { length, quantity, share, whole } from "../../declare/scalar.ts";
import { choice } from "../../declare/word.ts";
import { defaulted, entry } from "./entry.ts";

const wasteOf = (what: string) =>
  entry(
    share({
      says: `waste of ${what} on top of the measured quantity, as a share: 10% or 0.1`,
      usual: { min: 0, max: 0.25, ask: "is so much waste meant?" },
    }),
    [],
  );

const lap = (says: string, aliases: readonly string[], standIn: number, omitted: string, max = 24) =>
  defaulted(length("in", { says, min: 0, max }), aliases, standIn, omitted);

const fewStrips = (says: string) => whole({ says, min: 0, max: 10 });

/** Packs and waste. */
export const PACK_TERMS = {
  waste: defaulted(
    share({
      says: "waste on top of the measured quantity, as a share: 10% or 0.1",
      usual: { min: 0, max: 0.25, ask: "is so much waste meant?" },
    }),
    ["waste share", "usual waste"],
    0,
    "waste {}: none is added",
  ),
  "membrane waste": wasteOf("membrane"),
  "tape waste": wasteOf("tape"),
  "board waste": wasteOf("boards"),
  "strip waste": wasteOf("strips"),
  "screen waste": wasteOf("screen"),
  "screw waste": wasteOf("screws"),
  "sealant waste": wasteOf("sealant"),
  "concrete waste": wasteOf("concrete"),
  "sheet waste": wasteOf("sheets"),
  "side lap": lap("lap of one course of membrane over the next", ["course overlap"], 2, "side laps {} in"),
  "end lap": lap("lap at the end of a roll", ["roll end overlap"], 6, "end laps {} in"),
  "corner return": lap("membrane past each end of a wall", ["membrane round corners"], 0, "corner return {}", 48),
  "opening return": lap("membrane turned into openings", ["membrane into openings"], 0, "opening return {}", 24),
  "past corner": lap("tape past each corner of an opening", ["tape past corners"], 6, "tape {} in past corners"),
  "screened edges": defaulted(
    choice(["both", "bottom", "top", "foot and top"], {
      says: "edges that get vent screen, openings with them; foot and top leaves out heads and sills of openings",
    }),
    ["vent screen at"],
    "both",
    "screen at {} edges",
  ),
  "furring spacing": entry(
    length("in", {
      says: "spacing of furring strips",
      min: 4,
      max: 96,
      usual: { min: 12, max: 48, ask: "is it in inches?" },
    }),
    ["strip spacing"],
  ),
  "end strips": defaulted(
    fewStrips("strips more at each end of a wall"),
    ["strips at wall ends"],
    0,
    "{} strips more at the ends of the wall",
  ),
  "jamb strips": defaulted(
    fewStrips("strips at each jamb of an opening"),
    ["strips at openings"],
    1,
    "{} strip at each jamb",
  ),
  "buck thickness": defaulted(
    length("in", { says: "thickness of the buck stock", above: 0, max: 6 }),
    ["window buck thickness"],
    1.5,
    "bucks {} in thick",
  ),
  "screw end distance": defaulted(
    length("in", { says: "distance of the first and last screw from the ends", min: 0, max: 24 }),
    ["end distance of screws"],
    0,
    "screws up to the ends: end distance {}",
  ),
  "cartridge fill": defaulted(
    quantity("fl oz", { says: "sealant in a cartridge or sausage, or text such as 600 ml", min: 0.1, max: 700 }),
    ["sealant fill"],
    10.1,
    "cartridges of {} fl oz",
  ),
  "concrete step": defaulted(
    quantity("yd3", { says: "step in which concrete is ordered", min: 0.01, max: 20 }),
    ["smallest concrete order"],
    0.25,
    "ordered in steps of {} yd3",
  ),
  "board bundle": defaulted(
    whole({ says: "boards in a bundle", min: 1, max: 1000 }),
    ["boards in a bundle"],
    1,
    "bundles of {} board",
  ),
} as const;
