import { type SVGTemplateResult, svg } from "lit-html";
import type { ElevationPiece, WallElevationPicture } from "../../core/takeoff/pictures.ts";
import { rough } from "./figures.ts";
import { box, frame, LINE, line, type Part, paragraph, path, SMALL, TEXT, write, writeOver } from "./frame.ts";
import { boxCorners, hatch, type Point, points } from "./hatch.ts";
import { middleOf, type Span, spanAt, widestFree } from "./room.ts";
import { clipped, stretchesOf } from "./stretches.ts";
import { textWidth } from "./text.ts";

type Opening = WallElevationPicture["openings"][number];

/** Below so many pixels to a foot no course has room for the names of its pieces. */
const LEAST_SCALE = 6.5;

type Place = (corner: readonly [xFt: number, yFt: number]) => Point;

/** A wall from outside with the pieces of its courses, to scale; a long one in stretches below one another. */
export function wallElevation(picture: WallElevationPicture, width: number): SVGTemplateResult {
  const { lengthFt, heightFt } = picture;
  const name = `Elevation of ${picture.wall}, ${rough(lengthFt)} × ${rough(heightFt)} ft, from outside`;
  const title = paragraph(name, 0, TEXT, width, "dw-strong");
  // Columns stand in no opening, so a stretch that ends at one cuts none.
  const spans = stretchesOf(lengthFt, picture.columnsFt, (width - 4) / LEAST_SCALE);
  const scale = (width - 4) / Math.max(...spans.map(([from, to]) => to - from));
  const parts: Part[] = [...title.parts];
  let foot = title.foot - LINE;
  for (const span of spans) {
    const top = foot + LINE + 10;
    foot = top + heightFt * scale + LINE + 5;
    parts.push(...stretch(picture, span, scale, top, width));
  }
  const key = keyOf(picture, foot + LINE + 6, width);
  return frame(picture, "Wall elevation", width, key.foot, [...parts, ...key.parts]);
}

function stretch(picture: WallElevationPicture, span: Span, scale: number, top: number, width: number): Part[] {
  const foot = top + picture.heightFt * scale;
  const place: Place = ([xFt, yFt]) => [2 + (xFt - span[0]) * scale, foot - yFt * scale];
  const holds = (xFt: number) => xFt >= span[0] && xFt <= span[1];
  const outline = clipped(picture.outline, span);
  const boxes = picture.openings.filter((o) => holds(o.leftFt + o.widthFt / 2)).map((o) => opened(o, place, scale));
  const pieces = picture.pieces
    .map((piece) => ({ piece, corners: clipped(piece.corners, span).map(place) }))
    .filter(({ corners }) => corners.length > 2);
  const columns = picture.columnsFt.filter(holds);
  return [
    ...pieces.map(({ piece, corners }) => pieceArea(piece, corners)),
    ...columns.map((x) => column(place([x, 0]), place([x, reachAt(outline, x)])[1])),
    ...picture.joints
      .filter((j) => holds(j.xFt))
      .map((j) => {
        const [x, low] = place([j.xFt, j.bottomFt]);
        return line(x, low, x, place([j.xFt, j.topFt])[1], "dw-joint");
      }),
    ...boxes.map(({ x, y, wide, tall }) => opening(x, y, wide, tall)),
    svg`<polygon class="dw-outline" points=${points(outline.map(place))}></polygon>`,
    ...pieces.map(({ piece, corners }) => pieceName(piece, picture.wall, corners, boxes)),
    ...boxes.flatMap(({ name, x, y, wide, tall }) =>
      textWidth(name, TEXT) + 4 <= wide && tall >= LINE
        ? [writeOver(name, x + wide / 2, y + tall / 2 + 4, "dw-text", "middle")]
        : [],
    ),
    ...marks(columns, (x) => place([x, 0])[0], foot, width),
  ];
}

function pieceArea(p: ElevationPiece, corners: readonly Point[]): Part {
  return svg`<polygon class="dw-part" points=${points(corners)}></polygon>${
    p.panel === 0 ? path(hatch(corners, 7, "/"), "dw-hatch") : ""
  }`;
}

