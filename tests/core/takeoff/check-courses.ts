import { expect } from "vitest";
import type {
  CoursedWall,
  CoursePiece,
  CoursePlan,
  CourseRules,
  Offcut,
} from "../../../src/core/takeoff/courses/types.ts";

/** An independent check of a plan of courses: geometry worked out anew from the walls, in plain inches. */

const CLOSE = 1 / 32;

export function checkPlan(
  walls: readonly CoursedWall[],
  onHand: readonly Offcut[],
  rules: CourseRules,
  plan: CoursePlan,
): void {
  expect(plan.panels).toBeGreaterThanOrEqual(plan.bound);
  expect(Math.max(0, ...plan.pieces.map((p) => p.panel))).toBe(plan.panels);
  for (const w of walls) checkWallCovered(w, rules, plan);
  checkStagger(plan);
  checkCuts(walls, onHand, rules, plan);
}

function edgesAt(w: CoursedWall, yIn: number): readonly [number, number] {
  const { lengthFt, heightFt, gableRiseFt } = w.wall;
  if (yIn <= heightFt * 12) return [0, lengthFt * 12];
  const inset = ((yIn - heightFt * 12) / (gableRiseFt * 12)) * lengthFt * 6;
  return [inset, lengthFt * 12 - inset];
}

/** Along the foot of each course the pieces follow one another from edge to edge, apart by a joint on a column or an opening that takes the course. */
function checkWallCovered(w: CoursedWall, rules: CourseRules, plan: CoursePlan): void {
  const top = (w.wall.heightFt + w.wall.gableRiseFt) * 12;
  const step = rules.panelWidthFt * 12;
  for (let course = 1; (course - 1) * step < top - CLOSE; course++) {
    const y0 = (course - 1) * step;
    const y1 = Math.min(y0 + step, top);
    const mine = plan.pieces
      .filter((p) => p.wall === w.name && p.course === course)
      .sort((a, b) => a.leftFt - b.leftFt);
    const [from, to] = edgesAt(w, y0);
    let at = from;
    for (const p of [...mine, undefined]) {
      const left = p === undefined ? to : p.leftFt * 12;
      checkBetween(w, rules, at, left, y0, y1, at > from && p !== undefined);
      if (p === undefined) break;
      expect(p.lengthIn).toBeGreaterThan(0);
      expect(p.bottomFt * 12).toBeCloseTo(y0, 6);
      expect(p.heightIn).toBeGreaterThanOrEqual(neededHeight(w, p, y0, y1) - CLOSE);
      at = left + p.lengthIn;
    }
  }
}

function checkBetween(
  w: CoursedWall,
  rules: CourseRules,
  from: number,
  to: number,
  y0: number,
  y1: number,
  inner: boolean,
): void {
  expect(to, "pieces do not overlap").toBeGreaterThanOrEqual(from - CLOSE);
  if (inner && to - from <= rules.jointGapIn + CLOSE) {
    const near = w.columnsFt.some((x) => Math.abs(x * 12 - (from + to) / 2) <= CLOSE);
    const butted = w.openings.some((o) => o.widthFt * 12 <= rules.jointGapIn + CLOSE);
    expect(near || butted, `the joint at ${(from + to) / 2} in lands on a column`).toBe(true);
    const open = w.openings.some(
      (o) =>
        o.leftFt * 12 + CLOSE < from &&
        (o.leftFt + o.widthFt) * 12 - CLOSE > to &&
        o.sillFt * 12 < y1 - CLOSE &&
        (o.sillFt + o.heightFt) * 12 > y0 + CLOSE,
    );
    expect(open, "no joint in an opening").toBe(false);
    return;
  }
  // What pieces leave bare must lie in openings that take the whole course, but for the gap at an end.
  let bare = to - from;
  for (const o of w.openings) {
    if (o.sillFt * 12 > y0 + CLOSE || (o.sillFt + o.heightFt) * 12 < y1 - CLOSE) continue;
    bare -= Math.max(0, Math.min(to, (o.leftFt + o.widthFt) * 12) - Math.max(from, o.leftFt * 12));
  }
  expect(bare, `${from} to ${to} in of course at ${y0} in is covered`).toBeLessThanOrEqual(rules.jointGapIn + CLOSE);
}

function neededHeight(w: CoursedWall, p: CoursePiece, y0: number, y1: number): number {
  let high = 0;
  const left = p.leftFt * 12;
  for (let i = 0; i <= 40; i++) {
    const x = left + (p.lengthIn * i) / 40;
    const along = Math.min(x, w.wall.lengthFt * 12 - x) / (w.wall.lengthFt * 6);
    high = Math.max(high, Math.min(y1, w.wall.heightFt * 12 + along * w.wall.gableRiseFt * 12) - y0);
  }
  return high;
}

function checkStagger(plan: CoursePlan): void {
  const over = plan.joints.filter((j) =>
    plan.joints.some((k) => k.wall === j.wall && k.course === j.course - 1 && Math.abs(k.xFt - j.xFt) < 1e-6),
  );
  expect(plan.exceptions).toHaveLength(over.length);
  for (const j of over) expect(plan.exceptions.some((s) => s.includes(`course ${j.course}`))).toBe(true);
}

/** Pieces lie inside what they are cut from, apart by the saw cut. */
function checkCuts(
  walls: readonly CoursedWall[],
  onHand: readonly Offcut[],
  rules: CourseRules,
  plan: CoursePlan,
): void {
  const groups = new Map<string, CoursePiece[]>();
  for (const p of plan.pieces) groups.set(p.from, [...(groups.get(p.from) ?? []), p]);
  for (const [from, pieces] of groups) {
    const size = from.startsWith("panel ")
      ? { lengthIn: rules.panelLengthFt * 12, widthIn: rules.panelWidthFt * 12 }
      : (onHand.find((o) => o.name === from) ?? cutOutSize(walls, rules, from));
    pieces.forEach((p, i) => {
      expect(p.alongIn + p.lengthIn).toBeLessThanOrEqual(size.lengthIn + 1e-6);
      expect(p.upIn + p.heightIn).toBeLessThanOrEqual(size.widthIn + 1e-6);
      for (const q of pieces.slice(i + 1)) {
        const gap = Math.max(
          q.alongIn - p.alongIn - p.lengthIn,
          p.alongIn - q.alongIn - q.lengthIn,
          q.upIn - p.upIn - p.heightIn,
          p.upIn - q.upIn - q.heightIn,
        );
        expect(gap, `${p.name} and ${q.name} on ${from}`).toBeGreaterThanOrEqual(rules.kerfIn - 1 / 64 - 1e-6);
      }
    });
  }
}

function cutOutSize(walls: readonly CoursedWall[], rules: CourseRules, name: string): Omit<Offcut, "name"> {
  const course = Number(/course (\d+)$/.exec(name)?.[1]);
  const o = walls
    .flatMap((w) => w.openings.map((x) => ({ ...x, full: walls.length === 1 ? x.name : `${w.name} ${x.name}` })))
    .find((x) => name.startsWith(`${x.full} cut-out`));
  if (o === undefined) throw new Error(`unknown offcut ${name}`);
  const y0 = (course - 1) * rules.panelWidthFt;
  const high = Math.min(o.sillFt + o.heightFt, y0 + rules.panelWidthFt) - Math.max(o.sillFt, y0);
  return { lengthIn: o.widthFt * 12 - 2 * rules.kerfIn, widthIn: high * 12 };
}
