import { describe, expect, test } from "vitest";
import { Tape } from "../../../src/core/kit/tape.ts";
import { boards, boardsForPieces } from "../../../src/core/takeoff/boards.ts";
import { type BoxSize, boxesFor } from "../../../src/core/takeoff/boxes.ts";
import { flashingTape } from "../../../src/core/takeoff/flashing-tape.ts";
import { furring } from "../../../src/core/takeoff/furring.ts";
import { cutInTurn, cutLongestFirst } from "../../../src/core/takeoff/order.ts";
import { wholePacks } from "../../../src/core/takeoff/packs.ts";
import { rollCourses, rolls } from "../../../src/core/takeoff/rolls.ts";
import { screws } from "../../../src/core/takeoff/screws.ts";
import { type ScreenedEdges, screenRunFt, ventScreen } from "../../../src/core/takeoff/vent-screen.ts";
import { boardPieces } from "../../../src/core/takeoff/wall/board-pieces.ts";
import { lining } from "../../../src/core/takeoff/wall/lining.ts";
import { checkWall, outlineFt, type Wall } from "../../../src/core/takeoff/wall/wall.ts";

const level = (lengthFt: number, heightFt: number): Wall => ({
  name: "w",
  lengthFt,
  heightFt,
  riseFt: 0,
  top: "gable",
});

describe("boxes", () => {
  const box = (size: number, price?: number): BoxSize => ({ name: `${size}`, size, price });
  const counts = (wanted: number, ...sizes: readonly BoxSize[]) => boxesFor(wanted, sizes).map((b) => b.boxes);

  test("of two answers with as many pieces the one with fewer boxes, in any order of the sizes", () => {
    expect(counts(100, box(100), box(50))).toEqual([1, 0]);
    expect(counts(100, box(50), box(100))).toEqual([0, 1]);
  });

  test("of two boxes alike the first is taken", () => {
    expect(counts(50, box(50), box(50))).toEqual([1, 0]);
  });

  test("prices that differ by the dust of decimals are alike: 0.70 and 0.10 are 0.80", () => {
    expect(0.7 + 0.1).toBeLessThan(0.8);
    expect(counts(8, box(8, 0.8), box(7, 0.7), box(1, 0.1))).toEqual([1, 0, 0]);
  });
});

test("a million pieces are boxed, one more is refused", () => {
  expect(boxesFor(1_000_000, [{ name: "1000", size: 1000, price: undefined }])[0]?.boxes).toBe(1000);
});

test("the working of a vent screen has the edges that it is for", () => {
  const symbols = (edges: ScreenedEdges) => {
    const tape = new Tape();
    screenRunFt({ wall: level(8, 4), openings: [] }, edges, tape);
    return tape.steps.map((s) => s.symbol);
  };
  expect([symbols("top"), symbols("bottom"), symbols("both")]).toEqual([["L_u"], ["L_d"], ["L_d", "L_u"]]);
  expect(symbols("foot and top")).toEqual(["L_d", "L_u"]);
});

test("a vent screen runs along the foot and the top of all walls", () => {
  const walls = [10, 20].map((ft) => ({ wall: level(ft, 8), openings: [] }));
  expect(ventScreen(walls, "foot and top", 10, 0)).toMatchObject({ quantity: 60, packs: 6 });
});

test("a wall a hundredth of a foot high at its low end is the lowest", () => {
  const shed = (heightFt: number): Wall => ({ ...level(8, heightFt), top: "shed" });
  expect(() => checkWall(shed(0.01))).not.toThrow();
  expect(() => checkWall(shed(0.0099))).toThrow(/right end of w/);
});

