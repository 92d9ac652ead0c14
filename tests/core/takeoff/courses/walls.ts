import type { CoursedWall, CourseRules } from "../../../../src/core/takeoff/courses/types.ts";
import type { PlacedOpening } from "../../../../src/core/takeoff/wall/opening.ts";

/** Panels of 32 x 4 ft; gap and saw cut of an eighth of an inch, eight sixty-fourths. */
export const RULES: CourseRules = {
  panelLengthFt: 32,
  panelWidthFt: 4,
  jointGapIn: 0.125,
  kerfIn: 0.125,
  leastLegIn: 6,
};

export function opening(name: string, xIn: number, yIn: number, wIn: number, hIn: number): PlacedOpening {
  return { name, leftFt: xIn / 12, sillFt: yIn / 12, widthFt: wIn / 12, heightFt: hIn / 12, count: 1 };
}

/** A level wall from its first column to its last one. */
export function levelWall(
  columnsIn: readonly number[],
  heightIn: number,
  openings: readonly PlacedOpening[] = [],
  name = "w",
): CoursedWall {
  return {
    wall: { name, lengthFt: (columnsIn.at(-1) ?? 0) / 12, heightFt: heightIn / 12, riseFt: 0, top: "gable" },
    columnsFt: columnsIn.map((x) => x / 12),
    openings,
  };
}

/** Sixty-fourths. */
export const in64 = (inches: number): number => inches * 64;
