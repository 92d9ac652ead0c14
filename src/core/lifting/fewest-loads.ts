import { Random } from "../kit/random.ts";
import { type Deck, type HauledPiece, type LoadedPiece, loadingOrder, pressure, Stacking, stacked } from "./deck.ts";

type Load = readonly LoadedPiece[];

/** Tries for a short list; longer ones get fewer, so that the effort stays the same: five for the 500 pieces of the longest. */
const TRIES = 200;
const EFFORT = 2500;

/** Loads that the weight alone asks for. */
export function leastLoads(pieces: readonly HauledPiece[], deck: Deck): number {
  const weightLb = pieces.reduce((sum, p) => sum + p.weightLb, 0);
  return Math.ceil((weightLb / deck.payloadLb) * (1 - 1e-12));
}

/**
 * Loads in the order of erection, as few as a search of fixed effort finds: rows go on by their weight for their size, by area, by length, then in orders
 * drawn by a seeded generator, until the weight allows no fewer. Each piece fits a truck alone.
 */
export function fewestLoads(pieces: readonly HauledPiece[], deck: Deck): readonly Load[] {
  const least = leastLoads(pieces, deck);
  const tries = Math.min(TRIES, Math.floor(EFFORT / pieces.length));
  const random = new Random(1);
  let best: readonly Load[] = loadsOf(ranked(pieces, RANKS[0]), deck);
  for (let i = 1; i < tries && best.length > least; i++) {
    const drawn = new Map(pieces.map((p) => [p.row, random.unit()]));
    const loads = loadsOf(ranked(pieces, RANKS[i] ?? ((p) => drawn.get(p.row) ?? 0)), deck);
    if (loads.length < best.length) best = loads;
  }
  return best;
}

type Rank = (p: HauledPiece) => number;

const RANKS: readonly [Rank, ...Rank[]] = [(p) => -pressure(p), (p) => -p.lengthFt * p.widthFt, (p) => -p.lengthFt];

/** Rows in the order of a rank, each with a place of its own; rows alike stay in the order of the table. */
function ranked(pieces: readonly HauledPiece[], rank: Rank): readonly HauledPiece[] {
  const rows = [...new Map(pieces.map((p) => [p.row, p])).values()].sort((a, b) => rank(a) - rank(b));
  const places = new Map(rows.map((p, i) => [p.row, i]));
  return pieces.map((p) => ({ ...p, rank: places.get(p.row) ?? 0 }));
}

/** Fills load after load in the order of erection. */
function loadsOf(pieces: readonly HauledPiece[], deck: Deck): readonly Load[] {
  const loads: Load[] = [];
  let waiting = [...pieces].sort((a, b) => a.turn - b.turn || a.rank - b.rank);
  while (waiting.length > 0) {
    const load = fillLoad(waiting, deck);
    loads.push(load);
    const gone = new Set(load.map((l) => l.of));
    waiting = waiting.filter((p) => !gone.has(p));
  }
  return loads;
}

/** One load of what waits; pieces of one turn that do not fit any more wait, and all later turns with them. */
function fillLoad(waiting: readonly HauledPiece[], deck: Deck): Load {
  let stacking = new Stacking(deck);
  const full = new Set<number>();
  let turn: number | undefined;
  for (const piece of waiting) {
    if (full.size > 0 && piece.turn !== turn) break;
    turn = piece.turn;
    if (full.has(piece.row)) continue;
    const more = withPiece(stacking, piece, deck);
    if (more === undefined) full.add(piece.row);
    else stacking = more;
  }
  return stacking.loaded;
}

/** The stacking with one more piece: on top where its turn to be loaded has come, else all are stacked anew. */
function withPiece(stacking: Stacking, piece: HauledPiece, deck: Deck): Stacking | undefined {
  const last = stacking.loaded.at(-1)?.of;
  if (last === undefined || loadingOrder(last, piece) <= 0) return stacking.add(piece) ? stacking : undefined;
  return stacked([...stacking.loaded.map((l) => l.of), piece], deck);
}
