import { describe, expect, test } from "vitest";
import { Tape } from "../../../src/core/kit/tape.ts";
import { beadCoverageFt } from "../../../src/core/takeoff/bead.ts";
import { boards, boardsForPieces } from "../../../src/core/takeoff/boards.ts";
import { bucks } from "../../../src/core/takeoff/bucks.ts";
import { concreteYd3 } from "../../../src/core/takeoff/concrete.ts";
import { flashingTape } from "../../../src/core/takeoff/flashing-tape.ts";
import { furring, furringPieces } from "../../../src/core/takeoff/furring.ts";
import { cutInTurn, cutLongestFirst } from "../../../src/core/takeoff/order.ts";
import { wholePacks } from "../../../src/core/takeoff/packs.ts";
import { type RollRules, rollCourses, rolls } from "../../../src/core/takeoff/rolls.ts";
import { screenRunFt, ventScreen } from "../../../src/core/takeoff/vent-screen.ts";
import { boardPieces } from "../../../src/core/takeoff/wall/board-pieces.ts";
import { exceeds, isBetween, wholeAbove, wholeBelow } from "../../../src/core/takeoff/wall/close.ts";
import { wallColumns } from "../../../src/core/takeoff/wall/columns.ts";
import { cornersOnWall, elevation } from "../../../src/core/takeoff/wall/elevation.ts";
import { lining } from "../../../src/core/takeoff/wall/lining.ts";
import { type PlacedOpening, silledOpenings } from "../../../src/core/takeoff/wall/opening.ts";
import { checkOpenings, type Wall } from "../../../src/core/takeoff/wall/wall.ts";

function wall(lengthFt: number, heightFt: number, riseFt = 0): Wall {
  return { name: "w", lengthFt, heightFt, riseFt, top: "gable" };
}
function opening(over: Partial<PlacedOpening> = {}): PlacedOpening {
  return { name: "W1", widthFt: 3, heightFt: 4, count: 1, sillFt: 3, leftFt: 2, ...over };
}

test("lengths that differ by rounding alone are alike", () => {
  // Sums of decimals: 0.1 + 0.2 lies above 0.3, and 0.7 + 0.1 below 0.8.
  expect([exceeds(0.1 + 0.2, 0.3), exceeds(0.8, 0.7 + 0.1), exceeds(0.3001, 0.3)]).toEqual([false, false, true]);
  expect([isBetween(1, 1, 2), isBetween(1.5, 1, 2), isBetween(2 + 1e-9, 1, 2.1), isBetween(2, 1, 2)]).toEqual([
    false,
    true,
    true,
    false,
  ]);
  expect([2.9999999, 2.99, 3].map(wholeBelow)).toEqual([3, 2, 3]);
  expect([3.0000001, 3.01, 3].map(wholeAbove)).toEqual([3, 4, 3]);
});

describe("boards row by row", () => {
  const rowsOf = (layer: number) => {
    const pieces = boardPieces(wall(20, 14), [], 8, 4, layer);
    const bottoms = [...new Set(pieces.map((p) => p.y0))];
    return bottoms.map((y) => ({
      y,
      high: pieces.find((p) => p.y0 === y)?.y1,
      ends: pieces.filter((p) => p.y0 === y).map((p) => p.x1),
    }));
  };
  test("whole rows in the first layer, a half row at the foot of the second; every other row lies alike", () => {
    const [even, shifted] = [
      [8, 16, 20],
      [4, 12, 20],
    ];
    expect(rowsOf(0)).toEqual([
      { y: 0, high: 4, ends: even },
      { y: 4, high: 8, ends: shifted },
      { y: 8, high: 12, ends: even },
      { y: 12, high: 14, ends: shifted },
    ]);
    const [quarter, three] = [
      [2, 10, 18, 20],
      [6, 14, 20],
    ];
    expect(rowsOf(1)).toEqual([
      { y: 0, high: 2, ends: quarter },
      { y: 2, high: 6, ends: three },
      { y: 6, high: 10, ends: quarter },
      { y: 10, high: 14, ends: three },
    ]);
  });
});

