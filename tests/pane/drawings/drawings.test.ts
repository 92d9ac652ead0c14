import { describe, expect, test } from "vitest";
import type { PictureBase } from "../../../src/core/kit/picture.ts";
import { positional } from "../../../src/functions/declare/formula.ts";
import { registry } from "../../../src/functions/registry.ts";
import { explain } from "../../../src/functions/run/invoke.ts";
import { drawing, isDrawn } from "../../../src/pane/drawings/index.ts";
import { markup, unbalanced } from "./markup.ts";

/** Pictures that the examples show, and some that stand for larger jobs. */
function shown(name: string, args: readonly unknown[]): readonly PictureBase[] {
  const fn = registry.find((f) => f.name === name);
  if (fn === undefined) throw new Error(`There is no ${name}`);
  return explain(fn, args as never).pictures;
}

const wall = [
  ["gypsum board", 0.5, null, null, null],
  ["mineral wool board", 6, null, null, null],
  ["self-adhered membrane", null, null, "0.05 perm", "air barrier"],
  ["veneer panel", 1.5, null, null, null],
  ["wood siding", 0.75, null, null, null],
];
const openings = [
  ["window 1", 3, 4, 1, 2.67, 4],
  ["door", "3'-4\"", "6'-10\"", 1, 0, 18.5],
];
const long = [["long wall", 40, 9]];
const columns = [0, 4, 8, 12, 16, 18, 22, 24, 28, 32, 36, 40].map((x) => ["long wall", x]);
const gables = [
  ["east", 32, "9'-10 1/2\"", 8],
  ["shed", 20, 8, 4, "shed"],
];

const BUILDING = [
  ["Basis", "Value"],
  ["building width", 40],
  ["building length", 80],
  ["eave height", 15],
  ["thermal factor", 1.1],
  ["winter wind", 0.5],
  ["velocity pressure", 25],
];

const JOBS: readonly (readonly [string, readonly PictureBase[]])[] = [
  ["a wall that wets", shown("DEW_PROFILE", [wall, 70, 40, "0 F"])],
  ["a wall of 40 ft", shown("WALL_COURSES", [long, columns, openings, "4x16"])],
  ["columns", shown("WALL_COLUMNS", [long, openings, 48])],
  ["columns of gables", shown("WALL_COLUMNS", [gables, null, 48])],
  ["membrane", shown("ROLLS", [gables, 36, 75])],
  ["boards", shown("BOARDS", [gables, "4x8", [[3, 3]]])],
  ["furring", shown("FURRING", [long, 10, openings, 16])],
  ["lining", shown("LINING", [long, "4x8", openings])],
  ["zones of a flat roof", shown("WIND_CLADDING_SCHEDULE", [[[20]], "gable", "3 deg", null, null, 40, null, BUILDING])],
  ["the frame of a gable", shown("WIND_FRAME", [null, [...BUILDING, ["roof slope", "6:12"]]])],
  ["the frame of a hip", shown("WIND_FRAME", [null, [...BUILDING, ["roof slope", "6:12"], ["roof shape", "hip"]]])],
  ["the frame of a shed", shown("WIND_FRAME", [null, [...BUILDING, ["roof slope", "2:12"], ["roof shape", "shed"]]])],
  [
    "the frame by the envelope",
    shown("WIND_FRAME", [null, [...BUILDING, ["roof slope", "6:12"], ["frame method", "envelope"]]]),
  ],
  [
    "wall lines",
    shown("WIND_BASESHEAR", [[["north wall of the workshop", "along", 20]], [...BUILDING, ["roof slope", "6:12"]]]),
  ],
  ["uplift", shown("WIND_UPLIFT", [12, [[10, 20, 5]], [...BUILDING, ["roof slope", "6:12"]]])],
  ["snow on a gable", shown("LOAD_SNOW", [40, "6:12", BUILDING])],
  ["snow on a shed", shown("LOAD_SNOW", [40, "4:12", [...BUILDING, ["roof shape", "monoslope"]]])],
  [
    "sheets",
    shown("SHEETS_LAYOUT", [
      [
        ["side", 30, 23.25, 9, "along"],
        ["cleat & block", 22.5, 2.5, 12, "free"],
      ],
      [["plywood", 96, 48, 60]],
    ]),
  ],
  [
    "lengths",
    shown("STOCK_LAYOUT", [
      [
        ["sill", 39.5, 9],
        ["block", 6.5, 22],
      ],
      [["2x6", 192, 14]],
    ]),
  ],
];

const EXAMPLES = registry
  .map((fn) => [fn.name, explain(fn, positional(fn, fn.example.args)).pictures] as const)
  .filter(([, pictures]) => pictures.length > 0);

test("the examples show pictures", () => {
  expect(EXAMPLES.length).toBeGreaterThan(4);
  expect(JOBS.every(([, pictures]) => pictures.length > 0)).toBe(true);
});

describe.each([...EXAMPLES, ...JOBS])("pictures of %s", (_name, pictures) => {
  test.each(pictures)("$kind is drawn soundly at any width", (picture) => {
    expect(isDrawn(picture)).toBe(true);
    for (const width of [100, 280, 440, 720]) {
      const text = markup(drawing(picture, width));
      expect(text).toMatch(/^<svg [^>]*viewBox="0 0 [\d.]+ [\d.]+"/);
      expect(text).toContain("<title>");
      expect(unbalanced(text)).toEqual([]);
      expect(text).not.toMatch(/NaN|Infinity|undefined|\bnull\b|\[object|style=/);
    }
  });

  test.each(pictures)("$kind keeps its texts and boxes inside at 280", (picture) => {
    const text = markup(drawing(picture, 280));
    const [, width = "0", height = "0"] = /viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(text) ?? [];
    for (const [, x = "", y = "", wide = "", tall = ""] of text.matchAll(
      /<rect class="(?!dw-ground)[^"]*" x="([-\d.]+)" y="([-\d.]+)" width="([\d.]+)" height="([\d.]+)"/g,
    )) {
      // Samples of a key are placed by the group that they stand in.
      if (Number(y) < 0) continue;
      expect(Number(x)).toBeGreaterThanOrEqual(-0.01);
      expect(Number(x) + Number(wide)).toBeLessThanOrEqual(Number(width) + 0.01);
      expect(Number(y) + Number(tall)).toBeLessThanOrEqual(Number(height) + 0.01);
    }
    for (const [, y = ""] of text.matchAll(/<text [^>]*\by="([-\d.]+)"/g)) {
      expect(Number(y)).toBeLessThanOrEqual(Number(height));
    }
  });
});

test("a kind that nobody draws is undefined", () => {
  expect(drawing({ kind: "toString", alt: "" })).toBeUndefined();
});
