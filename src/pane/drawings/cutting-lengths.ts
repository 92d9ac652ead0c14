import { type SVGTemplateResult, svg } from "lit-html";
import type { CuttingLengthsPicture, LengthDrawing } from "../../core/cutting/pictures.ts";
import { formatLength } from "../../core/units/length.ts";
import { box, frame, LINE, type Part, paragraph, path, SMALL, TEXT, write } from "./parts/frame.ts";
import { boxCorners, hatch } from "./parts/hatch.ts";
import { numbered, repeats } from "./parts/repeats.ts";
import { textWidth } from "./parts/text.ts";

const STRIP = 24;
const GAP = 14;

/** Feet, inches and sixteenths, as a tape is read. */
const size = (inches: number): string => formatLength(inches, 16);

type LengthPart = LengthDrawing["parts"][number];

/** A strip for every way in which a length is cut, lengths that are cut alike once; the rest of each is hatched. */
export function cuttingLengths(picture: CuttingLengthsPicture, width: number): SVGTemplateResult {
  const longest = Math.max(...picture.lengths.map((l) => l.lengthIn));
  const scale = (width - 2) / longest;
  const parts: Part[] = [];
  let y = 0;
  for (const length of picture.lengths) {
    const drawn = stripAt(length, scale, y, width);
    parts.push(...drawn.parts);
    y = drawn.foot + GAP;
  }
  return frame(picture, "Cutting plan", width, Math.max(y - GAP + SMALL / 2, LINE), parts);
}

function stripAt(length: LengthDrawing, scale: number, top: number, width: number): { parts: Part[]; foot: number } {
  const head = paragraph(numbered("Length", "Lengths", length.numbers), 0, top + TEXT, width, "dw-strong");
  const facts = paragraph(
    `${length.stock}, ${size(length.lengthIn)}, rest ${size(length.restIn)}`,
    0,
    head.foot + LINE,
    width,
  );
  const y = facts.foot + 7;
  const long = length.lengthIn * scale;
  const parts: Part[] = [...head.parts, ...facts.parts];
  parts.push(box(1, y, long, STRIP, "dw-ground"), path(hatch(boxCorners(1, y, long, STRIP), 5, "/"), "dw-hatch"));
  const kinds = repeats(length.parts, kindOf);
  for (const part of length.parts) {
    const number = kinds.findIndex((k) => kindOf(k.item) === kindOf(part)) + 1;
    parts.push(piece(part, number, 1 + part.atIn * scale, y, part.lengthIn * scale));
  }
  parts.push(box(1, y, long, STRIP, "dw-outline"));
  const list = kinds.map(({ item, count }, i) => `${i + 1}: ${count} × ${markedName(item)}, ${size(item.lengthIn)}`);
  let foot = y + STRIP + 2;
  for (const text of list) {
    const row = paragraph(text, 0, foot + LINE, width);
    parts.push(...row.parts);
    foot = row.foot;
  }
  return { parts, foot };
}

function kindOf(part: LengthPart): string {
  return `${part.name}|${part.mark}|${part.lengthIn}`;
}

const markedName = ({ name, mark }: LengthPart): string => (mark === "" ? name : `${name}, mark ${mark}`);

/** A piece with its number and, where there is room, its name or its length. */
function piece(part: LengthPart, number: number, x: number, y: number, long: number): Part {
  const texts = [
    `${number} ${part.mark || part.name}, ${size(part.lengthIn)}`,
    `${number} ${part.mark || part.name}`,
    String(number),
  ];
  const text = texts.find((t) => textWidth(t, TEXT) + 4 <= long);
  return svg`${box(x, y, long, STRIP, "dw-part")}${text === undefined ? "" : write(text, x + long / 2, y + 16, "dw-text", "middle")}`;
}
