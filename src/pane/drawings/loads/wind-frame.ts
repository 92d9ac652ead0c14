import { type SVGTemplateResult, svg } from "lit-html";
import type { FrameFace, FrameView, WindFramePicture } from "../../../core/wind/pictures.ts";
import { arrow } from "../parts/arrow.ts";
import { signed } from "../parts/figures.ts";
import { frame, LINE, type Part, paragraph, SMALL, TEXT, write, writeOver } from "../parts/frame.ts";
import { type Point, points } from "../parts/hatch.ts";

const ARROW = 22;
const MARGIN = 40;
const TALLEST = 150;

/** Sections of the building with an arrow on each face: toward it where pressure is the larger, away from it where suction is. */
export function windFrame(picture: WindFramePicture, width: number): SVGTemplateResult {
  const parts: Part[] = [];
  let y = 0;
  for (const view of picture.views) {
    const drawn = section(view, y, width);
    parts.push(...drawn.parts);
    y = drawn.foot + 12;
  }
  return frame(picture, "Wind on the frame", width, y - 12 + SMALL / 2, parts);
}

function section(view: FrameView, top: number, width: number): { parts: Part[]; foot: number } {
  const corners = view.faces.flatMap((f) => [f.from, f.to]);
  const wideFt = Math.max(1, ...corners.map(([x]) => x));
  const tallFt = Math.max(1, ...corners.map(([, y]) => y));
  const scale = Math.min((width - 2 * MARGIN) / wideFt, TALLEST / tallFt);
  const left = (width - wideFt * scale) / 2;
  const ground = top + LINE + 8 + ARROW + tallFt * scale;
  const place = ([x, y]: readonly [number, number]): Point => [left + x * scale, ground - y * scale];
  const parts: Part[] = [write(view.name, 0, top + TEXT, "dw-strong")];
  parts.push(svg`<polyline class="dw-outline" points=${points(corners.map(place))}></polyline>`);
  view.faces.forEach((face, i) => {
    parts.push(...arrowOn(face, String(i + 1), place));
  });
  let y = ground + LINE + 4;
  view.faces.forEach((face, i) => {
    const words = `${i + 1} ${face.name}: ${signed(face.leastPsf)} to ${signed(face.mostPsf)} psf`;
    const text = paragraph(words, 0, y, width);
    parts.push(...text.parts);
    y = text.foot + LINE;
  });
  return { parts, foot: y - LINE };
}

/** Faces run with the outside on their left hand, so the arrow stands there. */
function arrowOn(face: FrameFace, label: string, place: (p: readonly [number, number]) => Point): readonly Part[] {
  const [x1, y1] = place(face.from);
  const [x2, y2] = place(face.to);
  const long = Math.hypot(x2 - x1, y2 - y1) || 1;
  const [nx, ny] = [(y2 - y1) / long, -(x2 - x1) / long];
  const at: Point = [(x1 + x2) / 2, (y1 + y2) / 2];
  const out: Point = [at[0] + nx * ARROW, at[1] + ny * ARROW];
  const suction = Math.abs(face.leastPsf) > Math.abs(face.mostPsf);
  const drawn = suction ? arrow(...at, ...out) : arrow(...out, ...at);
  return [drawn, writeOver(label, at[0] - nx * 12, at[1] - ny * 12 + 4, "dw-strong", "middle")];
}
