import { cautionRecalled } from "../../kit/known.ts";
import { OutOfRange, plain, within } from "../../kit/refusal.ts";
import type { Tape } from "../../kit/tape.ts";
import {
  ALONG_PCT,
  FIBER_SATURATION_PCT,
  LUMBER_SHRINKAGE,
  SHRINKAGE_SOURCE,
  type Shrinkage,
} from "../tables/shrinkage.ts";

export const SHRINK_DIRECTIONS = ["tangential", "radial", "thickness", "width", "along"] as const;
export type ShrinkDirection = (typeof SHRINK_DIRECTIONS)[number];

const CHANGE = "D_2 = D_1 (1 - S_2/100) / (1 - S_1/100)";

/**
 * Change of a size of wood as its moisture changes. Across the grain by species: S = S_0 (30 - M)/30; thickness and width of lumber of most
 * species: S = a - b M.
 * @param sizeIn size at the first moisture content, above 0
 * @param fromPct, toPct moisture contents, percent of the ovendry mass, 0 to 100
 * @returns in, below 0 where it shrinks
 * @throws OutOfRange for lumber outside 8 to 19 % (28 % and more is green)
 * Source: USDA FPL Wood Handbook GTR-190 ch. 4 and Table 4-3; FPL-RP-489.
 */
export function woodShrinkIn(
  sizeIn: number,
  wood: Shrinkage,
  fromPct: number,
  toPct: number,
  direction: ShrinkDirection,
  tape?: Tape,
): number {
  within("The size", sizeIn, 0, 12_000, "in", "sizes of a building");
  const first = shrinkagePct(wood, fromPct, direction, "S_1", tape);
  const second = shrinkagePct(wood, toPct, direction, "S_2", tape);
  const changeIn = sizeIn * ((1 - second / 100) / (1 - first / 100) - 1);
  if (direction !== "thickness" && direction !== "width" && wood.known === "memory") {
    cautionRecalled(tape, `The shrinkage of ${wood.wood}`, SHRINKAGE_SOURCE);
  }
  tape?.assume("figures are means of a species; single pieces differ by a quarter and more");
  tape?.step("D_2 - D_1", `${plain(sizeIn)} [(1 - S_2/100) / (1 - S_1/100) - 1]`, changeIn, "in", CHANGE);
  return changeIn;
}

/** Shrinkage from green at a moisture content, percent of the green size. */
function shrinkagePct(
  wood: Shrinkage,
  moisturePct: number,
  direction: ShrinkDirection,
  symbol: string,
  tape: Tape | undefined,
): number {
  within("The moisture content", moisturePct, 0, 100, "%", "wood in buildings");
  if (direction === "thickness" || direction === "width") return lumberPct(moisturePct, direction, symbol, tape);
  const whole = { tangential: wood.tangentialPct, radial: wood.radialPct, along: ALONG_PCT }[direction];
  const drier = Math.max(0, FIBER_SATURATION_PCT - moisturePct);
  const pct = (whole * drier) / FIBER_SATURATION_PCT;
  tape?.step(symbol, `${wood.wood}, ${direction}: ${plain(whole)} x ${plain(drier)}/30`, pct, "%", SHRINKAGE_SOURCE);
  return pct;
}

function lumberPct(
  moisturePct: number,
  direction: "thickness" | "width",
  symbol: string,
  tape: Tape | undefined,
): number {
  const { leastPct, mostPct, greenPct, clause } = LUMBER_SHRINKAGE;
  if (moisturePct >= greenPct) {
    tape?.step(symbol, `green lumber, ${greenPct} % and more`, 0, "%", clause);
    return 0;
  }
  if (moisturePct < leastPct || moisturePct > mostPct) {
    throw new OutOfRange(
      `The moisture content is ${plain(moisturePct)} %`,
      `thickness and width of lumber are known from ${leastPct} to ${mostPct} %, and green from ${greenPct} % on (${clause})`,
      "Use a direction of the grain, tangential or radial, with a species",
    );
  }
  const { a, b } = LUMBER_SHRINKAGE[direction];
  const pct = a - b * moisturePct;
  tape?.step(symbol, `lumber, ${direction}: ${a} - ${b} x ${plain(moisturePct)}`, pct, "%", clause);
  return pct;
}
