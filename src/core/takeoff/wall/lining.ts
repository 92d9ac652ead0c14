import { OutOfRange, plain } from "../../kit/refusal.ts";
import type { Tape } from "../../kit/tape.ts";
import { INCHES_IN } from "../../units/length.ts";
import { type Rect, rowPieces } from "./board-pieces.ts";
import { exceeds, wholeBelow } from "./close.ts";
import { cornersOnWall, elevation } from "./elevation.ts";
import { marksOf } from "./marks.ts";
import { placedOpenings } from "./opening.ts";
import { checkOpenings, grossAreaFt2, type OpenedWall, tallestFt } from "./wall.ts";

/** Parts of the lining that are alike, on one wall. */
export interface LiningPart {
  readonly name: string;
  /** upright, along the grain */
  readonly lengthIn: number;
  readonly widthIn: number;
  readonly count: number;
  readonly mark: string;
}

/** Parts in one lining; more would stop the sheet for too long. */
const MOST_PARTS = 3000;
/** Sizes that differ by less are one: the tape is read to a sixteenth. */
const PER_IN = 16;

/**
 * Parts that line walls with upright sheets, from the left end and the foot of each wall: whole sheets, and what openings, the top and the rakes
 * leave of others. A part with a notch counts as the rectangle that it is cut from, and so does one that a rake cuts.
 * @param sheet its length stands upright
 * @throws BadInput for openings without a place, OutOfRange for too many parts
 */
export function lining(
  walls: readonly OpenedWall[],
  sheet: { readonly lengthFt: number; readonly widthFt: number },
  tape?: Tape,
): readonly LiningPart[] {
  const areaFt2 = walls.reduce((sum, w) => sum + grossAreaFt2(w.wall), 0);
  const about = areaFt2 / (sheet.lengthFt * sheet.widthFt);
  if (about > MOST_PARTS) {
    throw new OutOfRange(
      `The walls take about ${plain(Math.ceil(about))} sheets`,
      `a lining is worked out for up to ${MOST_PARTS}`,
      "Take fewer walls at once, or check the size of the sheet",
    );
  }
  const marks = marksOf(walls.map((w) => w.wall.name));
  return walls.flatMap((w, i) => wallLining(w, sheet, marks[i] ?? "", tape));
}

function wallLining(
  opened: OpenedWall,
  sheet: { readonly lengthFt: number; readonly widthFt: number },
  mark: string,
  tape?: Tape,
): readonly LiningPart[] {
  checkOpenings(opened);
  const { wall } = opened;
  const openings = placedOpenings(opened.openings, tape);
  const pieces: Rect[] = [];
  for (let y0 = 0; exceeds(tallestFt(wall), y0); y0 += sheet.lengthFt) {
    pieces.push(...rowPieces(wall, openings, y0, y0 + sheet.lengthFt, 0, sheet.widthFt));
  }
  const sizes = pieces.map(sizeKey);
  const kinds = [...new Set(sizes)].sort(bySize);
  const names = sizes.map((size) => `${mark} ${kinds.indexOf(size) + 1}`);
  const areaFt2 = pieces.reduce((sum, r) => sum + (r.x1 - r.x0) * (r.y1 - r.y0), 0);
  tape?.step("n", `${wall.name}: parts in ${kinds.length} sizes`, pieces.length, "parts", "geometry");
  tape?.step("A", `${wall.name}: area of their rectangles`, areaFt2, "ft2", "geometry");
  tape?.show(
    elevation("lining", wall, openings, {
      pieces: pieces.map((r, i) => ({
        name: names[i] ?? "",
        from: "",
        leftover: false,
        corners: cornersOnWall(wall, r),
      })),
      alt: `${pieces.length} parts of lining in ${kinds.length} sizes`,
    }),
  );
  return kinds.map((key, k) => {
    const [lengthIn = 0, widthIn = 0] = key.split("x").map((n) => Number(n) / PER_IN);
    const count = sizes.filter((size) => size === key).length;
    return { name: `${wall.name} lining ${k + 1}`, lengthIn, widthIn, count, mark: `${mark} ${k + 1}` };
  });
}

/** Length and width of a piece in sixteenths of an inch, rounded down so that no part is larger than its place. */
function sizeKey(r: Rect): string {
  const sixteenths = (ft: number) => wholeBelow(ft * INCHES_IN.ft * PER_IN);
  return `${sixteenths(r.y1 - r.y0)}x${sixteenths(r.x1 - r.x0)}`;
}

/** Largest first, so that the marks run from the whole sheet to the smallest strip. */
function bySize(a: string, b: string): number {
  const area = (key: string) => key.split("x").reduce((product, n) => product * Number(n), 1);
  return area(b) - area(a) || (a < b ? 1 : -1);
}
