import { BadInput, OutOfRange, plain } from "../../kit/refusal.ts";
import type { Tape } from "../../kit/tape.ts";
import { cautionSills } from "../opening.ts";
import { CLOSE_FT, checkOpenings } from "../wall.ts";
import { coursesBound } from "./bound.ts";
import { PER_FT, type Stretch, stretches } from "./layout.ts";
import { showWall } from "./picture.ts";
import { cutOuts, keptOffcuts, namedJoints, namedPieces, sizeOf } from "./pieces.ts";
import { clashesOf, searchJoints } from "./search.ts";
import type { CoursedWall, CoursePlan, CourseRules, Offcut } from "./types.ts";

/** Stretches of course, all walls together, that one search takes. */
const MOST_STRETCHES = 400;

/**
 * Courses of long panels on the columns of one or more walls, cut from as few panels as the search finds, with as few joints. Joints land on
 * column lines outside openings; no joint stands over a joint of the course below, so joints are staggered by a bay at least. An opening that takes a
 * course's whole height leaves that part out; a gable's courses are cut to the rake from the rectangle that holds them. Cut-outs and offcuts on
 * hand are used for what is not a full course high. Annealing over the joints with a fixed effort and seed: the same walls give the same plan.
 * @param onHand offcuts to use first
 * @returns the plan with the least number of panels that any joints could reach beside it
 * @throws BadInput for openings outside a wall or columns that do not end it; OutOfRange where columns stand farther apart than a panel is long
 */
export function planCourses(
  walls: readonly CoursedWall[],
  onHand: readonly Offcut[],
  rules: CourseRules,
  tape?: Tape,
): CoursePlan {
  for (const w of walls) checkWall(w, rules);
  const parts = stretches(walls, rules);
  if (parts.length > MOST_STRETCHES) {
    throw new OutOfRange(
      `The walls have ${parts.length} stretches of course`,
      `up to ${MOST_STRETCHES} are planned at once`,
      "Plan fewer walls at once, or check the width of the panel",
    );
  }
  for (const w of walls) cautionSills(w.openings, tape);
  const stock = [...onHand, ...cutOuts(walls, parts, rules)];
  const sizes = stock.map(sizeOf);
  const bound = coursesBound(walls, parts, sizes, rules);
  const choice = searchJoints(walls, parts, sizes, rules, bound);
  const plan: CoursePlan = {
    pieces: namedPieces(walls, parts, choice.joints, choice.plan, stock, rules),
    joints: namedJoints(walls, parts, choice.joints),
    panels: choice.plan.panels,
    bound,
    exceptions: exceptions(walls, parts, choice.joints),
    offcuts: keptOffcuts(choice.plan, stock),
  };
  record(walls, plan, tape);
  return plan;
}

function checkWall(w: CoursedWall, rules: CourseRules): void {
  checkOpenings(w.wall, w.openings);
  const sorted = [...w.columnsFt].sort((a, b) => a - b);
  const [first, last] = [sorted[0] ?? Number.NaN, sorted.at(-1) ?? Number.NaN];
  const halfInch = 0.5 / 12;
  if (!(Math.abs(first) <= halfInch && Math.abs(last - w.wall.lengthFt) <= halfInch)) {
    throw new BadInput(
      `The columns of ${w.name} run from ${plain(first)} to ${plain(last)} ft`,
      `the wall runs from 0 to ${plain(w.wall.lengthFt)} ft, with a column at each end`,
      "Give the column lines from the left end of the wall, both ends among them; WALL_COLUMNS lists them",
    );
  }
  if (rules.jointGapIn > 2 || rules.jointGapIn / 12 >= rules.panelLengthFt) {
    throw new BadInput(
      `The joint gap is ${plain(rules.jointGapIn)} in`,
      "it is at most 2 in",
      "Give the gap in inches",
    );
  }
}

/** Joint rules that this plan breaks because nothing else was found. */
function exceptions(
  walls: readonly CoursedWall[],
  parts: readonly Stretch[],
  joints: readonly (readonly number[])[],
): readonly string[] {
  return clashesOf(parts, joints).map(({ above, at }) => {
    const name = walls.length === 1 ? "" : ` of ${walls[above.wall]?.name}`;
    return `The joint at ${plain(at / PER_FT)} ft in course ${above.course + 1}${name} stands over a joint of course ${above.course}: no plan with a stagger of one bay was found.`;
  });
}

function record(walls: readonly CoursedWall[], plan: CoursePlan, tape: Tape | undefined): void {
  if (tape === undefined) return;
  const columns = walls.flatMap((w) =>
    w.columnsFt
      .filter((x) => w.openings.some((o) => x > o.leftFt + CLOSE_FT && x < o.leftFt + o.widthFt - CLOSE_FT))
      .map((x) => `${plain(x)} ft`),
  );
  if (columns.length > 0) tape.caution(`Columns inside an opening take no joint there: ${columns.join(", ")}.`);
  for (const sentence of plan.exceptions) tape.caution(sentence);
  tape.step("LB", "larger of full-height run and area over one panel, rounded up", plan.bound, "panels", "lower bound");
  tape.step("J", "joints, all on column lines", plan.joints.length, "joints", "annealing, fixed effort and seed");
  const found = plan.panels === plan.bound ? "equal to LB: proven least" : "least found";
  tape.step("N", `panels, ${found}`, plan.panels, "panels", "");
  for (const w of walls) tape.show(showWall(w, plan));
}
