import { type SVGTemplateResult, svg } from "lit-html";
import type { LoadPlanPicture } from "../../core/lifting/pictures.ts";
import { rough } from "./parts/figures.ts";
import { box, frame, LINE, type Part, paragraph, SMALL, TEXT, write } from "./parts/frame.ts";
import { numberRuns, repeats } from "./parts/repeats.ts";
import { textWidth } from "./parts/text.ts";

/** Decks are drawn wider than they are, so that the numbers of their stacks find room. */
const DECK = 0.34;
const GAP = 18;

type Load = LoadPlanPicture["loads"][number];
type Piece = Load["pieces"][number];

/** Truck loads from above, front at the left: each piece with its number in the order of loading, in a stack from the lowest to the highest. */
export function loadPlan(picture: LoadPlanPicture, width: number): SVGTemplateResult {
  const parts: Part[] = [];
  let y = 0;
  for (const load of picture.loads) {
    const drawn = deckAt(load, picture, y, width);
    parts.push(...drawn.parts);
    y = drawn.foot + GAP;
  }
  return frame(picture, "Load plan", width, y - GAP + SMALL, parts);
}

function deckAt(load: Load, picture: LoadPlanPicture, top: number, width: number): { parts: Part[]; foot: number } {
  const count = `${load.pieces.length} ${load.pieces.length === 1 ? "piece" : "pieces"}`;
  const head = paragraph(`Load ${load.load}: ${rough(load.weightLb)} lb, ${count}`, 0, top + TEXT, width, "dw-strong");
  const y = head.foot + 7;
  const tall = (width - 2) * DECK;
  const [scaleX, scaleY] = [(width - 2) / picture.deckLengthFt, tall / picture.deckWidthFt];
  const parts: Part[] = [...head.parts, box(1, y, width - 2, tall, "dw-ground")];
  for (const piece of load.pieces) {
    const place = [1 + piece.frontFt * scaleX, y + piece.sideFt * scaleY] as const;
    parts.push(box(...place, piece.lengthFt * scaleX, piece.widthFt * scaleY, "dw-part"));
  }
  for (const piece of load.pieces) {
    const place = [1 + piece.frontFt * scaleX, y + piece.sideFt * scaleY] as const;
    parts.push(number(piece, below(piece, load.pieces), place, piece.lengthFt * scaleX, piece.widthFt * scaleY));
  }
  parts.push(box(1, y, width - 2, tall, "dw-outline"));
  let foot = y + tall + 2;
  for (const { item, count: alike } of repeats(load.pieces, (p) => p.piece)) {
    const numbers = load.pieces.filter((p) => p.piece === item.piece).map((p) => p.order);
    const row = paragraph(`${numberRuns(numbers)}: ${alike} × ${item.piece}`, 0, foot + LINE, width);
    parts.push(...row.parts);
    foot = row.foot;
  }
  return { parts, foot };
}

/** Pieces that lie under a piece's front corner. */
function below(piece: Piece, pieces: readonly Piece[]): number {
  const { frontFt, sideFt } = piece;
  const holds = (p: Piece) =>
    p.frontFt <= frontFt && frontFt < p.frontFt + p.lengthFt && p.sideFt <= sideFt && sideFt < p.sideFt + p.widthFt;
  return pieces.filter((p) => p.order < piece.order && holds(p)).length;
}

/** Its number, beside those of the pieces below it, where the stack has room; the list under the deck holds all. */
function number(piece: Piece, level: number, [x, y]: readonly [number, number], wide: number, tall: number): Part {
  const text = String(piece.order);
  const step = textWidth("88", TEXT) + 4;
  const columns = Math.max(1, Math.floor(wide / step));
  const [column, row] = [level % columns, Math.floor(level / columns)];
  if (textWidth(text, TEXT) > wide || (row + 1) * LINE > tall) return svg``;
  return write(text, x + 3 + column * step, y + TEXT + 1 + row * LINE);
}
