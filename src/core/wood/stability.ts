import { OutOfRange, plain } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import type { WoodKind } from "./material.ts";
import { type Section, widthIn } from "./section.ts";
import { BEAM_LENGTHS, BEAM_STABILITY, COLUMN_STABILITY } from "./tables/factors.ts";

/** The root that beam and column stability share: (1+r)/k - sqrt(((1+r)/k)^2 - r/c). */
function interaction(ratio: number, k: number, c: number): number {
  if (ratio > SURE) return 1;
  const half = (1 + ratio) / k;
  return half - Math.sqrt(half ** 2 - ratio / c);
}

/** A critical stress so far above the strength that nothing buckles. */
const SURE = 1e6;

/** CL for a critical stress FbE over Fb*. Source: NDS Eq. 3.3-6. */
export function beamFactor(ratio: number): number {
  return interaction(ratio, BEAM_STABILITY.sum, BEAM_STABILITY.ratio);
}

/**
 * CP for a critical stress FcE over Fc*.
 * @param c 0.8 sawn, 0.9 glued laminated and structural composite
 * Source: NDS Eq. 3.7-1.
 */
export function columnFactor(ratio: number, c: number): number {
  return interaction(ratio, 2 * c, c);
}

/** c of NDS 3.7.1.5 by kind. */
export function columnC(kind: WoodKind): number {
  return kind === "sawn" ? COLUMN_STABILITY.sawn : COLUMN_STABILITY.made;
}

/**
 * Effective length of a beam, in, for any load.
 * @param unbracedIn between places where the compression edge is held, in
 * Source: NDS Table 3.3.3, loads not listed (read on a public page, 2005 edition).
 */
export function beamLength(unbracedIn: number, depthIn: number): number {
  const slenderness = unbracedIn / depthIn;
  const rule = BEAM_LENGTHS.find((r) => slenderness < r.upTo) ?? BEAM_LENGTHS[0];
  return (rule?.by ?? 0) * unbracedIn + (rule?.plus ?? 0) * depthIn;
}

/** Critical stress of a beam, psi. Source: NDS 3.3.3.6 and 3.3.3.8. */
export function beamEuler(section: Section, unbracedIn: number, eminPsi: number, tape?: Tape): number {
  const b = widthIn(section);
  const le = beamLength(unbracedIn, section.depthIn);
  const rb = Math.sqrt((le * section.depthIn) / b ** 2);
  tape?.step(
    "le",
    `of lu ${plain(unbracedIn)} in, lu/d ${plain(unbracedIn / section.depthIn)}`,
    le,
    "in",
    "NDS Table 3.3.3",
  );
  tape?.step("RB", "sqrt(le d / b^2)", rb, "", "NDS Eq. 3.3-5");
  notTooSlender("The slenderness ratio RB of the beam", rb, BEAM_STABILITY.mostSlenderness, "NDS 3.3.3.7");
  const fbe = (BEAM_STABILITY.euler * eminPsi) / rb ** 2;
  tape?.step("FbE", "1.20 Emin' / RB^2", fbe, "psi", "NDS 3.3.3.8");
  return fbe;
}

/**
 * Beam stability factor; 1 where the compression edge is held or the beam is no deeper than wide.
 * @param fbStarPsi adjusted by all but CL, CV and Cfu
 */
export function beamStability(
  section: Section,
  unbracedIn: number,
  fbStarPsi: number,
  eminPsi: number,
  tape?: Tape,
): number {
  if (section.depthIn <= widthIn(section) || unbracedIn === 0) {
    tape?.step("CL", unbracedIn === 0 ? "compression edge held along its length" : "d not above b", 1, "", "NDS 3.3.3");
    return 1;
  }
  const ratio = beamEuler(section, unbracedIn, eminPsi, tape) / fbStarPsi;
  const cl = beamFactor(ratio);
  tape?.step("CL", `FbE/Fb* ${plain(ratio)}`, cl, "", "NDS Eq. 3.3-6");
  return cl;
}

/**
 * Critical stress of a column in one plane, psi.
 * @param lengthIn effective length, in; @param depthIn size of the section in that plane, in
 * @throws OutOfRange for a slenderness above 50
 * Source: NDS 3.7.1.4, 3.7.1.5.
 */
export function columnEuler(lengthIn: number, depthIn: number, eminPsi: number, axis: string, tape?: Tape): number {
  const slenderness = lengthIn / depthIn;
  tape?.step(`le/d ${axis}`, `${plain(lengthIn)} / ${plain(depthIn)}`, slenderness, "", "NDS 3.7.1.3");
  notTooSlender(
    `The slenderness le/d of the column (${axis})`,
    slenderness,
    COLUMN_STABILITY.mostSlenderness,
    "NDS 3.7.1.4",
  );
  const fce = (COLUMN_STABILITY.euler * eminPsi) / slenderness ** 2;
  tape?.step(`FcE ${axis}`, "0.822 Emin' / (le/d)^2", fce, "psi", "NDS 3.7.1.5");
  return fce;
}

function notTooSlender(what: string, value: number, most: number, clause: string): void {
  if (value <= most) return;
  throw new OutOfRange(
    `${what} is ${plain(value)}`,
    `it may not exceed ${most} (${clause})`,
    "Brace it, or take a larger section",
  );
}
