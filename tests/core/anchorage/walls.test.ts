import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type HoldDown, holdDownSchedule, type ShearLine } from "../../../src/core/anchorage/hold-down-schedule.ts";
import { openingsFactor, type PerforatedWall, type WallOpening } from "../../../src/core/anchorage/openings-factor.ts";
import { type LoadedWall, overturning } from "../../../src/core/anchorage/overturning.ts";
import type { OverturningPicture } from "../../../src/core/anchorage/pictures.ts";
import { segmentShears } from "../../../src/core/anchorage/shear-wall.ts";
import type { Designed } from "../../../src/core/kit/load-level.ts";
import { BadInput, OutOfRange } from "../../../src/core/kit/refusal.ts";
import { Tape } from "../../../src/core/kit/tape.ts";

const finite = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const asd: Designed = { method: "allowable", level: "allowable", duration: "wind" };
const lrfd: Designed = { method: "strength", level: "strength", duration: "wind" };

describe("unit shear and drag", () => {
  test("a line with a gap, by hand", () => {
    const tape = new Tape();
    expect(segmentShears(3000, [8, -6, 10], tape)).toEqual([
      {
        segment: "wall 1",
        lengthFt: 8,
        shearLb: expect.closeTo(1333.333, 3),
        unitPlf: expect.closeTo(166.667, 3),
        dragLb: expect.closeTo(333.333, 3),
      },
      { segment: "gap 1", lengthFt: 6, shearLb: 0, unitPlf: 0, dragLb: expect.closeTo(-416.667, 3) },
      {
        segment: "wall 2",
        lengthFt: 10,
        shearLb: expect.closeTo(1666.667, 3),
        unitPlf: expect.closeTo(166.667, 3),
        dragLb: 0,
      },
    ]);
    expect(tape.steps.map((s) => s.value)).toEqual([18, expect.closeTo(166.667, 3), 125]);
  });

  test("shears add up to the line's, the drag closes, both scale", () => {
    const pieces = fc.array(
      finite(1, 40).chain((ft) => fc.constantFrom(ft, -ft)),
      { minLength: 1, maxLength: 12 },
    );
    fc.assert(
      fc.property(finite(100, 1e5), pieces, finite(0.1, 10), (shear, lengths, k) => {
        fc.pre(lengths.some((ft) => ft > 0));
        const rows = segmentShears(shear, lengths);
        expect(rows.reduce((sum, r) => sum + r.shearLb, 0) / shear).toBeCloseTo(1, 9);
        expect(rows.at(-1)?.dragLb).toBe(0);
        rows.forEach((r, i) => {
          expect(r.unitPlf > 0).toBe((lengths[i] ?? 0) > 0);
          expect(r.lengthFt).toBe(Math.abs(lengths[i] ?? 0));
        });
        segmentShears(k * shear, lengths).forEach((r, i) => {
          expect(r.dragLb / shear).toBeCloseTo((k * (rows[i]?.dragLb ?? 0)) / shear, 6);
        });
      }),
    );
  });

  test("a line without a wall is refused", () => {
    expect(() => segmentShears(1000, [-4, -2])).toThrow(/a gap is written below 0/);
    expect(() => segmentShears(1000, [-4, 0.49])).toThrow(/0.49 ft of wall/);
    expect(segmentShears(1000, [-4, 0.5])).toHaveLength(2);
    expect(segmentShears(1000, [-4, 2]).map((r) => r.segment)).toEqual(["gap 1", "wall 1"]);
  });
});

