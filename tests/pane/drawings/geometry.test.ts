import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { outerBorders } from "../../../src/pane/drawings/parts/borders.ts";
import { inches, rough, short, signed } from "../../../src/pane/drawings/parts/figures.ts";
import { boxCorners, hatch } from "../../../src/pane/drawings/parts/hatch.ts";
import { numbered, numberRuns, repeats } from "../../../src/pane/drawings/parts/repeats.ts";
import { spanAt, widestFree } from "../../../src/pane/drawings/parts/room.ts";
import { linear, spread, ticks } from "../../../src/pane/drawings/parts/scale.ts";
import { bands, wetRuns } from "../../../src/pane/drawings/parts/section-places.ts";
import { clipped, stretchesOf } from "../../../src/pane/drawings/parts/stretches.ts";
import { fitText, textWidth, wrapText } from "../../../src/pane/drawings/parts/text.ts";

const finite = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe("scales", () => {
  test("run straight, and a range of no extent goes to the middle", () => {
    const y = linear([0, 10], [200, 100]);
    expect([y(0), y(5), y(10), y(20)]).toEqual([200, 150, 100, 0]);
    expect(linear([3, 3], [0, 50])(3)).toBe(25);
  });

  test("ticks are round figures that cover the range", () => {
    expect(ticks(0, 70, 6)).toEqual([0, 20, 40, 60, 80]);
    expect(ticks(-0.92, 1.82, 5)).toEqual([-1, 0, 1, 2]);
    expect(ticks(0, 0.3, 3)).toEqual([0, 0.1, 0.2, 0.3]);
    expect(ticks(68, 68, 5).length).toBeGreaterThan(1);
    fc.assert(
      fc.property(finite(-1e4, 1e4), finite(0, 1e4), fc.integer({ min: 1, max: 10 }), (min, span, count) => {
        const marks = ticks(min, min + span, count);
        // A range may reach past the last tick by a billionth of a step, which nobody sees.
        const [first = Number.NaN, second = Number.NaN] = marks;
        const dust = 1e-8 * (second - first) + 1e-9;
        expect(first).toBeLessThanOrEqual(min + dust);
        expect(marks.at(-1)).toBeGreaterThanOrEqual(min + span - dust);
        expect(marks.every(Number.isFinite)).toBe(true);
        expect(marks.length).toBeLessThanOrEqual(count + 3);
      }),
    );
  });

  test("spread keeps order, gap and bounds where there is room, and spreads evenly where there is none", () => {
    expect(spread([10, 11, 50], 15, 0, 100)).toEqual([10, 25, 50]);
    expect(spread([95, 96, 97], 10, 0, 100)).toEqual([80, 90, 100]);
    expect(spread([1, 2, 3], 100, 0, 10)).toEqual([0, 5, 10]);
    expect(spread([], 5, 0, 10)).toEqual([]);
    fc.assert(
      fc.property(fc.array(finite(0, 300), { maxLength: 20 }), (places) => {
        const out = spread(
          [...places].sort((a, b) => a - b),
          15,
          0,
          300,
        );
        out.forEach((x, i) => {
          expect(x).toBeGreaterThanOrEqual(-1e-9);
          expect(x).toBeLessThanOrEqual(300 + 1e-9);
          if (i > 0) expect(x - (out[i - 1] ?? 0)).toBeGreaterThan(Math.min(15, 300 / (out.length - 1)) - 1e-6);
        });
      }),
    );
  });
});

describe("texts", () => {
  test("are cut off or broken between words to fit", () => {
    expect(fitText("window", 12, 200)).toBe("window");
    expect(fitText("window", 12, 40)).toMatch(/^w.*…$/);
    expect(fitText("window", 12, 3)).toBe("");
    expect(wrapText("", 12, 100)).toEqual([]);
    fc.assert(
      fc.property(fc.string({ maxLength: 80 }), finite(5, 300), fc.integer({ min: 1, max: 4 }), (text, width, most) => {
        const lines = wrapText(text, 12, width, most);
        expect(lines.length).toBeLessThanOrEqual(most);
        for (const line of lines) expect(textWidth(line, 12)).toBeLessThanOrEqual(width + 1e-9);
      }),
    );
  });

  test("figures are short", () => {
    expect([inches(47.25), inches(0.5), inches(96), inches(51.0625), inches(7.0866), inches(0)]).toEqual([
      "47 1/4",
      "1/2",
      "96",
      "51 1/16",
      "7.09",
      "0",
    ]);
    expect([signed(16), signed(-48.25), signed(-0.01)]).toEqual(["+16.0", "−48.3", "0.0"]);
    expect([short(-2.04), rough(1234.6), rough(0.0512), rough(0)]).toEqual(["−2", "1235", "0.0512", "0"]);
  });
});

