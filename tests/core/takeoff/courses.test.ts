import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { OutOfRange, Refusal } from "../../../src/core/kit/refusal.ts";
import { Tape } from "../../../src/core/kit/tape.ts";
import { planCourses } from "../../../src/core/takeoff/courses/courses.ts";
import type { CoursedWall, CoursePlan, CourseRules, Offcut } from "../../../src/core/takeoff/courses/types.ts";
import { wallColumns } from "../../../src/core/takeoff/wall/columns.ts";
import type { PlacedOpening } from "../../../src/core/takeoff/wall/opening.ts";
import { heightAtFt, spanAtFt } from "../../../src/core/takeoff/wall/wall.ts";
import { checkPlan } from "./check-courses.ts";
import { SHED } from "./joinery-shed.ts";

const RULES: CourseRules = { panelLengthFt: 32, panelWidthFt: 4, jointGapIn: 0.125, kerfIn: 0.125, leastLegIn: 6 };

function opening(name: string, xIn: number, yIn: number, wIn: number, hIn: number): PlacedOpening {
  return { name, leftFt: xIn / 12, sillFt: yIn / 12, widthFt: wIn / 12, heightFt: hIn / 12, count: 1 };
}

function wallOf(
  name: string,
  columnsIn: readonly number[],
  courses: number,
  openings: readonly PlacedOpening[],
): CoursedWall {
  return {
    wall: { name, lengthFt: (columnsIn.at(-1) ?? 0) / 12, heightFt: courses * 4, riseFt: 0, top: "gable" },
    columnsFt: columnsIn.map((x) => x / 12),
    openings,
  };
}

const LONG = [0, 96, 192, 288, 384, 480, 576];
const SHORT = [0, 96, 192, 288, 384];
const UNEVEN = [0, 90, 186, 282, 378, 474, 570, 672];
const EVEN = [0, 96, 192, 288, 384, 480];
const SOUTH = [opening("W1", 108, 36, 60, 48), opening("W2", 300, 36, 60, 48), opening("D1", 420, 0, 38, 82)];

/** Invented walls; the least numbers of panels are proven by run of course over panel length. */
const WALLS = {
  "one long wall, 7 columns at 8 ft": { walls: [wallOf("long", LONG, 3, SOUTH)], rules: RULES, panels: 5 },
  "house 32 x 48 ft": {
    walls: [
      wallOf("south", LONG, 3, SOUTH),
      wallOf("north", LONG, 3, [opening("W3", 204, 36, 36, 48), opening("W4", 396, 36, 36, 48)]),
      wallOf("east", SHORT, 3, [opening("G1", 120, 12, 144, 84)]),
      wallOf("west", SHORT, 3, [opening("W5", 210, 36, 60, 48)]),
    ],
    rules: RULES,
    panels: 15,
  },
  "shed 40 x 56 ft with uneven bays": {
    walls: [
      wallOf("a", UNEVEN, 4, []),
      wallOf("b", UNEVEN, 4, [opening("G1", 290, 0, 80, 96)]),
      wallOf("c", EVEN, 4, []),
      wallOf("d", EVEN, 4, [opening("W1", 200, 36, 72, 48)]),
    ],
    rules: { ...RULES, kerfIn: 0.1875 },
    panels: 24,
  },
} as const;