describe("wall with openings", () => {
  const opening = (widthFt: number, heightFt: number, leftFt?: number, count = 1): WallOpening => ({
    name: "door",
    widthFt,
    heightFt,
    count,
    leftFt,
  });
  const wall = (openings: readonly WallOpening[], lengthFt = 12, heightFt = 8): PerforatedWall => ({
    lengthFt,
    heightFt,
    openings,
  });
  const co = (w: PerforatedWall, edition = "2015", tape?: Tape) => openingsFactor(w, edition, tape);

  test("cases of the reference (its own arithmetic, for cross-checking)", () => {
    expect(co(wall([opening(4, 8 * 0.667, 4)]))).toBeCloseTo(0.75, 3);
    expect(co(wall([opening(8, 8 * 0.85, 4)], 16))).toBeCloseTo(0.5634, 3);
    expect(co(wall([opening(4, 8 * 0.65, 4), opening(5, 8 * 0.65, 13)], 24))).toBeCloseTo(0.7373, 3);
  });

  test("with placed openings the pieces are counted by their shape", () => {
    const tape = new Tape();
    // Pieces of 3, 2 and 4 ft in a wall 8 ft high: 3 ft counts 2 x 9/8, 2 ft is too narrow, 4 ft counts in full.
    co(wall([opening(2, 4, 3), opening(1, 4, 7)], 12), "2015", tape);
    const pieces = tape.steps.filter((s) => s.symbol === "L_i").map((s) => s.value);
    expect(pieces).toEqual([2.25, 0, 4]);
    expect(tape.steps.find((s) => s.symbol === "sum L_i")?.value).toBe(6.25);
    expect(tape.steps.find((s) => s.symbol === "A_o")?.value).toBe(12);
    expect(tape.steps.at(-1)).toMatchObject({ symbol: "Co", clause: "SDPWS 2015 4.3.3.5" });
    expect(tape.cautions.join()).not.toContain("left edge");
    // Order does not matter, and openings that touch leave no piece.
    expect(co(wall([opening(1, 4, 7), opening(2, 4, 3)]))).toBe(co(wall([opening(2, 4, 3), opening(1, 4, 7)])));
    expect(co(wall([opening(2, 4, 4), opening(2, 4, 6)]))).toBeCloseTo(co(wall([opening(4, 4, 4)])), 12);
  });

  test("without places all that is left counts, with a caution", () => {
    const tape = new Tape();
    expect(co(wall([opening(2, 4, undefined, 2)]), "2008", tape)).toBeCloseTo(co(wall([opening(4, 4, 4)])), 12);
    expect(tape.cautions.join()).toContain("left edge");
    expect(tape.steps.at(-1)?.clause).toBe("SDPWS 2008 4.3.3.5");
    expect(co(wall([opening(2, 4, 4), opening(2, 4)]))).toBeCloseTo(co(wall([opening(4, 4, 4)])), 12);
  });

  test("falls with the openings and never passes 1", () => {
    expect(co(wall([]))).toBe(1);
    fc.assert(
      fc.property(finite(0.5, 4), finite(1, 8), finite(0, 3), finite(0, 3), (w, h, wider, higher) => {
        const value = co(wall([opening(w, h)], 24));
        expect(value).toBeLessThanOrEqual(1);
        expect(value).toBeGreaterThan(0);
        expect(co(wall([opening(w, Math.min(8, h + higher))], 24))).toBeLessThanOrEqual(value + 1e-12);
        // Wider openings take shear from the wall, whatever the factor on the shorter pieces does.
        const carries = (width: number) => co(wall([opening(width, h)], 24)) * (24 - width);
        expect(carries(w + wider)).toBeLessThanOrEqual(carries(w) + 1e-9);
      }),
    );
  });

  test("refusals", () => {
    expect(() => co(wall([]), "2021")).toThrow(/new equation for Co, which is not held/);
    for (const h of [3.9, 20.1]) expect(() => co(wall([], 12, h))).toThrow(OutOfRange);
    for (const h of [4, 20]) expect(co(wall([], 12, h))).toBe(1);
    expect(() => co(wall([opening(4, 8.1)]))).toThrow(/8.1 ft high: the wall is 8 ft high/);
    expect(co(wall([opening(4, 8, 4)]))).toBeGreaterThan(0);
    // The dust of unit conversion is no difference.
    expect(co(wall([opening(4, 8 + 5e-7, 4)]))).toBeGreaterThan(0);
    expect(() => co(wall([], 2))).toThrow(/no piece of full height/);
    expect(() => co(wall([opening(2, 4, 4, 2)]))).toThrow(/left edge of its own|own left edge/);
    expect(() => co(wall([opening(4, 4, 4), opening(2, 4, 6)]))).toThrow(/lies over the opening before it/);
    expect(() => co(wall([opening(4, 4, 9)]))).toThrow(/openings end 13 ft/);
    expect(() => co(wall([opening(4, 4, 0)]))).toThrow(/no piece of full height/);
    expect(() => co(wall([opening(4, 4, 8)]))).toThrow(/no piece of full height/);
    expect(co(wall([opening(4, 4, 8 / 3.5)]))).toBeGreaterThan(0);
    expect(co(wall([opening(4, 4, 8 - 8 / 3.5)]))).toBeGreaterThan(0);
    expect(() => co(wall([opening(4, 4, 8 / 3.5 - 0.01)]))).toThrow(OutOfRange);
    expect(() => co(wall([opening(13, 4)]))).toThrow(/No piece of the wall counts/);
    expect(() => co(wall([opening(12, 4)]))).toThrow(OutOfRange);
  });
});

