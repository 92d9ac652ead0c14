import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { Tape } from "../../../src/core/kit/tape.ts";
import { type CompareTerms, compareWays } from "../../../src/core/labor/compare.ts";
import { laborDays } from "../../../src/core/labor/days.ts";
import { laborHours } from "../../../src/core/labor/hours.ts";
import { CURVE_KINDS, curveSlope, learningHours, unitHours } from "../../../src/core/labor/learning.ts";
import { crewRate } from "../../../src/core/labor/rate.ts";
import { laborSchedule } from "../../../src/core/labor/schedule.ts";

describe("hours and days", () => {
  test("pace below 1 is slower", () => {
    expect(laborHours(100, 0.5, 1)).toBe(50);
    expect(laborHours(100, 0.5, 0.8)).toBe(62.5);
  });

  test("days are not rounded; the working has the whole days", () => {
    const tape = new Tape();
    expect(laborDays(350, { crewSize: 5, productiveHours: 7, weatherShare: 0.12 }, tape)).toBeCloseTo(10 / 0.88, 9);
    expect(tape.steps.map((s) => s.value)).toEqual([10, 12, expect.closeTo(11.3636, 4)]);
    const even = new Tape();
    laborDays(350, { crewSize: 5, productiveHours: 7, weatherShare: 0 }, even);
    expect(even.steps[1]?.value).toBe(10);
  });

  test("hours of two tasks add up, days fall with the crew", () => {
    const n = fc.double({ min: 0.1, max: 1000, noNaN: true });
    fc.assert(
      fc.property(n, n, n, (a, b, rate) => {
        expect(laborHours(a, rate, 1) + laborHours(b, rate, 1)).toBeCloseTo(laborHours(a + b, rate, 1), 4);
        const days = (crewSize: number) => laborDays(a, { crewSize, productiveHours: 7, weatherShare: 0.1 });
        expect(days(4)).toBeCloseTo(days(2) / 2, 9);
      }),
    );
  });
});

describe("learning", () => {
  test("each doubling of the unit curve lowers the unit, of the average curve the mean", () => {
    const b = curveSlope(0.9);
    expect(unitHours(10, 8, b, "unit")).toBeCloseTo(7.29, 9);
    expect(learningHours(10, 8, 0.9, "average") / 8).toBeCloseTo(7.29, 9);
    expect(learningHours(10, 1, 0.9, "unit")).toBe(10);
    expect(learningHours(10, 1, 0.9, "average")).toBe(10);
  });

  test("a rate of 1 learns nothing", () => {
    for (const kind of CURVE_KINDS) expect(learningHours(3, 50, 1, kind)).toBeCloseTo(150, 9);
  });

  test("the hours are the sum of the units; more units take more; the average curve takes less", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 60 }), fc.double({ min: 0.6, max: 1, noNaN: true }), (count, rate) => {
        for (const kind of CURVE_KINDS) {
          const units = Array.from({ length: count }, (_, i) => unitHours(5, i + 1, curveSlope(rate), kind));
          const sum = units.reduce((a, b) => a + b);
          expect(learningHours(5, count, rate, kind)).toBeCloseTo(sum, 6);
          expect(learningHours(5, count + 1, rate, kind)).toBeGreaterThan(learningHours(5, count, rate, kind));
        }
        expect(learningHours(5, count, rate, "average")).toBeLessThanOrEqual(
          learningHours(5, count, rate, "unit") + 1e-9,
        );
      }),
    );
  });

  test("the working names the curve and ends with the hours", () => {
    const tape = new Tape();
    const hours = learningHours(100, 4, 0.8, "average", tape);
    expect(tape.steps.map((s) => s.clause)).toEqual(["average curve", "average curve", "average curve"]);
    expect(tape.steps[1]?.value).toBeCloseTo(256 - 3 * 100 * 3 ** Math.log2(0.8), 6);
    expect(tape.steps.at(-1)?.value).toBe(hours);
    const unit = new Tape();
    learningHours(100, 4, 0.8, "unit", unit);
    expect(unit.steps.at(-1)?.expression).toContain("sum of x^b");
    expect(tape.steps.at(-1)?.expression).toContain("4^(1 + b)");
  });
});

