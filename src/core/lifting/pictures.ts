import type { PictureBase } from "../kit/picture.ts";

/** A place beside the plumb line through the hook, from the center of gravity. */
export interface SlingPlace {
  readonly acrossFt: number;
  readonly upFt: number;
}

/** A load on its sling, seen along the level: hook, picks, center of gravity, and the tension and angle of each leg. */
export interface SlingPicture extends PictureBase {
  readonly kind: "sling";
  readonly weightLb: number;
  readonly leastRatingLb: number;
  readonly hook: SlingPlace;
  readonly legs: readonly (SlingPlace & {
    readonly leg: string;
    readonly tensionLb: number;
    readonly angleDeg: number;
  })[];
}

/** Truck loads seen from above, pieces numbered in the order of loading. */
export interface LoadPlanPicture extends PictureBase {
  readonly kind: "load-plan";
  readonly deckLengthFt: number;
  readonly deckWidthFt: number;
  readonly loads: readonly {
    readonly load: number;
    readonly weightLb: number;
    readonly pieces: readonly {
      readonly order: number;
      readonly piece: string;
      /** from the front of the deck, from its left side, above the deck */
      readonly frontFt: number;
      readonly sideFt: number;
      readonly bottomFt: number;
      readonly lengthFt: number;
      readonly widthFt: number;
    }[];
  }[];
}
