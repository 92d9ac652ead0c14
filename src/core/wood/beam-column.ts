import { OutOfRange, plain } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import type { Member } from "./adjust.ts";
import { solveBeam } from "./beam/beam.ts";
import { greatestDeflection, greatestMoment, greatestShear } from "./beam/beam-extremes.ts";
import { equalSpans, uniform } from "./beam/spans.ts";
import { type Check, checkOf, worstFirst } from "./check.ts";
import { type Bracing, columnAnswer } from "./column.ts";
import { bendingStiffness, bendingStress, deflectionCheck, shearCheck } from "./member-check.ts";
import { memberPicture } from "./picture-of-member.ts";
import { sectionProperties } from "./section.ts";

/** A hinged column that also carries a uniform load along its depth. */
export interface BeamColumnCase {
  readonly lengthIn: number;
  readonly bracing: Bracing;
  readonly axialLb: number;
  /** lateral load at the level of the design method, lb/in */
  readonly lateralLbPerIn: number;
  /** lateral load that deflection is checked for, lb/in */
  readonly serviceLbPerIn: number;
  /** allowed deflection: length over this; undefined leaves it out */
  readonly deflectionOver: number;
}

/**
 * Compression, bending, shear, both together and deflection of a column under lateral load, the worst first.
 * The bending term is amplified by the axial load: fb / (Fb' (1 - fc/FcE1)).
 * @throws OutOfRange where the axial stress reaches the critical stress of the plane of bending, or for a slenderness above 50
 * Source: NDS 3.9.2, Eq. 3.9-3.
 */
export function beamColumnChecks(member: Member, c: BeamColumnCase, tape?: Tape): Check[] {
  const column = columnAnswer(member, c.bracing, tape);
  const { areaIn2, modulusIn3 } = sectionProperties(member.section);
  const fc = c.axialLb / areaIn2;
  tape?.step("fc", `P / A: ${plain(c.axialLb)} lb / ${plain(areaIn2)} in2`, fc, "psi", "NDS 3.6.3");
  const bending = bendingStiffness(member, tape);
  const solution = solveBeam(equalSpans(c.lengthIn, 1, { bending }, [uniform(c.lengthIn, c.lateralLbPerIn)]));
  const service = solveBeam(equalSpans(c.lengthIn, 1, { bending }, [uniform(c.lengthIn, c.serviceLbPerIn)]));
  const moment = Math.abs(greatestMoment(solution).value);
  const fb = moment / modulusIn3;
  tape?.step("fb", `w L^2 / 8 / S: ${plain(moment)} lb in / ${plain(modulusIn3)} in3`, fb, "psi", "NDS Eq. 3.3-2");
  const fbPrime = bendingStress(bentMember(member, c.bracing), c.bracing.weakIn, tape);
  const sag = Math.abs(greatestDeflection(service).value);
  tape?.step("deflection", "5 w L^4 / (384 E I), axial load left out", sag, "in", "elastic line");
  const checks = [
    checkOf("compression", fc, column.fcPrimePsi, "psi", "NDS 3.7.1", tape),
    checkOf("bending", fb, fbPrime, "psi", "NDS 3.3.1", tape),
    shearCheck(member, greatestShear(solution, member.section.depthIn).value, tape),
    combined(fc, column.fcPrimePsi, fb, fbPrime, column.eulerStrongPsi, tape),
    deflectionCheck(sag, c.lengthIn, c.deflectionOver, tape),
  ];
  warnAmplified(sag, c, bending, tape);
  const sorted = worstFirst(checks);
  tape?.show(memberPicture(solution, service, member.section.name, sorted, c.axialLb));
  return sorted;
}

/** What turns sideways under bending: the whole where its plies are joined, each ply by itself where they are not. */
function bentMember(member: Member, bracing: Bracing): Member {
  if (bracing.fastening !== "none") return member;
  return { ...member, section: { ...member.section, plies: 1 } };
}

/**
 * Bending and compression together.
 * @param euler critical stress of the plane of bending, psi; undefined where it cannot buckle
 * Source: NDS Eq. 3.9-3, bending about one axis.
 */
export function combined(
  fc: number,
  fcPrime: number,
  fb: number,
  fbPrime: number,
  euler: number | undefined,
  tape?: Tape,
): Check {
  const left = euler === undefined ? 1 : 1 - fc / euler;
  if (left <= 0) {
    throw new OutOfRange(
      `The axial stress is ${plain(fc)} psi`,
      `the critical stress in the plane of bending is ${plain(euler ?? 0)} psi: the column buckles (NDS 3.9.2)`,
      "Take a larger section or brace it",
    );
  }
  tape?.step(
    "amplifier",
    euler === undefined ? "no buckling in this plane" : `1 / (1 - fc / FcE1), FcE1 ${plain(euler)} psi`,
    1 / left,
    "",
    "NDS Eq. 3.9-3",
  );
  const ratio = (fc / fcPrime) ** 2 + fb / (fbPrime * left);
  tape?.step("together", "(fc/Fc')^2 + fb / (Fb' (1 - fc/FcE1))", ratio, "", "NDS Eq. 3.9-3");
  return checkOf("combined", ratio, 1, "", "NDS Eq. 3.9-3", tape);
}

/** Says when the axial load pushes the deflection past the limit that it keeps without it. */
function warnAmplified(sagIn: number, c: BeamColumnCase, bending: number, tape?: Tape): void {
  const euler = (Math.PI ** 2 * bending) / c.lengthIn ** 2;
  if (c.axialLb >= euler) return;
  const whole = sagIn / (1 - c.axialLb / euler);
  tape?.step("deflection with axial", `deflection / (1 - P / ${plain(euler)} lb)`, whole, "in", "elastic stability");
  const limit = c.lengthIn / c.deflectionOver;
  if (whole > limit && sagIn <= limit) {
    tape?.caution(
      `The axial load makes the deflection ${plain(whole)} in, over the limit of ${plain(limit)} in that it keeps without it.`,
    );
  }
}
