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
  checkLegs(walls, rules, plan);
  checkMarks(plan);
  checkCuts(walls, onHand, rules, plan);
}

/** Height of the wall, from the corners of its top. */
function topAt(w: CoursedWall, xIn: number): number {
  const { lengthFt, heightFt, riseFt, top } = w.wall;
  const [long, high, up] = [lengthFt * 12, heightFt * 12, riseFt * 12];
  if (top === "shed") return high + (up * xIn) / long;
  return high + (up * Math.min(xIn, long - xIn)) / (long / 2);
}

function edgesAt(w: CoursedWall, yIn: number): readonly [number, number] {
  // By trial, in thousandths of the wall: heights are worked out from the corners of the top.
  const steps = 96_000;
  const inside = (i: number) => topAt(w, (w.wall.lengthFt * 12 * i) / steps) >= yIn - 1e-9;
  let [from, to] = [0, steps];
  while (from < steps && !inside(from)) from++;
  while (to > 0 && !inside(to)) to--;
  return [(w.wall.lengthFt * 12 * from) / steps, (w.wall.lengthFt * 12 * to) / steps];
}

/** Along the foot of each course the pieces follow one another from edge to edge, apart by a joint on a column or an opening that takes the course. */
function checkWallCovered(w: CoursedWall, rules: CourseRules, plan: CoursePlan): void {
  const top = (w.wall.heightFt + Math.max(0, w.wall.riseFt)) * 12;
  const step = rules.panelWidthFt * 12;
  for (let course = 1; (course - 1) * step < top - CLOSE; course++) {
    const y0 = (course - 1) * step;
    const y1 = Math.min(y0 + step, top);
    const mine = plan.pieces
      .filter((p) => p.wall === w.wall.name && p.course === course)
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
  const left = p.leftFt * 12;
  const heights = Array.from({ length: 41 }, (_, i) => topAt(w, left + (p.lengthIn * i) / 40));
  return Math.min(y1, Math.max(...heights)) - y0;
}

function checkStagger(plan: CoursePlan): void {
  const over = plan.joints.filter((j) =>
    plan.joints.some((k) => k.wall === j.wall && k.course === j.course - 1 && Math.abs(k.xFt - j.xFt) < 1e-6),
  );
  expect(plan.exceptions.filter((s) => s.includes("stands over"))).toHaveLength(over.length);
  for (const j of over) expect(plan.exceptions.some((s) => s.includes(`course ${j.course}`))).toBe(true);
}

/** A joint leaves no strip of panel beside an opening that is narrower than the least leg, or the plan says so. */
function checkLegs(walls: readonly CoursedWall[], rules: CourseRules, plan: CoursePlan): void {
  const narrow = plan.joints.filter((j) => {
    const w = walls.find((x) => x.wall.name === j.wall);
    const [y0, y1] = [(j.course - 1) * rules.panelWidthFt, j.course * rules.panelWidthFt];
    return w?.openings.some((o) => {
      const crosses = o.sillFt < y1 - CLOSE / 12 && o.sillFt + o.heightFt > y0 + CLOSE / 12;
      const whole =
        o.sillFt <= y0 + 1e-6 &&
        o.sillFt + o.heightFt >= Math.min(y1, w.wall.heightFt + Math.max(0, w.wall.riseFt)) - 1e-6;
      if (!crosses || whole) return false;
      const legIn =
        12 * Math.min(Math.abs(o.leftFt - j.xFt), Math.abs(j.xFt - o.leftFt - o.widthFt)) - rules.jointGapIn / 2;
      return legIn < rules.leastLegIn - CLOSE;
    });
  });
  expect(plan.exceptions.filter((s) => s.includes("leaves a leg")).length).toBeGreaterThanOrEqual(narrow.length);
}

/** No two pieces of a house have one mark. */
function checkMarks(plan: CoursePlan): void {
  expect(new Set(plan.pieces.map((p) => p.mark)).size).toBe(plan.pieces.length);
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
    .flatMap((w) => w.openings.map((x) => ({ ...x, full: walls.length === 1 ? x.name : `${w.wall.name} ${x.name}` })))
    .find((x) => name.startsWith(`${x.full} cut-out`));
  if (o === undefined) throw new Error(`unknown offcut ${name}`);
  const y0 = (course - 1) * rules.panelWidthFt;
  const high = Math.min(o.sillFt + o.heightFt, y0 + rules.panelWidthFt) - Math.max(o.sillFt, y0);
  return { lengthIn: o.widthFt * 12 - 2 * rules.kerfIn, widthIn: high * 12 };
}
