import { describe, expect, test } from "vitest";
import { fewestJoints, fitsPanels, jointsFrom } from "../../../../src/core/takeoff/courses/joints.ts";
import { type Stretch, stretches } from "../../../../src/core/takeoff/courses/layout.ts";
import type { CourseRules } from "../../../../src/core/takeoff/courses/types.ts";
import { in64, levelWall, RULES } from "./walls.ts";

const MODULE = [0, 96, 192, 288, 384, 480, 576, 672, 768];

/** The only stretch of a wall of one course, and joints on it in inches. */
function course(columnsIn: readonly number[], rules: CourseRules = RULES) {
  const wall = levelWall(columnsIn, 48);
  const s = stretches([wall], rules)[0] as Stretch;
  const inches = (joints: readonly number[]) => joints.map((x) => x / 64);
  return {
    fewest: inches(fewestJoints(wall, s, rules)),
    from: (share: number, ...avoid: readonly number[]) =>
      inches(jointsFrom(wall, s, rules, share, new Set(avoid.map(in64)))),
    fits: (...joints: readonly number[]) => fitsPanels(wall, s, joints.map(in64), rules),
  };
}

describe("joints from the left", () => {
  test("each as far as a panel reaches; a panel reaches as far as its length and the gap", () => {
    expect(course(MODULE).fewest).toEqual([384]);
    expect(course([0, 192, 384]).fewest).toEqual([]);
    expect(course([0, 192, 384.125]).fewest).toEqual([]);
    expect(course([0, 192, 384.25]).fewest).toEqual([192]);
  });

  test("a first piece that takes a share of a panel shifts the others", () => {
    const { from } = course(MODULE);
    expect([from(0.5), from(0.25), from(0.75), from(1)]).toEqual([[192, 576], [96, 480], [288, 672], [384]]);
    expect(course([0, 96, 192]).from(0.5)).toEqual([96]);
    // 16 ft and the gap are just half a panel; a bay wider than the share is not shifted.
    expect(course([0, 192.125, 384]).from(0.5)).toEqual([192.125]);
    expect(course([0, 193, 500]).from(0.5)).toEqual([193]);
    expect(course([0, 193, 384]).from(0.5)).toEqual([]);
  });

  test("off the columns to avoid where another is within reach", () => {
    const { from } = course(MODULE);
    expect(from(1, 384)).toEqual([288, 672]);
    expect(from(0.5, 192)).toEqual([96, 480]);
    expect(from(1, 96, 192, 288, 384)).toEqual([384]);
    // Past the first joint at 30 ft only the next column is in reach, and it is taken though it is to be avoided.
    expect(course([0, 360, 720, 1080]).from(1, in64(720) / 64)).toEqual([360, 720]);
  });
});

test("joints fit where no piece is longer than a panel and each has a length", () => {
  const { fits } = course(MODULE);
  expect([fits(384), fits(288), fits(288, 672), fits()]).toEqual([true, false, true, false]);
  expect([course([0, 192, 384.125]).fits(), course([0, 192, 384.25]).fits()]).toEqual([true, false]);
  expect(fits(384, 384.125)).toBe(false);
  expect([fits(384, 384.25), fits(384, 384.140625)]).toEqual([true, true]);
});
