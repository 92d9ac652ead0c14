import { type SVGTemplateResult, svg } from "lit-html";
import type { Outline, WindZonesPicture, ZoneView } from "../../../core/wind/pictures.ts";
import { outerBorders } from "../parts/borders.ts";
import { short, signed } from "../parts/figures.ts";
import { box, frame, LINE, line, type Part, paragraph, path, SMALL, TEXT, write, writeOver } from "../parts/frame.ts";
import { boxCorners, hatch, type Point, points } from "../parts/hatch.ts";
import { textWidth } from "../parts/text.ts";

const GAP = 14;

/** Hatching of a zone: the closer, the stronger the suction. Zones of equal rank in wall and roof look alike. */
const LOOKS = [
  { hatching: undefined, gap: 0 },
  { hatching: "/", gap: 9 },
  { hatching: "\\", gap: 5 },
  { hatching: "x", gap: 5 },
] as const;

type Look = (typeof LOOKS)[number];

/** Zones of the roof and the walls to scale, each view with the pressures of its zones. */
export function windZones(picture: WindZonesPicture, width: number): SVGTemplateResult {
  const widest = Math.max(...picture.views.map((v) => v.widthFt));
  const scale = (width - 2) / widest;
  const head = paragraph(`Pressures in psf at an effective area of ${short(picture.areaFt2)} ft²`, 0, TEXT, width);
  const parts: Part[] = [...head.parts];
  let y = head.foot + 8;
  picture.views.forEach((view, i) => {
    // Views of the same zones, such as two walls, share the key under the last of them.
    const drawn = viewOf(view, scale, y, width, pressures(view) !== pressures(picture.views[i + 1]));
    parts.push(...drawn.parts);
    y = drawn.foot + GAP;
  });
  return frame(picture, "Wind zones", width, y - GAP + SMALL / 2, parts);
}

function pressures(view: ZoneView | undefined): string | undefined {
  return view?.zones.map((z) => `${z.label} ${z.towardPsf} ${z.awayPsf}`).join();
}

function viewOf(
  view: ZoneView,
  scale: number,
  top: number,
  width: number,
  keyed: boolean,
): { parts: Part[]; foot: number } {
  const name = `${view.name[0]?.toUpperCase()}${view.name.slice(1)}, ${short(view.widthFt)} × ${short(view.heightFt)} ft`;
  const parts: Part[] = [write(name, 0, top + LINE - 4, "dw-strong")];
  let y = top + LINE + 4;
  const place = ([xFt, yFt]: readonly [number, number]): Point => [1 + xFt * scale, y + (view.heightFt - yFt) * scale];
  const ranked = [...view.zones].sort((a, b) => b.awayPsf - a.awayPsf);
  const lookOf = (label: string): Look =>
    LOOKS[
      Math.min(
        ranked.findIndex((z) => z.label === label),
        LOOKS.length - 1,
      )
    ] ?? LOOKS[0];

  for (const zone of view.zones) {
    parts.push(...zone.outlines.map((outline) => area(outline.map(place), lookOf(zone.label))));
    const borders = outerBorders(zone.outlines).map(([from, to]) => [place(from), place(to)] as const);
    parts.push(...borders.map(([[x1, y1], [x2, y2]]) => line(x1, y1, x2, y2, "dw-edge")));
  }
  parts.push(box(1, y, view.widthFt * scale, view.heightFt * scale, "dw-outline"));
  for (const zone of view.zones) parts.push(...names(zone.label, zone.outlines, place));
  y += view.heightFt * scale + 6;
  if (!keyed) return { parts, foot: y };

  for (const zone of ranked) {
    const swatch = boxCorners(1, y + 3, 22, 12);
    parts.push(area(swatch, lookOf(zone.label)), box(1, y + 3, 22, 12, "dw-edge"));
    parts.push(write(`zone ${zone.label}`, 30, y + 13, "dw-strong"));
    parts.push(write(`toward ${signed(zone.towardPsf)}`, 92, y + 13));
    parts.push(write(`away ${signed(zone.awayPsf)}`, 92 + Math.min(110, (width - 92) / 2), y + 13));
    y += LINE + 2;
  }
  return { parts, foot: y };
}

/** Zones may lie over one another: each covers what is below it. */
function area(corners: readonly Point[], look: Look): Part {
  return svg`<polygon class="dw-zone" points=${points(corners)}></polygon>${
    look.hatching === undefined ? "" : path(hatch(corners, look.gap, look.hatching), "dw-hatch")
  }`;
}

/** The zone's name in each of its areas that has room for it. */
function names(
  label: string,
  outlines: readonly Outline[],
  place: (p: readonly [number, number]) => Point,
): readonly Part[] {
  const wide = textWidth(label, TEXT) + 6;
  return outlines.flatMap((outline) => {
    const corners = outline.map(place);
    const [xs, ys] = [corners.map(([x]) => x), corners.map(([, y]) => y)];
    const [left, right, top, foot] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
    if (right - left < wide || foot - top < LINE) return [];
    return [writeOver(label, (left + right) / 2, (top + foot) / 2 + 4, "dw-strong", "middle")];
  });
}