describe("courses on invented walls reach their proven bounds", () => {
  test.each(Object.entries(WALLS))("%s", (_name, { walls, rules, panels }) => {
    const tape = new Tape();
    const plan = planCourses(walls, [], rules, tape);
    checkPlan(walls, [], rules, plan);
    expect(plan.exceptions).toEqual([]);
    expect([plan.panels, plan.bound]).toEqual([panels, panels]);
    expect(planCourses(walls, [], rules), "one search for the pieces and the leftovers").toBe(plan);
    for (let i = 1; i <= 4; i++) planCourses([wallOf("other", [0, 96 * i], 1, [])], [], rules);
    const again = planCourses(walls, [], rules);
    expect(again, "searched anew").not.toBe(plan);
    expect(again, "the same again").toEqual(plan);
    expect(tape.pictures).toHaveLength(walls.length);
  });

  test("no two leftovers have one name, and together with the pieces they fit into what they come from", () => {
    const { walls, rules } = WALLS["house 32 x 48 ft"];
    const plan = planCourses(walls, [], rules);
    expect(new Set(plan.offcuts.map((o) => o.name)).size).toBe(plan.offcuts.length);
    for (let n = 1; n <= plan.panels; n++) {
      const used = plan.pieces.filter((p) => p.panel === n).reduce((sum, p) => sum + p.lengthIn * p.heightIn, 0);
      const left = plan.offcuts
        .filter((o) => o.name === `rest of panel ${n}` || o.name.startsWith(`rest of panel ${n},`))
        .reduce((sum, o) => sum + o.lengthIn * o.widthIn, 0);
      expect(used + left).toBeLessThanOrEqual(384 * 48);
      expect(used).toBeGreaterThan(0);
    }
  });

  test("cut-outs that the panels leave are offered back", () => {
    const { walls, rules } = WALLS["one long wall, 7 columns at 8 ft"];
    const names = planCourses(walls, [], rules).offcuts.map((o) => o.name);
    // W1 stands from 36 to 84 in: 12 in of course 1 and 36 in of course 2.
    expect(names.filter((n) => n.startsWith("W1 cut-out"))).toEqual(["W1 cut-out, course 2", "W1 cut-out, course 1"]);
    expect(
      names.some((n) => n.startsWith("D1 cut-out, course 1")),
      "course 1 leaves the door out whole",
    ).toBe(false);
  });
});

test("two 16 ft pieces come out of a 32 ft panel only because each is short by the joint gap", () => {
  const wall = wallOf("w", [0, 192, 384, 576], 1, []);
  expect(planCourses([wall], [], RULES).panels).toBe(2);
  const two = [wallOf("a", [0, 192], 1, []), wallOf("b", [0, 192], 1, [])];
  expect(planCourses(two, [], RULES).panels).toBe(1);
  expect(planCourses(two, [], { ...RULES, jointGapIn: 0 }).panels).toBe(2);
});

test("no joint makes a piece shorter than 12 in where another column serves, though it would gather what is left", () => {
  // Beside an opening that takes the course, 390 in are left: one joint, at 6, 192 or 384 in from the opening.
  const columns = [0, 24, 60, 66, 252, 444, 450];
  const wall = wallOf("w", columns, 1, [opening("G1", 24, 0, 36, 48)]);
  const plan = planCourses([wall], [], RULES);
  checkPlan([wall], [], RULES, plan);
  expect(plan.joints.map((j) => j.xFt * 12)).toEqual([252]);
  // At just 12 in it may.
  const at12 = wallOf("w", [0, 24, 60, 72, 252, 438, 450], 1, [opening("G1", 24, 0, 36, 48)]);
  expect([72, 438]).toContain((planCourses([at12], [], RULES).joints[0]?.xFt ?? 0) * 12);
});

test("a stagger that cannot be is said, with the course and the place", () => {
  const plan = planCourses([wallOf("w", [0, 300, 600], 2, [])], [], RULES);
  expect(plan.exceptions).toHaveLength(1);
  expect(plan.exceptions[0]).toMatch(/25 ft in course 2 .*course 1/);
});

test("a column inside an opening takes no joint in the courses that it crosses", () => {
  const wall = wallOf("w", [0, 192, 288, 384, 576], 2, [opening("G1", 150, 24, 84, 48)]);
  const tape = new Tape();
  const plan = planCourses([wall], [], RULES, tape);
  checkPlan([wall], [], RULES, plan);
  expect(plan.joints.map((j) => j.xFt)).not.toContain(16);
  expect(tape.cautions.join()).toMatch(/inside an opening.*16 ft/);
});

test("a bay longer than a panel is refused by its place", () => {
  expect(() => planCourses([wallOf("w", [0, 400, 600], 2, [])], [], RULES)).toThrow(OutOfRange);
  expect(() => planCourses([wallOf("w", [0, 400, 600], 2, [])], [], RULES)).toThrow(/from 0 to 33.3333 ft/);
});

