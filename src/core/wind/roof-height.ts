import { asce, type Edition } from "../kit/edition.ts";
import type { Tape } from "../kit/tape.ts";
import { meanRoofHeightFt, type RoofShape, SLOPED_FROM } from "./building.ts";

/** What a mean roof height is made from; any of it may be missing. */
export interface RoofHeightFrom {
  readonly eaveFt: number | undefined;
  readonly widthFt: number | undefined;
  readonly slopeDeg: number | undefined;
  readonly roof: RoofShape;
}

/** A height given and one made may differ by this before it is said, ft. */
const TOLD_FT = 0.5;

/** The height made from the building, undefined where something is missing. */
function fromBuilding({ eaveFt, widthFt, slopeDeg, roof }: RoofHeightFrom): number | undefined {
  if (eaveFt === undefined) return undefined;
  if (roof === "flat" || (slopeDeg !== undefined && slopeDeg <= SLOPED_FROM)) return eaveFt;
  if (slopeDeg === undefined || widthFt === undefined) return undefined;
  return meanRoofHeightFt({ eaveFt, widthFt, slopeDeg, roof });
}

/**
 * Mean roof height: as given, else the eave up to 10 degrees and half way up the roof above.
 * @returns ft, undefined where it is neither given nor can be made
 * Source: ASCE/SEI 7-10, 7-16, 7-22 section 26.2.
 */
export function roofHeight(
  givenFt: number | undefined,
  from: RoofHeightFrom,
  edition: Edition,
  tape?: Tape,
): number | undefined {
  const madeFt = fromBuilding(from);
  if (givenFt !== undefined) {
    if (madeFt !== undefined && Math.abs(madeFt - givenFt) > TOLD_FT) {
      tape?.caution(
        `The mean roof height given is ${givenFt.toFixed(1)} ft; eave, slope and width make ${madeFt.toFixed(1)} ft. The one given is used.`,
      );
    }
    return givenFt;
  }
  if (madeFt !== undefined) {
    const how =
      madeFt === from.eaveFt ? `eave height, roof up to ${SLOPED_FROM} degrees` : "half way from eave to ridge";
    tape?.step("h", `mean roof height: ${how}`, madeFt, "ft", asce(edition, "26.2"));
  }
  return madeFt;
}