describe("lengths", () => {
  test("what just fits a short rest starts no new length", () => {
    expect(cutInTurn([9.5, 0.5], 10)).toBe(1);
    expect(cutInTurn([9.5, 0.51], 10)).toBe(2);
  });

  test("a rest under a foot holds a piece just as long", () => {
    expect(cutLongestFirst([9.5, 0.5], 10)).toBe(1);
    expect(cutLongestFirst([9.5, 0.51], 10)).toBe(2);
  });

  test("the longest come first, in whatever order they are listed", () => {
    // 6 and 4 make a length of 10, twice; as listed the two short ones would share one and leave the long ones alone.
    expect(cutLongestFirst([4, 4, 6, 6], 10)).toBe(2);
    expect(cutLongestFirst([6, 4, 4, 6], 10)).toBe(2);
  });

  test("the room for rounding grows with the number of packs", () => {
    expect(wholePacks(1e6 * (1 + 1e-10), 1)).toBe(1e6);
    expect(wholePacks(1e6 * (1 + 1e-8), 1)).toBe(1e6 + 1);
    expect(wholePacks(1e-3, 1)).toBe(1);
  });

  test("an order of tape names its sides where it is not for all", () => {
    const item = (sides: "all" | "sill" | "jambs and head") => flashingTape([], sides, 50, 0.5, 0).item;
    expect([item("all"), item("sill"), item("jambs and head")]).toEqual([
      "flashing tape",
      "flashing tape, sill",
      "flashing tape, jambs and head",
    ]);
  });

  test("no tape fits any roll", () => {
    expect(flashingTape([], "all", 0.5, 0.1, 0).packs).toBe(0);
  });

  test("nine rests of 0.4 ft come from one strip of 4 ft", () => {
    const rules = { spacingFt: 4, stripFt: 4, extraPerEnd: 0, extraPerJamb: 0 };
    expect(furring([{ wall: level(32, 4.4), openings: [] }], rules, 0).packs).toBe(9 + 1);
  });

  test("a rest under a foot takes its share of a strip; a wall's pieces add up in its working", () => {
    // Two pieces of 4.5 ft from strips of 4 ft: a whole one each, and both rests of half a foot from a third.
    const tape = new Tape();
    const rules = { spacingFt: 4, stripFt: 4, extraPerEnd: 0, extraPerJamb: 0 };
    expect(furring([{ wall: level(4, 4.5), openings: [] }], rules, 0, tape).packs).toBe(3);
    expect(tape.steps.find((s) => s.symbol === "L_w")?.value).toBe(9);
    // Five of 3.2 ft take a strip each, five of 0.9 ft two more; their length alone would be six strips.
    const walls = [level(16, 3.2), level(16, 0.9)].map((wall) => ({ wall, openings: [] }));
    expect(furring(walls, rules, 0).packs).toBe(7);
  });
});

test("boards: of pieces with as much area the longer one is cut first", () => {
  // 8 x 1 off the board leaves 8 x 3; 4 x 2 off that leaves 4 x 3 whole for 2.6 x 3. The other way round 4 x 2 and 8 x 1 are left.
  const pieces = [
    { a: 4, b: 2 },
    { a: 8, b: 1 },
    { a: 2.6, b: 3 },
  ];
  expect(boardsForPieces(pieces, 8, 4)).toBe(1);
  expect(boardsForPieces([...pieces].reverse(), 8, 4)).toBe(1);
});

test("boards: the larger piece is cut first, in whatever order they are listed", () => {
  // 8 x 3 leaves 8 x 1 for 1 x 4 laid over; 1 x 4 first leaves nothing 8 ft long.
  const pieces = [
    { a: 8, b: 3 },
    { a: 1, b: 4 },
  ];
  expect(boardsForPieces(pieces, 8, 4)).toBe(1);
  expect(boardsForPieces([...pieces].reverse(), 8, 4)).toBe(1);
});

test("boards: an offcut of half a foot serves", () => {
  const count = (...pieces: (readonly [a: number, b: number])[]) =>
    boardsForPieces(
      pieces.map(([a, b]) => ({ a, b })),
      8,
      4,
    );
  expect(count([7.5, 4], [0.5, 4])).toBe(1);
  expect(count([8, 3.5], [8, 0.5])).toBe(1);
  expect(count([8, 3.5], [8, 0.51])).toBe(2);
});

const MEMBRANE = {
  rollWidthFt: 9,
  rollLengthFt: 100,
  sideLapFt: 0.5,
  endLapFt: 0.5,
  cornerReturnFt: 0,
  openingReturnFt: 0,
};

