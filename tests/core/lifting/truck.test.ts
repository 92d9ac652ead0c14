import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { Tape } from "../../../src/core/kit/tape.ts";
import { axleGroups } from "../../../src/core/lifting/axles.ts";
import { axleGroupLimitLb, bridgeFormulaLb } from "../../../src/core/lifting/bridge-formula.ts";
import { type Deck, type HauledPiece, loadingOrder, Stacking, stacked } from "../../../src/core/lifting/deck.ts";
import type { LoadPlanPicture } from "../../../src/core/lifting/pictures.ts";
import { type HauledRow, truckLoads } from "../../../src/core/lifting/truck.ts";

const deck: Deck = { payloadLb: 46_000, lengthFt: 48, widthFt: 8.5, stackFt: 8.5 };
const row = (
  piece: string,
  weightLb: number,
  lengthFt: number,
  widthFt: number,
  thicknessIn: number,
  count = 1,
  turn?: number,
): HauledRow => ({
  piece,
  weightLb,
  lengthFt,
  widthFt,
  thicknessIn,
  count,
  turn,
});

describe("axle groups", () => {
  test("limits: single, tandem, formula, two tandems, gross", () => {
    expect(axleGroupLimitLb(0, 1)).toBe(20_000);
    expect(axleGroupLimitLb(8, 2)).toBe(34_000);
    expect(axleGroupLimitLb(8.1, 2)).toBe(38_000);
    expect(axleGroupLimitLb(30, 2)).toBe(40_000);
    expect(axleGroupLimitLb(35.9, 4)).toBe(66_000);
    expect(axleGroupLimitLb(36, 4)).toBe(68_000);
    expect(axleGroupLimitLb(40, 4)).toBe(68_500);
    expect(axleGroupLimitLb(60, 5)).toBe(80_000);
    expect(bridgeFormulaLb(60, 5)).toBe(85_500);
  });

  test("the formula's table by hand from the law: feet apart, then 2 to 6 axles", () => {
    const rows = [
      [4, 34, 39, 44.5, 50.5, 56.5],
      [9, 39, 43, 48, 53.5, 59.5],
      [12, 42, 45, 50, 55.5, 61],
      [16, 46, 48, 52.5, 58, 63.5],
      [20, 50, 51, 55.5, 60.5, 66],
      [24, 54, 54, 58, 63, 68.5],
      [28, 58, 57, 60.5, 65.5, 71],
      [32, 62, 60, 63.5, 68, 73],
      [36, 66, 63, 66, 70.5, 75.5],
      [44, 74, 69, 71.5, 75.5, 80.5],
      [51, 81, 74.5, 76, 80, 84.5],
    ];
    for (const [apart = 0, ...thousands] of rows) {
      expect(thousands.map((_, i) => bridgeFormulaLb(apart, i + 2))).toEqual(thousands.map((t) => t * 1000));
    }
  });

  test("more axles or more distance never allow less", () => {
    fc.assert(
      fc.property(fc.double({ min: 4, max: 60, noNaN: true }), fc.integer({ min: 3, max: 7 }), (apart, axles) => {
        expect(bridgeFormulaLb(apart + 2, axles)).toBeGreaterThanOrEqual(bridgeFormulaLb(apart, axles));
        expect(axleGroupLimitLb(apart, axles)).toBeLessThanOrEqual(80_000);
      }),
    );
  });

  test("a load at the middle of the span, by hand", () => {
    // Kingpin 3 ft, trailer tandem 43 ft from the front: at 23 ft each carries half; 1/17 of the kingpin's half goes to the steer axle.
    const groups = axleGroups(34_000, 23, 0, 48);
    expect(groups.map((g) => g.weightLb)).toEqual(
      [11_500, 29_000, 27_500, 56_500, 68_000].map((v) => expect.closeTo(v, 6)),
    );
    expect(groups.map((g) => g.apartFt)).toEqual([0, 4, 4, 45, 60]);
    expect(groups.map((g) => g.axles)).toEqual([1, 2, 2, 4, 5]);
  });

  test("a load with free deck behind it is shifted until both tandems carry the same, as far as it goes", () => {
    const [, drive, trailer] = axleGroups(34_000, 10, 30, 48);
    expect(drive?.weightLb).toBeCloseTo(trailer?.weightLb ?? 0, 6);
    const [, stuck] = axleGroups(34_000, 10, 5, 48);
    expect(stuck?.weightLb).toBeCloseTo(13_000 + (34_000 * (1 - 12 / 40) * 16) / 17, 6);
    const [, , back] = axleGroups(34_000, 40, 5, 48);
    expect(back?.weightLb).toBeCloseTo(10_500 + 34_000 * (37 / 40), 6);
  });

  test("a group over its limit is said with the load", () => {
    const tape = new Tape();
    truckLoads([row("steel", 45_000, 8, 8, 12)], { ...deck, lengthFt: 10 }, tape);
    expect(tape.cautions.join()).toContain("Load 1 puts");
    const light = new Tape();
    truckLoads([row("steel", 20_000, 8, 8, 12)], deck, light);
    expect(light.cautions).toEqual([]);
    expect(light.steps.filter((s) => s.symbol === "G")).toHaveLength(5);
  });
});

