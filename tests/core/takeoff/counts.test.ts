import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { BadInput, Refusal } from "../../../src/core/kit/refusal.ts";
import { boardPieces } from "../../../src/core/takeoff/board-pieces.ts";
import { boards, boardsForPieces } from "../../../src/core/takeoff/boards.ts";
import { boxesFor } from "../../../src/core/takeoff/boxes.ts";
import { buckParts } from "../../../src/core/takeoff/bucks.ts";
import { concreteYd3 } from "../../../src/core/takeoff/concrete.ts";
import { flashingTape, tapePiecesFt } from "../../../src/core/takeoff/flashing-tape.ts";
import { furring, furringPiecesFt } from "../../../src/core/takeoff/furring.ts";
import type { Opening, PlacedOpening } from "../../../src/core/takeoff/opening.ts";
import { cutInTurn, cutLongestFirst } from "../../../src/core/takeoff/order.ts";
import { type RollRules, rollCourses, rolls } from "../../../src/core/takeoff/rolls.ts";
import { screws, screwsInRow } from "../../../src/core/takeoff/screws.ts";
import { screenRunFt, ventScreen } from "../../../src/core/takeoff/vent-screen.ts";
import { checkOpenings, grossAreaFt2, heightAtFt, type Wall } from "../../../src/core/takeoff/wall.ts";

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const waste = fc.integer({ min: 0, max: 300 }).map((n) => n / 1000);
const wall: fc.Arbitrary<Wall> = fc.record({
  lengthFt: between(4, 120),
  heightFt: between(4, 24),
  gableRiseFt: fc.oneof(fc.constant(0), between(1, 16)),
});
const opening: fc.Arbitrary<Opening> = fc.record({
  name: fc.constant("window"),
  widthFt: between(1, 10),
  heightFt: between(1, 8),
  count: fc.constant(1),
  sillFt: fc.oneof(fc.constant(0), between(0, 6)),
  leftFt: fc.oneof(fc.constant(undefined), between(0.1, 100)),
});
const openings = fc.array(opening, { maxLength: 4 });

function window3x4(over: Partial<Opening> = {}): Opening {
  return { name: "W1", widthFt: 3, heightFt: 4, count: 1, sillFt: 3, leftFt: undefined, ...over };
}

/** A value, or undefined for a refusal; anything else fails. */
function unlessRefused<T>(run: () => T): T | undefined {
  try {
    return run();
  } catch (error) {
    expect(error).toBeInstanceOf(Refusal);
    return undefined;
  }
}

describe("rolls of membrane", () => {
  const rules: RollRules = {
    rollWidthFt: 5,
    rollLengthFt: 100,
    sideLapFt: 2 / 12,
    endLapFt: 0.5,
    cornerReturnFt: 0,
    openingReturnFt: 0,
  };
  const plainWall: Wall = { lengthFt: 40, heightFt: 9, gableRiseFt: 0 };

  test("courses by hand: two courses; a wide door that takes the lower one is left out but for its returns", () => {
    expect(rollCourses(plainWall, [], rules)).toHaveLength(2);
    const door = { name: "door", widthFt: 16, heightFt: 8, count: 1, sillFt: 0, leftFt: undefined };
    const withDoor = rollCourses(plainWall, [door], { ...rules, openingReturnFt: 0.5, cornerReturnFt: 1 });
    expect(withDoor.map((c) => c.runFt)).toEqual([42 - 15, 42]);
  });

  test("a gable is covered by shorter courses", () => {
    const runs = rollCourses({ lengthFt: 32, heightFt: 9, gableRiseFt: 8 }, [], rules).map((c) => c.runFt);
    expect(runs).toHaveLength(4);
    expect(runs[2]).toBeCloseTo(32 * (1 - (2 * (5 - 1 / 6) - 9) / 8), 9);
    expect([...runs].sort((a, b) => b - a)).toEqual(runs);
  });

  test("covers the area, more waste or bigger laps never take fewer", () => {
    fc.assert(
      fc.property(wall, openings, waste, (w, os, extra) => {
        const n = unlessRefused(() => rolls(w, os, rules, extra));
        if (n === undefined) return;
        const wide = os
          .filter((o) => o.heightFt >= rules.rollWidthFt - 1e-6)
          .reduce((s, o) => s + o.widthFt * o.heightFt, 0);
        expect(n.packs * 500).toBeGreaterThanOrEqual(grossAreaFt2(w) - wide - 1e-6);
        expect(n.packs * 100).toBeGreaterThanOrEqual(n.quantity - 1e-6);
        expect(rolls(w, os, rules, extra + 0.1).packs).toBeGreaterThanOrEqual(n.packs);
        expect(rolls(w, [], rules, extra).packs).toBeGreaterThanOrEqual(n.packs);
        expect(rolls(w, os, { ...rules, endLapFt: 1 }, extra).packs).toBeGreaterThanOrEqual(n.packs);
        expect(rolls(w, os, { ...rules, cornerReturnFt: 1 }, extra).packs).toBeGreaterThanOrEqual(n.packs);
      }),
    );
  });

  test("laps that eat the roll are refused", () => {
    expect(() => rolls(plainWall, [], { ...rules, sideLapFt: 3 }, 0)).toThrow(BadInput);
  });
});

