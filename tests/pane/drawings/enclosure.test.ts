import { describe, expect, test } from "vitest";
import type { WallSectionPicture, WettingYearPicture } from "../../../src/core/enclosure/moisture/pictures.ts";
import { materialFill } from "../../../src/pane/drawings/parts/material-fill.ts";
import { wallSection } from "../../../src/pane/drawings/wall-section.ts";
import { wettingYear } from "../../../src/pane/drawings/wetting-year.ts";
import { working } from "../../core/enclosure/called.ts";
import { markup } from "./markup.ts";

const WALL = [
  ["drywall", 0.5, null, null, null],
  ["panel", 1.5, null, null, "air barrier"],
  ["wrb", null, null, null, null],
  ["mineral wool board", 6, null, null, null],
  ["rainscreen", 0.75, null, null, "ventilated cavity"],
  ["cedar siding", 0.75, null, null, null],
];
const section = () => working("DEW_PROFILE", WALL, 70, 40, 10).pictures[0] as WallSectionPicture;

describe("the section", () => {
  test("shows every layer by its material, the cavity and the siding too", () => {
    const { layers, faces } = section();
    expect(layers.map((l) => l.look)).toEqual(["gypsum", "wood", "sheet", "insulation", "air", "wood"]);
    expect(layers.map((l) => l.counted)).toEqual([true, true, true, true, false, false]);
    expect(faces).toHaveLength(5);
    expect(section().alt).toContain("rainscreen, cedar siding");
    const text = markup(wallSection(section(), 440));
    for (const n of [1, 2, 3, 4, 5, 6]) expect(text).toMatch(new RegExp(`>${n}</text>`));
    expect(text.match(/not counted/g)).toHaveLength(2);
    expect(text).toContain("ventilated cavity");
  });

  test("own layers are drawn by their R an inch", () => {
    const own = working(
      "DEW_PROFILE",
      [
        ["soft", 4, 16, "sd 1"],
        ["hard", 4, 1, "sd 1"],
        ["brick", 4],
        ["steel sheet", 0.1],
      ],
      70,
      40,
      10,
    );
    expect((own.pictures[0] as WallSectionPicture).layers.map((l) => l.look)).toEqual([
      "insulation",
      "other",
      "masonry",
      "metal",
    ]);
  });

  test("fills the margin between temperature and dew point, from face to face and back", () => {
    const text = markup(wallSection(section(), 440));
    const [, points = ""] = /<polygon class="dw-margin" points="([^"]+)"/.exec(text) ?? [];
    const corners = points.split(" ").map((p) => p.split(",").map(Number));
    expect(corners).toHaveLength(10);
    // The temperature lies above the dew point at each face: higher on the page.
    for (let i = 0; i < 5; i++) {
      const [above, below] = [corners[i], corners[9 - i]];
      expect(above?.[0]).toBe(below?.[0]);
      expect(above?.[1]).toBeLessThanOrEqual((below?.[1] ?? 0) + 0.01);
    }
  });
});

test("the year fills the room from what stands up to the limit", () => {
  const year = working("DEW_MONTHS", WALL, "Burlington VT", "class 2").pictures[0] as WettingYearPicture;
  const text = markup(wettingYear(year, 440));
  const [, points = ""] = /<polygon class="dw-margin" points="([^"]+)"/.exec(text) ?? [];
  expect(points.split(" ")).toHaveLength(24);
  expect(text).toContain("room left up to the limit");
});

describe("hatching by material", () => {
  test("stays inside its layer", () => {
    for (const look of ["wood", "insulation", "gypsum", "masonry", "metal"] as const) {
      for (const width of [3, 12, 80]) {
        const path = materialFill(look, 100, 50, width, 60);
        for (const [, x = "", y = ""] of path.matchAll(/[ML]([\d.]+) ([\d.]+)/g)) {
          expect(Number(x)).toBeGreaterThanOrEqual(99.9);
          expect(Number(x)).toBeLessThanOrEqual(100.1 + width);
          expect(Number(y)).toBeGreaterThanOrEqual(49.9);
          expect(Number(y)).toBeLessThanOrEqual(110.1);
        }
      }
      expect(materialFill(look, 0, 0, 40, 40)).not.toBe("");
    }
    for (const look of ["air", "sheet", "other"] as const) expect(materialFill(look, 0, 0, 40, 40)).toBe("");
  });

  test("tells materials apart", () => {
    const drawn = (["wood", "insulation", "gypsum", "masonry", "metal"] as const).map((l) =>
      materialFill(l, 0, 0, 40, 40),
    );
    expect(new Set(drawn).size).toBe(5);
  });
});
