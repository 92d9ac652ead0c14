import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { adjusted, type Conditions, wetFactor } from "../../../src/core/fasteners/adjust.ts";
import { combinedValue } from "../../../src/core/fasteners/combined.ts";
import { groupActionFactor, type Row, rowValue } from "../../../src/core/fasteners/group.ts";
import { pullThroughValue } from "../../../src/core/fasteners/pull-through.ts";
import { roundedDownIn, spacingIn } from "../../../src/core/fasteners/spacing.ts";
import { withdrawalPerIn, withdrawalValue } from "../../../src/core/fasteners/withdrawal.ts";
import { BadInput, OutOfRange } from "../../../src/core/kit/refusal.ts";
import { Tape } from "../../../src/core/kit/tape.ts";

const finite = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const live: Conditions = { duration: "live", service: "dry", method: "allowable", edition: "2018" };

describe("adjustment", () => {
  test("wet service by what the fastener does (from memory)", () => {
    expect(wetFactor("nail", "withdrawal", "dry")).toBe(1);
    expect(wetFactor("nail", "withdrawal", "wet")).toBe(0.25);
    expect(wetFactor("nail", "lateral", "wet")).toBe(0.7);
    expect(wetFactor("lag screw", "withdrawal", "wet")).toBe(0.7);
    expect(wetFactor(undefined, "pull-through", "wet")).toBe(0.7);
  });

  test("the working ends with the value and names the edition", () => {
    const tape = new Tape();
    const value = adjusted("Z'", 100, "nail", "lateral", { ...live, service: "wet", edition: "2015" }, tape);
    expect(value).toBeCloseTo(70, 12);
    expect(tape.steps.map((s) => s.symbol)).toEqual(["CM", "Z'"]);
    expect(tape.steps.at(-1)).toMatchObject({ value, unit: "lb", clause: "NDS 2015 Table 11.3.1" });
    expect(tape.cautions.join()).toContain("green");
    const strength = new Tape();
    adjusted("Z'", 100, "nail", "lateral", { ...live, method: "strength" }, strength);
    expect(strength.steps.at(-1)?.expression).toBe("100 x KF 3.32 x phi 0.65 x lambda 0.8 x CM 1");
    expect(strength.steps.at(-1)?.value).toBeCloseTo(172.64, 9);
  });
});

