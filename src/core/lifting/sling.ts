import { BadInput, OutOfRange, plain } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import { type Hanging, hang, type SlingHook, type SlingPick } from "./hanging.ts";
import type { SlingPicture } from "./pictures.ts";
import { LEG_ANGLE, RIGID_LEGS } from "./tables/rules.ts";
import { cross, dot, minus, ORIGIN, unit, type Vector } from "./vectors.ts";

export interface SlingLeg {
  readonly leg: string;
  /** under the static weight */
  readonly tensionLb: number;
  /** from the level */
  readonly angleDeg: number;
}

export interface SlingForces {
  readonly legs: readonly SlingLeg[];
  /** greatest tension with the impact factor: what each leg must be rated for, in its vertical capacity */
  readonly leastRatingLb: number;
}

type LegAngle = Pick<SlingLeg, "leg" | "angleDeg">;

const degrees = (radians: number) => (radians * 180) / Math.PI;

/**
 * Tensions of the legs of a sling from one hook, the load hanging with its center of gravity plumb below the hook.
 * Two legs by statics, of unequal length or with the hook off to one side too. Three and four legs: a rigid load may rest on two of them, so each counts
 * with half the weight, or more where statics can put more on it.
 * @param weightLb static weight, above 0
 * @param picks two to four, from the center of gravity
 * @param riseFt from the lowest pick up to the hook
 * @param hook where it stands off the center of gravity before the load hangs free
 * @param impact factor on the tension, 1 or more
 * @throws OutOfRange for a leg under 30 degrees from the level; BadInput for picks that cannot carry the load level
 * Source: statics; tables/rules.ts for angles and legs counted.
 */
export function liftSling(
  weightLb: number,
  picks: readonly SlingPick[],
  riseFt: number,
  hook: SlingHook,
  impact: number,
  tape?: Tape,
): SlingForces {
  const hanging = hang(picks, riseFt, hook, tape);
  const legs = hanging.legs.map((direction, i): LegAngle => {
    const rise = Math.min(1, dot(direction, hanging.up));
    const leg = picks[i]?.pick ?? "";
    const angleDeg = degrees(Math.asin(rise));
    tape?.step("angle", `${leg}: from the level`, angleDeg, "deg", "geometry");
    return { leg, angleDeg };
  });
  refuseFlatLegs(legs, hanging);
  cautionFlatLegs(legs, tape);
  const shares = legShares(hanging, picks, tape);
  const loaded = legs.map((leg, i) => {
    const share = shares[i] ?? 0;
    const tensionLb = (weightLb * share) / Math.sin((leg.angleDeg * Math.PI) / 180);
    tape?.step("T", `${leg.leg}: ${plain(share)} W / sin(${plain(leg.angleDeg)} deg)`, tensionLb, "lb", "statics");
    return { ...leg, tensionLb };
  });
  const leastRatingLb = impact * Math.max(...loaded.map((leg) => leg.tensionLb));
  tape?.step(
    "rating",
    `greatest T x impact factor ${plain(impact)}`,
    leastRatingLb,
    "lb",
    "vertical rating of one leg",
  );
  const forces = { legs: loaded, leastRatingLb };
  tape?.show(slingPicture(weightLb, hanging, forces));
  return forces;
}

/** Share of the weight that each leg is counted with: its vertical part. */
function legShares(hanging: Hanging, picks: readonly SlingPick[], tape: Tape | undefined): readonly number[] {
  const found = hanging.shares;
  if (found === undefined) {
    throw new BadInput(
      "The center of gravity lies outside the picks",
      "the load would turn over until it hangs below them",
      "Check the places of the picks from the center of gravity, or move a pick beyond it",
    );
  }
  if (picks.length <= RIGID_LEGS.count) return found;
  const least = 1 / RIGID_LEGS.count;
  tape?.step("legs", `counted of ${picks.length}: a rigid load`, RIGID_LEGS.count, "", RIGID_LEGS.source);
  tape?.assume(
    "Of three or four legs two may carry the whole load: each counts with half the weight, or more where statics puts more on it.",
  );
  return found.map((share) => Math.max(share, least));
}

function refuseFlatLegs(legs: readonly LegAngle[], hanging: Hanging): void {
  legs.forEach(({ leg, angleDeg }, i) => {
    if (angleDeg >= LEG_ANGLE.leastDeg - 1e-6) return;
    const reachFt = (hanging.lengthsFt[i] ?? 0) * Math.cos((angleDeg * Math.PI) / 180);
    const neededFt = reachFt * Math.tan((LEG_ANGLE.leastDeg * Math.PI) / 180);
    throw new OutOfRange(
      `Leg ${leg} stands ${plain(angleDeg)} deg from the level`,
      `legs flatter than ${LEG_ANGLE.leastDeg} deg are not used (${LEG_ANGLE.source})`,
      `Raise the hook to ${plain(neededFt)} ft or more above this pick, bring the picks together, or hang the load from a spreader`,
    );
  });
}

function cautionFlatLegs(legs: readonly LegAngle[], tape: Tape | undefined): void {
  const flat = legs.filter((leg) => leg.angleDeg < LEG_ANGLE.preferredDeg - 1e-6);
  if (flat.length === 0) return;
  tape?.caution(
    `${flat.map((l) => `${l.leg} (${plain(l.angleDeg)} deg)`).join(", ")}: below ${LEG_ANGLE.preferredDeg} deg from the level, where tension grows fast (${LEG_ANGLE.source}).`,
  );
}

function slingPicture(weightLb: number, hanging: Hanging, forces: SlingForces): SlingPicture {
  const across = widestView(hanging);
  const place = (v: Vector) => ({ acrossFt: dot(v, across), upFt: dot(v, hanging.up) });
  const legs = forces.legs.map((leg, i) => ({ ...leg, ...place(hanging.picks[i] ?? ORIGIN) }));
  const said = forces.legs.map((l) => `${l.leg} ${Math.round(l.tensionLb)} lb at ${Math.round(l.angleDeg)} degrees`);
  return {
    kind: "sling",
    alt: `A load of ${Math.round(weightLb)} lb below its hook: ${said.join(", ")} from the level; least rating ${Math.round(forces.leastRatingLb)} lb`,
    weightLb,
    leastRatingLb: forces.leastRatingLb,
    hook: place(hanging.hook),
    legs,
  };
}

/** The level direction along which the picks lie farthest apart. */
function widestView({ picks, up }: Hanging): Vector {
  const [first = ORIGIN] = picks;
  const spread = (axis: Vector) => Math.max(...picks.map((p) => Math.abs(dot(minus(p, first), axis))));
  const y: Vector = Math.abs(up[1]) > 0.9 ? [1, 0, 0] : [0, 1, 0];
  const along = unit(cross(y, up));
  const beside = cross(up, along);
  return spread(along) >= spread(beside) ? along : beside;
}
