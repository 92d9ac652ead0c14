import type { SVGTemplateResult } from "lit-html";
import type { WindForce, WindForcesPicture } from "../../../core/wind/pictures.ts";
import { arrow } from "../parts/arrow.ts";
import { rough, short } from "../parts/figures.ts";
import { box, frame, LINE, line, type Part, paragraph, SMALL, TEXT, write } from "../parts/frame.ts";
import type { Point } from "../parts/hatch.ts";

const ARROW = 30;
const TALLEST = 160;

/** The building from above with the sideways force of each wind, and the wall lines under it. */
export function windForces(picture: WindForcesPicture, width: number): SVGTemplateResult {
  const { lengthFt, widthFt } = picture;
  const scale = Math.min((width - ARROW - 16) / lengthFt, TALLEST / widthFt);
  const [left, top] = [ARROW + 10, LINE + 8];
  const [wide, tall] = [lengthFt * scale, widthFt * scale];
  const name = `Plan, ${short(lengthFt)} × ${short(widthFt)} ft, ${picture.level} level`;
  const parts: Part[] = [
    write(name, 0, TEXT, "dw-strong"),
    box(left, top, wide, tall, "dw-outline"),
    line(left, top + tall / 2, left + wide, top + tall / 2, "dw-grid"),
    ...row([left + wide * 0.2, top + tall + ARROW + 4], [left + wide * 0.8, top + tall + ARROW + 4], [0, -ARROW]),
    ...row([left - ARROW - 4, top + tall * 0.2], [left - ARROW - 4, top + tall * 0.8], [ARROW, 0]),
  ];
  let y = top + tall + ARROW + LINE + 8;
  for (const force of picture.forces) {
    const text = paragraph(words(force), 0, y, width, force.line ? "dw-text" : "dw-strong");
    parts.push(...text.parts);
    y = text.foot + LINE;
  }
  return frame(picture, "Sideways wind force", width, y - LINE + SMALL / 2, parts);
}

function words({ name, designLb, designPlf, least }: WindForce): string {
  const by = least ? "least load governs" : "pressures govern";
  return `${name}: ${rough(Math.round(designLb))} lb, ${rough(designPlf)} plf, ${by}`;
}

/** Three arrows alike between two places. */
function row(from: Point, to: Point, [dx, dy]: Point): readonly Part[] {
  return [0, 0.5, 1].map((t) => {
    const [x, y] = [from[0] + t * (to[0] - from[0]), from[1] + t * (to[1] - from[1])];
    return arrow(x, y, x + dx, y + dy);
  });
}
