import { BadInput, plain } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import { cutLongestFirst, type OrderLine, packsOfPieces } from "./order.ts";
import { exceeds, isBetween } from "./wall/close.ts";
import { elevation } from "./wall/elevation.ts";
import {
  headFt,
  openingCount,
  type PlacedOpening,
  rightFt,
  type SilledOpening,
  silledOpenings,
  withPlace,
} from "./wall/opening.ts";
import type { Upright } from "./wall/pictures.ts";
import { checkOpenings, heightAtFt, type OpenedWall, tallestFt, type Wall } from "./wall/wall.ts";

export interface FurringRules {
  readonly spacingFt: number;
  readonly stripFt: number;
  /** strips added at each end of the wall beyond the one on the spacing */
  readonly extraPerEnd: number;
  /** strips added along each side of an opening */
  readonly extraPerJamb: number;
}

/** Most strips of one wall; closer ones are no furring. */
const MOST = 5000;

/**
 * Vertical furring of a wall: a strip at each end and at the spacing between, from the foot to the top, cut where an opening of known place
 * crosses it; added strips at the ends and beside openings, as high as the wall. A strip of the spacing that stands at the edge of an opening
 * counts as one beside it.
 * @returns the pieces with their places; those of unknown place stand at the left end
 */
export function furringPieces(opened: OpenedWall<SilledOpening>, rules: FurringRules): readonly Upright[] {
  checkOpenings(opened);
  const { wall, openings } = opened;
  checkSpacing(wall, rules);
  const placed = withPlace(openings);
  const pieces: Upright[] = [];
  for (let i = 0; exceeds(wall.lengthFt, i * rules.spacingFt); i++) {
    pieces.push(...upright(wall, placed, i * rules.spacingFt));
  }
  pieces.push(...upright(wall, placed, wall.lengthFt));
  for (let i = 0; i < rules.extraPerEnd; i++) {
    pieces.push(...upright(wall, placed, 0), ...upright(wall, placed, wall.lengthFt));
  }
  for (const xFt of placed.flatMap((o) => [o.leftFt, rightFt(o)])) {
    const stands = standsOnSpacing(wall, rules, xFt) ? 1 : 0;
    for (let i = stands; i < rules.extraPerJamb; i++) pieces.push(...upright(wall, placed, xFt));
  }
  const loose = openings.filter((o) => o.leftFt === undefined);
  const jambs = 2 * openingCount(loose) * rules.extraPerJamb;
  for (let i = 0; i < jambs; i++) pieces.push({ xFt: 0, bottomFt: 0, topFt: tallestFt(wall) });
  return pieces;
}

function checkSpacing(wall: Wall, { spacingFt }: FurringRules): void {
  if (wall.lengthFt / spacingFt <= MOST) return;
  throw new BadInput(
    `A spacing of ${plain(spacingFt)} ft gives more than ${MOST} strips on ${wall.name}`,
    "so many strips are no furring",
    "Check the spacing and the length of the wall",
  );
}

/** Whether a strip stands there already, on the spacing or at an end of the wall. */
function standsOnSpacing({ lengthFt }: Wall, { spacingFt }: FurringRules, xFt: number): boolean {
  return [Math.round(xFt / spacingFt) * spacingFt, lengthFt].some((at) => !exceeds(at, xFt) && !exceeds(xFt, at));
}

/** What is left of an upright strip between the openings that it would cross. */
function upright(wall: Wall, openings: readonly PlacedOpening[], xFt: number): Upright[] {
  const crossed = openings.filter((o) => isBetween(xFt, o.leftFt, rightFt(o))).sort((a, b) => a.sillFt - b.sillFt);
  const pieces: Upright[] = [];
  let from = 0;
  for (const o of crossed) {
    if (exceeds(o.sillFt, from)) pieces.push({ xFt, bottomFt: from, topFt: o.sillFt });
    from = Math.max(from, headFt(o));
  }
  const top = heightAtFt(wall, xFt);
  if (exceeds(top, from)) pieces.push({ xFt, bottomFt: from, topFt: top });
  return pieces;
}

/**
 * Furring strips for walls, cut longest first from stock strips; a piece longer than a strip is made of whole strips and a rest.
 * At least the total with waste.
 */
export function furring(walls: readonly OpenedWall[], rules: FurringRules, waste: number, tape?: Tape): OrderLine {
  const pieces = walls.flatMap((w) => wallFurringFt(w, rules, tape));
  const totalFt = pieces.reduce((sum, ft) => sum + ft, 0);
  tape?.step("L", `sum of ${pieces.length} pieces`, totalFt, "ft", "geometry");
  let whole = 0;
  const rests = pieces.map((ft) => {
    const full = Math.floor(ft / rules.stripFt + 1e-9);
    whole += full;
    return Math.max(0, ft - full * rules.stripFt);
  });
  const cut =
    whole +
    cutLongestFirst(
      rests.filter((ft) => exceeds(ft, 0)),
      rules.stripFt,
    );
  tape?.step("N_c", "strips that the pieces are cut from, longest first", cut, "strips", "");
  const packs = packsOfPieces(cut, totalFt, waste, rules.stripFt);
  tape?.step("N", `larger of N_c and L x (1 + waste ${waste}) / strip, rounded up`, packs, "strips", "");
  const pack = `strip ${plain(rules.stripFt)} ft`;
  return { item: "furring", quantity: totalFt * (1 + waste), unit: "ft", packs, pack };
}

function wallFurringFt({ wall, openings }: OpenedWall, rules: FurringRules, tape?: Tape): readonly number[] {
  const opened = { wall, openings: silledOpenings(openings, tape) };
  const pieces = furringPieces(opened, rules);
  if (openings.some((o) => o.leftFt === undefined)) {
    tape?.assume(
      "Openings without a left edge add strips at their sides at full wall height and shorten none: their place is not known.",
    );
  }
  const lengths = pieces.map((p) => p.topFt - p.bottomFt);
  const wallFt = lengths.reduce((sum, ft) => sum + ft, 0);
  tape?.step("L_w", `${wall.name}: ${pieces.length} pieces`, wallFt, "ft", "geometry");
  const alt = `${pieces.length} furring strips and pieces of strips`;
  tape?.show(elevation("furring", wall, withPlace(opened.openings), { uprights: pieces, alt }));
  return lengths;
}
