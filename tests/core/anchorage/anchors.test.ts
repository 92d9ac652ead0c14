import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  type Anchor,
  anchorCount,
  anchorSchedule,
  interaction,
  type SillLine,
} from "../../../src/core/anchorage/anchor-schedule.ts";
import {
  type BondedRod,
  bondedRod,
  bondStrength,
  breakoutStrength,
  edgeFactor,
  projectedAreaIn2,
  steelStrength,
} from "../../../src/core/anchorage/bond.ts";
import type { OverturningPicture } from "../../../src/core/anchorage/pictures.ts";
import { type SillBolts, sillBolts } from "../../../src/core/anchorage/sill-anchors.ts";
import type { Conditions } from "../../../src/core/fasteners/adjust.ts";
import type { Designed } from "../../../src/core/kit/load-level.ts";
import { OutOfRange } from "../../../src/core/kit/refusal.ts";
import { Tape } from "../../../src/core/kit/tape.ts";

const finite = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe("bolts of a sill", () => {
  const bolts: SillBolts = { shearPlf: 300, boltIn: 0.625, sillIn: 1.5, gravity: 0.43, concretePsi: 2500 };
  const wind: Conditions = { duration: "wind", service: "dry", method: "allowable", edition: "2018" };

  test("capacity by the wood, spacing to the inch", () => {
    const tape = new Tape();
    const got = sillBolts(bolts, wind, "allowable", tape);
    // Unrounded 862.7 lb in the reference's own arithmetic, mode IIIs.
    expect(got.capacityLb).toBeCloseTo(1.6 * 862.7, 0);
    expect(got.spacingIn).toBe(Math.floor((12 * got.capacityLb) / 300));
    expect(tape.steps.find((s) => s.symbol === "Z")?.expression).toContain("mode IIIs");
    expect(tape.cautions.join()).toContain("plate washer");
    expect(tape.assumptions.join()).toContain("at most 6 ft apart");
    expect(tape.steps.at(-1)?.value).toBe(got.spacingIn);
  });

  test("the shear is brought to the level of the design; six feet is the most", () => {
    expect(sillBolts(bolts, wind, "strength").spacingIn).toBe(72);
    expect(sillBolts({ ...bolts, shearPlf: 500 }, wind, "strength").spacingIn).toBe(
      sillBolts(bolts, wind, "allowable").spacingIn,
    );
    expect(() => sillBolts(bolts, wind, undefined)).toThrow(/load level is missing/);
    expect(sillBolts(bolts, { ...wind, duration: "live" }, undefined).capacityLb).toBeCloseTo(862.7, 0);
  });

  test("limits", () => {
    for (const o of [
      { boltIn: 0.49 },
      { boltIn: 1.01 },
      { sillIn: 0.74 },
      { sillIn: 6.1 },
      { concretePsi: 2499 },
      { concretePsi: 10_001 },
    ])
      expect(() => sillBolts({ ...bolts, ...o }, wind, "allowable")).toThrow(OutOfRange);
    for (const o of [{ boltIn: 0.5 }, { boltIn: 1 }, { sillIn: 0.75 }, { sillIn: 6 }, { concretePsi: 10_000 }])
      expect(sillBolts({ ...bolts, ...o }, wind, "allowable").spacingIn).toBeGreaterThan(0);
    const capacity = sillBolts(bolts, wind, "allowable").capacityLb;
    expect(() => sillBolts({ ...bolts, shearPlf: (12 * capacity) / 2.4 }, wind, "allowable")).toThrow(
      /least spacing is 2.5 in/,
    );
    expect(sillBolts({ ...bolts, shearPlf: (12 * capacity) / 3.1 }, wind, "allowable").spacingIn).toBe(3);
  });
});

