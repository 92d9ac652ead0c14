import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { Tape } from "../../../src/core/kit/tape.ts";
import { freestandingCoefficient, liftBrace } from "../../../src/core/lifting/brace.ts";
import { liftCentroid } from "../../../src/core/lifting/centroid.ts";
import { liftCrane } from "../../../src/core/lifting/crane.ts";
import { greatestMoment, liftPicks, momentAt, panelBendingRatio } from "../../../src/core/lifting/picks.ts";
import { liftWeight } from "../../../src/core/lifting/weight.ts";
import { liftWind } from "../../../src/core/lifting/wind.ts";

describe("weight", () => {
  const layers = [
    { material: "panel", psf: 4.5 },
    { material: "board", psf: 3.5 },
  ];
  const rows = (wet: number, tape?: Tape) =>
    liftWeight(
      [
        { wall: "south", netFt2: 100 },
        { wall: "north", netFt2: 50 },
      ],
      layers,
      [{ piece: "window", weightLb: 40, count: 3 }],
      wet,
      tape,
    );

  test("net area times layers, water on the wall's own weight, pieces beside", () => {
    expect(rows(0.05)).toEqual([
      { wall: "south", areaFt2: 100, psf: expect.closeTo(8.4, 9), weightLb: expect.closeTo(840, 9) },
      { wall: "north", areaFt2: 50, psf: expect.closeTo(8.4, 9), weightLb: expect.closeTo(420, 9) },
      { wall: "window", areaFt2: 0, psf: 0, weightLb: 120 },
      { wall: "total", areaFt2: 150, psf: expect.closeTo(1380 / 150, 9), weightLb: expect.closeTo(1380, 9) },
    ]);
  });

  test("the working holds each layer and row; several walls with pieces are said", () => {
    const tape = new Tape();
    rows(0, tape);
    expect(tape.steps.map((s) => s.value)).toEqual([4.5, 3.5, 8, 800, 400, 120]);
    expect(tape.steps[3]?.expression).toBe("south: 100 ft2 x w_wall");
    expect(tape.steps[5]?.expression).toBe("window: set in");
    expect(tape.assumptions).toHaveLength(1);
    const one = new Tape();
    liftWeight([{ wall: "a", netFt2: 1 }], layers, [{ piece: "w", weightLb: 1, count: 1 }], 0, one);
    liftWeight(
      [
        { wall: "a", netFt2: 1 },
        { wall: "b", netFt2: 1 },
      ],
      layers,
      [],
      0,
      one,
    );
    expect(one.assumptions).toEqual([]);
  });

  test("nothing that weighs is refused; pieces alone are a lift", () => {
    expect(() => liftWeight([{ wall: "a", netFt2: 0 }], layers, [], 0)).toThrow("weighs nothing");
    expect(liftWeight([], [], [{ piece: "beam", weightLb: 9, count: 1 }], 0).at(-1)).toMatchObject({
      psf: 0,
      weightLb: 9,
    });
  });
});

