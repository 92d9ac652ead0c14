import { OutOfRange, plain } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import { type OrderLine, packsOfPieces } from "./order.ts";
import { wholePacks } from "./packs.ts";
import { boardPieces, type Rect } from "./wall/board-pieces.ts";
import { exceeds } from "./wall/close.ts";
import { cornersOnWall, elevation } from "./wall/elevation.ts";
import { openingsAreaFt2, type PlacedOpening, silledOpenings, withPlace } from "./wall/opening.ts";
import { checkOpenings, grossAreaFt2, type OpenedWall } from "./wall/wall.ts";

/** Enough for walls of 1000 x 100 ft in 4 x 8 ft boards; more would stop the sheet for too long. */
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
    offcuts.push(...rest.filter((r) => exceeds(r.a, 0) && exceeds(r.b, 0)));
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
  return !exceeds(piece.a, offcut.a) && !exceeds(piece.b, offcut.b);
}

/** Boards, and in what they are sold. */
export interface BoardRules {
  readonly lengthFt: number;
  readonly widthFt: number;
  /** of each layer, from the wall out */
  readonly thicknessesIn: readonly number[];
  /** boards in one bundle */
  readonly perBundle: number;
}

/**
 * Insulation boards for walls, layer by layer, from the layout with staggered joints; offcuts are used again within a layer, on any wall. The
 * layout holds the waste of cutting; the waste share is on the net area, and the larger of the two is ordered. Layers of one thickness are ordered together.
 */
export function boards(
  walls: readonly OpenedWall[],
  rules: BoardRules,
  waste: number,
  tape?: Tape,
): readonly OrderLine[] {
  checkSlots(walls, rules);
  const placed = walls.map((w) => placedOnly(w, tape));
  // Every other layer lies alike, so two layouts stand for all.
  const perParity = [0, 1].map((layer) =>
    layer < rules.thicknessesIn.length ? layerBoards(placed, rules, layer, tape) : 0,
  );
  const layerFt2 = placed.reduce((sum, w) => sum + grossAreaFt2(w.wall) - openingsAreaFt2(w.openings), 0);
  const byThickness = new Map<number, Ordered>();
  rules.thicknessesIn.forEach((thicknessIn, layer) => {
    const count = perParity[layer % 2] ?? 0;
    const what = `layer ${layer + 1}, ${plain(thicknessIn)} in: boards cut by the layout`;
    tape?.step(`n_${layer + 1}`, what, count, "boards", "");
    const before = byThickness.get(thicknessIn) ?? { cut: 0, areaFt2: 0 };
    byThickness.set(thicknessIn, { cut: before.cut + count, areaFt2: before.areaFt2 + layerFt2 });
  });
  return [...byThickness].map(([thicknessIn, ordered]) => boardLine(thicknessIn, ordered, rules, waste, tape));
}

/** What is ordered of one thickness. */
interface Ordered {
  /** boards that the layout takes */
  readonly cut: number;
  /** net area of its layers */
  readonly areaFt2: number;
}

function boardLine(
  thicknessIn: number,
  { cut, areaFt2 }: Ordered,
  rules: BoardRules,
  waste: number,
  tape?: Tape,
): OrderLine {
  const { lengthFt, widthFt, perBundle } = rules;
  tape?.step("A", `net area of the layers of ${plain(thicknessIn)} in`, areaFt2, "ft2", "geometry");
  const quantity = packsOfPieces(cut, areaFt2, waste, lengthFt * widthFt);
  const what = `larger of the layout, ${cut}, and A x (1 + waste ${waste}) / board, rounded up`;
  tape?.step("N", what, quantity, "boards", "");
  const packs = wholePacks(quantity, perBundle);
  if (perBundle > 1) tape?.step("B", `boards / ${perBundle} in a bundle, rounded up`, packs, "bundles", "");
  const item = `board ${plain(widthFt)} x ${plain(lengthFt)} ft x ${plain(thicknessIn)} in`;
  return { item, quantity, unit: "boards", packs, pack: perBundle === 1 ? "board" : `bundle of ${perBundle}` };
}

function checkSlots(walls: readonly OpenedWall[], { lengthFt, widthFt }: BoardRules): void {
  for (const w of walls) checkOpenings(w);
  const slots = walls.reduce((sum, w) => sum + grossAreaFt2(w.wall), 0) / (lengthFt * widthFt);
  if (slots <= MOST_BOARDS) return;
  throw new OutOfRange(
    `The walls take about ${plain(Math.ceil(slots))} boards a layer`,
    `a layout is worked out for up to ${MOST_BOARDS}`,
    "Take fewer walls at once, or check the size of the board",
  );
}

function placedOnly({ wall, openings }: OpenedWall, tape?: Tape): OpenedWall<PlacedOpening> {
  const known = withPlace(silledOpenings(openings, tape));
  if (known.length < openings.length) {
    tape?.assume(
      "Openings without a left edge are covered and cut out: no board is saved, as their place is not known.",
    );
  }
  return { wall, openings: known };
}

function layerBoards(
  walls: readonly OpenedWall<PlacedOpening>[],
  { lengthFt, widthFt }: BoardRules,
  layer: number,
  tape?: Tape,
): number {
  const pieces = walls.flatMap((w) => {
    const mine = boardPieces(w.wall, w.openings, lengthFt, widthFt, layer);
    tape?.show(showBoards(w, mine, layer));
    return mine;
  });
  return boardsForPieces(
    pieces.map((r) => ({ a: r.x1 - r.x0, b: r.y1 - r.y0 })),
    lengthFt,
    widthFt,
  );
}

function showBoards({ wall, openings }: OpenedWall<PlacedOpening>, pieces: readonly Rect[], layer: number) {
  const which = layer === 0 ? "first layer" : "second layer";
  return elevation("boards", wall, openings, {
    pieces: pieces.map((r) => ({ name: "", from: "", leftover: false, corners: cornersOnWall(wall, r) })),
    alt: `${which} of boards, ${pieces.length} pieces`,
  });
}
