import { type SVGTemplateResult, svg } from "lit-html";
import type { PanelBaysPicture } from "../../core/wood/pictures.ts";
import { inches, rough } from "./parts/figures.ts";
import { box, frame, LINE, line, type Part, paragraph, path, TEXT, write } from "./parts/frame.ts";
import { at, linear, type Scale } from "./parts/scale.ts";

const EDGE = 12;
const PANEL = 10;
const SUPPORT = 18;
const SAG = 26;
const PRESSURE = 30;

/** A panel over its bays seen from the edge: pressure, supports, the shape it bends to, and which way its grain runs. */
export function panelBays(picture: PanelBaysPicture, width: number): SVGTemplateResult {
  const { spans, spanIn, supportWidthIn } = picture;
  const half = Math.max(supportWidthIn, spanIn / 40) / 2;
  const x = linear([-half, spans * spanIn + half], [EDGE, width - EDGE]);
  const name = paragraph(picture.ratios.join(", "), 0, TEXT, width, "dw-strong");
  const top = name.foot + PRESSURE + LINE;
  const parts: Part[] = [
    ...name.parts,
    write(`${rough(picture.pressurePsf)} psf`, x(0), name.foot + LINE, "dw-text"),
    ...arrows(picture, x, top - 3),
    box(x(-half), top, x(spans * spanIn + half) - x(-half), PANEL, "dw-part"),
    grainLines(picture, x, top),
    ...supports(picture, x, half, top + PANEL),
    path(shape(picture, x, top + PANEL), "dw-dew"),
  ];
  const foot = top + PANEL + SUPPORT + SAG + LINE;
  const words = paragraph(
    `face grain ${picture.grain} the span; ${spans} ${spans === 1 ? "bay" : "bays"} of ${inches(spanIn)} in; the dashed line is how it bends`,
    0,
    foot,
    width,
  );
  return frame(picture, "Panel over its bays", width, words.foot + 6, [...parts, ...words.parts]);
}

function arrows({ spans, spanIn }: PanelBaysPicture, x: Scale, y: number): Part[] {
  const count = 6 * spans;
  const top = y - 14;
  const one = (i: number) => {
    const place = at(x(((i + 0.5) * spans * spanIn) / count));
    return `M${place} ${at(top)}L${place} ${at(y)}M${at(place - 3)} ${at(y - 4)}L${place} ${at(y)}L${at(place + 3)} ${at(y - 4)}`;
  };
  return [path(Array.from({ length: count }, (_, i) => one(i)).join(""), "dw-leader")];
}

/** Face grain along the span as long lines, across it as points of the ends of fibers. */
function grainLines({ grain, spans, spanIn }: PanelBaysPicture, x: Scale, top: number): Part {
  const [left, right] = [x(0), x(spans * spanIn)];
  if (grain === "along") {
    return svg`${line(left, top + 3, right, top + 3, "dw-leader")}${line(left, top + PANEL - 3, right, top + PANEL - 3, "dw-leader")}`;
  }
  const count = Math.max(2, Math.round((right - left) / 8));
  const ticks = Array.from({ length: count + 1 }, (_, i) => {
    const place = at(left + ((right - left) * i) / count);
    return `M${place} ${at(top + 3)}L${place} ${at(top + PANEL - 3)}`;
  });
  return path(ticks.join(""), "dw-leader");
}

function supports({ spans, spanIn }: PanelBaysPicture, x: Scale, half: number, y: number): Part[] {
  return Array.from({ length: spans + 1 }, (_, i) =>
    box(x(i * spanIn - half), y, x(i * spanIn + half) - x(i * spanIn - half), SUPPORT, "dw-opening"),
  );
}

function shape({ shape: curve }: PanelBaysPicture, x: Scale, y: number): string {
  return curve.map(([place, size], i) => `${i === 0 ? "M" : "L"}${at(x(place))} ${at(y + SAG * size)}`).join("");
}
