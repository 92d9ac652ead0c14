import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { EDITIONS } from "../../../src/core/kit/edition.ts";
import { BadInput, OutOfRange } from "../../../src/core/kit/refusal.ts";
import { Tape } from "../../../src/core/kit/tape.ts";
import { type CombineInput, combine, combinedRows, type LoadCase } from "../../../src/core/loads/combine.ts";
import { deadLoad } from "../../../src/core/loads/dead.ts";
import { floorLive, liveUse, roofLive } from "../../../src/core/loads/live.ts";
import { LOADS, METHODS } from "../../../src/core/loads/tables/combinations.ts";
import { WEIGHTS } from "../../../src/core/loads/tables/dead.ts";
import { tributaryLoad } from "../../../src/core/loads/tributary.ts";

const editions = fc.constantFrom(...EDITIONS);

describe("dead load", () => {
  const part = (material: string, thicknessIn?: number, weight?: string) => ({ material, thicknessIn, weight, row: 1 });

  test("the row's own figure wins, then the office's, then the table's", () => {
    const own = [{ material: "Gypsum Board", psf: undefined, psfPerIn: 5 }];
    expect(deadLoad([part("gypsum board", 0.5)], [], 0)).toBeCloseTo(2.2, 12);
    expect(deadLoad([part("gypsum  board", 0.5)], own, 0)).toBeCloseTo(2.5, 12);
    expect(deadLoad([part("gypsum board", 0.5, "3")], own, 0)).toBe(3);
  });

  test("adds up, and comes to the level by the slope", () => {
    const rows = [part("asphalt shingles"), part("plywood", 0.625)];
    expect(deadLoad(rows, [], 0)).toBeCloseTo(4, 12);
    expect(deadLoad(rows, [], 60)).toBeCloseTo(8, 9);
  });

  test("a part's own figure is psf or a density with its thickness", () => {
    expect(deadLoad([part("panel", 3, "36 pcf")], [], 0)).toBeCloseTo(9, 12);
    expect(deadLoad([part("panel", undefined, "12.5 PSF")], [], 0)).toBe(12.5);
    expect(deadLoad([part("panel", 2, "12 lb/ft3")], [], 0)).toBeCloseTo(2, 12);
    expect(() => deadLoad([part("panel", undefined, "36 pcf")], [], 0)).toThrow(/no thickness/);
    expect(() => deadLoad([part("panel", 3, "heavy")], [], 0)).toThrow(/psf as a number, or a density/);
    expect(() => deadLoad([part("panel", 3, "1001")], [], 0)).toThrow(OutOfRange);
    expect(() => deadLoad([part("panel", 3, "1001 pcf")], [], 0)).toThrow(OutOfRange);
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
  const floor = (psf: number) => ({ psf, rule: "floor" }) as const;

  test("never grows with area, keeps its least, and starts without a jump", () => {
    fc.assert(
      fc.property(
        areas,
        areas,
        fc.constantFrom(1, 2, 3, 4),
        fc.constantFrom(1, 2, 5),
        editions,
        (a, b, kll, floors, edition) => {
          const at = (areaFt2: number) => floorLive(floor(40), { kll, areaFt2, floors }, edition);
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
    expect(floorLive(floor(40), { kll: 4, areaFt2: 400, floors: 1 }, "7-16")).toBeCloseTo(25, 9);
    expect(floorLive(floor(40), { kll: 1, areaFt2: 1600, floors: 2 }, "7-16")).toBeCloseTo(25, 9);
    // 0.25 + 15/100 = 0.4 at 10,000 ft2: one floor keeps half.
    expect(floorLive(floor(40), { kll: 1, areaFt2: 10000, floors: 1 }, "7-16")).toBe(20);
    expect(floorLive(floor(40), { kll: 1, areaFt2: 10000, floors: 2 }, "7-16")).toBeCloseTo(16, 9);
    expect(floorLive(floor(40), { kll: 1, areaFt2: 399.9, floors: 1 }, "7-16")).toBe(40);
  });

  test("above 100 psf and in garages one floor is not reduced, two floors by a fifth at most", () => {
    const heavy = (floors: number, areaFt2 = 5000, psf = 125) =>
      floorLive(floor(psf), { kll: 4, areaFt2, floors }, "7-16");
    expect([heavy(1), heavy(2), heavy(3)]).toEqual([125, 100, 100]);
    expect(heavy(2, 90)).toBe(125);
    // 0.25 + 15/sqrt(576) = 0.875, above 0.8
    expect(heavy(2, 144)).toBeCloseTo(125 * 0.875, 9);
    expect(heavy(1, 5000, 100)).toBe(50);
    const garage = (floors: number) => floorLive({ psf: 50, rule: "garage" }, { kll: 2, areaFt2: 600, floors }, "7-16");
    expect([garage(1), garage(2)]).toEqual([50, 40]);
  });

  test("uses are read by name, guards are refused with their point load", () => {
    expect(liveUse(" Sleeping  Rooms ", "2021")).toEqual({ psf: 30, rule: "floor" });
    expect(liveUse("bedrooms", "2021").psf).toBe(30);
    expect(liveUse("garage", "2018")).toEqual({ psf: 50, rule: "garage" });
    expect(liveUse("50 psf", "2021")).toEqual({ psf: 50, rule: "floor" });
    expect(liveUse("roof", "2021")).toEqual({ psf: 20, rule: "roof" });
    expect(liveUse("Roof 25 psf", "2021")).toEqual({ psf: 25, rule: "roof" });
    expect(() => liveUse("guards", "2021")).toThrow(/200 lb/);
    expect(() => liveUse("constructor", "2021")).toThrow(BadInput);
    expect(() => liveUse("", "2021")).toThrow(BadInput);
    expect(() => liveUse("1001", "2021")).toThrow(OutOfRange);
  });

  test("decks say that states and the standard ask for more", () => {
    const cautions = (use: string) => {
      const tape = new Tape();
      liveUse(use, "2021", tape);
      return tape.cautions.join(" ");
    };
    expect(cautions("decks")).toMatch(/60/);
    expect(cautions("balcony")).toMatch(/1.5 times/);
    expect(cautions("rooms")).toBe("");
  });

  test("a roof live load other than an ordinary one is not reduced", () => {
    expect(roofLive(25, 1000, 45, "7-16")).toBe(25);
    expect(roofLive(20, 1000, 0, "7-16")).toBe(12);
    expect(roofLive(20, 400, (Math.atan(0.5) * 180) / Math.PI, "7-16")).toBeCloseTo(14.4, 9);
    expect(roofLive(16, 600, 0, "7-16")).toBe(12);
    expect(roofLive(20, 600, (Math.atan(1) * 180) / Math.PI, "7-16")).toBe(12);
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
  const input = (loads: readonly (readonly [LoadCase["load"], number])[], change: Partial<CombineInput> = {}) => ({
    loads: loads.map(([load, value]) => ({ load, value })),
    method: "allowable" as const,
    liveFactor: 0.5,
    windLevel: "strength" as const,
    edition: "7-16" as const,
    ...change,
  });
  const loads = fc
    .array(fc.record({ load: fc.constantFrom(...LOADS.filter((l) => l !== "D")), value: number }), { maxLength: 6 })
    .chain((others) => number.map((value) => [{ load: "D" as const, value }, ...others]));

  test("largest and smallest are of the list, and bound it", () => {
    fc.assert(
      fc.property(loads, fc.constantFrom(...METHODS), editions, (given, method, edition) => {
        const tape = new Tape();
        const c = combine({ ...input([]), loads: given, method, edition }, tape);
        for (const { value, number: no } of c.all) {
          expect(value).toBeLessThanOrEqual(c.largest.value);
          expect(value).toBeGreaterThanOrEqual(c.smallest.value);
          expect(no).toMatch(/^\d+[ab]?$/);
        }
        expect(c.all).toContain(c.largest);
        expect(combinedRows(c)).toHaveLength(c.all.length + 2);
        expect(new Set(c.all.map((x) => x.text)).size).toBe(c.all.length);
      }),
    );
  });

  test("cases of a load are combined one at a time: the list of both is the lists of each", () => {
    const up = combine(
      input([
        ["D", 10],
        ["W", -20],
        ["S", 5],
      ]),
    );
    const down = combine(
      input([
        ["D", 10],
        ["W", 12],
        ["S", 5],
      ]),
    );
    const both = combine(
      input([
        ["D", 10],
        ["W", -20],
        ["W", 12],
        ["S", 5],
      ]),
    );
    expect(both.smallest.value).toBe(up.smallest.value);
    expect(both.largest.value).toBe(Math.max(up.largest.value, down.largest.value));
    expect(both.all.map((c) => c.value).sort()).toEqual(
      [...new Set([...up.all, ...down.all].map((c) => c.value))].sort(),
    );
    expect(both.smallest.text).toBe("0.6 D + 0.6 W case 1");
  });

  test("loads of nothing leave only the dead load", () => {
    const only = combine(
      input(
        [
          ["D", 10],
          ["L", 0],
          ["W", 0],
        ],
        { method: "strength" },
      ),
    );
    expect(only.all.map((c) => c.text)).toEqual(["1.4 D", "1.2 D", "0.9 D"]);
    expect(only.largest.value).toBeCloseTo(14, 9);
  });

  test("numbers go by edition", () => {
    const numbers = (method: "strength" | "allowable", edition: "7-10" | "7-16" | "7-22") =>
      Object.fromEntries(
        combine(
          input(
            [
              ["D", 1],
              ["L", 10],
              ["S", 100],
              ["W", 1000],
              ["E", 10000],
            ],
            { method, edition },
          ),
        ).all.map((c) => [c.text.replace(/ \+ 0.[13]5? S| \+ 0.75 S| \+ 0.2 S| \+ 0.525 S/, ""), c.number]),
      );
    expect(numbers("strength", "7-10")["0.9 D + W"]).toBe("6");
    expect(numbers("strength", "7-16")["0.9 D + W"]).toBe("5");
    expect(numbers("strength", "7-22")["0.9 D + W"]).toBe("5a");
    expect(numbers("strength", "7-10")["1.2 D + E + 0.5 L"]).toBe("5");
    expect(numbers("strength", "7-16")["1.2 D + E + 0.5 L"]).toBe("6");
    expect(numbers("allowable", "7-10")["D + 0.75 L + 0.45 W"]).toBe("6a");
    expect(numbers("allowable", "7-16")["D + 0.75 L + 0.45 W"]).toBe("6");
    expect(numbers("allowable", "7-22")["D + 0.75 L + 0.45 W"]).toBe("6a");
    expect(numbers("allowable", "7-10")["D + 0.7 E"]).toBe("5");
    expect(numbers("allowable", "7-16")["D + 0.7 E"]).toBe("8");
    expect(numbers("allowable", "7-16")["D + 0.75 L + 0.525 E"]).toBe("9");
    expect(numbers("allowable", "7-22")["0.6 D + 0.7 E"]).toBe("10");
    expect(numbers("allowable", "7-10")["0.6 D + 0.7 E"]).toBe("8");
    expect(numbers("allowable", "7-16")["0.6 D + 0.6 W"]).toBe("7");
  });

  test("wind at the allowable level is not reduced again, and strength combinations refuse it", () => {
    const strength = combine(
      input([
        ["D", 10],
        ["L", 5],
        ["W", -40],
      ]),
    );
    const allowable = combine(
      input(
        [
          ["D", 10],
          ["L", 5],
          ["W", -24],
        ],
        { windLevel: "allowable" },
      ),
    );
    strength.all.forEach((c, i) => {
      expect(allowable.all[i]?.value).toBeCloseTo(c.value, 9);
    });
    expect(allowable.smallest.text).toBe("0.6 D + W");
    const mixed = input(
      [
        ["D", 10],
        ["W", -24],
      ],
      { method: "strength", windLevel: "allowable" },
    );
    expect(() => combine(mixed)).toThrow(/allowable level/);
    expect(() => combine({ ...mixed, loads: [{ load: "D", value: 1 }] })).not.toThrow();
  });

  test("one dead load, no more and no less", () => {
    expect(() => combine(input([["L", 10]]))).toThrow(/dead load is missing/);
    expect(() =>
      combine(
        input([
          ["D", 10],
          ["D", 5],
        ]),
      ),
    ).toThrow(/stands in 2 rows/);
    expect(
      combine(
        input([
          ["D", 0],
          ["L", 10],
        ]),
      ).largest.value,
    ).toBe(10);
  });

  test("earth pressure adds at 1.6 or 1.0, or counts nothing", () => {
    const strength = combine(
      input(
        [
          ["D", 10],
          ["H", 100],
        ],
        { method: "strength" },
      ),
    );
    expect(strength.largest).toMatchObject({ text: "1.4 D + 1.6 H" });
    expect(strength.smallest.value).toBeCloseTo(9, 9);
    expect(
      combine(
        input([
          ["D", 10],
          ["H", 100],
        ]),
      ).largest.value,
    ).toBe(110);
  });

  test("rain stands beside snow and roof live load", () => {
    expect(
      combine(
        input([
          ["D", 10],
          ["R", 30],
        ]),
      ).largest,
    ).toMatchObject({ text: "D + R", value: 40 });
    expect(
      combine(
        input(
          [
            ["D", 10],
            ["R", 30],
          ],
          { method: "strength" },
        ),
      ).largest.value,
    ).toBeCloseTo(12 + 48, 9);
  });

  test("seismic combinations take their share of snow: 0.2 to 7-16, 0.15 in 7-22; allowable 0.75 and 0.1", () => {
    const values = (edition: "7-16" | "7-22", method: "strength" | "allowable") =>
      combine(
        input(
          [
            ["D", 10],
            ["L", 20],
            ["S", 100],
            ["E", 50],
          ],
          { method, edition },
        ),
      ).all.map((c) => c.value);
    expect(values("7-16", "strength")).toContain(12 + 50 + 10 + 20);
    expect(values("7-22", "strength")).toContain(12 + 50 + 10 + 15);
    expect(values("7-16", "allowable")).toContain(10 + 15 + 26.25 + 75);
    expect(values("7-22", "allowable")).toContain(10 + 15 + 26.25 + 10);
  });

  test("7-22 brings its strength-level snow down for allowable stress", () => {
    const snow = (edition: "7-16" | "7-22") =>
      combine(
        input(
          [
            ["D", 10],
            ["S", 40],
          ],
          { edition },
        ),
      ).largest.value;
    expect(snow("7-22")).toBeCloseTo(38, 9);
    expect(snow("7-16")).toBeCloseTo(50, 9);
  });

  test("what is from memory says so: 7-22 strength, 7-22 wind on dead, earth pressure", () => {
    const cautions = (change: Partial<CombineInput>, ...more: (readonly [LoadCase["load"], number])[]) => {
      const tape = new Tape();
      combine(input([["D", 10], ...more], change), tape);
      return tape.cautions.join(" ");
    };
    expect(cautions({ edition: "7-16" }, ["W", 5])).toBe("");
    expect(cautions({ edition: "7-22", method: "strength" })).toMatch(/memory/);
    expect(cautions({ edition: "7-22" }, ["W", 5])).toMatch(/memory/);
    expect(cautions({ edition: "7-16" }, ["H", 5])).toMatch(/memory/);
  });
});