test("the working of a lining adds up the rectangles of its parts", () => {
  const tape = new Tape();
  // 12 x 8 ft of wall, less a window of 4 x 4 ft that takes a sheet's whole width.
  const parts = lining(
    [{ wall: wall(12, 8), openings: [opening({ widthFt: 4, leftFt: 4 })] }],
    { lengthFt: 8, widthFt: 4 },
    tape,
  );
  expect(tape.steps.find((s) => s.symbol === "A")?.value).toBe(80);
  expect(tape.steps.find((s) => s.symbol === "n")?.value).toBe(parts.reduce((sum, p) => sum + p.count, 0));
});

describe("openings", () => {
  test("a low one on the foot of the wall gets a caution, the same one above the foot none", () => {
    const tape = new Tape();
    silledOpenings([opening({ name: "low", sillFt: 0 }), opening({ name: "high", sillFt: 3 })], tape);
    expect(tape.cautions.join()).toMatch(/low, 4 ft high/);
    expect(tape.cautions.join()).not.toMatch(/high, 4 ft/);
  });

  test("half a foot above the foot of the wall is a window, with a sill", () => {
    expect(bucks([opening({ sillFt: 0.5 })], 1.5).map((p) => p.name)).toEqual(["W1 head and sill", "W1 jamb"]);
    expect(bucks([opening({ sillFt: 1e-9 })], 1.5).map((p) => p.name)).toEqual(["W1 head", "W1 jamb"]);
  });

  test("a refusal names what is known of the place, and the top of the wall where it has one", () => {
    const refusal = (o: PlacedOpening | Omit<PlacedOpening, "sillFt" | "leftFt">, w: Wall) => () =>
      checkOpenings({ wall: w, openings: [{ sillFt: undefined, leftFt: undefined, ...o }] });
    expect(refusal(opening({ widthFt: 11 }), wall(10, 8))).toThrow(
      /^The opening W1 of 11 x 4 ft \(sill at 3 ft, left edge at 2 ft\) does not fit in w: w is 10 ft long and 8 ft high\./,
    );
    const loose = { name: "W1", widthFt: 11, heightFt: 4, count: 1 };
    expect(refusal(loose, wall(10, 8))).toThrow(/^The opening W1 of 11 x 4 ft does not fit in w/);
    expect(refusal(loose, wall(10, 8, 1))).toThrow(/8 ft high with a gable of 1 ft on top\./);
  });

  test("a column that an opening's right edge reaches goes", () => {
    const rules = { spacingFt: 8, layout: "module", columnFt: 0.375, jambFt: 0 } as const;
    const at = wallColumns("w", 24, [opening({ leftFt: 6.82, widthFt: 9 })], rules).map((c) => c.xFt);
    expect(at).toEqual([0, 6.82 - 0.1875, 15.82 + 0.1875, 24]);
  });

  test("one opening is told in the singular", () => {
    expect(elevation("boards", wall(10, 8), [opening()], { alt: "x" }).alt).toBe("Elevation of w: x, 1 opening.");
    expect(elevation("boards", wall(10, 8), [], { alt: "x" }).alt).toBe("Elevation of w: x, 0 openings.");
  });
});