describe("shear and tension together", () => {
  test("one on the boundary: each alone up to a fifth of the other, else the sum 1.2", () => {
    expect(interaction(1, 0.2)).toBe(1);
    expect(interaction(0.2, 1)).toBe(1);
    expect(interaction(0.6, 0.6)).toBeCloseTo(1, 12);
    expect(interaction(0.9, 0)).toBe(0.9);
    fc.assert(
      fc.property(finite(0.2, 1), (v) => {
        expect(interaction(v, 1.2 - v)).toBeCloseTo(1, 12);
      }),
    );
    fc.assert(
      fc.property(finite(0, 2), finite(0, 2), finite(0.1, 5), (v, n, k) => {
        expect(interaction(k * v, k * n)).toBeCloseTo(k * interaction(v, n), 9);
        expect(interaction(v, n)).toBeGreaterThanOrEqual(Math.max(v, n));
      }),
    );
  });
});

describe("schedule of anchors", () => {
  const asd: Designed = { method: "allowable", level: "allowable", duration: "wind" };
  const line = (o: Partial<SillLine> = {}): SillLine => ({
    line: "north",
    shearPlf: 250,
    lengthFt: 20,
    upliftPlf: 100,
    ...o,
  });
  const anchor = (o: Partial<Anchor> = {}): Anchor => ({
    anchor: "screw anchor",
    shearLb: 1000,
    tensionLb: 1200,
    leastSpacingIn: undefined,
    leastEdgeIn: undefined,
    plateIn2: undefined,
    ...o,
  });

  test("by hand", () => {
    const tape = new Tape();
    const rows = anchorSchedule([line()], [anchor()], asd, tape);
    // 250/12/1000 + 100/12/1200 to the inch: 1.2 / 0.0277778 = 43.2 in.
    expect(rows).toEqual([
      {
        line: "north",
        anchor: "screw anchor",
        spacingIn: 43,
        count: 7,
        shearRatio: expect.closeTo(0.895833, 5),
        tensionRatio: expect.closeTo(0.298611, 5),
        combined: expect.closeTo(0.99537, 5),
      },
    ]);
    expect(tape.steps.map((s) => s.symbol)).toEqual(["s", "n", "V", "N", "V and N"]);
    expect(tape.assumptions.join()).toContain("first anchor of the list");
  });

  test("a spacing of 1 in is the least there is", () => {
    const spacing = (shearPlf: number) =>
      anchorSchedule([line({ shearPlf, upliftPlf: 0 })], [anchor({ shearLb: 100 })], asd)[0]?.spacingIn;
    expect(spacing(1200)).toBe(1);
    expect(spacing(1201)).toBeUndefined();
  });

  test("a length of so many spacings between the end anchors takes one more, whatever dust the division leaves", () => {
    for (let spacingIn = 7; spacingIn <= 72; spacingIn++) {
      for (let n = 3; n <= 12; n++) {
        const lengthFt = (n * spacingIn + 24) / 12;
        const whole = Math.ceil((n * spacingIn + 24) / spacingIn - 1e-6);
        expect(anchorCount(lengthFt, spacingIn)).toBe(Math.max(n + 1, whole));
      }
    }
  });

  test("the first of the list that holds at its least spacing is taken", () => {
    const weak = anchor({ anchor: "weak", shearLb: 100, leastSpacingIn: 6 });
    const pick = (list: readonly Anchor[]) => anchorSchedule([line()], list, asd)[0]?.anchor;
    expect(pick([weak, anchor()])).toBe("screw anchor");
    expect(pick([anchor(), weak])).toBe("screw anchor");
    expect(pick([{ ...weak, leastSpacingIn: 4 }, anchor()])).toBe("weak");
    expect(pick([{ ...weak, shearLb: 15, leastSpacingIn: undefined }, anchor()])).toBe("screw anchor");
    const tape = new Tape();
    expect(anchorSchedule([line()], [weak], asd, tape)[0]).toEqual({
      line: "north",
      anchor: "none of the list",
      spacingIn: undefined,
      count: undefined,
      shearRatio: undefined,
      tensionRatio: undefined,
      combined: undefined,
    });
    expect(tape.cautions.join()).toContain("Line north: no anchor");
    expect(tape.pictures[0]?.alt).toBe("Line north: no anchor of the list holds.");
    expect((tape.pictures[0] as OverturningPicture).anchorsFt).toEqual([]);
  });

  test("never wider than six feet, never over the capacity", () => {
    expect(anchorSchedule([line({ shearPlf: 10, upliftPlf: 0 })], [anchor()], asd)[0]?.spacingIn).toBe(72);
    fc.assert(
      fc.property(finite(20, 900), finite(0, 400), finite(2, 80), (shearPlf, upliftPlf, lengthFt) => {
        const [row] = anchorSchedule([line({ shearPlf, upliftPlf, lengthFt })], [anchor()], asd);
        expect(row?.combined).toBeLessThanOrEqual(1 + 1e-6);
        expect(row?.spacingIn).toBeLessThanOrEqual(72);
        const each = (shearPlf * lengthFt) / (row?.count ?? 0);
        expect(each).toBeLessThanOrEqual(1000 * (1 + 1e-9));
      }),
    );
  });

  test("the number: two at least, one near each end, enough for the load", () => {
    expect(anchorCount(2, 72)).toBe(2);
    expect(anchorCount(8, 72)).toBe(2);
    expect(anchorCount(8.1, 72)).toBe(3);
    expect(anchorCount(20, 43)).toBe(7);
    // At less than two feet the load over the end pieces asks for more than the layout.
    expect(anchorCount(10, 12)).toBe(10);
  });

  test("levels, edges and plates", () => {
    expect(() => anchorSchedule([line()], [anchor()], { ...asd, level: undefined })).toThrow(/load level/);
    const [row] = anchorSchedule([line()], [anchor()], { ...asd, level: "strength" });
    expect(row?.spacingIn).toBe(72);
    expect(row?.shearRatio).toBeCloseTo(0.9, 9);
    expect(row?.tensionRatio).toBeCloseTo(0.3, 9);
    const tape = new Tape();
    anchorSchedule([line()], [anchor({ leastEdgeIn: 1.75, plateIn2: 9 })], asd, tape);
    expect(tape.cautions.join()).toContain("1.75 in to the edge");
    expect(tape.steps.find((s) => s.symbol === "f_c")?.value).toBeCloseTo((0.298611 * 1200) / 9, 3);
    expect(tape.cautions.join()).toContain("bearing strength of the sill");
    const none = new Tape();
    anchorSchedule([line({ upliftPlf: 0 })], [anchor({ plateIn2: 9 })], asd, none);
    expect(none.steps.some((s) => s.symbol === "f_c")).toBe(false);
    expect(none.cautions.join()).not.toContain("to the edge");
  });

  test("the picture", () => {
    const tape = new Tape();
    anchorSchedule([line(), line({ line: "stub", lengthFt: 2, upliftPlf: 0 })], [anchor()], asd, tape);
    const [north, stub] = tape.pictures as OverturningPicture[];
    expect(north?.alt).toBe("Line north: 7 of screw anchor at most 43 in apart over 20 ft.");
    expect(north?.anchorsFt).toEqual([1, 4, 7, 10, 13, 16, 19]);
    expect(north).toMatchObject({ floors: [], couple: undefined, lengthFt: 20, anchor: "screw anchor" });
    expect(stub?.anchorsFt).toEqual([0.5, 1.5]);
  });
});

