import { SOFT_BELOW_PCF } from "./tables/truck.ts";

/** Pieces stacked on a truck's deck, each new one on top of others or on the deck itself. */

/** One piece to haul. */
export interface HauledPiece {
  readonly piece: string;
  readonly weightLb: number;
  readonly lengthFt: number;
  readonly widthFt: number;
  readonly heightFt: number;
  /** turn of erection: the first one stands first and comes off first */
  readonly turn: number;
  /** row of the table that it comes from */
  readonly row: number;
  /** within one turn, lower ones go on first; alike for all pieces of a row */
  readonly rank: number;
}

export interface Deck {
  readonly payloadLb: number;
  readonly lengthFt: number;
  readonly widthFt: number;
  /** greatest height of the load above the deck */
  readonly stackFt: number;
}

/** A piece in its place on the deck, from its front left corner. */
export interface LoadedPiece {
  readonly of: HauledPiece;
  readonly frontFt: number;
  readonly sideFt: number;
  readonly bottomFt: number;
}

/** A lane along a stretch of a surface, pieces one behind the other in it. */
interface Lane {
  readonly sideFt: number;
  readonly widthFt: number;
  usedFt: number;
}

/** A stretch of a surface from side to side, as long as its first piece, with lanes side by side. */
interface Stretch {
  readonly frontFt: number;
  readonly lengthFt: number;
  readonly lanes: Lane[];
}

/** The deck, or the top of a piece that lies on it. */
interface Surface {
  readonly frontFt: number;
  readonly sideFt: number;
  readonly heightFt: number;
  readonly lengthFt: number;
  readonly widthFt: number;
  /** what it may carry for each square foot of a piece */
  readonly carries: number;
  readonly stretches: Stretch[];
}

/** A measure within its limit, the dust of sums and of other units apart; every limit of a truck is held to by this one rule. */
export const fits = (value: number, most: number): boolean => value <= most * (1 + 1e-9);

/** Weight for each square foot that the piece covers. */
export const pressure = (p: HauledPiece) => p.weightLb / (p.lengthFt * p.widthFt);

/** What a square foot of a piece's top may carry: soft pieces no more than they weigh themselves. */
function carriedBy(piece: HauledPiece): number {
  const soft = pressure(piece) / piece.heightFt < SOFT_BELOW_PCF;
  return soft ? pressure(piece) : Number.POSITIVE_INFINITY;
}

/** Last erected first on, so that what stands first lies on top; within one turn by rank. */
export function loadingOrder(a: HauledPiece, b: HauledPiece): number {
  return b.turn - a.turn || a.rank - b.rank;
}

/** A truck as it is loaded, piece by piece. */
export class Stacking {
  readonly loaded: LoadedPiece[] = [];
  readonly #deck: Deck;
  readonly #surfaces: Surface[];
  #weightLb = 0;

  constructor(deck: Deck) {
    const { lengthFt, widthFt } = deck;
    this.#deck = deck;
    this.#surfaces = [{ ...FRONT, lengthFt, widthFt, carries: Number.POSITIVE_INFINITY, stretches: [] }];
  }

  /** Puts a piece on top of what is there; false where it has no room or weighs too much. */
  add(piece: HauledPiece): boolean {
    if (!fits(this.#weightLb + piece.weightLb, this.#deck.payloadLb)) return false;
    const place = placeOn(this.#surfaces, piece, this.#deck.stackFt);
    if (place === undefined) return false;
    this.#weightLb += piece.weightLb;
    this.loaded.push({ of: piece, ...place });
    const { lengthFt, widthFt } = piece;
    const heightFt = place.bottomFt + piece.heightFt;
    this.#surfaces.push({ ...place, heightFt, lengthFt, widthFt, carries: carriedBy(piece), stretches: [] });
    return true;
  }
}

/** The pieces stacked in the order of loading, or undefined where they do not all fit. */
export function stacked(pieces: readonly HauledPiece[], deck: Deck): Stacking | undefined {
  const stacking = new Stacking(deck);
  return [...pieces].sort(loadingOrder).every((piece) => stacking.add(piece)) ? stacking : undefined;
}

const FRONT = { frontFt: 0, sideFt: 0, heightFt: 0 } as const;

type Place = Omit<LoadedPiece, "of">;

/** On the smallest surface that has room for it and carries it, the deck last. */
function placeOn(surfaces: readonly Surface[], piece: HauledPiece, stackFt: number): Place | undefined {
  const fit = surfaces.filter(
    (s) =>
      fits(piece.lengthFt, s.lengthFt) &&
      fits(piece.widthFt, s.widthFt) &&
      fits(pressure(piece), s.carries) &&
      fits(s.heightFt + piece.heightFt, stackFt),
  );
  for (const surface of fit.sort((a, b) => a.lengthFt * a.widthFt - b.lengthFt * b.widthFt)) {
    const place = behind(surface, piece) ?? beside(surface, piece) ?? beyond(surface, piece);
    if (place === undefined) continue;
    const { frontFt, sideFt, heightFt } = surface;
    return { frontFt: frontFt + place.frontFt, sideFt: sideFt + place.sideFt, bottomFt: heightFt };
  }
  return undefined;
}

interface Spot {
  readonly frontFt: number;
  readonly sideFt: number;
}

/** Behind the pieces of a lane. */
function behind(surface: Surface, piece: HauledPiece): Spot | undefined {
  for (const { frontFt, lengthFt, lanes } of surface.stretches) {
    const lane = lanes.find((l) => fits(piece.widthFt, l.widthFt) && fits(l.usedFt + piece.lengthFt, lengthFt));
    if (lane === undefined) continue;
    const spot = { frontFt: frontFt + lane.usedFt, sideFt: lane.sideFt };
    lane.usedFt += piece.lengthFt;
    return spot;
  }
  return undefined;
}

/** In a new lane beside the others. */
function beside(surface: Surface, piece: HauledPiece): Spot | undefined {
  for (const stretch of surface.stretches) {
    const sideFt = stretch.lanes.reduce((sum, lane) => sum + lane.widthFt, 0);
    if (!fits(piece.lengthFt, stretch.lengthFt) || !fits(sideFt + piece.widthFt, surface.widthFt)) continue;
    stretch.lanes.push({ sideFt, widthFt: piece.widthFt, usedFt: piece.lengthFt });
    return { frontFt: stretch.frontFt, sideFt };
  }
  return undefined;
}

/** In a new stretch behind the last. */
function beyond(surface: Surface, piece: HauledPiece): Spot | undefined {
  const frontFt = surface.stretches.reduce((sum, stretch) => sum + stretch.lengthFt, 0);
  if (!fits(frontFt + piece.lengthFt, surface.lengthFt)) return undefined;
  const lane = { sideFt: 0, widthFt: piece.widthFt, usedFt: piece.lengthFt };
  surface.stretches.push({ frontFt, lengthFt: piece.lengthFt, lanes: [lane] });
  return { frontFt, sideFt: 0 };
}
