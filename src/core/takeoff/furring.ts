import { plain } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import { cautionSills, type Opening, openingCount, type PlacedOpening } from "./opening.ts";
import { cutLongestFirst, type OrderLine, packsOfPieces } from "./order.ts";
import { CLOSE_FT, checkOpenings, heightAtFt, type Wall } from "./wall.ts";

export interface FurringRules {
  readonly spacingFt: number;
  readonly stripFt: number;
  /** strips added at each end of the wall beyond the one on the spacing */
  readonly extraPerEnd: number;
  /** strips added along each side of an opening */
  readonly extraPerJamb: number;
}

/**
 * Lengths of vertical furring on a wall: a strip at each end and at the spacing between, from the foot to the top (of the gable), cut where an
 * opening of known place crosses it; added strips at the ends and beside openings.
 * @returns lengths in ft
 */
export function furringPiecesFt(wall: Wall, openings: readonly Opening[], rules: FurringRules): readonly number[] {
  checkOpenings(wall, openings);
  const placed = openings.filter((o): o is PlacedOpening => o.leftFt !== undefined);
  const loose = openings.filter((o) => o.leftFt === undefined);
  const pieces: number[] = [];
  for (let i = 0; i * rules.spacingFt < wall.lengthFt - CLOSE_FT; i++) {
    pieces.push(...uprightFt(wall, placed, i * rules.spacingFt));
  }
  pieces.push(...uprightFt(wall, placed, wall.lengthFt));
  for (let i = 0; i < 2 * rules.extraPerEnd; i++) pieces.push(wall.heightFt);
  for (const o of placed) {
    for (let i = 0; i < rules.extraPerJamb; i++) {
      pieces.push(...uprightFt(wall, placed, o.leftFt), ...uprightFt(wall, placed, o.leftFt + o.widthFt));
    }
  }
  const jambs = 2 * openingCount(loose) * rules.extraPerJamb;
  for (let i = 0; i < jambs; i++) pieces.push(wall.heightFt);
  return pieces;
}

/** What is left of an upright strip between the openings that it would cross. */
function uprightFt(wall: Wall, openings: readonly PlacedOpening[], xFt: number): number[] {
  const crossed = openings
    .filter((o) => o.leftFt + CLOSE_FT < xFt && xFt < o.leftFt + o.widthFt - CLOSE_FT)
    .sort((a, b) => a.sillFt - b.sillFt);
  const pieces: number[] = [];
  let from = 0;
  for (const o of crossed) {
    if (o.sillFt > from + CLOSE_FT) pieces.push(o.sillFt - from);
    from = Math.max(from, o.sillFt + o.heightFt);
  }
  const top = heightAtFt(wall, xFt);
  if (top > from + CLOSE_FT) pieces.push(top - from);
  return pieces;
}

/**
 * Furring strips for a wall, cut longest first from stock strips; a piece longer than a strip is made of whole strips and a rest.
 * At least the total with waste.
 */
export function furring(
  wall: Wall,
  openings: readonly Opening[],
  rules: FurringRules,
  waste: number,
  tape?: Tape,
): OrderLine {
  const pieces = furringPiecesFt(wall, openings, rules);
  cautionSills(openings, tape);
  if (openings.some((o) => o.leftFt === undefined)) {
    tape?.assume(
      "Openings without a left edge add strips at their sides at full wall height and shorten none: their place is not known.",
    );
  }
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
      rests.filter((ft) => ft > CLOSE_FT),
      rules.stripFt,
    );
  tape?.step("N_c", "strips that the pieces are cut from, longest first", cut, "strips", "");
  const packs = packsOfPieces(cut, totalFt, waste, rules.stripFt);
  tape?.step("N", `larger of N_c and L x (1 + waste ${waste}) / strip, rounded up`, packs, "strips", "");
  return {
    item: "furring",
    quantity: totalFt * (1 + waste),
    unit: "ft",
    packs,
    pack: `strip ${plain(rules.stripFt)} ft`,
  };
}
