import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { nestSheets } from "../../../src/core/cutting/index.ts";
import { type Box, cutPlan } from "../../../src/core/cutting/sheets/plan/cuts.ts";
import { faults } from "./verify.ts";

const box = (x: number, y: number, w: number, h: number): Box => ({ x, y, w, h });

describe("the order of the saw", () => {
  test("a part that is the whole sheet needs no cut", () => {
    const plan = cutPlan([box(0, 0, 10, 6)], 10, 6);
    expect(plan).toEqual({ lines: [], freed: [{ box: 0, cut: 0, stage: 0 }], rests: [], stages: 0, turns: 0 });
  });

  test("one part in a corner: the first cut leaves the larger piece whole", () => {
    const plan = cutPlan([box(0, 0, 4, 5)], 10, 6);
    expect(plan.lines).toEqual([
      { direction: "across", at: 4, from: 0, to: 6, stage: 1 },
      { direction: "along", at: 5, from: 0, to: 4, stage: 2 },
    ]);
    expect(plan.freed).toEqual([{ box: 0, cut: 2, stage: 2 }]);
    expect(plan.rests).toEqual([expect.objectContaining(box(4, 0, 6, 6)), expect.objectContaining(box(0, 5, 4, 1))]);
    expect([plan.stages, plan.turns]).toEqual([0, 1]);
  });

  test("one part that lies lower than wide: the first cut runs along", () => {
    const plan = cutPlan([box(0, 0, 9, 2)], 10, 6);
    expect(plan.lines.map((l) => [l.direction, l.at])).toEqual([
      ["along", 2],
      ["across", 9],
    ]);
  });

  test("a part away from the corner is cut free on all sides", () => {
    const plan = cutPlan([box(2, 1, 3, 3)], 10, 6);
    expect(plan.lines).toHaveLength(4);
    expect(plan.rests.reduce((sum, r) => sum + r.w * r.h, 0)).toBe(60 - 9);
  });

  test("strips side by side: all first cuts, then strip by strip, each part by the cut at its far side", () => {
    const plan = cutPlan([box(0, 0, 5, 3), box(0, 3, 5, 3), box(5, 0, 5, 2), box(5, 2, 5, 4)], 10, 6);
    expect(plan.lines).toEqual([
      { direction: "across", at: 5, from: 0, to: 6, stage: 1 },
      { direction: "along", at: 3, from: 0, to: 5, stage: 2 },
      { direction: "along", at: 2, from: 5, to: 10, stage: 2 },
    ]);
    expect(plan.freed).toEqual([
      { box: 0, cut: 2, stage: 2 },
      { box: 1, cut: 2, stage: 2 },
      { box: 2, cut: 3, stage: 2 },
      { box: 3, cut: 3, stage: 2 },
    ]);
    expect([plan.stages, plan.turns, plan.rests]).toEqual([2, 2, []]);
  });

  test("with equal leftovers the direction with fewer turns is taken", () => {
    // three strips along, the middle one of two parts: across is not possible at all
    const plan = cutPlan([box(0, 0, 10, 2), box(0, 2, 4, 2), box(4, 2, 6, 2), box(0, 4, 10, 2)], 10, 6);
    expect(plan.lines.map((l) => l.direction)).toEqual(["along", "along", "across"]);
    expect([plan.stages, plan.turns]).toEqual([2, 1]);
  });

  test("the limit of stages comes before the leftover", () => {
    // a wide part below two pieces, one of them cut again
    const boxes = [box(0, 0, 10, 3), box(0, 3, 6, 3), box(6, 3, 2, 2)];
    expect(cutPlan(boxes, 10, 6, 2).stages).toBeLessThanOrEqual(2);
    expect(cutPlan(boxes, 10, 6).rests[0]).toMatchObject({ w: 2, h: 3 });
  });
});

test("a limit of stages holds, and costs sheets at most", () => {
  const stock = [{ id: "s", lengthIn: 96, widthIn: 48, cost: 1, quantity: null }];
  const part = fc.tuple(
    fc.integer({ min: 8, max: 90 }),
    fc.integer({ min: 6, max: 46 }),
    fc.integer({ min: 1, max: 3 }),
  );
  fc.assert(
    fc.property(fc.array(part, { minLength: 1, maxLength: 7 }), fc.boolean(), (rows, turns) => {
      const parts = rows.map(([lengthIn, widthIn, quantity], i) => ({
        id: `p${i}`,
        lengthIn,
        widthIn,
        quantity,
        turns,
      }));
      const counts = ([undefined, 3, 2] as const).map((stages) => {
        const options = {
          kerfIn: 0.125,
          trimIn: 0,
          goal: "sheets" as const,
          effort: 0.01,
          ...(stages === undefined ? {} : { stages }),
        };
        const n = nestSheets(parts, stock, options);
        expect(faults(n, parts, stock, options)).toEqual([]);
        for (const s of n.sheets) {
          const boxes = s.placements.map((p) => box(p.xIn * 64, p.yIn * 64, p.lengthIn * 64 + 8, p.widthIn * 64 + 8));
          expect(cutPlan(boxes, 96 * 64 + 8, 48 * 64 + 8, stages).stages).toBeLessThanOrEqual(stages ?? 99);
          // cut off: parts and leftovers make up the sheet but for the kerfs
          const area = [...s.placements, ...s.rests].reduce((sum, r) => sum + r.lengthIn * r.widthIn, 0);
          expect(area).toBeLessThanOrEqual(96 * 48);
        }
        return n;
      });
      for (const n of counts) expect(n.bound).toBeLessThanOrEqual(Math.min(...counts.map((c) => c.count)));
    }),
    { numRuns: 20 },
  );
});