test("a crew: sum, mean, burden, by hand", () => {
  const crew = [
    { worker: "lead", number: 1, wage: 41 },
    { worker: "carpenter", number: 3, wage: 33 },
    { worker: "helper", number: 1, wage: 24 },
  ];
  const tape = new Tape();
  expect(crewRate(crew, 0.34, tape)).toEqual({
    crewPerHour: 164,
    meanWage: 32.8,
    burdenedWage: expect.closeTo(43.952, 9),
  });
  expect(tape.steps.map((s) => s.value)).toEqual([41, 99, 24, 164, 32.8, expect.closeTo(43.952, 9)]);
});

describe("a schedule", () => {
  const crew = { productiveHours: 7, weatherShare: 0.2 };
  const tasks = [
    { task: "panels", quantity: 15, ratePerUnit: 3, crewSize: 4 },
    { task: "windows", quantity: 10, ratePerUnit: 1.6, crewSize: 2 },
  ];

  test("by hand: a crew of its own wins, the total sums", () => {
    const tape = new Tape();
    const rows = laborSchedule(tasks, 0.9, crew, { wage: 30, burden: 0.5 }, tape);
    expect(rows).toEqual([
      { task: "panels", hours: 50, days: expect.closeTo(50 / 28 / 0.8, 9), cost: 2250 },
      {
        task: "windows",
        hours: expect.closeTo(16 / 0.9, 9),
        days: expect.closeTo(16 / 0.9 / 14 / 0.8, 9),
        cost: expect.closeTo(800, 9),
      },
      {
        task: "total",
        hours: expect.closeTo(67.7778, 4),
        days: expect.closeTo(50 / 28 / 0.8 + 16 / 0.9 / 14 / 0.8, 9),
        cost: expect.closeTo(3050, 9),
      },
    ]);
    expect(tape.assumptions.join()).toContain("follow one another");
    expect(tape.steps.map((s) => s.value)).toEqual([45, 50, expect.closeTo(17.7778, 4)]);
    expect(tape.steps[2]?.expression).toContain("crew of 2");
  });

  test("a single task has no order to speak of", () => {
    const tape = new Tape();
    laborSchedule(tasks.slice(0, 1), 1, crew, { wage: 30, burden: 0 }, tape);
    expect(tape.assumptions).toEqual([]);
  });
});