describe("areas", () => {
  /** Ends of the lines of a path. */
  const ends = (path: string) =>
    [...path.matchAll(/[ML](\S+?) ([^ML]+)/g)].map(([, x, y]) => [Number(x), Number(y)] as const);

  test("hatching stays inside and leaves no corner out", () => {
    expect(hatch(boxCorners(0, 0, 10, 10), 5, "/")).toMatch(/^M/);
    fc.assert(
      fc.property(finite(0, 300), finite(0, 300), finite(1, 200), finite(1, 200), (x, y, width, height) => {
        for (const way of ["/", "\\", "x"] as const) {
          for (const [px, py] of ends(hatch(boxCorners(x, y, width, height), 5, way))) {
            expect(px).toBeGreaterThan(x - 0.02);
            expect(px).toBeLessThan(x + width + 0.02);
            expect(py).toBeGreaterThan(y - 0.02);
            expect(py).toBeLessThan(y + height + 0.02);
          }
        }
      }),
    );
    const triangle = [
      [0, 0],
      [20, 0],
      [0, 20],
    ] as const;
    for (const [x, y] of ends(hatch(triangle, 4, "\\"))) expect(x + y).toBeLessThanOrEqual(20.05);
  });

  test("borders leave out where two rectangles of an area meet", () => {
    const square = (x: number, y: number) => boxCorners(x, y, 1, 1);
    expect(outerBorders([square(0, 0)])).toHaveLength(4);
    const pair = outerBorders([square(0, 0), square(1, 0)]);
    expect(pair).toHaveLength(6);
    expect(pair.some(([a, b]) => a[0] === 1 && b[0] === 1)).toBe(false);
    // The longer side keeps what the shorter one does not cover.
    expect(outerBorders([boxCorners(0, 0, 1, 3), boxCorners(1, 1, 1, 1)])).toContainEqual([
      [1, 2],
      [1, 3],
    ]);
  });

  test("rooms for labels", () => {
    expect(spanAt(boxCorners(2, 0, 5, 10), 4)).toEqual([2, 7]);
    expect(spanAt(boxCorners(2, 0, 5, 10), 40)).toBeUndefined();
    expect(widestFree([0, 10], [])).toEqual([0, 10]);
    expect(
      widestFree(
        [0, 10],
        [
          [6, 7],
          [1, 2],
        ],
      ),
    ).toEqual([2, 6]);
    expect(widestFree([0, 10], [[-1, 12]])).toEqual([0, 0]);
  });

  test("long walls are cut at columns", () => {
    expect(stretchesOf(40, [0, 16, 40], 43)).toEqual([[0, 40]]);
    expect(stretchesOf(96, [0, 30, 32, 60, 66, 96], 43)).toEqual([
      [0, 32],
      [32, 66],
      [66, 96],
    ]);
    expect(stretchesOf(96, [0, 96], 43)).toEqual([[0, 96]]);
    expect(clipped(boxCorners(0, 0, 10, 4), [3, 20])).toEqual([
      [3, 0],
      [10, 0],
      [10, 4],
      [3, 4],
    ]);
    expect(clipped(boxCorners(0, 0, 10, 4), [12, 20])).toEqual([]);
  });
});

describe("layers of a section", () => {
  test("fill the width, thin ones at the least width", () => {
    const out = bands([0.5, 0, 6, 0.04], 100, 300, 5);
    expect(out[0]?.from).toBe(100);
    expect(out.at(-1)?.to).toBeCloseTo(300, 9);
    expect(out.map((b) => b.widened)).toEqual([false, true, false, true]);
    expect(bands([0, 0], 0, 100, 5).map((b) => b.to - b.from)).toEqual([5, 5]);
    fc.assert(
      fc.property(fc.array(finite(0, 20), { minLength: 1, maxLength: 30 }), (thickness) => {
        const all = bands(thickness, 0, 200, 5);
        for (const b of all) expect(b.to - b.from).toBeGreaterThanOrEqual(Math.min(5, 200 / thickness.length) - 1e-9);
        expect(all.at(-1)?.to).toBeLessThanOrEqual(200 + 1e-6);
      }),
    );
  });

  test("are wet from where the lines cross", () => {
    const face = (x: number, temperatureF: number, dewPointF: number, wet: "dry" | "water" | "ice") => ({
      x,
      temperatureF,
      dewPointF,
      wet,
    });
    expect(wetRuns([face(0, 60, 40, "dry"), face(100, 20, 40, "ice"), face(110, 19, 10, "dry")])).toEqual([
      { from: 50, to: 110 - (10 * 9) / 29, state: "ice" },
    ]);
    // One wet face where both lines meet still has a width.
    expect(wetRuns([face(0, 60, 40, "dry"), face(50, 35, 35, "water"), face(99, 30, 20, "dry")])).toEqual([
      { from: 46, to: 54, state: "water" },
    ]);
    expect(wetRuns([face(0, 60, 40, "dry")])).toEqual([]);
  });
});

test("what is alike is counted once", () => {
  expect(repeats(["a", "b", "a"], (s) => s)).toEqual([
    { item: "a", count: 2 },
    { item: "b", count: 1 },
  ]);
  expect(numberRuns([1, 3, 4, 5, 8, 9])).toBe("1, 3 to 5, 8, 9");
  expect(numbered("Sheet", "Sheets", [2])).toBe("Sheet 2");
  expect(numbered("Sheet", "Sheets", [1, 2, 3])).toBe("Sheets 1 to 3 (3 alike)");
});