describe("withdrawal", () => {
  test("grows with the length and the gravity, by the powers of the standard", () => {
    fc.assert(
      fc.property(finite(0.31, 0.73), finite(1, 10), finite(0.1, 5), (g, p, more) => {
        for (const [type, d, power] of [
          ["lag screw", 0.25, 1.5],
          ["wood screw", 0.19, 2],
          ["nail", 0.131, 2.5],
        ] as const) {
          const at = (length: number) => withdrawalValue(type, d, g, length, "side", live);
          expect(at(p + more) - at(p)).toBeCloseTo(withdrawalPerIn(type, d, g, "2018") * more, 6);
          const half = withdrawalPerIn(type, d, 0.73, "2018") / withdrawalPerIn(type, d, g, "2018");
          expect(half).toBeCloseTo((0.73 / g) ** power, 9);
        }
      }),
    );
  });

  test("end grain: lag screws keep three quarters, others are refused, a bolt always", () => {
    expect(withdrawalValue("lag screw", 0.5, 0.5, 4, "end", live)).toBeCloseTo(
      0.75 * withdrawalValue("lag screw", 0.5, 0.5, 4, "side", live),
      9,
    );
    for (const type of ["nail", "wood screw"] as const)
      expect(() => withdrawalValue(type, 0.164, 0.5, 2, "end", live)).toThrow(/end grain: the standard allows none/);
    expect(() => withdrawalPerIn("bolt", 0.5, 0.5, "2018")).toThrow(BadInput);
  });

  test("limits of size, length and gravity", () => {
    for (const [type, least, most] of [
      ["lag screw", 0.25, 1.25],
      ["wood screw", 0.138, 0.372],
      ["nail", 0.099, 0.375],
    ] as const) {
      expect(() => withdrawalPerIn(type, least - 0.001, 0.5, "2018")).toThrow(OutOfRange);
      expect(() => withdrawalPerIn(type, most + 0.001, 0.5, "2018")).toThrow(OutOfRange);
      expect(withdrawalPerIn(type, least, 0.31, "2018")).toBeGreaterThan(0);
      expect(withdrawalPerIn(type, most, 0.73, "2018")).toBeGreaterThan(0);
    }
    for (const g of [0.3, 0.74]) expect(() => withdrawalPerIn("nail", 0.131, g, "2018")).toThrow(/specific gravity/);
    expect(() => withdrawalValue("lag screw", 0.5, 0.5, 1.99, "side", live)).toThrow(/at least 2 in.*in inches/s);
    expect(withdrawalValue("lag screw", 0.5, 0.5, 2, "side", live)).toBeGreaterThan(0);
    expect(() => withdrawalValue("lag screw", 0.5, 0.5, 25, "side", live)).toThrow(OutOfRange);
    expect(withdrawalValue("lag screw", 0.5, 0.5, 24, "side", live)).toBeGreaterThan(0);
  });

  test("the working", () => {
    const tape = new Tape();
    const value = withdrawalValue("nail", 0.162, 0.5, 2, "side", { ...live, duration: "wind", service: "wet" }, tape);
    expect(value).toBeCloseTo(1380 * 0.5 ** 2.5 * 0.162 * 2 * 1.6 * 0.25, 9);
    expect(tape.steps.map((s) => s.symbol)).toEqual(["W", "W p", "CM", "W'"]);
    expect(tape.assumptions.join()).toContain("smooth-shank");
    expect(tape.cautions.join()).toContain("FASTENER_PULLTHROUGH");
    const lag = new Tape();
    withdrawalValue("lag screw", 0.5, 0.5, 4, "end", live, lag);
    expect(lag.assumptions).toEqual([]);
    expect(lag.steps[1]?.expression).toContain("Ceg 0.75");
  });
});

describe("pull-through", () => {
  test("by the thickness of a thin member, by the head of a thick one, and the two meet", () => {
    // Own arithmetic of the reference from the equations: 107.5 lb.
    expect(pullThroughValue(0.375, 0.75, 0.42, live)).toBeCloseTo(690 * Math.PI * 0.375 * 0.42 ** 2 * 0.75, 9);
    expect(pullThroughValue(0.375, 0.75, 0.42, live)).toBeCloseTo(107.5, 1);
    expect(pullThroughValue(0.3, 1, 0.5, live)).toBeCloseTo(1725 * Math.PI * 0.09 * 0.25, 9);
    fc.assert(
      fc.property(finite(0.2, 2), finite(0.31, 0.73), finite(0.1, 5), (head, g, t) => {
        const edge = 2.5 * head;
        expect(pullThroughValue(head, edge - 1e-9, g, live)).toBeCloseTo(
          pullThroughValue(head, edge + 1e-9, g, live),
          4,
        );
        expect(pullThroughValue(head, t + 0.5, g, live)).toBeGreaterThanOrEqual(pullThroughValue(head, t, g, live));
      }),
    );
  });

  test("refusals", () => {
    expect(() => pullThroughValue(0.375, 0.75, 0.42, { ...live, edition: "2015" })).toThrow(
      /came into the standard in 2018/,
    );
    for (const [head, t, g] of [
      [0.19, 0.75, 0.42],
      [2.1, 0.75, 0.42],
      [0.375, 0.09, 0.42],
      [0.375, 12.1, 0.42],
      [0.375, 0.75, 0.3],
      [0.375, 0.75, 0.74],
    ] as const)
      expect(() => pullThroughValue(head, t, g, live)).toThrow(OutOfRange);
    for (const [head, t, g] of [
      [0.2, 0.1, 0.31],
      [2, 12, 0.73],
    ] as const)
      expect(pullThroughValue(head, t, g, live)).toBeGreaterThan(0);
  });

  test("is adjusted", () => {
    const tape = new Tape();
    const value = pullThroughValue(0.375, 0.75, 0.42, { ...live, duration: "wind", service: "wet" }, tape);
    expect(value).toBeCloseTo(pullThroughValue(0.375, 0.75, 0.42, live) * 1.6 * 0.7, 9);
    expect(tape.steps.at(-1)).toMatchObject({ symbol: "W_H'", value });
  });
});

