import type { Cut } from "./types.ts";

/** A part as it lies in the inflated sheet, sixty-fourths of an inch; a part takes its kerf with it, right and above. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}

/** A saw line in the inflated sheet: `at` is the far edge of the kerf. */
export interface Line extends Omit<Cut, "atIn" | "fromIn" | "toIn"> {
  readonly at: number;
  readonly from: number;
  readonly to: number;
}

/**
 * The order of edge-to-edge cuts that separates the parts: every piece on the saw is cut right through until one part
 * is left in it, then that part is cut to size. Stages count the turns of the saw.
 */
export function cutLines(boxes: readonly Box[], w: number, h: number): Line[] {
  const lines: Line[] = [];
  separate([...boxes], 0, 0, w, h, 1, undefined, lines);
  return lines;
}

type Direction = Cut["direction"];

function separate(
  boxes: readonly Box[],
  x: number,
  y: number,
  w: number,
  h: number,
  stage: number,
  last: Direction | undefined,
  lines: Line[],
): void {
  if (boxes.length === 0) return;
  const order: readonly Direction[] = last === "along" ? ["along", "across"] : ["across", "along"];
  for (const direction of order) {
    const at = splitAt(boxes, direction, x, y, w, h);
    if (at === undefined) continue;
    const across = direction === "across";
    const next = last === undefined || last === direction ? stage : stage + 1;
    lines.push(
      across ? { direction, at, from: y, to: y + h, stage: next } : { direction, at, from: x, to: x + w, stage: next },
    );
    const near = boxes.filter((b) => (across ? b.x < at : b.y < at));
    const far = boxes.filter((b) => (across ? b.x >= at : b.y >= at));
    if (across) {
      separate(near, x, y, at - x, h, next, direction, lines);
      separate(far, at, y, x + w - at, h, next, direction, lines);
    } else {
      separate(near, x, y, w, at - y, next, direction, lines);
      separate(far, x, at, w, y + h - at, next, direction, lines);
    }
    return;
  }
}

/** The first line between parts, or beside the only part, that cuts through none; undefined where nothing is to cut. */
function splitAt(
  boxes: readonly Box[],
  direction: Direction,
  x: number,
  y: number,
  w: number,
  h: number,
): number | undefined {
  const across = direction === "across";
  const end = across ? x + w : y + h;
  const start = across ? x : y;
  const spans = boxes
    .map((b) => (across ? [b.x, b.x + b.w] : [b.y, b.y + b.h]) as [number, number])
    .sort((a, b) => a[0] - b[0]);
  if (spans[0]![0] > start) return spans[0]![0];
  let reach = spans[0]![1];
  for (const [from, to] of spans.slice(1)) {
    if (from >= reach) return reach;
    reach = Math.max(reach, to);
  }
  return reach < end ? reach : undefined;
}
