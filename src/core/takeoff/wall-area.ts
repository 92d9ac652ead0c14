import type { Table, Tape } from "../tape.ts";
import { checkOpenings, type Opening, openingsAreaFt2 } from "./opening.ts";

export interface WallArea {
  readonly grossFt2: number;
  readonly netFt2: number;
  readonly openingsFt2: number;
}

/**
 * Area of one face of a wall, with a triangular gable on top where there is one. Plane geometry.
 * @param lengthFt above 0
 * @param heightFt of the straight part, above 0
 * @param gableRiseFt of the triangle over the straight part, 0 for none
 * @returns gross, net of openings, and the openings, ft2
 * @throws BadInput when an opening does not fit
 */
export function wallArea(
  lengthFt: number,
  heightFt: number,
  gableRiseFt: number,
  openings: readonly Opening[],
  tape?: Tape,
): WallArea {
  const grossFt2 = lengthFt * heightFt + (lengthFt * gableRiseFt) / 2;
  checkOpenings(openings, lengthFt, heightFt + gableRiseFt, grossFt2);
  tape?.step("A_gross", "length x height + length x gable rise / 2", grossFt2, "ft2", "geometry");
  const openingsFt2 = openingsAreaFt2(openings, tape);
  const netFt2 = grossFt2 - openingsFt2;
  const area = { grossFt2, netFt2, openingsFt2 };
  tape?.step("A_net", "A_gross - sum of openings", netFt2, "ft2", "geometry");
  tape?.step("A", "gross, net, openings", wallAreaRow(area), "ft2", "geometry");
  return area;
}

/** The areas as one row: gross, net, openings. */
export function wallAreaRow(area: WallArea): Table {
  return [[area.grossFt2, area.netFt2, area.openingsFt2]];
}
