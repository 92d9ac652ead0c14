import { BadInput, plain } from "../refusal.ts";
import type { Tape } from "../tape.ts";

/** A window, door or other hole in a wall, measured at the rough opening, or several alike. */
export interface Opening {
  readonly name: string;
  readonly widthFt: number;
  readonly heightFt: number;
  /** how many alike, 1 or more */
  readonly count: number;
  /** bottom of the opening above the foot of the wall, where it is known */
  readonly sillFt: number | undefined;
  /** left edge from the left end of the wall, where it is known */
  readonly leftFt: number | undefined;
}

/** Number of openings, counting each of several alike. */
export function openingCount(openings: readonly Opening[]): number {
  return openings.reduce((sum, o) => sum + o.count, 0);
}

/** Area of all openings, ft2. */
export function openingsAreaFt2(openings: readonly Opening[], tape?: Tape): number {
  let areaFt2 = 0;
  for (const o of openings) {
    const each = o.widthFt * o.heightFt * o.count;
    areaFt2 += each;
    tape?.step("A_o", `${o.name}: ${plain(o.widthFt)} x ${plain(o.heightFt)} x ${o.count}`, each, "ft2", "geometry");
  }
  return areaFt2;
}

/**
 * Refuses openings that the wall cannot hold: one wider or taller than the wall, or more area than the wall has.
 * @param tallestFt height of the wall at its tallest
 * @throws BadInput naming the opening
 */
export function checkOpenings(
  openings: readonly Opening[],
  lengthFt: number,
  tallestFt: number,
  grossFt2: number,
): void {
  for (const o of openings) {
    const size = `${plain(o.widthFt)} x ${plain(o.heightFt)} ft`;
    if (o.widthFt > lengthFt || o.heightFt + (o.sillFt ?? 0) > tallestFt) {
      throw new BadInput(
        `The opening ${o.name} of ${size}${o.sillFt === undefined ? "" : ` with its sill at ${plain(o.sillFt)} ft`} does not fit in the wall`,
        `the wall is ${plain(lengthFt)} ft long and ${plain(tallestFt)} ft at its tallest`,
        "Check the opening, or give the wall's full length and height; lengths are in feet unless the text names a unit",
      );
    }
  }
  const areaFt2 = openingsAreaFt2(openings);
  if (areaFt2 > grossFt2) {
    throw new BadInput(
      `The openings take ${plain(areaFt2)} ft2`,
      `the wall has ${plain(grossFt2)} ft2`,
      "Check widths, heights and counts of the openings",
    );
  }
}
