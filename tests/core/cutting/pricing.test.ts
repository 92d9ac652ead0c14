/**
 * Unlimited guillotine patterns: gcut1-13 of J. Beasley, J. Oper. Res. Soc. 36 (1985) 297-306; cgcut1-3 of N. Christofides,
 * C. Whitlock, Oper. Res. 25 (1977) 30-44. The oriented gcut optima are the published ones; the others were found by a
 * separate exact program when the data were collected.
 */
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { Effort } from "../../../src/core/cutting/effort.ts";
import { GuillotinePricer } from "../../../src/core/cutting/guillotine-pricing.ts";
import { sheetModel } from "../../../src/core/cutting/sheet-model.ts";

interface Instance {
  id: string;
  W: number;
  H: number;
  items: [number, number, number, number][];
  optUnconstrainedGuillotine: { oriented: number; rotation: number | null };
}

const { instances } = JSON.parse(
  readFileSync(new URL("../../bench/data/gcut_cgcut.json", import.meta.url), "utf8"),
) as { instances: Instance[] };

describe("the most valuable pattern of parts without limit of number", () => {
  for (const { id, W, H, items, optUnconstrainedGuillotine: best } of instances) {
    const ways = [
      { way: "oriented", turns: false, optimum: best.oriented },
      { way: "turning", turns: true, optimum: best.rotation },
    ];
    test.each(ways.filter((w) => w.optimum !== null))(`${id}, $way`, ({ turns, optimum }) => {
      const parts = items.map(([lengthIn, widthIn, quantity], k) => ({
        id: `p${k}`,
        lengthIn,
        widthIn,
        quantity,
        turns,
      }));
      const model = sheetModel(parts, [{ id: "s", lengthIn: W, widthIn: H, cost: 1, quantity: null }], {
        kerfIn: 0,
        trimIn: 0,
        goal: "sheets",
      });
      const values = Float64Array.from(model.types, (t) => Math.max(...t.members.map((m) => items[m.part]![3])));
      const priced = new GuillotinePricer(model).price(values, 0, 0, 0, [], new Effort(1e12));
      expect(priced.most).toBe(optimum);
      for (const { types, counts } of priced.columns) {
        const worth = types.reduce((sum, t, k) => sum + counts[k]! * values[t]!, 0);
        expect(worth).toBeLessThanOrEqual(optimum!);
      }
      const { types, counts } = priced.columns[0]!;
      expect(types.reduce((sum, t, k) => sum + counts[k]! * values[t]!, 0)).toBe(optimum);
    });
  }
});
