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
function walls(least: number, most: number, count: number) {
  const bays = fc.array(fc.integer({ min: 4, max: 22 }), { minLength: least, maxLength: most });
  return fc.sample(fc.tuple(bays, fc.constantFrom(96, 72, 60)), { numRuns: count, seed: 5 }).map(([feet, heightIn]) => {
    const columns = [0];
    for (const ft of feet) columns.push((columns.at(-1) ?? 0) + 12 * ft);
    return levelWall(columns, heightIn);
  });
}

function compared(wall: CoursedWall): readonly [found: Goals, best: Goals] {
  const parts = stretches([wall], RULES) as readonly [Stretch, Stretch];
  const { clashes, plan, count } = searchJoints([wall], parts, [], RULES, coursesBound([wall], parts, [], RULES));
  return [[clashes, plan.panels, count], best(wall, parts)];
}

test("on walls of few columns the search finds the best of all choices of joints", () => {
  for (const wall of walls(4, 6, 20)) {
    const [found, least] = compared(wall);
    expect(found).toEqual(least);
  }
});

test("on walls of more columns it comes within a panel of it, and reaches it on most", () => {
  const reached = walls(7, 7, 8).map((wall) => {
    const [found, least] = compared(wall);
    expect(found[0]).toBe(least[0]);
    expect(found[1] - least[1]).toBeLessThanOrEqual(1);
    return found[1] === least[1] && found[2] === least[2];
  });
  // All but one of these eight: the search by chance proves nothing, and says "least found".
  expect(reached.filter((r) => !r).length).toBeLessThanOrEqual(1);
});
