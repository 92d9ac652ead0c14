import { type SVGTemplateResult, svg } from "lit-html";
import type { CuttingLayoutPicture, SheetDrawing } from "../../core/cutting/pictures.ts";
import { formatLength } from "../../core/units/length.ts";
import { short } from "./parts/figures.ts";
import { box, frame, LINE, line, type Part, paragraph, path, SMALL, TEXT, write, writeOver } from "./parts/frame.ts";
import { boxCorners, hatch } from "./parts/hatch.ts";
import { numbered, repeats } from "./parts/repeats.ts";
import { at } from "./parts/scale.ts";
import { textWidth } from "./parts/text.ts";

const GAP = 18;
/** More cuts than this are numbered in the list alone. */
const MOST_NUMBERED = 16;
/** Leftovers named below a sheet: none narrower than this, as in the stock rows, and so many at most. */
const LEAST_REST_IN = 6;
const MOST_RESTS = 4;

/** Feet, inches and sixteenths, as a tape is read. */
const size = (inches: number): string => formatLength(inches, 16);

type SheetPart = SheetDrawing["parts"][number];

/** Sheet by sheet what is cut where, sheets that are alike once; what is left over is hatched. */
export function cuttingLayout(picture: CuttingLayoutPicture, width: number): SVGTemplateResult {
  const longest = Math.max(...picture.sheets.map((s) => s.lengthIn));
  const scale = (width - 2) / longest;
  const parts: Part[] = [];
  let y = 0;
  for (const sheet of picture.sheets) {
    const drawn = sheetAt(sheet, scale, y, width);
    parts.push(...drawn.parts);
    y = drawn.foot + GAP;
  }
  if (picture.sheets.length > 0) {
    parts.push(path(hatch(boxCorners(1, y - 2, 26, 12), 6, "/"), "dw-hatch"), box(1, y - 2, 26, 12, "dw-edge"));
    parts.push(write("left over; cuts are numbered in the order of the saw", 34, y + 8));
  }
  return frame(picture, "Cutting layouts", width, y + 8 + SMALL / 2, parts);
}

function sheetAt(sheet: SheetDrawing, scale: number, top: number, width: number): { parts: Part[]; foot: number } {
  const used = sheet.parts.reduce((sum, p) => sum + p.lengthIn * p.widthIn, 0) / (sheet.lengthIn * sheet.widthIn);
  const head = paragraph(numbered("Sheet", "Sheets", sheet.numbers), 0, top + TEXT, width, "dw-strong");
  const says = `${sheet.stock}, ${size(sheet.lengthIn)} × ${size(sheet.widthIn)}, ${short(100 * used, 0)} % used`;
  const facts = paragraph(says, 0, head.foot + LINE, width);
  const y = facts.foot + 7;
  const [long, wide] = [sheet.lengthIn * scale, sheet.widthIn * scale];
  const parts: Part[] = [...head.parts, ...facts.parts];
  parts.push(box(1, y, long, wide, "dw-ground"), path(hatch(boxCorners(1, y, long, wide), 6, "/"), "dw-hatch"));

  const kinds = repeats(sheet.parts, kindOf);
  for (const part of sheet.parts) {
    const number = kinds.findIndex((k) => kindOf(k.item) === kindOf(part)) + 1;
    const left = 1 + part.xIn * scale;
    // y of a layout runs up from the lower edge.
    const over = y + (sheet.widthIn - part.yIn - part.widthIn) * scale;
    parts.push(box(left, over, part.lengthIn * scale, part.widthIn * scale, "dw-part"));
    parts.push(label(part, number, left, over, part.lengthIn * scale, part.widthIn * scale));
  }
  parts.push(box(1, y, long, wide, "dw-outline"));
  sheet.cuts.forEach((cut, i) => {
    const across = cut.direction === "across";
    const place = (alongIn: number, upIn: number): [number, number] => [
      1 + alongIn * scale,
      y + (sheet.widthIn - upIn) * scale,
    ];
    const [x1, y1] = across ? place(cut.atIn, cut.fromIn) : place(cut.fromIn, cut.atIn);
    const [x2, y2] = across ? place(cut.atIn, cut.toIn) : place(cut.toIn, cut.atIn);
    parts.push(line(x1, y1, x2, y2, "dw-edge"));
    if (sheet.cuts.length > MOST_NUMBERED) return;
    parts.push(
      across
        ? writeOver(String(i + 1), x1, y2 + TEXT, "dw-strong", "middle")
        : writeOver(String(i + 1), x1 + 3, y1 + 4, "dw-strong"),
    );
  });

  let foot = y + wide + 4;
  kinds.forEach(({ item, count }, i) => {
    const marked = item.mark === "" ? item.name : `${item.name}, mark ${item.mark}`;
    const text = `${marked}, ${sizeOf(item)}${item.turned ? ", turned" : ""}, ${count} ${count === 1 ? "piece" : "pieces"}`;
    parts.push(write(String(i + 1), 16, foot + LINE, "dw-strong", "end"));
    const row = paragraph(text, 22, foot + LINE, width - 22);
    parts.push(...row.parts);
    foot = row.foot;
  });
  const cuts = paragraph(`Cuts: ${cutList(sheet)}`, 0, foot + LINE, width);
  parts.push(...cuts.parts);
  const leaves = paragraph(`Leaves: ${restList(sheet)}`, 0, cuts.foot + LINE, width);
  parts.push(...leaves.parts);
  return { parts, foot: leaves.foot };
}

