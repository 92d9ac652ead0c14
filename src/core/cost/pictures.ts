import type { PictureBase } from "../kit/picture.ts";

/** The steps from direct cost to price, each from where the one before it ends. */
export interface BidPicture extends PictureBase {
  readonly kind: "bid";
  readonly price: number;
  readonly steps: readonly { readonly step: string; readonly from: number; readonly to: number }[];
}

/** How sure a budget is: the total that is not passed, by confidence, from the simulation and by the normal curve. */
export interface ContingencyPicture extends PictureBase {
  readonly kind: "contingency";
  /** the lines' amounts together */
  readonly base: number;
  readonly curve: readonly { readonly confidence: number; readonly total: number; readonly normal: number }[];
  readonly chosen: { readonly confidence: number; readonly total: number };
}
