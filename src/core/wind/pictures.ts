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
