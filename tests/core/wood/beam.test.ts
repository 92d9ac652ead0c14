import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Beam, type BeamLoad, type BeamSolution, solveBeam } from "../../../src/core/wood/beam/beam.ts";
import {
  greatestDeflection,
  greatestHogging,
  greatestMoment,
  greatestSagging,
  greatestShear,
} from "../../../src/core/wood/beam/beam-extremes.ts";
import { equalSpans, equalSupports, uniform } from "../../../src/core/wood/beam/spans.ts";

const point = (atIn: number, lb: number): BeamLoad => ({ kind: "point", atIn, lb });
const part = (fromIn: number, toIn: number, lbPerIn: number): BeamLoad => ({ kind: "uniform", fromIn, toIn, lbPerIn });
const near = (got: number, want: number, scale = Math.abs(want)) =>
  expect(Math.abs(got - want)).toBeLessThanOrEqual(1e-6 * scale + 1e-9);

/** Moment at a place by going through loads and reactions one by one, in steps for what is spread. */
function momentByHand(s: BeamSolution, x: number): number {
  let m = 0;
  s.beam.supportsIn.forEach((at, i) => {
    if (at < x) m += (s.reactionsLb[i] ?? 0) * (x - at);
  });
  for (const load of s.beam.loads) {
    if (load.kind === "point") m -= load.atIn < x ? load.lb * (x - load.atIn) : 0;
    else {
      const end = Math.min(x, load.toIn);
      if (end > load.fromIn) m -= load.lbPerIn * (end - load.fromIn) * (x - (load.fromIn + end) / 2);
    }
  }
  return m;
}

/** Deflection on a grid by numerical integration of the curvature, set on the first two supports. */
function integrated(s: BeamSolution, steps: number): { x: number; y: number }[] {
  const { lengthIn, bendingStiffness, shearStiffness, supportsIn } = s.beam;
  const h = lengthIn / steps;
  const out = [{ x: 0, y: 0 }];
  let slope = 0;
  let y = 0;
  for (let i = 0; i < steps; i++) {
    const x = i * h;
    const [a, b, c] = [x, x + h / 2, x + h].map((at) => -momentByHand(s, at) / bendingStiffness) as [
      number,
      number,
      number,
    ];
    y += slope * h + (h * h * (a + 2 * b)) / 6;
    slope += (h * (a + 4 * b + c)) / 6;
    out.push({ x: x + h, y });
  }
  const shear = (x: number) => (shearStiffness === undefined ? 0 : momentByHand(s, x) / shearStiffness);
  const bent = out.map((p) => ({ x: p.x, y: p.y + shear(p.x) }));
  const at = (x: number) => (bent[Math.round(x / h)] as { y: number }).y;
  const [first = 0, second = 1] = supportsIn;
  const tilt = (at(second) - at(first)) / (second - first);
  return bent.map((p) => ({ x: p.x, y: p.y - at(first) - tilt * (p.x - first) }));
}

describe("against numerical integration", () => {
  const cases: [string, Beam][] = [
    [
      "one span, part of it loaded, a point",
      { lengthIn: 100, supportsIn: [0, 100], bendingStiffness: 1e7, loads: [part(10, 60, 5), point(70, 300)] },
    ],
    [
      "three spans, loads here and there",
      equalSpans(80, 3, { bending: 2e7 }, [part(20, 200, 8), point(100, 500), point(230, -200)]),
    ],
    [
      "ends that hang over",
      { lengthIn: 200, supportsIn: [40, 150], bendingStiffness: 1e7, loads: [part(0, 200, 6), point(200, 100)] },
    ],
    [
      "three spans of a shear-flexible panel",
      equalSpans(40, 3, { bending: 1e6, shear: 2e4 }, [part(0, 120, 4), point(20, 100)]),
    ],
  ];
  test.each(cases)("%s", (_name, beam) => {
    const s = solveBeam(beam);
    const steps = 2400;
    const line = integrated(s, steps);
    const most = Math.max(...line.map((p) => Math.abs(p.y)));
    for (const at of beam.supportsIn) {
      expect(Math.abs(s.deflectionIn(at))).toBeLessThan(1e-9 * most);
      expect(Math.abs((line[Math.round((at / beam.lengthIn) * steps)] as { y: number }).y)).toBeLessThan(1e-6 * most);
    }
    for (const p of line.filter((_, i) => i % 7 === 0)) {
      near(s.deflectionIn(p.x), p.y, most);
      near(s.momentLbIn(p.x), momentByHand(s, p.x), 1e3);
    }
    near(Math.abs(greatestDeflection(s).value), most, most);
  });
});