describe("load at an angle", () => {
  const ends = fc.record({ w: finite(10, 2000), z: finite(10, 2000), angle: finite(0, 90) });

  test("the interaction is one on its boundary", () => {
    fc.assert(
      fc.property(ends, ({ w, z, angle }) => {
        const [c, s] = [Math.cos((angle * Math.PI) / 180), Math.sin((angle * Math.PI) / 180)];
        const screw = combinedValue("lag screw", w, z, angle);
        expect(((screw * c) / z) * c + ((screw * s) / w) * s).toBeCloseTo(1, 9);
        const nail = combinedValue("nail", w, z, angle);
        expect((nail * c) / z + (nail * s) / w).toBeCloseTo(1, 9);
        expect(nail).toBeLessThanOrEqual(screw * (1 + 1e-12));
        expect(screw).toBeLessThanOrEqual(Math.max(w, z) * (1 + 1e-12));
      }),
    );
  });

  test("the ends are the two values, the middle that of the equations", () => {
    for (const type of ["lag screw", "wood screw", "nail"] as const) {
      expect(combinedValue(type, 300, 150, 0)).toBeCloseTo(150, 9);
      expect(combinedValue(type, 300, 150, 90)).toBeCloseTo(300, 9);
    }
    // Own arithmetic of the reference, for cross-checking: 171.4 and 134.4 at 30 deg.
    expect(combinedValue("wood screw", 300, 150, 30)).toBeCloseTo(171.4, 1);
    expect(combinedValue("nail", 300, 150, 30)).toBeCloseTo(134.4, 1);
    const tape = new Tape();
    combinedValue("nail", 300, 150, 30, tape);
    expect(tape.assumptions.join()).toContain("less than either end");
    expect(tape.steps[0]?.clause).toContain("12.4.2");
    const screw = new Tape();
    combinedValue("lag screw", 300, 150, 30, screw);
    expect(screw.assumptions.join()).not.toContain("either end");
    expect(screw.steps[0]).toMatchObject({ symbol: "Z'_a", clause: "NDS 2018 12.4.1, from memory" });
    expect(screw.steps[0]?.expression).toContain("sin^2");
  });

  test("refusals", () => {
    expect(() => combinedValue("bolt", 300, 150, 30)).toThrow(BadInput);
    for (const angle of [-0.1, 90.1]) expect(() => combinedValue("nail", 300, 150, angle)).toThrow(OutOfRange);
  });
});

