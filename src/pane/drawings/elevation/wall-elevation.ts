import { type SVGTemplateResult, svg } from "lit-html";
import type { ElevationPiece, Upright, WallElevationPicture } from "../../../core/takeoff/wall/pictures.ts";
import { formatLength } from "../../../core/units/length.ts";
import { frame, LINE, line, type Part, paragraph, path, TEXT, write, writeOver } from "../parts/frame.ts";
import { hatch, type Point, points } from "../parts/hatch.ts";
import type { Span } from "../parts/room.ts";
import { clipped, stretchesOf } from "../parts/stretches.ts";
import { textWidth } from "../parts/text.ts";
import { elevationKey, openingSign } from "./elevation-key.ts";
import { levels, type Named, nameOf, type OpenBox } from "./elevation-labels.ts";

type Opening = WallElevationPicture["openings"][number];

/** Fewest pixels to a foot: names of pieces and figures of columns keep their room; a longer wall is drawn in stretches below one another. */
const LEAST_SCALE = 10;
/** A column's line reaches so far below the foot. */
const BELOW = 8;

type Place = (corner: readonly [xFt: number, yFt: number]) => Point;

/** A wall from outside with what is laid out on it, to scale. */
export function wallElevation(picture: WallElevationPicture, width: number): SVGTemplateResult {
  const { lengthFt, heightFt } = picture;
  const name = `${picture.wall}, ${feet(lengthFt)} long, ${feet(heightFt)} high, from outside`;
  const title = paragraph(name, 0, TEXT, width, "dw-strong");
  const spans = stretchesOf(lengthFt, breaksOf(picture), (width - 4) / LEAST_SCALE);
  const scale = (width - 4) / Math.max(...spans.map(([from, to]) => to - from));
  const parts: Part[] = [...title.parts];
  const unnamed: string[] = [];
  let foot = title.foot - LINE;
  for (const span of spans) {
    const drawn = stretch(picture, span, scale, foot + LINE + 10, width);
    parts.push(...drawn.parts);
    unnamed.push(...drawn.unnamed);
    foot = drawn.foot;
  }
  const key = elevationKey(picture, unnamed, foot + LINE + 6, width);
  return frame(picture, "Wall elevation", width, key.foot, [...parts, ...key.parts]);
}

/** Feet and inches to the sixteenth, as a tape reads them. */
function feet(ft: number): string {
  return formatLength(ft * 12, 16);
}

/** Where a long wall may be parted: at columns, else at whole feet; never in an opening. */
function breaksOf({ subject, uprights, openings, lengthFt }: WallElevationPicture): readonly number[] {
  const columns = subject === "columns" || subject === "panels" ? uprights.map((u) => u.xFt) : [];
  const places = columns.length > 0 ? columns : Array.from({ length: Math.floor(lengthFt) }, (_, i) => i + 1);
  return places.filter((x) => !openings.some((o) => x > o.leftFt && x < o.leftFt + o.widthFt));
}

interface Drawn {
  readonly parts: readonly Part[];
  readonly foot: number;
  /** pieces whose names had no room, for the key */
  readonly unnamed: readonly string[];
}

function stretch(picture: WallElevationPicture, span: Span, scale: number, top: number, width: number): Drawn {
  const foot = top + picture.heightFt * scale;
  const place: Place = ([xFt, yFt]) => [2 + (xFt - span[0]) * scale, foot - yFt * scale];
  const holds = (xFt: number) => xFt >= span[0] - 1e-9 && xFt <= span[1] + 1e-9;
  const outline = clipped(picture.outline, span);
  const boxes = picture.openings.flatMap((o, i) =>
    holds(o.leftFt + o.widthFt / 2) ? [opened(o, i + 1, place, scale)] : [],
  );
  const pieces = picture.pieces
    .map((piece) => ({ piece, corners: clipped(piece.corners, span).map(place) }))
    .filter(({ corners }) => corners.length > 2);
  const uprights = picture.uprights.filter((u) => holds(u.xFt));
  const names = pieces.map(({ piece, corners }) => nameOf(piece, corners, boxes));
  const marks = marksBelow(picture, uprights, place, foot, width);
  return {
    parts: [
      ...pieces.map(({ piece, corners }) => pieceArea(piece, corners)),
      ...uprights.map((u) => upright(picture, u, place)),
      ...picture.joints
        .filter((j) => holds(j.xFt))
        .map(({ xFt, bottomFt, topFt }) => vertical(place([xFt, bottomFt]), place([xFt, topFt])[1], "dw-joint")),
      ...boxes.map(openingSign),
      svg`<polygon class="dw-outline" points=${points(outline.map(place))}></polygon>`,
      ...names.flatMap((n) => n.parts),
      ...boxes.map(openingName),
      ...marks.parts,
    ],
    foot: marks.foot,
    unnamed: missing(names),
  };
}

function missing(names: readonly Named[]): readonly string[] {
  return names.flatMap((n) => (n.unnamed === undefined ? [] : [n.unnamed]));
}

function pieceArea(p: ElevationPiece, corners: readonly Point[]): Part {
  return svg`<polygon class="dw-part" points=${points(corners)}></polygon>${
    p.leftover ? path(hatch(corners, 7, "/"), "dw-hatch") : ""
  }`;
}

function opened(o: Opening, number: number, place: Place, scale: number): OpenBox {
  const [x, y] = place([o.leftFt, o.sillFt + o.heightFt]);
  return { name: o.name, number, x, y, wide: o.widthFt * scale, tall: o.heightFt * scale };
}

/** The name of an opening where it fits, else its number in the key. */
function openingName({ name, number, x, y, wide, tall }: OpenBox): Part {
  const fits = textWidth(name, TEXT) + 4 <= wide && tall >= LINE;
  return writeOver(fits ? name : String(number), x + wide / 2, y + tall / 2 + 4, "dw-text", "middle");
}

function upright(picture: WallElevationPicture, u: Upright, place: Place): Part {
  const [x, low] = place([u.xFt, u.bottomFt]);
  const high = place([u.xFt, u.topFt])[1];
  return picture.subject === "furring" ? line(x, low, x, high, "dw-strip") : line(x, low + BELOW, x, high, "dw-column");
}

function vertical([x, low]: Point, high: number, look: string): Part {
  return line(x, low, x, high, look);
}

/** Where the columns stand, in feet and inches; what has no room beside its neighbors goes a line lower. None is left out. */
function marksBelow(
  { subject, lengthFt }: WallElevationPicture,
  uprights: readonly Upright[],
  place: Place,
  foot: number,
  width: number,
): { readonly parts: readonly Part[]; readonly foot: number } {
  const wanted = subject === "furring" || uprights.length === 0 ? [0, lengthFt] : uprights.map((u) => u.xFt);
  const shown = wanted
    .map((xFt) => ({ text: feet(xFt), x: place([xFt, 0])[0] }))
    .filter(({ x }) => x > 0 && x <= width);
  const at = levels(
    shown.map(({ text, x }) => ({ x, width: textWidth(text, TEXT) })),
    width,
  );
  const first = foot + BELOW + LINE - 3;
  const parts = shown.flatMap(({ text, x }, i) => {
    const { level, middle } = at[i] ?? { level: 0, middle: x };
    const y = first + level * LINE;
    const lead = level === 0 ? [] : [line(x, foot + BELOW, x, y - TEXT + 1, "dw-leader")];
    return [...lead, write(text, middle, y, "dw-text", "middle")];
  });
  return { parts, foot: first + Math.max(0, ...at.map((a) => a.level)) * LINE };
}