/** The leftovers that are worth keeping, the largest first. */
function restList({ rests }: SheetDrawing): string {
  const kept = rests.filter((r) => Math.min(r.lengthIn, r.widthIn) >= LEAST_REST_IN);
  if (kept.length === 0) return "nothing to keep";
  const named = kept.slice(0, MOST_RESTS).map((r) => `${size(r.lengthIn)} × ${size(r.widthIn)}`);
  return `${named.join("; ")}${kept.length > MOST_RESTS ? `; ${kept.length - MOST_RESTS} smaller` : ""}`;
}

/** "1 across at 4'-0", 2 along at 2'-0", then turned: 3 ..." */
function cutList({ cuts }: SheetDrawing): string {
  if (cuts.length === 0) return "none, the part is the whole sheet";
  return cuts.map((c, i) => `${i + 1} ${c.direction} at ${size(c.atIn)}, stage ${c.stage}`).join("; ");
}

/** Length and width as the part list gives them, not as laid. */
function sizeOf(part: SheetPart): string {
  const [length, width] = part.turned ? [part.widthIn, part.lengthIn] : [part.lengthIn, part.widthIn];
  return `${size(length)} × ${size(width)}`;
}

function kindOf(part: SheetPart): string {
  return `${part.name}|${part.mark}|${sizeOf(part)}|${part.turned}`;
}

/** Name and size where they fit, upright where only that does; else the number of the list below. */
function label(part: SheetPart, number: number, x: number, y: number, long: number, wide: number): Part {
  const [middleX, middleY] = [x + long / 2, y + wide / 2];
  const name = part.mark === "" ? part.name : part.mark;
  const upright = wide > long;
  // A number alone may stand close to the edges.
  for (const [rows, margin] of [
    [[name, sizeOf(part)], 8],
    [[name], 8],
    [[String(number)], 1],
  ] as const) {
    const need = Math.max(...rows.map((row) => textWidth(row, TEXT))) + margin;
    const tall = rows.length * (LINE - 2) + 2;
    if (need <= long && tall <= wide) return svg`${textRows(rows, middleX, middleY)}`;
    if (upright && need <= wide && tall <= long) {
      return svg`<g transform="rotate(-90 ${at(middleX)} ${at(middleY)})">${textRows(rows, middleX, middleY)}</g>`;
    }
  }
  return svg``;
}

function textRows(rows: readonly string[], x: number, y: number): readonly Part[] {
  const first = y + 4 - ((rows.length - 1) * (LINE - 2)) / 2;
  return rows.map((row, i) => write(row, x, first + i * (LINE - 2), i === 0 ? "dw-strong" : "dw-text", "middle"));
}
