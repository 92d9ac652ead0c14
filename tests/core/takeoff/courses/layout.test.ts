import { describe, expect, test } from "vitest";
import { pieceHeight, type Stretch, stretches, stretchPieces } from "../../../../src/core/takeoff/courses/layout.ts";
import type { CoursedWall, CourseRules } from "../../../../src/core/takeoff/courses/types.ts";
import { in64, levelWall, opening, RULES } from "./walls.ts";

const BAYS = [0, 96, 192, 288, 384];

/** Stretches with lengths in inches. */
function parts(walls: readonly CoursedWall[], change: Partial<CourseRules> = {}) {
  return stretches(walls, { ...RULES, ...change }).map((s) => ({
    wall: s.wall,
    course: s.course,
    ends: [s.from / 64, s.to / 64],
    heights: [s.bottom / 64, s.top / 64],
    gaps: [s.gapLeft / 64, s.gapRight / 64],
    places: s.places.map((x) => x / 64),
    narrow: [...s.narrow].map((x) => x / 64),
  }));
}

const GABLE: CoursedWall = {
  wall: { name: "gable", lengthFt: 32, heightFt: 5, riseFt: 4, top: "gable" },
  columnsFt: BAYS.map((x) => x / 12),
  openings: [],
};

describe("stretches of courses", () => {
  test("from the foot up, the last course to the top, wall by wall; half a gap at each end", () => {
    const whole = { ends: [0, 384], gaps: [0.0625, 0.0625], places: [96, 192, 288], narrow: [] };
    expect(parts([levelWall(BAYS, 72), levelWall(BAYS, 48)])).toEqual([
      { wall: 0, course: 0, heights: [0, 48], ...whole },
      { wall: 0, course: 1, heights: [48, 72], ...whole },
      { wall: 1, course: 0, heights: [0, 48], ...whole },
    ]);
  });

  test("an opening that takes a course's height leaves that part out, without a gap at it", () => {
    const door = opening("D", 110, 0, 40, 48);
    const found = parts([levelWall(BAYS, 96, [door])]);
    expect(found.map((s) => [s.course, s.ends, s.gaps, s.places])).toEqual([
      [0, [0, 110], [0.0625, 0], [96]],
      [0, [150, 384], [0, 0.0625], [192, 288]],
      [1, [0, 384], [0.0625, 0.0625], [96, 192, 288]],
    ]);
    const low = parts([levelWall(BAYS, 96, [opening("D", 110, 0, 40, 47.9)])]);
    expect(low.map((s) => s.ends)).toEqual([
      [0, 384],
      [0, 384],
    ]);
  });

  test("at the ends of a wall and side by side, in any order", () => {
    const ends = [opening("B", 340, 0, 44, 48), opening("A", 0, 0, 50, 48), opening("C", 200, 0, 40, 48)];
    expect(parts([levelWall(BAYS, 48, ends)]).map((s) => [s.ends, s.gaps])).toEqual([
      [
        [50, 200],
        [0, 0],
      ],
      [
        [240, 340],
        [0, 0],
      ],
    ]);
  });

  test("no joint in an opening that crosses the course; on its edge there is one", () => {
    const rules = { leastLegIn: 0, jointGapIn: 0 };
    const window = (x: number, y: number) => [opening("W", x, y, 40, 30)];
    expect(parts([levelWall(BAYS, 96, window(80, 12))], rules).map((s) => s.places)).toEqual([
      [192, 288],
      [96, 192, 288],
    ]);
    expect(parts([levelWall(BAYS, 96, window(96, 12))], rules)[0]?.places).toEqual([96, 192, 288]);
    expect(parts([levelWall(BAYS, 96, window(56, 12))], rules)[0]?.places).toEqual([96, 192, 288]);
    expect(parts([levelWall(BAYS, 96, window(80, 33))], rules).map((s) => s.places)).toEqual([
      [192, 288],
      [192, 288],
    ]);
    // It ends where course 1 ends, or begins where course 2 begins: the other course does not know it.
    expect(parts([levelWall(BAYS, 96, window(80, 18))], rules)[1]?.places).toEqual([96, 192, 288]);
    expect(parts([levelWall(BAYS, 96, window(80, 48))], rules)[0]?.places).toEqual([96, 192, 288]);
  });

  test("columns in any order, one named twice once", () => {
    const wall = { ...levelWall(BAYS, 48), columnsFt: [32, 8, 0, 24, 8, 16] };
    expect(parts([wall])[0]?.places).toEqual([96, 192, 288]);
  });

  test("legs of just the least are none too narrow: half a gap goes off them, on either side", () => {
    // 100 - 96 and 192 - 186 in, less a sixteenth: legs of 3-15/16 and 5-15/16 in.
    const window = [opening("W", 100, 12, 86, 24)];
    const narrow = (leastLegIn: number) => parts([levelWall(BAYS, 48, window)], { leastLegIn })[0]?.narrow;
    expect(narrow(3.9375)).toEqual([]);
    expect(narrow(3.953125)).toEqual([96]);
    expect(narrow(5.9375)).toEqual([96]);
    expect(narrow(5.953125)).toEqual([96, 192]);
    expect(parts([levelWall(BAYS, 48, window)], { leastLegIn: 7 })[0]?.places).toEqual([288]);
  });

  test("a joint leaves a foot at both ends where another column serves", () => {
    expect(parts([levelWall([0, 11, 12, 372, 373, 384], 48)])[0]?.places).toEqual([12, 372]);
    expect(parts([levelWall([0, 11, 390], 48)])[0]?.places).toEqual([11]);
    expect(parts([levelWall([0, 380, 390], 48)])[0]?.places).toEqual([380]);
  });

  test("narrow legs before short pieces where the panels reach no other column, and both where there is nothing else", () => {
    const window = [opening("W", 194, 12, 60, 24)];
    // 390 in take a joint: at 192 in it leaves a leg of 2 in, at 4 in a piece of 4 in.
    expect(parts([levelWall([0, 10, 192, 390], 48, window)])[0]?.places).toEqual([10]);
    expect(parts([levelWall([0, 192, 390], 48, window)])[0]?.places).toEqual([192]);
    const both = parts([levelWall([0, 10, 192, 570], 48, window)])[0]?.places;
    expect(both).toEqual([192]);
    expect(parts([levelWall([0, 10, 192, 390, 395, 770], 48, window)])[0]?.places).toEqual([10, 390, 395]);
  });

  test("a gable: courses narrow with the rake", () => {
    // 60 in at the ends and 108 in at the peak: at 96 in the wall is 1/4 of its length wide, about the middle.
    expect(parts([GABLE]).map((s) => [s.course, s.ends, s.heights])).toEqual([
      [0, [0, 384], [0, 48]],
      [1, [0, 384], [48, 96]],
      [2, [144, 240], [96, 108]],
    ]);
  });
});

