import { BadInput, plain } from "../../kit/refusal.ts";
import type { Tape } from "../../kit/tape.ts";
import { exceeds } from "./close.ts";

/** A window, door or other hole in a wall, measured at the rough opening, or several alike. */
export interface Opening {
  readonly name: string;
  readonly widthFt: number;
  readonly heightFt: number;
  /** how many alike, 1 or more */
  readonly count: number;
  /** bottom of the opening above the foot of the wall, 0 for a door; undefined where it is not given */
  readonly sillFt: number | undefined;
  /** left edge from the left end of the wall, where it is known */
  readonly leftFt: number | undefined;
}

/** An opening whose sill height is known. */
export interface SilledOpening extends Opening {
  readonly sillFt: number;
}

/** An opening whose place in the wall is known. */
export interface PlacedOpening extends SilledOpening {
  readonly leftFt: number;
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

/** Whether an opening stands on the foot of its wall: a door, which has no sill. */
export function isDoor(o: SilledOpening): boolean {
  return !exceeds(o.sillFt, 0);
}

/** Top of an opening above the foot of its wall. */
export function headFt(o: SilledOpening): number {
  return o.sillFt + o.heightFt;
}

/** Right edge of an opening from the left end of its wall. */
export function rightFt(o: PlacedOpening): number {
  return o.leftFt + o.widthFt;
}

/** Whether an opening takes the whole height of a course. */
export function takesHeight(o: SilledOpening, bottomFt: number, topFt: number): boolean {
  return !exceeds(o.sillFt, bottomFt) && !exceeds(topFt, headFt(o));
}

/** Lower than any door: an opening of less height with its sill at 0 is likely a window whose sill height was forgotten. */
const LOWEST_DOOR_FT = 6;

/**
 * The openings with their sill heights, for calculations that go by them. A low opening on the foot of the wall gets a caution.
 * @throws BadInput for one without a sill height
 */
export function silledOpenings<T extends Opening>(openings: readonly T[], tape?: Tape): readonly (T & SilledOpening)[] {
  return openings.map((o) => {
    const { sillFt } = o;
    if (sillFt === undefined) {
      throw new BadInput(
        `The opening ${o.name} has no sill height`,
        "it decides the result: a door has 0, a window its height above the foot of the wall",
        "Fill in the sill height, 0 for a door",
      );
    }
    if (sillFt === 0 && o.heightFt < LOWEST_DOOR_FT) {
      tape?.caution(
        `Opening ${o.name}, ${plain(o.heightFt)} ft high, counts as standing on the foot of the wall: is its sill height missing?`,
      );
    }
    return { ...o, sillFt };
  });
}

/**
 * The openings with their places.
 * @throws BadInput for one without a sill height or a left edge, or several alike in one place
 */
export function placedOpenings(openings: readonly Opening[], tape?: Tape): readonly PlacedOpening[] {
  return silledOpenings(openings, tape).map((o) => {
    if (o.leftFt === undefined) {
      throw new BadInput(
        `The opening ${o.name} has no left edge`,
        "its place in the wall decides the result",
        "Fill in the left edge: the distance from the left end of the wall",
      );
    }
    if (o.count !== 1) {
      throw new BadInput(
        `The opening ${o.name} stands for ${o.count}`,
        "openings alike cannot all be in one place",
        "Give each a row with its own left edge",
      );
    }
    return { ...o, leftFt: o.leftFt };
  });
}

/** Those of the openings whose place is known. */
export function withPlace(openings: readonly SilledOpening[]): readonly PlacedOpening[] {
  return openings.filter((o): o is PlacedOpening => o.leftFt !== undefined);
}
