import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { Tape } from "../../../src/core/kit/tape.ts";
import { planCourses } from "../../../src/core/takeoff/courses/courses.ts";
import { columnRows } from "../../../src/core/takeoff/wall/columns.ts";
import type { WallElevationPicture } from "../../../src/core/takeoff/wall/pictures.ts";
import { levels } from "../../../src/pane/drawings/elevation/elevation-labels.ts";
import { wallElevation } from "../../../src/pane/drawings/elevation/wall-elevation.ts";
import { SHED } from "../../core/takeoff/joinery-shed.ts";
import { markup } from "./markup.ts";

const RULES = { spacingFt: 8, layout: "module", columnFt: 0.375, jambFt: 2.5 } as const;

function pictures(): readonly WallElevationPicture[] {
  const tape = new Tape();
  const rows = columnRows(SHED, RULES, tape);
  const walls = SHED.map((w) => ({
    ...w,
    columnsFt: rows.filter((r) => r.wall === w.wall.name).map((r) => r.positionFt),
  }));
  planCourses(walls, [], { panelLengthFt: 32, panelWidthFt: 4, jointGapIn: 0.125, kerfIn: 0.125, leastLegIn: 6 }, tape);
  return tape.pictures.filter((p): p is WallElevationPicture => p.kind === "wall-elevation");
}

const ALL = pictures();
const texts = (picture: WallElevationPicture, width: number) =>
  [...markup(wallElevation(picture, width)).matchAll(/<text [^>]*>([^<]*)<\/text>/g)].map(([, text]) =>
    (text ?? "").replaceAll("&#39;", "'").replaceAll("&quot;", '"').replaceAll("&amp;", "&"),
  );

describe.each(ALL.map((p) => [`${p.subject} of ${p.wall}`, p] as const))("%s", (_name, picture) => {
  test.each([280, 360, 640])("at %d every name and every column is written", (width) => {
    const all = texts(picture, width);
    const joined = all.join(" | ");
    for (const o of picture.openings) expect(joined).toContain(o.name);
    for (const p of picture.pieces) {
      expect(all.some((t) => t === p.name || t.startsWith(`${p.name},`) || t.includes(` ${p.name}`))).toBe(true);
    }
    const marks = new Set(picture.uprights.map((u) => u.xFt));
    expect(all.filter((t) => /^\d+'-/.test(t)).length).toBeGreaterThanOrEqual(marks.size);
  });

  test("is large: 10 pixels to a foot at least, whatever the width", () => {
    for (const width of [280, 640]) {
      const text = markup(wallElevation(picture, width));
      const outlines = [...text.matchAll(/<polygon class="dw-outline" points="([^"]+)"/g)].map(([, points = ""]) =>
        points.split(" ").map((p) => Number(p.split(",")[1])),
      );
      const tall = Math.max(...outlines.map((ys) => Math.max(...ys) - Math.min(...ys)));
      expect(tall).toBeGreaterThanOrEqual(10 * 9.8);
    }
  });
});

test("positions are in feet and inches", () => {
  expect(texts(ALL[0] as WallElevationPicture, 640)).toContain(`47'-9"`);
  expect(texts(ALL[2] as WallElevationPicture, 640)[0]).toContain(`32'-0" long, 17'-10 1/2" high`);
});

test("texts below one another keep apart on each line, none is lost", () => {
  const text = fc.record({
    x: fc.double({ min: 0, max: 300, noNaN: true }),
    width: fc.double({ min: 5, max: 80, noNaN: true }),
  });
  fc.assert(
    fc.property(fc.array(text, { maxLength: 20 }), (wanted) => {
      const at = levels(wanted, 300);
      expect(at).toHaveLength(wanted.length);
      at.forEach((a, i) => {
        const half = (wanted[i]?.width ?? 0) / 2;
        expect(a.middle - half).toBeGreaterThanOrEqual(-1e-9);
        expect(a.middle + half).toBeLessThanOrEqual(300 + 1e-9);
        at.slice(i + 1).forEach((b, k) => {
          if (a.level !== b.level) return;
          expect(Math.abs(a.middle - b.middle)).toBeGreaterThanOrEqual(half + (wanted[i + 1 + k]?.width ?? 0) / 2);
        });
      });
    }),
  );
});