const anyLoad = fc.oneof(
  fc
    .record({ at: fc.double({ min: 0, max: 1, noNaN: true }), lb: fc.double({ min: -500, max: 500, noNaN: true }) })
    .map(({ at, lb }): BeamLoad => point(at * 240, lb)),
  fc
    .tuple(
      fc.double({ min: 0, max: 0.9, noNaN: true }),
      fc.double({ min: 0.05, max: 0.1, noNaN: true }),
      fc.double({ min: -20, max: 20, noNaN: true }),
    )
    .map(([from, over, w]): BeamLoad => part(from * 240, (from + over) * 240, w)),
);
const anyBeam = fc
  .record({ loads: fc.array(anyLoad, { minLength: 1, maxLength: 5 }), spans: fc.integer({ min: 1, max: 3 }) })
  .map(({ loads, spans }) => equalSpans(240 / spans, spans, { bending: 5e7 }, loads));

test("forces and moments are in balance, no support moves, slopes of the moment are shears", () => {
  fc.assert(
    fc.property(anyBeam, fc.double({ min: 1, max: 239, noNaN: true }), (beam, x) => {
      const s = solveBeam(beam);
      const scale = beam.loads.reduce(
        (sum, l) => sum + Math.abs(l.kind === "point" ? l.lb : l.lbPerIn * (l.toIn - l.fromIn)),
        1,
      );
      expect(Math.abs(s.shearLb(240, "right"))).toBeLessThan(1e-8 * scale);
      expect(Math.abs(s.momentLbIn(240))).toBeLessThan(1e-7 * scale * 240);
      if (s.breaksIn.some((b) => Math.abs(b - x) < 0.01)) return;
      const slope = (s.momentLbIn(x + 0.001) - s.momentLbIn(x - 0.001)) / 0.002;
      expect(Math.abs(slope - s.shearLb(x, "left"))).toBeLessThan(1e-4 * scale);
      expect(s.shearLb(x, "right")).toBe(s.shearLb(x, "left"));
    }),
  );
});

test("answers add up and scale", () => {
  fc.assert(
    fc.property(anyLoad, anyLoad, fc.double({ min: 0, max: 240, noNaN: true }), (one, other, x) => {
      const of = (loads: BeamLoad[], bending = 5e7) => solveBeam(equalSpans(80, 3, { bending }, loads));
      const sum = of([one]).deflectionIn(x) + of([other]).deflectionIn(x);
      near(of([one, other]).deflectionIn(x), sum, 1);
      near(of([one], 1e8).deflectionIn(x), of([one]).deflectionIn(x) / 2, 1);
      near(of([one], 1e8).momentLbIn(x), of([one]).momentLbIn(x), 1e3);
    }),
  );
});

test("no sampled value is beyond the extremes", () => {
  fc.assert(
    fc.property(anyBeam, (beam) => {
      const s = solveBeam(beam);
      const places = Array.from({ length: 201 }, (_, i) => (i * 240) / 200);
      const most = (of: (x: number) => number) => Math.max(...places.map((x) => Math.abs(of(x))));
      const within = (value: number, of: (x: number) => number) =>
        expect(Math.abs(value) * (1 + 1e-9) + 1e-6).toBeGreaterThanOrEqual(most(of));
      within(greatestMoment(s).value, s.momentLbIn);
      within(greatestDeflection(s).value, s.deflectionIn);
      within(greatestShear(s).value, (x) => s.shearLb(x, "left"));
      expect(greatestSagging(s).value).toBeGreaterThanOrEqual(Math.max(0, ...places.map(s.momentLbIn)) - 1e-6);
      expect(greatestHogging(s).value).toBeLessThanOrEqual(Math.min(0, ...places.map(s.momentLbIn)) + 1e-6);
    }),
  );
});

test("a load of nothing, wherever it stands, changes no extreme", () => {
  fc.assert(
    fc.property(anyBeam, fc.double({ min: 0, max: 240, noNaN: true }), (beam, at) => {
      const [bare, more] = [solveBeam(beam), solveBeam({ ...beam, loads: [...beam.loads, point(at, 0)] })];
      for (const of of [greatestMoment, greatestShear, greatestDeflection, greatestSagging, greatestHogging]) {
        near(of(more).value, of(bare).value);
      }
    }),
    { numRuns: 30 },
  );
  // beside the middle, where the elastic line turns just past the break
  const half = solveBeam(equalSpans(100, 1, { bending: 1e6 }, [uniform(100, 10), point(48, 0)]));
  near(greatestDeflection(half).value, (5 * 10 * 100 ** 4) / (384 * 1e6));
});

