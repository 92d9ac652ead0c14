import { describe, expect, test } from "vitest";
import { Tape } from "../../../src/core/kit/tape.ts";
import { type AxleGroup, sayAxleGroups } from "../../../src/core/lifting/axles.ts";
import { freestandingCoefficient } from "../../../src/core/lifting/brace.ts";
import { liftCentroid } from "../../../src/core/lifting/centroid.ts";
import { liftCrane } from "../../../src/core/lifting/crane.ts";
import { greatestMoment, momentAt } from "../../../src/core/lifting/picks.ts";
import type { SlingPicture } from "../../../src/core/lifting/pictures.ts";
import { liftSling } from "../../../src/core/lifting/sling.ts";
import { liftWeight } from "../../../src/core/lifting/weight.ts";
import { liftWind, windPullLb } from "../../../src/core/lifting/wind.ts";

/** What happens just on a limit, and at sizes far from 1. */

const HERE = { xFt: 0, yFt: 0 };
const pick = (name: string, xFt: number, yFt = 0, zFt = 0) => ({ pick: name, xFt, yFt, zFt });
const sling = (picks: readonly ReturnType<typeof pick>[], riseFt = 8, hook = HERE) => {
  const tape = new Tape();
  const { legs } = liftSling(1000, picks, riseFt, hook, 1, tape);
  const upward = legs.map((l) => l.tensionLb * Math.sin((l.angleDeg * Math.PI) / 180));
  return { legs, upward, said: tape.cautions.join(" "), picture: tape.pictures[0] as SlingPicture };
};

describe("small lifts count as others do", () => {
  const piece = (weightLb: number) => ({ piece: "p", weightLb, count: 1, xFt: 3, yFt: 0, zFt: 0 });

  test("half a pound is a load, a weight of 0 no hole, half a pound less than 0 is one", () => {
    const said = (...weights: readonly number[]) => {
      const tape = new Tape();
      const { weightLb, xFt } = liftCentroid(weights.map(piece), tape);
      expect([weightLb, xFt]).toEqual([weights.reduce((a, b) => a + b), 3]);
      return tape.assumptions;
    };
    expect(said(0.5)).toEqual([]);
    expect(said(5, 0.5, 0)).toEqual([]);
    expect(said(5, -0.5)).toHaveLength(1);
    expect(() => liftCentroid([piece(1), piece(-1)])).toThrow("weigh 0 lb");
  });

  test("half a square foot that weighs half a pound", () => {
    const rows = liftWeight([{ wall: "a", netFt2: 0.5 }], [{ material: "x", psf: 1 }], [], 0);
    expect(rows.at(-1)).toEqual({ wall: "total", areaFt2: 0.5, psf: 1, weightLb: 0.5 });
  });
});

describe("just on the limit", () => {
  test("an axle group that weighs its limit is within it", () => {
    const group = (weightLb: number): AxleGroup => ({
      group: "tandem",
      axles: 2,
      apartFt: 4,
      weightLb,
      limitLb: 34_000,
    });
    const said = (weightLb: number) => {
      const tape = new Tape();
      sayAxleGroups(1, [group(weightLb)], tape);
      return tape.cautions.length;
    };
    expect([said(34_000), said(34_001)]).toEqual([0, 1]);
  });

  test("a crane that lifts just what its chart says can lift it", () => {
    const tape = new Tape();
    liftCrane(5000, 20, [{ radiusFt: 20, capacityLb: 5000, boomFt: undefined }], 0, 0.75, tape);
    expect(tape.cautions.join()).not.toContain("cannot lift");
    expect(tape.cautions.join()).toContain("100 % of the chart, above the 75 %");
  });

  test("a greatest pull that comes to just the limit leaves the limit's rule", () => {
    // Half of the weight is what 20 mph pull, 20^2 times the pull of 1 mph.
    const weightLb = (windPullLb(200, 1) * 20 ** 2) / 0.5;
    expect(liftWind(200, weightLb, 20, 0.5)).toMatchObject({ stopAtMph: 20, rule: "published limit" });
    expect(liftWind(200, weightLb * 0.999, 20, 0.5).rule).toBe("greatest pull");
  });

  test("the coefficient between the first two rows of the table: (1.8 + 1.7) / 2", () => {
    expect(freestandingCoefficient(0.075)).toBeCloseTo(1.75, 9);
  });
});

describe("bending of a piece of 10 ft and 1 plf, picks where they should not be", () => {
  const greatest = (...places: readonly number[]) => greatestMoment(10, momentAt(10, 1, places), places);

  test("one pick 9 ft from the foot: no shear where the foot's 10 - 50/9 = 40/9 lb are used up, (40/9)^2 / 2", () => {
    expect(greatest(9)).toBeCloseTo((40 / 9) ** 2 / 2, 9);
  });

  test("two picks near the ends: 5 lb x 4 ft - 12.5 at the middle", () => {
    expect(greatest(1, 9)).toBeCloseTo(7.5, 9);
  });

  test("three picks: at a third of the length 10/3 x (10/3 - 0.5) - (10/3)^2 / 2", () => {
    expect(greatest(0.5, 5, 9.5)).toBeCloseTo((10 / 3) * (10 / 3 - 0.5) - (10 / 3) ** 2 / 2, 9);
  });
});

