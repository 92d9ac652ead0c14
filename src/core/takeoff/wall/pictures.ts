import type { PictureBase } from "../../kit/picture.ts";

/** Corners in ft from the lower left corner of the wall. */
export type Corners = readonly (readonly [xFt: number, yFt: number])[];

/** What an elevation shows on its wall. */
export type ElevationSubject = "panels" | "columns" | "boards" | "membrane" | "furring" | "lining";

export interface ElevationPiece {
  readonly name: string;
  /** what it is cut from, where that is to be shown: "panel 3" */
  readonly from: string;
  /** cut from a leftover */
  readonly leftover: boolean;
  readonly corners: Corners;
}

/** A column or a furring strip. */
export interface Upright {
  readonly xFt: number;
  readonly bottomFt: number;
  readonly topFt: number;
}

/** A wall from outside: its outline and openings, and what is laid out on it. */
export interface WallElevationPicture extends PictureBase {
  readonly kind: "wall-elevation";
  readonly subject: ElevationSubject;
  readonly wall: string;
  readonly lengthFt: number;
  readonly heightFt: number;
  readonly outline: Corners;
  readonly uprights: readonly Upright[];
  readonly pieces: readonly ElevationPiece[];
  readonly joints: readonly Upright[];
  readonly openings: readonly {
    readonly name: string;
    readonly leftFt: number;
    readonly sillFt: number;
    readonly widthFt: number;
    readonly heightFt: number;
  }[];
}
