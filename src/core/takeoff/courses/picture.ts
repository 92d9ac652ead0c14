import { INCHES_IN } from "../../units/length.ts";
import { cornersOnWall, elevation } from "../wall/elevation.ts";
import type { WallElevationPicture } from "../wall/pictures.ts";
import { heightAtFt } from "../wall/wall.ts";
import type { CoursedWall, CoursePlan } from "./types.ts";

/** The elevation of one wall of a plan. */
export function showWall(w: CoursedWall, plan: CoursePlan): WallElevationPicture {
  const pieces = plan.pieces.filter((p) => p.wall === w.wall.name);
  const joints = plan.joints.filter((j) => j.wall === w.wall.name);
  const courses = new Set(pieces.map((p) => p.course)).size;
  return elevation("panels", w.wall, w.openings, {
    uprights: [...w.columnsFt]
      .sort((a, b) => a - b)
      .map((xFt) => ({ xFt, bottomFt: 0, topFt: heightAtFt(w.wall, Math.min(Math.max(xFt, 0), w.wall.lengthFt)) })),
    pieces: pieces.map((p) => ({
      name: p.name,
      from: p.panel === 0 ? "offcut" : `panel ${p.panel}`,
      leftover: p.panel === 0,
      corners: cornersOnWall(w.wall, {
        x0: p.leftFt,
        y0: p.bottomFt,
        x1: p.leftFt + p.lengthIn / INCHES_IN.ft,
        y1: p.bottomFt + p.heightIn / INCHES_IN.ft,
      }),
    })),
    joints: joints.map(({ xFt, bottomFt, topFt }) => ({ xFt, bottomFt, topFt })),
    alt: `${courses} courses in ${pieces.length} pieces with ${joints.length} joints on ${w.columnsFt.length} columns`,
  });
}
