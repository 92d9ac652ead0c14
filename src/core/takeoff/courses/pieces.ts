import { plain } from "../../kit/refusal.ts";
import { exceeds, wholeBelow } from "../wall/close.ts";
import { marksOf } from "../wall/marks.ts";
import { headFt, rightFt } from "../wall/opening.ts";
import { heightAtFt } from "../wall/wall.ts";
import type { CutPlan, Place } from "./cutting.ts";
import { PER_FT, PER_IN, pieceHeight, type Size, type Stretch, stretchPieces } from "./layout.ts";
import type { CoursedWall, CourseJoint, CoursePiece, CourseRules, Offcut } from "./types.ts";

/** A leftover or cut-out smaller than this either way is not worth keeping. */
const KEEP_IN = 6;

/** Cut-outs of openings from the panels that cross them: the part of each opening in each course that the course does not leave out whole. */
export function cutOuts(
  walls: readonly CoursedWall[],
  parts: readonly Stretch[],
  rules: CourseRules,
): readonly Offcut[] {
  return walls.flatMap((w, wall) => {
    const mine = parts.filter((s) => s.wall === wall);
    const courses = [...new Map(mine.map((s) => [s.course, s])).values()];
    return w.openings.flatMap((o) =>
      courses.flatMap((s) => {
        const bottomFt = Math.max(o.sillFt, s.bottom / PER_FT);
        const topFt = Math.min(headFt(o), s.top / PER_FT);
        const crossed = mine.some(
          (t) => t.course === s.course && t.from < rightFt(o) * PER_FT && t.to > o.leftFt * PER_FT,
        );
        if (!exceeds(topFt, bottomFt) || !crossed) return [];
        const edges = Number(exceeds(bottomFt, s.bottom / PER_FT)) + Number(exceeds(s.top / PER_FT, topFt));
        const lengthIn = downTo64(o.widthFt * 12 - 2 * rules.kerfIn);
        const widthIn = downTo64((topFt - bottomFt) * 12 - edges * rules.kerfIn);
        if (lengthIn < KEEP_IN || widthIn < KEEP_IN) return [];
        return [{ name: `${prefix(walls, w)}${o.name} cut-out, course ${s.course + 1}`, lengthIn, widthIn }];
      }),
    );
  });
}

function downTo64(inches: number): number {
  return wholeBelow(inches * PER_IN) / PER_IN;
}

function prefix(walls: readonly CoursedWall[], w: CoursedWall): string {
  return walls.length === 1 ? "" : `${w.wall.name} `;
}

export function sizeOf(o: Offcut): Size {
  return { length: wholeBelow(o.lengthIn * PER_IN), height: wholeBelow(o.widthIn * PER_IN) };
}

/** The pieces with names, places and what each is cut from. */
export function namedPieces(
  walls: readonly CoursedWall[],
  parts: readonly Stretch[],
  joints: readonly (readonly number[])[],
  plan: CutPlan,
  stock: readonly Offcut[],
  rules: CourseRules,
): readonly CoursePiece[] {
  const numbers = new Map<string, number>();
  const marks = marksOf(walls.map((w) => w.wall.name));
  let index = 0;
  return parts.flatMap((s, i) => {
    const w = walls[s.wall] as CoursedWall;
    const nodes = [s.from, ...(joints[i] ?? []), s.to];
    return stretchPieces(w, s, joints[i] ?? [], rules).map((size, k): CoursePiece => {
      const place = plan.places[index++] as Place;
      const { source } = place;
      const key = `${s.wall}/${s.course}`;
      const number = (numbers.get(key) ?? 0) + 1;
      numbers.set(key, number);
      const [from, to] = [nodes[k] ?? s.from, nodes[k + 1] ?? s.to];
      const gap = k === 0 ? s.gapLeft : (rules.jointGapIn * PER_IN) / 2;
      return {
        wall: w.wall.name,
        name: `${s.course + 1}-${number}`,
        mark: `${marks[s.wall]} ${s.course + 1}-${number}`,
        course: s.course + 1,
        leftFt: (from + gap) / PER_FT,
        bottomFt: s.bottom / PER_FT,
        lengthIn: size.length / PER_IN,
        heightIn: size.height / PER_IN,
        panel: source < 0 ? 0 : source + 1,
        from: source < 0 ? (stock[-1 - source]?.name ?? "") : `panel ${source + 1}`,
        alongIn: place.x / PER_IN,
        upIn: place.y / PER_IN,
        cuts: furtherCuts(w, s, from, to).join("; "),
      };
    });
  });
}

/** Rakes and openings that are cut after the rectangle. */
function furtherCuts(w: CoursedWall, s: Stretch, from: number, to: number): readonly string[] {
  const high = s.bottom + pieceHeight(w, s, from, to);
  const tall = (x: number) => heightAtFt(w.wall, x / PER_FT) * PER_FT >= high - 1;
  const raked = [!tall(from) && "left", !tall(to) && "right"].filter((side) => side !== false);
  const cuts = raked.length > 0 ? [`rake ${raked.join(" and ")}`] : [];
  for (const o of w.openings) {
    const x0 = Math.max(o.leftFt * PER_FT, from);
    const x1 = Math.min(rightFt(o) * PER_FT, to);
    const y0 = Math.max(o.sillFt * PER_FT, s.bottom);
    const y1 = Math.min(headFt(o) * PER_FT, s.top);
    if (x1 - x0 < 1 || y1 - y0 < 1) continue;
    cuts.push(`${o.name}: ${plain((x1 - x0) / PER_IN)} x ${plain((y1 - y0) / PER_IN)} in`);
  }
  return cuts;
}

export function namedJoints(
  walls: readonly CoursedWall[],
  parts: readonly Stretch[],
  joints: readonly (readonly number[])[],
): readonly CourseJoint[] {
  return parts.flatMap((s, i) =>
    (joints[i] ?? []).map((x) => {
      const w = walls[s.wall] as CoursedWall;
      const topFt = Math.min(s.top / PER_FT, heightAtFt(w.wall, x / PER_FT));
      return { wall: w.wall.name, course: s.course + 1, xFt: x / PER_FT, bottomFt: s.bottom / PER_FT, topFt };
    }),
  );
}

/** What is left to keep, largest first; alike ones stay apart, each with its origin, and several of one origin with a number. */
export function keptOffcuts(plan: CutPlan, stock: readonly Offcut[]): readonly Offcut[] {
  const kept = plan.rests
    .filter((r) => r.length >= KEEP_IN * PER_IN && r.height >= KEEP_IN * PER_IN)
    .sort((a, b) => b.length * b.height - a.length * a.height || b.source - a.source);
  return kept.map((r, i) => {
    const name = r.source < 0 ? (stock[-1 - r.source]?.name ?? "") : `rest of panel ${r.source + 1}`;
    const alike = kept.filter((other) => other.source === r.source).length;
    const number = kept.slice(0, i + 1).filter((other) => other.source === r.source).length;
    return {
      name: alike === 1 ? name : `${name}, ${number}`,
      lengthIn: r.length / PER_IN,
      widthIn: r.height / PER_IN,
    };
  });
}
