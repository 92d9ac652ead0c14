import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { EDITIONS } from "../../../src/core/kit/edition.ts";
import { BadInput } from "../../../src/core/kit/refusal.ts";
import { Tape } from "../../../src/core/kit/tape.ts";
import { combine, combinedTable, type Loads } from "../../../src/core/loads/combine.ts";
import { deadLoad } from "../../../src/core/loads/dead.ts";
import { baseLivePsf, floorLive, roofLive } from "../../../src/core/loads/live.ts";
import { METHODS } from "../../../src/core/loads/tables/combinations.ts";
import { WEIGHTS } from "../../../src/core/loads/tables/dead.ts";
import { tributaryLoad } from "../../../src/core/loads/tributary.ts";

const editions = fc.constantFrom(...EDITIONS);

describe("dead load", () => {
  const part = (material: string, thicknessIn?: number, psf?: number) => ({ material, thicknessIn, psf, row: 1 });

  test("the row's own figure wins, then the office's, then the table's", () => {
    const own = [{ material: "Gypsum Board", psf: undefined, psfPerIn: 5 }];
    expect(deadLoad([part("gypsum board", 0.5)], [], 0)).toBeCloseTo(2.2, 12);
    expect(deadLoad([part("gypsum  board", 0.5)], own, 0)).toBeCloseTo(2.5, 12);
    expect(deadLoad([part("gypsum board", 0.5, 3)], own, 0)).toBe(3);
  });

  test("adds up, and comes to the level by the slope", () => {
    const rows = [part("asphalt shingles"), part("plywood", 0.625)];
    expect(deadLoad(rows, [], 0)).toBeCloseTo(4, 12);
    expect(deadLoad(rows, [], 60)).toBeCloseTo(8, 9);
  });

  test("what has no weight or no thickness says so with its row", () => {
    expect(() => deadLoad([part("gipsum")], [], 0)).toThrow(/row 1/);
    expect(() => deadLoad([part("plywood")], [], 0)).toThrow(/thickness/);
    expect(() => deadLoad([part("x")], [{ material: "x", psf: undefined, psfPerIn: undefined }], 0)).toThrow(BadInput);
    expect(() => deadLoad([part("__proto__")], [], 0)).toThrow(BadInput);
  });

  test("weights of the table lie where parts of houses lie, each with one figure and a source", () => {
    for (const w of WEIGHTS) {
      const psf = w.psf ?? w.psfPerIn ?? Number.NaN;
      expect(psf, w.name).toBeGreaterThanOrEqual(0.2);
      expect(psf, w.name).toBeLessThanOrEqual(50);
      expect((w.psf === undefined) !== (w.psfPerIn === undefined), w.name).toBe(true);
      expect(w.source.length, w.name).toBeGreaterThan(5);
    }
    expect(new Set(WEIGHTS.map((w) => w.name)).size).toBe(WEIGHTS.length);
  });
});

