import { createRequire } from "node:module";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { betaPlace, betaShare } from "../../../src/core/cost/beta.ts";
import { normalDeviations, normalShare } from "../../../src/core/cost/normal.ts";
import { rangeMoments, triangularMoments, triangularQuantile } from "../../../src/core/cost/range.ts";
import { draw, errorOf, notPassed, TRIALS } from "../../../src/core/cost/simulation.ts";
import { Tape } from "../../../src/core/kit/tape.ts";

/** A general statistics library as a peer. */
interface Peer {
  readonly normal: {
    cdf(x: number, mean: number, sd: number): number;
    inv(p: number, mean: number, sd: number): number;
  };
  readonly beta: { cdf(x: number, a: number, b: number): number; inv(p: number, a: number, b: number): number };
  readonly triangular: {
    cdf(x: number, a: number, b: number, c: number): number;
    mean(a: number, b: number, c: number): number;
    variance(a: number, b: number, c: number): number;
  };
  corrcoeff(a: readonly number[], b: readonly number[]): number;
}
const { jStat: peer } = createRequire(import.meta.url)("jstat") as { jStat: Peer };

const share = fc.double({ min: 0.001, max: 0.999, noNaN: true });
const mean = (values: ArrayLike<number>) => Array.from(values).reduce((a, b) => a + b, 0) / values.length;
const variance = (values: ArrayLike<number>) => {
  const m = mean(values);
  return mean(Array.from(values, (v) => (v - m) ** 2));
};

describe("beside a statistics library", () => {
  test("the normal curve, both ways", () => {
    for (const z of [-6, -3.2, -1, -0.1, 0, 0.4, 1.96, 5])
      expect(normalShare(z)).toBeCloseTo(peer.normal.cdf(z, 0, 1), 9);
    for (const p of [0.001, 0.1, 0.5, 0.8, 0.95, 0.9999]) {
      expect(normalDeviations(p)).toBeCloseTo(peer.normal.inv(p, 0, 1), 6);
    }
    expect([normalShare(-9), normalShare(9), normalShare(-8.5)]).toEqual([0, 1, 0]);
  });

  test("the beta curve, both ways", () => {
    const shape = fc.double({ min: 1, max: 5, noNaN: true });
    fc.assert(
      fc.property(share, shape, shape, (x, a, b) => {
        expect(betaShare(x, { a, b })).toBeCloseTo(peer.beta.cdf(x, a, b), 6);
        expect(betaPlace(x, { a, b })).toBeCloseTo(peer.beta.inv(x, a, b), 5);
      }),
    );
    expect([
      betaShare(0, { a: 2, b: 3 }),
      betaShare(1, { a: 2, b: 3 }),
      betaShare(-1, { a: 2, b: 3 }),
      betaShare(2, { a: 2, b: 3 }),
    ]).toEqual([0, 1, 0, 1]);
  });

  test("the triangle: mean, variance and quantiles", () => {
    const points = fc.tuple(
      fc.double({ min: 1, max: 50, noNaN: true }),
      fc.double({ min: 0.1, max: 40, noNaN: true }),
      fc.double({ min: 0.1, max: 40, noNaN: true }),
    );
    fc.assert(
      fc.property(points, share, ([low, up, more], p) => {
        const t = { low, likely: low + up, high: low + up + more };
        const moments = triangularMoments(t);
        expect(moments.mean).toBeCloseTo(peer.triangular.mean(t.low, t.high, t.likely), 6);
        expect(moments.deviation ** 2).toBeCloseTo(peer.triangular.variance(t.low, t.high, t.likely), 6);
        expect(peer.triangular.cdf(triangularQuantile(t)(p), t.low, t.high, t.likely)).toBeCloseTo(p, 6);
      }),
    );
  });
});