describe("centroid", () => {
  const piece = (weightLb: number, xFt: number, yFt: number, zFt: number, count = 1) => ({
    piece: "p",
    weightLb,
    count,
    xFt,
    yFt,
    zFt,
  });

  test("a panel with an opening as a hole, by hand", () => {
    const tape = new Tape();
    const found = liftCentroid([piece(240, 12, 5, 1), piece(-24, 18, 5, 1)], tape);
    expect(found).toEqual({ weightLb: 216, xFt: expect.closeTo(11.3333, 4), yFt: 5, zFt: 1 });
    expect(tape.assumptions.join()).toContain("hole");
    expect(tape.steps.map((s) => s.symbol)).toEqual(["W", "x", "y", "z"]);
  });

  test("counts weigh; nothing together is refused; no hole is not said", () => {
    const tape = new Tape();
    expect(liftCentroid([piece(10, 0, 0, 0, 3), piece(10, 4, 8, 12)], tape)).toEqual({
      weightLb: 40,
      xFt: 1,
      yFt: 2,
      zFt: 3,
    });
    expect(tape.assumptions).toEqual([]);
    expect(() => liftCentroid([piece(5, 0, 0, 0), piece(-5, 1, 0, 0)])).toThrow("weigh 0 lb");
  });

  test("moving all pieces moves the centroid as far", () => {
    const place = fc.double({ min: -50, max: 50, noNaN: true });
    const one = fc.tuple(fc.double({ min: 1, max: 500, noNaN: true }), place, place, place);
    fc.assert(
      fc.property(fc.array(one, { minLength: 1, maxLength: 6 }), place, (pieces, by) => {
        const at = liftCentroid(pieces.map(([w, x, y, z]) => piece(w, x, y, z)));
        const moved = liftCentroid(pieces.map(([w, x, y, z]) => piece(w, x + by, y - by, z + 2 * by)));
        expect(moved.xFt - at.xFt).toBeCloseTo(by, 6);
        expect(moved.yFt - at.yFt).toBeCloseTo(-by, 6);
        expect(moved.zFt - at.zFt).toBeCloseTo(2 * by, 6);
      }),
    );
  });
});

describe("crane", () => {
  const row = (radiusFt: number, capacityLb: number, boomFt?: number) => ({ radiusFt, capacityLb, boomFt });
  const chart = [row(50, 5900), row(40, 8300), row(30, 11_400), row(35, 9700)];

  test("the next larger radius, never between rows; on a row that row", () => {
    expect(liftCrane(5000, 38, chart, 600, 0.75)).toEqual({
      capacityLb: 8300,
      atRadiusFt: 40,
      loadLb: 5600,
      ratio: 5600 / 8300,
      verdict: "within the limit",
    });
    expect(liftCrane(5000, 35, chart, 600, 0.75).capacityLb).toBe(9700);
    expect(liftCrane(5000, 35.001, chart, 600, 0.75).capacityLb).toBe(8300);
    expect(liftCrane(5000, 30, chart, 600, 0.75).capacityLb).toBe(11_400);
    expect(liftCrane(5000, 50, chart, 600, 0.75).capacityLb).toBe(5900);
  });

  test("outside the chart is refused on both sides", () => {
    expect(() => liftCrane(5000, 29.9, chart, 600, 0.75)).toThrow("from 30 to 50 ft");
    expect(() => liftCrane(5000, 50.1, chart, 600, 0.75)).toThrow("from 30 to 50 ft");
    expect(() => liftCrane(5000, 50, [], 600, 0.75)).toThrow("no row");
  });

  test("verdicts at their borders, with the cautions that go with them", () => {
    const at = (load: number, limit = 0.75) => {
      const tape = new Tape();
      return { ...liftCrane(load, 40, chart, 0, limit, tape), cautions: tape.cautions };
    };
    expect(at(6225)).toMatchObject({ verdict: "within the limit", cautions: [] });
    expect(at(6226).verdict).toBe("above the limit");
    expect(at(6226).cautions).toEqual([expect.stringContaining("75.012 % of the chart, above the 75 %")]);
    expect(at(8300).verdict).toBe("above the limit");
    expect(at(8301)).toMatchObject({
      verdict: "above the chart",
      cautions: [expect.stringContaining("cannot lift it")],
    });
    expect(at(7000, 0.9)).toMatchObject({
      verdict: "within the limit",
      cautions: [expect.stringContaining("critical")],
    });
  });

  test("a chart that cannot be: capacity that rises, a radius twice, several booms", () => {
    expect(() => liftCrane(1, 40, [row(30, 5000), row(40, 5001)], 0, 0.75)).toThrow("rises from 5000 lb at 30 ft");
    expect(liftCrane(1, 40, [row(30, 5000), row(40, 5000)], 0, 0.75).capacityLb).toBe(5000);
    expect(() => liftCrane(1, 40, [row(40, 5000), row(40, 4000)], 0, 0.75)).toThrow("40 ft twice");
    expect(() => liftCrane(1, 40, [row(30, 5000, 80), row(40, 4000, 95)], 0, 0.75)).toThrow("80 ft and 95 ft");
    expect(() => liftCrane(1, 40, [row(30, 5000), row(40, 4000, 95)], 0, 0.75)).toThrow("no length and 95 ft");
    expect(liftCrane(1, 40, [row(30, 5000, 95), row(40, 4000, 95)], 0, 0.75).capacityLb).toBe(4000);
  });

  test("farther out never lifts more", () => {
    const radius = fc.double({ min: 30, max: 50, noNaN: true });
    fc.assert(
      fc.property(radius, radius, (a, b) => {
        const [near, far] = [Math.min(a, b), Math.max(a, b)].map((r) => liftCrane(1000, r, chart, 0, 0.75).capacityLb);
        expect(far).toBeLessThanOrEqual(near ?? 0);
      }),
    );
  });
});

