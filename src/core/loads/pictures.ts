import type { PictureBase } from "../kit/picture.ts";
import type { RoofShape } from "../wind/building.ts";

export interface CombinationBar {
  readonly name: string;
  readonly value: number;
  readonly governs: boolean;
}

/** Load combinations as bars, the governing ones marked. */
export interface LoadCombinationsPicture extends PictureBase {
  readonly kind: "load-combinations";
  readonly unit: string;
  readonly bars: readonly CombinationBar[];
}

/** Snow on a roof in section: the balanced load, and the unbalanced one beside it. */
export interface RoofSnowPicture extends PictureBase {
  readonly kind: "roof-snow";
  readonly slopeDeg: number;
  readonly roof: RoofShape;
  readonly eaveToRidgeFt: number | undefined;
  readonly balancedPsf: number;
  readonly unbalanced:
    | {
        readonly windwardPsf: number;
        readonly leewardPsf: number;
        /** on top of the leeward load, at the ridge, 0 where there is none */
        readonly surchargePsf: number;
        readonly surchargeFt: number;
      }
    | undefined;
}