describe("bonded rod", () => {
  const rod: BondedRod = {
    tensionLb: 3000,
    diameterIn: 0.625,
    depthIn: 8,
    edgeIn: 100,
    spacingIn: undefined,
    concretePsi: 2500,
    bondPsi: undefined,
    state: "cracked",
    seismicCategory: undefined,
    standard: "318-19",
  };
  const of = (o: Partial<BondedRod>): BondedRod => ({ ...rod, ...o });

  test("steel (own arithmetic of the reference: 6177, 9831, 14529 lb)", () => {
    expect(steelStrength(0.5, "318-19")).toBeCloseTo(0.75 * 0.1419 * 58_000, -1);
    expect(steelStrength(0.625, "318-19")).toBeCloseTo(9831, -1);
    expect(steelStrength(0.75, "318-19")).toBeCloseTo(0.75 * 0.3345 * 58_000, -1);
    // Stress areas of coarse threads, from memory: 0.0775, 0.1419, 0.226, 0.334, 0.462, 0.606, 0.969 in2.
    const areas = [0.375, 0.5, 0.625, 0.75, 0.875, 1, 1.25].map((d) => steelStrength(d, "318-19") / 0.75 / 58_000);
    for (const [i, area] of [0.0775, 0.1419, 0.226, 0.334, 0.462, 0.606, 0.969].entries())
      expect(Math.abs((areas[i] ?? 0) - area)).toBeLessThan(0.0006);
    expect(() => steelStrength(0.6, "318-19")).toThrow(/no size of the table.*0.375, 0.5/);
  });

  test("basic strengths (own arithmetic of the reference)", () => {
    const breakout = (o: Partial<BondedRod>) => breakoutStrength(of(o)) / 0.65;
    expect(breakout({ depthIn: 7 })).toBeCloseTo(15_742, -1);
    expect(breakout({ depthIn: 8, concretePsi: 3000 })).toBeCloseTo(21_069, -1);
    expect(breakout({ depthIn: 6, concretePsi: 4000 })).toBeCloseTo(15_802, -1);
    const bond = (o: Partial<BondedRod>) => bondStrength(of(o)) / 0.65;
    expect(bond({})).toBeCloseTo(3142, 0);
    expect(bond({ state: "uncracked" })).toBeCloseTo(10_210, 0);
    expect(bond({ diameterIn: 0.75, depthIn: 10 })).toBeCloseTo(4712, 0);
  });

  test("the area is the one drawn", () => {
    // Squares of twice the reach about the rods of a long row, cut off at the edge, counted by small cells; by the number of rods.
    const drawn = (reach: number, edge: number, spacing: number | undefined): number => {
      const rods = spacing === undefined ? [0] : Array.from({ length: 60 }, (_, i) => i * spacing);
      const [first, last] = [rods[0] ?? 0, rods.at(-1) ?? 0];
      const cell = 0.05;
      let alongIn = 0;
      for (let x = first - reach + cell / 2; x < last + reach; x += cell)
        if (rods.some((r) => Math.abs(x - r) < reach)) alongIn += cell;
      let acrossIn = 0;
      for (let y = -reach + cell / 2; y < reach; y += cell) if (y > -edge) acrossIn += cell;
      // The two ends of the row belong to no rod in its middle.
      const ends = spacing === undefined ? 0 : 2 * reach - Math.min(2 * reach, spacing);
      return (acrossIn * (alongIn - ends)) / rods.length;
    };
    for (const [reach, edge, spacing] of [
      [12, 100, undefined],
      [12, 4, undefined],
      [12, 4, 10],
      [12, 12, 24],
      [12, 13, 30],
      [10.5, 2.75, 16],
    ] as const) {
      const got = projectedAreaIn2(reach, edge, spacing);
      expect(Math.abs(got - drawn(reach, edge, spacing)) / got).toBeLessThan(0.01);
    }
    // Own arithmetic of the reference: h 7, edge 6 and 2.75; h 10, edge 6.
    expect(projectedAreaIn2(10.5, 6, undefined)).toBeCloseTo(346.5, 9);
    expect(projectedAreaIn2(10.5, 2.75, undefined)).toBeCloseTo(278.25, 9);
    expect(projectedAreaIn2(15, 6, undefined)).toBeCloseTo(630, 9);
    expect(edgeFactor(6, 10.5)).toBeCloseTo(0.8714, 4);
    expect(edgeFactor(2.75, 10.5)).toBeCloseTo(0.7786, 4);
    expect(edgeFactor(0, 10)).toBe(0.7);
    expect(edgeFactor(10, 10)).toBe(1);
    expect(edgeFactor(30, 10)).toBe(1);
  });

  test("edge, spacing and cracks", () => {
    const full = breakoutStrength(rod);
    expect(breakoutStrength(of({ edgeIn: 6 }))).toBeCloseTo(full * ((12 + 6) / 24) * (0.7 + 0.3 * 0.5), 6);
    expect(breakoutStrength(of({ spacingIn: 12 }))).toBeCloseTo(full / 2, 6);
    expect(breakoutStrength(of({ spacingIn: 24 }))).toBeCloseTo(full, 6);
    expect(breakoutStrength(of({ state: "uncracked" }))).toBeCloseTo(1.4 * full, 6);
    // Uncracked and nearer the edge than 16 in: splitting, at least by the reach.
    expect(breakoutStrength(of({ state: "uncracked", edgeIn: 14 }))).toBeCloseTo(1.4 * full * (14 / 16), 6);
    expect(breakoutStrength(of({ state: "uncracked", edgeIn: 16 }))).toBeCloseTo(1.4 * full, 6);
    expect(breakoutStrength(of({ state: "uncracked", edgeIn: 6 })) / breakoutStrength(of({ edgeIn: 6 }))).toBeCloseTo(
      1.4 * 0.75,
      9,
    );

    const bonded = bondStrength(rod);
    const reach = 6.25 * Math.sqrt(650 / 1100);
    expect(bondStrength(of({ edgeIn: 2 }))).toBeCloseTo(
      (bonded * (reach + 2) * (0.7 + (0.3 * 2) / reach)) / (2 * reach),
      6,
    );
    expect(bondStrength(of({ spacingIn: 4 }))).toBeCloseTo((bonded * 4) / (2 * reach), 6);
    expect(bondStrength(of({ state: "uncracked", edgeIn: 10 })) / bondStrength(of({ state: "uncracked" }))).toBeCloseTo(
      10 / 16,
      9,
    );
    expect(bondStrength(of({ state: "uncracked", edgeIn: 2 })) / bondStrength(of({ edgeIn: 2 }))).toBeCloseTo(
      (650 / 200) * (reach / 16),
      6,
    );
    // Bond may reach farther than the critical edge of a shallow rod: no factor above 1.
    const shallow = of({ state: "uncracked", depthIn: 2.5, edgeIn: 4.9 });
    const far = 10 * 0.625 * Math.sqrt(3000 / 1100);
    expect(bondStrength({ ...shallow, bondPsi: 3000 })).toBeCloseTo(
      0.65 * 3000 * Math.PI * 0.625 * 2.5 * ((far + 4.9) / (2 * far)) * (0.7 + (0.3 * 4.9) / far),
      6,
    );
  });

  test("a bond stress from a report", () => {
    const given = of({ bondPsi: 1000, edgeIn: 4 });
    const reach = 6.25 * Math.sqrt(3250 / 1100);
    const area = (reach + 4) / (2 * reach);
    expect(bondStrength(given)).toBeCloseTo(0.65 * 1000 * Math.PI * 0.625 * 8 * area * (0.7 + (0.3 * 4) / reach), 6);
    const tape = new Tape();
    bondStrength(given, tape);
    expect(tape.assumptions.join()).toContain("3.25 times");
    const whole = new Tape();
    bondStrength(of({ bondPsi: 1000, state: "uncracked" }), whole);
    expect(whole.assumptions.join()).not.toContain("3.25 times");
    expect(whole.steps.find((s) => s.symbol === "c_Na")?.value).toBeCloseTo(6.25 * Math.sqrt(1000 / 1100), 9);
    // Earthquake stands in the report's own stress.
    expect(bondStrength({ ...given, seismicCategory: "D" })).toBe(bondStrength(given));
  });

  test("earthquake takes the least stress down and three quarters of concrete and bond", () => {
    const calm = bondedRod(of({ seismicCategory: "B" }));
    const shaken = bondedRod(of({ seismicCategory: "D" }));
    const capacity = (rows: typeof calm, check: string) => rows.find((r) => r.check === check)?.capacityLb ?? 0;
    expect(capacity(shaken, "steel")).toBe(capacity(calm, "steel"));
    expect(capacity(shaken, "breakout")).toBeCloseTo(0.75 * capacity(calm, "breakout"), 6);
    expect(capacity(shaken, "bond")).toBeCloseTo(0.75 * 0.8 * capacity(calm, "bond"), 6);
    expect(
      bondStrength(of({ state: "uncracked", seismicCategory: "C" })) / bondStrength(of({ state: "uncracked" })),
    ).toBeCloseTo(0.4, 9);
    expect(bondedRod(of({ seismicCategory: "A" }))).toEqual(bondedRod(rod));
    for (const seismicCategory of ["C", "E", "F"]) expect(bondedRod(of({ seismicCategory }))).toEqual(shaken);
  });

  test("the worst first, with its ratio", () => {
    const tape = new Tape();
    const rows = bondedRod(rod, tape);
    expect(rows.map((r) => r.check)).toEqual(["bond", "steel", "breakout"]);
    for (const r of rows) expect(r.ratio).toBeCloseTo(3000 / r.capacityLb, 12);
    expect(tape.assumptions.join()).toContain("bond governs");
    expect(tape.cautions.join()).toContain("special inspection");
    expect(tape.cautions.join()).not.toContain("nearer than 6 rod diameters");
    fc.assert(
      fc.property(finite(100, 20_000), finite(2.5, 12.5), finite(3, 40), (tensionLb, depthIn, edgeIn) => {
        const all = bondedRod(of({ tensionLb, depthIn, edgeIn, bondPsi: 1200 }));
        const ratios = all.map((r) => r.ratio);
        expect(ratios).toEqual([...ratios].sort((a, b) => b - a));
        expect(bondedRod(of({ tensionLb: 2 * tensionLb, depthIn, edgeIn, bondPsi: 1200 }))[0]?.ratio).toBeCloseTo(
          2 * (ratios[0] ?? 0),
          9,
        );
      }),
    );
  });

  test("nothing falls with depth, edge, spacing, concrete", () => {
    const any = fc.record({
      depthIn: finite(2.5, 10),
      edgeIn: finite(1.5, 30),
      spacingIn: finite(3.75, 40),
      concretePsi: finite(2500, 6000),
    });
    fc.assert(
      fc.property(any, any, fc.constantFrom("cracked", "uncracked"), (a, b, state) => {
        const low = of({
          state,
          depthIn: a.depthIn,
          edgeIn: a.edgeIn,
          spacingIn: a.spacingIn,
          concretePsi: a.concretePsi,
        });
        for (const more of [
          { edgeIn: a.edgeIn + b.edgeIn },
          { spacingIn: a.spacingIn + b.spacingIn },
          { concretePsi: 6000 },
        ]) {
          expect(breakoutStrength({ ...low, ...more })).toBeGreaterThanOrEqual(breakoutStrength(low) * (1 - 1e-9));
          expect(bondStrength({ ...low, ...more })).toBeGreaterThanOrEqual(bondStrength(low) * (1 - 1e-9));
        }
      }),
    );
  });

  test("limits and cautions", () => {
    for (const o of [
      { depthIn: 2.49 },
      { depthIn: 12.51 },
      { edgeIn: 1.49 },
      { edgeIn: 241 },
      { spacingIn: 3.74 },
      { spacingIn: 1201 },
      { concretePsi: 2499 },
      { concretePsi: 8001 },
      { diameterIn: 0.7 },
    ])
      expect(() => bondedRod(of(o))).toThrow(OutOfRange);
    for (const o of [
      { depthIn: 2.5 },
      { depthIn: 12.5 },
      { edgeIn: 1.5 },
      { edgeIn: 240 },
      { spacingIn: 3.75 },
      { spacingIn: 1200 },
      { concretePsi: 8000 },
    ])
      expect(bondedRod(of(o))).toHaveLength(3);
    const tape = new Tape();
    bondedRod(of({ edgeIn: 3.74, seismicCategory: "D", standard: "318-14" }), tape);
    expect(tape.cautions.join()).toContain("nearer than 6 rod diameters, 3.75 in");
    expect(tape.steps.find((s) => s.symbol === "seismic")).toMatchObject({
      value: 0.75,
      clause: "ACI 318-14 17.2.3.4.4, from memory",
    });
    const far = new Tape();
    bondedRod(of({ edgeIn: 3.75 }), far);
    expect(far.cautions.join()).not.toContain("nearer than 6");
    expect(far.steps.some((s) => s.symbol === "seismic")).toBe(false);
  });
});