test("an opening that takes a whole course saves its panel; offcuts on hand serve ripped courses", () => {
  const wide = wallOf("w", [0, 96, 192, 288, 384, 480, 576, 672, 768], 2, [opening("G1", 200, 0, 280, 96)]);
  expect(planCourses([wide], [], RULES).panels).toBeLessThan(
    planCourses([{ ...wide, openings: [] }], [], RULES).panels,
  );
  const low: CoursedWall = {
    ...wallOf("w", [0, 96, 192], 1, []),
    wall: { name: "w", lengthFt: 16, heightFt: 6, riseFt: 0, top: "gable" },
  };
  const onHand: Offcut[] = [{ name: "offcut", lengthIn: 200, widthIn: 30 }];
  const plan = planCourses([low], onHand, RULES);
  checkPlan([low], onHand, RULES, plan);
  expect(plan.panels).toBe(1);
  expect(plan.pieces.at(-1)).toMatchObject({ panel: 0, from: "offcut" });
});

describe("any wall", () => {
  const inches = (min: number, max: number) => fc.integer({ min: min * 8, max: max * 8 }).map((n) => n / 8);
  const wall = fc.record({
    name: fc.constant("w"),
    lengthFt: inches(96, 1000).map((x) => x / 12),
    heightFt: inches(48, 240).map((x) => x / 12),
    riseFt: fc.oneof(
      fc.constant(0),
      inches(24, 160).map((x) => x / 12),
    ),
    top: fc.constantFrom("gable" as const, "shed" as const),
  });
  const opens = fc.array(fc.tuple(inches(10, 900), inches(0, 60), inches(12, 150), inches(12, 110)), { maxLength: 3 });

  test("a refusal, or a plan that covers it: joints on columns, stagger kept or reported, cuts that fit", () => {
    let plans = 0;
    fc.assert(
      fc.property(wall, opens, inches(40, 120), fc.constantFrom(0, 0.125, 0.1875), (w, list, spacingIn, kerfIn) => {
        const openings = list.map(([x, y, wide, high], i) => opening(`W${i + 1}`, x, i === 0 ? 0 : y, wide, high));
        const rules = { ...RULES, kerfIn };
        let plan: CoursePlan;
        let walls: readonly CoursedWall[];
        try {
          const columns = wallColumns("w", w.lengthFt, openings, {
            spacingFt: spacingIn / 12,
            layout: "module",
            columnFt: 0.375,
            jambFt: 2.1875,
          });
          walls = [{ wall: w, columnsFt: columns.map((c) => c.xFt), openings }];
          plan = planCourses(walls, [], rules);
        } catch (error) {
          expect(error).toBeInstanceOf(Refusal);
          return;
        }
        plans++;
        checkPlan(walls, [], rules, plan);
      }),
      { numRuns: 40, seed: 7 },
    );
    expect(plans).toBeGreaterThan(12);
  });
});

test("a gable is covered to the rake", () => {
  const wall: CoursedWall = {
    wall: { name: "gable", lengthFt: 32, heightFt: 10, riseFt: 8, top: "gable" },
    columnsFt: [0, 8, 16, 24, 32],
    openings: [opening("W1", 110, 36, 60, 48)],
  };
  const plan = planCourses([wall], [], RULES);
  checkPlan([wall], [], RULES, plan);
  expect(plan.pieces.at(-1)?.cuts).toBe("rake left and right");
  expect(heightAtFt(wall.wall, 16)).toBe(18);
  expect(spanAtFt(wall.wall, 14)).toEqual([8, 24]);
});

test("a shed is covered to its slope, up to either end", () => {
  for (const riseFt of [6, -6]) {
    const wall: CoursedWall = {
      wall: { name: "shed", lengthFt: 32, heightFt: 12, riseFt, top: "shed" },
      columnsFt: [0, 8, 16, 24, 32],
      openings: [],
    };
    const plan = planCourses([wall], [], RULES);
    checkPlan([wall], [], RULES, plan);
    expect(plan.pieces.at(-1)?.cuts).toBe(riseFt > 0 ? "rake left" : "rake right");
  }
});

