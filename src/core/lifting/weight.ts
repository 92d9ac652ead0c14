import { BadInput, plain } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";

/** A wall as it hangs on the hook. */
export interface LiftedWall {
  readonly wall: string;
  /** area of one face net of its openings */
  readonly netFt2: number;
}

export interface WeighedLayer {
  readonly material: string;
  readonly psf: number;
}

/** Something set into the walls before the lift: a window, a column, a plate. */
export interface AddedPiece {
  readonly piece: string;
  readonly weightLb: number;
  readonly count: number;
}

export interface WeightRow {
  readonly wall: string;
  readonly areaFt2: number;
  readonly psf: number;
  readonly weightLb: number;
}

/**
 * Weight of walls to lift: net area times the weight of the layers, rain held by the wall itself on top, and what is set in.
 * @param wetShare weight of water over the walls' own weight, 0 or more
 * @returns a row for each wall (psf with its water), one for each kind of added piece, and the total with its weight over all wall area
 * @throws BadInput when nothing weighs anything
 * Arithmetic.
 */
export function liftWeight(
  walls: readonly LiftedWall[],
  layers: readonly WeighedLayer[],
  added: readonly AddedPiece[],
  wetShare: number,
  tape?: Tape,
): readonly WeightRow[] {
  const dryPsf = layers.reduce((sum, layer) => sum + layer.psf, 0);
  for (const { material, psf } of layers) tape?.step("w", material, psf, "psf", "given in the row");
  const psf = dryPsf * (1 + wetShare);
  tape?.step(
    "w_wall",
    `sum of layers ${plain(dryPsf)} x (1 + wet allowance ${plain(wetShare)})`,
    psf,
    "psf",
    "arithmetic",
  );
  const rows = [
    ...walls.map(({ wall, netFt2 }) => ({ wall, areaFt2: netFt2, psf, weightLb: netFt2 * psf })),
    ...added.map(({ piece, weightLb, count }) => ({ wall: piece, areaFt2: 0, psf: 0, weightLb: weightLb * count })),
  ];
  for (const r of rows) tape?.step("W", workingOf(r), r.weightLb, "lb", "arithmetic");
  const areaFt2 = walls.reduce((sum, w) => sum + w.netFt2, 0);
  const weightLb = rows.reduce((sum, r) => sum + r.weightLb, 0);
  if (weightLb <= 0) {
    throw new BadInput(
      "The lift weighs nothing",
      "no wall area, layer or piece has weight",
      "Give the walls and the weight of their layers",
    );
  }
  if (walls.length > 1 && added.length > 0) {
    tape?.assume("What is set in stands in rows of its own, by no wall: ask wall by wall for the weight of one lift.");
  }
  return [...rows, { wall: "total", areaFt2, psf: areaFt2 > 0 ? weightLb / areaFt2 : 0, weightLb }];
}

function workingOf(row: WeightRow): string {
  return row.areaFt2 === 0 ? `${row.wall}: set in` : `${row.wall}: ${plain(row.areaFt2)} ft2 x w_wall`;
}
