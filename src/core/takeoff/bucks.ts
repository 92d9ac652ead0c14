import { BadInput, plain } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import { INCHES_IN } from "../units/length.ts";
import { isDoor, type Opening, type SilledOpening, silledOpenings } from "./wall/opening.ts";

/** Members alike of a window or door buck. */
export interface BuckPart {
  readonly name: string;
  readonly lengthIn: number;
  readonly count: number;
}

/**
 * Parts of the bucks that line the openings: head and sill run through, jambs stand between them. An opening on the foot of the wall has no sill.
 * @param thicknessIn of the buck members
 * @throws BadInput when an opening is too low for its head and sill
 */
export function buckParts(openings: readonly SilledOpening[], thicknessIn: number): readonly BuckPart[] {
  return openings.flatMap((o) => {
    const door = isDoor(o);
    const widthIn = o.widthFt * INCHES_IN.ft;
    const jambIn = o.heightFt * INCHES_IN.ft - (door ? 1 : 2) * thicknessIn;
    if (jambIn <= 0) {
      throw new BadInput(
        `The opening ${o.name} is ${plain(o.heightFt * INCHES_IN.ft)} in high`,
        `members ${plain(thicknessIn)} in thick leave nothing for the jambs`,
        "Check its height and the thickness of the buck",
      );
    }
    const level = door
      ? { name: `${o.name} head`, lengthIn: widthIn, count: o.count }
      : { name: `${o.name} head and sill`, lengthIn: widthIn, count: 2 * o.count };
    return [level, { name: `${o.name} jamb`, lengthIn: jambIn, count: 2 * o.count }];
  });
}

/** The parts of the bucks of all openings, with the working. */
export function bucks(openings: readonly Opening[], thicknessIn: number, tape?: Tape): readonly BuckPart[] {
  const parts = buckParts(silledOpenings(openings, tape), thicknessIn);
  tape?.step("t", "thickness of the members; jambs stand between head and sill", thicknessIn, "in", "geometry");
  const totalFt = parts.reduce((sum, p) => sum + (p.lengthIn * p.count) / INCHES_IN.ft, 0);
  tape?.step("L", "sum of the parts", totalFt, "ft", "geometry");
  return parts;
}
