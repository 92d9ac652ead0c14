import { describe, expect, test } from "vitest";
import { Tape } from "../../../../src/core/kit/tape.ts";
import { planCourses } from "../../../../src/core/takeoff/courses/courses.ts";
import type { CoursedWall, CourseRules } from "../../../../src/core/takeoff/courses/types.ts";
import type { WallElevationPicture } from "../../../../src/core/takeoff/wall/pictures.ts";
import { levelWall, opening, RULES } from "./walls.ts";

const BAYS = [0, 96, 192, 288, 384];
const plan = (wall: CoursedWall, change: Partial<CourseRules> = {}) => planCourses([wall], [], { ...RULES, ...change });

function cautions(wall: CoursedWall): readonly string[] {
  const tape = new Tape();
  planCourses([wall], [], RULES, tape);
  return tape.cautions;
}

describe("what is refused", () => {
  test("more than 400 stretches of course", () => {
    const courses = (n: number) => plan(levelWall([0, 96], n), { panelWidthFt: 1 / 12, leastLegIn: 0 });
    // Four strips of 1 in lie along each of 48 and fewer rows of a panel 1 in high: four to a panel.
    expect(courses(400).panels).toBe(100);
    expect(() => courses(401)).toThrow(/have 401 stretches of course/);
  });

  test("gaps over 2 in, and gaps that take all of a panel", () => {
    expect(() => plan(levelWall(BAYS, 48), { jointGapIn: 2 })).not.toThrow();
    expect(() => plan(levelWall(BAYS, 48), { jointGapIn: 2.01 })).toThrow(
      /joint gap is 2.01 in: the method holds from 0 to 2 in/,
    );
    expect(() => plan(levelWall(BAYS, 48), { jointGapIn: 1, panelLengthFt: 1 / 12 })).toThrow(
      /panel is 1 in long: the joint gap takes all of it/,
    );
  });

  test("no gap for being more inches than a panel has feet", () => {
    expect(plan(levelWall([0, 12, 24], 48), { jointGapIn: 2, panelLengthFt: 1.5 }).panels).toBe(2);
  });

  test("columns that leave an end of the wall by more than half an inch", () => {
    const at = (...columnsIn: readonly number[]) =>
      plan({ ...levelWall(BAYS, 48), columnsFt: columnsIn.map((x) => x / 12) }).panels;
    expect([at(0.5, 383.5), at(-0.5, 384.5), at(384, 0)]).toEqual([1, 1, 1]);
    expect(() => at(0.6, 384)).toThrow(/run from 0.05 to 32 ft/);
    expect(() => at(-0.6, 384)).toThrow(/run from -0.05 to 32 ft/);
    expect(() => at(0, 383.4)).toThrow(/run from 0 to 31.95 ft/);
    expect(() => at(0, 384.6)).toThrow(/run from 0 to 32.05 ft/);
  });
});

describe("strips beside openings that are narrower than the least leg", () => {
  const strips = (heightIn: number, yIn: number, highIn: number) =>
    cautions(levelWall(BAYS, heightIn, [opening("W", 120, yIn, 60, highIn)])).filter((c) => c.startsWith("A strip"));

  test("under it from the course's edge, over it to the course's edge or the top of the wall", () => {
    expect(strips(144, 50, 30)).toEqual([
      expect.stringMatching(/^A strip of 2 in of panel is left under W of w, narrower than 6 in/),
    ]);
    expect(strips(144, 60, 33)).toEqual([expect.stringMatching(/^A strip of 3 in of panel is left over W of w/)]);
    expect(strips(88, 60, 24)).toEqual([expect.stringMatching(/^A strip of 4 in of panel is left over W of w/)]);
    expect(strips(144, 53.5, 39).map((s) => s.slice(0, 20))).toEqual(["A strip of 5.5 in of", "A strip of 3.5 in of"]);
  });

  test("none at the edge itself, nor from 6 in on", () => {
    expect(strips(144, 48, 48)).toEqual([]);
    expect(strips(100, 48, 48)).toEqual([]);
    expect(strips(144, 54, 36)).toEqual([]);
    expect(strips(90, 60, 24)).toEqual([]);
    expect(strips(144, 0, 80)).toEqual([]);
  });

  test("under a gable the top of the wall is over the straight part", () => {
    const wall = levelWall(BAYS, 88, [opening("W", 160, 60, 60, 24)]);
    expect(cautions({ ...wall, wall: { ...wall.wall, riseFt: 4 } }).filter((c) => c.startsWith("A strip"))).toEqual([]);
  });
});

