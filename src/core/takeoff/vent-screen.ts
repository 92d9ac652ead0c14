import { BadInput, plain } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import { type OrderLine, packsOfPieces } from "./order.ts";
import { exceeds } from "./wall/close.ts";
import { isDoor, type SilledOpening, silledOpenings } from "./wall/opening.ts";
import { checkOpenings, type OpenedWall, topEdgeFt } from "./wall/wall.ts";

/** Ends of the vented cavity of a wall that a screen closes; both, where openings get their screen from another item, is foot and top. */
export type ScreenedEdges = "both" | "bottom" | "top" | "foot and top";

/**
 * Run of vent screen of one wall: its foot, its top along the rakes, and where an opening ends the cavity: over each head, and under each sill;
 * foot and top leaves the openings out. A door takes its width off the foot.
 * @returns ft
 * @throws BadInput when the doors take more than the foot of the wall
 */
export function screenRunFt(opened: OpenedWall<SilledOpening>, edges: ScreenedEdges, tape?: Tape): number {
  checkOpenings(opened);
  const { wall, openings } = opened;
  const doorsFt = sumFt(openings.filter(isDoor));
  const windowsFt = sumFt(openings) - doorsFt;
  if (exceeds(doorsFt, wall.lengthFt)) {
    throw new BadInput(
      `The openings on the foot of ${wall.name} are ${plain(doorsFt)} ft wide together`,
      `${wall.name} is ${plain(wall.lengthFt)} ft long`,
      "Give sill heights to the windows, or check widths and counts",
    );
  }
  const footFt = wall.lengthFt - doorsFt;
  const topFt = topEdgeFt(wall);
  if (edges === "foot and top") {
    tape?.step("L_d", `${wall.name}: foot less doors`, footFt, "ft", "geometry");
    tape?.step("L_u", `${wall.name}: top along the rakes`, topFt, "ft", "geometry");
    return footFt + topFt;
  }
  const headsFt = doorsFt + windowsFt;
  if (edges !== "top") {
    tape?.step("L_d", `${wall.name}: foot less doors, and over every head`, footFt + headsFt, "ft", "geometry");
  }
  if (edges !== "bottom") {
    tape?.step("L_u", `${wall.name}: top along the rakes, and under every sill`, topFt + windowsFt, "ft", "geometry");
  }
  return (edges === "top" ? 0 : footFt + headsFt) + (edges === "bottom" ? 0 : topFt + windowsFt);
}

function sumFt(openings: readonly SilledOpening[]): number {
  return openings.reduce((total, o) => total + o.widthFt * o.count, 0);
}

/** Vent screen of walls in whole lengths or rolls; pieces may be butted. */
export function ventScreen(
  walls: readonly OpenedWall[],
  edges: ScreenedEdges,
  pieceFt: number,
  waste: number,
  tape?: Tape,
): OrderLine {
  const runFt = walls.reduce((sum, { wall, openings }) => {
    return sum + screenRunFt({ wall, openings: silledOpenings(openings, tape) }, edges, tape);
  }, 0);
  tape?.step("L", "sum of the walls", runFt, "ft", "geometry");
  const packs = packsOfPieces(0, runFt, waste, pieceFt);
  tape?.step("N", `L x (1 + waste ${waste}) / ${plain(pieceFt)} ft, rounded up`, packs, "pieces", "");
  const pack = `piece ${plain(pieceFt)} ft`;
  return { item: "vent screen", quantity: runFt * (1 + waste), unit: "ft", packs, pack };
}
