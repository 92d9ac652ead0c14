import { type SVGTemplateResult, svg } from "lit-html";
import type { SlingPicture } from "../../core/lifting/pictures.ts";
import { rough, short } from "./parts/figures.ts";
import { box, frame, LINE, line, type Part, paragraph, SMALL, TEXT, write, writeOver } from "./parts/frame.ts";
import { at, linear, type Scale } from "./parts/scale.ts";
import { textWidth } from "./parts/text.ts";

const TALLEST = 260;
const SIDE = 46;
const TOP = 26;
const LOAD = 26;

/** The triangle of a sling: hook, legs with their tension and angle, the load below, its center of gravity plumb under the hook. */
export function sling(picture: SlingPicture, width: number): SVGTemplateResult {
  const { legs, hook } = picture;
  const across = [...legs.map((l) => l.acrossFt), hook.acrossFt, 0];
  const [left, right] = [Math.min(...across), Math.max(...across)];
  const low = Math.min(0, ...legs.map((l) => l.upFt));
  const scale = Math.min((width - 2 * SIDE) / Math.max(right - left, 1e-6), TALLEST / (hook.upFt - low));
  const middle = (left + right) / 2;
  const x = linear([middle - width / 2 / scale, middle + width / 2 / scale], [0, width]);
  const foot = TOP + (hook.upFt - low) * scale;
  const y = linear([low, hook.upFt], [foot, TOP]);
  const list = key(picture, foot + LOAD + LINE, width);
  return frame(picture, "Sling", width, list.foot + SMALL, [
    ...load(picture, x, y),
    line(x(0), y(hook.upFt), x(0), y(0), "dw-column"),
    ...legs.map((l) => line(x(l.acrossFt), y(l.upFt), x(hook.acrossFt), y(hook.upFt), "dw-standing")),
    svg`<circle class="dw-temperature-dot" cx=${at(x(hook.acrossFt))} cy=${at(y(hook.upFt))} r="5"></circle>`,
    ...legs.map(
      (l) => svg`<circle class="dw-standing-dot" cx=${at(x(l.acrossFt))} cy=${at(y(l.upFt))} r="3.5"></circle>`,
    ),
    ...marks(picture, x, y, width),
    ...list.parts,
  ]);
}

/** The load from its picks down past its center of gravity. */
function load({ legs }: SlingPicture, x: Scale, y: Scale): readonly Part[] {
  const xs = legs.map((l) => x(l.acrossFt));
  const top = Math.min(...legs.map((l) => y(l.upFt)));
  const bottom = Math.max(y(0), ...legs.map((l) => y(l.upFt))) + LOAD / 2;
  const [from, to] = [Math.min(...xs), Math.max(...xs)];
  const cross = 6;
  return [
    box(from, top, to - from, bottom - top, "dw-part"),
    line(x(0) - cross, y(0), x(0) + cross, y(0), "dw-axis"),
    line(x(0), y(0) - cross, x(0), y(0) + cross, "dw-axis"),
  ];
}

/** The tension on each leg where they do not cover one another, else the words below say it. */
function marks({ legs, hook }: SlingPicture, x: Scale, y: Scale, width: number): readonly Part[] {
  if (legs.length > 2) return [];
  return legs.map((l) => {
    const text = `${rough(l.tensionLb)} lb`;
    const half = textWidth(text, TEXT) / 2 + 3;
    const middle = (x(l.acrossFt) + x(hook.acrossFt)) / 2;
    const place = Math.min(Math.max(middle, half), width - half);
    return writeOver(text, place, (y(l.upFt) + y(hook.upFt)) / 2 + 4, "dw-strong", "middle");
  });
}

function key(picture: SlingPicture, top: number, width: number): { parts: readonly Part[]; foot: number } {
  const rows = [
    ...picture.legs.map((l) => `${l.leg}: ${rough(l.tensionLb)} lb, ${short(l.angleDeg)}° from the level`),
    `load ${rough(picture.weightLb)} lb, least rating of a leg ${rough(picture.leastRatingLb)} lb`,
  ];
  const parts: Part[] = [write("+ center of gravity", 0, top, "dw-soft")];
  let foot = top;
  for (const text of rows) {
    const row = paragraph(text, 0, foot + LINE, width);
    parts.push(...row.parts);
    foot = row.foot;
  }
  return { parts, foot };
}
