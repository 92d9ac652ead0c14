import { describe, expect, test } from "vitest";
import type { OverturningPicture } from "../../../src/core/anchorage/pictures.ts";
import type { YieldModePicture } from "../../../src/core/fasteners/pictures.ts";
import { MODE_WORDS, type Mode } from "../../../src/core/fasteners/yield.ts";
import { drawing } from "../../../src/pane/drawings/index.ts";
import { markup, unbalanced } from "./markup.ts";

const WIDTH = 280;
const member = (name: string, thicknessIn: number, crushed = true) => ({ name, thicknessIn, crushed });

function mode(o: Partial<YieldModePicture> & { readonly mode: Mode }): YieldModePicture {
  return {
    kind: "yield-mode",
    alt: "words",
    says: MODE_WORDS[o.mode],
    members: [member("side", 1.5), member("main", 3.5)],
    gapIn: 0,
    diameterIn: 0.5,
    bendsIn: { side: undefined, main: undefined },
    loadLb: 615,
    ...o,
  };
}

const drawn = (picture: YieldModePicture | OverturningPicture) => markup(drawing(picture, WIDTH));
/** The corners of the fastener's axis. */
const axis = (text: string) =>
  [...(/<path class="dw-standing" d="([^"]+)"/.exec(text)?.[1] ?? "").matchAll(/[ML](\S+?) ([^ML]+)/g)].map(
    ([, x, y]) => [Number(x), Number(y)] as const,
  );
const dots = (text: string) =>
  [...text.matchAll(/<circle class="dw-standing-dot" cx="([^"]+)" cy="([^"]+)"/g)].map(
    ([, x, y]) => [Number(x), Number(y)] as const,
  );
const boxes = (text: string, look: string) =>
  [
    ...text.matchAll(new RegExp(`<rect class="${look}" x="([^"]+)" y="([^"]+)" width="([^"]+)" height="([^"]+)"`, "g")),
  ].map((m) => m.slice(1).map(Number));

describe("yield modes", () => {
  test("a straight fastener goes with the member that holds it", () => {
    const [im, is] = [axis(drawn(mode({ mode: "Im" }))), axis(drawn(mode({ mode: "Is" })))];
    expect(im).toHaveLength(2);
    expect(new Set(im.map(([, y]) => y)).size).toBe(1);
    expect(new Set(is.map(([, y]) => y)).size).toBe(1);
    // The side members stand higher than the main one.
    expect(im[0]?.[1]).toBeLessThan(is[0]?.[1] ?? 0);
    const turned = axis(drawn(mode({ mode: "II" })));
    expect(turned[0]?.[1]).toBeLessThan(im[0]?.[1] ?? 0);
    expect(turned[1]?.[1]).toBeGreaterThan(is[0]?.[1] ?? 0);
    expect(drawn(mode({ mode: "II" }))).not.toContain("bends where");
  });

  test("it bends where the calculation says, in scale with the member", () => {
    const text = drawn(mode({ mode: "IV", bendsIn: { side: 0.75, main: 0.7 } }));
    const [[sideX = 0, , sideWide = 0] = [], [mainX = 0, , mainWide = 0] = []] = boxes(text, "dw-part");
    const [first, second] = dots(text);
    expect(first?.[0]).toBeCloseTo(sideX + sideWide / 2, 0);
    expect(second?.[0]).toBeCloseTo(mainX + mainWide / 5, 0);
    expect(axis(text)).toHaveLength(4);
    expect(text.replace(/<[^>]+>/g, " ")).toMatch(/it bends\s+where a\s+dot\s+stands/);
    expect(dots(drawn(mode({ mode: "IIIs", bendsIn: { side: undefined, main: 1 } })))).toHaveLength(1);
    expect(dots(drawn(mode({ mode: "IIIm", bendsIn: { side: 1, main: undefined } })))).toHaveLength(1);
    // Never outside its member.
    const deep = drawn(mode({ mode: "IIIs", bendsIn: { side: undefined, main: 9 } }));
    expect(dots(deep)[0]?.[0]).toBeLessThanOrEqual(mainX + mainWide + 0.02);
  });

  test("double shear mirrors about the middle of the main member", () => {
    const members = [member("side", 1.5), member("main", 3.5, false), member("second side", 1.5)];
    for (const [m, bendsIn] of [
      ["IIIs", { side: undefined, main: 0.8 }],
      ["IV", { side: 0.5, main: 0.8 }],
      ["IIIs", { side: undefined, main: 3 }],
    ] as const) {
      const line = axis(drawn(mode({ mode: m, members, bendsIn })));
      line.forEach(([x, y], i) => {
        const [mx = 0, my = 0] = line[line.length - 1 - i] ?? [];
        expect(x + mx).toBeCloseTo(WIDTH, 0);
        expect(y).toBeCloseTo(my, 6);
        if (i > 0) expect(x).toBeGreaterThanOrEqual(line[i - 1]?.[0] ?? 0);
      });
    }
  });

  test("a gap stays free and is said; what is crushed is hatched and said", () => {
    const text = drawn(
      mode({
        mode: "IV",
        gapIn: 2,
        bendsIn: { side: 0.2, main: 0.2 },
        members: [member("furring", 0.75), member("stud", 2, false)],
      }),
    );
    const [[sideX = 0, , sideWide = 0] = [], [mainX = 0] = []] = boxes(text, "dw-part");
    expect(mainX - (sideX + sideWide)).toBeGreaterThan(60);
    expect(text).toContain("gap 2 in");
    expect(text).toContain("1 furring, 3/4 in, crushed");
    expect(text).toContain("2 stud, 2 in<");
    expect([...text.matchAll(/class="dw-hatch"/g)]).toHaveLength(1);
    const close = boxes(drawn(mode({ mode: "Im" })), "dw-part");
    expect((close[0]?.[0] ?? 0) + (close[0]?.[2] ?? 0)).toBeCloseTo(close[1]?.[0] ?? 0, 1);
  });

  test("a thin plate can be seen", () => {
    const [plate] = boxes(
      drawn(mode({ mode: "IIIs", members: [member("strap", 0.06), member("stud", 3)] })),
      "dw-part",
    );
    expect(plate?.[2]).toBeGreaterThan(15);
  });
});

