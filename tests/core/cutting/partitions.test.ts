import { describe, expect, test } from "vitest";
import { drawnPartition, partitions } from "../../../src/core/cutting/lengths/later/partitions.ts";
import { Random } from "../../../src/core/kit/random.ts";

describe("how often each pattern is cut", () => {
  const texts = (bars: ReadonlyMap<number, number>, patterns: number): string[] =>
    [...partitions(bars, patterns)].map((p) => p.map((t) => `${t.stock}:${t.times}`).join(" "));

  test("all ways, each once: partitions of a number into so many parts, of two stocks side by side", () => {
    // 10 as a sum of three whole numbers: 8 ways, of 20 into four: 64 (tables of partitions, from memory)
    expect(texts(new Map([[0, 10]]), 3)).toHaveLength(8);
    expect(new Set(texts(new Map([[0, 20]]), 4)).size).toBe(64);
    expect(
      texts(
        new Map([
          [0, 3],
          [2, 2],
        ]),
        3,
      ),
    ).toEqual(["0:3 2:1 2:1", "0:2 0:1 2:2"]);
    expect(texts(new Map([[0, 2]]), 3)).toEqual([]);
    expect(texts(new Map([[0, 2]]), 0)).toEqual([]);
  });

  test("one by chance has the same sums, and there is none where there are too many or too few patterns", () => {
    const bars = new Map([
      [1, 9],
      [4, 3],
    ]);
    const random = new Random(5);
    const all = new Set(texts(bars, 5));
    for (let n = 0; n < 40; n++) {
      const drawn = drawnPartition(bars, 5, random) ?? [];
      expect(all).toContain(drawn.map((t) => `${t.stock}:${t.times}`).join(" "));
    }
    expect(drawnPartition(bars, 1, random)).toBeUndefined();
    expect(drawnPartition(bars, 13, random)).toBeUndefined();
    expect(drawnPartition(bars, 12, random)).toHaveLength(12);
  });
});
