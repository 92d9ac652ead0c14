import type { Size } from "./layout.ts";

/** A place on a panel or offcut, in sixty-fourths; `source` is the panel's number from 0, or -1 - i for offcut i on hand. */
export interface Place {
  readonly source: number;
  /** lower left corner, along and across the panel */
  readonly x: number;
  readonly y: number;
}

/** A rectangle to cut from. */
export interface Rest extends Place {
  readonly length: number;
  readonly height: number;
}

export interface CutPlan {
  readonly panels: number;
  /** of each piece, in the order given: what it is cut from */
  readonly places: readonly Place[];
  readonly rests: readonly Rest[];
}

/**
 * Cuts pieces from offcuts and panels, tallest and longest first, each from the tightest rest that holds it, else from a new panel; edge to
 * edge, not turned. A full-height piece leaves one rest beside it; a ripped one leaves the larger rest whole.
 */
export function cutCourses(pieces: readonly Size[], stock: readonly Size[], panel: Size, kerf: number): CutPlan {
  const rests: Rest[] = stock.map((s, i) => ({ source: -1 - i, x: 0, y: 0, length: s.length, height: s.height }));
  const places = new Array<Place>(pieces.length);
  let panels = 0;
  const order = pieces.map((_, i) => i).sort((a, b) => bySize(pieces[a] as Size, pieces[b] as Size) || a - b);
  for (const i of order) {
    const piece = pieces[i] as Size;
    let best = -1;
    let bestArea = Number.POSITIVE_INFINITY;
    for (let k = 0; k < rests.length; k++) {
      const r = rests[k] as Rest;
      if (r.length < piece.length || r.height < piece.height) continue;
      // Offcuts on hand go first: they cost nothing.
      const area = r.length * r.height - (r.source < 0 ? panel.length * panel.height : 0);
      if (area < bestArea) {
        bestArea = area;
        best = k;
      }
    }
    const from: Rest = best < 0 ? { source: panels++, x: 0, y: 0, ...panel } : (rests[best] as Rest);
    if (best >= 0) {
      rests[best] = rests[rests.length - 1] as Rest;
      rests.pop();
    }
    places[i] = { source: from.source, x: from.x, y: from.y };
    for (const r of split(from, piece, kerf)) if (r.length > 0 && r.height > 0) rests.push(r);
  }
  return { panels, places, rests };
}

function bySize(a: Size, b: Size): number {
  return b.height - a.height || b.length - a.length;
}

function split(from: Rest, piece: Size, kerf: number): readonly [Rest, Rest] {
  const beside = { ...from, x: from.x + piece.length + kerf, length: from.length - piece.length - kerf };
  const above = { ...from, y: from.y + piece.height + kerf, height: from.height - piece.height - kerf };
  return beside.length * beside.height >= above.length * above.height
    ? [beside, { ...above, length: piece.length }]
    : [above, { ...beside, height: piece.height }];
}
