import type { PlacedOpening } from "../wall/opening.ts";
import type { OpenedWall } from "../wall/wall.ts";

/** Courses of long panels on the columns of a wall: what goes in and what comes out. Lengths in ft unless the name says inches. */

export interface CoursedWall extends OpenedWall<PlacedOpening> {
  /** column lines from the left end, the ends among them */
  readonly columnsFt: readonly number[];
}

export interface CourseRules {
  readonly panelLengthFt: number;
  /** height of a course */
  readonly panelWidthFt: number;
  /** left open at each joint and end; a piece is shorter than its bays by this */
  readonly jointGapIn: number;
  readonly kerfIn: number;
  /** narrowest strip of panel that a joint may leave beside an opening which is cut out of that panel */
  readonly leastLegIn: number;
}

/** A rectangle of panel to cut from: a leftover on hand, a cut-out, the rest of a panel. Length runs along the panel. */
export interface Offcut {
  readonly name: string;
  readonly lengthIn: number;
  readonly widthIn: number;
}

export interface CoursePiece {
  readonly wall: string;
  /** course from the foot and number from the left: "2-1" */
  readonly name: string;
  /** what is written on it, alike on no two pieces */
  readonly mark: string;
  /** from 1 at the foot of the wall */
  readonly course: number;
  readonly leftFt: number;
  readonly bottomFt: number;
  /** the rectangle that the piece is cut from */
  readonly lengthIn: number;
  readonly heightIn: number;
  /** number of the panel, from 1; 0 where an offcut or cut-out serves */
  readonly panel: number;
  /** name of what it is cut from */
  readonly from: string;
  /** lower left corner on what it is cut from */
  readonly alongIn: number;
  readonly upIn: number;
  /** further cuts: rakes, openings; "" for none */
  readonly cuts: string;
}

export interface CourseJoint {
  readonly wall: string;
  readonly course: number;
  readonly xFt: number;
  readonly bottomFt: number;
  readonly topFt: number;
}

export interface CoursePlan {
  readonly pieces: readonly CoursePiece[];
  readonly joints: readonly CourseJoint[];
  /** panels to buy */
  readonly panels: number;
  /** no plan of these courses takes fewer */
  readonly bound: number;
  /** rules of joints and legs that could not be met, as sentences */
  readonly exceptions: readonly string[];
  /** what is left over, cut-outs of openings included, largest first */
  readonly offcuts: readonly Offcut[];
}
