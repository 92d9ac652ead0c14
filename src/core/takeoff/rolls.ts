import { BadInput, plain } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import { formatLength, INCHES_IN } from "../units/length.ts";
import type { OrderLine } from "./order.ts";
import { wholePacks } from "./packs.ts";
import { exceeds } from "./wall/close.ts";
import { cornersOnWall, elevation } from "./wall/elevation.ts";
import { type SilledOpening, silledOpenings, takesHeight, withPlace } from "./wall/opening.ts";
import { checkOpenings, type OpenedWall, spanAtFt, tallestFt } from "./wall/wall.ts";

/** Laps of a weather-resistive barrier: IRC R703.2, 2 in where courses overlap and 6 in where ends meet. */
export const LAPS = "IRC R703.2: 2 in at horizontal laps, upper over lower; 6 in at vertical joints";

export interface RollRules {
  readonly rollWidthFt: number;
  readonly rollLengthFt: number;
  /** overlap of one course on the one below */
  readonly sideLapFt: number;
  /** overlap where one roll ends and the next begins */
  readonly endLapFt: number;
  /** membrane carried round each end of the wall */
  readonly cornerReturnFt: number;
  /** membrane folded into each opening */
  readonly openingReturnFt: number;
}

/** One course of membrane as it is rolled out. */
export interface RollCourse {
  readonly bottomFt: number;
  readonly topFt: number;
  /** where it begins and ends on the wall, without the returns */
  readonly span: readonly [fromFt: number, toFt: number];
  readonly runFt: number;
  /** taken off the run where an opening leaves out the whole course */
  readonly savedFt: number;
}

/**
 * Courses of membrane on a wall, from the foot up. Each is as long as the wall at its lower edge, with the returns; an opening
 * that takes its whole height is left out but for the returns into it. Other openings are rolled over and cut out: no credit.
 * @throws BadInput for laps as wide as the roll, or an opening that does not fit
 */
export function rollCourses(opened: OpenedWall<SilledOpening>, rules: RollRules): readonly RollCourse[] {
  checkOpenings(opened);
  const { wall, openings } = opened;
  const stepFt = rules.rollWidthFt - rules.sideLapFt;
  if (rules.sideLapFt > rules.rollWidthFt / 2 || rules.endLapFt > rules.rollLengthFt / 2) {
    throw new BadInput(
      `The laps of ${plain(rules.sideLapFt)} and ${plain(rules.endLapFt)} ft take more than half of a roll of ${plain(rules.rollWidthFt)} x ${plain(rules.rollLengthFt)} ft`,
      "each lap is at most half of the roll that way",
      "Check the size of the roll and the laps; laps are in inches",
    );
  }
  const courses: RollCourse[] = [];
  for (let i = 0; ; i++) {
    const bottomFt = i * stepFt;
    const span = spanAtFt(wall, bottomFt);
    const covered = i > 0 && !exceeds(tallestFt(wall), bottomFt + rules.sideLapFt);
    if (span === undefined || covered) break;
    const topFt = Math.min(bottomFt + rules.rollWidthFt, tallestFt(wall));
    const fullFt = span[1] - span[0] + 2 * rules.cornerReturnFt;
    const savedFt = openings.reduce((sum, o) => {
      const whole = takesHeight(o, bottomFt, topFt);
      return sum + (whole ? o.count * Math.max(0, o.widthFt - 2 * rules.openingReturnFt) : 0);
    }, 0);
    const runFt = Math.max(0, fullFt - savedFt);
    courses.push({ bottomFt, topFt, span, runFt, savedFt: Math.min(savedFt, fullFt) });
  }
  return courses;
}

/**
 * Rolls of membrane for walls: courses with side laps, an end lap at each change of roll, returns at corners and openings. A roll goes on
 * from one course and one wall to the next. Waste is a share of the run.
 */
export function rolls(walls: readonly OpenedWall[], rules: RollRules, waste: number, tape?: Tape): OrderLine {
  let runFt = 0;
  let savedFt = 0;
  for (const w of walls) {
    const opened = { wall: w.wall, openings: silledOpenings(w.openings, tape) };
    const courses = rollCourses(opened, rules);
    const wallFt = courses.reduce((sum, c) => sum + c.runFt, 0);
    runFt += wallFt;
    savedFt += courses.reduce((sum, c) => sum + c.savedFt, 0);
    const n = courses.length;
    tape?.step("n", `${w.wall.name}: courses at roll width - side lap, until the top is covered`, n, "courses", LAPS);
    tape?.step(
      "L_w",
      "sum of courses at their lower edges, with corner returns, less openings",
      wallFt,
      "ft",
      "geometry",
    );
    tape?.show(showCourses(opened, courses));
  }
  if (savedFt > 0) tape?.step("L_o", "left out where an opening takes a whole course", savedFt, "ft", "geometry");
  const wantedFt = runFt * (1 + waste);
  tape?.step("L", `sum of the walls x (1 + waste ${waste})`, wantedFt, "ft", "");
  // r rolls cover r x length less the laps between them: r - 1.
  const packs =
    wantedFt === 0 ? 0 : Math.max(1, wholePacks(wantedFt - rules.endLapFt, rules.rollLengthFt - rules.endLapFt));
  const quantity = wantedFt + Math.max(0, packs - 1) * rules.endLapFt;
  tape?.step("Q", "L with an end lap between two rolls", quantity, "ft", LAPS);
  tape?.step("N", "(L - end lap) / (roll length - end lap), rounded up", packs, "rolls", LAPS);
  const size = `${plain(rules.rollWidthFt * INCHES_IN.ft)} in x ${plain(rules.rollLengthFt)} ft`;
  return { item: "membrane", quantity, unit: "ft", packs, pack: `roll ${size}` };
}

function showCourses({ wall, openings }: OpenedWall<SilledOpening>, courses: readonly RollCourse[]) {
  return elevation("membrane", wall, withPlace(openings), {
    pieces: courses.map(({ span, bottomFt, topFt, runFt }, i) => ({
      name: `${i + 1}`,
      from: formatLength(runFt * INCHES_IN.ft, 1),
      leftover: false,
      corners: cornersOnWall(wall, { x0: span[0], y0: bottomFt, x1: span[1], y1: topFt }),
    })),
    alt: `${courses.length} courses of membrane`,
  });
}
