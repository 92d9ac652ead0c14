import { describe, expect, test } from "vitest";
import type { PictureBase } from "../../../src/core/kit/picture.ts";
import { registry } from "../../../src/functions/registry.ts";
import { explain } from "../../../src/functions/run/invoke.ts";
import { drawing } from "../../../src/pane/drawings/index.ts";
import { dollars } from "../../../src/pane/drawings/parts/figures.ts";
import { markup, unbalanced } from "./markup.ts";

function shown(name: string, args: readonly unknown[]): readonly PictureBase[] {
  const fn = registry.find((f) => f.name === name);
  if (fn === undefined) throw new Error(`There is no ${name}`);
  return explain(fn, args as never).pictures;
}

const lines = [
  ["line", "amount", "kind", "low", "high"],
  ["shell labor", 23_400, "labor", 21_000, 28_500],
  ["materials & freight", 77_930, "material", 74_000, 86_000],
  ["roofing", 15_100, "subcontract", 14_300, 17_600],
];

const PICTURES: readonly (readonly [string, readonly PictureBase[], readonly string[]])[] = [
  [
    "two unequal legs",
    shown("LIFT_SLING", [
      5000,
      [
        ["near", -2, 0, 4],
        ["far", 8, 0, 4],
      ],
      10,
    ]),
    ["near: 4079 lb", "least rating"],
  ],
  [
    "four legs",
    shown("LIFT_SLING", [
      4000,
      [
        ["a", -5, -3],
        ["b", 5, -3],
        ["c", 5, 3],
        ["d", -5, 3],
      ],
      8,
    ]),
    ["a: 2475 lb, 53.9°", "d: 2475 lb"],
  ],
  [
    "two loads",
    shown("TRUCK_LOADS", [
      [
        ["panel", 4000, 32, 8, 12, 9, null, null, null, 1],
        ["block", 9000, 8, 8, 24, 3, null, null, null, 2],
      ],
      40_000,
      null,
      null,
      6,
    ]),
    ["Load 1", "Load 2", "× panel"],
  ],
  ["a contingency", shown("COST_CONTINGENCY", [lines, 0.9, 0.3]), ["90 %: $", "by the normal curve", "$116,430"]],
  ["a bid", shown("COST_BID", [lines, 0.12, 0.05, 0.1]), ["margin", "price", "overhead"]],
];

describe.each(PICTURES)("%s", (_name, pictures, words) => {
  test.each([280, 440, 720])("is drawn soundly %s wide, everything inside", (width) => {
    expect(pictures).toHaveLength(1);
    const text = markup(drawing(pictures[0] as PictureBase, width));
    expect(unbalanced(text)).toEqual([]);
    expect(text).not.toMatch(/NaN|Infinity|undefined|\bnull\b|\[object|style=/);
    for (const word of words) expect(text).toContain(word);
    const [, wide = "0", tall = "0"] = /viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(text) ?? [];
    for (const [, x = "", y = ""] of text.matchAll(/<text [^>]*\bx="([-\d.]+)" y="([-\d.]+)"/g)) {
      expect(Number(x)).toBeGreaterThanOrEqual(0);
      expect(Number(x)).toBeLessThanOrEqual(Number(wide));
      expect(Number(y)).toBeLessThanOrEqual(Number(tall));
    }
    for (const [, x = "", y = ""] of text.matchAll(/<circle [^>]*cx="([-\d.]+)" cy="([-\d.]+)"/g)) {
      expect(Number(x)).toBeGreaterThanOrEqual(0);
      expect(Number(x)).toBeLessThanOrEqual(Number(wide));
      expect(Number(y)).toBeLessThanOrEqual(Number(tall));
    }
  });
});

test("every piece of a load stands in its list, runs of numbers together", () => {
  const [picture] = shown("TRUCK_LOADS", [[["panel", 4000, 32, 8, 12, 3]], 40_000, null, null, 6]);
  expect(markup(drawing(picture as PictureBase, 280))).toContain("1 to 3: 3 × panel");
});

test("dollars", () => {
  expect([0, 12.4, 999.5, 1_234_567, -4500.2].map(dollars)).toEqual(["$0", "$12", "$1,000", "$1,234,567", "−$4,500"]);
});