describe("live load", () => {
  const areas = fc.double({ min: 1, max: 1e5, noNaN: true });

  test("never grows with area, keeps its least, and starts without a jump", () => {
    fc.assert(
      fc.property(
        areas,
        areas,
        fc.constantFrom(1, 2, 3, 4),
        fc.constantFrom(1, 2, 5),
        editions,
        (a, b, kll, floors, edition) => {
          const at = (area: number) => floorLive(40, kll, area, floors, edition);
          expect(at(Math.max(a, b))).toBeLessThanOrEqual(at(Math.min(a, b)) + 1e-9);
          expect(at(a)).toBeGreaterThanOrEqual(40 * (floors >= 2 ? 0.4 : 0.5) - 1e-9);
          expect(at(a)).toBeLessThanOrEqual(40);
          expect(at(400 / kll)).toBeCloseTo(40, 9);
        },
      ),
    );
  });

  test("roofs go from 20 down to 12 psf", () => {
    fc.assert(
      fc.property(areas, fc.double({ min: 0, max: 80, noNaN: true }), editions, (area, slope, edition) => {
        const lr = roofLive(20, area, slope, edition);
        expect(lr).toBeGreaterThanOrEqual(12);
        expect(lr).toBeLessThanOrEqual(20);
      }),
    );
    expect(roofLive(20, 200, 0, "7-16")).toBe(20);
    expect(roofLive(20, 400, 0, "7-16")).toBeCloseTo(16, 9);
    expect(roofLive(20, 200, 45, "7-16")).toBeCloseTo(12, 9);
    expect(roofLive(20, 200, (Math.atan(0.5) * 180) / Math.PI, "7-16")).toBeCloseTo(18, 9);
  });

  test("of an influence area of 1600 ft2 by hand: 0.25 + 15/40", () => {
    expect(floorLive(40, 4, 400, 1, "7-16")).toBeCloseTo(25, 9);
    expect(floorLive(40, 1, 1600, 2, "7-16")).toBeCloseTo(25, 9);
  });

  test("heavy loads are not reduced, and uses are read by name", () => {
    expect(floorLive(125, 4, 5000, 3, "7-16")).toBe(125);
    expect(baseLivePsf(" Sleeping Rooms ")).toBe(30);
    expect(baseLivePsf("50 psf")).toBe(50);
    expect(() => baseLivePsf("constructor")).toThrow(BadInput);
  });
});

test("a tributary load is the reaction of simple spans", () => {
  const spans = fc.double({ min: 2, max: 60, noNaN: true });
  fc.assert(
    fc.property(
      spans,
      fc.double({ min: 0, max: 1, noNaN: true }),
      fc.double({ min: 1, max: 100, noNaN: true }),
      (span, part, load) => {
        const overhang = part * span;
        expect(tributaryLoad(load, span, 0, overhang)).toBeCloseTo((load * (span + overhang) ** 2) / (2 * span), 6);
        expect(tributaryLoad(load, span, span, 0)).toBeCloseTo(load * span, 9);
      },
    ),
  );
});

describe("combinations", () => {
  const number = fc.double({ min: -200, max: 200, noNaN: true });
  const loads: fc.Arbitrary<Loads> = fc.record({ D: number, L: number, Lr: number, S: number, W: number, E: number });

  test("largest and smallest are of the list, and bound it", () => {
    fc.assert(
      fc.property(loads, fc.constantFrom(...METHODS), editions, (given, method, edition) => {
        const tape = new Tape();
        const c = combine(given, method, 0.5, edition, tape);
        for (const { value } of c.all) {
          expect(value).toBeLessThanOrEqual(c.largest.value);
          expect(value).toBeGreaterThanOrEqual(c.smallest.value);
        }
        expect(c.all).toContain(c.largest);
        expect(combinedTable(c)).toHaveLength(c.all.length + 2);
        expect(new Set(c.all.map((x) => x.text)).size).toBe(c.all.length);
      }),
    );
  });

  test("loads of nothing leave only the dead load", () => {
    const only = combine({ D: 10, L: 0, Lr: 0, S: 0, W: 0, E: 0 }, "strength", 0.5, "7-16");
    expect(only.all.map((c) => c.text)).toEqual(["1.4 D", "1.2 D", "0.9 D"]);
    expect(only.largest.value).toBeCloseTo(14, 9);
  });

  test("seismic combinations take their share of snow: 0.2 to 7-16, 0.15 in 7-22", () => {
    const shaken: Loads = { D: 10, L: 20, Lr: 0, S: 100, W: 0, E: 50 };
    const values = (edition: "7-16" | "7-22") => combine(shaken, "strength", 0.5, edition).all.map((c) => c.value);
    expect(values("7-16")).toContain(12 + 50 + 10 + 20);
    expect(values("7-22")).toContain(12 + 50 + 10 + 15);
  });

  test("7-22 brings its strength-level snow down for allowable stress", () => {
    const snow: Loads = { D: 10, L: 0, Lr: 0, S: 40, W: 0, E: 0 };
    expect(combine(snow, "allowable", 0.5, "7-22").largest.value).toBeCloseTo(38, 9);
    expect(combine(snow, "allowable", 0.5, "7-16").largest.value).toBeCloseTo(50, 9);
  });
});