describe("walls", () => {
  const wall: OverturningPicture = {
    kind: "overturning",
    alt: "words",
    name: "A",
    lengthFt: 8,
    floors: [
      { heightFt: 9, shearLb: 3000 },
      { heightFt: 8, shearLb: 1500 },
    ],
    couple: { armFt: 7.5, tensionLb: 4376, compressionLb: 7107 },
    anchorsFt: [],
    anchor: "",
  };

  test("floors to scale, an arrow for each force", () => {
    const text = drawn(wall);
    const [low, high] = boxes(text, "dw-part");
    expect((low?.[3] ?? 0) / (high?.[3] ?? 1)).toBeCloseTo(9 / 8, 1);
    expect((low?.[2] ?? 0) / (low?.[3] ?? 1)).toBeCloseTo(8 / 9, 1);
    expect(low?.[1]).toBeGreaterThan(high?.[1] ?? 0);
    expect([...text.matchAll(/class="dw-force"/g)]).toHaveLength(4);
    expect(text).toContain("tension 4376 lb");
    expect(text.indexOf("shear 1500 lb")).toBeLessThan(text.indexOf("shear 3000 lb"));
    expect(text).toContain("A, 8 ft long");
    expect(drawn({ ...wall, name: "" })).toContain("Wall, 8 ft long");
  });

  test("a long wall keeps inside its place", () => {
    for (const lengthFt of [2, 200]) {
      const text = drawn({ ...wall, lengthFt });
      expect(unbalanced(text)).toEqual([]);
      for (const [x = 0, , wide = 0] of boxes(text, "dw-part")) expect(x + wide).toBeLessThanOrEqual(WIDTH);
    }
  });

  test("sill anchors stand where they are", () => {
    const text = drawn({ ...wall, floors: [], couple: undefined, anchorsFt: [1, 4, 7], anchor: "screw anchor" });
    const [sill] = boxes(text, "dw-thin");
    const [x0 = 0, , wide = 0] = sill ?? [];
    const marks = [...text.matchAll(/<line class="dw-air" x1="([^"]+)"/g)].map((m) => Number(m[1]));
    expect(marks.map((x) => ((x - x0) / wide) * 8)).toEqual([1, 4, 7].map((ft) => expect.closeTo(ft, 1)));
    expect(text).toContain("3 of screw anchor");
    expect(text).not.toContain("dw-force");
  });
});
