import { Random } from "../../kit/random.ts";
import { type CutPlan, cutCourses } from "./cutting.ts";
import { fitsPanels, jointsFrom } from "./joints.ts";
import { ofFt, PER_IN, type Size, type Stretch, stretchPieces } from "./layout.ts";
import type { CoursedWall, CourseRules } from "./types.ts";

/** Places for joints, all stretches together, up to which every choice is tried. */
const FEW_PLACES = 11;
/** Work of one search, in pieces squared by tried choices, so that it ends alike on every machine. */
const EFFORT = 200_000_000;
const MOST_ROUNDS = 40_000;
/** Rounds without a better choice after which the search ends. */
const PATIENCE = 8000;
const SEED = 20_251;
/** What one of each costs: a joint over a joint, a leg too narrow, a panel, a joint; and what gathering the leftovers in few panels is worth. */
const CLASH = 100_000;
const NARROW = 30_000;
const PANEL = 1000;
const JOINT = 20;
const GATHERED = 6000;
/** Temperature at the start of the annealing, in the same measure. */
const HEAT = 50;

/** Joints of each stretch, and how good they are. */
export interface Choice {
  readonly joints: readonly (readonly number[])[];
  /** columns where courses that touch both have a joint */
  readonly clashes: number;
  /** joints that leave a leg narrower than the least */
  readonly narrow: number;
  readonly count: number;
  readonly plan: CutPlan;
  readonly cost: number;
}

/**
 * Chooses the joints of all courses: no joint over a joint first, then no leg too narrow, then the fewest panels, then the fewest joints, then the largest leftovers.
 * Starts from courses laid from the left with shifted first pieces; where there are few places for joints it tries every choice, else it improves by
 * moving, adding and taking away joints; fixed effort, seeded.
 */
export function searchJoints(
  walls: readonly CoursedWall[],
  parts: readonly Stretch[],
  stock: readonly Size[],
  rules: CourseRules,
  bound: number,
): Choice {
  const rater = new Rater(walls, parts, stock, rules);
  const starts = [0.5, 0.25, 0.75, 1].map((share) => rater.rate(startJoints(walls, parts, rules, share)));
  const start = starts.reduce((a, b) => (isBetter(b, a) ? b : a));
  if (parts.reduce((sum, s) => sum + s.places.length, 0) <= FEW_PLACES) {
    return everyChoice(walls, parts, rules)
      .map((joints) => rater.rate(joints))
      .reduce((a, b) => (isBetter(b, a) ? b : a), start);
  }
  let best = start;
  const rounds = Math.min(MOST_ROUNDS, Math.ceil(EFFORT / (best.plan.places.length + 4) ** 2));
  const random = new Random(SEED);
  let now = best;
  const least = fewestPossible(walls, parts, rules);
  let since = 0;
  for (let n = 0; n < rounds && since < PATIENCE; n++, since++) {
    if (best.clashes === 0 && best.narrow === 0 && best.plan.panels === bound && best.count === least) break;
    const at = random.below(parts.length);
    const moved = moveJoint(walls, parts[at] as Stretch, now.joints[at] ?? [], rules, random);
    if (moved === undefined) continue;
    const next = rater.rate(now.joints.map((j, i) => (i === at ? moved : j)));
    const heat = HEAT * (1 - n / rounds);
    if (next.cost < now.cost || random.unit() < Math.exp((now.cost - next.cost) / heat)) now = next;
    if (isBetter(now, best)) {
      best = now;
      since = 0;
    }
  }
  return withoutNeedless(walls, parts, rules, rater, best);
}

/** All joints that the panels allow, stretch by stretch. */
function everyChoice(
  walls: readonly CoursedWall[],
  parts: readonly Stretch[],
  rules: CourseRules,
): readonly (readonly (readonly number[])[])[] {
  let choices: readonly (readonly (readonly number[])[])[] = [[]];
  for (const s of parts) {
    const sets = subsets(s.places).filter((joints) => fitsPanels(walls[s.wall] as CoursedWall, s, joints, rules));
    choices = choices.flatMap((before) => sets.map((joints) => [...before, joints]));
  }
  return choices;
}

function subsets(places: readonly number[]): readonly (readonly number[])[] {
  let sets: readonly (readonly number[])[] = [[]];
  for (const x of places) sets = [...sets, ...sets.map((joints) => [...joints, x])];
  return sets;
}

/** The order of the goals; the cost, which leads the search, mixes them and decides only where they are alike. */
function isBetter(a: Choice, b: Choice): boolean {
  const by =
    a.clashes - b.clashes ||
    a.narrow - b.narrow ||
    a.plan.panels - b.plan.panels ||
    a.count - b.count ||
    a.cost - b.cost;
  return by < 0;
}

/** Leaves out one joint after the other that the panels reach over, where that makes the choice better: a larger leftover is worth no joint. */
function withoutNeedless(
  walls: readonly CoursedWall[],
  parts: readonly Stretch[],
  rules: CourseRules,
  rater: Rater,
  found: Choice,
): Choice {
  const fewer = parts.flatMap((s, at) => {
    const joints = found.joints[at] ?? [];
    return joints.flatMap((x) => {
      const left = joints.filter((other) => other !== x);
      if (!fitsPanels(walls[s.wall] as CoursedWall, s, left, rules)) return [];
      return [rater.rate(found.joints.map((j, i) => (i === at ? left : j)))];
    });
  });
  const best = fewer.reduce((a, b) => (isBetter(b, a) ? b : a), found);
  return best === found ? found : withoutNeedless(walls, parts, rules, rater, best);
}

