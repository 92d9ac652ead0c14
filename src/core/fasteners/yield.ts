import { plain } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import type { Dowel } from "./dowel.ts";
import { SMALL_DOWEL_IN } from "./tables/fasteners.ts";

export const MODES = ["Im", "Is", "II", "IIIm", "IIIs", "IV"] as const;
export type Mode = (typeof MODES)[number];

/** What gives way in each mode. NDS 2018 Appendix I. */
export const MODE_WORDS: Readonly<Record<Mode, string>> = {
  Im: "the main member crushes, the fastener stays straight",
  Is: "the side member crushes, the fastener stays straight",
  II: "the fastener turns as a straight bar and crushes both members",
  IIIm: "the main member crushes and the fastener bends in the side member",
  IIIs: "the side member crushes and the fastener bends in the main member",
  IV: "the fastener bends in both members",
};

/** A member as the fastener bears in it. */
export interface Bearing {
  readonly lengthIn: number;
  readonly psi: number;
}

/** Yield load of one shear plane in each mode, lb, without reduction; and how it comes about. */
export interface ModeLoad {
  readonly mode: Mode;
  readonly lb: number;
  readonly how: string;
}

/** Positive root of A P^2 + B P + C = 0, with C below 0. */
function quadratic(mode: Mode, a: number, b: number, c: number): ModeLoad {
  return {
    mode,
    lb: (-b + Math.sqrt(b * b - 4 * a * c)) / (2 * a),
    how: `(-B + sqrt(B^2 - 4 A C)) / (2 A), A ${plain(a)}, B ${plain(b)}, C ${plain(c)}`,
  };
}

/** Largest moment that the fastener takes, its plastic moment, in-lb. */
function plasticMoment(dowel: Dowel): number {
  return (dowel.bendingYieldPsi * dowel.yieldIn ** 3) / 6;
}

/**
 * Yield loads of one shear plane by the general dowel equations, with an optional gap between the members; without a gap they are the six
 * equations of NDS 12.3.1.
 * Source: AWC Technical Report 12, general dowel equations, from memory; NDS 2018 Table 12.3.1A (printed values of Tables 12K and 11J).
 */
export function planeYield(
  dowel: Dowel,
  main: Bearing,
  side: Bearing,
  gapIn: number,
  tape?: Tape,
): readonly ModeLoad[] {
  const qm = main.psi * dowel.yieldIn;
  const qs = side.psi * dowel.yieldIn;
  const m = plasticMoment(dowel);
  const { lengthIn: lm } = main;
  const { lengthIn: ls } = side;
  tape?.step("q_m", "Fe D in the main member", qm, "lb/in", "AWC TR12");
  tape?.step("q_s", "Fe D in the side member", qs, "lb/in", "AWC TR12");
  tape?.step("M", "Fyb D^3 / 6", m, "in lb", "AWC TR12");
  const crushM = (qm * lm * lm) / 4;
  const crushS = (qs * ls * ls) / 4;
  return [
    { mode: "Im", lb: qm * lm, how: "q_m l_m" },
    { mode: "Is", lb: qs * ls, how: "q_s l_s" },
    quadratic("II", 1 / (4 * qs) + 1 / (4 * qm), ls / 2 + gapIn + lm / 2, -crushS - crushM),
    quadratic("IIIm", 1 / (2 * qs) + 1 / (4 * qm), gapIn + lm / 2, -m - crushM),
    quadratic("IIIs", 1 / (4 * qs) + 1 / (2 * qm), ls / 2 + gapIn, -crushS - m),
    quadratic("IV", 1 / (2 * qs) + 1 / (2 * qm), gapIn, -2 * m),
  ];
}

/** Whether the fastener can yield so between two side members: it cannot turn as a bar. */
const IN_DOUBLE_SHEAR: Readonly<Record<Mode, boolean>> = {
  Im: true,
  Is: true,
  II: false,
  IIIm: false,
  IIIs: true,
  IV: true,
};

/** Loads of both planes together, from those of one: the main member is crushed once, all else happens twice. NDS 2018 Table 12.3.1A. */
export function bothPlanes(loads: readonly ModeLoad[]): readonly ModeLoad[] {
  return loads
    .filter(({ mode }) => IN_DOUBLE_SHEAR[mode])
    .map((l) => (l.mode === "Im" ? l : { ...l, lb: 2 * l.lb, how: `2 ${l.how}` }));
}

/** Divisors of the yield load. NDS 2018 Table 12.3.1B, borne out by the printed values of Table 12K. */
const DIVISOR: Readonly<Record<Mode, number>> = { Im: 4, Is: 4, II: 3.6, IIIm: 3.2, IIIs: 3.2, IV: 3.2 };
const SMALLEST_IN = 0.17;

/**
 * Reduction term Rd of a mode.
 * @param angleDeg largest angle of the load to the grain in any member
 * Source: NDS 2018 Table 12.3.1B: a threaded fastener of 1/4 in or more whose root is thinner takes both KD and K theta.
 */
export function reductionTerm(mode: Mode, dowel: Dowel, angleDeg: number): number {
  const kTheta = dowel.nominalIn < SMALL_DOWEL_IN ? 1 : 1 + (0.25 * angleDeg) / 90;
  if (dowel.yieldIn >= SMALL_DOWEL_IN) return DIVISOR[mode] * kTheta;
  return (dowel.yieldIn <= SMALLEST_IN ? 2.2 : 10 * dowel.yieldIn + 0.5) * kTheta;
}
