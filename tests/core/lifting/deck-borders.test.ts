import { describe, expect, test } from "vitest";
import { Random } from "../../../src/core/kit/random.ts";
import { type Deck, fits, type HauledPiece, stacked } from "../../../src/core/lifting/deck.ts";
import { fewestLoads, leastLoads } from "../../../src/core/lifting/fewest-loads.ts";
import { type HauledRow, truckLoads } from "../../../src/core/lifting/truck.ts";

const piece = (weightLb: number, lengthFt: number, widthFt: number, heightFt: number, row = 0): HauledPiece => ({
  piece: `row ${row}`,
  weightLb,
  lengthFt,
  widthFt,
  heightFt,
  turn: 1,
  row,
  rank: row,
});
const places = (pieces: readonly HauledPiece[], deck: Deck) =>
  stacked(pieces, deck)?.loaded.map((l) => [l.frontFt, l.sideFt, l.bottomFt]);

describe("a measure fits up to a billionth over its limit", () => {
  test("just on the border, and just beyond it", () => {
    expect(fits(8, 8)).toBe(true);
    expect(fits(8 * (1 + 1e-9), 8)).toBe(true);
    expect(fits(8 * (1 + 1.05e-9), 8)).toBe(false);
    expect(fits(0.5 * (1 + 1.05e-9), 0.5)).toBe(false);
  });

  const deck: Deck = { payloadLb: 46_000, lengthFt: 48, widthFt: 8.5, stackFt: 8.5 };
  const row = (change: Partial<HauledRow>): HauledRow => ({
    piece: "a",
    weightLb: 1000,
    lengthFt: 8,
    widthFt: 4,
    thicknessIn: 12,
    count: 1,
    turn: undefined,
    ...change,
  });
  const over = 1 + 8e-10;

  test.each([
    ["weight", { weightLb: 46_000 * over }],
    ["length", { lengthFt: 48 * over }],
    ["width", { widthFt: 8.5 * over }],
    ["height", { thicknessIn: 102 * over }],
  ])(
    "a piece of the truck's own %s in another unit, off in its last digits, goes on (it once hung the cell)",
    (_what, change) => {
      expect(truckLoads([row(change)], deck)).toHaveLength(1);
    },
  );

  // 0.1 + 0.2 is 0.30000000000000004, and three of 0.1 sum to as much.
  const tenths: Deck = { payloadLb: 0.3, lengthFt: 0.3, widthFt: 0.3, stackFt: 0.3 };
  test.each([
    ["weight", piece(0.1, 0.1, 0.1, 0.1)],
    ["length", piece(0.01, 0.1, 0.3, 0.3)],
    ["width", piece(0.01, 0.3, 0.1, 0.3)],
    ["height", piece(0.01, 0.3, 0.3, 0.1)],
  ])("three tenths of the deck fill it: %s", (_what, one) => {
    expect(places([one, one, one], tenths)).toHaveLength(3);
    expect(places([one, one, one, { ...one, weightLb: 0.1 }], tenths)).toBeUndefined();
  });

  test("a lane takes a piece as wide and as long as what is left of it", () => {
    const narrow: Deck = { payloadLb: 100, lengthFt: 0.3, widthFt: 0.6, stackFt: 1 };
    const short = piece(1, 0.1, 0.3, 1, 1);
    expect(places([piece(1, 0.3, 0.3, 1), short, short, short], narrow)).toEqual([
      [0, 0, 0],
      [0, 0.3, 0],
      [0.1, 0.3, 0],
      [0.2, 0.3, 0],
    ]);
    expect(places([piece(1, 0.3, 0.3, 1), short, { ...short, widthFt: 0.31 }], narrow)).toBeUndefined();
  });

  test("a piece of the same size and weight lies on a soft one", () => {
    const soft = piece(0.3, 0.3, 0.1, 0.1);
    expect(places([soft, { ...soft, weightLb: 0.1 + 0.2 }], { ...tenths, payloadLb: 1 })).toHaveLength(2);
  });
});