describe("wind on a lifted panel", () => {
  test("by hand: 0.00256 V2 x 1.2 A", () => {
    expect(liftWind(200, 2000, 20, undefined)).toEqual({
      pullLb: expect.closeTo(245.76, 6),
      leanDeg: expect.closeTo((Math.atan(0.12288) * 180) / Math.PI, 9),
      stopAtMph: 20,
      rule: "published limit",
    });
    expect(liftWind(200, 2000, 30, undefined)).toMatchObject({
      pullLb: expect.closeTo(552.96, 6),
      rule: "limit given",
    });
    expect(liftWind(100, 2000, 10, undefined).pullLb).toBeCloseTo(30.72, 6);
  });

  test("a greatest pull sets a lower wind, or leaves the limit", () => {
    const lower = liftWind(200, 2000, 20, 0.05);
    expect(lower.pullLb).toBeCloseTo(100, 6);
    expect(lower.stopAtMph).toBeCloseTo(20 * Math.sqrt(100 / 245.76), 6);
    expect(lower.rule).toBe("greatest pull");
    expect(liftWind(200, 2000, 20, 0.5)).toMatchObject({ stopAtMph: 20, rule: "published limit" });
  });

  test("above 20 mph the manual's stop is said, and where the limit comes from", () => {
    const [at, over] = [new Tape(), new Tape()];
    liftWind(200, 2000, 20, undefined, at);
    liftWind(200, 2000, 20.1, undefined, over);
    expect(at.cautions).toEqual([]);
    expect(over.cautions.join()).toContain("Above 20 mph");
    const limitOf = (tape: Tape) => tape.steps.find((s) => s.symbol === "V_limit")?.clause;
    expect(limitOf(at)).toContain("EM 385-1-1");
    expect(limitOf(over)).toBe("given");
  });

  test("the pull grows with area and never passes what the plan allows", () => {
    const size = fc.double({ min: 10, max: 1000, noNaN: true });
    fc.assert(
      fc.property(size, size, fc.double({ min: 0.01, max: 0.3, noNaN: true }), (area, weight, share) => {
        const wind = liftWind(area, weight * 10, 20, share);
        expect(wind.pullLb).toBeLessThanOrEqual(share * weight * 10 * (1 + 1e-9));
        expect(wind.stopAtMph).toBeLessThanOrEqual(20);
        expect(liftWind(area * 2, weight, 20, undefined).pullLb).toBeCloseTo(
          2 * liftWind(area, weight, 20, undefined).pullLb,
          6,
        );
      }),
    );
  });
});

