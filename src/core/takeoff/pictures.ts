import type { PictureBase } from "../kit/picture.ts";

/** Corners in ft from the lower left corner of the wall. */
export type Corners = readonly (readonly [xFt: number, yFt: number])[];

export interface ElevationPiece {
  readonly name: string;
  readonly course: number;
  /** number of the panel, from 1; 0 where an offcut serves */
  readonly panel: number;
  readonly corners: Corners;
}

/** A wall from outside: its outline, the panels of its courses with their joints, columns and openings. */
export interface WallElevationPicture extends PictureBase {
  readonly kind: "wall-elevation";
  readonly wall: string;
  readonly lengthFt: number;
  readonly heightFt: number;
  readonly outline: Corners;
  readonly columnsFt: readonly number[];
  /** lower edges of the courses */
  readonly coursesFt: readonly number[];
  readonly pieces: readonly ElevationPiece[];
  readonly joints: readonly { readonly xFt: number; readonly bottomFt: number; readonly topFt: number }[];
  readonly openings: readonly {
    readonly name: string;
    readonly leftFt: number;
    readonly sillFt: number;
    readonly widthFt: number;
    readonly heightFt: number;
  }[];
}
