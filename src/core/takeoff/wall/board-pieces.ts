import { exceeds } from "./close.ts";
import { headFt, type PlacedOpening, rightFt } from "./opening.ts";
import { highestFt, spanAtFt, tallestFt, type Wall } from "./wall.ts";

/** A rectangle on the wall, ft from its lower left corner. */
export interface Rect {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
}

/**
 * Boards of one layer as they lie on the wall, each cut to the rectangle that the wall leaves of it. Rows run along the wall; end joints are
 * staggered by half a board from row to row, and by a quarter of a board and half a row from one layer to the next.
 * @param layer 0 for the first
 */
export function boardPieces(
  wall: Wall,
  openings: readonly PlacedOpening[],
  boardFt: number,
  rowFt: number,
  layer: number,
): readonly Rect[] {
  const pieces: Rect[] = [];
  const odd = layer % 2 === 1;
  let y0 = 0;
  for (let row = 0; exceeds(tallestFt(wall), y0); row++) {
    const y1 = y0 + (row === 0 && odd ? rowFt / 2 : rowFt);
    const shift = ((row % 2) * boardFt) / 2 + (odd ? boardFt / 4 : 0);
    const from = shift === 0 ? 0 : shift - boardFt;
    pieces.push(...rowPieces(wall, openings, y0, y1, from, boardFt));
    y0 = y1;
  }
  return pieces;
}

/** Pieces of one row from `from` on, each `stepFt` long, within the wall and round its openings. */
export function rowPieces(
  wall: Wall,
  openings: readonly PlacedOpening[],
  y0: number,
  y1: number,
  from: number,
  stepFt: number,
): readonly Rect[] {
  const span = spanAtFt(wall, y0);
  if (span === undefined) return [];
  const pieces: Rect[] = [];
  for (let x = from; exceeds(wall.lengthFt, x); x += stepFt) {
    const x0 = Math.max(x, span[0]);
    const x1 = Math.min(x + stepFt, span[1]);
    if (!exceeds(x1, x0)) continue;
    pieces.push(...uncovered({ x0, y0, x1, y1: Math.min(y1, highestFt(wall, x0, x1)) }, openings));
  }
  return pieces;
}

/** What openings leave of a board: cut off or cut through where one takes its whole height or width; notches stay in the piece. */
function uncovered(board: Rect, openings: readonly PlacedOpening[]): readonly Rect[] {
  let left: readonly Rect[] = [board];
  for (const o of openings) {
    const hole = { x0: o.leftFt, y0: o.sillFt, x1: rightFt(o), y1: headFt(o) };
    left = left.flatMap((r) => cutThrough(r, hole));
  }
  return left;
}

function cutThrough(r: Rect, hole: Rect): readonly Rect[] {
  const beside = !exceeds(hole.x1, r.x0) || !exceeds(r.x1, hole.x0);
  const aboveOrBelow = !exceeds(hole.y1, r.y0) || !exceeds(r.y1, hole.y0);
  if (beside || aboveOrBelow) return [r];
  const tall = !exceeds(hole.y0, r.y0) && !exceeds(r.y1, hole.y1);
  const wide = !exceeds(hole.x0, r.x0) && !exceeds(r.x1, hole.x1);
  const parts: Rect[] = [];
  if (tall) parts.push({ ...r, x1: hole.x0 }, { ...r, x0: hole.x1 });
  else if (wide) parts.push({ ...r, y1: hole.y0 }, { ...r, y0: hole.y1 });
  else return [r];
  return parts.filter((p) => exceeds(p.x1, p.x0) && exceeds(p.y1, p.y0));
}
