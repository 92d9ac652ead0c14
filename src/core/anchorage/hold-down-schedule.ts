import { atDesignLevel, type Designed } from "../kit/load-level.ts";
import { BadInput, plain } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import { couple, type DeadFactors, deadFactors, overturningCautions, overturningPicture } from "./overturning.ts";

/** One floor of a wall line. */
export interface ShearLine {
  readonly line: string;
  readonly shearLb: number;
  readonly lengthFt: number;
  readonly heightFt: number;
  readonly deadPlf: number;
  /** the larger, the higher */
  readonly floor: number;
  readonly armFt: number | undefined;
}

/** A hold-down of the office's own range. */
export interface HoldDown {
  readonly size: string;
  readonly capacityLb: number;
}

export interface ScheduledWall {
  readonly line: string;
  readonly floor: number;
  readonly unitPlf: number;
  readonly tensionLb: number;
  readonly compressionLb: number;
  /** the smallest that holds, "none" without tension, "" without a range */
  readonly size: string;
  /** of the capacity; 0 without tension or without a range */
  readonly ratio: number;
}

/** Where no arm is given the hold-down and the center of compression stand this far in from the ends, both together. Common practice, no source. */
const ARM_LESS_FT = 0.5;
const BEYOND = "beyond the range";

function armOf(wall: ShearLine): number {
  return wall.armFt ?? wall.lengthFt - ARM_LESS_FT;
}

function checkArm(wall: ShearLine): void {
  const armFt = armOf(wall);
  if (armFt > 0 && armFt <= wall.lengthFt) return;
  throw new BadInput(
    armFt > 0
      ? `The arm of line ${wall.line} is ${plain(armFt)} ft`
      : `Line ${wall.line} is ${plain(wall.lengthFt)} ft long`,
    armFt > 0
      ? `the wall is ${plain(wall.lengthFt)} ft long`
      : `without an arm the forces stand ${ARM_LESS_FT} ft less than the length apart`,
    "Check both, and that they are in feet",
  );
}

function chosen(tensionLb: number, range: readonly HoldDown[]): Pick<ScheduledWall, "size" | "ratio"> {
  if (tensionLb <= 0) return { size: "none", ratio: 0 };
  const [largest] = [...range].sort((a, b) => b.capacityLb - a.capacityLb);
  if (largest === undefined) return { size: "", ratio: 0 };
  const holds = range.filter((h) => h.capacityLb >= tensionLb * (1 - 1e-9));
  const [next] = holds.sort((a, b) => a.capacityLb - b.capacityLb);
  return { size: next?.size ?? BEYOND, ratio: tensionLb / (next ?? largest).capacityLb };
}

/** Walls of one line from the top floor down. */
function stack(line: string, walls: readonly ShearLine[]): readonly ShearLine[] {
  const stacked = walls.filter((w) => w.line === line).sort((a, b) => b.floor - a.floor);
  const twice = stacked.find((w, i) => stacked[i + 1]?.floor === w.floor);
  if (twice === undefined) return stacked;
  throw new BadInput(
    `Line ${line} has floor ${plain(twice.floor)} twice`,
    "walls of one line stand on each other, one a floor",
    "Give each wall its floor, or walls side by side names of their own",
  );
}

/** Forces of a line's floors, each with what comes down from above. */
function forces(
  stacked: readonly ShearLine[],
  dead: DeadFactors,
  range: readonly HoldDown[],
  tape?: Tape,
): readonly ScheduledWall[] {
  let tension = 0;
  let compressionLb = 0;
  return stacked.map((wall) => {
    const armFt = armOf(wall);
    const own = couple({ ...wall, armFt, postLb: 0 }, dead, tape);
    tension += own.tensionLb;
    compressionLb += own.compressionLb;
    const tensionLb = Math.max(0, tension);
    const where = `line ${wall.line}, floor ${plain(wall.floor)}`;
    tape?.step("T", `${where}: with the floors above`, tensionLb, "lb", "statics");
    tape?.step("C", `${where}: with the floors above`, compressionLb, "lb", "statics");
    const size = chosen(tensionLb, range);
    if (size.size === BEYOND) tape?.caution(`No hold-down of the range carries ${plain(tensionLb)} lb at ${where}.`);
    return {
      line: wall.line,
      floor: wall.floor,
      unitPlf: wall.shearLb / wall.lengthFt,
      tensionLb,
      compressionLb,
      ...size,
    };
  });
}

/**
 * Hold-downs of wall lines: each wall's shear turns it about its end, and the forces of the floors above come down through the posts.
 * The shear of a row is that of its floor, with what the floors above bring. A row for each wall, in the order given.
 * @throws BadInput for a shear of unknown level, a floor given twice, an arm that the wall has no room for
 * Source: statics; AWC ASD/LRFD Manual M14.3.
 */
export function holdDownSchedule(
  lines: readonly ShearLine[],
  range: readonly HoldDown[],
  design: Designed,
  deadFactor: number | undefined,
  tape?: Tape,
): readonly ScheduledWall[] {
  for (const w of lines) checkArm(w);
  const dead = deadFactors(design, deadFactor, tape);
  const walls = lines.map((w) => ({ ...w, shearLb: atDesignLevel("The shear", w.shearLb, "lb", design, tape) }));
  const stacks = [...new Set(walls.map((w) => w.line))].map((line) => stack(line, walls));
  const found = new Map<ShearLine, ScheduledWall>();
  for (const stacked of stacks) {
    for (const [i, f] of forces(stacked, dead, range, tape).entries()) found.set(stacked[i] as ShearLine, f);
  }
  if (lines.some((w) => w.armFt === undefined))
    tape?.assume(`Where no arm is given it is the wall's length less ${ARM_LESS_FT} ft (common practice, no source).`);
  tape?.assume(
    "The shear of a row is the whole shear of its floor; posts and hold-downs of a line stand above each other.",
  );
  if (range.length > 0)
    tape?.assume("Capacities of the range are for the design method and the post that stands there.");
  overturningCautions(tape);
  showWorst(stacks, found, tape);
  return walls.map((w) => found.get(w) as ScheduledWall);
}

/** The line with the largest tension. */
function showWorst(
  stacks: readonly (readonly ShearLine[])[],
  found: ReadonlyMap<ShearLine, ScheduledWall>,
  tape: Tape | undefined,
): void {
  const foot = (s: readonly ShearLine[]) => found.get(s.at(-1) as ShearLine) as ScheduledWall;
  const [worst] = [...stacks].sort((a, b) => foot(b).tensionLb - foot(a).tensionLb);
  const lowest = worst?.at(-1);
  if (worst === undefined || lowest === undefined) return;
  tape?.show(
    overturningPicture(
      lowest.line,
      lowest.lengthFt,
      [...worst].reverse().map(({ heightFt, shearLb }) => ({ heightFt, shearLb })),
      { armFt: armOf(lowest), tensionLb: foot(worst).tensionLb, compressionLb: foot(worst).compressionLb },
    ),
  );
}