describe("a deck", () => {
  const piece = (
    weightLb: number,
    lengthFt: number,
    widthFt: number,
    heightFt: number,
    turn = 1,
    rank = 0,
  ): HauledPiece => ({
    piece: "p",
    weightLb,
    lengthFt,
    widthFt,
    heightFt,
    turn,
    row: rank,
    rank,
  });
  const small: Deck = { payloadLb: 1000, lengthFt: 10, widthFt: 4, stackFt: 3 };
  const places = (pieces: readonly HauledPiece[], on = small) =>
    stacked(pieces, on)?.loaded.map((l) => [l.frontFt, l.sideFt, l.bottomFt]);

  test("side by side, behind in a lane, on top, in that order of room", () => {
    // Two wide ones fill a stretch of 6 ft; a short one goes in the lane of what is left of the deck.
    const wide = piece(100, 6, 2, 1);
    expect(places([wide, wide])).toEqual([
      [0, 0, 0],
      [0, 0, 1],
    ]);
    const thin = piece(10, 3, 2, 3);
    expect(places([piece(100, 6, 2, 3), thin, thin, thin])).toEqual([
      [0, 0, 0],
      [0, 2, 0],
      [3, 2, 0],
      [6, 0, 0],
    ]);
  });

  test("several pieces lie on one", () => {
    const base = piece(900, 10, 4, 1);
    const box = piece(10, 5, 2, 2, 1, 1);
    expect(places([base, box, box, box, box])).toEqual([
      [0, 0, 0],
      [0, 0, 1],
      [0, 2, 1],
      [5, 0, 1],
      [5, 2, 1],
    ]);
    expect(places([base, box, box, box, box, box])).toBeUndefined();
  });

  test("on the smallest top that takes it, before the deck", () => {
    const large = piece(400, 6, 4, 1);
    const middle = piece(200, 4, 4, 1, 1, 1);
    expect(places([large, middle, piece(10, 3, 2, 1, 1, 2)])).toEqual([
      [0, 0, 0],
      [0, 0, 1],
      [0, 0, 2],
    ]);
  });

  test("the smallest top is the one of least area", () => {
    const square = piece(2000, 6, 4, 1);
    const long = piece(1000, 8, 2, 1, 1, 1);
    const wide: Deck = { payloadLb: 9000, lengthFt: 14, widthFt: 4, stackFt: 3 };
    expect(places([square, long, piece(10, 3, 2, 1, 1, 2)], wide)?.[2]).toEqual([6, 0, 1]);
  });

  test("not on what is lighter for its size, shorter or narrower, nor over the height, nor over the payload", () => {
    // 359 lb in 24 ft3 are just under 15 pcf, 360 lb are not.
    const light = piece(359, 6, 4, 1);
    expect(places([piece(360, 6, 4, 1), piece(600, 6, 4, 1, 1, 1)])).toEqual([
      [0, 0, 0],
      [0, 0, 1],
    ]);
    expect(places([light, piece(360, 6, 4, 1, 1, 1)])).toBeUndefined();
    expect(places([light, piece(359, 6, 4, 1, 1, 1)])).toEqual([
      [0, 0, 0],
      [0, 0, 1],
    ]);
    expect(places([light, piece(10, 6.5, 4, 1, 1, 1)])).toBeUndefined();
    expect(places([piece(40, 6, 3, 1), piece(10, 6, 3.5, 1, 1, 1)])).toBeUndefined();
    expect(places([light, piece(40, 6, 4, 2, 1, 1)])).toHaveLength(2);
    expect(places([light, piece(40, 6, 4, 2.01, 1, 1)])).toBeUndefined();
    expect(places([piece(1000, 1, 1, 1)])).toHaveLength(1);
    expect(places([piece(600, 1, 1, 1), piece(401, 1, 1, 1, 1, 1)])).toBeUndefined();
  });

  test("a piece just as large as the deck and the stack fits", () => {
    expect(places([piece(1, 10, 4, 3)])).toEqual([[0, 0, 0]]);
    for (const p of [piece(1, 10.1, 4, 3), piece(1, 10, 4.1, 3), piece(1, 10, 4, 3.1)])
      expect(places([p])).toBeUndefined();
  });

  test("later turns go on first, then by rank", () => {
    expect(
      [piece(1, 1, 1, 1, 1, 2), piece(1, 1, 1, 1, 2, 9), piece(1, 1, 1, 1, 1, 1)]
        .sort(loadingOrder)
        .map((p) => [p.turn, p.rank]),
    ).toEqual([
      [2, 9],
      [1, 1],
      [1, 2],
    ]);
    const stacking = new Stacking(small);
    expect(stacking.add(piece(999, 1, 1, 1))).toBe(true);
    expect(stacking.add(piece(2, 1, 1, 1))).toBe(false);
    expect(stacking.loaded).toHaveLength(1);
  });
});

