import { type SVGTemplateResult, svg } from "lit-html";
import type { WettingYearPicture } from "../../core/enclosure/moisture/pictures.ts";
import { short } from "./parts/figures.ts";
import { box, frame, LINE, line, type Part, path, SMALL, write, writeOver } from "./parts/frame.ts";
import { boxCorners, hatch } from "./parts/hatch.ts";
import { at, linear, ticks } from "./parts/scale.ts";

const PLOT = 170;
const AXIS = 40;
const TOP = 24;

/** Twelve months of wetting and drying, with what stands in the wall and what may stand. */
export function wettingYear(picture: WettingYearPicture, width: number): SVGTemplateResult {
  const { months, limitOzFt2 } = picture;
  const values = months.flatMap((m) => [m.changeOzFt2, m.standingOzFt2]);
  const marks = ticks(Math.min(0, ...values), Math.max(limitOzFt2, ...values), 5);
  const foot = TOP + PLOT;
  const y = linear([marks[0] ?? 0, marks.at(-1) ?? 1], [foot, TOP]);
  const column = (width - AXIS) / Math.max(1, months.length);
  const middle = (i: number) => AXIS + (i + 0.5) * column;
  const decimals = Math.max(0, ...marks.map((m) => String(m).split(".")[1]?.length ?? 0));
  const letters = column < 28;
  const standing = months.map((m, i) => `${i === 0 ? "M" : "L"}${at(middle(i))} ${at(y(m.standingOzFt2))}`).join("");

  return frame(picture, "Wetting and drying through the year", width, foot + 6 * LINE + SMALL / 2, [
    write("oz/ft²", 0, 12, "dw-soft"),
    ...marks.flatMap((m) => [
      line(AXIS, y(m), width, y(m), m === 0 ? "dw-axis" : "dw-grid"),
      write(short(m, decimals), AXIS - 5, y(m) + 4, "dw-text", "end"),
    ]),
    room(months, limitOzFt2, middle, y),
    ...months.map((m, i) => bar(middle(i), column * 0.6, y(0), y(m.changeOzFt2), m.changeOzFt2 > 0)),
    line(AXIS, y(limitOzFt2), width, y(limitOzFt2), "dw-limit"),
    writeOver(
      `limit ${short(limitOzFt2, 2)}`,
      width - 4,
      y(limitOzFt2) + (y(limitOzFt2) < TOP + 14 ? 15 : -6),
      "dw-strong",
      "end",
    ),
    path(standing, "dw-standing"),
    ...months.map(
      (m, i) =>
        svg`<rect class="dw-standing-dot" x=${at(middle(i) - 3)} y=${at(y(m.standingOzFt2) - 3)} width="6" height="6"></rect>`,
    ),
    ...months.map((m, i) =>
      write(letters ? m.name.slice(0, 1) : m.name.slice(0, 3), middle(i), foot + LINE, "dw-text", "middle"),
    ),
    ...key(foot + 2 * LINE + 8),
  ]);
}

/** What the wall may still take: from the water that stands up to the limit. */
function room(
  months: WettingYearPicture["months"],
  limit: number,
  middle: (i: number) => number,
  y: (value: number) => number,
): Part {
  const top = months.map((_, i) => `${at(middle(i))},${at(y(limit))}`);
  const foot = months.map((m, i) => `${at(middle(i))},${at(y(Math.min(limit, m.standingOzFt2)))}`).reverse();
  return svg`<polygon class="dw-margin" points=${[...top, ...foot].join(" ")}></polygon>`;
}

function bar(x: number, wide: number, zero: number, end: number, wets: boolean): Part {
  const [top, tall] = [Math.min(zero, end), Math.abs(zero - end)];
  if (tall === 0) return svg``;
  return svg`${box(x - wide / 2, top, wide, tall, wets ? "dw-wet-box" : "dw-dry-box")}${
    wets ? path(hatch(boxCorners(x - wide / 2, top, wide, tall), 4, "/"), "dw-wet-hatch") : ""
  }`;
}

function key(top: number): readonly Part[] {
  const row = (i: number) => top + i * LINE;
  return [
    bar(13, 26, row(0), row(0) - 10, true),
    write("wetting in the month", 34, row(0)),
    bar(13, 26, row(1), row(1) - 10, false),
    write("drying in the month", 34, row(1)),
    line(0, row(2) - 4, 26, row(2) - 4, "dw-standing"),
    svg`<rect class="dw-standing-dot" x="10" y=${row(2) - 7} width="6" height="6"></rect>`,
    write("water standing at the month's end", 34, row(2)),
    box(0, row(3) - 10, 26, 11, "dw-margin"),
    write("room left up to the limit", 34, row(3)),
  ];
}