test("without load there is nothing, at the left end", () => {
  const bare = solveBeam(equalSpans(100, 2, { bending: 1 }, []));
  for (const of of [greatestMoment, greatestShear, greatestDeflection, greatestSagging, greatestHogging]) {
    expect(of(bare)).toEqual({ atIn: 0, value: 0 });
  }
});

test("a short deep beam deflects by w L^2 / (8 G A) more where shear counts", () => {
  const bent = greatestDeflection(solveBeam(equalSpans(40, 1, { bending: 1e6 }, [uniform(40, 10)]))).value;
  const both = greatestDeflection(solveBeam(equalSpans(40, 1, { bending: 1e6, shear: 1e4 }, [uniform(40, 10)]))).value;
  near(bent, (5 * 10 * 40 ** 4) / (384 * 1e6));
  near(both - bent, (10 * 40 ** 2) / (8 * 1e4));
});

test("picks at 0.207 of the length make the moments of a lifted piece equal", () => {
  const at = (Math.SQRT2 - 1) / 2;
  const s = solveBeam({ lengthIn: 1, supportsIn: [at, 1 - at], bendingStiffness: 1, loads: [uniform(1, 1)] });
  near(greatestSagging(s).value, -greatestHogging(s).value);
  near(greatestMoment(s).value, greatestMoment(s).value < 0 ? -0.02145 : 0.02145, 1e3);
  expect(1 / Math.abs(greatestMoment(s).value)).toBeCloseTo(46.6, 1);
  near(s.reactionsLb[0] ?? 0, 0.5);
});

describe("shear at the depth from supports", () => {
  const s = solveBeam(equalSpans(100, 2, { bending: 1 }, [uniform(200, 3)]));
  test("leaves out the load within the depth", () => {
    near(Math.abs(greatestShear(s, 10).value), 0.625 * 300 - 30);
    expect([90, 110]).toContain(greatestShear(s, 10).atIn);
    near(Math.abs(greatestShear(s).value), 187.5);
  });
  test("not where a point load is that near, nor where the depths meet", () => {
    const close = solveBeam(equalSpans(100, 1, { bending: 1 }, [point(5, 100), uniform(100, 1)]));
    near(greatestShear(close, 10).value, close.reactionsLb[0] ?? 0);
    near(greatestShear(close, 5).value, (close.reactionsLb[0] ?? 0) - 5);
    const none = solveBeam(equalSpans(100, 1, { bending: 1 }, [point(5, 0), uniform(100, 1)]));
    near(Math.abs(greatestShear(none, 10).value), 40);
    near(Math.abs(greatestShear(none, 50).value), 50);
    near(Math.abs(greatestShear(none, 49).value), 1);
  });
  test("of an end that hangs over, on both sides of its support", () => {
    const over = solveBeam({ lengthIn: 150, supportsIn: [0, 100], bendingStiffness: 1, loads: [point(150, 50)] });
    near(Math.abs(greatestShear(over, 10).value), 50);
    const spread = solveBeam({ lengthIn: 150, supportsIn: [0, 100], bendingStiffness: 1, loads: [part(100, 150, 2)] });
    near(Math.abs(greatestShear(spread).value), 100);
    near(Math.abs(greatestShear(spread, 10).value), 80);
  });
  test("between loads: the greater side of a jump", () => {
    const jump = solveBeam(equalSpans(100, 1, { bending: 1 }, [point(40, 100), point(60, -250)]));
    expect(greatestShear(jump).value).toBeCloseTo(-140, 9);
  });
});

test("a load off the beam is refused", () => {
  const beam = (supportsIn: number[], loads: BeamLoad[] = []): Beam => ({
    lengthIn: 100,
    supportsIn,
    bendingStiffness: 1,
    loads,
  });
  for (const load of [point(101, 1), point(-1, 1), part(50, 50, 1), part(60, 50, 1), part(50, 101, 1), part(-1, 5, 1)])
    expect(() => solveBeam(beam([0, 100], [load]))).toThrow(/place from the left end/);
  expect(solveBeam(beam([0, 100], [point(100, 1), point(0, 1), part(0, 100, 1)])).reactionsLb[0]).toBeCloseTo(51, 9);
  expect(() => solveBeam(beam([0, 100], [point(101, 1)]))).toThrow(
    "A load stands from 101 to 101 in: the beam goes from 0 to 100 in.",
  );
});

test("equal supports", () => {
  expect(equalSupports(10, 3)).toEqual([0, 10, 20, 30]);
  expect(solveBeam(equalSpans(10, 2, { bending: 1 }, [part(5, 15, 1)])).breaksIn).toEqual([0, 5, 10, 15, 20]);
});
