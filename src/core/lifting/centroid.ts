import { BadInput, plain } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";

/** A piece and the place of its own center of gravity; all alike of one row are taken there. */
export interface PlacedPiece {
  readonly piece: string;
  /** each; below 0 for a hole in another piece */
  readonly weightLb: number;
  readonly count: number;
  readonly xFt: number;
  readonly yFt: number;
  readonly zFt: number;
}

export interface Centroid {
  readonly weightLb: number;
  readonly xFt: number;
  readonly yFt: number;
  readonly zFt: number;
}

/**
 * Weight of all pieces together and the place of their common center of gravity.
 * @throws BadInput when the weights sum to nothing
 * Source: moments about the three axes (statics of composite bodies).
 */
export function liftCentroid(pieces: readonly PlacedPiece[], tape?: Tape): Centroid {
  const weightOf = (p: PlacedPiece) => p.weightLb * p.count;
  const weightLb = pieces.reduce((sum, p) => sum + weightOf(p), 0);
  if (weightLb <= 0) {
    throw new BadInput(
      `The pieces weigh ${plain(weightLb)} lb together`,
      "a load has a weight above 0",
      "Check the weights; only a hole is below 0",
    );
  }
  tape?.step("W", "sum of the weights", weightLb, "lb", "statics");
  const along = (axis: string, of: (p: PlacedPiece) => number): number => {
    const moment = pieces.reduce((sum, p) => sum + weightOf(p) * of(p), 0);
    tape?.step(
      axis,
      `sum of W ${axis} / W = ${plain(moment)} / ${plain(weightLb)}`,
      moment / weightLb,
      "ft",
      "statics",
    );
    return moment / weightLb;
  };
  if (pieces.some((p) => p.weightLb < 0)) tape?.assume("A weight below 0 is a hole in another piece.");
  return { weightLb, xFt: along("x", (p) => p.xFt), yFt: along("y", (p) => p.yFt), zFt: along("z", (p) => p.zFt) };
}
