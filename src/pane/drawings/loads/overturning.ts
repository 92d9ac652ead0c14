import type { SVGTemplateResult } from "lit-html";
import type { OverturningPicture } from "../../../core/anchorage/pictures.ts";
import { arrow } from "../parts/arrow.ts";
import { rough, short } from "../parts/figures.ts";
import { box, frame, LINE, line, type Part, paragraph, SMALL, TEXT, write } from "../parts/frame.ts";

const SIDE = 34;
const TALLEST = 190;
const SILL = 8;
const PULL = 30;

/** A wall from its face: shears at its floors, the pair of forces at its foot, or the anchors along its sill. */
export function overturningWall(picture: OverturningPicture, width: number): SVGTemplateResult {
  const { couple, floors, lengthFt, name } = picture;
  const title = `${name === "" ? "Wall" : name}, ${short(lengthFt)} ft long`;
  const head = paragraph(title, 0, TEXT, width, "dw-strong");
  const highFt = floors.reduce((sum, f) => sum + f.heightFt, 0);
  const scale = Math.min((width - 2 * SIDE) / lengthFt, highFt > 0 ? TALLEST / highFt : Number.POSITIVE_INFINITY);
  const left = SIDE;
  const foot = head.foot + 10 + highFt * scale;
  const parts: Part[] = [...head.parts, ...wall(picture, left, foot, scale)];
  let y = foot + SILL;
  if (couple !== undefined) {
    parts.push(...pair(left, foot + SILL, lengthFt * scale));
    y += PULL + LINE;
    for (const text of [
      `tension ${rough(couple.tensionLb)} lb and compression ${rough(couple.compressionLb)} lb, ${short(couple.armFt)} ft apart`,
      ...[...floors].reverse().map((f) => `shear ${rough(f.shearLb)} lb, ${short(f.heightFt)} ft high`),
    ]) {
      const row = paragraph(text, 0, y, width);
      parts.push(...row.parts);
      y = row.foot + LINE;
    }
  } else {
    parts.push(...anchors(picture, left, foot, scale));
    const row = paragraph(`${picture.anchorsFt.length} of ${picture.anchor}`, 0, y + PULL, width);
    parts.push(...row.parts);
    y = row.foot + LINE;
  }
  return frame(picture, "Wall and its anchors", width, y - LINE + SMALL / 2, parts);
}

function wall({ floors, lengthFt }: OverturningPicture, left: number, foot: number, scale: number): readonly Part[] {
  const parts: Part[] = [box(left, foot, lengthFt * scale, SILL, "dw-thin")];
  let y = foot;
  for (const f of floors) {
    const high = f.heightFt * scale;
    y -= high;
    parts.push(
      box(left, y, lengthFt * scale, high, "dw-part"),
      arrow(left - SIDE + 4, y + 4, left - 2, y + 4),
      write("V", left - SIDE + 4, y + LINE + 4),
    );
  }
  return parts;
}

/** The end that would lift is held down, the other pressed up. */
function pair(left: number, y: number, wide: number): readonly Part[] {
  const right = left + wide;
  return [
    arrow(left + 4, y, left + 4, y + PULL),
    write("T", left + 12, y + PULL - 4),
    arrow(right - 4, y + PULL, right - 4, y + 2),
    write("C", right - 12, y + PULL - 4, "dw-text", "end"),
  ];
}

function anchors({ anchorsFt }: OverturningPicture, left: number, foot: number, scale: number): readonly Part[] {
  return anchorsFt.map((ft) => line(left + ft * scale, foot - 4, left + ft * scale, foot + SILL + 10, "dw-air"));
}
