import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { BadInput, Refusal } from "../../../src/core/kit/refusal.ts";
import { Tape } from "../../../src/core/kit/tape.ts";
import { boards, boardsForPieces } from "../../../src/core/takeoff/boards.ts";
import { boxesFor } from "../../../src/core/takeoff/boxes.ts";
import { buckParts, bucks } from "../../../src/core/takeoff/bucks.ts";
import { concreteYd3 } from "../../../src/core/takeoff/concrete.ts";
import { flashingTape, tapePiecesFt } from "../../../src/core/takeoff/flashing-tape.ts";
import { furring, furringPieces } from "../../../src/core/takeoff/furring.ts";
import { cutInTurn, cutLongestFirst } from "../../../src/core/takeoff/order.ts";
import { type RollRules, rollCourses, rolls } from "../../../src/core/takeoff/rolls.ts";
import { screws, screwsInRow } from "../../../src/core/takeoff/screws.ts";
import { screenRunFt, ventScreen } from "../../../src/core/takeoff/vent-screen.ts";
import { boardPieces } from "../../../src/core/takeoff/wall/board-pieces.ts";
import { cornersOnWall } from "../../../src/core/takeoff/wall/elevation.ts";
import { lining } from "../../../src/core/takeoff/wall/lining.ts";
import { marksOf } from "../../../src/core/takeoff/wall/marks.ts";
import { type SilledOpening, silledOpenings, withPlace } from "../../../src/core/takeoff/wall/opening.ts";
import {
  checkOpenings,
  grossAreaFt2,
  heightAtFt,
  type OpenedWall,
  type Wall,
} from "../../../src/core/takeoff/wall/wall.ts";
import { ALL_OPENINGS, SHED } from "./joinery-shed.ts";

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const waste = fc.integer({ min: 0, max: 300 }).map((n) => n / 1000);
const wall: fc.Arbitrary<Wall> = fc.record({
  name: fc.constant("w"),
  lengthFt: between(4, 120),
  heightFt: between(4, 24),
  riseFt: fc.oneof(fc.constant(0), between(1, 16)),
  top: fc.constantFrom("gable" as const, "shed" as const),
});
const opening: fc.Arbitrary<SilledOpening> = fc.record({
  name: fc.constant("window"),
  widthFt: between(1, 10),
  heightFt: between(1, 8),
  count: fc.constant(1),
  sillFt: fc.oneof(fc.constant(0), between(0, 6)),
  leftFt: fc.oneof(fc.constant(undefined), between(0.1, 100)),
});
const openings = fc.array(opening, { maxLength: 4 });

function plainWall(lengthFt: number, heightFt: number, riseFt = 0): Wall {
  return { name: "w", lengthFt, heightFt, riseFt, top: "gable" };
}

const opened = (w: Wall, os: readonly SilledOpening[] = []): OpenedWall<SilledOpening> => ({ wall: w, openings: os });

