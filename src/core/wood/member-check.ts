import { plain } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import { adjust, assumeCommon, type Member, showAdjusted } from "./adjust.ts";
import { type BeamLoad, type BeamSolution, solveBeam } from "./beam/beam.ts";
import { greatestDeflection, greatestMoment, greatestShear } from "./beam/beam-extremes.ts";
import { equalSpans } from "./beam/spans.ts";
import { bearingFactor } from "./bearing.ts";
import { type Check, checkOf, worstFirst } from "./check.ts";
import { memberPicture } from "./picture-of-member.ts";
import { type Section, sectionProperties, showSection, widthIn } from "./section.ts";
import { beamStability } from "./stability.ts";

/** A beam of one, two or three equal spans under loads that lie along its depth. */
export interface BeamCase {
  readonly spanIn: number;
  readonly spans: number;
  /** at the level of the design method */
  readonly loads: readonly BeamLoad[];
  /** that deflection is checked for; at service level */
  readonly deflectionLoads: readonly BeamLoad[];
  /** allowed deflection: span over this */
  readonly deflectionOver: number;
  /** length of each bearing, in; undefined leaves bearing out */
  readonly bearingIn: number | undefined;
  /** between places where the compression edge is held, in; 0 where it is held along its length */
  readonly unbracedIn: number;
}

/** Pull on a support that is nothing but the dust of calculation, lb. */
const SLIGHT_LB = 1;

/** Greatest shear stress of a rectangle over its mean. */
export const SHEAR_SHAPE = 1.5;

/** Adjusted bending stress with lateral stability. Fb* leaves out Cfu. */
export function bendingStress(member: Member, unbracedIn: number, tape?: Tape): number {
  const fb = adjust("Fb", member, tape);
  const emin = adjust("Emin", member, unbracedIn === 0 ? undefined : tape);
  const cfu = fb.factors.find((f) => f.symbol === "Cfu")?.value ?? 1;
  const cl = beamStability(member.section, unbracedIn, fb.adjustedPsi / cfu, emin.adjustedPsi, tape);
  const stable = {
    ...fb,
    factors: [...fb.factors, { symbol: "CL", value: cl, says: "", clause: "" }],
    adjustedPsi: fb.adjustedPsi * cl,
  };
  showAdjusted(stable, tape);
  return stable.adjustedPsi;
}

export function bendingCheck(member: Member, momentLbIn: number, unbracedIn: number, tape?: Tape): Check {
  const { modulusIn3 } = sectionProperties(member.section);
  const fb = Math.abs(momentLbIn) / modulusIn3;
  tape?.step(
    "fb",
    `M / S: ${plain(Math.abs(momentLbIn))} lb in / ${plain(modulusIn3)} in3`,
    fb,
    "psi",
    "NDS Eq. 3.3-2",
  );
  const capacity = bendingStress(member, unbracedIn, tape);
  return checkOf("bending", fb, capacity, "psi", "NDS 3.3.1", tape);
}

export function shearCheck(member: Member, shearLb: number, tape?: Tape): Check {
  const { areaIn2 } = sectionProperties(member.section);
  const fv = (SHEAR_SHAPE * Math.abs(shearLb)) / areaIn2;
  tape?.step(
    "fv",
    `1.5 V / A: 1.5 x ${plain(Math.abs(shearLb))} lb / ${plain(areaIn2)} in2`,
    fv,
    "psi",
    "NDS Eq. 3.4-2",
  );
  const adjusted = adjust("Fv", member, tape);
  showAdjusted(adjusted, tape);
  return checkOf("shear", fv, adjusted.adjustedPsi, "psi", "NDS 3.4", tape);
}

/** Bearing at the supports: each with its own Cb, the worst counts. */
function bearingCheck(member: Member, solution: BeamSolution, bearingIn: number, tape?: Tape): Check {
  const adjusted = adjust("Fcp", member, tape);
  showAdjusted(adjusted, tape);
  const area = widthIn(member.section) * bearingIn;
  const at = solution.reactionsLb.map((lb, i) => {
    const inner = i > 0 && i < solution.reactionsLb.length - 1;
    return { lb, cb: bearingFactor(bearingIn, inner), inner };
  });
  const worst = at.reduce((a, b) => (b.lb / b.cb > a.lb / a.cb ? b : a));
  const cb = bearingFactor(bearingIn, worst.inner, tape);
  const stress = worst.lb / area;
  tape?.step(
    "fcp",
    `R ${plain(worst.lb)} lb / (${plain(widthIn(member.section))} x ${plain(bearingIn)} in)`,
    stress,
    "psi",
    "NDS 3.10.2",
  );
  return checkOf("bearing", stress, adjusted.adjustedPsi * cb, "psi", "NDS 3.10.2, 3.10.4", tape);
}

