import type { PictureBase } from "../kit/picture.ts";

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
