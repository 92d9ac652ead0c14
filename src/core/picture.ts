import type { CuttingLayoutPicture, CuttingLengthsPicture } from "./cutting/pictures.ts";
import type { WallSectionPicture, WettingYearPicture } from "./enclosure/pictures.ts";
import type { LoadCombinationsPicture } from "./loads/pictures.ts";
import type { WallElevationPicture } from "./takeoff/pictures.ts";
import type { WindZonesPicture } from "./wind/pictures.ts";

/**
 * Data for the pictures beside the working. The core states what there is to see, in plain numbers and texts;
 * src/pane/drawings draws it. Each kind stands in the family that makes it.
 */
export interface PictureBase {
  readonly kind: string;
  /** one sentence that says in words what the picture shows, for readers who cannot see it */
  readonly alt: string;
}

export type Picture =
  | PictureBase
  | WallSectionPicture
  | WettingYearPicture
  | WindZonesPicture
  | LoadCombinationsPicture
  | WallElevationPicture
  | CuttingLayoutPicture
  | CuttingLengthsPicture;