/** Stiffness of a member for deflection, lb in2. */
export function bendingStiffness(member: Member, tape?: Tape): number {
  const e = adjust("E", member, tape);
  const { inertiaIn4 } = sectionProperties(member.section);
  const ei = e.adjustedPsi * inertiaIn4;
  tape?.step("E'I", `${plain(e.adjustedPsi)} psi x ${plain(inertiaIn4)} in4`, ei, "lb in2", "NDS 3.5");
  return ei;
}

export function deflectionCheck(deflectionIn: number, spanIn: number, over: number, tape?: Tape): Check {
  const limit = spanIn / over;
  tape?.step("limit", `${plain(spanIn)} in / ${plain(over)}`, limit, "in", "as asked");
  return checkOf("deflection", Math.abs(deflectionIn), limit, "in", `L/${plain(over)}`, tape);
}

/** Depth within which the shear of uniform loads may be left out. */
function shearOf(solution: BeamSolution, section: Section, tape?: Tape): number {
  const whole = greatestShear(solution);
  const near = greatestShear(solution, section.depthIn);
  tape?.step("V", `greatest, at ${plain(whole.atIn)} in`, Math.abs(whole.value), "lb", "statics");
  tape?.step(
    "V at d",
    "at the depth from the supports; whole where a point load is that near",
    Math.abs(near.value),
    "lb",
    "NDS 3.4.3.1",
  );
  return near.value;
}

/**
 * Bending, shear, bearing and deflection of a beam, the worst first.
 * @throws BadInput for a value that the material lacks; OutOfRange for an edge that is held too seldom
 * Source: statics of beams (exact); NDS 3.3 to 3.5 and 3.10.
 */
export function beamChecks(member: Member, c: BeamCase, tape?: Tape): Check[] {
  assumeCommon(member, tape);
  showSection(member.section, tape);
  const bending = bendingStiffness(member, tape);
  const solution = solveBeam(equalSpans(c.spanIn, c.spans, { bending }, c.loads));
  const service = solveBeam(equalSpans(c.spanIn, c.spans, { bending }, c.deflectionLoads));
  const moment = greatestMoment(solution);
  tape?.step("M", `greatest, at ${plain(moment.atIn)} in`, Math.abs(moment.value), "lb in", "statics");
  const checks = [
    bendingCheck(member, moment.value, c.unbracedIn, tape),
    shearCheck(member, shearOf(solution, member.section, tape), tape),
  ];
  if (c.bearingIn !== undefined) checks.push(bearingCheck(member, solution, c.bearingIn, tape));
  const sag = greatestDeflection(service);
  tape?.step("deflection", `greatest, at ${plain(sag.atIn)} in`, Math.abs(sag.value), "in", "elastic line");
  checks.push(deflectionCheck(sag.value, c.spanIn, c.deflectionOver, tape));
  warn(solution, c, tape);
  const sorted = worstFirst(checks);
  tape?.show(memberPicture(solution, service, member.section.name, sorted));
  return sorted;
}

function warn(solution: BeamSolution, c: BeamCase, tape?: Tape): void {
  if (c.bearingIn === undefined) tape?.assume("Bearing is not checked: no bearing length is given.");
  tape?.assume("Own weight is not added: count it in the loads.");
  tape?.assume("The deflection is that of short loading; under lasting load it grows by half and more (NDS 3.5.2).");
  if (c.spans > 1)
    tape?.caution(
      "Over inner supports the lower edge is in compression: it must be held there, as the upper edge is in the spans.",
    );
  const lifted = solution.reactionsLb.findIndex((r) => r < -SLIGHT_LB);
  if (lifted >= 0) {
    tape?.caution(
      `Support ${lifted + 1} is lifted by ${plain(-(solution.reactionsLb[lifted] ?? 0))} lb: it must be held down.`,
    );
  }
}
