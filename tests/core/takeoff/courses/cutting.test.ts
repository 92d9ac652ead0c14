import { describe, expect, test } from "vitest";
import { cutCourses } from "../../../../src/core/takeoff/courses/cutting.ts";
import type { Size } from "../../../../src/core/takeoff/courses/layout.ts";

const PANEL: Size = { length: 100, height: 40 };
const size = (length: number, height: number): Size => ({ length, height });
const rest = (source: number, x: number, y: number, length: number, height: number) => ({
  source,
  x,
  y,
  length,
  height,
});

function cut(pieces: readonly Size[], kerf: number, stock: readonly Size[] = []) {
  const plan = cutCourses(pieces, stock, PANEL, kerf);
  return { panels: plan.panels, places: plan.places.map((p) => [p.source, p.x, p.y]), rests: plan.rests };
}

describe("what one cut leaves", () => {
  test("a piece of the panel's height leaves what is beside it, after the saw", () => {
    expect(cut([size(60, 40)], 1)).toEqual({ panels: 1, places: [[0, 0, 0]], rests: [rest(0, 61, 0, 39, 40)] });
    expect(cut([size(60, 40)], 0).rests).toEqual([rest(0, 60, 0, 40, 40)]);
  });

  test("a piece of the panel's length leaves what is above it, and a whole panel nothing", () => {
    expect(cut([size(100, 10)], 1).rests).toEqual([rest(0, 0, 11, 100, 29)]);
    expect(cut([size(100, 10)], 0).rests).toEqual([rest(0, 0, 10, 100, 30)]);
    expect(cut([size(100, 40)], 0).rests).toEqual([]);
  });

  test("the larger rest stays whole; of two alike the one beside", () => {
    // 39 x 40 = 1560 beside, 100 x 14 = 1400 above; then 100 x 19 = 1900 above; without a cut 50 x 40 = 100 x 20.
    expect(cut([size(60, 25)], 1).rests).toEqual([rest(0, 61, 0, 39, 40), rest(0, 0, 26, 60, 14)]);
    expect(cut([size(60, 20)], 1).rests).toEqual([rest(0, 0, 21, 100, 19), rest(0, 61, 0, 39, 20)]);
    expect(cut([size(50, 20)], 0).rests).toEqual([rest(0, 50, 0, 50, 40), rest(0, 0, 20, 50, 20)]);
  });
});

describe("which rest a piece is cut from", () => {
  test("tallest and longest first, whatever the order given; each from the tightest rest", () => {
    // 90 x 40 takes panel 0. 60 x 20 takes panel 1 and leaves 100 x 20 above and 40 x 20 beside; 30 x 20 goes beside.
    const plan = cut([size(30, 20), size(90, 40), size(60, 20)], 0);
    expect([plan.panels, plan.places]).toEqual([
      2,
      [
        [1, 60, 0],
        [0, 0, 0],
        [1, 0, 0],
      ],
    ]);
    expect(plan.rests).toHaveLength(3);
    expect(plan.rests).toContainEqual(rest(0, 90, 0, 10, 40));
    expect(plan.rests).toContainEqual(rest(1, 0, 20, 100, 20));
    expect(plan.rests).toContainEqual(rest(1, 90, 0, 10, 20));
  });

  test("a rest just as long and as high as the piece holds it; one shorter or lower does not", () => {
    expect(cut([size(60, 40), size(40, 40)], 0).panels).toBe(1);
    expect(cut([size(60, 40), size(41, 40)], 0).panels).toBe(2);
    expect(cut([size(100, 20), size(100, 20)], 0).panels).toBe(1);
    expect(cut([size(100, 20), size(100, 20)], 1).panels).toBe(2);
  });

  test("the saw takes its cut between pieces", () => {
    expect(cut([size(50, 40), size(49, 40)], 1)).toEqual({
      panels: 1,
      places: [
        [0, 0, 0],
        [0, 51, 0],
      ],
      rests: [],
    });
    expect(cut([size(50, 40), size(50, 40)], 1).panels).toBe(2);
  });

  test("what is on hand goes before what a panel leaves, though that is tighter; of it the tightest, then the first", () => {
    const pieces = [size(60, 40), size(35, 40)];
    const sources = (...stock: readonly Size[]) => cut(pieces, 0, stock).places.map((p) => p[0]);
    expect(sources(size(59, 40))).toEqual([0, -1]);
    expect(sources(size(59, 40), size(50, 40))).toEqual([0, -2]);
    expect(sources(size(50, 40), size(50, 40))).toEqual([0, -1]);
    expect(sources(size(59, 39))).toEqual([0, 0]);
    // 100 x 10 is longer than 40 x 40, and less.
    expect(cut([size(30, 8)], 0, [size(40, 40), size(100, 10)]).places).toEqual([[-2, 0, 0]]);
    expect(cut([], 0, [size(7, 5)])).toEqual({ panels: 0, places: [], rests: [rest(-1, 0, 0, 7, 5)] });
  });
});