describe("picks that nearly meet, nearly lie in line, nearly at the level of the center of gravity: a hundredth of a foot", () => {
  test("legs a hundredth apart are two, nearer ones are one", () => {
    expect(sling([pick("a", 0), pick("b", 0.01)]).upward[0]).toBeCloseTo(1000, 6);
    expect(() => sling([pick("a", 0), pick("b", 0.0099)])).toThrow("same place");
    expect(() => sling([pick("a", -3), pick("b", 3), pick("c", 3)])).toThrow("same place");
  });

  test("a middle pick a hundredth out of line stands beside it: it carries nothing with both others, so half", () => {
    const middle = (yFt: number) => sling([pick("a", -5), pick("b", 5), pick("c", 0, yFt)]).upward[2];
    expect(middle(0.01)).toBeCloseTo(500, 6);
    expect(middle(0.0099)).toBeCloseTo(1000, 6);
  });

  test("picks a hundredth below the center of gravity are level with it", () => {
    const three = (zFt: number) => sling([pick("a", -5, 0, zFt), pick("b", 5, 3, zFt), pick("c", 5, -3, zFt)]).said;
    expect(three(-0.01)).toBe("");
    expect(three(-0.0101)).toContain("top-heavy");
    expect(sling([pick("a", -5, 0, -0.01), pick("b", 5, 0, -0.01)]).upward[0]).toBeCloseTo(500, 1);
    expect(() => sling([pick("a", -5, 0, -0.0101), pick("b", 5, 0, -0.0101)])).toThrow("turn over");
  });

  test("a line that runs 0.105 level for each 1 along it is not one above another, 0.095 is", () => {
    const steep = (level: number) => {
      const up = Math.sqrt(1 - level ** 2);
      return sling([pick("a", -2 * level, 0, -2 * up + 3), pick("b", 2 * level, 0, 2 * up + 3)], 12);
    };
    expect(() => steep(0.095)).toThrow("one above another");
    expect(() => steep(0.105)).not.toThrow("one above another");
  });
});

describe("hooks", () => {
  test("the rise goes by the height of the picks over each other, not over the center of gravity", () => {
    const { legs } = sling([pick("low", -1, 0, 6), pick("high", 1, 0, 8)], 4);
    // 4 ft above the low pick and 2 above the high one, both 1 ft off the plumb line
    expect(legs.map((l) => Math.tan((l.angleDeg * Math.PI) / 180))).toEqual([4, 2].map((t) => expect.closeTo(t, 6)));
  });

  test("a tilt of half a degree is said, less is not", () => {
    const tilt = (deg: number) => {
      const xFt = 20 * Math.tan((deg * Math.PI) / 180);
      return sling([pick("a", -5), pick("b", 5)], 20, { xFt, yFt: 0 }).said;
    };
    expect(tilt(0.52)).toContain("hangs tilted by 0.52 deg");
    expect(tilt(0.49)).toBe("");
  });

  test("30 and 45 degrees are answered without a word whatever the sums leave behind their last digit", () => {
    for (let half = 1; half <= 20; half++) {
      const at = (deg: number) =>
        sling([pick("a", -half), pick("b", half)], half * Math.tan((deg * Math.PI) / 180)).said;
      expect(at(45), `${half} ft at 45`).toBe("");
      expect(() => at(30), `${half} ft at 30`).not.toThrow();
    }
  });

  test("a leg that hangs plumb below the hook carries all, at 90 degrees, wherever the hook stands", () => {
    for (const x of [1, 2, 3]) {
      for (const share of [0.1, 0.2, 0.3, 0.5]) {
        // On the way from the center of gravity to the hook, a load tilted by atan(x / 8).
        const { legs, upward } = sling(
          [pick("plumb", x * share, 0, 8 * share), pick("idle", x * share + 3, 0, 8 * share)],
          8 * (1 - share),
          { xFt: x, yFt: 0 },
        );
        expect(legs[0]?.angleDeg).toBeCloseTo(90, 5);
        expect(upward[0]).toBeCloseTo(1000, 6);
      }
    }
  });

  test("a square of picks is seen along y", () => {
    const square = [pick("a", -3, -3), pick("b", 3, -3), pick("c", 3, 3), pick("d", -3, 3)];
    expect(sling(square).picture.legs.map((l) => l.acrossFt)).toEqual([-3, 3, 3, -3]);
  });

  test("the picture looks square to the plumb line and keeps the breadth of the picks, a hook far off to the side too", () => {
    const three = [pick("a", -9, -1), pick("b", 9, -1), pick("c", 0, 2)];
    for (const yFt of [0, 3, 20, -20]) {
      const { picture } = sling(three, 8, { xFt: 0, yFt });
      expect(picture.legs.map((l) => Math.abs(l.acrossFt))).toEqual([9, 9, 0].map((x) => expect.closeTo(x, 9)));
      expect(picture.hook).toEqual({ acrossFt: expect.closeTo(0, 9), upFt: expect.closeTo(Math.hypot(yFt, 8), 9) });
    }
    for (const xFt of [3, 20]) {
      // The load tilts about y: what lay 9 ft along x lies 9 cos(tilt) to the side.
      const across = (9 * 8) / Math.hypot(xFt, 8);
      const { picture } = sling(three, 8, { xFt, yFt: 0 });
      expect(picture.legs.map((l) => Math.abs(l.acrossFt))).toEqual(
        [across, across, 0].map((x) => expect.closeTo(x, 9)),
      );
    }
  });
});