function window3x4(over: Partial<SilledOpening> = {}): SilledOpening {
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
  const w40 = plainWall(40, 9);

  test("courses by hand: two courses; a wide door that takes the lower one is left out but for its returns", () => {
    expect(rollCourses(opened(w40), rules)).toHaveLength(2);
    const door = { name: "door", widthFt: 16, heightFt: 8, count: 1, sillFt: 0, leftFt: undefined };
    const withDoor = rollCourses(opened(w40, [door]), { ...rules, openingReturnFt: 0.5, cornerReturnFt: 1 });
    expect(withDoor.map((c) => c.runFt)).toEqual([42 - 15, 42]);
  });

  test("a gable is covered by shorter courses", () => {
    const runs = rollCourses(opened(plainWall(32, 9, 8)), rules).map((c) => c.runFt);
    expect(runs).toHaveLength(4);
    expect(runs[2]).toBeCloseTo(32 * (1 - (2 * (5 - 1 / 6) - 9) / 8), 9);
    expect([...runs].sort((a, b) => b - a)).toEqual(runs);
  });

  test("covers the area, more waste or bigger laps never take fewer", () => {
    fc.assert(
      fc.property(wall, openings, waste, (w, os, extra) => {
        const n = unlessRefused(() => rolls([opened(w, os)], rules, extra));
        if (n === undefined) return;
        const wide = os
          .filter((o) => o.heightFt >= rules.rollWidthFt - 1e-6)
          .reduce((s, o) => s + o.widthFt * o.heightFt, 0);
        expect(n.packs * 500).toBeGreaterThanOrEqual(grossAreaFt2(w) - wide - 1e-6);
        expect(n.packs * 100).toBeGreaterThanOrEqual(n.quantity - 1e-6);
        expect(rolls([opened(w, os)], rules, extra + 0.1).packs).toBeGreaterThanOrEqual(n.packs);
        expect(rolls([opened(w)], rules, extra).packs).toBeGreaterThanOrEqual(n.packs);
        expect(rolls([opened(w, os)], { ...rules, endLapFt: 1 }, extra).packs).toBeGreaterThanOrEqual(n.packs);
        expect(rolls([opened(w, os)], { ...rules, cornerReturnFt: 1 }, extra).packs).toBeGreaterThanOrEqual(n.packs);
      }),
    );
  });

  test("laps that eat the roll are refused", () => {
    expect(() => rolls([opened(w40)], { ...rules, sideLapFt: 3 }, 0)).toThrow(BadInput);
    expect(() => rolls([opened(w40)], { ...rules, sideLapFt: 2.5 }, 0)).not.toThrow();
    expect(() => rolls([opened(w40)], { ...rules, endLapFt: 51 }, 0)).toThrow(BadInput);
  });

  test("walls share their rolls; laps between rolls by hand", () => {
    // 4 walls x 2 courses x 40 ft = 320 ft; (320 - 0.5) / 99.5 = 3.2: 4 rolls, 3 laps.
    const four = rolls(
      [1, 2, 3, 4].map(() => opened(w40)),
      rules,
      0,
    );
    expect(four).toEqual({ item: "membrane", quantity: 321.5, unit: "ft", packs: 4, pack: "roll 60 in x 100 ft" });
    expect(rolls([opened(w40)], rules, 0)).toMatchObject({ quantity: 80, packs: 1 });
    // 400 ft on 4 rolls would leave nothing for their three laps.
    expect(
      rolls(
        [1, 2, 3, 4, 5].map(() => opened(w40)),
        rules,
        0,
      ),
    ).toMatchObject({ quantity: 402, packs: 5 });
    expect(rolls([opened(w40)], rules, 0.5)).toMatchObject({ quantity: 120.5, packs: 2 });
  });

  test("the membrane of the shed by hand: rolls of 36 in with side laps of 3 in, 6 in round the corners", () => {
    // Lower edges at 0, 2.75, 5.5 and 8.25 ft: four courses on a long wall. A gable has them at full length up to 8.25 ft, then shorter.
    const shed = { ...rules, rollWidthFt: 3, rollLengthFt: 75, sideLapFt: 0.25, cornerReturnFt: 0.5 };
    const north = SHED[1] as OpenedWall<SilledOpening>;
    expect(rollCourses(north, shed).map((c) => c.runFt)).toEqual([48.75, 48.75, 48.75, 48.75]);
    const west = rollCourses(SHED[3] as OpenedWall<SilledOpening>, shed);
    expect(west.map((c) => c.bottomFt)).toEqual([0, 2.75, 5.5, 8.25, 11, 13.75, 16.5]);
    // The wide opening takes the courses from 0 to 3, 2.75 to 5.75 and 5.5 to 8.5 ft whole, and W1 the second.
    expect(west.slice(0, 4).map((c) => c.runFt)).toEqual([21, 18, 21, 33]);
    expect(west[4]?.runFt).toBeCloseTo(33 - 32 * ((11 - 9.875) / 8), 9);
  });
});

