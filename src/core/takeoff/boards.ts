import { OutOfRange, plain } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import { boardPieces } from "./board-pieces.ts";
import { cautionSills, type Opening, type PlacedOpening } from "./opening.ts";
import type { OrderLine } from "./order.ts";
import { packsWithWaste } from "./packs.ts";
import { CLOSE_FT, checkOpenings, grossAreaFt2, type Wall } from "./wall.ts";

/** Enough for a wall of 1000 x 100 ft in 4 x 8 ft boards; more would stop the sheet for too long. */
const MOST_BOARDS = 4000;

interface Size {
  readonly a: number;
  readonly b: number;
}

/**
 * Boards that pieces are cut from, offcuts used again: largest piece first, each from the smallest offcut that holds it either way round,
 * else from a new board; cuts run from edge to edge.
 */
export function boardsForPieces(pieces: readonly Size[], boardFt: number, rowFt: number): number {
  const offcuts: Size[] = [];
  let boards = 0;
  const cut = (from: Size, p: Size) => {
    const right = { a: from.a - p.a, b: from.b };
    const above = { a: from.a, b: from.b - p.b };
    const rest = right.a * right.b > above.a * above.b ? [right, { ...above, a: p.a }] : [above, { ...right, b: p.b }];
    offcuts.push(...rest.filter((r) => r.a > CLOSE_FT && r.b > CLOSE_FT));
  };
  for (const piece of [...pieces].sort((p, q) => q.a * q.b - p.a * p.b || q.a - p.a)) {
    let best = -1;
    let turned = false;
    offcuts.forEach((o, i) => {
      const straight = fits(piece, o);
      const across = fits({ a: piece.b, b: piece.a }, o);
      const held = offcuts[best];
      if ((straight || across) && (held === undefined || o.a * o.b < held.a * held.b)) {
        best = i;
        turned = !straight;
      }
    });
    const from = offcuts[best];
    if (from === undefined) {
      boards++;
      cut({ a: boardFt, b: rowFt }, piece);
    } else {
      offcuts.splice(best, 1);
      cut(from, turned ? { a: piece.b, b: piece.a } : piece);
    }
  }
  return boards;
}

function fits(piece: Size, offcut: Size): boolean {
  return piece.a <= offcut.a + CLOSE_FT && piece.b <= offcut.b + CLOSE_FT;
}

/**
 * Insulation boards for a wall, layer by layer, from the layout with staggered joints; offcuts are used again within a layer. Waste is a share of the
 * boards. Layers of one thickness are ordered together.
 * @param thicknessesIn of each layer, from the wall out
 * @param perBundle boards in one bundle
 */
export function boards(
  wall: Wall,
  openings: readonly Opening[],
  board: { readonly lengthFt: number; readonly widthFt: number },
  thicknessesIn: readonly number[],
  perBundle: number,
  waste: number,
  tape?: Tape,
): readonly OrderLine[] {
  checkOpenings(wall, openings);
  const slots = grossAreaFt2(wall) / (board.lengthFt * board.widthFt);
  if (slots > MOST_BOARDS) {
    throw new OutOfRange(
      `The wall takes about ${plain(Math.ceil(slots))} boards a layer`,
      `a layout is worked out for up to ${MOST_BOARDS}`,
      "Split the wall, or check the size of the board",
    );
  }
  cautionSills(openings, tape);
  const placed = openings.filter((o): o is PlacedOpening => o.leftFt !== undefined);
  if (placed.length < openings.length) {
    tape?.assume(
      "Openings without a left edge are covered and cut out: no board is saved, as their place is not known.",
    );
  }
  const byThickness = new Map<number, number>();
  const perParity = [0, 1].map((layer) => {
    if (layer >= thicknessesIn.length) return 0;
    const pieces = boardPieces(wall, placed, board.lengthFt, board.widthFt, layer);
    return boardsForPieces(
      pieces.map((r) => ({ a: r.x1 - r.x0, b: r.y1 - r.y0 })),
      board.lengthFt,
      board.widthFt,
    );
  });
  thicknessesIn.forEach((thicknessIn, layer) => {
    const count = perParity[layer % 2] ?? 0;
    tape?.step(
      `n_${layer + 1}`,
      `layer ${layer + 1}, ${plain(thicknessIn)} in: boards cut by the layout`,
      count,
      "boards",
      "",
    );
    byThickness.set(thicknessIn, (byThickness.get(thicknessIn) ?? 0) + count);
  });
  const size = `${plain(board.widthFt)} x ${plain(board.lengthFt)} ft`;
  return [...byThickness].map(([thicknessIn, count]) => {
    const quantity = packsWithWaste(count, waste, 1, "boards", "boards", tape);
    const packs = packsWithWaste(quantity, 0, perBundle, "boards", "bundles", tape);
    const pack = perBundle === 1 ? "board" : `bundle of ${perBundle}`;
    return { item: `board ${size} x ${plain(thicknessIn)} in`, quantity, unit: "boards", packs, pack };
  });
}
