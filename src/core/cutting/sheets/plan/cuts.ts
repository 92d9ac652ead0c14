import { at } from "../../engine/at.ts";
import type { Cut } from "./types.ts";

/** A rectangle of the inflated sheet, sixty-fourths of an inch; a part takes its kerf with it, right and above. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}

/** A saw line in the inflated sheet: `at` is the far edge of the kerf. */
export interface Line extends Omit<Cut, "atIn" | "fromIn" | "toIn"> {
  readonly at: number;
  readonly from: number;
  readonly to: number;
}

/** The part that a cut sets free. */
export interface Freed {
  /** place in the list of parts */
  readonly box: number;
  /** number of the cut, from 1; 0 where the part is the whole sheet */
  readonly cut: number;
  readonly stage: number;
}

/** A sheet in the order of the saw. */
export interface CutPlan {
  readonly lines: readonly Line[];
  readonly freed: readonly Freed[];
  /** what is left over, the largest first */
  readonly rests: readonly Box[];
  /** stages before a part that is alone on the saw is trimmed */
  readonly stages: number;
  /** how often a piece is turned on the saw */
  readonly turns: number;
}

type Direction = Cut["direction"];

const other = (d: Direction): Direction => (d === "across" ? "along" : "across");

/**
 * The order of edge-to-edge cuts that sets the parts free. A piece is cut wherever a line in one direction passes no part,
 * then each of its pieces the other way; so the number of stages is the least for the direction of the first cut. Of the
 * two directions the one with the larger leftover is taken, then the one with fewer turns.
 * @param stages most stages; a way with more is taken only where there is no other
 */
export function cutPlan(boxes: readonly Box[], w: number, h: number, stages = Number.POSITIVE_INFINITY): CutPlan {
  const across = sawn(boxes, w, h, "across");
  const along = sawn(boxes, w, h, "along");
  const measures: readonly ((p: CutPlan) => number)[] = [
    (p) => Math.max(0, p.stages - stages),
    (p) => -areaOf(p.rests[0]),
    (p) => p.turns,
    (p) => p.lines.length,
  ];
  for (const m of measures) if (m(across) !== m(along)) return m(across) < m(along) ? across : along;
  return across;
}

const areaOf = (b: Box | undefined): number => (b === undefined ? 0 : b.w * b.h);

/** A piece on the saw. */
interface Piece extends Box {
  /** numbers of its parts */
  readonly parts: readonly number[];
  /** the cut that made it, and its stage */
  readonly cut: number;
  readonly stage: number;
}

function sawn(boxes: readonly Box[], w: number, h: number, first: Direction): CutPlan {
  const lines: Line[] = [];
  const freed: Freed[] = [];
  const rests: Box[] = [];
  let stages = 0;
  let turns = 0;

  const saw = (piece: Piece, direction: Direction, turned: boolean): void => {
    const before = lines.length;
    const stage = piece.stage + 1;
    const pieces = split(boxes, piece, direction, (line) => lines.push({ ...line, direction, stage }), lines.length);
    if (lines.length === before) {
      const only = at(piece.parts, 0);
      const isPart = at(boxes, only).w === piece.w && at(boxes, only).h === piece.h;
      if (isPart) freed.push({ box: only, cut: piece.cut, stage: piece.stage });
      else saw(piece, other(direction), turned);
      return;
    }
    if (turned) turns++;
    if (piece.parts.length > 1) stages = Math.max(stages, stage);
    for (const p of pieces) {
      if (p.parts.length === 0) rests.push(p);
      else saw({ ...p, stage }, other(direction), true);
    }
  };
  if (boxes.length > 0) saw({ x: 0, y: 0, w, h, parts: boxes.map((_, i) => i), cut: 0, stage: 0 }, first, false);
  rests.sort((a, b) => areaOf(b) - areaOf(a) || a.x - b.x || a.y - b.y);
  return { lines, freed, rests, stages, turns };
}

/** Cuts a piece at every line of one direction that passes no part; what lies between is a piece, with parts or without. */
function split(
  boxes: readonly Box[],
  piece: Piece,
  direction: Direction,
  cut: (line: { at: number; from: number; to: number }) => void,
  made: number,
): Piece[] {
  const across = direction === "across";
  const [start, end] = across ? [piece.x, piece.x + piece.w] : [piece.y, piece.y + piece.h];
  const [from, to] = across ? [piece.y, piece.y + piece.h] : [piece.x, piece.x + piece.w];
  const spans = piece.parts
    .map((part) => {
      const b = at(boxes, part);
      return across ? { part, low: b.x, high: b.x + b.w } : { part, low: b.y, high: b.y + b.h };
    })
    .sort((a, b) => a.low - b.low || a.part - b.part);
  const groups: { low: number; high: number; parts: number[] }[] = [];
  let reach = start;
  for (const s of spans) {
    const last = groups[groups.length - 1];
    if (last && s.low < last.high) {
      last.high = Math.max(last.high, s.high);
      last.parts.push(s.part);
    } else {
      if (s.low > reach) groups.push({ low: reach, high: s.low, parts: [] });
      groups.push({ low: s.low, high: s.high, parts: [s.part] });
    }
    reach = Math.max(reach, s.high);
  }
  if (reach < end) groups.push({ low: reach, high: end, parts: [] });
  groups.slice(0, -1).forEach((g) => {
    cut({ at: g.high, from, to });
  });
  return groups.map((g, i) => {
    // the cut at its far edge sets a piece free, for the last one that at its near edge
    const number = groups.length === 1 ? piece.cut : made + Math.min(i + 1, groups.length - 1);
    const place = across
      ? { x: g.low, y: piece.y, w: g.high - g.low, h: piece.h }
      : { x: piece.x, y: g.low, w: piece.w, h: g.high - g.low };
    return { ...place, parts: g.parts, cut: number, stage: piece.stage };
  });
}