describe("flashing tape", () => {
  test("pieces by hand", () => {
    expect(tapePiecesFt([window3x4()], "all", 0.5)).toEqual([4, 5, 5, 4]);
    expect(tapePiecesFt([window3x4({ count: 2 })], "sill", 0.5)).toEqual([4, 4]);
    expect(tapePiecesFt([window3x4()], "jambs and head", 0.5)).toEqual([5, 5, 4]);
    const door = window3x4({ sillFt: 0, heightFt: 7 });
    expect(tapePiecesFt([door], "all", 0.5)).toEqual([7.5, 7.5, 4]);
    expect(tapePiecesFt([door], "jambs and head", 0.5)).toEqual([7.5, 7.5, 4]);
    expect(tapePiecesFt([door], "sill", 0.5)).toEqual([]);
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
  const w = plainWall(32, 9);
  const lengths = (wall: Wall, os: readonly SilledOpening[] = [], r = rules) =>
    furringPieces(opened(wall, os), r).map((p) => p.topFt - p.bottomFt);

  test("by hand: 25 strips; a window of known place cuts those that cross it and adds one at each side", () => {
    expect(lengths(w)).toEqual(Array.from({ length: 25 }, () => 9));
    const cut = lengths(w, [window3x4({ leftFt: 4.5 })]);
    // Strips at 64 and 80 in stand between 54 and 90 in.
    expect(cut).toHaveLength(25 + 2 + 2);
    expect(cut.reduce((s, p) => s + p, 0)).toBeCloseTo(25 * 9 - 2 * 4 + 2 * 9, 9);
  });

  test("a gable makes them longer up to the middle", () => {
    const tall = lengths({ ...w, riseFt: 8 });
    expect(Math.max(...tall)).toBeCloseTo(17, 9);
    expect(tall.reduce((s, p) => s + p, 0)).toBeCloseTo(25 * 9 + 8 * 12, 9);
  });

  test("enough strips for the pieces; closer spacing and more waste never take less length", () => {
    fc.assert(
      fc.property(wall, openings, between(0.5, 4), waste, (any, os, spacingFt, extra) => {
        const f = unlessRefused(() => furring([opened(any, os)], { ...rules, spacingFt }, extra));
        if (f === undefined) return;
        expect(f.packs * 10).toBeGreaterThanOrEqual(f.quantity * (1 - 1e-8));
        expect(furring([opened(any, os)], { ...rules, spacingFt }, extra + 0.1).packs).toBeGreaterThanOrEqual(f.packs);
        const closer = furring([opened(any, os)], { ...rules, spacingFt: spacingFt / 2 }, extra);
        expect(closer.quantity).toBeGreaterThanOrEqual(f.quantity * (1 - 1e-9));
      }),
    );
  });

  test("more strips at the ends and beside openings, by hand", () => {
    expect(lengths(w, [], { ...rules, extraPerEnd: 2 })).toHaveLength(25 + 4);
    const loose = lengths(w, [window3x4({ count: 2 })], { ...rules, extraPerJamb: 2 });
    expect(loose).toHaveLength(25 + 8);
    expect(loose.slice(25)).toEqual(Array.from({ length: 8 }, () => 9));
    expect(() => lengths(w, [], { ...rules, spacingFt: 0.001 })).toThrow(/5000 strips on w/);
  });

  test("a strip of the spacing at the edge of an opening, or at the end of the wall, is one of those beside it", () => {
    const at2 = { ...rules, spacingFt: 2 };
    // Strips at 0, 2 ... 32, the one at 6 in two pieces; the left edge stands at 4, the right one at 7.
    const window = window3x4({ leftFt: 4 });
    expect(lengths(w, [window], at2)).toHaveLength(17 + 1 + 1);
    expect(lengths(w, [window], { ...at2, extraPerJamb: 2 })).toHaveLength(17 + 1 + 3);
    expect(lengths(w, [window], { ...at2, extraPerJamb: 0 })).toHaveLength(17 + 1);
    const last = window3x4({ leftFt: 29 });
    expect(lengths(w, [last], { ...at2, spacingFt: 5 })).toHaveLength(8 + 1 + 1);
  });

  test("a piece longer than a strip takes whole strips and a rest; rests share strips, longest first", () => {
    // Two strips of 9 ft from strips of 4 ft: two whole ones each, and two rests of 1 ft in one.
    const two = { ...rules, spacingFt: 4, stripFt: 4 };
    expect(furring([opened(plainWall(4, 9))], two, 0)).toEqual({
      item: "furring",
      quantity: 18,
      unit: "ft",
      packs: 5,
      pack: "strip 4 ft",
    });
  });

  test("openings over one another cut a strip in three, in any order", () => {
    const low = window3x4({ leftFt: 3, sillFt: 1, heightFt: 2 });
    const high = window3x4({ leftFt: 3, sillFt: 5, heightFt: 2 });
    const at4 = (os: readonly SilledOpening[]) =>
      furringPieces(opened(plainWall(8, 9), os), { ...rules, spacingFt: 4, extraPerJamb: 0 }).filter(
        (p) => p.xFt === 4,
      );
    expect(at4([high, low])).toEqual([
      { xFt: 4, bottomFt: 0, topFt: 1 },
      { xFt: 4, bottomFt: 3, topFt: 5 },
      { xFt: 4, bottomFt: 7, topFt: 9 },
    ]);
    expect(at4([low, high])).toEqual(at4([high, low]));
  });

  test("the furring of the shed's north wall by hand", () => {
    // 24 lines at 24 in and one at the right end; N1 and N2 each cross the lines at 12 and 36 ft; a strip at each of their sides.
    const shed = { spacingFt: 2, stripFt: 10, extraPerEnd: 0, extraPerJamb: 1 };
    const { quantity } = furring([SHED[1] as OpenedWall], shed, 0);
    expect(quantity).toBeCloseTo(25 * 9.875 - 2 * 2 + 4 * 9.875, 9);
  });
});

describe("insulation boards", () => {
  const board = { lengthFt: 8, widthFt: 4, thicknessesIn: [2, 2], perBundle: 1 };

  test("pieces cover the wall but for openings, and lie in it", () => {
    fc.assert(
      fc.property(wall, openings, fc.integer({ min: 0, max: 1 }), (w, os, layer) => {
        if (unlessRefused(() => checkOpenings(opened(w, os))) === undefined && os.length > 0) return;
        const placed = withPlace(os);
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
          // A point on an edge belongs to both pieces or to none.
          const onEdge = pieces.some((p) => Math.min(...[p.x0 - x, p.x1 - x, p.y0 - y, p.y1 - y].map(Math.abs)) < 1e-6);
          if (onEdge) continue;
          const over = pieces.filter((p) => x > p.x0 && x < p.x1 && y > p.y0 && y < p.y1).length;
          if (!open) expect(over).toBe(1);
        }
      }),
      { numRuns: 60 },
    );
  });

  test("as drawn, cut to the rakes, they make up the wall", () => {
    fc.assert(
      fc.property(wall, fc.boolean(), (any, falls) => {
        const w = any.top === "shed" && falls ? { ...any, heightFt: any.heightFt + 16, riseFt: -any.riseFt } : any;
        const areaFt2 = boardPieces(w, [], 8, 4, 0).reduce((sum, piece) => {
          const corners = cornersOnWall(w, piece);
          const twice = corners.reduce((t, [x, y], i) => {
            const [nextX, nextY] = corners[(i + 1) % corners.length] ?? [x, y];
            return t + x * nextY - nextX * y;
          }, 0);
          return sum + twice / 2;
        }, 0);
        expect(areaFt2 / grossAreaFt2(w)).toBeCloseTo(1, 5);
      }),
    );
  });

  test("joints of touching rows are half a board apart, those of two layers a quarter", () => {
    const w = plainWall(40, 12);
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
        const lines = unlessRefused(() => boards([opened(w, os)], board, extra));
        if (lines === undefined) return;
        const n = lines[0]?.packs ?? 0;
        const placed = os.filter((o) => o.leftFt !== undefined).reduce((s, o) => s + o.widthFt * o.heightFt, 0);
        expect(n * 32).toBeGreaterThanOrEqual(2 * (grossAreaFt2(w) - placed) - 1e-6);
        expect(boards([opened(w, os)], board, extra + 0.1)[0]?.packs).toBeGreaterThanOrEqual(n);
        expect(boards([opened(w, os)], { ...board, thicknessesIn: [2, 2, 2] }, extra)[0]?.packs).toBeGreaterThanOrEqual(
          n,
        );
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
    const rules = { ...board, thicknessesIn: [2, 2, 1.5], perBundle: 6 };
    expect(boards([opened(plainWall(16, 8))], rules, 0)).toEqual([
      { item: "board 4 x 8 ft x 2 in", quantity: 8, unit: "boards", packs: 2, pack: "bundle of 6" },
      { item: "board 4 x 8 ft x 1.5 in", quantity: 4, unit: "boards", packs: 1, pack: "bundle of 6" },
    ]);
  });

  test("the layout holds the waste of cutting: a waste share raises the order only where the area with it is more", () => {
    const of = (extra: number, walls: readonly OpenedWall[] = SHED) =>
      boards(walls, { ...board, thicknessesIn: [3, 3] }, extra)[0]?.quantity ?? 0;
    expect(of(0.07)).toBe(of(0));
    // Two layers of the net 1540.451 ft2 with 30 %: 4005.17 / 32 = 125.16.
    expect(of(0.3)).toBe(126);
    // A window of unknown place takes nothing off the area: 16 x 8 x 2 x 1.1 / 32 = 8.8.
    expect(of(0.1, [opened(plainWall(16, 8), [window3x4()])])).toBe(9);
    expect(of(0.1, [opened(plainWall(16, 8), [window3x4({ leftFt: 2, widthFt: 8 })])])).toBe(8);
  });

  test("what one wall leaves serves the next: two walls of half a board each take one", () => {
    const half = opened(plainWall(4, 4));
    const rules = { ...board, thicknessesIn: [2] };
    expect(boards([half], rules, 0)[0]?.packs).toBe(1);
    expect(boards([half, half], rules, 0)[0]?.packs).toBe(1);
  });

  test("more than 4000 boards a layer are refused, and each wall and layer is drawn once", () => {
    const wide = [1, 2].map(() => opened(plainWall(1000, 70)));
    expect(() => boards(wide, board, 0)).toThrow(/4375 boards a layer/);
    const tape = new Tape();
    boards(SHED, { ...board, thicknessesIn: [3, 3, 3] }, 0, tape);
    expect(tape.pictures).toHaveLength(8);
  });
});

describe("screws", () => {
  test("a part space counts as one", () => {
    expect(screwsInRow(8, 6, 0)).toBe(17);
    expect(screwsInRow(8, 7, 0)).toBe(15);
    expect(screwsInRow(8, 6, 1)).toBe(17);
    expect(screwsInRow(0.1, 6, 1)).toBe(1);
    expect(screwsInRow(8, 6, 4)).toBe(16);
  });

  test("boxes: fewest over, then fewest boxes; with prices the cheapest", () => {
    const sizes = [50, 1000].map((size) => ({ name: `box of ${size}`, size, price: undefined }));
    const counts = (
      wanted: number,
      from = sizes as readonly { name: string; size: number; price: number | undefined }[],
    ) => boxesFor(wanted, from).map((b) => b.boxes);
    expect(counts(980)).toEqual([0, 1]);
    expect(counts(930)).toEqual([19, 0]);
    const priced = sizes.map((b, i) => ({ ...b, price: [9, 90][i] }));
    expect(counts(930, priced)).toEqual([0, 1]);
    expect(counts(0)).toEqual([0, 0]);
    expect(() => counts(1_000_001)).toThrow(/up to 1000000/);
  });

  test("the lines share what is needed, the largest box first", () => {
    const boxes = [100, 250].map((size) => ({ name: `box of ${size}`, size, price: undefined }));
    const rows = [{ name: "edge", lengthFt: 8, spacingIn: 6, rows: 2, count: 10 }];
    const lines = screws(rows, 0, boxes, 0).map((l) => [l.quantity, l.packs, l.pack]);
    expect(lines).toEqual([
      [250, 1, "box of 250"],
      [90, 1, "box of 100"],
    ]);
    expect(screws(rows, 0, boxes, 0.08).reduce((sum, l) => sum + l.quantity, 0)).toBe(Math.ceil(340 * 1.08));
  });

  test("waste that comes out whole adds no screw", () => {
    const box = [{ name: "box", size: 1, price: undefined }];
    const row = { name: "edge", lengthFt: 99, spacingIn: 12, rows: 1, count: 1 };
    expect(screws([row], 0, box, 0.1)[0]?.quantity).toBe(110);
    expect(screws([row], 0, box, 0.101)[0]?.quantity).toBe(111);
  });

  test("enough, never a whole smallest box too many, monotone in waste", () => {
    const sizes = fc.uniqueArray(fc.integer({ min: 1, max: 500 }), { minLength: 1, maxLength: 4 });
    fc.assert(
      fc.property(sizes, between(1, 60), between(1, 24), waste, (list, lengthFt, spacingIn, extra) => {
        const boxes = list.map((size) => ({ name: `${size}`, size, price: undefined }));
        const row = { name: "edge", lengthFt, spacingIn, rows: 2, count: 3 };
        const lines = (w: number) => screws([row], 0, boxes, w);
        const ordered = (w: number) => lines(w).reduce((s, l) => s + l.packs * Number(l.pack), 0);
        expect(lines(extra).reduce((s, l) => s + l.quantity, 0)).toBeGreaterThanOrEqual(6);
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
  const w = plainWall(32, 9);
  test("by hand", () => {
    expect(screenRunFt(opened(w, [window3x4({ count: 2 })]), "both")).toBe(76);
    expect(screenRunFt(opened(w, [door]), "bottom")).toBe(32);
    expect(screenRunFt(opened(w, [door]), "top")).toBe(32);
    expect(screenRunFt(opened(w, [door, window3x4()]), "both")).toBe(32 + 3 + 32 + 3);
    expect(screenRunFt(opened(w, [door, window3x4()]), "foot and top")).toBe(29 + 32);
    expect(() => screenRunFt(opened(plainWall(4, 20), [door, door]), "both")).toThrow(BadInput);
  });
  test("the top runs along the rakes", () => {
    expect(screenRunFt(opened(plainWall(32, 9, 12)), "top")).toBe(40);
    expect(screenRunFt(opened({ ...plainWall(32, 9, 24), top: "shed" }), "top")).toBe(40);
  });
  test("monotone in length and waste", () => {
    fc.assert(
      fc.property(between(10, 300), openings, waste, (lengthFt, os, extra) => {
        const of = (long: number, more: number) => ventScreen([opened(plainWall(long, 30), os)], "both", 10, more);
        const s = unlessRefused(() => of(lengthFt, extra));
        if (s === undefined) return;
        expect(s.packs * 10).toBeGreaterThanOrEqual(s.quantity * (1 - 1e-8));
        expect(of(lengthFt + 5, extra).packs).toBeGreaterThanOrEqual(s.packs);
        expect(of(lengthFt, extra + 0.1).packs).toBeGreaterThanOrEqual(s.packs);
        const twice = ventScreen(
          [1, 2].map(() => opened(plainWall(lengthFt, 30), os)),
          "both",
          10,
          extra,
        );
        expect(twice.quantity).toBeCloseTo(2 * s.quantity, 6);
      }),
    );
  });
});

describe("lining", () => {
  const sheet = { lengthFt: 8, widthFt: 4 };
  test("a wall of two sheets, and a strip above them", () => {
    const parts = lining([opened(plainWall(8, 9))], sheet);
    expect(parts).toEqual([
      { name: "w lining 1", lengthIn: 96, widthIn: 48, count: 2, mark: "W 1" },
      { name: "w lining 2", lengthIn: 12, widthIn: 48, count: 2, mark: "W 2" },
    ]);
  });

  test("a window as wide as a sheet leaves what is over and under it; a notch stays in its part", () => {
    const at = (leftFt: number) => [window3x4({ widthFt: 4, leftFt })];
    const sizes = (leftFt: number) =>
      lining([opened(plainWall(12, 8), at(leftFt))], sheet).map((p) => [p.lengthIn, p.widthIn, p.count]);
    expect(sizes(4)).toEqual([
      [96, 48, 2],
      [36, 48, 1],
      [12, 48, 1],
    ]);
    expect(sizes(2)).toEqual([[96, 48, 3]]);
  });

  test("sixteenths are rounded down, and an opening without a place is refused", () => {
    expect(lining([opened(plainWall(4, 8 - 0.001))], sheet)[0]?.lengthIn).toBe(95.9375);
    expect(() => lining([opened(plainWall(12, 8), [window3x4()])], sheet)).toThrow(/no left edge/);
    expect(() => lining([opened(plainWall(1000, 100))], sheet)).toThrow(/3125 sheets/);
  });

  test("parts cover the wall but for its openings, none is larger than a sheet, marks are alike nowhere", () => {
    fc.assert(
      fc.property(wall, openings, (w, os) => {
        const placed = withPlace(os);
        const parts = unlessRefused(() => lining([opened(w, placed), opened({ ...w, name: "x" }, [])], sheet));
        if (parts === undefined) return;
        const areaFt2 = parts.reduce((sum, p) => sum + (p.lengthIn * p.widthIn * p.count) / 144, 0);
        const open = placed.reduce((sum, o) => sum + o.widthFt * o.heightFt, 0);
        const slack = parts.reduce((sum, p) => sum + p.count, 0) * (16 / 12 / 16);
        expect(areaFt2).toBeGreaterThanOrEqual(2 * grossAreaFt2(w) - open - slack);
        for (const p of parts) expect([p.lengthIn <= 96, p.widthIn <= 48]).toEqual([true, true]);
        expect(new Set(parts.map((p) => p.mark)).size).toBe(parts.length);
      }),
    );
  });
});

test("marks are the fewest letters that tell walls apart", () => {
  expect(marksOf(["south", "north", "east", "west"])).toEqual(["S", "N", "E", "W"]);
  expect(marksOf(["wall A", "wall B"])).toEqual(["WALL A", "WALL B"]);
  expect(marksOf(["south", "southeast"])).toEqual(["SOUTH", "SOUTHE"]);
  expect(marksOf(["w"])).toEqual(["W"]);
});

describe("sill heights", () => {
  test("a blank one is asked, a low opening on the foot of the wall gets a caution", () => {
    expect(() => silledOpenings([{ ...window3x4(), sillFt: undefined }])).toThrow(/W1 has no sill height/);
    const tape = new Tape();
    silledOpenings([window3x4({ sillFt: 0 }), window3x4({ sillFt: 0, heightFt: 6 }), window3x4()], tape);
    expect(tape.cautions).toHaveLength(1);
    expect(tape.cautions[0]).toMatch(/W1, 4 ft high/);
  });
});

test("bucks: jambs stand between head and sill, a door has no sill", () => {
  expect(buckParts([window3x4()], 1.5).map((p) => [p.lengthIn, p.count])).toEqual([
    [36, 2],
    [45, 2],
  ]);
  expect(buckParts([window3x4({ sillFt: 0 })], 1.5).map((p) => [p.lengthIn, p.count])).toEqual([
    [36, 1],
    [46.5, 2],
  ]);
  expect(() => buckParts([window3x4({ heightFt: 0.25 })], 1.5)).toThrow(BadInput);
  expect(buckParts([window3x4({ count: 2 })], 1.5).map((p) => p.count)).toEqual([4, 4]);
  const tape = new Tape();
  bucks(ALL_OPENINGS, 1.5, tape);
  // Heads, sills and jambs of the shed's openings, added up by hand.
  const windows = 5 * (8 + 9 - 0.5) + 2 * (6 + 4 - 0.5) + 3 * (6 + 9 - 0.5);
  const doors = 2 * (10 / 3 + 2 * (83 / 12) - 0.25) + 12 + 17 - 0.25;
  expect(tape.steps.at(-1)?.value).toBeCloseTo(windows + doors, 9);
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