test("a piece is soft by its weight for its volume, not for its size", () => {
  const small: Deck = { payloadLb: 5000, lengthFt: 6, widthFt: 4, stackFt: 6 };
  // 700 lb in 6 x 4 x 2 = 48 ft3 are 14.6 pcf, 29.2 psf; 720 lb are 15 pcf.
  expect(places([piece(700, 6, 4, 2), piece(701, 6, 4, 1, 1)], small)).toBeUndefined();
  expect(places([piece(720, 6, 4, 2), piece(721, 6, 4, 1, 1)], small)).toHaveLength(2);
});

test("the smallest top is the one of least area, in whichever order they came", () => {
  const wide: Deck = { payloadLb: 9000, lengthFt: 14, widthFt: 4, stackFt: 3 };
  const long = (row: number) => piece(1000, 8, 2, 1, row);
  const square = (row: number) => piece(2000, 6, 4, 1, row);
  const small = piece(10, 3, 2, 1, 2);
  expect(places([square(0), long(1), small], wide)?.[2]).toEqual([6, 0, 1]);
  expect(places([long(0), square(1), small], wide)?.[2]).toEqual([0, 0, 1]);
});

test("the first piece of a load uses its own length of the deck, under a foot too", () => {
  const short = { piece: "a", weightLb: 10, lengthFt: 0.5, widthFt: 1, thicknessIn: 12, count: 1, turn: undefined };
  const rows = truckLoads([short], { payloadLb: 100, lengthFt: 48, widthFt: 8, stackFt: 8 });
  expect(rows[0]?.usedLengthFt).toBe(0.5);
});

test("loads that the weight asks for: as many payloads as it holds, dust apart", () => {
  const deck: Deck = { payloadLb: 0.3, lengthFt: 48, widthFt: 8, stackFt: 8 };
  const tenth = piece(0.1, 1, 1, 1);
  expect(leastLoads([tenth, tenth, tenth], deck)).toBe(1);
  expect(leastLoads([tenth, tenth, tenth, { ...tenth, weightLb: 0.001 }], deck)).toBe(2);
  expect(leastLoads([{ ...tenth, weightLb: 0.3 }], deck)).toBe(1);
});

describe("the search for fewest loads", () => {
  const deck: Deck = { payloadLb: 10_000, lengthFt: 48, widthFt: 8.5, stackFt: 8.5 };

  /** Orders that are looked at after the first one: each draws a number for each piece. */
  function roundsOf(pieces: readonly HauledPiece[]) {
    const { unit } = Random.prototype;
    let drawn = 0;
    Random.prototype.unit = function counted() {
      drawn++;
      return unit.call(this);
    };
    try {
      const loads = fewestLoads(pieces, deck);
      return { rounds: drawn / pieces.length, loads };
    } finally {
      Random.prototype.unit = unit;
    }
  }

  test("rows go on by weight for their size, then by area, then by length", () => {
    // Both 5 psf, so as the table has them, the wider on the narrower, which it may not lie on; by area the wider first: one load.
    const byArea = roundsOf([piece(1600, 40, 8, 4, 0), piece(1700, 40, 8.5, 4, 1)]);
    expect([byArea.loads.length, byArea.rounds]).toEqual([1, 1]);
    // 22 psf and 112 ft2 first leave no room behind for 40 ft; the longer first leaves room beside it.
    const byLength = roundsOf([piece(300, 40, 1, 2, 0), piece(2500, 28, 4, 8.5, 1)]);
    expect([byLength.loads.length, byLength.rounds]).toEqual([1, 2]);
    expect(roundsOf([piece(1000, 8, 4, 1, 0)])).toMatchObject({ rounds: 0 });
  });

  test("its effort is bounded, so that a cell has its answer in time: 200 orders, or 2500 pieces in all", () => {
    // The weight asks for one load, the size of each piece for one of its own.
    const bulky = (count: number) => Array.from({ length: count }, (_, row) => piece(1, 48, 8.5, 8.5, row));
    expect(roundsOf(bulky(3))).toMatchObject({ rounds: 199 });
    expect(roundsOf(bulky(100))).toMatchObject({ rounds: 24 });
  });

  test("where no order does better, the first one stays: the heaviest goes first", () => {
    const weights = [400, 900, 100, 700, 200];
    const { loads } = roundsOf(weights.map((weightLb, row) => piece(weightLb, 48, 8.5, 8.5, row)));
    expect(loads.map((load) => load[0]?.of.weightLb)).toEqual([900, 700, 400, 200, 100]);
  });
});