function fewestPossible(walls: readonly CoursedWall[], parts: readonly Stretch[], rules: CourseRules): number {
  const none = new Set<number>();
  return parts.reduce((sum, s) => sum + jointsFrom(walls[s.wall] as CoursedWall, s, rules, 1, none).length, 0);
}

function startJoints(
  walls: readonly CoursedWall[],
  parts: readonly Stretch[],
  rules: CourseRules,
  share: number,
): readonly (readonly number[])[] {
  const out: (readonly number[])[] = [];
  parts.forEach((s) => {
    const below = parts.flatMap((t, i) => (t.wall === s.wall && t.course === s.course - 1 ? (out[i] ?? []) : []));
    const wall = walls[s.wall] as CoursedWall;
    const plain = jointsFrom(wall, s, rules, 1, new Set(below));
    const clash = plain.some((x) => below.includes(x));
    out.push(
      clash || (s.course % 2 === 1 && plain.length > 0) ? jointsFrom(wall, s, rules, share, new Set(below)) : plain,
    );
  });
  return out;
}

/** One change: a joint moves to a neighbouring column, goes, or comes. */
function moveJoint(
  walls: readonly CoursedWall[],
  s: Stretch,
  joints: readonly number[],
  rules: CourseRules,
  random: Random,
): readonly number[] | undefined {
  if (s.places.length === 0) return undefined;
  const set = new Set(joints);
  const x = s.places[random.below(s.places.length)] as number;
  const kind = random.below(4);
  if (kind === 0) {
    if (!set.delete(x)) set.add(x);
  } else {
    const gone = joints[random.below(joints.length)];
    if (gone !== undefined) set.delete(gone);
    set.add(x);
    if (kind === 3) {
      const other = joints[random.below(joints.length)];
      if (other !== undefined) set.delete(other);
      set.add(s.places[random.below(s.places.length)] as number);
    }
  }
  const moved = [...set].sort((a, b) => a - b);
  return fitsPanels(walls[s.wall] as CoursedWall, s, moved, rules) ? moved : undefined;
}

/** Rates choices of joints; keeps the pieces of stretches whose joints did not change. */
class Rater {
  readonly #walls: readonly CoursedWall[];
  readonly #parts: readonly Stretch[];
  readonly #stock: readonly Size[];
  readonly #rules: CourseRules;
  readonly #pairs: readonly (readonly [number, number])[];
  readonly #pieces = new WeakMap<readonly number[], readonly Size[]>();

  constructor(walls: readonly CoursedWall[], parts: readonly Stretch[], stock: readonly Size[], rules: CourseRules) {
    this.#walls = walls;
    this.#parts = parts;
    this.#stock = stock;
    this.#rules = rules;
    this.#pairs = touching(parts);
  }

  /** Clashes and narrow legs first, then panels, then joints, then how gathered the leftovers are. */
  rate(joints: readonly (readonly number[])[]): Choice {
    const rules = this.#rules;
    const pieces = this.#parts.flatMap((s, i) => this.#piecesOf(s, joints[i] ?? []));
    const panel = { length: ofFt(rules.panelLengthFt), height: ofFt(rules.panelWidthFt) };
    const plan = cutCourses(pieces, this.#stock, panel, Math.round(rules.kerfIn * PER_IN));
    const count = joints.reduce((sum, j) => sum + j.length, 0);
    let clashes = 0;
    for (const [below, above] of this.#pairs) {
      for (const x of joints[above] ?? []) if (joints[below]?.includes(x)) clashes++;
    }
    const narrow = this.#parts.reduce((sum, s, i) => sum + narrowJoints(s, joints[i] ?? []).length, 0);
    const whole = panel.length * panel.height;
    const gathered = plan.rests.reduce((sum, r) => sum + (r.source < 0 ? 0 : ((r.length * r.height) / whole) ** 2), 0);
    const bad = clashes * CLASH + narrow * NARROW;
    const cost = bad + plan.panels * PANEL + count * JOINT - (GATHERED * gathered) / Math.max(1, plan.panels);
    return { joints, clashes, narrow, count, plan, cost };
  }

  #piecesOf(s: Stretch, joints: readonly number[]): readonly Size[] {
    // Each stretch has lists of its own, so a list of joints stands for its stretch.
    const known = this.#pieces.get(joints);
    if (known !== undefined) return known;
    const made = stretchPieces(this.#walls[s.wall] as CoursedWall, s, joints, this.#rules);
    this.#pieces.set(joints, made);
    return made;
  }
}

/** Joints of a stretch that leave less than the least leg beside an opening. */
export function narrowJoints(s: Stretch, joints: readonly number[]): readonly number[] {
  return s.narrow.size === 0 ? [] : joints.filter((x) => s.narrow.has(x));
}

/** Numbers of stretches in courses that touch: below, above. */
function touching(parts: readonly Stretch[]): readonly (readonly [number, number])[] {
  return parts.flatMap((above, a) =>
    parts.flatMap((below, b) =>
      below.wall === above.wall && below.course === above.course - 1 ? [[b, a] as const] : [],
    ),
  );
}

/** Columns where two courses that touch both have a joint. */
export function clashesOf(
  parts: readonly Stretch[],
  joints: readonly (readonly number[])[],
): readonly { readonly above: Stretch; readonly at: number }[] {
  return touching(parts).flatMap(([below, above]) =>
    (joints[above] ?? [])
      .filter((x) => joints[below]?.includes(x))
      .map((at) => ({ above: parts[above] as Stretch, at })),
  );
}