describe("loads", () => {
  test("the order of erection decides the load, last in first out within one", () => {
    const rows = [
      row("roof", 20_000, 40, 8, 24, 1, 3),
      row("wall", 15_000, 40, 8, 24, 2, 1),
      row("floor", 10_000, 40, 8, 24, 1, 2),
    ];
    const loads = truckLoads(rows, deck);
    expect(loads.map((l) => [l.load, l.order, l.piece])).toEqual(
      [
        [1, 1, "floor"],
        [1, 2, "wall"],
        [1, 3, "wall"],
        [2, 1, "roof"],
      ].map(([a, b, c]) => [a, b, c]),
    );
  });

  test("a later piece does not ride ahead of one that waits, though it would fit", () => {
    const rows = [row("a", 30_000, 40, 8, 12, 1, 1), row("b", 20_000, 40, 8, 12, 1, 2), row("c", 1000, 4, 4, 12, 1, 3)];
    expect(truckLoads(rows, deck).map((l) => [l.load, l.piece])).toEqual(
      [
        [1, "a"],
        [2, "c"],
        [2, "b"],
      ]
        .sort((x, y) => Number(x[0]) - Number(y[0]))
        .map((x) => x),
    );
  });

  test("pieces without a turn come last, which is said; without any the best fit is said", () => {
    const some = new Tape();
    const loads = truckLoads([row("late", 30_000, 40, 8, 12), row("first", 30_000, 40, 8, 12, 1, 1)], deck, some);
    expect(loads.map((l) => l.piece)).toEqual(["first", "late"]);
    expect(some.assumptions.join()).toContain("without a turn");
    const none = new Tape();
    truckLoads([row("late", 30_000, 40, 8, 12)], deck, none);
    expect(none.assumptions.join()).toContain("No order of erection");
    const all = new Tape();
    truckLoads([row("late", 30_000, 40, 8, 12, 1, 1)], deck, all);
    expect(all.assumptions.filter((a) => /turn|order of erection/.test(a))).toEqual([]);
  });

  test("the columns: deck in use and top of the pile once the piece is on", () => {
    const loads = truckLoads(
      [row("a", 4000, 20, 8, 24, 1, 2), row("b", 1000, 10, 8, 12, 1, 1), row("c", 900, 18, 8.5, 6, 1, 1)],
      deck,
    );
    expect(loads).toEqual([
      { load: 1, order: 1, piece: "a", weightLb: 4000, usedLengthFt: 20, heightFt: 2 },
      { load: 1, order: 2, piece: "b", weightLb: 1000, usedLengthFt: 20, heightFt: 3 },
      { load: 1, order: 3, piece: "c", weightLb: 900, usedLengthFt: 38, heightFt: 0.5 },
    ]);
  });

  test("the demo's pieces go on two trucks, as the weight asks", () => {
    const rows = [
      row("panel pack of 8", 4608, 32, 4, 12, 4),
      row("columns and plates", 2400, 20, 2, 24),
      row("rafters", 2900, 20, 3.8, 12, 2),
      row("ridge beam part", 630, 24, 0.5, 18, 2),
      row("mineral wool pallet", 896, 8, 4, 48, 7),
      row("polyisocyanurate pallet", 256, 8, 4, 48, 12),
      row("plywood pack", 2544, 8, 4, 28),
      row("windows and doors", 1100, 8, 4, 84, 2),
      row("rolls and screws", 1500, 4, 4, 48),
      row("siding and furring", 4400, 16, 4, 36),
    ];
    const tape = new Tape();
    const loads = truckLoads(rows, deck, tape);
    expect(Math.max(...loads.map((l) => l.load))).toBe(2);
    expect(tape.steps.slice(0, 3).map((s) => s.value)).toEqual([47_880, 2, 2]);
    const plan = tape.pictures[0] as LoadPlanPicture;
    expect(plan.loads.flatMap((l) => l.pieces)).toHaveLength(33);
    expect(plan.loads.map((l) => l.weightLb).reduce((a, b) => a + b)).toBe(47_880);
    expect(plan.alt).toContain("2 truck loads");
    expect(plan.loads[1]?.pieces[0]?.order).toBe(1);
  });

  test("what no truck takes is refused with its measure", () => {
    expect(() => truckLoads([row("a", 46_001, 8, 4, 12)], deck)).toThrow("a weighs: 46001 lb");
    expect(() => truckLoads([row("a", 1, 48.1, 4, 12)], deck)).toThrow("a is long: 48.1 ft");
    expect(() => truckLoads([row("a", 1, 8, 8.6, 12)], deck)).toThrow("a is wide: 8.6 ft");
    expect(() => truckLoads([row("a", 1, 8, 4, 103)], deck)).toThrow("a is high: 8.58333 ft");
    expect(truckLoads([row("a", 46_000, 48, 8.5, 102)], deck)).toHaveLength(1);
  });

  test("the axle groups are those of the load's weight, its center and the deck that is left behind it", () => {
    const tape = new Tape();
    // 10,000 lb with their middle at 20 ft and 4000 lb on top of them with theirs at 10 ft; 8 ft of deck are free
    truckLoads([row("long", 10_000, 40, 8, 24), row("short", 4000, 20, 8, 12)], deck, tape);
    const expected = axleGroups(14_000, (10_000 * 20 + 4000 * 10) / 14_000, 8, 48).map((g) => g.weightLb);
    expect(tape.steps.filter((s) => s.symbol === "G").map((s) => s.value)).toEqual(
      expected.map((lb) => expect.closeTo(lb, 6)),
    );
  });

  test("heavy rows go on first, whatever the order of the table: 6 + 4 and 5 + 5, not 4 + 5, 5 and 6", () => {
    const small: Deck = { payloadLb: 10_000, lengthFt: 48, widthFt: 8.5, stackFt: 8.5 };
    const rows = [row("four", 4000, 8, 4, 12), row("five", 5000, 8, 4, 12, 2), row("six", 6000, 8, 4, 12)];
    for (const table of [rows, [...rows].reverse()]) {
      expect(truckLoads(table, small).map((l) => [l.load, l.piece])).toEqual([
        [1, "six"],
        [1, "four"],
        [2, "five"],
        [2, "five"],
      ]);
    }
  });

  test("at most 500 pieces at once", () => {
    expect(truckLoads([row("a", 1, 1, 1, 12, 500)], deck)).toHaveLength(500);
    expect(() => truckLoads([row("a", 1, 1, 1, 12, 500), row("b", 1, 1, 1, 12)], deck)).toThrow("The pieces are 501");
  });

  test("a search that does better than the first order finds fewer loads", () => {
    // By weight for its size the short heavy block goes on first, and the long piece finds no room behind it.
    const rows = [row("block", 9000, 6, 4, 102), row("long", 1000, 45, 4, 102)];
    expect(truckLoads(rows, deck).map((l) => [l.load, l.piece])).toEqual([
      [1, "long"],
      [1, "block"],
    ]);
  });

  const anyRow = fc
    .tuple(
      fc.integer({ min: 100, max: 9000 }),
      fc.integer({ min: 2, max: 40 }),
      fc.integer({ min: 1, max: 8 }),
      fc.integer({ min: 4, max: 90 }),
      fc.integer({ min: 1, max: 5 }),
      fc.option(fc.integer({ min: 1, max: 4 }), { nil: undefined }),
    )
    .map(([w, l, b, t, n, turn]) => row("", w, l, b, t, n, turn));

  test("parts in are parts out, no load is over a limit, and each piece comes off before what stands later", () => {
    fc.assert(
      fc.property(fc.array(anyRow, { minLength: 1, maxLength: 8 }), (unnamed) => {
        const rows = unnamed.map((r, i) => ({ ...r, piece: `piece ${i}` }));
        const tape = new Tape();
        const loads = truckLoads(rows, deck, tape);
        const { loads: plan } = tape.pictures[0] as LoadPlanPicture;
        const counted = (list: readonly { piece: string }[], name: string) =>
          list.filter((p) => p.piece === name).length;
        for (const { piece } of rows) {
          const wanted = rows.filter((r) => r.piece === piece).reduce((n, r) => n + r.count, 0);
          expect(counted(loads, piece)).toBe(wanted);
        }
        for (const load of plan) {
          const rowsOf = loads.filter((l) => l.load === load.load);
          expect(rowsOf.reduce((sum, l) => sum + l.weightLb, 0)).toBeLessThanOrEqual(deck.payloadLb);
          for (const p of load.pieces) {
            expect(p.frontFt + p.lengthFt).toBeLessThanOrEqual(deck.lengthFt + 1e-6);
            expect(p.sideFt + p.widthFt).toBeLessThanOrEqual(deck.widthFt + 1e-6);
            expect(rowsOf[p.order - 1]?.heightFt).toBeLessThanOrEqual(deck.stackFt + 1e-6);
          }
          const heights = rowsOf.map((l) => l.heightFt);
          load.pieces.forEach((p, i) => {
            load.pieces.slice(i + 1).forEach((q, k) => {
              const over = (a: number, b: number, c: number, d: number) => a < d - 1e-6 && c < b - 1e-6;
              const inPlan =
                over(p.frontFt, p.frontFt + p.lengthFt, q.frontFt, q.frontFt + q.lengthFt) &&
                over(p.sideFt, p.sideFt + p.widthFt, q.sideFt, q.sideFt + q.widthFt);
              // What is loaded later and stands over the same spot lies above.
              if (inPlan) expect(q.bottomFt).toBeGreaterThanOrEqual((heights[i] ?? 0) - 1e-6);
              expect(k).toBeGreaterThanOrEqual(0);
            });
          });
        }
        const turnOf = (name: string) => rows.find((r) => r.piece === name)?.turn ?? Number.MAX_SAFE_INTEGER;
        const turns = plan.map((l) => l.pieces.map((p) => turnOf(p.piece)));
        for (const t of turns) expect(t).toEqual([...t].sort((a, b) => b - a));
        for (let i = 1; i < turns.length; i++)
          expect(Math.max(...(turns[i - 1] ?? []))).toBeLessThanOrEqual(Math.min(...(turns[i] ?? [])));
      }),
      { numRuns: 60 },
    );
  });
});
