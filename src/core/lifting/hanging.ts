import { BadInput, plain } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import { cross, dot, minus, ORIGIN, partsAlong, size, times, unit, type Vector } from "./vectors.ts";

/** Where a leg is fastened, from the center of gravity; z upward. */
export interface SlingPick {
  readonly pick: string;
  readonly xFt: number;
  readonly yFt: number;
  readonly zFt: number;
}

/** Where the hook stands in plan, from the center of gravity. */
export interface SlingHook {
  readonly xFt: number;
  readonly yFt: number;
}

/** A load as it hangs: its center of gravity at the origin, plumb below the hook. */
export interface Hanging {
  readonly picks: readonly Vector[];
  readonly hook: Vector;
  /** plumb upward: from the center of gravity to the hook */
  readonly up: Vector;
  /** from each pick to the hook, of length 1 */
  readonly legs: readonly Vector[];
  readonly lengthsFt: readonly number[];
  /** greatest share of the weight that statics can put on each leg; undefined where no legs can hold the load */
  readonly shares: readonly number[] | undefined;
}

/** Picks closer to a line, or to the level of the center of gravity, than this lie on it. */
const CLOSE_FT = 0.01;
/** A load that hangs this far out of level is said. */
const LEVEL_DEG = 0.5;
/** Rounding of forces: a leg is pulled, or slack. */
const ROUND = 1e-9;

const UPWARD: Vector = [0, 0, 1];
/** A plumb line off the plane of all legs by more than this share of a force lets the load swing. */
const OUT_OF_PLANE = 1e-6;

/**
 * How a load hangs from its legs. With picks in one line the load turns about that line until its center of gravity is below it; with a hook off to
 * one side it tilts until its center of gravity is plumb below the hook.
 */
export function hang(picks: readonly SlingPick[], riseFt: number, hook: SlingHook, tape?: Tape): Hanging {
  const places = picks.map((p): Vector => [p.xFt, p.yFt, p.zFt]);
  const heights = picks.map((p) => p.zFt);
  const [low, high] = [Math.min(...heights), Math.max(...heights)];
  if (riseFt <= high - low) {
    throw new BadInput(
      `The hook is ${plain(riseFt)} ft above the lowest pick`,
      `the highest pick is ${plain(high - low)} ft above it`,
      "Give the rise from the lowest pick to the hook",
    );
  }
  if (high > low) tape?.assume("The rise is measured from the lowest pick.");
  const above: Vector = [hook.xFt, hook.yFt, low + riseFt];
  const line = lineOf(places, picks);
  if (line !== undefined) return hangFromLine(places, above, line, tape);
  return hangFrom(places, above, tape);
}

/** The direction of the line that all picks lie on, or undefined where they do not lie on one. */
function lineOf(places: readonly Vector[], picks: readonly SlingPick[]): Vector | undefined {
  const [first = ORIGIN, ...rest] = places;
  const far = rest.reduce((a, b) => (size(minus(b, first)) > size(minus(a, first)) ? b : a), first);
  const closest = Math.min(...places.flatMap((a, i) => places.slice(i + 1).map((b) => size(minus(a, b)))));
  if (closest < CLOSE_FT) {
    throw new BadInput(
      `Two of the picks ${picks.map((p) => p.pick).join(", ")} are in the same place`,
      "legs at one place are one leg",
      "Give each pick its own place",
    );
  }
  const along = unit(minus(far, first));
  const off = (p: Vector) => size(away(minus(p, first), along));
  return places.every((p) => off(p) < CLOSE_FT) ? along : undefined;
}

/** The part of a vector that is square to a direction. */
function away(v: Vector, direction: Vector): Vector {
  return minus(v, times(direction, dot(v, direction)));
}

