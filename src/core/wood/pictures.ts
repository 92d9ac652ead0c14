import type { PictureBase } from "../kit/picture.ts";
import type { BeamLoad } from "./beam/beam.ts";

/** A curve along a member: place in inches from the left end, value. */
export type Curve = readonly (readonly [xIn: number, value: number])[];

/** A member with its loads, shear, moment and deflection. */
export interface WoodMemberPicture extends PictureBase {
  readonly kind: "wood-member";
  readonly name: string;
  readonly lengthIn: number;
  readonly supportsIn: readonly number[];
  readonly loads: readonly BeamLoad[];
  /** axial compression, lb, 0 where there is none */
  readonly axialLb: number;
  readonly shearLb: Curve;
  readonly momentLbIn: Curve;
  readonly deflectionIn: Curve;
  /** checks, the worst first, as words: "bending 0.82" */
  readonly ratios: readonly string[];
}

/** A panel over its bays, with the pressure and the worst check. */
export interface PanelBaysPicture extends PictureBase {
  readonly kind: "panel-bays";
  readonly spans: number;
  readonly spanIn: number;
  readonly supportWidthIn: number;
  readonly grain: "along" | "across";
  readonly pressurePsf: number;
  /** deflected shape over the whole length, greatest size 1 */
  readonly shape: Curve;
  readonly ratios: readonly string[];
}