describe("braces", () => {
  const wall = { lengthFt: 40, heightFt: 10, braces: 5, attachFt: 8, angleDeg: 45 };

  test("by hand from q = 0.00256 x 0.85 Kz V2 with G 0.85 and Cf 1.35", () => {
    const tape = new Tape();
    const forces = liftBrace(wall, 60, "C", tape);
    const kz = 2.41 * (15 / 2460) ** (2 / 9.8);
    const wind = 0.00256 * kz * 0.85 * 3600 * 0.85 * 1.35 * 400;
    const level = (wind * 5.5) / 8;
    expect(forces.windLb).toBeCloseTo(wind, 6);
    expect(forces.eachBraceLb).toBeCloseTo((level / 5) * Math.SQRT2, 6);
    expect(forces.footLb).toBeCloseTo(wind - level, 6);
    expect(forces.upliftLb).toBeCloseTo(level / 5, 6);
    expect(tape.cautions.some((c) => c.includes("windward end"))).toBe(true);
    expect(tape.cautions.some((c) => c.includes("from memory"))).toBe(true);
  });

  test("a steep brace lifts more, in the ratio of its tangent", () => {
    const steep = liftBrace({ ...wall, angleDeg: 60 }, 60, "C");
    const flat = liftBrace(wall, 60, "C");
    expect(steep.upliftLb / flat.upliftLb).toBeCloseTo(Math.sqrt(3), 9);
    expect(steep.eachBraceLb / flat.eachBraceLb).toBeCloseTo(Math.SQRT2, 9);
  });

  test("limits: braces above the wall, angles outside 15 to 75", () => {
    expect(() => liftBrace({ ...wall, attachFt: 10.1 }, 60, "C")).toThrow("attached 10.1 ft up");
    expect(() => liftBrace({ ...wall, attachFt: 10 }, 60, "C")).not.toThrow();
    for (const angleDeg of [14.9, 75.1])
      expect(() => liftBrace({ ...wall, angleDeg }, 60, "C")).toThrow("angle of the braces");
    for (const angleDeg of [15, 75]) expect(() => liftBrace({ ...wall, angleDeg }, 60, "C")).not.toThrow();
  });

  test("the coefficient along its table: nodes, between, both ends; short walls get no word on the windward end", () => {
    expect([0.01, 0.05, 0.1, 0.2, 0.5, 1, 2, 4, 5, 10, 45, 99].map(freestandingCoefficient)).toEqual([
      1.8, 1.8, 1.7, 1.65, 1.55, 1.45, 1.4, 1.35, 1.35, 1.3, 1.3, 1.3,
    ]);
    expect(freestandingCoefficient(0.75)).toBeCloseTo(1.5, 9);
    const [short, long] = [new Tape(), new Tape()];
    liftBrace({ ...wall, lengthFt: 19 }, 60, "C", short);
    liftBrace({ ...wall, lengthFt: 20 }, 60, "C", long);
    expect(short.cautions.some((c) => c.includes("windward end"))).toBe(false);
    expect(long.cautions.some((c) => c.includes("windward end"))).toBe(true);
  });

  test("level forces balance, more wind pulls with its square", () => {
    fc.assert(
      fc.property(fc.double({ min: 4, max: 10, noNaN: true }), fc.integer({ min: 1, max: 9 }), (attachFt, braces) => {
        const f = liftBrace({ ...wall, attachFt, braces }, 40, "B");
        expect(f.footLb + f.eachBraceLb * braces * Math.SQRT1_2).toBeCloseTo(f.windLb, 6);
        expect(liftBrace({ ...wall, attachFt, braces }, 80, "B").eachBraceLb).toBeCloseTo(4 * f.eachBraceLb, 6);
      }),
    );
  });
});

