import { BadInput, plain } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import { cutInTurn, type OrderLine, packsOfPieces } from "./order.ts";
import { isDoor, type Opening, type SilledOpening, silledOpenings } from "./wall/opening.ts";

/** Which sides of an opening a tape goes on. A wide one for the sill and a narrower one for the rest are two orders. */
export type TapedSides = "all" | "sill" | "jambs and head";

/**
 * Pieces of tape round each opening, without joints within a piece: a sill and a head of the opening's width, two jambs of its height, each run
 * past both corners. An opening on the foot of the wall has no sill piece, and its jambs end there.
 * @param pastCornerFt how far a piece runs past each corner
 * @returns lengths in ft, in the order in which they go on: sill, jambs, head, opening by opening
 */
export function tapePiecesFt(
  openings: readonly SilledOpening[],
  sides: TapedSides,
  pastCornerFt: number,
): readonly number[] {
  return openings.flatMap((o) => {
    const level = o.widthFt + 2 * pastCornerFt;
    const upright = o.heightFt + (isDoor(o) ? 1 : 2) * pastCornerFt;
    const sill = isDoor(o) || sides === "jambs and head" ? [] : [level];
    const others = sides === "sill" ? [] : [upright, upright, level];
    return Array.from({ length: o.count }, () => [...sill, ...others]).flat();
  });
}

/**
 * Rolls of flashing tape for the openings, cut off the roll in turn; a piece is never joined, so a roll's end that is too short for the
 * next piece is lost. At least the total with waste.
 * @throws BadInput when a piece is longer than a roll
 */
export function flashingTape(
  openings: readonly Opening[],
  sides: TapedSides,
  rollLengthFt: number,
  pastCornerFt: number,
  waste: number,
  tape?: Tape,
): OrderLine {
  const silled = silledOpenings(openings, tape);
  const pieces = tapePiecesFt(silled, sides, pastCornerFt);
  const longest = Math.max(0, ...pieces);
  if (longest > rollLengthFt * (1 + 1e-9)) {
    throw new BadInput(
      `A piece of tape is ${plain(longest)} ft long`,
      `a roll holds ${plain(rollLengthFt)} ft, and a piece is not joined`,
      "Use a longer roll",
    );
  }
  const totalFt = pieces.reduce((sum, ft) => sum + ft, 0);
  for (const o of silled) {
    const each = tapePiecesFt([{ ...o, count: 1 }], sides, pastCornerFt).reduce((sum, ft) => sum + ft, 0);
    tape?.step("L_o", `${o.name}: each, ${sides === "all" ? "all sides" : sides}`, each, "ft", "geometry");
  }
  tape?.step("L", "sum over the openings", totalFt, "ft", "geometry");
  const cut = cutInTurn(pieces, rollLengthFt);
  tape?.step("N_c", "rolls used up in turn, no joint within a piece", cut, "rolls", "");
  const packs = packsOfPieces(cut, totalFt, waste, rollLengthFt);
  tape?.step("N", `larger of N_c and L x (1 + waste ${waste}) / roll length, rounded up`, packs, "rolls", "");
  const item = sides === "all" ? "flashing tape" : `flashing tape, ${sides}`;
  return { item, quantity: totalFt * (1 + waste), unit: "ft", packs, pack: `roll ${plain(rollLengthFt)} ft` };
}
