import { describe, expect, test } from "vitest";
import { coursesBound } from "../../../../src/core/takeoff/courses/bound.ts";
import { stretches } from "../../../../src/core/takeoff/courses/layout.ts";
import { clashesOf, narrowJoints, searchJoints } from "../../../../src/core/takeoff/courses/search.ts";
import type { CoursedWall } from "../../../../src/core/takeoff/courses/types.ts";
import { in64, levelWall, opening, RULES } from "./walls.ts";

/** The choice for walls, with nothing on hand. */
function search(...walls: readonly CoursedWall[]) {
  const parts = stretches(walls, RULES);
  const choice = searchJoints(walls, parts, [], RULES, coursesBound(walls, parts, [], RULES));
  const { clashes, narrow, count, plan, cost } = choice;
  return { clashes, narrow, count, panels: plan.panels, cost, joints: choice.joints.map((j) => j.map((x) => x / 64)) };
}

// Where there is one choice only, its cost is by hand: 1000 a panel, 20 a joint, 100000 a joint over a joint, 30000 a leg too narrow,
// less 6000 times the sum of the squares of what is left of panels, as shares of one, over the panels.
describe("the cost of a choice", () => {
  test("half a panel left", () => {
    expect(search(levelWall([0, 192], 48))).toEqual({
      clashes: 0,
      narrow: 0,
      count: 0,
      panels: 1,
      cost: 1000 - 6000 * 0.5 ** 2,
      joints: [[]],
    });
  });

  test("a joint, and two panels used up", () => {
    expect(search(levelWall([0, 384, 768], 48))).toMatchObject({ count: 1, panels: 2, cost: 2020, joints: [[384]] });
  });

  test("joints over one another where the only column is over itself", () => {
    const two = levelWall([0, 384, 768], 96);
    expect(search(two)).toMatchObject({ clashes: 1, count: 2, panels: 4, cost: 100_000 + 4 * 1000 + 2 * 20 });
    expect(search({ ...two, wall: { ...two.wall, heightFt: 12 } })).toMatchObject({ clashes: 2, cost: 206_060 });
    expect(search(two, levelWall([0, 384, 768], 48)), "another wall's joints are beside, not above").toMatchObject({
      clashes: 1,
      cost: 106_060,
    });
  });

  test("legs too narrow where both columns stand at the window", () => {
    // Pieces of 191-7/8, 367-7/8, 244-3/8 and 315-3/8 in: none share a panel of 384 in; the saw takes 1/8 of each rest.
    const window = opening("W1", 194.25, 36, 48, 48);
    const found = search(levelWall([0, 192, 244.5, 560], 96, [window]));
    const left = [192, 16, 139.5, 68.5].reduce((sum, x) => sum + (x / 384) ** 2, 0);
    expect(found).toMatchObject({ clashes: 0, narrow: 2, count: 2, panels: 4 });
    expect(found.cost).toBeCloseTo(2 * 30_000 + 4 * 1000 + 2 * 20 - (6000 * left) / 4, 6);
    expect(found.joints.flat().sort()).toEqual([192, 244.5]);
  });
});

describe("what the search finds", () => {
  test("fewest panels before fewest joints", () => {
    // Two courses of 576 in: 3 panels are 1152 in, all of them used: 384 + 192 in one course, and the other way round.
    const found = search(levelWall([0, 192, 384, 576], 96));
    expect(found).toMatchObject({ clashes: 0, count: 2, panels: 3, joints: [[384], [192]] });
  });

  test("the largest leftover where panels and joints are alike", () => {
    // 480 in: one joint at 96, 192, 288 or 384 in; all take two panels. 96 + 384 leaves 288 in in one, more gathered than 192 + 96.
    const { joints, cost } = search(levelWall([0, 96, 192, 288, 384, 480], 48));
    expect([96, 384]).toContain(joints[0]?.[0]);
    expect(cost).toBeCloseTo(2020 - (6000 * 0.75 ** 2) / 2, 6);
    // From the left a panel reaches 240 of 480 in, and two halves of 144 in are left; from 200 in on 184 and 104 in.
    expect(search(levelWall([0, 200, 240, 480], 48)).joints).toEqual([[200]]);
  });
});

test("joints over joints are those of courses that touch, of one wall", () => {
  const walls = [levelWall([0, 96, 192, 288], 144), levelWall([0, 96, 192, 288], 48)];
  const parts = stretches(walls, RULES);
  expect(parts.map((s) => [s.wall, s.course])).toEqual([
    [0, 0],
    [0, 1],
    [0, 2],
    [1, 0],
  ]);
  const at = (...joints: readonly (readonly number[])[]) =>
    clashesOf(
      parts,
      joints.map((j) => j.map(in64)),
    ).map((c) => [c.above.course, c.at / 64]);
  expect(at([96], [192], [96], [96])).toEqual([]);
  expect(at([96, 192], [96, 192], [192], [])).toEqual([
    [1, 96],
    [1, 192],
    [2, 192],
  ]);
});

test("narrow joints are those that leave less than the least leg", () => {
  const s = stretches([levelWall([0, 192, 244.5, 560], 48, [opening("W1", 194.25, 12, 48, 24)])], RULES)[0];
  expect(s).toBeDefined();
  if (s === undefined) return;
  expect(narrowJoints(s, [in64(192)])).toEqual([in64(192)]);
  expect(narrowJoints(s, [in64(300)])).toEqual([]);
  const one = stretches([levelWall([0, 192, 384], 48, [opening("W1", 194.25, 12, 48, 24)])], RULES)[0];
  expect(one && narrowJoints(one, [in64(192)])).toEqual([in64(192)]);
});
