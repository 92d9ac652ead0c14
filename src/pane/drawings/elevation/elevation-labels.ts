import { svg } from "lit-html";
import type { ElevationPiece } from "../../../core/takeoff/wall/pictures.ts";
import { LINE, type Part, TEXT, writeOver } from "../parts/frame.ts";
import type { Point } from "../parts/hatch.ts";
import { middleOf, type Span, spanAt, widestFree } from "../parts/room.ts";
import { at } from "../parts/scale.ts";
import { textWidth } from "../parts/text.ts";

/** Names in an elevation: each is written where it has room, and none is dropped without a word. */

/** An opening as it is drawn. */
export interface OpenBox {
  readonly name: string;
  /** in the key, from the left */
  readonly number: number;
  readonly x: number;
  readonly y: number;
  readonly wide: number;
  readonly tall: number;
}

export interface Named {
  readonly parts: readonly Part[];
  /** the name, where it has no room on its piece */
  readonly unnamed?: string;
}

const ROW = LINE - 2;

/** The name of a piece and what it is cut from: on one line, on two, the name alone, or the name upright; beside the openings. */
export function nameOf(piece: ElevationPiece, corners: readonly Point[], openings: readonly OpenBox[]): Named {
  const { name, from } = piece;
  if (name === "") return { parts: [] };
  const ys = corners.map(([, y]) => y);
  const tall = Math.max(...ys) - Math.min(...ys);
  const y = middleOf(corners)[1];
  const choices = from === "" ? [[name]] : [[`${name}, ${from}`], [name, from], [name]];
  for (const rows of choices) {
    const high = rows.length * ROW;
    const free = high > tall ? undefined : freeSpan(corners, y, high, openings);
    if (free === undefined || Math.max(...rows.map((row) => textWidth(row, TEXT))) + 6 > free[1] - free[0]) continue;
    const [x, first] = [(free[0] + free[1]) / 2, y + 4 - ((rows.length - 1) * ROW) / 2];
    const looks = (i: number) => (i === 0 ? "dw-strong" : "dw-text");
    return { parts: rows.map((row, i) => writeOver(row, x, first + i * ROW, looks(i), "middle")) };
  }
  return uprightName(name, corners, y, openings);
}

function uprightName(name: string, corners: readonly Point[], y: number, openings: readonly OpenBox[]): Named {
  const long = textWidth(name, TEXT);
  const free = freeSpan(corners, y, long, openings);
  if (free === undefined || free[1] - free[0] < TEXT) return { parts: [], unnamed: name };
  const x = (free[0] + free[1]) / 2;
  const turned = `rotate(-90 ${at(x)} ${at(y)})`;
  return { parts: [svg`<g transform=${turned}>${writeOver(name, x, y + 4, "dw-strong", "middle")}</g>`] };
}

/** The widest stretch of a piece around a height that no opening takes. */
function freeSpan(corners: readonly Point[], y: number, high: number, openings: readonly OpenBox[]): Span | undefined {
  const [upper, lower] = [spanAt(corners, y - high / 2), spanAt(corners, y + high / 2)];
  if (upper === undefined || lower === undefined) return undefined;
  const within: Span = [Math.max(upper[0], lower[0]), Math.min(upper[1], lower[1])];
  const blocks = openings
    .filter((o) => o.y < y + high / 2 && o.y + o.tall > y - high / 2)
    .map((o): Span => [o.x, o.x + o.wide]);
  return widestFree(within, blocks);
}

/** For texts that are to stand centered at their places: the line of each, from 0, and its middle; texts on one line keep apart. */
export function levels(
  texts: readonly { readonly x: number; readonly width: number }[],
  width: number,
): readonly { readonly level: number; readonly middle: number }[] {
  const taken: Span[][] = [];
  return texts.map(({ x, width: wide }) => {
    const middle = Math.min(Math.max(x, wide / 2), width - wide / 2);
    const span: Span = [middle - wide / 2 - 3, middle + wide / 2 + 3];
    let level = 0;
    while (taken[level]?.some(([a, b]) => span[1] > a && span[0] < b)) level++;
    taken[level] = [...(taken[level] ?? []), span];
    return { level, middle };
  });
}