describe("flashing tape", () => {
  test("pieces by hand", () => {
    expect(tapePiecesFt([window3x4()], "all", 0.5)).toEqual([4, 5, 5, 4]);
    expect(tapePiecesFt([window3x4({ count: 2 })], "sill", 0.5)).toEqual([4, 4]);
    expect(tapePiecesFt([window3x4()], "jambs and head", 0.5)).toEqual([5, 5, 4]);
  });

  test("a piece is not joined: three pieces of 4 ft take two rolls of 10 ft", () => {
    expect(flashingTape([window3x4({ count: 3 })], "sill", 10, 0.5, 0).packs).toBe(2);
    expect(() => flashingTape([window3x4()], "all", 4.5, 0.5, 0)).toThrow(/5 ft/);
  });

  test("monotone in waste and openings, never below the total", () => {
    fc.assert(
      fc.property(openings, between(20, 100), waste, (os, roll, extra) => {
        const t = flashingTape(os, "all", roll, 0.5, extra);
        expect(t.packs * roll).toBeGreaterThanOrEqual(t.quantity * (1 - 1e-8));
        expect(flashingTape([...os, window3x4()], "all", roll, 0.5, extra).packs).toBeGreaterThanOrEqual(t.packs);
        expect(flashingTape(os, "all", roll, 0.5, extra + 0.1).packs).toBeGreaterThanOrEqual(t.packs);
        expect(flashingTape(os, "all", roll, 1, extra).packs).toBeGreaterThanOrEqual(t.packs);
      }),
    );
  });
});

describe("cutting from lengths", () => {
  const pieces = fc.array(between(0.1, 10), { maxLength: 40 });
  test("never below the total, in turn never below the bound, at most one piece each", () => {
    fc.assert(
      fc.property(pieces, (ps) => {
        const least = Math.ceil(ps.reduce((s, p) => s + p, 0) / 10 - 1e-6);
        for (const n of [cutInTurn(ps, 10), cutLongestFirst(ps, 10)]) {
          expect(n).toBeGreaterThanOrEqual(least);
          expect(n).toBeLessThanOrEqual(ps.length);
        }
      }),
    );
  });
});

describe("furring", () => {
  const rules = { spacingFt: 16 / 12, stripFt: 10, extraPerEnd: 0, extraPerJamb: 1 };
  const w: Wall = { lengthFt: 32, heightFt: 9, gableRiseFt: 0 };

  test("by hand: 25 strips; a window of known place cuts those that cross it and adds one at each side", () => {
    expect(furringPiecesFt(w, [], rules)).toEqual(Array.from({ length: 25 }, () => 9));
    const cut = furringPiecesFt(w, [window3x4({ leftFt: 4.5 })], rules);
    // Strips at 64 and 80 in stand between 54 and 90 in.
    expect(cut).toHaveLength(25 + 2 + 2);
    expect(cut.reduce((s, p) => s + p, 0)).toBeCloseTo(25 * 9 - 2 * 4 + 2 * 9, 9);
  });

  test("a gable makes them longer up to the middle", () => {
    const tall = furringPiecesFt({ ...w, gableRiseFt: 8 }, [], rules);
    expect(Math.max(...tall)).toBeCloseTo(17, 9);
    expect(tall.reduce((s, p) => s + p, 0)).toBeCloseTo(25 * 9 + 8 * 12, 9);
  });

  test("enough strips for the pieces; closer spacing and more waste never take less length", () => {
    fc.assert(
      fc.property(wall, openings, between(0.5, 4), waste, (any, os, spacingFt, extra) => {
        const f = unlessRefused(() => furring(any, os, { ...rules, spacingFt }, extra));
        if (f === undefined) return;
        expect(f.packs * 10).toBeGreaterThanOrEqual(f.quantity * (1 - 1e-8));
        expect(furring(any, os, { ...rules, spacingFt }, extra + 0.1).packs).toBeGreaterThanOrEqual(f.packs);
        const closer = furring(any, os, { ...rules, spacingFt: spacingFt / 2 }, extra);
        expect(closer.quantity).toBeGreaterThanOrEqual(f.quantity * (1 - 1e-9));
      }),
    );
  });
});