describe("a row of fasteners", () => {
  const wood = (stiffnessLb: number) => ({ name: "wood", steel: false, stiffnessLb });
  const row: Row = { count: 5, spacingIn: 4, diameterIn: 0.75, main: wood(1e7), sides: [wood(1e7)] };
  const any = fc.record({
    count: fc.integer({ min: 2, max: 20 }),
    spacingIn: finite(4, 10),
    diameterIn: finite(0.25, 1),
    main: finite(2e6, 1e8).map(wood),
    sides: fc.array(finite(2e6, 1e8).map(wood), { minLength: 1, maxLength: 2 }),
  });

  test("carries no more than its fasteners one by one, and more with each of them", () => {
    fc.assert(
      fc.property(any, (r) => {
        const cg = groupActionFactor(r);
        expect(cg).toBeGreaterThan(0);
        expect(cg).toBeLessThanOrEqual(1 + 1e-9);
        expect(groupActionFactor({ ...r, count: r.count + 1 })).toBeLessThanOrEqual(cg * (1 + 1e-9));
        expect(rowValue(100, { ...r, count: r.count + 1 })).toBeGreaterThanOrEqual(rowValue(100, r) * (1 - 1e-9));
        expect(groupActionFactor({ ...r, main: r.sides[0] ?? r.main, sides: [r.main] })).toBeCloseTo(
          groupActionFactor({ ...r, sides: [r.sides[0] ?? r.main] }),
          9,
        );
      }),
    );
  });

  test("two sides are as stiff as one of their sum; a small fastener or a single one has no group", () => {
    expect(groupActionFactor({ ...row, sides: [wood(4e6), wood(6e6)] })).toBeCloseTo(groupActionFactor(row), 12);
    expect(groupActionFactor({ ...row, diameterIn: 0.249 })).toBe(1);
    expect(groupActionFactor({ ...row, diameterIn: 0.25 })).toBeLessThan(1);
    expect(groupActionFactor({ ...row, count: 1 })).toBe(1);
    expect(groupActionFactor({ ...row, count: 1, spacingIn: 0 })).toBe(1);
    const tape = new Tape();
    expect(rowValue(100, { ...row, diameterIn: 0.2 }, tape)).toBe(500);
    expect(tape.steps.at(-1)).toMatchObject({ symbol: "n Z' Cg", value: 500, unit: "lb" });
    expect(tape.steps[0]?.expression).toContain("under 0.25 in");
    const one = new Tape();
    rowValue(100, { ...row, count: 1 }, one);
    expect(one.steps[0]?.expression).toBe("one fastener");
  });

  test("steel on either side makes the joint stiffer", () => {
    const steel = { name: "plate", steel: true, stiffnessLb: 1e7 };
    const stiff = groupActionFactor({ ...row, sides: [steel] });
    expect(stiff).toBeLessThan(groupActionFactor(row));
    expect(groupActionFactor({ ...row, main: steel })).toBeCloseTo(stiff, 12);
  });

  test("limits", () => {
    expect(() => groupActionFactor({ ...row, count: 31 })).toThrow(OutOfRange);
    expect(groupActionFactor({ ...row, count: 30 })).toBeGreaterThan(0);
    expect(() => groupActionFactor({ ...row, count: 0 })).toThrow(OutOfRange);
    expect(() => groupActionFactor({ ...row, spacingIn: 2.24 })).toThrow(/at least 2.25 in.*in inches/s);
    expect(groupActionFactor({ ...row, spacingIn: 2.25 })).toBeGreaterThan(0);
  });
});

describe("spacing", () => {
  const rules = { rows: 1, leastIn: 2, mostIn: 24 };

  test("carries the load, and an inch more would not", () => {
    fc.assert(
      fc.property(finite(5, 2000), finite(100, 2000), fc.integer({ min: 1, max: 4 }), (plf, lb, rows) => {
        const exact = (12 * rows * lb) / plf;
        fc.pre(exact >= 2);
        const s = spacingIn(plf, lb, { ...rules, rows });
        expect(s).toBe(Math.floor(s));
        expect(s).toBeLessThanOrEqual(24);
        expect((plf * s) / 12).toBeLessThanOrEqual(rows * lb * (1 + 1e-6));
        if (s < 24) expect((plf * (s + 1)) / 12).toBeGreaterThan(rows * lb * (1 - 1e-6));
      }),
    );
  });

  test("exact inches are kept, and limits hold", () => {
    expect(roundedDownIn(15.9999999999)).toBe(16);
    expect(roundedDownIn(15.999)).toBe(15);
    expect(spacingIn(75, 100, rules)).toBe(16);
    expect(spacingIn(75, 100, { ...rules, rows: 2 })).toBe(24);
    expect(spacingIn(600, 100, rules)).toBe(2);
    expect(() => spacingIn(75, 100, { ...rules, leastIn: 25 })).toThrow(
      /least spacing is 25 in: the greatest is 24 in/,
    );
    expect(spacingIn(50, 100, { ...rules, leastIn: 24 })).toBe(24);
    expect(() => spacingIn(601, 100, rules)).toThrow(/every 1.99667 in.*least spacing is 2 in/s);
    const tape = new Tape();
    spacingIn(70, 100, rules, tape);
    expect(tape.steps.map((s) => s.value)).toEqual([expect.closeTo(17.142857, 5), 17]);
  });
});
