import { BadInput, plain } from "../kit/refusal.ts";
import { type Opening, openingsAreaFt2 } from "./opening.ts";

/** Room for the rounding of feet and inches, ft. */
export const CLOSE_FT = 1e-6;

/** A straight wall, with a symmetrical gable triangle on top where the rise is above 0. */
export interface Wall {
  readonly lengthFt: number;
  /** height of the straight part */
  readonly heightFt: number;
  readonly gableRiseFt: number;
}

export function tallestFt(wall: Wall): number {
  return wall.heightFt + wall.gableRiseFt;
}

export function grossAreaFt2(wall: Wall): number {
  return wall.lengthFt * wall.heightFt + (wall.lengthFt * wall.gableRiseFt) / 2;
}

/** Height of the wall at a distance from its left end. */
export function heightAtFt(wall: Wall, xFt: number): number {
  return wall.heightFt + wall.gableRiseFt * (1 - Math.abs((2 * xFt) / wall.lengthFt - 1));
}

/** Left and right end of the wall at a height; undefined above its top. */
export function spanAtFt(wall: Wall, yFt: number): readonly [number, number] | undefined {
  if (yFt <= wall.heightFt + CLOSE_FT) return [0, wall.lengthFt];
  if (yFt >= tallestFt(wall) - CLOSE_FT) return undefined;
  const inset = ((yFt - wall.heightFt) / wall.gableRiseFt) * (wall.lengthFt / 2);
  return [inset, wall.lengthFt - inset];
}

/**
 * Refuses openings that the wall cannot hold: wider or taller than the wall, out of its outline where their place is known, or together larger.
 * @throws BadInput naming the opening
 */
export function checkOpenings(wall: Wall, openings: readonly Opening[]): void {
  for (const o of openings) {
    const head = o.sillFt + o.heightFt;
    if (o.widthFt > wall.lengthFt + CLOSE_FT || head > tallestFt(wall) + CLOSE_FT) misfit(wall, o);
    if (o.leftFt === undefined) continue;
    const right = o.leftFt + o.widthFt;
    const low = Math.min(heightAtFt(wall, o.leftFt), heightAtFt(wall, Math.min(right, wall.lengthFt)));
    if (right > wall.lengthFt + CLOSE_FT || head > low + CLOSE_FT) misfit(wall, o);
  }
  const areaFt2 = openingsAreaFt2(openings);
  const grossFt2 = grossAreaFt2(wall);
  if (areaFt2 > grossFt2 * (1 + CLOSE_FT)) {
    throw new BadInput(
      `The openings take ${plain(areaFt2)} ft2`,
      `the wall has ${plain(grossFt2)} ft2`,
      "Check widths, heights and counts of the openings",
    );
  }
}

function misfit(wall: Wall, o: Opening): never {
  const at = o.leftFt === undefined ? "" : `, left edge at ${plain(o.leftFt)} ft`;
  const gable = wall.gableRiseFt > 0 ? ` with a gable of ${plain(wall.gableRiseFt)} ft on top` : "";
  throw new BadInput(
    `The opening ${o.name} of ${plain(o.widthFt)} x ${plain(o.heightFt)} ft (sill at ${plain(o.sillFt)} ft${at}) does not fit in the wall`,
    `the wall is ${plain(wall.lengthFt)} ft long and ${plain(wall.heightFt)} ft high${gable}`,
    "Check the opening and the wall; lengths are in feet unless the text names a unit",
  );
}
