import { BadInput, OutOfRange, plain, within } from "../../kit/refusal.ts";
import type { Tape } from "../../kit/tape.ts";
import { INCHES_IN } from "../../units/length.ts";
import { exceeds, isBetween, wholeBelow } from "../wall/close.ts";
import { headFt, rightFt } from "../wall/opening.ts";
import { checkOpenings } from "../wall/wall.ts";
import { coursesBound } from "./bound.ts";
import { PER_FT, type Stretch, stretches } from "./layout.ts";
import { showWall } from "./picture.ts";
import { cutOuts, keptOffcuts, namedJoints, namedPieces, sizeOf } from "./pieces.ts";
import { clashesOf, narrowJoints, searchJoints } from "./search.ts";
import type { CoursedWall, CoursePlan, CourseRules, Offcut } from "./types.ts";

/** Stretches of course, all walls together, that one search takes. */
const MOST_STRETCHES = 400;
const WIDEST_GAP_IN = 2;

/**
 * Courses of long panels on the columns of one or more walls, cut from as few panels as the search finds, with as few joints. Joints land on
 * column lines outside openings and leave no leg beside one that is narrower than the least; no joint stands over a joint of the course below, so joints are staggered by a bay at least. An opening that takes a
 * course's whole height leaves that part out; a gable's courses are cut to the rake from the rectangle that holds them. Cut-outs and offcuts on
 * hand are used for what is not a full course high. Every choice of joints where they are few, else annealing with a fixed effort and seed: the same walls give the same plan.
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
  const plan = planOnce(walls, onHand, rules);
  record(walls, plan, rules, tape);
  return plan;
}

/** Plans kept: the pieces, the leftovers and the working of the same walls are one search. */
const KEPT = 4;
const plans = new Map<string, CoursePlan>();

function planOnce(walls: readonly CoursedWall[], onHand: readonly Offcut[], rules: CourseRules): CoursePlan {
  const key = JSON.stringify([walls, onHand, rules]);
  const plan = plans.get(key) ?? newPlan(walls, onHand, rules);
  plans.delete(key);
  plans.set(key, plan);
  if (plans.size > KEPT) plans.delete(plans.keys().next().value as string);
  return plan;
}

function newPlan(walls: readonly CoursedWall[], onHand: readonly Offcut[], rules: CourseRules): CoursePlan {
  for (const w of walls) checkWall(w, rules);
  const parts = stretches(walls, rules);
  if (parts.length > MOST_STRETCHES) {
    throw new OutOfRange(
      `The walls have ${parts.length} stretches of course`,
      `up to ${MOST_STRETCHES} are planned at once`,
      "Plan fewer walls at once, or check the width of the panel",
    );
  }
  const stock = [...onHand, ...cutOuts(walls, parts, rules)];
  const sizes = stock.map(sizeOf);
  const bound = coursesBound(walls, parts, sizes, rules);
  const choice = searchJoints(walls, parts, sizes, rules, bound);
  return {
    pieces: namedPieces(walls, parts, choice.joints, choice.plan, stock, rules),
    joints: namedJoints(walls, parts, choice.joints),
    panels: choice.plan.panels,
    bound,
    exceptions: [...clashSentences(walls, parts, choice.joints), ...legSentences(walls, parts, choice.joints, rules)],
    offcuts: keptOffcuts(choice.plan, stock),
  };
}

function checkWall(w: CoursedWall, rules: CourseRules): void {
  checkOpenings(w);
  checkColumns(w);
  within("The joint gap", rules.jointGapIn, 0, WIDEST_GAP_IN, "in", "joints of panel courses");
  if (rules.jointGapIn / INCHES_IN.ft >= rules.panelLengthFt) {
    throw new BadInput(
      `The panel is ${plain(rules.panelLengthFt * INCHES_IN.ft)} in long`,
      `the joint gap takes all of it with ${plain(rules.jointGapIn)} in`,
      "Check the size of the panel and the gap",
    );
  }
}

function checkColumns({ wall, columnsFt }: CoursedWall): void {
  if (columnsFt.length === 0) {
    throw new BadInput(
      `The columns hold none of ${wall.name}`,
      "panels stand on columns, one at each end of a wall at least",
      "Give its column lines with the name of the wall, as WALL_COLUMNS lists them",
    );
  }
  const sorted = [...columnsFt].sort((a, b) => a - b);
  const [first = 0, last = 0] = [sorted[0], sorted.at(-1)];
  const halfInch = 0.5 / 12;
  if (!exceeds(Math.abs(first), halfInch) && !exceeds(Math.abs(last - wall.lengthFt), halfInch)) return;
  throw new BadInput(
    `The columns of ${wall.name} run from ${plain(first)} to ${plain(last)} ft`,
    `the wall runs from 0 to ${plain(wall.lengthFt)} ft, with a column at each end`,
    "Give the column lines from the left end of the wall, both ends among them; WALL_COLUMNS lists them",
  );
}

