import { INCHES_IN } from "../../units/length.ts";
import type { Corners, WallElevationPicture } from "../pictures.ts";
import { heightAtFt, tallestFt } from "../wall.ts";
import type { CoursedWall, CoursePiece, CoursePlan } from "./types.ts";

/** The elevation of one wall of a plan. */
export function showWall(w: CoursedWall, plan: CoursePlan): WallElevationPicture {
  const { lengthFt, heightFt, gableRiseFt } = w.wall;
  const pieces = plan.pieces.filter((p) => p.wall === w.name);
  const joints = plan.joints.filter((j) => j.wall === w.name);
  const peak: Corners = gableRiseFt > 0 ? [[lengthFt / 2, tallestFt(w.wall)]] : [];
  const coursesFt = [...new Set(pieces.map((p) => p.bottomFt))];
  return {
    kind: "wall-elevation",
    alt: `Elevation of ${w.name}: ${coursesFt.length} courses in ${pieces.length} pieces with ${joints.length} joints on ${w.columnsFt.length} columns, ${w.openings.length} openings.`,
    wall: w.name,
    lengthFt,
    heightFt: tallestFt(w.wall),
    outline: [[0, 0], [lengthFt, 0], [lengthFt, heightFt], ...peak, [0, heightFt]],
    columnsFt: [...w.columnsFt].sort((a, b) => a - b),
    coursesFt,
    pieces: pieces.map((p) => ({ name: p.name, course: p.course, panel: p.panel, corners: pieceCorners(w, p) })),
    joints: joints.map(({ xFt, bottomFt, topFt }) => ({ xFt, bottomFt, topFt })),
    openings: w.openings.map(({ name, leftFt, sillFt, widthFt, heightFt: openFt }) => ({
      name,
      leftFt,
      sillFt,
      widthFt,
      heightFt: openFt,
    })),
  };
}

/** A piece on the wall, cut to the rake. */
function pieceCorners(w: CoursedWall, p: CoursePiece): Corners {
  const left = p.leftFt;
  const right = left + p.lengthIn / INCHES_IN.ft;
  const topFt = p.bottomFt + p.heightIn / INCHES_IN.ft;
  const { lengthFt, heightFt, gableRiseFt } = w.wall;
  // Where the rakes cross the top of the piece, and the peak, are corners too.
  const inset = gableRiseFt > 0 ? ((topFt - heightFt) / gableRiseFt) * (lengthFt / 2) : 0;
  const turns = [lengthFt - inset, lengthFt / 2, inset].filter((x) => x > left && x < right);
  const upper = [right, ...turns.sort((a, b) => b - a), left].map(
    (x) => [x, Math.max(p.bottomFt, Math.min(topFt, heightAtFt(w.wall, x)))] as const,
  );
  return [[left, p.bottomFt], [right, p.bottomFt], ...upper];
}