describe("ways compared", () => {
  const terms: CompareTerms = {
    learningRate: undefined,
    curveKind: "unit",
    pace: 1,
    productiveHours: 7,
    wage: 33,
    burden: 0.34,
  };
  const way = (
    name: string,
    hoursEach: number,
    setUpHours: number,
    machinePerHour = 0,
    crewSize = 2,
    riskShare = 0,
  ) => ({
    way: name,
    hoursEach,
    setUpHours,
    crewSize,
    machinePerHour,
    riskShare,
  });
  const flat = way("flat", 1.6, 9);
  const standing = way("standing", 2.7, 2, 48);

  test("by hand: hours, days, wages with burden and the machine while the crew works", () => {
    const { ways } = compareWays(10, [flat, standing], terms);
    expect(ways).toEqual([
      { way: "flat", hours: 25, days: expect.closeTo(25 / 14, 9), cost: expect.closeTo(25 * 44.22, 9) },
      { way: "standing", hours: 29, days: expect.closeTo(29 / 14, 9), cost: expect.closeTo(29 * 44.22 + 14.5 * 48, 9) },
    ]);
  });

  test("the break-even: (set-up difference) / (difference a piece), up to the next whole piece", () => {
    // 44.22 (9 + 1.6 n) = 68.22 (2 + 2.7 n): n = (397.98 - 136.44) / (184.194 - 70.752) = 2.31.
    expect(compareWays(10, [flat, standing], terms).breakEven).toEqual([{ way: "standing", count: 3 }]);
    expect(compareWays(10, [standing, flat], terms).breakEven).toEqual([{ way: "flat", count: 3 }]);
    // 20 + 1 n = 10 + 2 n at n = 10 exactly.
    expect(compareWays(1, [way("a", 1, 20), way("b", 2, 10)], terms).breakEven[0]?.count).toBe(10);
    expect(compareWays(1, [way("a", 1, 20.01), way("b", 2, 10)], terms).breakEven[0]?.count).toBe(11);
  });

  test("a break-even at a whole piece is that piece, whatever the rounding", () => {
    expect(compareWays(1, [way("a", 0.1, 0.9), way("b", 0.4, 0)], terms).breakEven[0]?.count).toBe(3);
    expect(compareWays(1, [way("a", 0.2, 2.1), way("b", 0.5, 0)], terms).breakEven[0]?.count).toBe(7);
  });

  test("a way that is dearer in both never breaks even, nor one that is alike", () => {
    expect(compareWays(1, [way("a", 1, 1), way("b", 2, 2)], terms).breakEven[0]?.count).toBeUndefined();
    expect(compareWays(1, [way("a", 1, 1), way("b", 1, 2)], terms).breakEven[0]?.count).toBeUndefined();
    expect(compareWays(1, [way("a", 1, 1), way("b", 2, 1)], terms).breakEven[0]?.count).toBeUndefined();
    expect(compareWays(1, [way("a", 1, 1e6), way("b", 1.001, 1)], terms).breakEven[0]?.count).toBeUndefined();
  });

  test("three ways are each held against the first", () => {
    const { breakEven } = compareWays(1, [way("a", 1, 20), way("b", 2, 10), way("c", 3, 4)], terms);
    expect(breakEven).toEqual([
      { way: "b", count: 10 },
      { way: "c", count: 8 },
    ]);
  });

  test("learned on the job the hours each are those of the first, and the break-even counts them", () => {
    const learned = { ...terms, learningRate: 0.8 };
    const { ways, breakEven } = compareWays(4, [way("a", 1, 20), way("b", 2, 17)], learned);
    expect(ways[0]?.hours).toBeCloseTo(20 + 1 + 0.8 + 0.702104 + 0.64, 4);
    // The sum of x^b passes 3 with the fourth piece (1 + 0.8 + 0.7021 + 0.64).
    expect(breakEven[0]?.count).toBe(4);
    expect(
      compareWays(4, [way("a", 1, 20), way("b", 2, 17)], { ...learned, curveKind: "average" }).breakEven[0]?.count,
    ).toBe(6);
  });

  test("risk stretches the hours of a way, and with them its cost and the break-even", () => {
    const risky = way("standing", 2, 10, 0, 2, 0.25);
    expect(compareWays(4, [way("flat", 1, 20), risky], terms).ways[1]).toMatchObject({
      hours: 22.5,
      cost: expect.closeTo(22.5 * 44.22, 9),
    });
    // 20 + n = 1.25 (10 + 2 n) at n = 5.
    expect(compareWays(1, [way("flat", 1, 20), risky], terms).breakEven[0]?.count).toBe(5);
  });

  test("a slower pace stretches all hours and moves no break-even", () => {
    const slow = compareWays(10, [flat, standing], { ...terms, pace: 0.5 });
    expect(slow.ways[0]?.hours).toBe(50);
    expect(slow.breakEven[0]?.count).toBe(3);
  });

  test("the working holds the trade's four to one beside the crew's own; two ways of one name are refused", () => {
    const tape = new Tape();
    compareWays(10, [flat, standing], terms, tape);
    const ratio = tape.steps.find((s) => s.symbol === "ratio");
    expect(ratio?.value).toBeCloseTo(2.7 / 1.6, 9);
    expect(ratio?.clause).toContain("common practice, no source");
    expect(ratio?.expression).toContain("4 flat");
    expect(tape.steps.at(-1)).toMatchObject({ symbol: "n", value: 3, unit: "pieces" });
    const never = new Tape();
    compareWays(1, [way("a", 1, 1), way("b", 2, 2)], terms, never);
    expect(never.steps.at(-1)).toMatchObject({ value: "never", unit: "" });
    expect(() => compareWays(1, [flat, way("Flat", 1, 1)], terms)).toThrow("same name");
  });

  test("at the break-even and beyond the ways have changed places, before it not", () => {
    const n = fc.double({ min: 0.5, max: 5, noNaN: true });
    const setUp = fc.double({ min: 0, max: 40, noNaN: true });
    fc.assert(
      fc.property(n, n, setUp, setUp, (each1, each2, set1, set2) => {
        const ways = [way("a", each1, set1), way("b", each2, set2)];
        const [{ count } = { count: undefined }] = compareWays(1, ways, terms).breakEven;
        fc.pre(count !== undefined && count > 1);
        const gap = (c: number) => {
          const [a, b] = compareWays(c, ways, terms).ways;
          return Math.sign(Math.round(((a?.cost ?? 0) - (b?.cost ?? 0)) * 1e4));
        };
        const at = count as number;
        expect(gap(at) * gap(at - 1)).toBeLessThanOrEqual(0);
        expect(gap(at + 1) * gap(at - 1)).toBeLessThanOrEqual(0);
      }),
    );
  });
});