describe("overturning of one wall", () => {
  const wall: LoadedWall = { shearLb: 3000, heightFt: 9, armFt: 7.5, deadPlf: 200, lengthFt: 8, postLb: 0 };

  test("cases of the reference (its own arithmetic, for cross-checking)", () => {
    expect(overturning({ ...wall, deadPlf: 0 }, asd, undefined)).toEqual({
      overturningFtLb: 27_000,
      resistingFtLb: 0,
      tensionLb: 3600,
      compressionLb: 3600,
    });
    const one = overturning(wall, asd, undefined);
    expect(one.tensionLb).toBeCloseTo(3088, 6);
    expect(one.compressionLb).toBeCloseTo(4453.33, 2);
    const long = overturning(
      { ...wall, shearLb: 6000, heightFt: 10, lengthFt: 20, armFt: 19.5, deadPlf: 450 },
      asd,
      undefined,
    );
    expect(long.tensionLb).toBeCloseTo(307.7, 1);
    expect(long.compressionLb).toBeCloseTo(7692.3, 1);
  });

  test("the post bears straight down, dead load by its factor, strength by 0.9 and 1.2", () => {
    const post = overturning({ ...wall, postLb: 1000 }, asd, undefined);
    expect(post.tensionLb).toBeCloseTo(3088 - 600, 6);
    expect(post.compressionLb).toBeCloseTo(4453.333 + 1000, 2);
    expect(overturning(wall, asd, 0.5).resistingFtLb).toBeCloseTo(0.5 * 6400, 9);
    const strength = overturning({ ...wall, postLb: 1000 }, lrfd, undefined);
    expect(strength.resistingFtLb).toBeCloseTo(0.9 * (6400 + 7500), 9);
    expect(strength.compressionLb).toBeCloseTo((27_000 + 1.2 * 6400) / 7.5 + 1200, 9);
  });

  test("the shear goes to the level of the design as a step", () => {
    const tape = new Tape();
    const got = overturning(wall, { ...asd, level: "strength" }, undefined, tape);
    expect(got.overturningFtLb).toBeCloseTo(0.6 * 27_000, 9);
    expect(tape.steps[0]).toMatchObject({ symbol: "F", value: 1800 });
    expect(
      overturning(wall, { ...asd, level: "strength", duration: "seismic" }, undefined).overturningFtLb,
    ).toBeCloseTo(18_900, 9);
    expect(() => overturning(wall, { ...asd, level: undefined }, undefined)).toThrow(/load level is missing/);
  });

  test("an arm longer than the loaded length is asked about", () => {
    const asked = (armFt: number) => {
      const tape = new Tape();
      overturning({ ...wall, armFt }, asd, undefined, tape);
      return tape.cautions.join();
    };
    expect(asked(90)).toContain("arm of 90 ft is longer than the 8 ft");
    expect(asked(8)).not.toContain("longer than");
  });

  test("a wall that its dead load holds has no tension", () => {
    const tape = new Tape();
    expect(overturning({ ...wall, deadPlf: 5000 }, asd, undefined, tape).tensionLb).toBe(0);
    expect(tape.cautions.join()).toContain("no tension is left");
    expect(tape.steps.find((s) => s.symbol === "T")?.value).toBeLessThan(0);
    const little = new Tape();
    overturning({ ...wall, shearLb: (0.5 * 7.5 + 0.6 * 6400) / 9 }, asd, undefined, little);
    expect(little.cautions.join()).not.toContain("no tension is left");
    const pulled = new Tape();
    overturning(wall, asd, undefined, pulled);
    expect(pulled.cautions.join()).not.toContain("no tension is left");
    expect(pulled.cautions.join()).toContain("uplift of the roof");
    expect(pulled.steps.map((s) => s.symbol)).toEqual(["f", "f_c", "M_o", "M_r", "T", "C"]);
  });

  test("forces scale together, and the pair with no dead load is V h / arm", () => {
    fc.assert(
      fc.property(finite(0.1, 10), finite(100, 1e4), finite(2, 30), (k, shear, arm) => {
        const w = { ...wall, shearLb: shear, armFt: arm };
        const scaled = { ...w, shearLb: k * shear, deadPlf: k * w.deadPlf };
        expect(overturning(scaled, asd, undefined).tensionLb).toBeCloseTo(
          k * overturning(w, asd, undefined).tensionLb,
          4,
        );
        const bare = overturning({ ...w, deadPlf: 0 }, asd, undefined);
        expect(bare.tensionLb).toBeCloseTo((shear * 9) / arm, 6);
        expect(bare.compressionLb).toBeCloseTo(bare.tensionLb, 6);
      }),
    );
  });

  test("the picture", () => {
    const tape = new Tape();
    overturning(wall, asd, undefined, tape);
    expect(tape.pictures[0]).toMatchObject({
      kind: "overturning",
      lengthFt: 8,
      floors: [{ heightFt: 9, shearLb: 3000 }],
      couple: { armFt: 7.5, tensionLb: expect.closeTo(3088, 6), compressionLb: expect.closeTo(4453.333, 2) },
    });
    expect((tape.pictures[0] as OverturningPicture).alt).toBe(
      "The wall: tension 3088 lb at one end, compression 4453.33 lb at the other, 7.5 ft apart.",
    );
  });
});

