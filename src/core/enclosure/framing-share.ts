import { BadInput, OutOfRange, plain } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";

/** Members of one kind in a wall, seen from the front. */
export interface FramingMember {
  readonly row: number;
  readonly name: string;
  readonly widthIn: number;
  readonly count: number;
  /** undefined: the wall's height where it stands, which most members do */
  readonly lengthFt: number | undefined;
}

/**
 * Part of a wall's area that columns, plates and the like take up, from their own sizes and counts.
 * Members that overlap in the elevation count twice, which is on the safe side for U.
 * @param lengthFt above 0
 * @param heightFt above 0
 * @param openingsFt2 area of openings, taken off the wall, 0 or more
 * @returns share, 0 to below 1
 * @throws OutOfRange where the members cover the wall
 * Source: area fractions of ISO 6946:2017 6.7.2.2; plane geometry.
 */
export function framingShare(
  lengthFt: number,
  heightFt: number,
  members: readonly FramingMember[],
  openingsFt2: number,
  tape?: Tape,
): number {
  const net = lengthFt * heightFt - openingsFt2;
  if (!(net > 0)) {
    throw new BadInput(
      `Openings of ${plain(openingsFt2)} ft2 leave no wall of ${plain(lengthFt)} x ${plain(heightFt)} ft`,
      "the share is taken of the wall without openings",
      "Check the openings",
    );
  }
  tape?.step("A", "length x height - openings", net, "ft2", "plane geometry");
  let framing = 0;
  for (const m of members) {
    const length = m.lengthFt ?? heightFt;
    const area = (m.count * m.widthIn * length) / 12;
    tape?.step(
      `A_${m.row}`,
      `${m.name}: ${plain(m.count)} x ${plain(m.widthIn)} in x ${plain(length)} ft`,
      area,
      "ft2",
      "plane geometry",
    );
    framing += area;
  }
  const share = framing / net;
  if (!(share < 1)) {
    throw new OutOfRange(
      `The members cover ${plain(framing)} ft2 of a wall of ${plain(net)} ft2`,
      "framing is a part of the wall",
      "Check widths, counts and lengths",
    );
  }
  tape?.step("f", "framing area / A", share, "", "ISO 6946:2017 6.7.2.2");
  return share;
}
