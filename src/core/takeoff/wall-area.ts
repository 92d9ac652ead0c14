import type { Table, Tape } from "../kit/tape.ts";
import { type Opening, openingsAreaFt2 } from "./opening.ts";
import { checkOpenings, grossAreaFt2, type Wall } from "./wall.ts";

export interface WallArea {
  readonly grossFt2: number;
  readonly netFt2: number;
  readonly openingsFt2: number;
}

/**
 * Area of one face of a wall, with a triangular gable on top where there is one. Plane geometry.
 * @returns gross, net of openings, and the openings, ft2
 * @throws BadInput when an opening does not fit
 */
export function wallArea(wall: Wall, openings: readonly Opening[], tape?: Tape): WallArea {
  checkOpenings(wall, openings);
  const grossFt2 = grossAreaFt2(wall);
  tape?.step("A_gross", "length x height + length x gable rise / 2", grossFt2, "ft2", "geometry");
  const openingsFt2 = openingsAreaFt2(openings, tape);
  const netFt2 = Math.max(0, grossFt2 - openingsFt2);
  const area = { grossFt2, netFt2, openingsFt2 };
  tape?.step("A_net", "A_gross - sum of openings", netFt2, "ft2", "geometry");
  tape?.step("A", "gross, net, openings", wallAreaRow(area), "ft2", "geometry");
  return area;
}

/** The areas as one row: gross, net, openings. */
export function wallAreaRow(area: WallArea): Table {
  return [[area.grossFt2, area.netFt2, area.openingsFt2]];
}