/** Joints over joints that this plan has because nothing else was found. */
function clashSentences(
  walls: readonly CoursedWall[],
  parts: readonly Stretch[],
  joints: readonly (readonly number[])[],
): readonly string[] {
  return clashesOf(parts, joints).map(({ above, at }) => {
    const name = walls[above.wall]?.wall.name ?? "";
    return `The joint at ${plain(at / PER_FT)} ft in course ${above.course + 1} of ${name} stands over a joint of course ${above.course}: no plan with a stagger of one bay was found.`;
  });
}

/** Joints beside an opening that leave less than the least leg because the panels reach no other column. */
function legSentences(
  walls: readonly CoursedWall[],
  parts: readonly Stretch[],
  joints: readonly (readonly number[])[],
  rules: CourseRules,
): readonly string[] {
  return parts.flatMap((s, i) =>
    narrowJoints(s, joints[i] ?? []).map((x) => {
      const name = walls[s.wall]?.wall.name ?? "";
      return `The joint at ${plain(x / PER_FT)} ft in course ${s.course + 1} of ${name} leaves a leg beside an opening that is narrower than ${plain(rules.leastLegIn)} in: no other column is within a panel's reach. Move a column or the opening.`;
    }),
  );
}

/** Cautions where a course's edge leaves a strip over or under an opening that is narrower than the least leg: joints cannot mend it. */
function cautionStrips(w: CoursedWall, rules: CourseRules, tape: Tape): void {
  const step = rules.panelWidthFt;
  for (const o of w.openings) {
    for (const [edgeFt, side] of [
      [o.sillFt, "under"],
      [headFt(o), "over"],
    ] as const) {
      const over = edgeFt - wholeBelow(edgeFt / step) * step;
      const leftIn = (side === "under" ? over : step - over) * 12;
      const top = side === "over" ? (w.wall.heightFt - edgeFt) * 12 : leftIn;
      const stripIn = w.wall.riseFt === 0 ? Math.min(leftIn, top) : leftIn;
      if (stripIn <= 0.01 || stripIn >= rules.leastLegIn - 0.01 || leftIn >= step * 12 - 0.01) continue;
      tape.caution(
        `A strip of ${plain(Math.round(stripIn * 16) / 16)} in of panel is left ${side} ${o.name} of ${w.wall.name}, narrower than ${plain(rules.leastLegIn)} in: the courses begin at the foot of the wall.`,
      );
    }
  }
}

/** What a piece may fall short of a column's line by and still be fastened to it: the gap beside it. */
const NEAR_FT = 2 / 12;

/** A caution that names the pieces that fewer than two columns hold: short ones beside an opening that takes the whole course. */
function cautionHeldOnce(walls: readonly CoursedWall[], plan: CoursePlan, tape: Tape): void {
  const once = plan.pieces.filter(({ wall, leftFt, lengthIn }) => {
    const columns = walls.find((w) => w.wall.name === wall)?.columnsFt ?? [];
    return columns.filter((x) => isBetween(x, leftFt - NEAR_FT, leftFt + lengthIn / 12 + NEAR_FT)).length < 2;
  });
  if (once.length === 0) return;
  const names = once.map((p) => `${p.wall} ${p.name}`).join(", ");
  tape.caution(
    `Fewer than two columns hold ${names}: the framing of the opening or the rake beside it has to carry the other end.`,
  );
}

function record(walls: readonly CoursedWall[], plan: CoursePlan, rules: CourseRules, tape: Tape | undefined): void {
  if (tape === undefined) return;
  const columns = walls.flatMap((w) =>
    w.columnsFt.filter((x) => w.openings.some((o) => isBetween(x, o.leftFt, rightFt(o)))).map((x) => `${plain(x)} ft`),
  );
  if (columns.length > 0) tape.caution(`Columns inside an opening take no joint there: ${columns.join(", ")}.`);
  for (const w of walls) cautionStrips(w, rules, tape);
  for (const sentence of plan.exceptions) tape.caution(sentence);
  cautionHeldOnce(walls, plan, tape);
  tape.step(
    "N_0",
    "larger of full-height run and area over one panel, rounded up",
    plan.bound,
    "panels",
    "no fewer can do",
  );
  tape.step(
    "J",
    "joints, all on column lines",
    plan.joints.length,
    "joints",
    "the best of a search that ends alike everywhere",
  );
  const found = plan.panels === plan.bound ? "equal to N_0: proven least" : "least found";
  tape.step("N", `panels, ${found}`, plan.panels, "panels", "");
  for (const w of walls) tape.show(showWall(w, plan));
}