describe("three points", () => {
  test("by hand", () => {
    const points = { low: 80, likely: 100, high: 150 };
    expect(rangeMoments(points, "beta")).toMatchObject({ mean: 105, deviation: expect.closeTo(11.6667, 4) });
    expect(rangeMoments(points, "triangular")).toMatchObject({ mean: 110, deviation: expect.closeTo(14.7196, 4) });
    expect(rangeMoments({ low: 70, likely: 70, high: 85 }, "triangular")).toMatchObject({
      mean: 75,
      deviation: expect.closeTo(3.5355, 4),
    });
    expect(rangeMoments({ low: 10, likely: 12, high: 20 }, "beta")).toMatchObject({
      mean: 13,
      deviation: expect.closeTo(1.6667, 4),
    });
    // Triangle 80, 100, 150: P10 = 80 + sqrt(0.1 x 70 x 20), P90 = 150 - sqrt(0.1 x 70 x 50).
    const { p10, p50, p90 } = rangeMoments(points, "triangular");
    expect([p10, p50, p90]).toEqual(
      [80 + Math.sqrt(140), 150 - Math.sqrt(1750), 150 - Math.sqrt(350)].map((v) => expect.closeTo(v, 9)),
    );
  });

  test("beta percentiles beside the library, with shapes 1 + 4 (m - a)/(b - a) and 1 + 4 (b - m)/(b - a)", () => {
    const { p10, p50, p90 } = rangeMoments({ low: 80, likely: 100, high: 150 }, "beta");
    const at = (p: number) => 80 + 70 * peer.beta.inv(p, 1 + 80 / 70, 1 + 200 / 70);
    expect([p10, p50, p90]).toEqual([at(0.1), at(0.5), at(0.9)].map((v) => expect.closeTo(v, 4)));
  });

  test("a spread of 1 is a spread", () => {
    expect(rangeMoments({ low: 0, likely: 0.5, high: 1 }, "beta").p50).toBeCloseTo(0.5, 9);
  });

  test("no spread: every value is the same; points out of order are refused", () => {
    for (const shape of ["beta", "triangular"] as const) {
      expect(rangeMoments({ low: 5, likely: 5, high: 5 }, shape)).toEqual({
        mean: 5,
        deviation: 0,
        p10: 5,
        p50: 5,
        p90: 5,
      });
      expect(() => rangeMoments({ low: 5, likely: 4, high: 6 }, shape)).toThrow("low 5, likely 4, high 6");
      expect(() => rangeMoments({ low: 5, likely: 7, high: 6 }, shape)).toThrow("low 5, likely 7, high 6");
    }
  });

  test("the working has each figure with its formula", () => {
    const tape = new Tape();
    rangeMoments({ low: 80, likely: 100, high: 150 }, "beta", tape);
    expect(tape.steps.map((s) => s.symbol)).toEqual(["mean", "deviation", "P10", "P50", "P90"]);
    expect(tape.steps[0]?.expression).toContain("4 m");
    const other = new Tape();
    rangeMoments({ low: 80, likely: 100, high: 150 }, "triangular", other);
    expect(other.steps[0]?.expression).toBe("(a + m + b) / 3");
  });

  test("percentiles ascend and stay inside", () => {
    const gap = fc.double({ min: 0, max: 100, noNaN: true });
    fc.assert(
      fc.property(gap, gap, fc.constantFrom("beta", "triangular"), (up, more, shape) => {
        const r = rangeMoments({ low: 10, likely: 10 + up, high: 10 + up + more }, shape as "beta");
        expect(r.p10).toBeGreaterThanOrEqual(10 - 1e-9);
        expect(r.p50).toBeGreaterThanOrEqual(r.p10);
        expect(r.p90).toBeGreaterThanOrEqual(r.p50);
        expect(r.p90).toBeLessThanOrEqual(10 + up + more + 1e-9);
      }),
    );
  });
});

describe("draws", () => {
  const uniform = (p: number) => p;

  test("the sum of uniform quantities, closed form: mean n/2, variance n/12, and its share below a place", () => {
    const n = 3;
    const { totals } = draw([uniform, uniform, uniform], 0, 11);
    expect(totals).toHaveLength(TRIALS);
    const sd = Math.sqrt(n / 12);
    expect(Math.abs(mean(totals) - n / 2)).toBeLessThan((4 * sd) / Math.sqrt(TRIALS));
    expect(Math.abs(variance(totals) - n / 12)).toBeLessThan(4 * (n / 12) * Math.sqrt(2 / TRIALS));
    // Irwin and Hall: the share below 1 is 1/3!.
    const below = totals.filter((t) => t < 1).length / TRIALS;
    expect(Math.abs(below - 1 / 6)).toBeLessThan(4 * Math.sqrt(1 / 6 / TRIALS));
  });

  test("each quantity keeps its own curve, whatever the correlation", () => {
    const t = { low: 0, likely: 2, high: 10 };
    for (const correlation of [0, 0.5, 0.9]) {
      const [a = new Float64Array(), b = new Float64Array()] = draw(
        [uniform, triangularQuantile(t)],
        correlation,
        3,
      ).each;
      expect(Math.abs(mean(a) - 0.5)).toBeLessThan(4 * Math.sqrt(1 / 12 / TRIALS));
      const { mean: m, deviation } = triangularMoments(t);
      expect(Math.abs(mean(b) - m)).toBeLessThan((4 * deviation) / Math.sqrt(TRIALS));
      expect(Math.abs(Math.sqrt(variance(b)) - deviation)).toBeLessThan(0.03 * deviation);
    }
  });

  test("the correlation of uniform quantities drawn so, closed form: 6/pi asin(r/2)", () => {
    for (const r of [0, 0.3, 0.7, 1]) {
      const [a = new Float64Array(), b = new Float64Array()] = draw([uniform, uniform], r, 5).each;
      const found = peer.corrcoeff([...a], [...b]);
      expect(Math.abs(found - (6 / Math.PI) * Math.asin(r / 2))).toBeLessThan(4 / Math.sqrt(TRIALS));
    }
  });

  test("the normal numbers inside: shares of uniform draws are even, and pairs are not alike", () => {
    const [a = new Float64Array(), b = new Float64Array()] = draw([normalDeviations, normalDeviations], 0, 9).each;
    expect(Math.abs(variance(a) - 1)).toBeLessThan(0.05);
    expect(Math.abs(peer.corrcoeff([...a], [...b]))).toBeLessThan(4 / Math.sqrt(TRIALS));
    const tail = a.filter((v) => Math.abs(v) > 1.959964).length / TRIALS;
    expect(Math.abs(tail - 0.05)).toBeLessThan(4 * Math.sqrt(0.0475 / TRIALS));
  });

  test("the value not passed: the smallest that the share reaches", () => {
    const ten = Float64Array.from([1, 2, 3, 4, 5, 6, 7, 8, 9, 10]);
    expect([0, 0.05, 0.1, 0.11, 0.5, 0.8, 0.95, 1].map((p) => notPassed(ten, p))).toEqual([1, 1, 1, 2, 5, 8, 10, 10]);
    expect(
      errorOf(
        Float64Array.from({ length: 10_000 }, (_, i) => i),
        0.5,
      ),
    ).toBeCloseTo(50, 0);
    expect(
      errorOf(
        Float64Array.from({ length: 10_000 }, (_, i) => i),
        0.9,
      ),
    ).toBeCloseTo(30, 0);
  });
});
