import { expect, test } from "vitest";
import { coursesBound } from "../../../../src/core/takeoff/courses/bound.ts";
import { type Size, stretches } from "../../../../src/core/takeoff/courses/layout.ts";
import type { CoursedWall, CourseRules } from "../../../../src/core/takeoff/courses/types.ts";
import { in64, levelWall, RULES } from "./walls.ts";

const bound = (walls: readonly CoursedWall[], change: Partial<CourseRules> = {}, stock: readonly Size[] = []) => {
  const rules = { ...RULES, ...change };
  return coursesBound(walls, stretches(walls, rules), stock, rules);
};
const times = (n: number, wall: CoursedWall) => Array.from({ length: n }, () => wall);
const HALF = levelWall([0, 192], 48);
/** Half a course high: what is ripped counts by its area alone. */
const RIPPED = levelWall([0, 384], 24);

test("the run of full-height pieces, each with a saw cut: a panel holds its length and the cut after it", () => {
  // Two pieces of 16 ft less the gap, and a cut each: 384, just 384-1/8 and 384-1/4 in against 384-1/8.
  expect(bound(times(2, HALF))).toBe(1);
  expect(bound(times(2, HALF), { jointGapIn: 0.0625 })).toBe(1);
  expect(bound(times(2, HALF), { jointGapIn: 0 })).toBe(2);
  expect(bound(times(3, HALF))).toBe(2);
  // A cut of an inch: 385-3/4 in against 385.
  expect(bound(times(2, HALF), { kerfIn: 1 })).toBe(2);
});

test("the area of all pieces over that of a panel", () => {
  expect(bound(times(2, RIPPED), { jointGapIn: 0 })).toBe(1);
  expect(bound(times(3, RIPPED), { jointGapIn: 0 })).toBe(2);
  expect(bound(times(4, RIPPED))).toBe(2);
  expect(bound(times(5, RIPPED))).toBe(3);
});

test("joints add saw cuts and take gaps off: whichever number of them gives the least counts", () => {
  const bays = [0, 96, 192, 288];
  // In one piece: 383-7/8 and a cut of 1 in on 385. In four: 387-1/2.
  expect(bound([levelWall([...bays, 384], 48)], { kerfIn: 1 })).toBe(1);
  // 387 in with gaps of 1 in and no cut: two pieces leave 385, four leave 383 on 384.
  expect(bound([levelWall([...bays, 387], 48)], { kerfIn: 0, jointGapIn: 1 })).toBe(1);
  expect(bound([levelWall([...bays, 389], 48)], { kerfIn: 0, jointGapIn: 1 })).toBe(2);
});

test("what is on hand is taken off: of the run where it is a full course high, of the area always", () => {
  const spare = { length: in64(191.875), height: in64(48) };
  expect(bound(times(3, HALF), {}, [spare])).toBe(1);
  expect(bound(times(3, HALF), {}, [{ ...spare, height: in64(47) }])).toBe(2);
  // Three of 191-15/16 in and their cuts are 576-3/16; one less leaves just 384-1/8.
  expect(bound(times(3, HALF), { jointGapIn: 0.0625 }, [{ ...spare, length: in64(191.9375) }])).toBe(1);
  expect(bound(times(3, RIPPED), { jointGapIn: 0 }, [{ length: in64(192), height: in64(48) }])).toBe(1);
  expect(bound(times(3, RIPPED), { jointGapIn: 0 }, [{ length: in64(190), height: in64(48) }])).toBe(2);
  expect(bound([HALF], {}, [spare, spare, spare, spare])).toBe(0);
});