describe("rolls", () => {
  const rules: RollRules = {
    rollWidthFt: 4,
    rollLengthFt: 50,
    sideLapFt: 0.5,
    endLapFt: 0.5,
    cornerReturnFt: 0,
    openingReturnFt: 0.5,
  };
  test("an opening as wide as its returns saves nothing; one on several courses saves in each that it takes whole", () => {
    const tall = opening({ sillFt: 0, heightFt: 7.5, widthFt: 0.8 });
    expect(rollCourses({ wall: wall(20, 7.5), openings: [tall] }, rules).map((c) => [c.runFt, c.savedFt])).toEqual([
      [20, 0],
      [20, 0],
    ]);
    const wide = { ...tall, widthFt: 5, count: 2 };
    expect(rollCourses({ wall: wall(20, 7.5), openings: [wide] }, rules).map((c) => [c.runFt, c.savedFt])).toEqual([
      [12, 8],
      [12, 8],
    ]);
  });

  test("the last course ends at the top; a lap alone needs no further course", () => {
    const courses = (heightFt: number) => rollCourses({ wall: wall(20, heightFt), openings: [] }, rules);
    expect(courses(7.5).map((c) => [c.bottomFt, c.topFt])).toEqual([
      [0, 4],
      [3.5, 7.5],
    ]);
    expect(courses(7.6)).toHaveLength(3);
    expect(courses(0.4)).toHaveLength(1);
  });

  test("laps of half a roll are the most", () => {
    const run = (over: Partial<RollRules>) => () =>
      rolls([{ wall: wall(20, 7), openings: [] }], { ...rules, ...over }, 0);
    for (const over of [{ sideLapFt: 2 }, { endLapFt: 25 }]) expect(run(over)).not.toThrow();
    for (const over of [{ sideLapFt: 2.01 }, { endLapFt: 25.1 }]) expect(run(over)).toThrow(/half/);
  });

  test("what openings save is a step of its own, where there is any", () => {
    const saved = (openings: readonly PlacedOpening[]) => {
      const tape = new Tape();
      const line = rolls([{ wall: wall(20, 7.5), openings }], rules, 0, tape);
      return [tape.steps.find((s) => s.symbol === "L_o")?.value, line.packs, line.quantity];
    };
    expect(saved([])).toEqual([undefined, 1, 40]);
    expect(saved([opening({ sillFt: 0, heightFt: 7.5, widthFt: 5 })])).toEqual([8, 1, 32]);
    expect(rolls([{ wall: wall(25, 7.5), openings: [] }], rules, 0).packs).toBe(1);
    expect(rolls([{ wall: wall(25.1, 7.5), openings: [] }], rules, 0)).toMatchObject({ packs: 2, quantity: 50.7 });
  });
});

describe("cutting lengths by hand", () => {
  test("in turn: what no longer fits starts the next", () => {
    expect(cutInTurn([6, 5, 4, 5, 5], 10)).toBe(3);
    expect(cutInTurn([0.1, 0.2, 0.7, 9, 1], 1e1)).toBe(2);
    expect(cutInTurn([], 10)).toBe(0);
  });
  test("longest first: each from the first that holds it", () => {
    expect(cutLongestFirst([2, 6, 3, 7, 2], 10)).toBe(2);
    expect(cutLongestFirst([2, 6, 3, 7, 2.1], 10)).toBe(3);
    expect(cutLongestFirst([5, 5, 5], 10)).toBe(2);
  });
  test("whole packs, none for nothing", () => {
    expect([wholePacks(0, 5), wholePacks(5, 5), wholePacks(5.01, 5), wholePacks(0.3, 0.1)]).toEqual([0, 1, 2, 3]);
  });
});

