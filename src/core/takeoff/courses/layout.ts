import { OutOfRange, plain } from "../../kit/refusal.ts";
import { exceeds, isBetween, wholeAbove } from "../wall/close.ts";
import { headFt, type PlacedOpening, rightFt, takesHeight } from "../wall/opening.ts";
import { highestFt, spanAtFt, tallestFt } from "../wall/wall.ts";
import type { CoursedWall, CourseRules } from "./types.ts";

/** Lengths here are whole sixty-fourths of an inch. */
export const PER_FT = 768;
export const PER_IN = 64;
/** No piece shorter than this is made by a joint, where there is a choice: it could not be fastened at both ends. */
const SHORTEST_IN = 12;

/** A stretch of a course without a gap, between ends of the wall, rakes and openings that take the whole course. */
export interface Stretch {
  readonly wall: number;
  readonly course: number;
  readonly from: number;
  readonly to: number;
  readonly bottom: number;
  readonly top: number;
  /** gap that the piece at the left and right end leaves beyond itself */
  readonly gapLeft: number;
  readonly gapRight: number;
  /** column lines where a joint may be, ascending */
  readonly places: readonly number[];
  /** of these the ones that leave less than the least leg beside an opening */
  readonly narrow: ReadonlySet<number>;
}

export interface Size {
  readonly length: number;
  readonly height: number;
}

export const ofFt = (ft: number): number => Math.round(ft * PER_FT);

/** Height that a wall needs of a panel between two positions of a stretch. */
export function pieceHeight(wall: CoursedWall, s: Stretch, from: number, to: number): number {
  const highest = highestFt(wall.wall, from / PER_FT, to / PER_FT);
  return Math.min(s.top, wholeAbove(highest * PER_FT)) - s.bottom;
}

/** The pieces of a stretch that is cut at some of its places. */
export function stretchPieces(
  wall: CoursedWall,
  s: Stretch,
  joints: readonly number[],
  rules: CourseRules,
): readonly Size[] {
  const half = (rules.jointGapIn * PER_IN) / 2;
  const nodes = [s.from, ...joints, s.to];
  return nodes.slice(1).map((to, i) => {
    const from = nodes[i] ?? s.from;
    const gaps = (i === 0 ? s.gapLeft : half) + (i === joints.length ? s.gapRight : half);
    return { length: Math.floor(to - from - gaps), height: pieceHeight(wall, s, from, to) };
  });
}

/**
 * The stretches of all courses of all walls, from the foot up and left to right. An opening that takes the whole height of a course leaves
 * that part out; others are cut from the panels that cross them. Joints may be on column lines that are not in an opening of the course; those that
 * leave less than the least leg beside one only where the panels reach no other.
 * @throws OutOfRange where no joint can be made because two column lines are farther apart than a panel is long
 */
export function stretches(walls: readonly CoursedWall[], rules: CourseRules): readonly Stretch[] {
  return walls.flatMap((w, wall) => {
    const out: Stretch[] = [];
    for (let course = 0; ; course++) {
      const bottomFt = course * rules.panelWidthFt;
      const span = spanAtFt(w.wall, bottomFt);
      if (span === undefined || !exceeds(tallestFt(w.wall), bottomFt)) break;
      const topFt = Math.min(bottomFt + rules.panelWidthFt, tallestFt(w.wall));
      const crossing = w.openings.filter((o) => exceeds(topFt, o.sillFt) && exceeds(headFt(o), bottomFt));
      for (const part of solidParts(span, crossing, bottomFt, topFt)) {
        out.push(stretchOf(w, wall, course, part, crossing, ofFt(bottomFt), ofFt(topFt), rules));
      }
    }
    return out;
  });
}

interface Part {
  readonly fromFt: number;
  readonly toFt: number;
  readonly leftOpen: boolean;
  readonly rightOpen: boolean;
}

function solidParts(
  span: readonly [number, number],
  crossing: readonly PlacedOpening[],
  bottomFt: number,
  topFt: number,
): readonly Part[] {
  const whole = crossing.filter((o) => takesHeight(o, bottomFt, topFt)).sort((a, b) => a.leftFt - b.leftFt);
  const parts: Part[] = [];
  let fromFt = span[0];
  let leftOpen = false;
  for (const o of whole) {
    if (exceeds(o.leftFt, fromFt)) parts.push({ fromFt, toFt: o.leftFt, leftOpen, rightOpen: true });
    fromFt = Math.max(fromFt, rightFt(o));
    leftOpen = true;
  }
  if (exceeds(span[1], fromFt)) parts.push({ fromFt, toFt: span[1], leftOpen, rightOpen: false });
  return parts;
}

function stretchOf(
  w: CoursedWall,
  wall: number,
  course: number,
  part: Part,
  crossing: readonly PlacedOpening[],
  bottom: number,
  top: number,
  rules: CourseRules,
): Stretch {
  const [from, to] = [ofFt(part.fromFt), ofFt(part.toFt)];
  const half = (rules.jointGapIn * PER_IN) / 2;
  const s = {
    wall,
    course,
    from,
    to,
    bottom,
    top,
    gapLeft: part.leftOpen ? 0 : half,
    gapRight: part.rightOpen ? 0 : half,
  };
  const free = w.columnsFt
    .filter((x) => !crossing.some((o) => isBetween(x, o.leftFt, rightFt(o))))
    .map(ofFt)
    .filter((x) => x > from && x < to);
  const narrow = new Set(free.filter((x) => crossing.some((o) => leavesNarrowLeg(x, o, rules))));
  const roomy = (x: number) => x - from >= SHORTEST_IN * PER_IN && to - x >= SHORTEST_IN * PER_IN;
  for (const places of [
    free.filter((x) => roomy(x) && !narrow.has(x)),
    free.filter((x) => !narrow.has(x)),
    free.filter(roomy),
    free,
  ]) {
    const whole = { ...s, places: [...new Set(places)].sort((a, b) => a - b), narrow };
    if (stretchPieces(w, whole, whole.places, rules).every((p) => p.length <= ofFt(rules.panelLengthFt))) return whole;
  }
  throw noPlace(w, s, free, rules);
}

/** Whether a joint leaves beside an opening a strip of panel that is narrower than the least leg. */
function leavesNarrowLeg(x: number, o: PlacedOpening, rules: CourseRules): boolean {
  const left = ofFt(o.leftFt);
  const right = ofFt(rightFt(o));
  const leg = (x <= left ? left - x : x - right) - (rules.jointGapIn * PER_IN) / 2;
  return leg < rules.leastLegIn * PER_IN - 0.5;
}

function noPlace(
  w: CoursedWall,
  { course, from, to }: { readonly course: number; readonly from: number; readonly to: number },
  free: readonly number[],
  rules: CourseRules,
): OutOfRange {
  const nodes = [from, ...free, to];
  const wide = nodes.findIndex((x, i) => (nodes[i + 1] ?? x) - x > ofFt(rules.panelLengthFt));
  const at = `${plain((nodes[wide] ?? from) / PER_FT)} to ${plain((nodes[wide + 1] ?? to) / PER_FT)} ft`;
  return new OutOfRange(
    `Course ${course + 1} of ${w.wall.name} has no column for a joint from ${at}`,
    `a panel is ${plain(rules.panelLengthFt)} ft long and a joint must land on a column outside the openings`,
    "Add a column there or use longer panels",
  );
}
