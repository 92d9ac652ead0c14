import { type SVGTemplateResult, svg } from "lit-html";
import type { PictureBase } from "../../../core/kit/picture.ts";
import { at } from "./scale.ts";
import { textWidth, wrapText } from "./text.ts";

/** Sizes of letters, in units of a drawing: at the width it is made for, pixels. */
export const TEXT = 12;
export const SMALL = 11;
/** From one line of text to the next. */
export const LINE = 16;

/** A piece of a drawing. */
export type Part = SVGTemplateResult;

/** The whole of a drawing: as wide as its place, with its name and its words for readers who cannot see it. */
export function frame(
  picture: PictureBase,
  name: string,
  width: number,
  height: number,
  content: readonly Part[],
): SVGTemplateResult {
  return svg`<svg xmlns="http://www.w3.org/2000/svg" class="dw" role="img" viewBox="0 0 ${at(width)} ${at(height)}">
    <title>${name}</title><desc>${picture.alt}</desc>${content}
  </svg>`;
}

export type Anchor = "start" | "middle" | "end";

/** A line of text; y is its foot. */
export function write(text: string, x: number, y: number, look = "dw-text", anchor: Anchor = "start"): Part {
  return svg`<text class=${look} x=${at(x)} y=${at(y)} text-anchor=${anchor}>${text}</text>`;
}

/** A line of text on a ground of paper, so that lines behind it do not run through its letters. */
export function writeOver(text: string, x: number, y: number, look = "dw-text", anchor: Anchor = "start"): Part {
  const wide = textWidth(text, TEXT) + 4;
  const left = { start: x - 2, middle: x - wide / 2, end: x + 2 - wide }[anchor];
  return svg`<rect class="dw-ground" x=${at(left)} y=${at(y - TEXT + 1)} width=${at(wide)} height=${LINE - 2}></rect>${write(text, x, y, look, anchor)}`;
}

/** A text in as many lines as it takes, the first one with its foot at y; and the foot of the last. */
export function paragraph(
  text: string,
  x: number,
  y: number,
  width: number,
  look = "dw-text",
): { parts: readonly Part[]; foot: number } {
  // Heavy letters run wider.
  const rows = wrapText(text, TEXT, look === "dw-strong" ? width * 0.92 : width, 6);
  return {
    parts: rows.map((row, i) => write(row, x, y + i * LINE, look)),
    foot: y + Math.max(0, rows.length - 1) * LINE,
  };
}

export function line(x1: number, y1: number, x2: number, y2: number, look: string): Part {
  return svg`<line class=${look} x1=${at(x1)} y1=${at(y1)} x2=${at(x2)} y2=${at(y2)}></line>`;
}

export function box(x: number, y: number, width: number, height: number, look: string): Part {
  return svg`<rect class=${look} x=${at(x)} y=${at(y)} width=${at(Math.max(0, width))} height=${at(Math.max(0, height))}></rect>`;
}

export function path(data: string, look: string): Part {
  return svg`<path class=${look} d=${data}></path>`;
}
