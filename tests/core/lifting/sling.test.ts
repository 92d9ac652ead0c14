import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { Tape } from "../../../src/core/kit/tape.ts";
import type { SlingPick } from "../../../src/core/lifting/hanging.ts";
import type { SlingPicture } from "../../../src/core/lifting/pictures.ts";
import { liftSling } from "../../../src/core/lifting/sling.ts";

const HERE = { xFt: 0, yFt: 0 };
const pick = (name: string, xFt: number, yFt = 0, zFt = 0): SlingPick => ({ pick: name, xFt, yFt, zFt });
const radians = (deg: number) => (deg * Math.PI) / 180;

/** Upward parts of the tensions. */
const upward = (legs: readonly { tensionLb: number; angleDeg: number }[]) =>
  legs.map((l) => l.tensionLb * Math.sin(radians(l.angleDeg)));

describe("two legs", () => {
  test("unequal legs by hand: T = W D2 S1 / (H (D1 + D2))", () => {
    const near = liftSling(10_000, [pick("near", -2), pick("far", 8)], 6, HERE, 1.25);
    expect(near.legs.map((l) => l.tensionLb)).toEqual([expect.closeTo(8432.74, 2), expect.closeTo(3333.33, 2)]);
    expect(near.legs.map((l) => l.angleDeg)).toEqual([expect.closeTo(71.565, 3), expect.closeTo(36.87, 2)]);
    expect(near.leastRatingLb).toBeCloseTo(8432.7404 * 1.25, 1);
    const other = liftSling(4000, [pick("a", -3), pick("b", 7)], 5, HERE, 1);
    expect(other.legs.map((l) => l.tensionLb)).toEqual([expect.closeTo(3265.33, 2), expect.closeTo(2064.56, 2)]);
  });

  test("picks above the center of gravity at unequal heights: moments about the hook by hand", () => {
    // Hook at (0, 11): legs (-3, 4) to hook and (4, 2) to hook; moments about the center line: V1 x 3 = V2 x 4.
    const legs = liftSling(7000, [pick("low", -3, 0, 4), pick("high", 4, 0, 6)], 7, HERE, 1).legs;
    // Level parts are equal: T1 3/sqrt(58) = T2 4/sqrt(41); upright parts sum to W: T1 7/sqrt(58) + T2 5/sqrt(41) = W.
    const t1 = (7000 * Math.sqrt(58)) / (7 + (3 / 4) * 5);
    const t2 = (t1 * 3 * Math.sqrt(41)) / (4 * Math.sqrt(58));
    expect(legs.map((l) => l.tensionLb)).toEqual([expect.closeTo(t1, 6), expect.closeTo(t2, 6)]);
    expect(legs[0]?.angleDeg).toBeCloseTo((Math.atan2(7, 3) * 180) / Math.PI, 9);
  });

  test("a hook off the center of gravity tilts the load, which is said", () => {
    const tape = new Tape();
    const { legs } = liftSling(1000, [pick("a", -5), pick("b", 5)], 10, { xFt: 1, yFt: 0 }, 1, tape);
    expect(tape.cautions.join()).toContain("hangs tilted by 5.71059 deg");
    // Upward is (1, 10)/sqrt(101); leg a runs (6, 10), leg b (-4, 10).
    const angle = (x: number) => Math.asin((x + 100) / Math.sqrt(101) / Math.sqrt(x * x + 100));
    expect(legs[0]?.angleDeg).toBeCloseTo((angle(6) * 180) / Math.PI, 9);
    expect(legs[1]?.angleDeg).toBeCloseTo((angle(-4) * 180) / Math.PI, 9);
    const sum = upward(legs).reduce((a, b) => a + b);
    expect(sum).toBeCloseTo(1000, 9);
  });

  test("picks off the plane of the center of gravity let the load swing out, which is said", () => {
    const tape = new Tape();
    const swung = liftSling(1000, [pick("a", -5, 0.5, 5), pick("b", 5, 0.5, 5)], 10, HERE, 1, tape);
    expect(tape.cautions.join()).toContain("swings out about the line of its picks by 5.71059 deg");
    // In the plane of the legs the hook is sqrt(10^2 + 0.5^2) above the line.
    expect(swung.legs[0]?.angleDeg).toBeCloseTo((Math.atan2(Math.hypot(10, 0.5), 5) * 180) / Math.PI, 9);
  });

  test("a small turn is not said", () => {
    const tape = new Tape();
    liftSling(1000, [pick("a", -5, 0.04, 5), pick("b", 5, 0.04, 5)], 10, { xFt: 0.1, yFt: 0 }, 1, tape);
    expect(tape.cautions).toEqual([]);
  });

  test.each<[string, SlingPick[], string]>([
    ["center of gravity outside", [pick("a", 1), pick("b", 5)], "outside the picks"],
    ["line beside the center of gravity at its level", [pick("a", -5, 1), pick("b", 5, 1)], "turn over"],
    ["line below the center of gravity", [pick("a", -5, 0, -1), pick("b", 5, 0, -1)], "turn over"],
    ["one above another", [pick("a", 0, 0, 0), pick("b", 0, 0, 4)], "one above another"],
    ["in the same place", [pick("a", 1), pick("b", 1)], "same place"],
  ])("refused: %s", (_name, picks, says) => {
    expect(() => liftSling(1000, picks, 8, HERE, 1)).toThrow(says);
  });

  test("a hook below the highest pick is refused, one just above is not", () => {
    const picks = [pick("a", -0.2, 0, 0), pick("b", 0.2, 0, 3)];
    expect(() => liftSling(1000, picks, 3, HERE, 1)).toThrow("highest pick is 3 ft above");
    expect(() => liftSling(1000, picks, 3.5, HERE, 1)).not.toThrow();
    const tape = new Tape();
    liftSling(1000, picks, 3.5, HERE, 1, tape);
    expect(tape.assumptions).toContain("The rise is measured from the lowest pick.");
  });
});