describe("furring", () => {
  const rules = { spacingFt: 2, stripFt: 8, extraPerEnd: 1, extraPerJamb: 1 };
  test("places of the strips: on the spacing, at both ends, beside the opening, cut where it stands", () => {
    const pieces = furringPieces({ wall: wall(6, 8), openings: [opening({ leftFt: 1, widthFt: 2 })] }, rules);
    expect(pieces.map((p) => [p.xFt, p.bottomFt, p.topFt])).toEqual([
      [0, 0, 8],
      [2, 0, 3],
      [2, 7, 8],
      [4, 0, 8],
      [6, 0, 8],
      [0, 0, 8],
      [6, 0, 8],
      [1, 0, 8],
      [3, 0, 8],
    ]);
  });
  test("strips of unknown place stand at the left end, as high as the wall with its gable", () => {
    const loose = { ...opening({ count: 2 }), leftFt: undefined };
    const added = furringPieces({ wall: wall(6, 8, 3), openings: [loose] }, { ...rules, extraPerEnd: 0 }).slice(4);
    expect(added).toEqual(Array.from({ length: 4 }, () => ({ xFt: 0, bottomFt: 0, topFt: 11 })));
  });
  test("5000 strips on a wall are the most; an opening of known place takes no assumption", () => {
    const tape = new Tape();
    furring([{ wall: wall(6, 8), openings: [opening({ leftFt: 1, widthFt: 2 })] }], rules, 0, tape);
    expect(tape.assumptions).toEqual([]);
    expect(() => furringPieces({ wall: wall(5, 8), openings: [] }, { ...rules, spacingFt: 0.001 })).not.toThrow();
  });
});

test("tape: a piece just as long as a roll is one, and the steps add up by opening", () => {
  const tape = new Tape();
  const line = flashingTape([opening({ count: 2 })], "all", 5, 0.5, 0.1, tape);
  // Sill 4, jambs 5 and 5, head 4, twice: 36 ft; no two pieces share a roll of 5 ft.
  expect(line).toMatchObject({ packs: 8, quantity: 36 * 1.1 });
  expect(tape.steps.map((s) => s.value)).toEqual([18, 36, 8, 8]);
});

test("the screen of a wall whose foot is all door", () => {
  const door = opening({ sillFt: 0, widthFt: 10, leftFt: 0 });
  expect(screenRunFt({ wall: wall(10, 8), openings: [door] }, "both")).toBe(20);
  expect(screenRunFt({ wall: wall(10, 8), openings: [door] }, "bottom")).toBe(10);
});

test("a wide round pier is asked for its width, one of 5 ft is not", () => {
  const caution = (lengthFt: number, widthFt: number | undefined) => {
    const tape = new Tape();
    concreteYd3([{ name: "P", lengthFt, widthFt, depthFt: 1, count: 1 }], 0, 0.25, tape);
    return tape.cautions.length;
  };
  expect([caution(5, undefined), caution(5.1, undefined), caution(20, 10)]).toEqual([0, 1, 0]);
});

describe("boards cut again", () => {
  const count = (...pieces: (readonly [number, number])[]) =>
    boardsForPieces(
      pieces.map(([a, b]) => ({ a, b })),
      8,
      4,
    );
  test("the larger rest stays whole: beside the piece, or above it", () => {
    // 6 x 2.5 leaves 2 x 4 beside (8) or 8 x 1.5 above (12); 5 x 3 leaves 3 x 4 beside (12) or 8 x 1 above (8).
    expect(count([6, 2.5], [8, 1.5])).toBe(1);
    expect(count([5, 3], [3, 4])).toBe(1);
    expect(count([6, 2.5], [2, 4])).toBe(2);
    expect(count([5, 3], [8, 1])).toBe(2);
  });
  test("a piece that fits both ways lies along, one that fits turned is turned", () => {
    expect(count([8, 3], [5, 1], [4, 1])).toBe(2);
    expect(count([8, 3], [5, 1], [3, 1])).toBe(1);
    expect(count([6, 4], [4, 2])).toBe(1);
    expect(count([4, 8])).toBe(1);
  });

  test("one layer is one layout and one picture; a bundle is a step only where there are bundles", () => {
    const made = (thicknessesIn: readonly number[], perBundle: number) => {
      const tape = new Tape();
      const lines = boards(
        [{ wall: wall(16, 8), openings: [] }],
        { lengthFt: 8, widthFt: 4, thicknessesIn, perBundle },
        0.1,
        tape,
      );
      return { lines, pictures: tape.pictures.length, steps: tape.steps.map((s) => s.symbol) };
    };
    const one = made([2], 1);
    expect(one.lines).toEqual([
      { item: "board 4 x 8 ft x 2 in", quantity: 5, unit: "boards", packs: 5, pack: "board" },
    ]);
    expect([one.pictures, one.steps]).toEqual([1, ["n_1", "A", "N"]]);
    const bundles = made([2, 1], 3);
    expect(bundles.pictures).toBe(2);
    expect(bundles.steps).toContain("B");
    expect(bundles.lines.map((l) => [l.item, l.packs, l.pack])).toEqual([
      ["board 4 x 8 ft x 2 in", 2, "bundle of 3"],
      ["board 4 x 8 ft x 1 in", 2, "bundle of 3"],
    ]);
    // Three layers: the third lies as the first, and joins it where it is as thick.
    expect(made([2, 1, 2], 1).lines.map((l) => l.quantity)).toEqual([9, 5]);
  });
});