describe("schedule of hold-downs", () => {
  const line = (o: Partial<ShearLine> = {}): ShearLine => ({
    line: "A",
    shearLb: 3000,
    lengthFt: 8,
    heightFt: 9,
    deadPlf: 200,
    floor: 1,
    armFt: 7.5,
    ...o,
  });
  const range: readonly HoldDown[] = [
    { size: "large", capacityLb: 8000 },
    { size: "small", capacityLb: 3088.0000001 },
    { size: "middle", capacityLb: 5000 },
  ];

  test("one floor is the wall by itself, with the next size", () => {
    const [row] = holdDownSchedule([line()], range, asd, undefined);
    expect(row).toEqual({
      line: "A",
      floor: 1,
      unitPlf: 375,
      tensionLb: expect.closeTo(3088, 6),
      compressionLb: expect.closeTo(4453.333, 2),
      size: "small",
      ratio: expect.closeTo(1, 6),
    });
    expect(holdDownSchedule([line({ shearLb: 3100 })], range, asd, undefined)[0]).toMatchObject({ size: "middle" });
  });

  test("beyond the range says so against the largest; no tension, none; no range, nothing", () => {
    const tape = new Tape();
    const [big] = holdDownSchedule([line({ shearLb: 10_000 })], range, asd, undefined, tape);
    expect(big?.size).toBe("beyond the range");
    expect(big?.ratio).toBeCloseTo((12_000 - 512) / 8000, 9);
    expect(tape.cautions.join()).toContain("line A, floor 1");
    expect(holdDownSchedule([line({ deadPlf: 5000 })], range, asd, undefined)[0]).toMatchObject({
      tensionLb: 0,
      size: "none",
      ratio: 0,
    });
    expect(holdDownSchedule([line()], [], asd, undefined)[0]).toMatchObject({ size: "", ratio: 0 });
    // A pull of half a pound is a pull.
    const little = line({ shearLb: (0.5 * 7.5 + 0.6 * 6400) / 9 });
    expect(holdDownSchedule([little], range, asd, undefined)[0]).toMatchObject({ size: "small" });
  });

  test("floors stack from the top, whatever their order, and dead load above helps below", () => {
    const upper = line({ floor: 2, shearLb: 1500, deadPlf: 800 });
    const lower = line({ floor: 1 });
    const other = line({ line: "B", shearLb: 1000, deadPlf: 0 });
    const rows = holdDownSchedule([lower, other, upper], [], asd, undefined);
    expect(rows.map((r) => [r.line, r.floor])).toEqual([
      ["A", 1],
      ["B", 1],
      ["A", 2],
    ]);
    // The upper wall alone is held by its dead load; what is left over helps the lower.
    const net = (1500 * 9 - 0.6 * 800 * 32) / 7.5;
    expect(net).toBeLessThan(0);
    expect(rows[2]?.tensionLb).toBe(0);
    expect(rows[0]?.tensionLb).toBeCloseTo(3088 + net, 6);
    expect(rows[0]?.compressionLb).toBeCloseTo(4453.3333 + (1500 * 9 + 800 * 32) / 7.5, 3);
    expect(rows[1]?.tensionLb).toBeCloseTo(1200, 9);
  });

  test("an arm left out is half a foot less than the wall", () => {
    const tape = new Tape();
    const [row] = holdDownSchedule([line({ armFt: undefined, deadPlf: 0 })], [], asd, undefined, tape);
    expect(row?.tensionLb).toBeCloseTo(3600, 9);
    expect(tape.assumptions.join()).toContain("length less 0.5 ft");
    const given = new Tape();
    holdDownSchedule([line()], [], asd, undefined, given);
    expect(given.assumptions.join()).not.toContain("length less");
    expect(given.assumptions.join()).not.toContain("Capacities");
    expect(() => holdDownSchedule([line({ armFt: undefined, lengthFt: 0.5 })], [], asd, undefined)).toThrow(/in feet/);
  });

  test("an arm longer than the wall is refused, as long is not", () => {
    expect(() => holdDownSchedule([line({ armFt: 8.1 })], [], asd, undefined)).toThrow(
      /arm of line A is 8.1 ft: the wall is 8 ft long/,
    );
    expect(holdDownSchedule([line({ armFt: 8 })], [], asd, undefined)).toHaveLength(1);
  });

  test("a floor twice in a line is refused, levels are asked, unit shear is at the level of the design", () => {
    expect(() => holdDownSchedule([line(), line()], [], asd, undefined)).toThrow(BadInput);
    expect(() => holdDownSchedule([line()], [], { ...asd, level: undefined }, undefined)).toThrow(/load level/);
    expect(holdDownSchedule([line()], [], { ...asd, level: "strength" }, undefined)[0]?.unitPlf).toBeCloseTo(225, 9);
    expect(holdDownSchedule([line()], [], asd, 0.3)[0]?.tensionLb).toBeCloseTo(3600 - (0.3 * 6400) / 7.5, 6);
  });

  test("each floor is the sum of the walls above it", () => {
    const floors = fc.array(fc.record({ shear: finite(100, 5000), dead: finite(0, 400), height: finite(7, 12) }), {
      minLength: 1,
      maxLength: 4,
    });
    fc.assert(
      fc.property(floors, (walls) => {
        const lines = walls.map((w, i) =>
          line({ floor: i + 1, shearLb: w.shear, deadPlf: w.dead, heightFt: w.height }),
        );
        const rows = holdDownSchedule(lines, range, asd, undefined);
        rows.forEach((row, i) => {
          const above = walls.slice(i).reduce((sum, w) => sum + (w.shear * w.height - 0.6 * w.dead * 32) / 7.5, 0);
          expect(row.tensionLb).toBeCloseTo(Math.max(0, above), 6);
          if (row.size !== "none" && row.size !== "beyond the range") expect(row.ratio).toBeLessThanOrEqual(1 + 1e-6);
        });
      }),
    );
  });

  test("the picture is the line with the largest tension, floors from the foot", () => {
    const tape = new Tape();
    holdDownSchedule(
      [line({ line: "B", shearLb: 100 }), line({ floor: 2, shearLb: 1500, heightFt: 8 }), line()],
      range,
      asd,
      undefined,
      tape,
    );
    expect(tape.pictures).toHaveLength(1);
    expect(tape.pictures[0]).toMatchObject({
      name: "A",
      floors: [
        { heightFt: 9, shearLb: 3000 },
        { heightFt: 8, shearLb: 1500 },
      ],
      couple: { armFt: 7.5 },
    });
    expect(tape.pictures[0]?.alt).toContain("Wall A: tension");
    expect(tape.assumptions.join()).toContain("Capacities of the range");
  });
});

