import { BadInput, OutOfRange, plain } from "../kit/refusal.ts";

export const ROOF_SHAPES = ["flat", "gable", "hip", "monoslope"] as const;
export type RoofShape = (typeof ROOF_SHAPES)[number];

/** A rectangular building with one roof. */
export interface Building {
  /** plan dimension across the ridge, ft */
  readonly widthFt: number;
  /** plan dimension along the ridge, ft */
  readonly lengthFt: number;
  /** height of the eave, ft */
  readonly eaveFt: number;
  readonly slopeDeg: number;
  readonly roof: RoofShape;
}

/** Slope from which a roof is taken by its slopes and not by strips, degrees. */
export const SLOPED_FROM = 10;

export function isSloped({ roof, slopeDeg }: Building): boolean {
  return roof !== "flat" && slopeDeg >= SLOPED_FROM;
}

const RADIANS = Math.PI / 180;

/** Rise from eave to ridge, ft. */
export function riseFt({ widthFt, slopeDeg, roof }: Pick<Building, "widthFt" | "slopeDeg" | "roof">): number {
  if (roof === "flat") return 0;
  return (roof === "monoslope" ? widthFt : widthFt / 2) * Math.tan(slopeDeg * RADIANS);
}

/** Level width from eave to ridge, ft: half the building, all of a flat or monoslope roof; undefined without a width. */
export function eaveToRidgeFt(widthFt: number | undefined, roof: RoofShape): number | undefined {
  if (widthFt === undefined) return undefined;
  return roof === "gable" || roof === "hip" ? widthFt / 2 : widthFt;
}

/** Mean roof height: eave height up to 10 degrees, else half way up the roof. ASCE/SEI 7 section 26.2, 26.3. */
export function meanRoofHeightFt(building: Omit<Building, "lengthFt">): number {
  return building.roof === "flat" || building.slopeDeg <= SLOPED_FROM
    ? building.eaveFt
    : building.eaveFt + riseFt(building) / 2;
}

/** Refuses a building that cannot be. */
export function checkBuilding(building: Building): void {
  const { widthFt, lengthFt, slopeDeg, roof } = building;
  if (roof === "flat" && slopeDeg > SLOPED_FROM) {
    throw new BadInput(
      `The flat roof slopes ${plain(slopeDeg)} degrees`,
      "a flat roof slopes up to 10 degrees here",
      "Name the roof gable, hip or monoslope",
    );
  }
  if (roof === "hip" && lengthFt < widthFt) {
    throw new BadInput(
      `The hip roof's length of ${plain(lengthFt)} ft is less than its width of ${plain(widthFt)} ft`,
      "length runs along the ridge, and hips of one slope meet in a ridge along the longer side",
      "Exchange width and length",
    );
  }
  if (slopeDeg > 60) {
    throw new OutOfRange(
      `The slope is ${plain(slopeDeg)} degrees`,
      "roofs up to 60 degrees are worked here",
      "Take so steep a face as a wall, or leave it to the engineer",
    );
  }
}