test("a piece under a gable is drawn with the peak and the rakes", () => {
  expect(cornersOnWall(wall(32, 9, 8), { x0: 8, y0: 9, x1: 24, y1: 15 })).toEqual([
    [8, 9],
    [24, 9],
    [24, 13],
    [20, 15],
    [16, 15],
    [12, 15],
    [8, 13],
  ]);
  expect(cornersOnWall(wall(32, 9, 8), { x0: 0, y0: 9, x1: 16, y1: 13 })).toEqual([
    [0, 9],
    [16, 9],
    [16, 13],
    [8, 13],
    [0, 9],
  ]);
  expect(cornersOnWall({ ...wall(32, 9, 8), top: "shed" }, { x0: 0, y0: 9, x1: 32, y1: 13 })).toEqual([
    [0, 9],
    [32, 9],
    [32, 13],
    [16, 13],
    [0, 9],
  ]);
});

test("courses of membrane are drawn from end to end, with their runs", () => {
  const tape = new Tape();
  const rules = {
    rollWidthFt: 5,
    rollLengthFt: 100,
    sideLapFt: 1,
    endLapFt: 0.5,
    cornerReturnFt: 0.25,
    openingReturnFt: 0,
  };
  rolls([{ wall: wall(32, 5, 8), openings: [] }], rules, 0, tape);
  expect(tape.pictures[0]).toMatchObject({
    pieces: [
      {
        name: "1",
        from: `32'-6"`,
        corners: [
          [0, 0],
          [32, 0],
          [32, 5],
          [16, 5],
          [0, 5],
        ],
      },
      {
        name: "2",
        from: `32'-6"`,
        corners: [
          [0, 4],
          [32, 4],
          [32, 5],
          [24, 9],
          [16, 9],
          [8, 9],
          [0, 5],
        ],
      },
      { name: "3", from: `20'-6"` },
    ],
  });
});

test("orders of nothing and of little", () => {
  expect(ventScreen([], "both", 10, 0).packs).toBe(0);
  // 4 in high: 1 in is left for the jambs between two members of 1-1/2 in.
  expect(bucks([opening({ heightFt: 4 / 12 })], 1.5)[1]?.lengthIn).toBeCloseTo(1, 9);
  const plain = { spacingFt: 2, stripFt: 8, extraPerEnd: 0, extraPerJamb: 0 };
  expect(furring([{ wall: wall(6, 8), openings: [] }], plain, 0.1)).toMatchObject({ quantity: 32 * 1.1, packs: 5 });
  const tape = new Tape();
  beadCoverageFt(10.1, { kind: "joint", widthIn: 0.375, depthIn: 0.25 }, tape);
  beadCoverageFt(10.1, { kind: "round", diameterIn: 0.5 }, tape);
  expect(tape.steps.filter((s) => s.symbol === "A").map((s) => s.expression)).toEqual([
    "0.375 x 0.25",
    "pi x 0.5^2 / 4",
  ]);
});
