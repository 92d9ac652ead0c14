import type { PictureBase } from "../kit/picture.ts";

export interface OverturningFloor {
  readonly heightFt: number;
  /** shear that comes in at its top */
  readonly shearLb: number;
}

/** A wall seen from its face: the shears at its floors, the pair of forces that holds it down, and the anchors of its sill. */
export interface OverturningPicture extends PictureBase {
  readonly kind: "overturning";
  readonly name: string;
  readonly lengthFt: number;
  /** from the lowest up; none where only the sill is shown */
  readonly floors: readonly OverturningFloor[];
  readonly couple: { readonly armFt: number; readonly tensionLb: number; readonly compressionLb: number } | undefined;
  /** places of the sill anchors from the left end, ft */
  readonly anchorsFt: readonly number[];
  /** what an anchor of the sill is, "" where none is shown */
  readonly anchor: string;
}
