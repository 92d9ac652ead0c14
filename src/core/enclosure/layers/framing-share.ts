import { BadInput, OutOfRange, plain } from "../../kit/refusal.ts";
import type { Tape } from "../../kit/tape.ts";

const GEOMETRY = "plane geometry";

/** Members of one kind in the walls, seen from the front. */
export interface FramingMember {
  readonly row: number;
  readonly name: string;
  readonly widthIn: number;
  readonly count: number;
  /** undefined: the walls' height where it stands, which most members do */
  readonly lengthFt: number | undefined;
}

/** A wall's face. */
export interface FramedArea {
  readonly name: string;
  readonly lengthFt: number;
  readonly heightFt: number;
  /** rise of a gable or shed above the height, 0 or more */
  readonly riseFt: number;
}

/**
 * Part of the walls' area that columns, plates and the like take up, from their own sizes and counts.
 * Members that overlap in the elevation count twice, which is on the safe side for U.
 * @param openings taken off the walls
 * @returns share, 0 to below 1
 * @throws BadInput where openings cover the walls, or a member without length stands in walls of unlike height; OutOfRange where members cover them
 * Source: area fractions of ISO 6946:2017 6.7.2.2; plane geometry.
 */
export function framingShare(
  walls: readonly FramedArea[],
  members: readonly FramingMember[],
  openings: readonly { readonly name: string; readonly areaFt2: number }[],
  tape?: Tape,
): number {
  const gross = walls.reduce((sum, w) => sum + w.lengthFt * (w.heightFt + w.riseFt / 2), 0);
  const open = openings.reduce((sum, o) => sum + o.areaFt2, 0);
  const net = gross - open;
  if (!(net > 0)) {
    throw new BadInput(
      `Openings of ${plain(open)} ft2 leave nothing of walls of ${plain(gross)} ft2`,
      "the share is taken of the walls without openings",
      "Check the openings",
    );
  }
  tape?.step("A", `${plain(gross)} - openings ${plain(open)}`, net, "ft2", GEOMETRY);
  const framing = members.reduce((sum, m) => sum + memberArea(m, walls, tape), 0);
  const share = framing / net;
  if (!(share < 1)) {
    throw new OutOfRange(
      `The members cover ${plain(framing)} ft2 of walls of ${plain(net)} ft2`,
      "framing is a part of the wall",
      "Check widths, counts and lengths",
    );
  }
  tape?.step("f", "framing area / A", share, "", "ISO 6946:2017 6.7.2.2");
  return share;
}

function memberArea(m: FramingMember, walls: readonly FramedArea[], tape: Tape | undefined): number {
  const lengthFt = m.lengthFt ?? commonHeight(m, walls);
  const area = (m.count * m.widthIn * lengthFt) / 12;
  const rule = `${m.name}: ${plain(m.count)} x ${plain(m.widthIn)} in x ${plain(lengthFt)} ft`;
  tape?.step(`A_${m.row}`, rule, area, "ft2", GEOMETRY);
  return area;
}

function commonHeight(m: FramingMember, walls: readonly FramedArea[]): number {
  const heightFt = walls[0]?.heightFt ?? 0;
  if (walls.every((w) => w.heightFt === heightFt)) return heightFt;
  throw new BadInput(
    `The ${m.name} in row ${m.row} has no length`,
    "the walls are of unlike height, so it is not known how long it is",
    "Give its length",
  );
}
