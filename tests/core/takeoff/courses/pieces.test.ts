import { describe, expect, test } from "vitest";
import { planCourses } from "../../../../src/core/takeoff/courses/courses.ts";
import type { CutPlan } from "../../../../src/core/takeoff/courses/cutting.ts";
import { stretches } from "../../../../src/core/takeoff/courses/layout.ts";
import { cutOuts, keptOffcuts, namedJoints, sizeOf } from "../../../../src/core/takeoff/courses/pieces.ts";
import type { CoursedWall, CourseRules } from "../../../../src/core/takeoff/courses/types.ts";
import { in64, levelWall, opening, RULES } from "./walls.ts";

const BAYS = [0, 96, 192, 288, 384];

function outs(walls: readonly CoursedWall[], change: Partial<CourseRules> = {}) {
  const rules = { ...RULES, ...change };
  return cutOuts(walls, stretches(walls, rules), rules).map((o) => [o.name, o.lengthIn, o.widthIn]);
}

describe("cut-outs of openings", () => {
  const one = (x: number, y: number, w: number, h: number) => outs([levelWall(BAYS, 96, [opening("W", x, y, w, h)])]);

  test("a saw cut off both ends, and off each edge inside the course", () => {
    expect(one(100, 36, 60, 48)).toEqual([
      ["W cut-out, course 1", 59.75, 11.875],
      ["W cut-out, course 2", 59.75, 35.875],
    ]);
    expect(one(100, 12, 60, 24)).toEqual([["W cut-out, course 1", 59.75, 23.75]]);
    expect(one(100, 60, 60, 36)).toEqual([["W cut-out, course 2", 59.75, 35.875]]);
  });

  test("down to whole sixty-fourths", () => {
    // 60 - 0.2 = 59.8 in are 3827.2 sixty-fourths.
    expect(outs([levelWall(BAYS, 48, [opening("W", 100, 12, 60, 24)])], { kerfIn: 0.1 })).toEqual([
      ["W cut-out, course 1", 3827 / 64, 1523 / 64],
    ]);
    expect(sizeOf({ name: "", lengthIn: 10.01, widthIn: 6.99 })).toEqual({ length: 640, height: 447 });
  });

  test("kept from 6 in either way", () => {
    expect(one(100, 12, 6.25, 24)).toHaveLength(1);
    expect(one(100, 12, 6.234375, 24)).toHaveLength(0);
    expect(one(100, 12, 60, 6.25)).toHaveLength(1);
    expect(one(100, 12, 60, 6.234375)).toHaveLength(0);
  });

  test("none of what a course leaves out whole", () => {
    expect(one(100, 0, 40, 82)).toEqual([["W cut-out, course 2", 39.75, 33.875]]);
    expect(one(100, 0, 40, 96)).toEqual([]);
  });

  test("by the wall where there are several", () => {
    const south = levelWall(BAYS, 48, [opening("W", 100, 12, 60, 24)], "south");
    expect(outs([south, levelWall(BAYS, 48, [], "north")])).toEqual([["south W cut-out, course 1", 59.75, 23.75]]);
    const door = levelWall(BAYS, 48, [opening("D", 100, 0, 60, 48)], "north");
    expect(outs([south, door])).toHaveLength(1);
  });
});

describe("what is kept", () => {
  const rest = (source: number, lengthIn: number, heightIn: number) => ({
    source,
    x: 0,
    y: 0,
    length: in64(lengthIn),
    height: in64(heightIn),
  });
  const kept = (...rests: CutPlan["rests"]) =>
    keptOffcuts({ panels: 2, places: [], rests }, [
      { name: "spare", lengthIn: 99, widthIn: 48 },
      { name: "old", lengthIn: 99, widthIn: 48 },
    ]).map((o) => [o.name, o.lengthIn, o.widthIn]);

  test("largest first, by where it comes from, numbered where there are several", () => {
    expect(kept(rest(0, 10, 40), rest(1, 60, 12), rest(-1, 20, 30), rest(0, 100, 48), rest(-2, 9, 9))).toEqual([
      ["rest of panel 1, 1", 100, 48],
      ["rest of panel 2", 60, 12],
      ["spare", 20, 30],
      ["rest of panel 1, 2", 10, 40],
      ["old", 9, 9],
    ]);
  });

  test("numbered from the largest, one after the other", () => {
    expect(kept(rest(0, 20, 30), rest(0, 100, 48), rest(0, 60, 12)).map((o) => o[0])).toEqual([
      "rest of panel 1, 1",
      "rest of panel 1, 2",
      "rest of panel 1, 3",
    ]);
  });

  test("from 6 in both ways; of alike ones the later panel first", () => {
    expect(kept(rest(0, 6, 6), rest(1, 5.9, 40), rest(1, 40, 5.9))).toEqual([["rest of panel 1", 6, 6]]);
    expect(kept(rest(0, 20, 10), rest(1, 10, 20)).map((o) => o[0])).toEqual(["rest of panel 2", "rest of panel 1"]);
    expect(kept(rest(1, 20, 10), rest(0, 10, 20)).map((o) => o[0])).toEqual(["rest of panel 2", "rest of panel 1"]);
  });
});