describe("insulation boards", () => {
  const board = { lengthFt: 8, widthFt: 4 };

  test("pieces cover the wall but for openings, and lie in it", () => {
    fc.assert(
      fc.property(wall, openings, fc.integer({ min: 0, max: 1 }), (w, os, layer) => {
        if (unlessRefused(() => checkOpenings(w, os)) === undefined && os.length > 0) return;
        const placed = os.filter((o): o is PlacedOpening => o.leftFt !== undefined);
        const pieces = boardPieces(w, placed, 8, 4, layer);
        for (const p of pieces) {
          expect(p.x1 - p.x0).toBeLessThanOrEqual(8 + 1e-6);
          expect(p.y1 - p.y0).toBeLessThanOrEqual(4 + 1e-6);
        }
        for (let i = 0; i < 60; i++) {
          const x = (w.lengthFt * (i + 0.5)) / 60;
          const y = (heightAtFt(w, x) * (((i * 7) % 60) + 0.5)) / 60;
          const open = placed.some(
            (o) => x > o.leftFt && x < o.leftFt + o.widthFt && y > o.sillFt && y < o.sillFt + o.heightFt,
          );
          const over = pieces.filter((p) => x > p.x0 && x < p.x1 && y > p.y0 && y < p.y1).length;
          if (!open) expect(over).toBe(1);
        }
      }),
      { numRuns: 60 },
    );
  });

  test("joints of touching rows are half a board apart, those of two layers a quarter", () => {
    const w: Wall = { lengthFt: 40, heightFt: 12, gableRiseFt: 0 };
    const joints = (layer: number, row: number) => {
      const pieces = boardPieces(w, [], 8, 4, layer);
      const y = [...new Set(pieces.map((p) => p.y0))].sort((a, b) => a - b)[row];
      return pieces.filter((p) => p.y0 === y && p.x0 > 0).map((p) => p.x0);
    };
    const least = (a: number[], b: number[]) => Math.min(...a.flatMap((x) => b.map((z) => Math.abs(x - z))));
    expect(least(joints(0, 0), joints(0, 1))).toBeCloseTo(4, 9);
    expect(least(joints(0, 0), joints(1, 1))).toBeCloseTo(2, 9);
  });

  test("never fewer than the area, never more than a board a piece, more waste never fewer", () => {
    fc.assert(
      fc.property(wall, openings, waste, (w, os, extra) => {
        const lines = unlessRefused(() => boards(w, os, board, [2, 2], 1, extra));
        if (lines === undefined) return;
        const n = lines[0]?.packs ?? 0;
        const placed = os.filter((o) => o.leftFt !== undefined).reduce((s, o) => s + o.widthFt * o.heightFt, 0);
        expect(n * 32).toBeGreaterThanOrEqual(2 * (grossAreaFt2(w) - placed) - 1e-6);
        expect(boards(w, os, board, [2, 2], 1, extra + 0.1)[0]?.packs).toBeGreaterThanOrEqual(n);
        expect(boards(w, os, board, [2, 2, 2], 1, extra)[0]?.packs).toBeGreaterThanOrEqual(n);
      }),
      { numRuns: 60 },
    );
  });

  test("offcuts are used again, either way round", () => {
    expect(
      boardsForPieces(
        [
          { a: 4, b: 4 },
          { a: 4, b: 4 },
        ],
        8,
        4,
      ),
    ).toBe(1);
    expect(
      boardsForPieces(
        [
          { a: 6, b: 4 },
          { a: 4, b: 2 },
        ],
        8,
        4,
      ),
    ).toBe(1);
    expect(
      boardsForPieces(
        [
          { a: 6, b: 4 },
          { a: 4, b: 2.1 },
        ],
        8,
        4,
      ),
    ).toBe(2);
  });

  test("bundles round up once for all layers of a thickness", () => {
    const w: Wall = { lengthFt: 16, heightFt: 8, gableRiseFt: 0 };
    expect(boards(w, [], board, [2, 2, 1.5], 6, 0).map((l) => [l.quantity, l.packs])).toEqual([
      [8, 2],
      [4, 1],
    ]);
  });
});

