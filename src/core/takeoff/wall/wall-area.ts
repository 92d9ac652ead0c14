import type { Tape } from "../../kit/tape.ts";
import { openingsAreaFt2 } from "./opening.ts";
import { checkOpenings, grossAreaFt2, type OpenedWall } from "./wall.ts";

export interface WallArea {
  readonly wall: string;
  readonly grossFt2: number;
  readonly openingsFt2: number;
  readonly netFt2: number;
}

/** Name of the row that adds the others up. */
export const TOTAL = "total";

/**
 * Area of one face of each wall, with a gable or a shed on top where there is one, and of all together. Plane geometry.
 * @returns gross, openings and net of each wall, ft2, and a row with the sums
 * @throws BadInput when an opening does not fit
 */
export function wallAreas(walls: readonly OpenedWall[], tape?: Tape): readonly WallArea[] {
  const rows = walls.map((w) => wallArea(w, tape));
  const sum = (of: (row: WallArea) => number) => rows.reduce((total, row) => total + of(row), 0);
  const total = {
    wall: TOTAL,
    grossFt2: sum((r) => r.grossFt2),
    openingsFt2: sum((r) => r.openingsFt2),
    netFt2: sum((r) => r.netFt2),
  };
  tape?.step("A", "net area of all walls", total.netFt2, "ft2", "geometry");
  return [...rows, total];
}

function wallArea(opened: OpenedWall, tape?: Tape): WallArea {
  checkOpenings(opened);
  const { wall, openings } = opened;
  const grossFt2 = grossAreaFt2(wall);
  tape?.step("A_gross", `${wall.name}: length x height + length x rise / 2`, grossFt2, "ft2", "geometry");
  const openingsFt2 = openingsAreaFt2(openings, tape);
  const netFt2 = Math.max(0, grossFt2 - openingsFt2);
  tape?.step("A_net", "A_gross - sum of openings", netFt2, "ft2", "geometry");
  return { wall: wall.name, grossFt2, openingsFt2, netFt2 };
}