const GABLE: CoursedWall = {
  wall: { name: "gable", lengthFt: 32, heightFt: 5, riseFt: 4, top: "gable" },
  columnsFt: BAYS.map((x) => x / 12),
  openings: [],
};

test("a joint goes up to the course's edge or the rake", () => {
  const parts = stretches([GABLE], RULES);
  expect(namedJoints([GABLE], parts, [[in64(96)], [in64(96), in64(192)], [in64(192)]])).toEqual([
    { wall: "gable", course: 1, xFt: 8, bottomFt: 0, topFt: 4 },
    { wall: "gable", course: 2, xFt: 8, bottomFt: 4, topFt: 7 },
    { wall: "gable", course: 2, xFt: 16, bottomFt: 4, topFt: 8 },
    { wall: "gable", course: 3, xFt: 16, bottomFt: 8, topFt: 9 },
  ]);
});

describe("pieces of a plan", () => {
  const rows = (walls: readonly CoursedWall[], onHand: Parameters<typeof planCourses>[1] = []) =>
    planCourses(walls, onHand, RULES).pieces.map((p) => [
      p.mark,
      p.leftFt * 12,
      p.bottomFt * 12,
      p.lengthIn,
      p.heightIn,
    ]);

  test("numbered from the left in each course of each wall; a piece beside a door begins at its edge", () => {
    const door = levelWall([0, 96, 192, 288], 96, [opening("D", 100, 0, 40, 48)], "south");
    expect(rows([door, levelWall([0, 96], 48, [], "north")])).toEqual([
      ["S 1-1", expect.closeTo(0.0625, 9), 0, 99.9375, 48],
      ["S 1-2", expect.closeTo(140, 9), 0, 147.9375, 48],
      ["S 2-1", expect.closeTo(0.0625, 9), 48, 287.875, 48],
      ["N 1-1", expect.closeTo(0.0625, 9), 0, 95.875, 48],
    ]);
  });

  test("each cut after the rectangle: openings by the part that the piece holds, rakes by their side", () => {
    const cuts = (wall: CoursedWall) => planCourses([wall], [], RULES).pieces.map((p) => p.cuts);
    expect(cuts(levelWall(BAYS, 96, [opening("W", 100, 36, 60, 48)]))).toEqual(["W: 60 x 12 in", "W: 60 x 36 in"]);
    expect(cuts(levelWall(BAYS, 96, [opening("W", 100, 48, 60, 36), opening("V", 200, 6, 40, 30)]))).toEqual([
      "V: 40 x 30 in",
      "W: 60 x 36 in",
    ]);
    expect(cuts(GABLE)).toEqual(["", "rake left and right", "rake left and right"]);
    expect(cuts({ ...GABLE, openings: [opening("W", 180, 60, 24, 20)] })[1]).toBe("rake left and right; W: 24 x 20 in");
    // 40 ft: a joint in every course, so that a piece has one rake only or none.
    const long = { ...GABLE, wall: { ...GABLE.wall, lengthFt: 48, heightFt: 4 }, columnsFt: [0, 24, 48] };
    expect(cuts(long)).toEqual(["", "", "rake left", "rake right"]);
  });

  test("from what and where on it: panels from 1, what is on hand by its name", () => {
    const low = levelWall([0, 96, 192], 72);
    const plan = planCourses([low], [{ name: "spare", lengthIn: 200, widthIn: 24 }], RULES);
    expect(plan.pieces.map((p) => [p.panel, p.from, p.alongIn, p.upIn])).toEqual([
      [1, "panel 1", 0, 0],
      [0, "spare", 0, 0],
    ]);
    const two = planCourses([levelWall([0, 150], 72)], [], RULES).pieces;
    expect(two.map((p) => [p.panel, p.from, p.alongIn, p.upIn])).toEqual([
      [1, "panel 1", 0, 0],
      [1, "panel 1", 150, 0],
    ]);
  });
});