describe("legs beside openings", () => {
  // Columns 2-1/4 in from the edges of a window: a joint there would leave 2-3/16 in of panel.
  const window = opening("W1", 194.25, 36, 48, 48);
  const columns = [0, 96, 192, 244.5, 288, 384, 480, 576];

  test("no joint on the columns at a window's edges where another column serves", () => {
    const wall = wallOf("w", columns, 3, [window]);
    const plan = planCourses([wall], [], RULES);
    checkPlan([wall], [], RULES, plan);
    expect(plan.exceptions).toEqual([]);
    const crossed = plan.joints.filter((j) => j.course <= 2).map((j) => j.xFt * 12);
    expect(crossed).not.toContain(192);
    expect(crossed).not.toContain(244.5);
  });

  test("a least leg of nothing lets them be used, and one that nothing meets is said by its place", () => {
    const wall = wallOf("w", [0, 192, 244.5, 560], 2, [window]);
    const plan = planCourses([wall], [], RULES);
    expect(plan.joints).toHaveLength(2);
    expect(plan.exceptions.join()).toMatch(
      /joint at (16|20.375) ft in course 1 of w leaves a leg .*narrower than 6 in/,
    );
    expect(planCourses([wall], [], { ...RULES, leastLegIn: 0 }).exceptions).toEqual([]);
    // The leg of 2-3/16 in is just held by itself, and by no more.
    expect(planCourses([wall], [], { ...RULES, leastLegIn: 2.1875 }).exceptions).toEqual([]);
    expect(planCourses([wall], [], { ...RULES, leastLegIn: 2.25 }).exceptions).toHaveLength(2);
  });

  test("a strip that the course's edge leaves over or under an opening is said", () => {
    const tape = new Tape();
    planCourses([wallOf("w", LONG, 2, [opening("W1", 120, 50, 60, 43)])], [], RULES, tape);
    const said = tape.cautions.filter((c) => c.startsWith("A strip"));
    expect(said).toHaveLength(2);
    expect(said[0]).toMatch(/^A strip of 2 in of panel is left under W1/);
    expect(said[1]).toMatch(/^A strip of 3 in of panel is left over W1/);
    const level = new Tape();
    planCourses([wallOf("w", LONG, 2, [opening("W1", 120, 48, 60, 36)])], [], RULES, level);
    expect(level.cautions.filter((c) => c.startsWith("A strip"))).toEqual([]);
  });
});

test("a wall without columns is named, with what to give", () => {
  const wall = { ...wallOf("north", LONG, 2, []), columnsFt: [] };
  expect(() => planCourses([wall], [], RULES)).toThrow(/columns hold none of north/);
  expect(() => planCourses([wallOf("north", [0, 96, 190], 2, [])], [], RULES)).not.toThrow();
  const short = { ...wallOf("north", LONG, 2, []), columnsFt: [0, 8, 47.5] };
  expect(() => planCourses([short], [], RULES)).toThrow(/run from 0 to 47.5 ft/);
  expect(() => planCourses([wallOf("w", LONG, 1, [])], [], { ...RULES, jointGapIn: 2.5 })).toThrow(/from 0 to 2 in/);
});

test("the shed of the demo: all walls together reach the proven least, or come within a panel of it", () => {
  const rules = { spacingFt: 8, layout: "module", columnFt: 0.375, jambFt: 2.5 } as const;
  const walls = SHED.map((w) => ({
    ...w,
    columnsFt: wallColumns(w.wall.name, w.wall.lengthFt, w.openings, rules).map((c) => c.xFt),
  }));
  const plan = planCourses(walls, [], RULES);
  checkPlan(walls, [], RULES, plan);
  expect(plan.exceptions).toEqual([]);
  expect(plan.panels).toBeLessThanOrEqual(plan.bound + 1);
  const apart = walls.reduce((sum, w) => sum + planCourses([w], [], RULES).panels, 0);
  expect(plan.panels).toBeLessThan(apart);
});

