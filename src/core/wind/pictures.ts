import type { LoadLevel } from "../kit/load-level.ts";
import type { PictureBase } from "../kit/picture.ts";

/** Corners of an area, in feet from the lower left corner of its view. */
export type Outline = readonly (readonly [xFt: number, yFt: number])[];

export interface ZoneShape {
  readonly label: string;
  readonly outlines: readonly Outline[];
  readonly towardPsf: number;
  readonly awayPsf: number;
}

export interface ZoneView {
  readonly name: "roof plan" | "long wall" | "end wall";
  readonly widthFt: number;
  readonly heightFt: number;
  readonly zones: readonly ZoneShape[];
}

/** Zones of components and cladding on the building's outline, to scale, with the pressures of one effective area. */
export interface WindZonesPicture extends PictureBase {
  readonly kind: "wind-zones";
  readonly areaFt2: number;
  readonly views: readonly ZoneView[];
}

/** A face of a section with the range of its net pressures; it runs with the outside on its left hand. */
export interface FrameFace {
  readonly name: string;
  readonly from: readonly [xFt: number, yFt: number];
  readonly to: readonly [xFt: number, yFt: number];
  /** below 0 away from the face */
  readonly leastPsf: number;
  readonly mostPsf: number;
}

export interface FrameView {
  readonly name: string;
  readonly faces: readonly FrameFace[];
}

/** The building in section for each wind, with the net pressures on its faces. */
export interface WindFramePicture extends PictureBase {
  readonly kind: "wind-frame";
  readonly views: readonly FrameView[];
}

export interface WindForce {
  readonly name: string;
  readonly designLb: number;
  readonly designPlf: number;
  /** the least load governs, not the pressures */
  readonly least: boolean;
  /** a wall line, not the whole building */
  readonly line: boolean;
}

/** The building from above with its sideways forces. */
export interface WindForcesPicture extends PictureBase {
  readonly kind: "wind-forces";
  readonly widthFt: number;
  readonly lengthFt: number;
  readonly level: LoadLevel;
  readonly forces: readonly WindForce[];
}

export interface UpliftBar {
  readonly tributaryFt: number;
  readonly windPlf: number;
  readonly deadPlf: number;
  readonly netPlf: number;
}

/** Wind, dead load counted and net uplift at each wall line. */
export interface RoofUpliftPicture extends PictureBase {
  readonly kind: "roof-uplift";
  readonly level: LoadLevel;
  readonly lines: readonly UpliftBar[];
}
