import { BadInput, plain } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";

export interface SegmentShear {
  readonly segment: string;
  readonly lengthFt: number;
  readonly shearLb: number;
  /** 0 in a gap */
  readonly unitPlf: number;
  /** force that the collector holds at the end of the piece */
  readonly dragLb: number;
}

/** A line with less wall is a slip of the unit. */
const LEAST_WALL_FT = 0.5;

/**
 * Unit shear of the segments of a wall line and the drag force along it: the line's shear comes in evenly over the whole length and leaves through the
 * segments in proportion to their length.
 * @param pieces lengths from one end of the line to the other, ft; gaps below 0
 * @throws BadInput for a line without a segment
 * Source: statics; AWC ASD/LRFD Manual M14.3 (v = V / L).
 */
export function segmentShears(shearLb: number, pieces: readonly number[], tape?: Tape): readonly SegmentShear[] {
  const wallFt = pieces.reduce((sum, ft) => sum + Math.max(0, ft), 0);
  const lineFt = pieces.reduce((sum, ft) => sum + Math.abs(ft), 0);
  if (wallFt < LEAST_WALL_FT) {
    throw new BadInput(
      `The segments hold ${plain(wallFt)} ft of wall`,
      "a gap is written below 0, a piece of wall above 0",
      "Give the length of each piece of wall",
    );
  }
  const unit = shearLb / wallFt;
  const along = shearLb / lineFt;
  tape?.step("sum L_i", "pieces of wall", wallFt, "ft", "geometry");
  tape?.step("v", `${plain(shearLb)} / ${plain(wallFt)}`, unit, "plf", "AWC ASD/LRFD Manual M14.3");
  tape?.step("v_line", `${plain(shearLb)} / ${plain(lineFt)}, along the whole line`, along, "plf", "statics");
  let drag = 0;
  let walls = 0;
  let gaps = 0;
  return pieces.map((piece) => {
    const isWall = piece > 0;
    const lengthFt = Math.abs(piece);
    const unitPlf = isWall ? unit : 0;
    drag += (unitPlf - along) * lengthFt;
    const segment = isWall ? `wall ${++walls}` : `gap ${++gaps}`;
    return {
      segment,
      lengthFt,
      shearLb: unitPlf * lengthFt,
      unitPlf,
      dragLb: Math.abs(drag) < 1e-9 * shearLb ? 0 : drag,
    };
  });
}
