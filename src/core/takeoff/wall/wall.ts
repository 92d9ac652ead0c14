import { BadInput, plain } from "../../kit/refusal.ts";
import { exceeds } from "./close.ts";
import { type Opening, openingsAreaFt2 } from "./opening.ts";

/** "gable": a symmetrical triangle on top; "shed": the top climbs from the left end to the right, or falls where the rise is below 0. */
export type WallTop = "gable" | "shed";

/** A straight wall, or another flat strip that is measured like one: a plane of a roof, the edge of a slab. */
export interface Wall {
  readonly name: string;
  readonly lengthFt: number;
  /** height of the straight part: at the ends under a gable, at the left end under a shed */
  readonly heightFt: number;
  /** of the peak above the straight part, or of the right end above the left one; 0 for a level top */
  readonly riseFt: number;
  readonly top: WallTop;
}

/** A wall with what is cut out of it. */
export interface OpenedWall<O extends Opening = Opening> {
  readonly wall: Wall;
  readonly openings: readonly O[];
}

/** Most that a wall of any use rises above its straight part, and the heights that it may have. */
const LOWEST_FT = 0.01;

/**
 * Refuses a wall without height at one of its ends, and a gable that falls.
 * @throws BadInput naming the wall
 */
export function checkWall(wall: Wall): void {
  if (wall.top === "gable" && wall.riseFt < 0) {
    throw new BadInput(
      `The gable of ${wall.name} rises ${plain(wall.riseFt)} ft`,
      "a gable rises to its peak",
      "Give the rise above the straight part, or the word shed for a top that falls to the right",
    );
  }
  if (wall.top === "shed" && wall.heightFt + wall.riseFt < LOWEST_FT) {
    throw new BadInput(
      `The right end of ${wall.name} is ${plain(wall.heightFt + wall.riseFt)} ft high`,
      `its left end is ${plain(wall.heightFt)} ft high and the top rises ${plain(wall.riseFt)} ft from there`,
      "Check the height and the rise",
    );
  }
}

export function tallestFt(wall: Wall): number {
  return wall.heightFt + Math.max(0, wall.riseFt);
}

/** Height up to which the wall is a rectangle. */
function straightFt(wall: Wall): number {
  return wall.heightFt + Math.min(0, wall.riseFt);
}

export function grossAreaFt2(wall: Wall): number {
  return wall.lengthFt * wall.heightFt + (wall.lengthFt * wall.riseFt) / 2;
}

/** Height of the wall at a distance from its left end. */
export function heightAtFt(wall: Wall, xFt: number): number {
  const along = xFt / wall.lengthFt;
  return wall.heightFt + wall.riseFt * (wall.top === "shed" ? along : 1 - Math.abs(2 * along - 1));
}

/** Left and right end of the wall at a height; undefined above its top. */
export function spanAtFt(wall: Wall, yFt: number): readonly [number, number] | undefined {
  if (!exceeds(yFt, straightFt(wall))) return [0, wall.lengthFt];
  if (!exceeds(tallestFt(wall), yFt)) return undefined;
  const share = (yFt - wall.heightFt) / wall.riseFt;
  if (wall.top === "gable") return [(share * wall.lengthFt) / 2, wall.lengthFt * (1 - share / 2)];
  return wall.riseFt > 0 ? [share * wall.lengthFt, wall.lengthFt] : [0, share * wall.lengthFt];
}

/** Greatest height of the wall between two distances from its left end. */
export function highestFt(wall: Wall, fromFt: number, toFt: number): number {
  const peak = wall.top === "gable" ? Math.min(Math.max(wall.lengthFt / 2, fromFt), toFt) : fromFt;
  return Math.max(heightAtFt(wall, fromFt), heightAtFt(wall, toFt), heightAtFt(wall, peak));
}

/** Length of the top edge: along both rakes of a gable, along the slope of a shed. */
export function topEdgeFt(wall: Wall): number {
  return wall.top === "gable" ? 2 * Math.hypot(wall.lengthFt / 2, wall.riseFt) : Math.hypot(wall.lengthFt, wall.riseFt);
}

/** Corners of the wall from its lower left one, against the clock. */
export function outlineFt(wall: Wall): readonly (readonly [xFt: number, yFt: number])[] {
  const { lengthFt, heightFt, riseFt } = wall;
  if (wall.top === "shed") {
    return [
      [0, 0],
      [lengthFt, 0],
      [lengthFt, heightFt + riseFt],
      [0, heightFt],
    ];
  }
  const peak = riseFt > 0 ? [[lengthFt / 2, heightFt + riseFt] as const] : [];
  return [[0, 0], [lengthFt, 0], [lengthFt, heightFt], ...peak, [0, heightFt]];
}

/**
 * Refuses openings that the wall cannot hold: wider or taller than the wall, out of its outline where their place is known, or together larger.
 * @throws BadInput naming the wall and the opening
 */
export function checkOpenings({ wall, openings }: OpenedWall): void {
  checkWall(wall);
  for (const o of openings) {
    const head = (o.sillFt ?? 0) + o.heightFt;
    if (exceeds(o.widthFt, wall.lengthFt) || exceeds(head, tallestFt(wall))) misfit(wall, o);
    if (o.leftFt === undefined) continue;
    const right = o.leftFt + o.widthFt;
    const low = Math.min(heightAtFt(wall, o.leftFt), heightAtFt(wall, Math.min(right, wall.lengthFt)));
    if (exceeds(right, wall.lengthFt) || exceeds(head, low)) misfit(wall, o);
  }
  const areaFt2 = openingsAreaFt2(openings);
  const grossFt2 = grossAreaFt2(wall);
  if (exceeds(areaFt2, grossFt2)) {
    throw new BadInput(
      `The openings of ${wall.name} take ${plain(areaFt2)} ft2`,
      `the wall has ${plain(grossFt2)} ft2`,
      "Check widths, heights and counts of the openings",
    );
  }
}

function misfit(wall: Wall, o: Opening): never {
  const places = [
    ...(o.sillFt === undefined ? [] : [`sill at ${plain(o.sillFt)} ft`]),
    ...(o.leftFt === undefined ? [] : [`left edge at ${plain(o.leftFt)} ft`]),
  ];
  const top = wall.riseFt === 0 ? "" : ` with a ${wall.top} of ${plain(wall.riseFt)} ft on top`;
  throw new BadInput(
    `The opening ${o.name} of ${plain(o.widthFt)} x ${plain(o.heightFt)} ft${places.length === 0 ? "" : ` (${places.join(", ")})`} does not fit in ${wall.name}`,
    `${wall.name} is ${plain(wall.lengthFt)} ft long and ${plain(wall.heightFt)} ft high${top}`,
    "Check the opening and the wall; lengths are in feet unless the text names a unit",
  );
}