describe("joints that break a rule say where", () => {
  test("over a joint: the place, the course and the wall", () => {
    expect(plan(levelWall([0, 300, 600], 144)).exceptions).toEqual([
      expect.stringMatching(/^The joint at 25 ft in course 2 of w stands over a joint of course 1:/),
      expect.stringMatching(/^The joint at 25 ft in course 3 of w stands over a joint of course 2:/),
    ]);
  });

  test("beside an opening: the place, the course and the wall", () => {
    const wall = levelWall([0, 192, 550], 96, [opening("W", 194, 60, 60, 24)]);
    expect(plan(wall).exceptions).toEqual([
      expect.stringMatching(/^The joint at 16 ft in course 2 of w stands over/),
      expect.stringMatching(
        /^The joint at 16 ft in course 2 of w leaves a leg beside an opening that is narrower than 6 in/,
      ),
    ]);
  });
});

test("the working says the bound, the joints and whether the panels are proven least", () => {
  const steps = (wall: CoursedWall) => {
    const tape = new Tape();
    planCourses([wall], [], RULES, tape);
    return tape.steps.map((s) => [s.symbol, s.value, s.expression.includes("proven")]);
  };
  expect(steps(levelWall([0, 192, 384, 576], 48))).toEqual([
    ["N_0", 2, false],
    ["J", 1, false],
    ["N", 2, true],
  ]);
  // 250 in three times: two panels by their run, but no two share one.
  expect(steps(levelWall([0, 250, 500, 750], 48))).toEqual([
    ["N_0", 2, false],
    ["J", 2, false],
    ["N", 3, false],
  ]);
});

test("columns inside an opening are told once each, columns on its edge are not", () => {
  const wall = levelWall(BAYS, 96, [opening("W", 90, 12, 102, 24)]);
  expect(cautions(wall)).toContain("Columns inside an opening take no joint there: 8 ft.");
  expect(cautions(levelWall(BAYS, 96, [opening("W", 96, 12, 96, 24)])).join()).not.toMatch(/inside an opening take/);
});

test("a leftover that a joint would enlarge is worth no joint", () => {
  // The triangle over two courses comes off the third panel in one piece, though two lower ones would leave more of it.
  const gable = levelWall(BAYS, 60);
  expect(plan({ ...gable, wall: { ...gable.wall, riseFt: 4 } })).toMatchObject({ panels: 3, joints: [] });
});

describe("the elevation", () => {
  function shown(walls: readonly CoursedWall[], onHand: Parameters<typeof planCourses>[1] = []) {
    const tape = new Tape();
    planCourses(walls, onHand, RULES, tape);
    return tape.pictures.map((p) => p as WallElevationPicture);
  }

  test("pieces as they stand, by what they come from; joints and columns from foot to top", () => {
    const wall = { ...levelWall([0, 192, 384, 576], 72), columnsFt: [16, 0, 48, 32] };
    const [view] = shown([wall], [{ name: "spare", lengthIn: 600, widthIn: 24 }]);
    expect(view?.uprights.map((u) => [u.xFt, u.bottomFt, u.topFt])).toEqual([0, 16, 32, 48].map((x) => [x, 0, 6]));
    expect(view?.joints.map((j) => [j.xFt, j.bottomFt, j.topFt])).toContainEqual([expect.closeTo(32, 9), 0, 4]);
    expect(view?.pieces.find((p) => p.name === "1-1")).toEqual({
      name: "1-1",
      from: "panel 1",
      leftover: false,
      corners: [
        [expect.closeTo(0.0625 / 12, 9), 0],
        [expect.closeTo(383.9375 / 12, 9), 0],
        [expect.closeTo(383.9375 / 12, 9), 4],
        [expect.closeTo(0.0625 / 12, 9), 4],
      ],
    });
    const spare = view?.pieces.filter((p) => p.leftover);
    expect(spare?.map((p) => p.from)).toContain("offcut");
    expect(spare?.[0]?.corners[0]?.[1]).toBe(4);
    expect(spare?.[0]?.corners[2]?.[1]).toBe(6);
  });

  test("each wall with its own, and how many there are", () => {
    const [a, b] = shown([levelWall([0, 192, 384, 576], 96, [], "a"), levelWall([0, 96], 48, [], "b")]);
    expect(a?.alt).toMatch(/2 courses in 4 pieces with 2 joints on 4 columns/);
    expect(b?.alt).toMatch(/1 courses in 1 pieces with 0 joints on 2 columns/);
    expect([b?.pieces.length, b?.joints.length]).toEqual([1, 0]);
  });

  test("columns a little off the ends stand as high as the ends", () => {
    const wall: CoursedWall = {
      wall: { name: "w", lengthFt: 32, heightFt: 4, riseFt: 32, top: "shed" },
      columnsFt: [-0.04, 16, 32.04],
      openings: [],
    };
    expect(shown([wall])[0]?.uprights.map((u) => [u.xFt, u.topFt])).toEqual([
      [-0.04, 4],
      [16, 20],
      [32.04, 36],
    ]);
  });
});
