import type { PlacedOpening } from "../../../src/core/takeoff/wall/opening.ts";
import type { OpenedWall } from "../../../src/core/takeoff/wall/wall.ts";

/** Walls and openings of the invented building of the demo: two long walls between two gable walls. */

function opening(name: string, widthFt: number, heightFt: number, sillFt: number, leftFt: number): PlacedOpening {
  return { name, widthFt, heightFt, count: 1, sillFt, leftFt };
}

const LONG = { lengthFt: 47.75, heightFt: 9.875, riseFt: 0, top: "gable" } as const;
const GABLE = { lengthFt: 32, heightFt: 9.875, riseFt: 8, top: "gable" } as const;
const DOOR = [10 / 3, 83 / 12, 0, 18 + 1 / 3] as const;

export const SHED: readonly OpenedWall<PlacedOpening>[] = [
  {
    wall: { name: "south", ...LONG },
    openings: [
      opening("window S1", 4, 4.5, 2.75, 2),
      opening("window S2", 4, 4.5, 2.75, 10),
      opening("door S", ...DOOR),
      opening("window S3", 4, 4.5, 2.75, 26),
      opening("window S4", 4, 4.5, 2.75, 34),
      opening("window S5", 4, 4.5, 2.75, 42),
    ],
  },
  {
    wall: { name: "north", ...LONG },
    openings: [opening("window N1", 3, 2, 6, 10.5), opening("window N2", 3, 2, 6, 34.5)],
  },
  {
    wall: { name: "east", ...GABLE },
    openings: [
      opening("window E1", 3, 4.5, 2.75, 2.5),
      opening("door E", ...DOOR),
      opening("window E2", 3, 4.5, 2.75, 26.5),
    ],
  },
  {
    wall: { name: "west", ...GABLE },
    openings: [opening("window W1", 3, 4.5, 2.75, 2.5), opening("wide opening W", 12, 8.5, 0, 18)],
  },
];

export const ALL_OPENINGS = SHED.flatMap((w) => w.openings);