/** Picks in a line: the plane of the legs stands plumb, with the line's own slope. */
function hangFromLine(places: readonly Vector[], above: Vector, along: Vector, tape: Tape | undefined): Hanging {
  const [first = ORIGIN] = places;
  const fromCenter = away(first, along);
  const belowFt = size(fromCenter);
  const upward = away(UPWARD, along);
  if (size(upward) < 0.1) throw turnsOver("The picks stand one above another");
  if (belowFt > CLOSE_FT) {
    const cosine = dot(fromCenter, unit(upward)) / belowFt;
    if (cosine <= 0) throw turnsOver("The line of the picks does not pass above the center of gravity");
    sayTurn("swings out about the line of its picks", cosine, tape);
  }
  // In the plane of the legs: x along the line of picks, z square to it.
  const flat = places.map((p): Vector => [dot(p, along), 0, belowFt]);
  const hook: Vector = [dot(above, along), 0, belowFt + size(away(minus(above, first), along))];
  return settled(flat, hook, [along[2], 0, size(upward)], tape);
}

function turnsOver(what: string): BadInput {
  return new BadInput(
    what,
    "the load would turn over as it leaves the ground",
    "Put the picks in line with the center of gravity and above it, or use three or four",
  );
}

function hangFrom(places: readonly Vector[], above: Vector, tape: Tape | undefined): Hanging {
  if (places.some((p) => p[2] < -CLOSE_FT)) {
    tape?.caution("A pick lies below the center of gravity: a top-heavy load may turn over. Move the picks up.");
  }
  return settled(places, above, UPWARD, tape);
}

/** The load at rest. @param level the direction that was upward while it lay level */
function settled(picks: readonly Vector[], hook: Vector, level: Vector, tape: Tape | undefined): Hanging {
  const up = unit(hook);
  sayTurn("hangs tilted", dot(up, level), tape);
  const reach = picks.map((p) => minus(hook, p));
  const legs = reach.map(unit);
  return { picks, hook, up, legs, lengthsFt: reach.map(size), shares: greatestShares(legs, up) };
}

function sayTurn(how: string, cosine: number, tape: Tape | undefined): void {
  const turnDeg = (Math.acos(Math.min(1, cosine)) * 180) / Math.PI;
  if (turnDeg >= LEVEL_DEG) tape?.caution(`The load ${how} by ${plain(turnDeg)} deg.`);
}

/**
 * Each set of legs that can hold the load alone is a state that a rigid load may come to rest in: the greatest share of the weight that a leg gets in
 * any of them. Legs in one plane hold it two at a time, others three.
 */
function greatestShares(legs: readonly Vector[], up: Vector): readonly number[] | undefined {
  const greatest = legs.map(() => 0);
  let holds = false;
  for (const { set, forces } of states(legs, up)) {
    if (!forces.every((t) => t >= -ROUND)) continue;
    holds = true;
    set.forEach((leg, k) => {
      greatest[leg] = Math.max(greatest[leg] ?? 0, (forces[k] ?? 0) * dot(legs[leg] ?? UPWARD, up));
    });
  }
  return holds ? greatest : undefined;
}

interface State {
  /** numbers of the legs that hold the load */
  readonly set: readonly number[];
  readonly forces: readonly number[];
}

/** The forces in three legs at a time; where all legs stand in one plane, in two at a time if that plane holds the plumb line. */
function states(legs: readonly Vector[], up: Vector): readonly State[] {
  const leg = (i: number | undefined) => legs[i ?? 0] ?? UPWARD;
  const threes = subsets(legs.length, 3).flatMap((set): State[] => {
    const forces = partsAlong(up, [leg(set[0]), leg(set[1]), leg(set[2])]);
    return forces === undefined ? [] : [{ set, forces }];
  });
  if (threes.length > 0) return threes;
  return subsets(legs.length, 2).flatMap((set): State[] => {
    const forces = partsAlong(up, [leg(set[0]), leg(set[1]), unit(cross(leg(set[0]), leg(set[1])))]);
    return forces === undefined || Math.abs(forces[2] ?? 0) > OUT_OF_PLANE ? [] : [{ set, forces: forces.slice(0, 2) }];
  });
}

/** Numbers from 0 to count - 1, `most` at a time. */
function subsets(count: number, most: number): readonly (readonly number[])[] {
  const found: number[][] = [];
  const grow = (chosen: readonly number[]): void => {
    if (chosen.length === most) found.push([...chosen]);
    else for (let i = (chosen.at(-1) ?? -1) + 1; i < count; i++) grow([...chosen, i]);
  };
  grow([]);
  return found;
}