/** The name of a piece, below it the panel that it is cut from where that fits, beside the openings. */
function pieceName(p: ElevationPiece, wall: string, corners: readonly Point[], openings: readonly OpenBox[]): Part {
  const name = p.name.startsWith(`${wall} `) ? p.name.slice(wall.length + 1) : p.name;
  const from = p.panel === 0 ? "offcut" : `panel ${p.panel}`;
  const tall = Math.max(...corners.map(([, y]) => y)) - Math.min(...corners.map(([, y]) => y));
  const y = middleOf(corners)[1];
  for (const rows of [[`${name}, ${from}`], [name, from], [name]]) {
    const high = rows.length * (LINE - 2);
    const [upper, lower] = [spanAt(corners, y - high / 2), spanAt(corners, y + high / 2)];
    if (high > tall || upper === undefined || lower === undefined) continue;
    const within: Span = [Math.max(upper[0], lower[0]), Math.min(upper[1], lower[1])];
    const blocks = openings
      .filter((o) => o.y < y + high / 2 && o.y + o.tall > y - high / 2)
      .map((o): Span => [o.x, o.x + o.wide]);
    const free = widestFree(within, blocks);
    if (Math.max(...rows.map((row) => textWidth(row, TEXT))) + 10 > free[1] - free[0]) continue;
    const [x, first] = [(free[0] + free[1]) / 2, y + 4 - ((rows.length - 1) * (LINE - 2)) / 2];
    return svg`${rows.map((row, i) => writeOver(row, x, first + i * (LINE - 2), i === 0 ? "dw-strong" : "dw-text", "middle"))}`;
  }
  return svg``;
}

interface OpenBox {
  readonly name: string;
  readonly x: number;
  readonly y: number;
  readonly wide: number;
  readonly tall: number;
}

function opened(o: Opening, place: Place, scale: number): OpenBox {
  const [x, y] = place([o.leftFt, o.sillFt + o.heightFt]);
  return { name: o.name, x, y, wide: o.widthFt * scale, tall: o.heightFt * scale };
}

/** An opening with its diagonals: what is cut out of the panels that cross it. */
function opening(x: number, y: number, wide: number, tall: number): Part {
  return svg`${box(x, y, wide, tall, "dw-opening")}${line(x, y, x + wide, y + tall, "dw-leader")}${line(x, y + tall, x + wide, y, "dw-leader")}`;
}

function column([x, foot]: Point, top: number): Part {
  return line(x, top, x, foot + 8, "dw-column");
}

/** How high an outline reaches at a place along the wall. */
function reachAt(outline: readonly Point[], xFt: number): number {
  const onItsSide = outline.map(([x, y]): Point => [y, x]);
  return spanAt(onItsSide, xFt)?.[1] ?? 0;
}

/** Where the columns stand, in feet; figures without room are left out, those of the ends last. */
function marks(columnsFt: readonly number[], x: (ft: number) => number, foot: number, width: number): readonly Part[] {
  const wanted = columnsFt.map((ft, i) => ({ ft, text: rough(ft), end: i === 0 || i === columnsFt.length - 1 }));
  const taken: Span[] = [];
  const out: Part[] = [];
  for (const { ft, text } of [...wanted].sort((a, b) => Number(b.end) - Number(a.end))) {
    const half = textWidth(text, TEXT) / 2;
    const middle = Math.min(Math.max(x(ft), half), width - half);
    if (taken.some(([a, b]) => middle + half + 3 > a && middle - half - 3 < b)) continue;
    taken.push([middle - half, middle + half]);
    out.push(write(text, middle, foot + 8 + LINE - 3, "dw-text", "middle"));
  }
  return out;
}

function keyOf(picture: WallElevationPicture, top: number, width: number): { parts: Part[]; foot: number } {
  const rows: [Part, string][] = [[line(13, -10, 13, 2, "dw-column"), "column, feet from the left end"]];
  if (picture.joints.length > 0) rows.push([line(13, -10, 13, 2, "dw-joint"), "joint"]);
  if (picture.openings.length > 0) {
    const named = [...picture.openings]
      .sort((a, b) => a.leftFt - b.leftFt)
      .map((o) => o.name)
      .join(", ");
    rows.push([opening(1, -10, 24, 12), `opening, cut out of the panels; from the left: ${named}`]);
  }
  if (picture.pieces.some((p) => p.panel === 0)) {
    rows.push([path(hatch(boxCorners(1, -10, 24, 12), 6, "/"), "dw-hatch"), "piece from an offcut"]);
  }
  rows.push([
    write("1-2", 13, 0, "dw-strong", "middle"),
    "course from the foot and piece; a piece too small for its name is in the table",
  ]);
  const parts: Part[] = [];
  let y = top;
  for (const [mark, text] of rows) {
    parts.push(svg`<g transform="translate(0 ${y})">${mark}</g>`);
    const said = paragraph(text, 34, y, width - 34);
    parts.push(...said.parts);
    y = said.foot + LINE + 2;
  }
  return { parts, foot: y - LINE + SMALL / 2 };
}
