/** Parts and sheets: gcut1-13 of J. Beasley, J. Oper. Res. Soc. 36 (1985) 297-306, OR-Library. */
import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { Effort } from "../../src/core/cutting/engine/effort.ts";
import { type SheetModel, sheetModel } from "../../src/core/cutting/sheets/plan/model.ts";
import { GuillotinePricer } from "../../src/core/cutting/sheets/search/guillotine-pricing.ts";
import { rows } from "./rows.ts";

interface Instance {
  id: string;
  W: number;
  H: number;
  items: [number, number, number, number][];
}

const { instances } = JSON.parse(readFileSync(new URL("../bench/data/gcut_cgcut.json", import.meta.url), "utf8")) as {
  instances: Instance[];
};

type Size = readonly [w: number, h: number];

const model = (sizes: readonly Size[], w: number, h: number, turns: boolean): SheetModel =>
  sheetModel(
    sizes.map(([lengthIn, widthIn], k) => ({ id: `p${k}`, lengthIn, widthIn, quantity: 1, turns })),
    [{ id: "s", lengthIn: w, widthIn: h, cost: 1, quantity: null }],
    { kerfIn: 0, trimIn: 0, goal: "sheets" },
  );

/** The most that a pattern is worth, and what the patterns found are worth, the best one first. */
function priced(problem: SheetModel, values: Float64Array): { most: number; worth: number[] } {
  const { columns, most } = new GuillotinePricer(problem).price({
    values,
    stock: 0,
    threshold: 0,
    enough: 0,
    needs: problem.types.map((t) => t.need),
    effort: new Effort(1e12),
  });
  const worth = columns.map((c) => c.types.reduce((sum, t, k) => sum + c.counts[k]! * values[t]!, 0));
  return { most, worth };
}

describe("the most valuable pattern of parts without limit of number", () => {
  const cases = rows("guillotine-patterns.csv").flatMap((row) => [
    { id: row.id, way: "oriented", turns: false, optimum: Number(row.oriented) },
    { id: row.id, way: "turning", turns: true, optimum: Number(row.turning) },
  ]);
  test.each(cases)("$id, $way", ({ id, turns, optimum }) => {
    const { W, H, items } = instances.find((i) => i.id === id)!;
    const problem = model(
      items.map(([w, h]) => [w, h]),
      W,
      H,
      turns,
    );
    const values = Float64Array.from(problem.types, (t) => Math.max(...t.members.map((m) => items[m.part]![3])));
    const { most, worth } = priced(problem, values);
    expect(most).toBe(optimum);
    expect(worth[0]).toBe(optimum);
    expect(Math.max(...worth)).toBe(optimum);
  });
});

test("parts that turn on a square sheet are worth what they are as two parts, one for each way", () => {
  const part = fc.tuple(fc.integer({ min: 3, max: 30 }), fc.integer({ min: 3, max: 30 }));
  fc.assert(
    fc.property(fc.array(part, { minLength: 1, maxLength: 8 }), (sizes) => {
      const worth = (problem: SheetModel): number =>
        priced(
          problem,
          Float64Array.from(problem.types, (t) => t.w * t.h + ((t.w + t.h) % 7)),
        ).most;
      const both = sizes.flatMap(([w, h]): Size[] => [
        [w, h],
        [h, w],
      ]);
      expect(worth(model(sizes, 40, 40, true))).toBe(worth(model(both, 40, 40, false)));
    }),
    { numRuns: 60 },
  );
});