describe("angles", () => {
  const at = (deg: number, tape?: Tape) =>
    liftSling(1000, [pick("a", -10), pick("b", 10)], 10 * Math.tan(radians(deg)), HERE, 1, tape);

  test("exactly 30 degrees is answered, less is refused with the rise that it takes", () => {
    expect(at(30).legs[0]?.tensionLb).toBeCloseTo(1000, 6);
    expect(() => at(29.99)).toThrow("Raise the hook to 5.7735 ft or more");
  });

  test("exactly 45 degrees has no caution, less has one that names the legs", () => {
    const flat = new Tape();
    at(44.99, flat);
    expect(flat.cautions.join()).toContain("a (44.99 deg), b (44.99 deg): below 45 deg");
    const steep = new Tape();
    at(45, steep);
    expect(steep.cautions).toEqual([]);
  });
});

describe("three and four legs", () => {
  const four = [pick("a", -5, -3), pick("b", 5, -3), pick("c", 5, 3), pick("d", -5, 3)];

  test("four alike count as two", () => {
    const tape = new Tape();
    const { legs } = liftSling(4000, four, 8, HERE, 1, tape);
    const sine = 8 / Math.sqrt(8 * 8 + 34);
    for (const leg of legs) expect(leg.tensionLb).toBeCloseTo(2000 / sine, 6);
    expect(tape.assumptions.join()).toContain("half the weight");
    expect(tape.steps.some((s) => s.symbol === "legs" && s.value === 2)).toBe(true);
  });

  test("three alike count as two, not as three", () => {
    const ring = [0, 120, 240].map((deg) => pick(`leg ${deg}`, 4 * Math.cos(radians(deg)), 4 * Math.sin(radians(deg))));
    for (const leg of liftSling(3000, ring, 4, HERE, 1).legs) expect(leg.tensionLb).toBeCloseTo(1500 * Math.SQRT2, 6);
  });

  test("a leg that statics loads with more than half counts with that", () => {
    // Moments: the pick at x -1 carries 4/5 of the weight, the two at x 4 share the rest.
    const legs = liftSling(1000, [pick("near", -1), pick("b", 4, 3), pick("c", 4, -3)], 10, HERE, 1).legs;
    expect(upward(legs)).toEqual([expect.closeTo(800, 6), expect.closeTo(500, 6), expect.closeTo(500, 6)]);
  });

  test("four legs, center of gravity off the diagonals: the leg that may carry most with one of the others slack", () => {
    const picks = [pick("a", -7, -5), pick("b", 3, -5), pick("c", 3, 5), pick("d", -7, 5)];
    const legs = liftSling(1000, picks, 20, HERE, 1).legs;
    // Shares sum to 1 and b + c = 0.7 by moments about x: b alone may reach 0.5 (then c 0.2, d 0.3, a 0).
    expect(upward(legs)).toEqual([500, 500, 500, 500].map((v) => expect.closeTo(v, 6)));
    const near = [pick("a", -8, -5), pick("b", 2, -8), pick("c", 2, 2), pick("d", -8, 5)];
    // Moments about y: b + c = 0.8. About x with a slack: d 0.2, c 0.54; with d slack: a 0.2, -1 - 8 b + 2 c = 0, c 0.74.
    expect(upward(liftSling(1000, near, 20, HERE, 1).legs)[2]).toBeCloseTo(740, 6);
  });

  test("four picks in one line: any two that stand on both sides may carry all", () => {
    const line = [-15, -5, 5, 15].map((x) => pick(`at ${x}`, x));
    expect(upward(liftSling(1000, line, 20, HERE, 1).legs)).toEqual(
      [500, 750, 750, 500].map((v) => expect.closeTo(v, 6)),
    );
  });

  test.each([
    ["along x", (d: number, z: number, i: number) => pick(`${i}`, d, 0, z)],
    ["along y", (d: number, z: number, i: number) => pick(`${i}`, 0, d, z)],
    ["askew", (d: number, z: number, i: number) => pick(`${i}`, d * 0.6, d * 0.8, z)],
  ])(
    "three picks of a gable in one plane, not in one line, %s: the outer two or the ridge with one of them",
    (_name, at) => {
      const gable = [at(-10, 2, 0), at(1, 6, 1), at(10, 2, 2)];
      const { legs } = liftSling(1000, gable, 22, HERE, 1);
      // Hook 24 ft above the center of gravity; level parts: 10/22 a share of a leg from the eave, 1/18 of the ridge's.
      // Outer two: 500 each. Ridge and left: r / 18 = l 10 / 22, l = r 22 / 180, r = 1000 / (1 + 22 / 180).
      const ridge = 1000 / (1 + 22 / 180);
      expect(upward(legs)).toEqual([500, ridge, 500].map((v) => expect.closeTo(v, 6)));
    },
  );

  test("picks in one plane that does not hold the center of gravity are refused", () => {
    const beside = [pick("a", -10, 1, 2), pick("b", 0, 1, 6), pick("c", 10, 1, 2)];
    expect(() => liftSling(1000, beside, 22, { xFt: 0, yFt: 1 }, 1)).toThrow("outside the picks");
  });

  test("a center of gravity outside the picks is refused; picks below it get a caution", () => {
    expect(() => liftSling(1000, [pick("a", 1), pick("b", 4, 3), pick("c", 4, -3)], 10, HERE, 1)).toThrow(
      "outside the picks",
    );
    const tape = new Tape();
    liftSling(
      1000,
      four.map((p) => ({ ...p, zFt: -2 })),
      12,
      HERE,
      1,
      tape,
    );
    expect(tape.cautions.join()).toContain("top-heavy");
    const level = new Tape();
    liftSling(1000, four, 12, HERE, 1, level);
    expect(level.cautions).toEqual([]);
  });
});