test("membrane: a run of one foot takes a roll, none takes none", () => {
  expect(rolls([{ wall: level(1, 8), openings: [] }], MEMBRANE, 0).packs).toBe(1);
  expect(rolls([], MEMBRANE, 0)).toMatchObject({ packs: 0, quantity: 0 });
});

test("membrane: one course covers a wall as high as the roll is wide, a second one begins just above", () => {
  const courses = (heightFt: number) => rollCourses({ wall: level(20, heightFt), openings: [] }, MEMBRANE).length;
  expect([courses(9), courses(9.01)]).toEqual([1, 2]);
});

test("screws: a box that none is taken of is no line", () => {
  const boxes = [100, 1000].map((size) => ({ name: `${size}`, size, price: undefined }));
  const row = { name: "edge", lengthFt: 99, spacingIn: 12, rows: 1, count: 1 };
  expect(screws([row], 0, boxes, 0).map((l) => [l.pack, l.packs, l.quantity])).toEqual([["100", 1, 100]]);
});

describe("layers of boards", () => {
  const openings = [{ name: "W", leftFt: 3, sillFt: 2, widthFt: 4, heightFt: 3, count: 1 }];

  test("every other layer lies alike, the second by half a row and a quarter of a board beside the first", () => {
    const layer = (n: number) => boardPieces(level(20, 10), openings, 8, 4, n);
    expect(layer(2)).toEqual(layer(0));
    expect(layer(3)).toEqual(layer(1));
    expect([layer(0)[0], layer(1)[0]]).toEqual([
      { x0: 0, y0: 0, x1: 8, y1: 4 },
      { x0: 0, y0: 0, x1: 2, y1: 2 },
    ]);
  });

  test("the pictures name their layer", () => {
    const tape = new Tape();
    boards(
      [{ wall: level(20, 8), openings: [] }],
      { lengthFt: 8, widthFt: 4, thicknessesIn: [3, 2], perBundle: 1 },
      0,
      tape,
    );
    // 20 x 8 ft: two whole boards and half a one in each of two rows; 2, 8, 8 and 2 ft in rows of 2, 4 and 2 ft, staggered.
    expect(tape.pictures.map((p) => p.alt.split(",")[0])).toEqual(
      ["first layer of boards", "second layer of boards"].map((t) => expect.stringContaining(t)),
    );
  });
});

describe("lining", () => {
  const sheet = { lengthFt: 8, widthFt: 4 };

  test("marks run from the largest part to the smallest, wherever they stand", () => {
    // A door at 1 ft leaves a strip of 1 x 8 ft before it, then whole sheets from 8 ft on, 1 ft between them and the door.
    const door = { name: "D", leftFt: 1, sillFt: 0, widthFt: 6, heightFt: 8, count: 1 };
    const parts = lining([{ wall: level(16, 8), openings: [door] }], sheet);
    expect(parts.map((p) => [p.mark.split(" ").at(-1), p.lengthIn, p.widthIn, p.count])).toEqual([
      ["1", 96, 48, 2],
      ["2", 96, 12, 2],
    ]);
  });

  test("of parts with the same area the one whose length comes later as a text is first, always", () => {
    // 2 ft over the whole sheet: 24 x 48 in; a strip of 12 x 96 in at the end.
    const parts = lining(
      [
        { wall: level(5, 8), openings: [] },
        { wall: level(4, 10), openings: [] },
      ],
      sheet,
    );
    expect(parts.map((p) => [p.lengthIn, p.widthIn])).toEqual([
      [96, 48],
      [96, 12],
      [96, 48],
      [24, 48],
    ]);
  });

  test("3000 sheets are worked out, a few more are not", () => {
    const wall = (lengthFt: number) => [{ wall: level(lengthFt, 100), openings: [] }];
    expect(lining(wall(960), sheet)[0]).toMatchObject({ lengthIn: 96, widthIn: 48, count: 2880 });
    expect(() => lining(wall(961), sheet)).toThrow("up to 3000");
  });
});

test("a level wall has four corners, a gable five", () => {
  expect(outlineFt(level(8, 4))).toHaveLength(4);
  expect(outlineFt({ ...level(8, 4), riseFt: 2 })[3]).toEqual([4, 6]);
});
