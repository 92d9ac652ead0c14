import type { SVGTemplateResult } from "lit-html";
import type { RoofUpliftPicture, UpliftBar } from "../../../core/wind/pictures.ts";
import { rough, short } from "../parts/figures.ts";
import { box, frame, LINE, type Part, paragraph, path, SMALL, TEXT } from "../parts/frame.ts";
import { boxCorners, hatch } from "../parts/hatch.ts";

const BAR = 14;
const MOST_LINES = 12;

/** For each wall line one bar of wind: hatched as far as dead load holds it, strong where it does not. */
export function roofUplift(picture: RoofUpliftPicture, width: number): SVGTemplateResult {
  const shown = picture.lines.slice(0, MOST_LINES);
  const most = Math.max(1, ...shown.map((l) => Math.max(l.windPlf, l.deadPlf)));
  const head = paragraph(`Uplift at each wall line, plf, ${picture.level} level`, 0, TEXT, width, "dw-strong");
  const parts: Part[] = [...head.parts];
  let y = head.foot + LINE + 4;
  for (const bar of shown) {
    const text = paragraph(words(bar), 0, y, width);
    parts.push(...text.parts, ...drawn(bar, text.foot + 5, width / most));
    y = text.foot + 5 + BAR + LINE + 4;
  }
  if (picture.lines.length > shown.length) {
    parts.push(...paragraph(`and ${picture.lines.length - shown.length} more`, 0, y, width).parts);
    y += LINE;
  }
  return frame(picture, "Roof uplift", width, y - LINE + SMALL / 2, parts);
}

function words({ tributaryFt, windPlf, deadPlf, netPlf }: UpliftBar): string {
  return `${short(tributaryFt)} ft of roof: wind ${rough(windPlf)}, dead load counted ${rough(deadPlf)}, net ${rough(netPlf)}`;
}

function drawn({ windPlf, deadPlf, netPlf }: UpliftBar, top: number, scale: number): readonly Part[] {
  const held = Math.min(windPlf, deadPlf) * scale;
  const net = netPlf * scale;
  return [
    box(0, top, held, BAR, "dw-part"),
    path(hatch(boxCorners(0, top, held, BAR), 6, "/"), "dw-hatch"),
    ...(net > 0
      ? [
          box(held, top, net, BAR, "dw-governs"),
          path(hatch(boxCorners(held, top, net, BAR), 4, "\\"), "dw-hatch-strong"),
        ]
      : []),
  ];
}
