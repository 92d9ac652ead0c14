import type { PictureBase } from "../kit/picture.ts";
import type { Mode } from "./yield.ts";

export interface YieldMember {
  readonly name: string;
  readonly thicknessIn: number;
  /** whether the fastener crushes it in this mode */
  readonly crushed: boolean;
}

/** A fastener across its members as it yields: one plane, or two that mirror each other about the middle of the main member. */
export interface YieldModePicture extends PictureBase {
  readonly kind: "yield-mode";
  readonly mode: Mode;
  /** the mode in words */
  readonly says: string;
  /** from the head: side, main, and the second side in double shear */
  readonly members: readonly YieldMember[];
  /** between neighbours */
  readonly gapIn: number;
  readonly diameterIn: number;
  /** where the fastener bends beside the first plane: inches into the side and into the main member, undefined where it does not */
  readonly bendsIn: { readonly side: number | undefined; readonly main: number | undefined };
  /** what one fastener carries */
  readonly loadLb: number;
}