describe("picks", () => {
  test("closed forms, by hand", () => {
    const at = (count: number) => liftPicks(100, 10, count, 1);
    const [one, two, three, four] = [at(1), at(2), at(3), at(4)];
    expect(one.picks.map((p) => p.fromLeftFt)).toEqual([expect.closeTo(70.7107, 4)]);
    expect(one.greatestFtLb).toBeCloseTo(0.042893 * 1e5, 1);
    expect(two.picks.map((p) => p.fromLeftFt)).toEqual([expect.closeTo(20.7107, 4), expect.closeTo(79.2893, 4)]);
    expect(two.greatestFtLb).toBeCloseTo(0.021447 * 1e5, 1);
    expect(three.picks.map((p) => p.fromLeftFt)).toEqual([13.8071, 50, 86.1929].map((x) => expect.closeTo(x, 4)));
    expect(three.greatestFtLb).toBeCloseTo(0.0095318 * 1e5, 1);
    // 0.1077 L and 0.00579 w L2 by a search of even spacings.
    expect(four.picks[0]?.fromLeftFt).toBeCloseTo(10.7625, 4);
    expect(four.greatestFtLb).toBeCloseTo(0.00579 * 1e5, -1);
    expect(two.spacingFt).toBeCloseTo(58.5786, 4);
    expect(four.spacingFt).toBeCloseTo(26.1583, 4);
    expect(one.spacingFt).toBeCloseTo(70.7107, 4);
  });

  test("the impact factor is in the bending, below 0 over a pick; names and the word on equal pulls", () => {
    const [even, hard, tape] = [liftPicks(30, 8, 2, 1), liftPicks(30, 8, 2, 1.25, undefined), new Tape()];
    expect(hard.picks[0]?.momentFtLb).toBeCloseTo(1.25 * (even.picks[0]?.momentFtLb ?? 0), 9);
    expect(hard.greatestFtLb).toBeCloseTo(1.25 * even.greatestFtLb, 9);
    expect(even.picks[0]?.momentFtLb).toBeCloseTo((-8 * (30 * 0.2071068) ** 2) / 2, 3);
    expect(even.picks.map((p) => p.pick)).toEqual(["pick 1", "pick 2"]);
    liftPicks(30, 8, 2, 1, tape);
    expect(tape.cautions).toEqual([]);
    expect(tape.steps.at(-1)?.expression).toContain("= 0.0214466 w L^2");
    liftPicks(30, 8, 3, 1, tape);
    expect(tape.cautions.join()).toContain("rolling blocks");
  });

  test("a panel's stress over its strength, by hand, with a word beyond 1", () => {
    const [good, bad] = [new Tape(), new Tape()];
    expect(panelBendingRatio(600, 4.5, 1600, good)).toBeCloseTo((600 * 12) / 4.5 / 1600, 12);
    expect(good.steps.map((s) => s.value)).toEqual([7200, 1600, 1]);
    expect(good.cautions).toEqual([]);
    panelBendingRatio(601, 4.5, 1600, bad);
    expect(bad.cautions.join()).toContain("beyond its strength");
  });

  test("no other even spacing bends less, whatever the count", () => {
    fc.assert(
      fc.property(fc.constantFrom(2, 3, 4), fc.double({ min: 0.01, max: 0.24, noNaN: true }), (count, share) => {
        const spacing = (1 - 2 * share) / (count - 1);
        const places = Array.from({ length: count }, (_, i) => share + i * spacing);
        const other = greatestMoment(1, momentAt(1, 1, places), places);
        expect(other).toBeGreaterThanOrEqual(liftPicks(1, 1, count, 1).greatestFtLb - 1e-12);
      }),
    );
  });

  test("tilted about its foot, no other pick bends less", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.52, max: 0.999, noNaN: true }), (place) => {
        const other = greatestMoment(1, momentAt(1, 1, [place]), [place]);
        expect(other).toBeGreaterThanOrEqual(liftPicks(1, 1, 1, 1).greatestFtLb - 1e-12);
      }),
    );
  });

  test("the greatest bending is none less than anywhere along the piece", () => {
    fc.assert(
      fc.property(fc.constantFrom(1, 2, 3, 4), fc.double({ min: 0, max: 1, noNaN: true }), (count, x) => {
        const { picks, greatestFtLb } = liftPicks(1, 1, count, 1);
        const moment = momentAt(
          1,
          1,
          picks.map((p) => p.fromLeftFt),
        );
        expect(Math.abs(moment(x))).toBeLessThanOrEqual(greatestFtLb + 1e-12);
        expect(moment(1)).toBeCloseTo(0, 12);
      }),
    );
  });
});
