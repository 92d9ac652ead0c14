import { type SVGTemplateResult, svg } from "lit-html";
import type { ContingencyPicture } from "../../core/cost/pictures.ts";
import { dollars, short } from "./parts/figures.ts";
import { frame, LINE, line, type Part, paragraph, path, SMALL, write, writeOver } from "./parts/frame.ts";
import { at, linear, type Scale, ticks } from "./parts/scale.ts";
import { textWidth } from "./parts/text.ts";

const PLOT = 180;
const AXIS = 46;
const TOP = 16;

/** How sure a total is: the simulated curve, the normal one in dashes, the lines' amounts, and the confidence that was chosen. */
export function contingency(picture: ContingencyPicture, width: number): SVGTemplateResult {
  const { curve, base, chosen } = picture;
  const totals = curve.flatMap((p) => [p.total, p.normal]);
  const [least, most] = [Math.min(base, ...totals), Math.max(base, ...totals)];
  const foot = TOP + PLOT;
  const x = linear([least, most], [AXIS, width - 1]);
  const y = linear([0, 1], [foot, TOP]);
  const line_ = (of: (p: (typeof curve)[number]) => number) =>
    curve.map((p, i) => `${i === 0 ? "M" : "L"}${at(x(of(p)))} ${at(y(p.confidence))}`).join("");
  const list = key(picture, foot + 3 * LINE, width);
  return frame(picture, "Contingency", width, list.foot + SMALL, [
    ...[0, 0.25, 0.5, 0.75, 1].flatMap((c) => [
      line(AXIS, y(c), width, y(c), c === 0 ? "dw-axis" : "dw-grid"),
      write(`${c * 100} %`, AXIS - 5, y(c) + 4, "dw-text", "end"),
    ]),
    ...marks(least, most, x, foot, width),
    line(x(base), TOP, x(base), foot, "dw-limit"),
    path(
      line_((p) => p.normal),
      "dw-dew",
    ),
    path(
      line_((p) => p.total),
      "dw-standing",
    ),
    line(AXIS, y(chosen.confidence), x(chosen.total), y(chosen.confidence), "dw-leader"),
    line(x(chosen.total), y(chosen.confidence), x(chosen.total), foot, "dw-leader"),
    svg`<circle class="dw-standing-dot" cx=${at(x(chosen.total))} cy=${at(y(chosen.confidence))} r="4"></circle>`,
    chosenLabel(picture, x, y, width),
    ...list.parts,
  ]);
}

/** Round totals along the foot, as many as have room. */
function marks(least: number, most: number, x: Scale, foot: number, width: number): readonly Part[] {
  const room = Math.max(2, Math.floor((width - AXIS) / (textWidth(dollars(most), 12) + 14)));
  const round = ticks(least, most, room).filter((t) => t >= least && t <= most);
  return round.flatMap((t) => {
    const half = textWidth(dollars(t), 12) / 2;
    const place = Math.min(Math.max(x(t), AXIS + half - 20), width - half);
    return [
      line(x(t), foot, x(t), foot + 4, "dw-axis"),
      write(dollars(t), place, foot + LINE + 2, "dw-text", "middle"),
    ];
  });
}

function chosenLabel({ chosen }: ContingencyPicture, x: Scale, y: Scale, width: number): Part {
  const text = `${short(chosen.confidence * 100)} %: ${dollars(chosen.total)}`;
  const wide = textWidth(text, 12) + 8;
  const before = x(chosen.total) - wide > AXIS;
  const place = before ? x(chosen.total) - 8 : Math.min(x(chosen.total) + 8, width - wide);
  return writeOver(text, place, y(chosen.confidence) - 6, "dw-strong", before ? "end" : "start");
}

function key({ base }: ContingencyPicture, top: number, width: number): { parts: readonly Part[]; foot: number } {
  const last = paragraph(`the lines' amounts, ${dollars(base)}`, 34, top + 2 * LINE, width - 34);
  return {
    parts: [
      line(0, top - 4, 26, top - 4, "dw-standing"),
      write("total not passed, simulated", 34, top),
      path(`M0 ${top + LINE - 4}L26 ${top + LINE - 4}`, "dw-dew"),
      write("by the normal curve", 34, top + LINE),
      line(0, top + 2 * LINE - 4, 26, top + 2 * LINE - 4, "dw-limit"),
      ...last.parts,
    ],
    foot: last.foot,
  };
}
