/** Pieces stacked in piles on a truck's deck, each new one on top of a pile or on the deck itself. */

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
}

export interface Deck {
  readonly payloadLb: number;
  readonly lengthFt: number;
  readonly widthFt: number;
  /** greatest height of a pile above the deck */
  readonly stackFt: number;
}

/** A piece in its place on the deck, from its front left corner. */
export interface LoadedPiece {
  readonly of: HauledPiece;
  readonly frontFt: number;
  readonly sideFt: number;
  readonly bottomFt: number;
}

interface Pile {
  readonly frontFt: number;
  readonly sideFt: number;
  top: HauledPiece;
  heightFt: number;
}

/** A stretch of the deck as long as its longest pile, with piles side by side. */
interface Bay {
  readonly frontFt: number;
  readonly lengthFt: number;
  widthFt: number;
}

const CLOSE = 1e-9;

/** Weight for each square foot that the piece covers. */
const pressure = (p: HauledPiece) => p.weightLb / (p.lengthFt * p.widthFt);

/** Last erected first on, so that what stands first lies on top; of one turn the heavier for its size and the larger first. */
function loadingOrder(a: HauledPiece, b: HauledPiece): number {
  return (
    b.turn - a.turn || pressure(b) - pressure(a) || b.lengthFt * b.widthFt - a.lengthFt * a.widthFt || a.row - b.row
  );
}

/** The pieces in their places in the order of loading, or undefined where they do not all fit. */
export function loadDeck(pieces: readonly HauledPiece[], deck: Deck): readonly LoadedPiece[] | undefined {
  if (pieces.reduce((sum, p) => sum + p.weightLb, 0) > deck.payloadLb + CLOSE) return undefined;
  const piles: Pile[] = [];
  const bays: Bay[] = [];
  const loaded: LoadedPiece[] = [];
  for (const piece of [...pieces].sort(loadingOrder)) {
    const place = onPile(piece, piles, deck) ?? onDeck(piece, piles, bays, deck);
    if (place === undefined) return undefined;
    loaded.push({ of: piece, ...place });
  }
  return loaded;
}

type Place = Omit<LoadedPiece, "of">;

/** On the pile whose top is nearest to it in size, among those that carry it whole and are not lighter for their size. */
function onPile(piece: HauledPiece, piles: readonly Pile[], deck: Deck): Place | undefined {
  const carries = piles.filter(
    ({ top, heightFt }) =>
      piece.lengthFt <= top.lengthFt + CLOSE &&
      piece.widthFt <= top.widthFt + CLOSE &&
      pressure(piece) <= pressure(top) + CLOSE &&
      heightFt + piece.heightFt <= deck.stackFt + CLOSE,
  );
  const [first, ...rest] = carries;
  if (first === undefined) return undefined;
  const area = ({ top }: Pile) => top.lengthFt * top.widthFt;
  const pile = rest.reduce((best, p) => (area(p) < area(best) ? p : best), first);
  const bottomFt = pile.heightFt;
  pile.heightFt += piece.heightFt;
  pile.top = piece;
  return { frontFt: pile.frontFt, sideFt: pile.sideFt, bottomFt };
}

/** On the deck: beside other piles where a stretch is long and wide enough, else behind the last. */
function onDeck(piece: HauledPiece, piles: Pile[], bays: Bay[], deck: Deck): Place | undefined {
  if (piece.heightFt > deck.stackFt + CLOSE) return undefined;
  const bay = bays.find(
    (b) => b.lengthFt >= piece.lengthFt - CLOSE && b.widthFt + piece.widthFt <= deck.widthFt + CLOSE,
  );
  const at = bay ?? newBay(piece, bays, deck);
  if (at === undefined) return undefined;
  const place = { frontFt: at.frontFt, sideFt: at.widthFt, bottomFt: 0 };
  at.widthFt += piece.widthFt;
  piles.push({ ...place, top: piece, heightFt: piece.heightFt });
  return place;
}

function newBay(piece: HauledPiece, bays: Bay[], deck: Deck): Bay | undefined {
  const last = bays.at(-1);
  const frontFt = last === undefined ? 0 : last.frontFt + last.lengthFt;
  if (frontFt + piece.lengthFt > deck.lengthFt + CLOSE || piece.widthFt > deck.widthFt + CLOSE) return undefined;
  const bay: Bay = { frontFt, lengthFt: piece.lengthFt, widthFt: 0 };
  bays.push(bay);
  return bay;
}
