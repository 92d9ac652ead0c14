import { BadInput, plain } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import { cautionSills, type Opening, openingCount } from "./opening.ts";
import { type OrderLine, packsOfPieces } from "./order.ts";
import { CLOSE_FT } from "./wall.ts";

/** Ends of the vented cavity of a wall that a screen closes. */
export type ScreenedEdges = "both" | "bottom" | "top";

/**
 * Run of vent screen of one wall: foot and top of the wall, and where an opening ends the cavity: over each head, and under each sill. A door
 * takes its width off the foot.
 * @returns ft
 * @throws BadInput when the doors take more than the foot of the wall
 */
export function screenRunFt(lengthFt: number, openings: readonly Opening[], edges: ScreenedEdges, tape?: Tape): number {
  const doorsFt = sum(openings.filter((o) => o.sillFt <= CLOSE_FT));
  const windowsFt = sum(openings.filter((o) => o.sillFt > CLOSE_FT));
  if (doorsFt > lengthFt + CLOSE_FT) {
    throw new BadInput(
      `The openings on the foot of the wall are ${plain(doorsFt)} ft wide together`,
      `the wall is ${plain(lengthFt)} ft long`,
      "Give sill heights to the windows, or check widths and counts",
    );
  }
  // Downward the cavity opens at the foot and over heads; a door takes from the foot what its head adds. Upward it opens at the top and under sills.
  const downFt = lengthFt + windowsFt;
  const upFt = lengthFt + windowsFt;
  if (edges !== "top")
    tape?.step("L_d", "foot less doors, and over every head: length + windows", downFt, "ft", "geometry");
  if (edges !== "bottom") tape?.step("L_u", "top, and under every window sill", upFt, "ft", "geometry");
  return (edges === "top" ? 0 : downFt) + (edges === "bottom" ? 0 : upFt);
}

function sum(openings: readonly Opening[]): number {
  return openings.reduce((total, o) => total + o.widthFt * o.count, 0);
}

/** Vent screen in whole lengths or rolls; pieces may be butted. */
export function ventScreen(
  lengthFt: number,
  openings: readonly Opening[],
  edges: ScreenedEdges,
  pieceFt: number,
  waste: number,
  tape?: Tape,
): OrderLine {
  cautionSills(openings, tape);
  const runFt = screenRunFt(lengthFt, openings, edges, tape);
  tape?.step("L", `L_d + L_u, ${openingCount(openings)} openings`, runFt, "ft", "geometry");
  const packs = packsOfPieces(0, runFt, waste, pieceFt);
  tape?.step("N", `L x (1 + waste ${waste}) / ${plain(pieceFt)} ft, rounded up`, packs, "pieces", "");
  return {
    item: "vent screen",
    quantity: runFt * (1 + waste),
    unit: "ft",
    packs,
    pack: `piece ${plain(pieceFt)} ft`,
  };
}