describe("at the border", () => {
  const wall = (o: Partial<ShearLine> = {}): ShearLine => ({
    line: "A",
    shearLb: 1000,
    lengthFt: 10,
    heightFt: 9,
    deadPlf: 0,
    floor: 1,
    armFt: 9,
    ...o,
  });
  const ranged = (shear: Partial<ShearLine>, range: readonly HoldDown[]) =>
    holdDownSchedule([wall(shear)], range, asd, undefined)[0];

  test("a tension of just 0 is none, and that is said", () => {
    const tape = new Tape();
    // 1000 x 8 against 0.5 x 500 x 8^2 / 2
    const even = { shearLb: 1000, heightFt: 8, armFt: 8, deadPlf: 500, lengthFt: 8, postLb: 0 };
    expect(overturning(even, asd, 0.5, tape).tensionLb).toBe(0);
    expect(tape.cautions.join()).toContain("no tension is left");
    const more = new Tape();
    overturning({ ...even, shearLb: 1001 }, asd, 0.5, more);
    expect(more.cautions.join()).not.toContain("no tension is left");
  });

  test("a hold-down of just the tension holds, whatever dust the division leaves", () => {
    fc.assert(
      fc.property(fc.integer({ min: 100, max: 9000 }), fc.integer({ min: 70, max: 95 }), (shearLb, tenths) => {
        const armFt = tenths / 10;
        const tensionLb = (shearLb * 9) / armFt;
        const short = Number(tensionLb.toPrecision(13));
        const size = (capacityLb: number) => ranged({ shearLb, armFt }, [{ size: "H", capacityLb }])?.size;
        expect(size(short)).toBe("H");
        expect(size(tensionLb * 0.9999)).not.toBe("H");
      }),
      { numRuns: 200 },
    );
  });

  test("where none holds the ratio is that of the largest, wherever it stands in the list", () => {
    const sizes = [500, 900, 700].map((capacityLb) => ({ size: `${capacityLb}`, capacityLb }));
    for (const range of [sizes, [...sizes].reverse(), [sizes[1] as HoldDown, sizes[0] as HoldDown]]) {
      expect(ranged({}, range)?.ratio).toBeCloseTo(1000 / 900, 9);
    }
  });

  test("the next larger is taken, wherever it stands in the list", () => {
    const sizes = [2000, 1200, 500, 1500].map((capacityLb) => ({ size: `${capacityLb}`, capacityLb }));
    for (const range of [sizes, [...sizes].reverse()]) expect(ranged({}, range)?.size).toBe("1200");
  });
});