describe("pieces of a stretch", () => {
  const inches = (wall: CoursedWall, s: Stretch, ...joints: readonly number[]) =>
    stretchPieces(wall, s, joints.map(in64), RULES).map((p) => [p.length / 64, p.height / 64]);

  test("shorter than their bays by the gaps beside them", () => {
    const wall = levelWall(BAYS, 48, [opening("D", 0, 0, 50, 48)]);
    const [s] = stretches([wall], RULES) as [Stretch];
    expect(inches(wall, s)).toEqual([[333.9375, 48]]);
    expect(inches(wall, s, 192)).toEqual([
      [141.9375, 48],
      [191.875, 48],
    ]);
    expect(inches(wall, s, 96, 192)).toEqual([
      [45.9375, 48],
      [95.875, 48],
      [191.875, 48],
    ]);
  });

  test("as high as the wall between their ends", () => {
    const [, second, third] = stretches([GABLE], RULES) as [Stretch, Stretch, Stretch];
    // The rake climbs 1/4: 84 in at 96 in from the end, 96 in at 144 in, 60 in at the end.
    expect(inches(GABLE, second, 96, 288).map((p) => p[1])).toEqual([36, 48, 36]);
    expect(pieceHeight(GABLE, second, 0, in64(40)) / 64).toBe(22);
    expect(pieceHeight(GABLE, second, 0, in64(40.01)) / 64).toBe(22 + 1 / 64);
    expect(inches(GABLE, third)).toEqual([[95.875, 12]]);
  });
});

test("a bay without a column is named by its ends and its course", () => {
  expect(() => parts([levelWall([0, 96, 490], 48)])).toThrow(
    /Course 1 of w has no column for a joint from 8 to 40.8333 ft/,
  );
  expect(() => parts([levelWall([0, 384, 800], 48)])).toThrow(/from 32 to 66.6667 ft/);
  expect(() => parts([levelWall([0, 200, 300, 800], 48)])).toThrow(/from 25 to 66.6667 ft/);
  expect(() => parts([levelWall([0, 390], 96)])).toThrow(/Course 1 of w .* from 0 to 32.5 ft/);
  expect(() => parts([levelWall([0, 384.125], 96)])).not.toThrow();
});