describe("pieces by hand", () => {
  test("one panel over two bays: half a gap at each end, an opening cut where it stands", () => {
    const [piece, ...others] = planCourses(
      [wallOf("w", [0, 192, 384], 1, [opening("W1", 100, 12, 60, 24)])],
      [],
      RULES,
    ).pieces;
    expect(others).toEqual([]);
    expect(piece).toMatchObject({
      name: "1-1",
      mark: "W 1-1",
      bottomFt: 0,
      lengthIn: 383.875,
      heightIn: 48,
      panel: 1,
      from: "panel 1",
      alongIn: 0,
      upIn: 0,
      cuts: "W1: 60 x 24 in",
    });
    expect(piece?.leftFt).toBeCloseTo(0.0625 / 12, 12);
  });

  test("a piece beside an opening, left or right of it, is not cut for it", () => {
    const wall = (xIn: number) => wallOf("w", [0, 192, 384, 576, 768], 1, [opening("W1", xIn, 12, 60, 24)]);
    const cuts = (xIn: number) => planCourses([wall(xIn)], [], RULES).pieces.map((p) => p.cuts);
    expect(cuts(100)).toEqual(["W1: 60 x 24 in", ""]);
    expect(cuts(600)).toEqual(["", "W1: 60 x 24 in"]);
  });

  test("no joint that leaves a narrow leg beside an opening, where another reaches as far", () => {
    // 56 ft: the panel reaches 32 ft, 4 in before the opening; 24 ft and 32 ft have no narrow leg.
    const wall = wallOf("w", [0, 96, 192, 288, 384, 480, 576, 672], 1, [opening("W1", 388, 12, 60, 24)]);
    expect(planCourses([wall], [], RULES).joints.map((j) => j.xFt)).toEqual([24]);
  });

  test("pieces stand half a gap from their joint on both sides", () => {
    const plan = planCourses([wallOf("w", [0, 192, 384, 576], 1, [])], [], RULES);
    const joint = (plan.joints[0]?.xFt ?? 0) * 12;
    expect(plan.joints).toHaveLength(1);
    expect([192, 384]).toContain(joint);
    expect(plan.joints[0]).toMatchObject({ wall: "w", course: 1, bottomFt: 0, topFt: 4 });
    expect(plan.pieces.map((p) => [p.name, p.leftFt * 12, p.lengthIn, p.cuts])).toEqual([
      ["1-1", 0.0625, joint - 0.125, ""],
      ["1-2", expect.closeTo(joint + 0.0625, 9), 576 - joint - 0.125, ""],
    ]);
  });

  test("an offcut on hand that holds the course saves its panel, though what a panel leaves is tighter", () => {
    const onHand: Offcut[] = [{ name: "spare", lengthIn: 300, widthIn: 48 }];
    const walls = [wallOf("a", [0, 240], 1, []), wallOf("b", [0, 120], 1, [])];
    const plan = planCourses(walls, onHand, RULES);
    checkPlan(walls, onHand, RULES, plan);
    expect([plan.panels, plan.bound]).toEqual([1, 1]);
    expect(plan.pieces.map((p) => [p.wall, p.from])).toEqual([
      ["a", "spare"],
      ["b", "panel 1"],
    ]);
    // 384 - 119.875 - 1/8 in of the panel, and 300 - 239.875 - 1/8 in of the spare are left.
    expect(plan.offcuts.map((o) => [o.name, o.lengthIn, o.widthIn])).toEqual([
      ["rest of panel 1", 264, 48],
      ["spare", 60, 48],
    ]);
  });
});

test("pieces that fewer than two columns hold are named: beside a door that takes the whole course, not elsewhere", () => {
  const said = (left: number) => {
    const tape = new Tape();
    // Columns at 0, 8, 16, 24 ft and a door of 3 ft to the whole height.
    planCourses([wallOf("w", [0, 96, 192, 288], 1, [opening("D1", left, 0, 36, 48)])], [], RULES, tape);
    return tape.cautions.filter((c) => c.startsWith("Fewer than two columns"));
  };
  // From 20 ft to the column at 24 ft.
  expect(said(204)[0]).toMatch(/hold w 1-2: the framing of the opening/);
  expect(said(120)).toEqual([]);
});
