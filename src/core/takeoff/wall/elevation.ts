import type { Rect } from "./board-pieces.ts";
import { isBetween } from "./close.ts";
import type { PlacedOpening } from "./opening.ts";
import type { Corners, ElevationPiece, ElevationSubject, Upright, WallElevationPicture } from "./pictures.ts";
import { heightAtFt, outlineFt, tallestFt, type Wall } from "./wall.ts";

/** What is laid out on a wall, and its words. */
export interface LaidOut {
  readonly uprights?: readonly Upright[];
  readonly pieces?: readonly ElevationPiece[];
  readonly joints?: readonly Upright[];
  /** "24 boards in 3 rows" */
  readonly alt: string;
}

/** The elevation of a wall from outside with its openings of known place and what is laid out on it. */
export function elevation(
  subject: ElevationSubject,
  wall: Wall,
  openings: readonly PlacedOpening[],
  laid: LaidOut,
): WallElevationPicture {
  const holes = openings.length === 1 ? "1 opening" : `${openings.length} openings`;
  return {
    kind: "wall-elevation",
    alt: `Elevation of ${wall.name}: ${laid.alt}, ${holes}.`,
    subject,
    wall: wall.name,
    lengthFt: wall.lengthFt,
    heightFt: tallestFt(wall),
    outline: outlineFt(wall),
    uprights: laid.uprights ?? [],
    pieces: laid.pieces ?? [],
    joints: laid.joints ?? [],
    openings: openings.map(({ name, leftFt, sillFt, widthFt, heightFt }) => ({
      name,
      leftFt,
      sillFt,
      widthFt,
      heightFt,
    })),
  };
}

/** A rectangle as it stands on the wall, cut to the rake. */
export function cornersOnWall(wall: Wall, { x0, y0, x1, y1 }: Rect): Corners {
  const turns = turningPoints(wall, y1).filter((x) => isBetween(x, x0, x1));
  const upper = [x1, ...turns.sort((a, b) => b - a), x0].map(
    (x) => [x, Math.max(y0, Math.min(y1, heightAtFt(wall, x)))] as const,
  );
  return [[x0, y0], [x1, y0], ...upper];
}

/** Where the top edge of the wall turns or crosses a height. */
function turningPoints(wall: Wall, yFt: number): number[] {
  if (wall.riseFt === 0) return [];
  const share = (yFt - wall.heightFt) / wall.riseFt;
  if (wall.top === "shed") return [share * wall.lengthFt];
  return [(share * wall.lengthFt) / 2, wall.lengthFt / 2, wall.lengthFt * (1 - share / 2)];
}