describe("properties", () => {
  const two = fc.record({
    near: fc.double({ min: 0.5, max: 10, noNaN: true }),
    far: fc.double({ min: 0.5, max: 10, noNaN: true }),
    rise: fc.double({ min: 10, max: 60, noNaN: true }),
    above: fc.double({ min: 0, max: 8, noNaN: true }),
    weight: fc.double({ min: 100, max: 20_000, noNaN: true }),
  });
  const picksOf = (c: { near: number; far: number; above: number }) => [
    pick("a", -c.near, 0, c.above),
    pick("b", c.far, 0, c.above),
  ];

  test("the upward parts of two legs sum to the weight, the level parts cancel", () => {
    fc.assert(
      fc.property(two, (c) => {
        const { legs } = liftSling(c.weight, picksOf(c), c.rise, HERE, 1);
        expect(upward(legs).reduce((a, b) => a + b)).toBeCloseTo(c.weight, 4);
        const [a = 0, b = 0] = legs.map((l) => l.tensionLb * Math.cos(radians(l.angleDeg)));
        expect(a).toBeCloseTo(b, 4);
      }),
    );
  });

  test("a higher hook never pulls harder; twice the weight pulls twice", () => {
    fc.assert(
      fc.property(two, (c) => {
        const low = liftSling(c.weight, picksOf(c), c.rise, HERE, 1).leastRatingLb;
        expect(liftSling(c.weight, picksOf(c), c.rise * 1.2, HERE, 1).leastRatingLb).toBeLessThanOrEqual(
          low * (1 + 1e-9),
        );
        expect(liftSling(c.weight * 2, picksOf(c), c.rise, HERE, 1).leastRatingLb).toBeCloseTo(2 * low, 3);
        expect(liftSling(c.weight, picksOf(c), c.rise, HERE, 1.3).leastRatingLb).toBeCloseTo(1.3 * low, 3);
      }),
    );
  });

  test("three legs at random hold the weight, each counted with half at least", () => {
    const angle = fc.double({ min: -0.5, max: 0.5, noNaN: true });
    fc.assert(
      fc.property(angle, angle, angle, (p, q, r) => {
        const picks = [p, q + 2.1, r + 4.2].map((t, i) => pick(`${i}`, 5 * Math.cos(t), 5 * Math.sin(t)));
        const parts = upward(liftSling(1000, picks, 12, HERE, 1).legs);
        for (const part of parts) expect(part).toBeGreaterThanOrEqual(500 - 1e-6);
      }),
    );
  });
});

test("the picture stands in the plane where the picks lie farthest apart", () => {
  const tape = new Tape();
  liftSling(4000, [pick("a", -3, -9), pick("b", 3, -9), pick("c", 3, 9), pick("d", -3, 9)], 16, HERE, 1.25, tape);
  const picture = tape.pictures[0] as SlingPicture;
  expect(picture.kind).toBe("sling");
  expect(picture.legs.map((l) => Math.abs(l.acrossFt))).toEqual([9, 9, 9, 9]);
  expect(picture.hook).toEqual({ acrossFt: expect.closeTo(0, 9), upFt: expect.closeTo(16, 9) });
  expect(picture.alt).toContain("least rating");
  const other = new Tape();
  liftSling(4000, [pick("a", -9, -3), pick("b", 9, -3), pick("c", 9, 3), pick("d", -9, 3)], 16, HERE, 1.25, other);
  expect((other.pictures[0] as SlingPicture).legs.map((l) => Math.abs(l.acrossFt))).toEqual([9, 9, 9, 9]);
});
