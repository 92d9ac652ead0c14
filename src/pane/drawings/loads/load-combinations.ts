import { type SVGTemplateResult, svg } from "lit-html";
import type { CombinationBar, LoadCombinationsPicture } from "../../../core/loads/pictures.ts";
import { rough } from "../parts/figures.ts";
import { box, frame, line, type Part, paragraph, path, SMALL, TEXT, write } from "../parts/frame.ts";
import { boxCorners, hatch } from "../parts/hatch.ts";
import { linear, type Scale } from "../parts/scale.ts";
import { textWidth } from "../parts/text.ts";

const BAR = 12;
const GAP = 10;

/** Load combinations as bars from a common zero; those that govern are hatched and say so. */
export function loadCombinations(picture: LoadCombinationsPicture, width: number): SVGTemplateResult {
  const { bars, unit } = picture;
  const values = bars.map((b) => b.value);
  const [least, most] = [Math.min(0, ...values), Math.max(0, ...values)];
  const figures = Math.max(...bars.map((b) => textWidth(figure(b.value, unit), TEXT))) + 8;
  // The figure of a bar stands beyond its end, so each side keeps room for one.
  const x = linear([least, most], [least < 0 ? figures : 1, width - (most > 0 ? figures : 1)]);
  let y = 0;
  const parts: Part[] = [];
  for (const b of bars) {
    const look = b.governs ? "dw-strong" : "dw-text";
    const name = paragraph(b.governs ? `${b.name} (${ruling(b, values)})` : b.name, 0, y + TEXT, width, look);
    y = name.foot + 4;
    parts.push(...name.parts, bar(b, x, y, unit, look), line(x(0), y - 2, x(0), y + BAR + 2, "dw-axis"));
    y += BAR + GAP;
  }
  return frame(picture, "Load combinations", width, y - GAP + SMALL / 2, parts);
}

/** Which way a governing combination governs. */
function ruling(b: CombinationBar, values: readonly number[]): string {
  if (b.value === Math.max(...values)) return "governs: largest";
  return b.value === Math.min(...values) ? "governs: smallest" : "governs";
}

function figure(value: number, unit: string): string {
  return unit === "" ? rough(value) : `${rough(value)} ${unit}`;
}

function bar(b: CombinationBar, x: Scale, y: number, unit: string, look: string): Part {
  const [from, to] = [Math.min(x(0), x(b.value)), Math.max(x(0), x(b.value))];
  const text = figure(b.value, unit);
  return svg`${box(from, y, to - from, BAR, b.governs ? "dw-governs" : "dw-part")}${
    b.governs ? path(hatch(boxCorners(from, y, to - from, BAR), 4, "/"), "dw-hatch-strong") : ""
  }${b.value < 0 ? write(text, from - 4, y + 10, look, "end") : write(text, to + 4, y + 10, look)}`;
}
