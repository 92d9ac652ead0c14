import { BadInput, OutOfRange, plain, within } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";

export interface WallOpening {
  readonly name: string;
  readonly widthFt: number;
  readonly heightFt: number;
  readonly count: number;
  readonly leftFt: number | undefined;
}

interface PlacedOpening extends WallOpening {
  readonly leftFt: number;
}

export interface PerforatedWall {
  readonly lengthFt: number;
  readonly heightFt: number;
  readonly openings: readonly WallOpening[];
}

/** Segments narrower than height over this do not count; those narrower than height over 2 count in part. SDPWS 2015 4.3.4, from memory; 3.5 and 2 w/h read in IBC 2006 2305.3.8.2. */
const GREATEST_ASPECT = 3.5;
const FULL_ASPECT = 2;
const HIGHEST_FT = 20;
const CLOSE_FT = 1e-6;

/** The openings from left to right, or undefined where the place of one is not known. */
function inOrder(openings: readonly WallOpening[]): readonly PlacedOpening[] | undefined {
  const placed = openings.filter((o): o is PlacedOpening => o.leftFt !== undefined);
  return placed.length < openings.length ? undefined : placed.sort((a, b) => a.leftFt - b.leftFt);
}

/** Pieces of full height between placed openings, from left to right, ft. */
function piecesFt(wall: PerforatedWall, placed: readonly PlacedOpening[]): readonly number[] {
  const pieces: number[] = [];
  let from = 0;
  for (const o of placed) {
    const left = o.leftFt;
    if (left < from - CLOSE_FT) {
      throw new BadInput(
        `Opening ${o.name} begins ${plain(left)} ft from the left`,
        "it lies over the opening before it",
        "Check the left edges and widths",
      );
    }
    pieces.push(left - from);
    from = left + o.widthFt;
  }
  if (from > wall.lengthFt + CLOSE_FT) {
    throw new BadInput(
      `The openings end ${plain(from)} ft from the left`,
      `the wall is ${plain(wall.lengthFt)} ft long`,
      "Check the left edges and widths",
    );
  }
  pieces.push(wall.lengthFt - from);
  return pieces;
}

function countedFt(pieceFt: number, heightFt: number): number {
  const aspect = heightFt / pieceFt;
  if (aspect > GREATEST_ASPECT + CLOSE_FT) return 0;
  return aspect > FULL_ASPECT ? (pieceFt * FULL_ASPECT * pieceFt) / heightFt : pieceFt;
}

/** Sum of the lengths that count, ft: by place where the openings have one, else all that the openings leave. */
function fullHeightFt(wall: PerforatedWall, tape?: Tape): number {
  const placed = inOrder(wall.openings);
  if (placed === undefined) {
    tape?.caution(
      "Openings without a left edge: the shape of the pieces between them is not checked, and narrow ones count in full.",
    );
    return wall.lengthFt - wall.openings.reduce((sum, o) => sum + o.widthFt * o.count, 0);
  }
  const pieces = piecesFt(wall, placed);
  const leastFt = wall.heightFt / GREATEST_ASPECT;
  if ([pieces[0], pieces.at(-1)].some((ft = 0) => ft < leastFt - CLOSE_FT)) {
    throw new OutOfRange(
      "An end of the wall has no piece of full height that counts",
      `the method wants one at each end, at least ${plain(leastFt)} ft wide here (SDPWS 4.3.5.3)`,
      "End the perforated wall at the last piece that is wide enough",
    );
  }
  return pieces.reduce((sum, ft) => {
    if (ft < CLOSE_FT) return sum;
    const counted = countedFt(ft, wall.heightFt);
    tape?.step(
      "L_i",
      `piece of ${plain(ft)} ft, ${plain(wall.heightFt / ft)} times as high as wide`,
      counted,
      "ft",
      "SDPWS 2015 4.3.4.3, from memory; IBC 2006 2305.3.8.2: 2 w/h",
    );
    return sum + counted;
  }, 0);
}

/**
 * Shear capacity adjustment factor Co of a wall with openings that is not designed for the force round them.
 * @param edition of SDPWS: "2008" or "2015"
 * @throws BadInput for 2021, whose equation is not held; OutOfRange for a wall that the method does not cover
 * Source: SDPWS 2015 4.3.3.5; the equation read in a plan reviewer's message on the NEHRP 2000 commentary, its table from memory.
 */
export function openingsFactor(wall: PerforatedWall, edition: string, tape?: Tape): number {
  if (edition === "2021") {
    throw new BadInput(
      "The shear wall standard is 2021",
      "that edition has a new equation for Co, which is not held",
      "Give the shear wall standard 2015 if your code allows it, or take Co from the 2021 edition",
    );
  }
  within("The height of the wall", wall.heightFt, 4, HIGHEST_FT, "ft", `SDPWS ${edition} 4.3.5.3`);
  checkOpenings(wall);
  const clause = `SDPWS ${edition} 4.3.3.5`;
  const sumFt = fullHeightFt(wall, tape);
  if (sumFt <= 0) {
    throw new OutOfRange("No piece of the wall counts", "the openings leave none wide enough", "Make a piece wider");
  }
  const openFt2 = wall.openings.reduce((sum, o) => sum + o.widthFt * o.heightFt * o.count, 0);
  const r = 1 / (1 + openFt2 / (wall.heightFt * sumFt));
  const co = Math.min(1, (r / (3 - 2 * r)) * (wall.lengthFt / sumFt));
  tape?.assume("Openings are sheathed above and below; where they are not, their height is that of the wall.");
  tape?.caution(
    "Hold-downs at both ends for v h, anchorage of v in shear and in uplift between them, and the greatest unit shear of the standard are further conditions.",
  );
  tape?.step("sum L_i", "lengths of full height that count", sumFt, "ft", clause);
  tape?.step("A_o", "area of the openings", openFt2, "ft2", clause);
  tape?.step("r", "1 / (1 + A_o / (h sum L_i))", r, "", clause);
  tape?.step("Co", `r / (3 - 2 r) x ${plain(wall.lengthFt)} / ${plain(sumFt)}, at most 1`, co, "", clause);
  return co;
}

function checkOpenings(wall: PerforatedWall): void {
  for (const o of wall.openings) {
    if (o.heightFt > wall.heightFt + CLOSE_FT) {
      throw new BadInput(
        `Opening ${o.name} is ${plain(o.heightFt)} ft high`,
        `the wall is ${plain(wall.heightFt)} ft high`,
        "Check the heights",
      );
    }
    if (o.leftFt !== undefined && o.count > 1) {
      throw new BadInput(
        `Opening ${o.name} stands for ${o.count} and has one left edge`,
        "openings alike cannot all be in one place",
        "Give each a row with its own left edge",
      );
    }
  }
}
