import fc from "fast-check";
import { expect, test } from "vitest";
import { coursesBound } from "../../../../src/core/takeoff/courses/bound.ts";
import { cutCourses } from "../../../../src/core/takeoff/courses/cutting.ts";
import { fitsPanels } from "../../../../src/core/takeoff/courses/joints.ts";
import { type Stretch, stretches, stretchPieces } from "../../../../src/core/takeoff/courses/layout.ts";
import { searchJoints } from "../../../../src/core/takeoff/courses/search.ts";
import type { CoursedWall } from "../../../../src/core/takeoff/courses/types.ts";
import { in64, levelWall, RULES } from "./walls.ts";

type Goals = readonly [clashes: number, panels: number, joints: number];

/** Every set of joints that the panels allow on a stretch. */
function choices(wall: CoursedWall, s: Stretch): readonly (readonly number[])[] {
  let sets: readonly (readonly number[])[] = [[]];
  for (const x of s.places) sets = [...sets, ...sets.map((j) => [...j, x])];
  return sets.filter((j) => fitsPanels(wall, s, j, RULES));
}

/** The best that any joints of two courses reach, by trying them all. */
function best(wall: CoursedWall, [low, high]: readonly [Stretch, Stretch]): Goals {
  const panel = { length: in64(384), height: in64(48) };
  let found: Goals = [Number.POSITIVE_INFINITY, 0, 0];
  for (const a of choices(wall, low)) {
    for (const b of choices(wall, high)) {
      const pieces = [...stretchPieces(wall, low, a, RULES), ...stretchPieces(wall, high, b, RULES)];
      const clashes = b.filter((x) => a.includes(x)).length;
      if (clashes > found[0]) continue;
      const now: Goals = [clashes, cutCourses(pieces, [], panel, 8).panels, a.length + b.length];
      const at = now.findIndex((x, i) => x !== found[i]);
      if (at >= 0 && (now[at] ?? 0) < (found[at] ?? 0)) found = now;
    }
  }
  return found;
}

/** Widths of bays in feet, and the height of two courses: whole ones, one ripped in half or to a strip. */
const WALLS = fc.sample(
  fc.tuple(fc.array(fc.integer({ min: 4, max: 22 }), { minLength: 4, maxLength: 6 }), fc.constantFrom(96, 72, 60)),
  { numRuns: 20, seed: 5 },
);

test("on walls of two courses the search finds what trying all joints finds", () => {
  for (const [feet, heightIn] of WALLS) {
    const columns = [0];
    for (const ft of feet) columns.push((columns.at(-1) ?? 0) + 12 * ft);
    const wall = levelWall(columns, heightIn);
    const parts = stretches([wall], RULES) as readonly [Stretch, Stretch];
    const { clashes, plan, count } = searchJoints([wall], parts, [], RULES, coursesBound([wall], parts, [], RULES));
    expect([clashes, plan.panels, count]).toEqual(best(wall, parts));
  }
});