describe("screws", () => {
  test("a part space counts as one", () => {
    expect(screwsInRow(8, 6, 0)).toBe(17);
    expect(screwsInRow(8, 7, 0)).toBe(15);
    expect(screwsInRow(8, 6, 1)).toBe(17);
    expect(screwsInRow(0.1, 6, 1)).toBe(1);
  });

  test("boxes: fewest over, then fewest boxes; with prices the cheapest", () => {
    const sizes = [
      { size: 50, price: undefined },
      { size: 1000, price: undefined },
    ];
    expect(boxesFor(980, sizes)).toEqual([
      { size: 50, boxes: 0 },
      { size: 1000, boxes: 1 },
    ]);
    expect(boxesFor(930, sizes)).toEqual([
      { size: 50, boxes: 19 },
      { size: 1000, boxes: 0 },
    ]);
    expect(
      boxesFor(930, [
        { size: 50, price: 9 },
        { size: 1000, price: 90 },
      ])[1]?.boxes,
    ).toBe(1);
    expect(boxesFor(0, sizes).every((b) => b.boxes === 0)).toBe(true);
  });

  test("enough, never a whole smallest box too many, monotone in waste", () => {
    const sizes = fc.uniqueArray(fc.integer({ min: 1, max: 500 }), { minLength: 1, maxLength: 4 });
    fc.assert(
      fc.property(sizes, between(1, 60), between(1, 24), waste, (list, lengthFt, spacingIn, extra) => {
        const boxes = list.map((size) => ({ size, price: undefined }));
        const row = { name: "edge", lengthFt, spacingIn, rows: 2, count: 3 };
        const ordered = (w: number) => screws([row], 0, boxes, w).reduce((s, l) => s + l.quantity, 0);
        const needed = Math.ceil(6 * screwsInRow(lengthFt, spacingIn, 0) * (1 + extra) - 1e-6);
        expect(ordered(extra)).toBeGreaterThanOrEqual(needed);
        expect(ordered(extra) - needed).toBeLessThan(Math.min(...list));
        expect(ordered(extra + 0.1)).toBeGreaterThanOrEqual(ordered(extra));
      }),
    );
  });
});

describe("vent screen", () => {
  const door = window3x4({ name: "door", heightFt: 7, sillFt: 0 });
  test("by hand", () => {
    expect(screenRunFt(32, [window3x4({ count: 2 })], "both")).toBe(76);
    expect(screenRunFt(32, [door], "bottom")).toBe(32);
    expect(screenRunFt(32, [door], "top")).toBe(32);
    expect(() => screenRunFt(4, [door, door], "both")).toThrow(BadInput);
  });
  test("monotone in length and waste", () => {
    fc.assert(
      fc.property(between(10, 300), openings, waste, (lengthFt, os, extra) => {
        const s = unlessRefused(() => ventScreen(lengthFt, os, "both", 10, extra));
        if (s === undefined) return;
        expect(s.packs * 10).toBeGreaterThanOrEqual(s.quantity * (1 - 1e-8));
        expect(ventScreen(lengthFt + 5, os, "both", 10, extra).packs).toBeGreaterThanOrEqual(s.packs);
        expect(ventScreen(lengthFt, os, "both", 10, extra + 0.1).packs).toBeGreaterThanOrEqual(s.packs);
      }),
    );
  });
});

test("bucks: jambs stand between head and sill, a door has no sill", () => {
  expect(buckParts([window3x4()], 1.5).map((p) => [p.lengthIn, p.quantity])).toEqual([
    [36, 2],
    [45, 2],
  ]);
  expect(buckParts([window3x4({ sillFt: 0 })], 1.5).map((p) => [p.lengthIn, p.quantity])).toEqual([
    [36, 1],
    [46.5, 2],
  ]);
  expect(() => buckParts([window3x4({ heightFt: 0.25 })], 1.5)).toThrow(BadInput);
});

test("concrete: slab and pier by hand; steps, monotone in waste", () => {
  const slab = { name: "slab", lengthFt: 48, widthFt: 32, depthFt: 1 / 3, count: 1 };
  expect(concreteYd3([slab], 0, 0.01)).toBeCloseTo(18.97, 9);
  const pier = { name: "pier", lengthFt: 2, widthFt: undefined, depthFt: 27 / Math.PI, count: 10 };
  expect(concreteYd3([pier], 0, 0.25)).toBe(10);
  fc.assert(
    fc.property(between(1, 100), waste, (lengthFt, extra) => {
      const yd3 = concreteYd3([{ ...slab, lengthFt }], extra, 0.25);
      expect(yd3 / 0.25).toBeCloseTo(Math.round(yd3 / 0.25), 9);
      expect(yd3 * 27).toBeGreaterThanOrEqual(lengthFt * 32 * (1 / 3) * (1 + extra) * (1 - 1e-8));
      expect(concreteYd3([{ ...slab, lengthFt }], extra + 0.1, 0.25)).toBeGreaterThanOrEqual(yd3);
    }),
  );
});
